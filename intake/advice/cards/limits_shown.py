"""Limits of the maker's range in people's units: the one place where cards turn SI back."""

from collections.abc import Mapping
from math import ceil, floor

from intake.interview.wording import Sentences, joined
from intake.sizing.range_data import COMMON, Limits, RangeData
from intake.spec.display import System, show, show_range
from intake.spec.shown_units import FOOT, INCH

GREATEST, LEAST = "most", "least"


def limits_of(data: RangeData, name: str) -> Limits | None:
    """The limits of a family, or those that all share under "common"."""
    return data.common if name == COMMON else data.families.get(name)


def shown_limit(limits: Limits, key: str, system: System) -> str | None:
    """One entry with its unit: figures of a list as their range, words of a list joined."""
    if key not in limits.keys:
        return None
    value, unit = limits[key], limits.units[key]
    if isinstance(value, str):
        return value.replace("_", " ")
    if isinstance(value, tuple):
        words = [str(one).replace("_", " ") for one in value if isinstance(one, str)]
        return joined(words) if words else show_range(min(value), max(value), unit, system)
    return _shown(value, unit, system, key)


def extreme(data: RangeData, which: str, key: str) -> tuple[float, list[str], str] | None:
    """The greatest or least value of a key over all families that have it as a figure, who has it, and its unit."""
    found = {name: limits[key] for name, limits in data.families.items() if key in limits.keys}
    figures = {name: _ends(value)[which == GREATEST] for name, value in found.items() if not _is_words(value)}
    if not figures:
        return None
    value = (max if which == GREATEST else min)(figures.values())
    names = [name for name, figure in figures.items() if figure == value]
    return value, names, data.families[names[0]].units[key]


def shown_extreme(data: RangeData, which: str, key: str, system: System) -> str | None:
    """That value with its unit."""
    found = extreme(data, which, key)
    return None if found is None else _shown(found[0], found[2], system, key)


def having(data: RangeData, key: str, word: str) -> list[str]:
    """The families whose list under a key holds a word: who may be washed at high pressure."""
    lists: Mapping[str, object] = {n: limits[key] for n, limits in data.families.items() if key in limits.keys}
    return [name for name, value in lists.items() if isinstance(value, tuple) and word in value]


def names(families: list[str], sentences: Sentences, last: str = "and") -> str:
    """Families by what the trade calls them."""
    return joined([sentences.find(f"family.{name}") or name.replace("_", " ") for name in families], last)


def _shown(value: float, unit: str, system: System, key: str) -> str:
    """Long lengths in whole inches on the safe side: a limit of 7.6 m is 24 ft 11 in, not a tenth more."""
    if unit == "m" and system == "us" and value >= FOOT:
        inches = value / INCH
        value = (floor(inches + 1e-6) if "_most" in key else ceil(inches - 1e-6)) * INCH
    return show(value, unit, system)


def _ends(value: object) -> tuple[float, float]:
    if isinstance(value, tuple):
        return float(min(value)), float(max(value))
    assert isinstance(value, int | float)
    return float(value), float(value)


def _is_words(value: object) -> bool:
    return isinstance(value, str) or (isinstance(value, tuple) and any(isinstance(one, str) for one in value))
