"""Labelled lines of shorthand: how their files are read, and how a reading is held against them."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from labels import near, wanted

from intake.reading import read
from intake.spec.vocabulary import vocabulary

FOLDER = Path(__file__).parent / "shorthand"
_SHARED = {
    "size": ("product.length", "product.width", "product.height"),
    "floor": ("space.length", "space.width"),
}


@dataclass(slots=True)
class Line:
    """One line, the question that it answers, what it says and what must be asked back."""

    text: str
    asked: str | None
    facts: dict[str, Any]
    doubts: set[str]


@dataclass(slots=True)
class Tally:
    """Facts read right, read in all and labelled; doubts raised and labelled; what went wrong."""

    right: int = 0
    said: int = 0
    wanted: int = 0
    raised: int = 0
    doubted: int = 0
    whole: int = 0
    lines: int = 0
    faults: list[str] = field(default_factory=list)

    def __str__(self) -> str:
        return (
            f"{self.lines} lines, {self.whole} wholly right; precision {self.right}/{self.said}, recall"
            f" {self.right}/{self.wanted}; asked back {self.raised} of {self.doubted}"
        )


def lines(name: str) -> Iterator[Line]:
    """All lines of a file ("open", "aside")."""
    asked = text = None
    for row in (FOLDER / f"{name}.txt").read_text(encoding="utf-8").splitlines():
        if row.startswith("@ "):
            asked = row[2:].strip()
        elif row.startswith("  "):
            assert text is not None, row
            yield _labelled(text, asked, row.strip())
            asked = text = None
        elif row.strip() and not row.startswith("#"):
            text = row


def _labelled(text: str, asked: str | None, row: str) -> Line:
    line = Line(text, asked, {}, set())
    for part in () if row == "-" else row.split("; "):
        if part.startswith("?"):
            line.doubts.add(part[1:])
            continue
        name, _, value = part.partition("=")
        for key, one in _spelt(name, value):
            line.facts[key] = wanted(key, _label(key, one))
    return line


def _spelt(name: str, value: str) -> Iterator[tuple[str, str]]:
    if name == "heights":
        yield from zip(("rise.infeed_height", "rise.discharge_height"), value.split(">"), strict=True)
    elif name in _SHARED:
        figures, unit = value.split()
        yield from ((key, f"{one} {unit}") for key, one in zip(_SHARED[name], figures.split("x"), strict=True))
    else:
        yield name, value


def _label(name: str, value: str) -> Any:
    field = vocabulary()[name]
    if field.kind == "yes_no":
        return value == "yes"
    ends = re.fullmatch(r"([\d.-]*?)\.\.([\d.-]*) ?(.*)", value) if field.is_number else None
    if ends:
        return [f"{end} {ends[3]}".strip() if end else None for end in ends.groups()[:2]]
    return value


def tally(name: str) -> Tally:
    """Hold the reader against the labels of a file."""
    total = Tally()
    for line in lines(name):
        heard = read(line.text, line.asked, shorthand=True)
        got = {
            fact.field if fact.size == 1 else f"{fact.field}@{fact.size}": (fact.low, fact.high)
            if fact.is_number
            else fact.value
            for fact in heard.facts
        }
        asked = {doubt.field for doubt in heard.doubts}
        good = {key for key, want in line.facts.items() if key in got and near(want, got[key])}
        missed = {key: want for key, want in line.facts.items() if key not in good}
        wrong = {key: value for key, value in got.items() if key not in good}
        total.right, total.said, total.wanted = (
            total.right + len(good),
            total.said + len(got),
            total.wanted + len(line.facts),
        )
        total.raised, total.doubted = total.raised + len(line.doubts & asked), total.doubted + len(line.doubts)
        total.lines += 1
        total.whole += not missed and not wrong and line.doubts <= asked
        if missed or wrong or not line.doubts <= asked:
            total.faults.append(
                f"{line.text!r} (asked {line.asked})\n   missed {missed}\n   wrong {wrong}\n   doubts {asked}, wanted"
                f" {line.doubts}\n   unread {heard.unread}"
            )
    return total
