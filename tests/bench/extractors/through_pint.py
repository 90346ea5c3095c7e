"""A number with the name of a unit, in our kinds and canonical units by way of pint: for the other extractors."""

from typing import Any

import pint

REGISTRY: Any = pint.UnitRegistry()
CANONICAL = {
    "length": "m", "mass": "kg", "temperature": "degC", "pressure": "Pa", "force": "N", "voltage": "V", "speed": "m/s",
    "duration": "s", "power": "W", "rate": "1/minute",
}  # fmt: skip
_DIMENSIONS = {REGISTRY.parse_units(unit).dimensionality: kind for kind, unit in CANONICAL.items()}
_ANGLES = ("degree", "radian")


def in_our_kinds(low: float, high: float, unit: Any) -> list[dict[str, Any]]:
    """The quantity as one of our kinds, or nothing where it is of none. `unit`: a name, or a unit of pint's."""
    try:
        theirs = REGISTRY.parse_units(unit) if isinstance(unit, str) else REGISTRY.parse_units(str(unit))
        kind = "angle" if str(theirs) in _ANGLES else _DIMENSIONS.get(theirs.dimensionality)
        if kind is None:
            return []
        ends = [
            REGISTRY.Quantity(float(end), theirs).to(CANONICAL.get(kind, "degree")).magnitude for end in (low, high)
        ]
    except Exception:  # a unit that pint does not know, or one that it cannot turn
        return []
    return [{"kind": kind, "low": min(ends), "high": max(ends)}]
