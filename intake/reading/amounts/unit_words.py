"""How people write the units, and where a unit stands among the tokens."""

from intake.reading.amounts.units import UNITS, Unit
from intake.reading.text.tokens import Token

_SPELLINGS = {
    "nm": "nanometer nanometers nanometre nanometres",
    "um": "um µm micrometer micrometers micrometre micrometres micron microns",
    "mm": "mm mms millimeter millimeters millimetre millimetres milimeter milimeters milimetre",
    "cm": "cm cms centimeter centimeters centimetre centimetres",
    "dm": "dm decimeter decimeters decimetre decimetres",
    "m": "m mtr mtrs meter meters metre metres mts metro metros",
    "km": "km kms kilometer kilometers kilometre kilometres",
    "mil": "mil mils",
    "in": "in ins inch inches inchs inche \" '_'",
    "ft": "ft fts feet foot feets '",
    "yd": "yd yds yard yards",
    "mi": "mi mile miles",
    "mg": "mg mgs milligram milligrams milligramme milligrammes",
    "g": "g gr gm gms gram grams gramme grammes grm",
    "kg": "kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes kgm",
    "t": "t tonne tonnes mt metric_ton metric_tons metric_tonne metric_tonnes",
    "oz": "oz ozs ounce ounces",
    "lb": "lb lbs pound pounds # lbm pund punds",
    "stone": "stone stones",
    "short_ton": "short_ton short_tons short_tn us_ton us_tons",
    "long_ton": "long_ton long_tons long_tn",
    "ton": "ton tons",
    "Pa": "pa pascal pascals",
    "hPa": "hpa",
    "kPa": "kpa kilopascal kilopascals",
    "MPa": "mpa megapascal megapascals",
    "GPa": "gpa",
    "mbar": "mbar mbars millibar millibars",
    "bar": "bar bars barg bar_g",
    "psi": "lb_/_in_2 lbs_/_in_2 p_._s_._i psi psig psia lb_/_in2 lbs_/_in2 lbs_per_square_inch pounds_per_square_inch",
    "ksi": "ksi",
    "atm": "atm atmosphere atmospheres",
    "mmHg": "mmhg mm_hg",
    "inHg": "inhg in_hg",
    "inH2O": "inh_2_o inwc",
    "kgf/cm2": "kgf_/_cm_2 kg_/_cm_2 kgf_/_cm2 kilograms_force_per_square_centimeter kg_per_square_centimeter",
    "N/mm2": "n_/_mm_2",
    "mN": "millinewton millinewtons",
    "N": "n newton newtons",
    "daN": "dan dekanewton decanewton",
    "kN": "kn kilonewton kilonewtons",
    "MN": "meganewton meganewtons",
    "gf": "gf gram_force gram_-_force grams_force grams_of_force",
    "kgf": "kgf kgsf kilogram_force kilogram_-_force kilograms_force kg_force kilos_of_force kg_of_force"
    " kilograms_of_force kilopond",
    "tf": "tf tonne_force metric_tonne_force metric_ton_force",
    "ozf": "ozf ounce_force ounce_-_force ounces_force",
    "lbf": "lbf lbsf lb_-_f pound_force pound_-_force pounds_force pounds_-_force pounds_of_force lb_of_force"
    " lbs_of_force lb_force lbs_force pounds_of_squeeze lbs_of_squeeze lbs_of_pressure pounds_of_pressure",
    "kip": "kip kips",
    "mV": "mv millivolt millivolts milli_volt milli_volts",
    "V": "v volt volts vac vdc v_ac v_dc volts_ac volts_dc",
    "kV": "kv kilovolt kilovolts",
    "rad": "rad rads radian radians",
    "rev": "revolution revolutions",
    "degrees": "grad grados graden gradi deg degs degree degrees °",
    "degC": "℃ degc deg_._c grad_c grad_celsius grados_celsius grados_c c °_c deg_c degs_c degree_c degrees_c "
    "celsius celcius centigrade centigrate celsuis °_celsius °_celcius"
    " deg_celsius degree_celsius degrees_celsius degrees_celcius degree_centigrade degrees_centigrade deg_centigrade",
    "degF": "℉ degf deg_._f f °_f deg_f degs_f degree_f degrees_f fahrenheit farenheit fahrenheight farenheight "
    "°_fahrenheit"
    " deg_fahrenheit degree_fahrenheit degrees_fahrenheit degrees_farenheit deg_farenheit",
    "K": "k kelvin kelvins °_k degrees_kelvin",
    "mph": "mph miles_per_hour mi_/_h mi_/_hr",
    "km/h": "kmh kph kmph km_/_h km_/_hr kmhr",
    "ft/min": "fpm sfpm ft_/_min",
    "ft/s": "fps",
    "m/min": "mpm",
    "m/s": "mps",
    "knot": "knot knots",
    "ms": "ms msec millisecond milliseconds",
    "s": "s sec secs second seconds",
    "min": "min mins minute minutes minuets",
    "h": "h hr hrs hour hours",
    "day": "day days",
    "week": "week weeks wk wks",
    "month": "month months",
    "year": "year years yr yrs",
    "mW": "milliwatt milliwatts",
    "W": "w watt watts",
    "kW": "kw kilowatt kilowatts",
    "MW": "megawatt megawatts",
    "GW": "gw gigawatt gigawatts",
    "hp": "hp bhp horsepower horse_power",
    "Hz": "hz hertz cycles",
    "kHz": "khz",
    "MHz": "mhz",
    "ml": "ml mls millilitre millilitres milliliter milliliters",
    "cl": "cl",
    "dl": "dl",
    "l": "l liter liters litre litres ltr ltrs",
    "m3": "m_3 m3 cubic_meter cubic_meters cubic_metre cubic_metres",
    "cm3": "cc ccs cm_3 cubic_centimeters",
    "in3": "in_3 cubic_inch cubic_inches cu_in",
    "ft3": "ft_3 cubic_foot cubic_feet cu_ft cuft cf",
    "gal": "gal gals gallon gallons gln",
    "qt": "qt qts quart quarts",
    "pint": "pint pints",
    "floz": "floz fl_oz fl_._oz fluid_ounce fluid_ounces fluid_oz fl_ozs fl_ounces",
    "tsp": "tsp teaspoon teaspoons",
    "tbsp": "tbsp tablespoon tablespoons",
    "m2": "m_2 sqm sq_m sq_meters square_meter square_meters square_metre square_metres",
    "cm2": "cm_2 sq_cm",
    "mm2": "mm_2 sq_mm",
    "ft2": "ft_2 sqft sq_ft sq_._ft square_foot square_feet sf",
    "in2": "in_2 sq_in square_inch square_inches",
    "1/min": "cpm ppm bpm upm epm tpm spm rpm pcpm cspm",
    "1/h": "cph pph bph uph tph",
}  # fmt: skip
"""Unit name -> its spellings; "_" stands between tokens."""

