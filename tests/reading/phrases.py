"""The phrasebook: ways to answer the question about one field, rendered with values and read back.

An entry of `phrasebook/*.toml` says how somebody puts an answer (`say`, with one placeholder for the number); the
values are drawn here, so that no number was chosen to suit the reader.
"""

import random
import tomllib
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

from intake.spec.vocabulary import vocabulary

FOLDER = Path(__file__).parent / "phrasebook"
_ONES = [
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
    "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
]  # fmt: skip
_TENS = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
_USUAL: dict[str, tuple[float, float]] = {
    "product.length": (0.12, 0.9), "product.width": (0.1, 0.6), "product.height": (0.08, 0.6),
    "product.diameter": (0.05, 0.4), "product.base": (0.05, 0.4), "product.base_width": (0.05, 0.4),
    "product.centre_height": (0.05, 0.4), "product.weight": (0.3, 40.0), "rate.normal": (2.0, 90.0),
    "rate.peak": (3.0, 120.0), "rate.pieces": (60.0, 1200.0), "rise.infeed_height": (0.5, 1.4),
    "rise.discharge_height": (2.2, 9.0), "rise.height": (1.2, 9.0), "space.length": (1.5, 8.0),
    "space.width": (1.0, 6.0), "space.ceiling": (3.0, 12.0), "space.opening_width": (0.9, 4.0),
    "space.opening_height": (1.9, 4.5), "handling.squeeze_limit": (5.0, 150.0), "test.squeeze_mark": (5.0, 150.0),
    "test.grip_slip": (5.0, 100.0), "handling.tilt": (3.0, 40.0), "test.slip_angle": (10.0, 40.0),
    "test.tip_angle": (10.0, 40.0), "temperature.room": (-15.0, 38.0), "temperature.product": (-15.0, 90.0),
    "cleaning.pressure": (2e5, 1.2e7), "site.air_pressure": (4e5, 9e5), "project.weeks": (6.0, 40.0),
    "site.hours": (6.0, 22.0),
}  # fmt: skip
"""Canonical ends of what people say of a field (common practice, no source)."""
_COUNTS = {
    "site.voltage": (208, 230, 240, 380, 400, 415, 460, 480), "site.frequency": (50, 60), "site.phases": (1, 3),
    "product.sizes": (2, 3, 4, 6, 8, 12), "product.pieces": (4, 6, 12, 24), "rise.levels": (2, 3, 4),
    "project.machines": (1, 2, 3, 4), "rise.turn": (0, 90, 180, 270),
}  # fmt: skip
_FACTORS = {
    "mm": 0.001, "cm": 0.01, "m": 1.0, "in": 0.0254, "in_frac": 0.0254, "ft": 0.3048, "ft_in": 0.0254,
    "ft_words": 0.3048, "kg": 1.0, "g": 0.001, "lb": 0.45359237, "lb_oz": 0.45359237 / 16, "per_min": 1.0,
    "per_hour": 1 / 60, "per_sec": 60.0, "bar": 1e5, "psi": 6894.757293168361, "mpa": 1e6, "n": 1.0,
    "lbf": 4.4482216152605, "kgf": 9.80665, "deg": 1.0, "v": 1.0, "hz": 1.0, "hours": 1.0, "weeks": 1.0,
}  # fmt: skip
_STEPS = {
    "mm": 5.0, "cm": 1.0, "m": 0.1, "in": 0.5, "in_frac": 0.125, "ft": 0.5, "ft_in": 1.0, "ft_words": 0.5, "kg": 0.5,
    "g": 10.0, "lb": 1.0, "lb_oz": 1.0, "per_min": 1.0, "per_hour": 20.0, "per_sec": 0.5, "bar": 1.0, "psi": 5.0,
    "mpa": 0.1, "n": 5.0, "lbf": 1.0, "kgf": 0.5, "deg": 1.0, "c": 1.0, "f": 1.0, "hours": 1.0, "weeks": 1.0,
}  # fmt: skip
_FEET_STYLES = (
    "{f}'{i}\"",
    "{f}'-{i}\"",
    "{f}' {i}\"",
    "{f} ft {i} in",
    "{f} feet {i} inches",
    "{f} ft {i}",
    "{f}' {i}",
)


def entries(*, held: bool | None = None) -> list[dict[str, Any]]:
    """All entries with a value to give; `held`: only those kept back, or only the others."""
    found = []
    for file in sorted(FOLDER.glob("*.toml")):
        if file.stem not in ("none", "also"):
            found += tomllib.loads(file.read_text(encoding="utf-8"))["answer"]
    return [entry for entry in found if held is None or bool(entry.get("held")) == held]


def without(stem: str = "none", *, held: bool | None = None) -> list[dict[str, Any]]:
    """Entries that give no fact of the field asked ("none"), or more facts than that one ("also")."""
    found = tomllib.loads((FOLDER / f"{stem}.toml").read_text(encoding="utf-8"))["answer"]
    return [entry for entry in found if held is None or bool(entry.get("held")) == held]


