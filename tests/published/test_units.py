"""The frozen table of units against NIST Special Publication 811, Appendix B, and against a units library.

The printed factors were read in copies of tables B.8 and B.9 (NIST SP 811, 2008 edition); each is held to all printed
digits. pint is a general-purpose library: every unit of the table is held against it, and every spelling that its
full registry knows. A spelling that it does not know, or takes for something else, stands below with the reason; a
spelling that is new to the table fails here until it agrees with pint or is listed.
"""

import pint
import pytest

from intake.reading.amounts.unit_words import _SPELLINGS
from intake.reading.amounts.units import UNITS, Unit

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

UNKNOWN_TO_PINT = {
    "a mark, or a mark with a letter": "\" '_' ' # ℃ ℉",
    "a plural or a short form of the trade": "mms cms kms mgs gms kgs mls mtr mtrs mts gm kilo kgm lbm short_tn "
    "long_tn gln "
    "sf cf sqm sqft sq_._ft cuft wk wks ltr ltrs barg psig psia p_._s_._i inwc sfpm bhp horse_power kgsf lbsf "
    "fluid_oz fpm mpm",
    "another spelling, or another language": "metro metros milligramme milligrammes gramme grammes kilogramme "
    "kilogrammes grm metric_tonne metric_tonnes pund punds tonne_force metric_tonne_force grados graden gradi "
    "grados_celsius grados_c",
    "a typing error": "milimeter milimeters milimetre inche celcius celsuis centigrate °_celcius degrees_celcius "
    "farenheit "
    "fahrenheight farenheight degrees_farenheit deg_farenheit minuets",
    "pint tells capitals from small letters; the table is read in small letters": "hpa kpa mpa gpa mmhg inhg n dan "
    "mv v kv "
    "vac vdc v_ac v_dc f °_f deg_f deg_._f degs_f degree_f degrees_f degf degc w kw gw hz khz mhz",
    "pint writes a power with a sign": "lb_/_in2 lbs_/_in2 lb_/_in_2 lbs_/_in_2 inh_2_o kgf_/_cm_2 kg_/_cm_2 "
    "kgf_/_cm2 n_/_mm_2 "
    "m_3 m3 cm_3 in_3 ft_3 m_2 cm_2 mm_2 ft_2 in_2",
    "pint has force as one word with underscores": "kilograms_force_per_square_centimeter gram_-_force grams_force "
    "grams_of_force kilogram_-_force kilograms_force kg_force kilos_of_force kg_of_force kilograms_of_force "
    "ounce_-_force "
    "ounces_force lb_-_f pound_-_force pounds_force pounds_-_force pounds_of_force lb_of_force lbs_of_force lb_force "
    "lbs_force pounds_of_squeeze lbs_of_squeeze lbs_of_pressure pounds_of_pressure milli_volt milli_volts",
    "a count per time: pint counts nothing": "cpm bpm upm epm tpm spm pcpm cspm cph pph bph uph tph",
    "joined without a stroke": "kmh kmhr",
}  # fmt: skip
OTHERWISE_IN_PINT = {  # spelling: (what pint makes of it, why people who buy machines mean ours)
    "mil": ("angle", "a thousandth of an inch, as sheet and film are measured; pint's angular mil is gunnery"),
    "mils": ("angle", "the same"),
    "kilos": ("kilosecond", "kilograms"),
    "us_ton": ("microsecond * ton", "the US short ton; pint splits it"),
    "us_tons": ("microsecond * ton", "the same"),
    "pa": ("picoyear", "pascal in small letters"),
    "bar_g": ("bar * gram", "gauge pressure"),
    "lbs_per_square_inch": ("pound / inch ** 2", "pounds of force"),
    "pounds_per_square_inch": ("pound / inch ** 2", "pounds of force"),
    "kg_per_square_centimeter": ("kilogram / centimeter ** 2", "kilograms of force"),
    "mm_hg": ("hectogram * millimeter", "millimetres of mercury; pint splits it"),
    "in_hg": ("hectogram * inch", "inches of mercury; pint splits it"),
    "kn": ("knot", "kilonewton: taken only where it is typed kN"),
    "volts_ac": ("attospeed_of_light * volt", "alternating current; pint splits it"),
    "volts_dc": ("decispeed_of_light * volt", "direct current"),
    "rads": ("rads", "radians; pint's rads are of radiation"),
    "c": ("speed_of_light", "Celsius: a capital, or close to its number"),
    "grad_celsius": ("delta_degree_Celsius * grade", "German: degrees Celsius"),
    "grad_c": ("grade * speed_of_light", "German"),
    "grad": ("grade", "German: degrees; grades of 400 a turn are for surveyors"),
    "k": ("boltzmann_constant", "kelvin: taken only where it is typed K"),
    "°_k": ("boltzmann_constant * degree", "kelvin"),
    "degrees_kelvin": ("degree * kelvin", "kelvin"),
    "cycles": ("turn", "cycles per second, of a mains supply"),
    "cu_in": ("centiunified_atomic_mass_unit * inch", "cubic inches; pint splits it"),
    "cu_ft": ("centiunified_atomic_mass_unit * foot", "cubic feet"),
    "ppm": ("ppm", "pieces, products or packs per minute: nobody orders parts per million"),
    "gr": ("grain", "grams, as continental shops write them; a grain is 65 mg"),
    "mt": ("millimetric_ton", "metric tons"),
    "kmph": ("kilomile_per_hour", "kilometres per hour"),
    "rpm": ("revolutions_per_minute", "strokes or turns a minute are counted, not measured as an angle"),
} | {
    f"{degree}_{scale}": (f"{degree} times {scale}", "pint multiplies an angle by a scale or by the speed of light")
    for degree in ("°", "deg", "deg_.", "degs", "degree", "degrees")
    for scale in ("c", "celsius", "centigrade", "fahrenheit")
} | {
    f"{fluid}_{ounce}": ("femtoliter * ounce", "fluid ounce; pint splits it")
    for fluid in ("fl", "fl_.") for ounce in ("oz", "ozs", "ounces")
} | {"centigrade": ("centigrade", "Celsius; pint's is a hundredth of a grade")}  # fmt: skip
SPELLED = [(spelling, UNITS[name]) for name, spellings in _SPELLINGS.items() for spelling in spellings.split()]


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry:
    return pint.UnitRegistry()