_RAW_RULES = {
    "n": "N", "k": "K", "w": "W", "t": "t", "s": "s", "h": "hH", "c": "cC", "f": "fF", "v": "vV", "g": "g", "l": "lL",
    "kn": "kN", "pa": "Pa", "dan": "daN",
}  # fmt: skip
"""One-letter units by the letter's case as typed: 12 N is a force, 12 n is not."""
_ATTACHED_ONLY = frozenset({"c", "f", "v"})  # small letters with a space before them are words or list letters


def _trie() -> dict[str, dict[tuple[str, ...], Unit]]:
    table: dict[str, dict[tuple[str, ...], Unit]] = {}
    for name, spellings in _SPELLINGS.items():
        for spelling in spellings.split():
            parts = ("'", "'") if spelling == "'_'" else tuple(spelling.split("_"))
            table.setdefault(parts[0], {})[parts] = UNITS[name]
    return table


_TABLE = _trie()
_LONGEST = {first: max(map(len, entries)) for first, entries in _TABLE.items()}
UNIT_WORDS = frozenset(word for word in _TABLE if len(word) > 1 or word in "℃℉°")
"""Words that begin a unit; single letters and marks are left out."""
TIME_UNITS = frozenset({"s", "min", "h", "day", "week", "month", "year"})
PER_WORDS = frozenset({"per", "a", "an", "each", "every", "/", "p", "pr", "ea"})


def unit_at(tokens: list[Token], at: int, raw: str, *, glued: bool = False) -> tuple[Unit, int] | None:
    """The unit that begins at token `at`, and the token after it; None where no unit stands.

    `glued`: no space between the number and the unit. Brackets around a unit are taken along: 20 (kg).
    """
    if at >= len(tokens):
        return None
    first = tokens[at]
    if first.text in "([{<" and at + 2 < len(tokens) and first.kind == "sign":
        inner = unit_at(tokens, at + 1, raw)
        if inner and inner[1] < len(tokens) and tokens[inner[1]].text in ")]}>":
            return inner[0], inner[1] + 1
        return None
    if first.text == "mw":  # the one pair of units that differ by case alone
        return UNITS["MW" if raw[first.start] == "M" else "mW"], at + 1
    entries = _TABLE.get(first.text)
    if entries is None:
        return None
    for length in range(min(_LONGEST[first.text], len(tokens) - at), 0, -1):
        words = tuple(token.text for token in tokens[at : at + length])
        unit = entries.get(words)
        if unit is not None and _close(tokens, at, length) and (length > 1 or _letter_fits(tokens, at, raw, glued)):
            if words[-1] in ("2", "3") and _goes_on(tokens, at + length):
                continue  # 3ft2in is no area
            return _compound(tokens, at, at + length, unit, raw)
    return None