def rendered(entry: dict[str, Any], seed: int) -> Iterator[tuple[str, Any]]:
    """A text, and what it says: (low, high) in the canonical unit, a word, true or false."""
    if "value" in entry:
        value = entry["value"]
        number = vocabulary()[entry["field"]].is_number
        yield entry["say"], (float(value), float(value)) if number else value
        return
    dice = random.Random(f"{seed} {entry['say']}")
    name = _placeholder(entry)
    first, value = _drawn(entry["field"], name, dice)
    if entry.get("range"):
        second, other = _drawn(entry["field"], name, dice)
        if other == value:
            return
        (first, value), (second, other) = sorted(((first, value), (second, other)), key=lambda pair: pair[1])
        yield entry["say"].format(**{f"low_{name}": first, f"high_{name}": second}), (value, other)
        return
    text = entry["say"].format(**{name: first})
    yield text, _bounded(entry, value)


def filled(entry: dict[str, Any], value: Any, dice: random.Random) -> tuple[str, Any] | None:
    """The entry saying that value, and the value as said (rounded as people round); None where it says another one."""
    if "value" in entry:
        same = float(entry["value"]) == float(value) if isinstance(value, (int, float)) and not isinstance(
            value, bool) and not isinstance(entry["value"], (str, bool)) else entry["value"] == value  # fmt: skip
        return (entry["say"], value) if same else None
    if entry.get("range") or entry.get("sure") in ("most", "least") or isinstance(value, (str, bool)):
        return None
    name = _placeholder(entry)
    if entry["field"] in _COUNTS or name in ("count", "count_words"):
        shown = _words(int(value)) if name == "count_words" else f"{value:g}"
        return entry["say"].format(**{name: shown}), float(value)
    if name in ("c", "f"):
        shown = round(value if name == "c" else value * 9 / 5 + 32)
        return entry["say"].format(**{name: str(shown)}), float(shown) if name == "c" else (shown - 32) * 5 / 9
    if name == "every_s":
        seconds = round(60.0 / value)
        return (entry["say"].format(every_s=str(seconds)), 60.0 / seconds) if seconds >= 1 else None
    steps = round(value / _FACTORS[name] / _STEPS[name])
    amount = steps * _STEPS[name]
    if steps < 1 or abs(amount * _FACTORS[name] - value) > 0.06 * value:
        return None
    return entry["say"].format(**{name: _typed(name, amount, dice)}), amount * _FACTORS[name]


def _placeholder(entry: dict[str, Any]) -> str:
    return next(
        key
        for key in (*_FACTORS, "c", "f", "every_s", "count", "count_words")
        if f"{{{key}}}" in entry["say"] or f"{{low_{key}}}" in entry["say"]
    )


def _bounded(entry: dict[str, Any], value: float) -> tuple[float | None, float | None]:
    sure = entry.get("sure")
    if entry["field"].startswith("rate.") and sure == "most":
        return (value, value)
    if sure == "most":
        return (None, value)
    return (value, None) if sure == "least" else (value, value)


def _drawn(name: str, unit: str, dice: random.Random) -> tuple[str, float]:
    """A number as typed in that unit, and its canonical value."""
    if name in _COUNTS:
        count = dice.choice(_COUNTS[name])
        return (_words(count) if unit == "count_words" else str(count)), float(count)
    low, high = _USUAL[name]
    if unit in ("c", "f"):
        celsius = dice.uniform(low, high)
        shown = round(celsius if unit == "c" else celsius * 9 / 5 + 32)
        return str(shown), float(shown) if unit == "c" else (shown - 32) * 5 / 9
    if unit == "every_s":
        seconds = dice.choice([n for n in (1, 2, 3, 4, 5, 6, 10, 12, 15, 20) if low <= 60 / n <= high] or [2])
        return str(seconds), 60.0 / seconds
    factor, step = _FACTORS[unit], _STEPS[unit]
    steps = max(1, round(dice.uniform(low, high) / factor / step))
    amount = steps * step
    return _typed(unit, amount, dice), amount * factor


def _typed(unit: str, amount: float, dice: random.Random) -> str:
    if unit == "ft_in":
        return dice.choice(_FEET_STYLES).format(f=int(amount) // 12, i=int(amount) % 12)
    if unit == "ft_words":
        whole, half = int(amount), amount % 1
        return f"{_words(whole)}{' and a half' if half else ''} feet"
    if unit == "in_frac":
        whole, part = int(amount), Fraction(amount % 1).limit_denominator(8)
        return f"{whole} {part.numerator}/{part.denominator}" if part else f"{whole}"
    if unit == "lb_oz":
        return f"{int(amount) // 16} lb {int(amount) % 16} oz"
    return f"{amount:.10g}"


def _words(number: int) -> str:
    if number < 20:
        return _ONES[number]
    return _TENS[number // 10] + (f"-{_ONES[number % 10]}" if number % 10 else "")
