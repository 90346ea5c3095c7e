"""Which units a visitor thinks in, guessed from the words."""

import re
from collections.abc import Iterable

from intake.spec.shown_units import System

# Short marks count only after a figure: "in" and "m" and "c" are words and letters elsewhere.
_US = re.compile(
    r"""(?<=\d)\s*(?:['’′"”″]|-?(?:ft|in|lbs?|oz|psi|fpm|hp|°?\s?f|deg\s?f|yds?|\#)\b)
    |\b(?:feet|foot|inch|inches|pounds?|ounces?|yards?|fahrenheit)\b""",
    re.IGNORECASE | re.VERBOSE,
)
_SI = re.compile(
    r"""(?<=\d)\s*(?:mm|cm|m|kg|kgs|g|°?\s?c|deg\s?c|bar|kpa|n|kn|kw|m/s|m/min)\b
    |\b(?:met(?:re|er)s?|millimet(?:re|er)s?|centimet(?:re|er)s?|kilos?|kilograms?|grams?|celsius|newtons?)\b""",
    re.IGNORECASE | re.VERBOSE,
)


def system_of(texts: Iterable[str]) -> System:
    """The system that most of the units in these messages belong to; "us" when they tell nothing.

    >>> system_of(["400 x 300 x 250 mm, 14 kg", "up about 12 ft"])
    'si'
    """
    us = si = 0
    for text in texts:
        us += len(_US.findall(text))
        si += len(_SI.findall(text))
    return "si" if si > us else "us"
