"""The frozen table of units: what one of each is worth in the canonical unit of its kind.

Factors are exact by definition where one exists (NIST Special Publication 811, Appendix B); a test holds each
against that publication and against a units library.
"""

from dataclasses import dataclass
from types import MappingProxyType

CANONICAL = MappingProxyType(
    {
        "length": "m", "mass": "kg", "temperature": "degC", "rate": "1/min", "pressure": "Pa", "force": "N",
        "voltage": "V", "angle": "deg", "speed": "m/s", "duration": "s", "power": "W", "number": "1", "volume": "m3",
        "frequency": "Hz", "area": "m2",
    }
)  # fmt: skip
"""Kind of quantity -> its canonical unit."""

_INCH, _POUND, _GRAVITY = 0.0254, 0.45359237, 9.80665
_FOOT, _GALLON = 12 * _INCH, 231 * _INCH**3


@dataclass(frozen=True, slots=True)
class Unit:
    """value in canonical unit = number * factor + offset."""

    name: str
    kind: str
    factor: float
    offset: float = 0.0

    def worth(self, number: float) -> float:
        """The number of this unit in the canonical unit of its kind."""
        return number * self.factor + self.offset


_FACTORS: dict[str, dict[str, float]] = {
    "length": {
        "nm": 1e-9, "um": 1e-6, "mm": 1e-3, "cm": 1e-2, "dm": 0.1, "m": 1.0, "km": 1e3,
        "mil": _INCH / 1000, "in": _INCH, "ft": _FOOT, "yd": 3 * _FOOT, "mi": 5280 * _FOOT,
    },
    "mass": {
        "mg": 1e-6, "g": 1e-3, "kg": 1.0, "t": 1e3,
        "oz": _POUND / 16, "lb": _POUND, "stone": 14 * _POUND, "short_ton": 2000 * _POUND, "long_ton": 2240 * _POUND,
    },
    "pressure": {
        "Pa": 1.0, "hPa": 100.0, "kPa": 1e3, "MPa": 1e6, "GPa": 1e9, "mbar": 100.0, "bar": 1e5,
        "psi": _POUND * _GRAVITY / _INCH**2, "ksi": 1000 * _POUND * _GRAVITY / _INCH**2,
        "atm": 101325.0, "mmHg": 133.322387415, "inHg": 3386.389, "inH2O": 249.08891,
        "kgf/cm2": _GRAVITY * 1e4, "N/mm2": 1e6,
    },
    "force": {
        "mN": 1e-3, "N": 1.0, "daN": 10.0, "kN": 1e3, "MN": 1e6, "gf": _GRAVITY / 1000, "kgf": _GRAVITY,
        "tf": 1000 * _GRAVITY, "ozf": _POUND * _GRAVITY / 16, "lbf": _POUND * _GRAVITY, "kip": 1000 * _POUND * _GRAVITY,
    },
    "voltage": {"mV": 1e-3, "V": 1.0, "kV": 1e3},
    "angle": {"deg": 1.0, "rad": 180 / 3.141592653589793, "rev": 360.0},
    "speed": {
        "m/s": 1.0, "m/min": 1 / 60, "km/h": 1 / 3.6, "km/s": 1e3, "mph": 5280 * _FOOT / 3600,
        "ft/s": _FOOT, "ft/min": _FOOT / 60, "in/s": _INCH, "knot": 1852 / 3600,
    },
    "duration": {
        "ms": 1e-3, "s": 1.0, "min": 60.0, "h": 3600.0, "day": 86400.0, "week": 604800.0,
        "month": 365.25 * 86400 / 12, "year": 365.25 * 86400,
    },
    "power": {"mW": 1e-3, "W": 1.0, "kW": 1e3, "MW": 1e6, "GW": 1e9, "hp": 550 * _FOOT * _POUND * _GRAVITY},
    "frequency": {"Hz": 1.0, "kHz": 1e3, "MHz": 1e6},
    "volume": {
        "ml": 1e-6, "cl": 1e-5, "dl": 1e-4, "l": 1e-3, "m3": 1.0, "cm3": 1e-6, "in3": _INCH**3, "ft3": _FOOT**3,
        "gal": _GALLON, "qt": _GALLON / 4, "pint": _GALLON / 8, "floz": _GALLON / 128,
        "tsp": _GALLON / 768, "tbsp": _GALLON / 256,
    },
    "area": {"m2": 1.0, "cm2": 1e-4, "mm2": 1e-6, "ft2": _FOOT**2, "in2": _INCH**2},
    "rate": {"1/s": 60.0, "1/min": 1.0, "1/h": 1 / 60, "1/day": 1 / 1440, "1/week": 1 / 10080, "1/year": 1 / 525960},
}  # fmt: skip

UNITS = MappingProxyType(
    {
        name: Unit(name, kind, factor)
        for kind, units in _FACTORS.items()
        for name, factor in units.items()
    }
    | {
        "degC": Unit("degC", "temperature", 1.0),
        "degF": Unit("degF", "temperature", 1 / 1.8, -32 / 1.8),
        "K": Unit("K", "temperature", 1.0, -273.15),
        "degrees": Unit("degrees", "degrees", 1.0),  # of an angle or of a temperature: the words around it decide
        "ton": Unit("ton", "mass", 2000 * _POUND),  # short in the US, metric elsewhere: asked back
    }
)  # fmt: skip
"""Every unit by name. A bare "ton" is told apart by its name."""
