"""quantulum3 (MIT), general-purpose, without its classifier. A value with an uncertainty is taken as a range."""

import warnings
from collections.abc import Callable
from typing import Any

from serving import serve

PINT_NAMES = {
    "pound-mass": "pound", "minute of arc": "arcminute", "second of arc": "arcsecond", "degree angle": "degree",
    "degree Celsius": "degC", "degree Fahrenheit": "degF", "metre": "meter", "pound per square inch": "psi",
    "pound force": "pound_force", "kilogram-force": "kilogram_force", "tonne": "metric_ton",
    "mile per hour": "mile/hour",
}  # fmt: skip


def load() -> Callable[[str], Any]:
    warnings.simplefilter("ignore")
    from quantulum3 import parser

    return parser.parse


def convert(text: str, found: Any) -> list[dict[str, Any]]:
    from through_pint import in_our_kinds

    out = []
    for one in found:
        spread = one.uncertainty or 0.0
        out += in_our_kinds(one.value - spread, one.value + spread, unit_of(one.unit))
    return out


def unit_of(unit: Any) -> str:
    """The unit as pint writes it: by its own name where it has one, else by the powers of its parts."""
    if unit.name in PINT_NAMES:
        return PINT_NAMES[unit.name]
    parts = [(PINT_NAMES.get(part["base"], part["base"].replace(" ", "_")), part["power"]) for part in unit.dimensions]
    return " * ".join(f"({base}) ** {power}" if power != 1 else base for base, power in parts)


serve(load, convert)
