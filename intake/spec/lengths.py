"""How a length in metres is written: millimetres or metres, inches with their fractions, feet and inches."""

from math import gcd

from intake.spec.shown_units import FOOT, INCH, System

_MOST_IN_INCHES = 48.0  # common practice, no source: product sizes and belt heights are told in inches, rises in feet
_AS_GOOD_AS_EXACT_IN = 0.002


def show_length(metres: float, system: System) -> str:
    """ "12 ft 6 1/2 in", "16 in", "3.81 m", "400 mm".

    Inches: to the sixteenth where the length is one, as a decimal where it is not.

    >>> show_length(3.81, "us"), show_length(0.4, "si")
    ('12 ft 6 in', '400 mm')
    """
    sign = "-" if metres < 0 and not is_naught(metres) else ""
    size = abs(metres)
    return sign + (_inches_and_feet(size) if system == "us" else _metric(size))


def show_length_range(low: float, high: float, system: System) -> str:
    """Both ends in one unit where they share one: "300 to 400 mm", "0.8 to 1.2 m", "9 to 10 1/2 in"."""
    if system == "si" and high >= 0.9995 and low >= 0.0:
        return f"{_metres(low)} to {_metres(high)} m"
    first, last = show_length(low, system), show_length(high, system)
    for mark in (" in", " mm"):
        if first.endswith(mark) and last.endswith(mark) and " ft " not in first + last:
            return f"{first.removesuffix(mark)} to {last}"
    return f"{first} to {last}"


def is_naught(metres: float) -> bool:
    """True for what is shown as 0 in either system."""
    return abs(metres) < 5e-5


def _metric(metres: float) -> str:
    if metres >= 0.9995:
        return f"{_metres(metres)} m"
    millimetres = metres * 1000
    return f"{_trimmed(millimetres, 0 if millimetres >= 100 else 1)} mm"


def _metres(metres: float) -> str:
    """Whole millimetres are kept; anything finer is a computed figure and is rounded to a centimetre."""
    whole_mm = abs(metres * 1000 - round(metres * 1000)) < 1e-6
    return _trimmed(metres, 3 if whole_mm or metres < 0.1 else 2)


def _inches_and_feet(metres: float) -> str:
    inches = metres / INCH
    sixteenths = round(inches * 16)
    exact = abs(inches - sixteenths / 16) <= _AS_GOOD_AS_EXACT_IN
    if inches <= _MOST_IN_INCHES + _AS_GOOD_AS_EXACT_IN:
        return f"{_sixteenths(sixteenths) if exact else _decimal_inches(inches)} in"
    if exact:
        feet, rest = divmod(sixteenths, 12 * 16)
        return f"{feet} ft {_sixteenths(rest)} in" if rest else f"{feet} ft"
    feet, tenths = divmod(round(metres / FOOT * 120), 120)
    return f"{feet} ft {_trimmed(tenths / 10, 1)} in" if tenths else f"{feet} ft"


def _sixteenths(count: int) -> str:
    """8 -> "1/2", 20 -> "1 1/4", 32 -> "2"."""
    whole, part = divmod(count, 16)
    if not part:
        return str(whole)
    shared = gcd(part, 16)
    fraction = f"{part // shared}/{16 // shared}"
    return f"{whole} {fraction}" if whole else fraction


def _decimal_inches(inches: float) -> str:
    said_to_a_hundredth = abs(inches * 100 - round(inches * 100)) < 1e-4
    return _trimmed(inches, 2 if said_to_a_hundredth or inches < 1.0 else 1)


def _trimmed(figure: float, decimals: int) -> str:
    text = f"{figure:.{decimals}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