def in_pint(registry: pint.UnitRegistry, spelling: str) -> pint.Unit | None:
    """What pint makes of a spelling, as a phrase or as one name with underscores."""
    for typed in (spelling.replace("_/_", "/").replace("_", " "), spelling):
        try:
            return registry.parse_units(typed)
        except Exception:  # pint raises errors of many kinds for what it does not know
            continue
    return None


def agrees(registry: pint.UnitRegistry, theirs: pint.Unit, ours: Unit) -> bool:
    """Twenty of theirs in our canonical unit are twenty of ours."""
    canonical = CANONICAL_IN_PINT | {"temperature": "degC", "degrees": "degree"}
    try:
        worth = registry.Quantity(20.0, theirs).to(canonical[ours.kind]).magnitude
    except pint.DimensionalityError:
        return False
    return ours.worth(20.0) == pytest.approx(worth, rel=2e-6)


def test_every_spelling_that_the_units_library_knows_agrees_with_it_or_has_its_reason(
    registry: pint.UnitRegistry,
) -> None:
    theirs = {spelling: (in_pint(registry, spelling), unit) for spelling, unit in SPELLED}
    known = {spelling: (found, unit) for spelling, (found, unit) in theirs.items() if found is not None}
    otherwise = {spelling for spelling, (found, unit) in known.items() if not agrees(registry, found, unit)}
    assert otherwise - OTHERWISE_IN_PINT.keys() == set()
    assert len(known) - len(otherwise) > 240


def test_every_spelling_that_the_units_library_does_not_know_has_its_reason(registry: pint.UnitRegistry) -> None:
    listed = {spelling for spellings in UNKNOWN_TO_PINT.values() for spelling in spellings.split()}
    assert {spelling for spelling, _ in SPELLED if in_pint(registry, spelling) is None} - listed == set()
    assert {spelling for spelling in listed if in_pint(registry, spelling) is not None} == set()


def test_no_spelling_stands_for_two_units() -> None:
    assert len({spelling for spelling, _ in SPELLED}) == len(SPELLED)


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


def test_every_unit_of_the_table_agrees_with_the_units_library(registry: pint.UnitRegistry) -> None:
    checked = []
    for name, unit in UNITS.items():
        if unit.kind in ("temperature", "degrees"):
            continue
        theirs = registry.Quantity(1.0, IN_PINT.get(name, name)).to(CANONICAL_IN_PINT[unit.kind]).magnitude
        assert unit.factor == pytest.approx(theirs, rel=2e-6), name
        checked.append(name)
    assert len(checked) == len(UNITS) - 4
