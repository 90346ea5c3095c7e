"""Labelled messages: how their files are read, and how a reading is held against them.

A line of `labelled/*/*.jsonl` holds the text, the field just asked, `facts` (every fact that a careful reader would put
on the spec), `more` (facts of fields that the labels need not give) and `absent` (what a sloppy reader would make of
it).
Figures stand as people wrote them ("9 ft + 6 in", "about 720 / hour"); pint turns them into canonical units.
"""

import json
import re
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

import pint

from intake.reading import read
from intake.spec.vocabulary import vocabulary

FOLDER = Path(__file__).parent / "labelled"
WITHIN = 0.005
_UNITS = {"degC": "degC", "1/min": "1/min", "h/day": "h/day", "1": ""}


@dataclass(slots=True)
class Score:
    """How many facts said were right, how many labelled ones were found, how many readings were forbidden."""

    right: int = 0
    said: int = 0
    wanted: int = 0
    forbidden: int = 0
    forbidable: int = 0
    whole: int = 0
    messages: int = 0
    faults: list[str] = field(default_factory=list)
    missed: Counter[str] = field(default_factory=Counter)
    wrong: Counter[str] = field(default_factory=Counter)

    @property
    def precision(self) -> float:
        """The share of right facts among those read."""
        return self.right / max(1, self.said)

    @property
    def recall(self) -> float:
        """The share of labelled facts that were read right."""
        return self.right / max(1, self.wanted)

    def __str__(self) -> str:
        return (
            f"{self.messages} messages, {self.whole} wholly right; precision {self.precision:.3f}, recall"
            f" {self.recall:.3f} of {self.wanted} facts; forbidden {self.forbidden} of {self.forbidable}"
        )


@cache
def _registry() -> Any:
    return pint.UnitRegistry()


def amount(text: str, unit: str) -> float:
    """ "9 ft + 6 in" in the canonical unit; temperatures by their scale."""
    total = 0.0
    for part in text.removeprefix("about ").split("+") if " + " in text else [text.removeprefix("about ")]:
        number, name = re.fullmatch(r"\s*(-?[\d.]+(?:e-?\d+)?)\s*(.*?)\s*", part).groups()  # type: ignore[union-attr]
        name = re.sub(r"^/", "1/", name).replace("1/ ", "1/")
        quantity = _registry().Quantity(float(number), name or "dimensionless")
        total += quantity.to(_UNITS.get(unit, unit) or "dimensionless").magnitude
    return total


def wanted(name: str, label: Any) -> tuple[float | None, float | None] | str | bool:
    """The label in the canonical unit: (low, high), a word, true or false."""
    base = vocabulary()[name.partition("@")[0]]
    if not base.is_number:
        return label
    if isinstance(label, list):
        low, high = (None if end is None else amount(str(end), base.unit) for end in label)
        return (low, high)
    value = amount(str(label), base.unit)
    return (value, value)


def near(want: Any, got: Any) -> bool:
    """Within half a percent, both ends; the same word; the same words but for case and outer spaces."""
    if isinstance(want, tuple) and isinstance(got, tuple):
        return all(
            (a is None) == (b is None) and (a is None or abs(a - b) <= WITHIN * max(abs(a), abs(b)) + 1e-9)
            for a, b in zip(want, got, strict=True)
        )
    if isinstance(want, str) and isinstance(got, str):
        return want.casefold().strip() == got.casefold().strip()
    return bool(want == got) and isinstance(want, bool) == isinstance(got, bool)


def facts_of(text: str, asked: str | None) -> dict[str, Any]:
    """What the reader makes of a message: field (with "@2" for further sizes) -> (low, high), word, true or false."""
    got: dict[str, Any] = {}
    for fact in read(text, asked).facts:
        key = fact.field if fact.size == 1 else f"{fact.field}@{fact.size}"
        got.setdefault(key, (fact.low, fact.high) if fact.is_number else fact.value)
    return got


def rows(half: str, folder: Path = FOLDER) -> list[dict[str, Any]]:
    """All labelled messages of a half ("open", "held")."""
    files = sorted((folder / half).glob("*.jsonl"))
    return [
        json.loads(line) for file in files for line in file.read_text(encoding="utf-8").splitlines() if line.strip()
    ]


def must_be_labelled(name: str) -> bool:
    """True for the fields whose facts the labels give in full."""
    return vocabulary()[name.partition("@")[0]].since == 1


def score(messages: Iterable[Mapping[str, Any]]) -> Score:
    """Hold the reader against the labels."""
    total = Score()
    for row in messages:
        got = {name: value for name, value in facts_of(row["text"], row["asked"]).items() if must_be_labelled(name)}
        want = {name: wanted(name, label) for name, label in row["facts"].items()}
        good = {name for name in want if name in got and near(want[name], got[name])}
        bad = {name: got[name] for name in got if name not in good}
        missed = {name: want[name] for name in want if name not in good}
        broken = [name for name in row.get("absent", []) if name in got and name not in want]
        total.right, total.said, total.wanted = total.right + len(good), total.said + len(got), total.wanted + len(want)
        total.forbidden, total.forbidable = total.forbidden + len(broken), total.forbidable + len(row.get("absent", []))
        total.messages += 1
        total.whole += not bad and not missed
        total.missed.update(missed.keys())
        total.wrong.update(bad.keys())
        if bad or missed:
            asked = f" (asked: {row['asked']})" if row["asked"] else ""
            total.faults.append(f"{row['id']}{asked}: {row['text']!r}\n   missed {missed}\n   wrong {bad}")
    return total