def _close(tokens: list[Token], at: int, length: int) -> bool:
    """True where the tokens of one unit stand together (two marks of an inch without a space)."""
    if tokens[at].text == "'" and length == 2:
        return tokens[at].end == tokens[at + 1].start
    return all(
        tokens[n + 1].start - tokens[n].end <= (0 if tokens[n + 1].kind == "number" else 2)
        for n in range(at, at + length - 1)
    )


def _goes_on(tokens: list[Token], at: int) -> bool:
    return (
        at < len(tokens) and tokens[at].start == tokens[at - 1].end and tokens[at].text in ("in", '"', "inch", "inches")
    )


_MAINS = frozenset({110, 115, 120, 200, 208, 220, 230, 240, 277, 380, 400, 415, 440, 460, 480, 525, 575, 600, 690})
_BEHIND_LETTER = frozenset(
    {"and", "or", "in", "room", "year", "all", "to", "-", ".", ",", ";", ")", "when", "at", "50", "60", "3", "1", "/"}
)


def _small_letter(tokens: list[Token], at: int) -> bool:
    """ "36 to 38 f", "400 v 50 hz": a small letter with a space before it, where no word can stand."""
    number = tokens[at - 1] if at else None
    if number is None or number.value is None or len(number.text) > 4:
        return False
    ends = at + 1 >= len(tokens) or tokens[at + 1].kind == "line" or tokens[at + 1].text in _BEHIND_LETTER
    return ends and (number.value in _MAINS if tokens[at].text == "v" else -60 <= number.value <= 250)


def _letter_fits(tokens: list[Token], at: int, raw: str, glued: bool) -> bool:
    token = tokens[at]
    typed = raw[token.start : token.end]
    if (
        token.text in ("g", "s")
        and typed.isupper()
        and not any(c.islower() for c in raw[max(0, token.start - 25) : token.end + 25])
    ):
        return True
    allowed = _RAW_RULES.get(token.text)
    if allowed is not None and len(token.text) == 1:
        if token.text in _ATTACHED_ONLY and typed.islower() and not glued:
            return _small_letter(tokens, at)
        return typed in allowed
    if allowed is not None:
        return typed == allowed
    if token.text == "m":
        # 3.2 M is metres, 1.8M may be millions unless all is in capitals.
        return (
            typed == "m" or not glued or not any(sign.islower() for sign in raw[max(0, token.start - 15) : token.start])
        )
    return True


def _compound(tokens: list[Token], at: int, after: int, unit: Unit, raw: str) -> tuple[Unit, int] | None:
    """A length per time is a speed; a mass or volume per time, or a mass per length, is nothing that we read."""
    if unit.kind not in ("length", "mass", "volume", "force") or after >= len(tokens):
        return unit, after
    if tokens[after].text == "." and after + 1 < len(tokens) and tokens[after + 1].text == "/":
        after += 1
    if tokens[after].text not in PER_WORDS:
        return unit, after
    below = unit_at(tokens, after + 1, raw)
    if below is None and after + 1 < len(tokens) and tokens[after + 1].text in ("square", "sq", "m", "lm"):
        return Unit("flow", "flow", 1.0), after + 2
    if below is None:
        return unit, after
    if unit.kind == "length" and below[0].kind == "duration":
        seconds = below[0].factor
        return Unit(f"{unit.name}/{below[0].name}", "speed", unit.factor / seconds), below[1]
    if tokens[after].text in ("a", "an", "each", "every", "ea") and below[0].kind != "duration":
        return unit, after
    if tokens[after].text == "/" and tokens[after].end != tokens[after + 1].start and below[0].kind != "duration":
        return unit, after
    if below[0].kind in ("duration", "area", "volume", "length", "mass"):
        if tokens[after].text == "/" and below[0].kind in ("mass", "length") and below[0].kind == unit.kind:
            return unit, after
        return Unit("flow", "flow", 1.0), below[1]
    return unit, after
