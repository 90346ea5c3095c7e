"""The frozen table of units against NIST Special Publication 811, Appendix B, and against a units library.

The printed factors were read in copies of tables B.8 and B.9 (NIST SP 811, 2008 edition); each is held to all printed
digits. pint is a general-purpose library and holds every unit of the table that it knows.
"""

import pint
import pytest

from intake.reading.units import UNITS

PRINTED = [  # unit, factor as printed in SP 811, digits printed
    ("ft", 0.3048, 4), ("in", 0.0254, 4), ("mil", 2.54e-5, 3), ("mi", 1609.344, 7), ("yd", 0.9144, 4),
    ("lb", 0.4535924, 7), ("oz", 0.02834952, 7), ("short_ton", 907.1847, 7), ("long_ton", 1016.047, 7),
    ("lbf", 4.448222, 7), ("kgf", 9.80665, 6), ("ozf", 0.2780139, 7), ("kip", 4448.222, 7),
    ("psi", 6894.757, 7), ("bar", 1e5, 7), ("atm", 101325.0, 7), ("inHg", 3386.389, 7), ("inH2O", 249.0889, 7),
    ("hp", 745.6999, 7), ("ft/min", 0.00508, 3), ("ft/s", 0.3048, 4), ("in/s", 0.0254, 4), ("mph", 0.44704, 5),
    ("gal", 0.003785412, 7), ("floz", 2.957353e-5, 7), ("ft3", 0.02831685, 7), ("in3", 1.638706e-5, 7),
    ("ft2", 0.09290304, 7), ("in2", 6.4516e-4, 5),
]  # fmt: skip
IN_PINT = {
    "um": "micrometer", "mil": "thou", "t": "tonne", "oz": "ounce", "lb": "pound", "short_ton": "short_ton",
    "long_ton": "long_ton",
    "mmHg": "mmHg", "inHg": "inHg", "inH2O": "inH2O", "kgf/cm2": "kgf/cm**2", "N/mm2": "N/mm**2", "gf": "gram_force",
    "tf": "metric_ton * g_0", "ozf": "ounce_force", "deg": "degree", "rad": "radian", "rev": "turn", "km/h": "km/h",
    "mph": "mph",
    "ft/min": "ft/min", "in/s": "in/s", "knot": "knot", "h": "hour", "min": "minute", "month": "month", "year": "year",
    "hp": "horsepower", "gal": "gallon", "qt": "quart", "floz": "fluid_ounce", "tsp": "teaspoon", "tbsp": "tablespoon",
    "m3": "m**3", "cm3": "cm**3",
    "in3": "in**3", "ft3": "ft**3", "m2": "m**2", "cm2": "cm**2", "mm2": "mm**2",
    "ft2": "ft**2", "in2": "in**2",
    "1/s": "1/second", "1/min": "1/minute", "1/h": "1/hour", "1/day": "1/day", "1/week": "1/week", "1/year": "1/year",
    "Hz": "hertz", "kHz": "kilohertz", "MHz": "megahertz", "ton": "short_ton", "kip": "kip",
}  # fmt: skip
CANONICAL_IN_PINT = {
    "length": "m", "mass": "kg", "pressure": "Pa", "force": "N", "voltage": "V", "angle": "degree", "speed": "m/s",
    "duration": "s", "power": "W", "frequency": "1/second", "volume": "m**3", "area": "m**2", "rate": "1/minute",
}  # fmt: skip


@pytest.mark.parametrize(("name", "printed", "digits"), PRINTED, ids=[row[0] for row in PRINTED])
def test_a_factor_agrees_with_nist_sp_811_to_its_printed_digits(name: str, printed: float, digits: int) -> None:
    assert UNITS[name].factor == pytest.approx(printed, rel=0.6 * 10.0 ** (1 - digits) if digits >= 7 else 1e-12)


@pytest.mark.parametrize(
    ("fahrenheit", "celsius"), [(32.0, 0.0), (212.0, 100.0), (68.0, 20.0), (-40.0, -40.0), (34.0, 1.11)]
)
def test_fahrenheit_agrees_with_nist_sp_811(fahrenheit: float, celsius: float) -> None:
    assert UNITS["degF"].worth(fahrenheit) == pytest.approx(celsius, abs=0.005)


def test_kelvin_agrees_with_nist_sp_811() -> None:
    assert UNITS["K"].worth(293.15) == pytest.approx(20.0)


def test_every_unit_of_the_table_agrees_with_the_units_library() -> None:
    registry = pint.UnitRegistry()
    checked = []
    for name, unit in UNITS.items():
        if unit.kind in ("temperature", "degrees"):
            continue
        theirs = registry.Quantity(1.0, IN_PINT.get(name, name)).to(CANONICAL_IN_PINT[unit.kind]).magnitude
        assert unit.factor == pytest.approx(theirs, rel=2e-6), name
        checked.append(name)
    assert len(checked) == len(UNITS) - 4
