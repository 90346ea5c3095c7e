"""Beginnings of lines that may name a speaker: in which form, who, when, and where the words begin."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from intake.reading.thread.lines import Line
from intake.reading.thread.notices import is_notice
from intake.reading.thread.stamps import DATE, DAY_AND_TIME, DOTTED_TIME, IN_BRACKETS, STAMP

Form = Literal["stamp_first", "stamp_behind", "alone", "angle", "square", "label", "marked"]
"""stamp_first "10:32 Ann: ..."; stamp_behind "Ann (10:32): ..."; alone: name and time on a line of their own;
angle "<Ann> ..."; square "[Ann] ..."; label "Ann: ..."; marked "**Ann**: ..."."""


@dataclass(frozen=True, slots=True)
class Head:
    """A possible head on line number `line`. `begin`: where the words begin in the whole text."""

    line: int
    form: Form
    name: str
    stamp: str
    begin: int
    lines: int = 1
    """How many lines the head itself takes."""

    @property
    def timed(self) -> bool:
        """True where a time stands with the name."""
        return bool(self.stamp)


_EDGE = r"[ \t]*(?:(?:[-•·>*]|\d{1,4}[.)])\s+)?"
_STAMPED = rf"(?:[\[(]\s*(?P<in>{IN_BRACKETS})\s*[\])]|(?P<bare>{STAMP}|{DAY_AND_TIME}|{DOTTED_TIME}(?=\s+[^\W\d])))"
_NAMED = r"(?P<name>[^\s:<>\[\]|\d][^:<>\[\]|\n\t]{0,59}?)"
_SAYS = r"(?:\s+(?:says|said|writes|wrote|asks|asked|replied|replies))?"
_STAMP_FIRST = re.compile(
    rf"{_EDGE}{_STAMPED}(?:\s*[-–—|,;]\s*|\s*:\s+|\s+|\t)"
    rf"(?:<(?P<angle>[^<>\n]{{1,60}})>\s*:?|(?:\*\*|__|\*)?{_NAMED}(?:\*\*|__"
    rf"|\*)?{_SAYS}\s*(?::(?:\*\*|__|\*)?|\t|\s>\s|\s\|\s))"
    r"(?!//)[ \t]*",
    re.IGNORECASE,
)
_COLUMNS = re.compile(rf"\"?(?P<bare>{STAMP})\"?[,;]\"?(?P<name>[^\s,;\"\d][^,;\"\n]{{0,40}})\"?[,;]\"?", re.IGNORECASE)
_STAMP_FIRST_ALONE = re.compile(
    rf"{_EDGE}{_STAMPED}(?:\s*[-–—|,]\s*|\s+)(?:\*\*|__|\*)?{_NAMED}(?:\*\*|__|\*)?{_SAYS}\s*:?[ \t]*$", re.IGNORECASE
)
_STAMP_BEHIND = re.compile(
    rf"{_EDGE}(?:\*\*|__|\*)?{_NAMED}(?:\*\*|__|\*)?{_SAYS}\s*(?:,|[-–—|·•@]|\bat\b)?\s*{_STAMPED}"
    r"(?:\*\*|__|\*)?\s*(?::(?:\*\*|__|\*)?(?!\d)|\s[-–—>|]\s)[ \t]*",
    re.IGNORECASE,
)
_ALONE = re.compile(
    rf"{_EDGE}(?:\*\*|__|\*)?{_NAMED}(?:\*\*|__|\*)?{_SAYS}(?:\s*(?:,|[-–—|·•@]|\bat\b|\bon\b)\s*|\s+)"
    rf"(?:{_STAMPED}|(?:[\[(]\s*)?(?P<day>(?:today|yesterday|(?:mon|tues|wednes"
    rf"|thurs|fri|satur|sun)day)?,?\s*(?:at\s+)?"
    rf"{STAMP})(?:\s*[\])])?)(?:\*\*|__|\*)?\s*:?[ \t]*$",
    re.IGNORECASE,
)
_ANGLE = re.compile(rf"{_EDGE}<(?P<name>[^<>\n@]{{1,40}})>\s*:?[ \t]*")
_SQUARE = re.compile(rf"{_EDGE}\[(?P<name>[^\W\d][^\[\]\n:@]{{0,38}})\]\s*:?[ \t]*")
_MARKED = re.compile(
    rf"{_EDGE}(?P<m>\*\*|__|\*|_)(?P<name>[^\s:*_\n][^:*_\n]{{0,59}}?)(?:(?P=m)\s*:|:\s*(?P=m))[ \t]*", re.IGNORECASE
)
_LABEL = re.compile(
    rf"{_EDGE}(?P<name>[^\W_][^:：<>\[\]|\n\t?!;]{{0,49}}?"
    rf"|[\w.+-]{{1,40}}){_SAYS}\s*(?:：|:(?!//|\\)(?=[\s]|$|\D))[ \t]*"
)
_LABEL_DASH = re.compile(
    r"[ \t]*(?P<name>(?:visitor|customer|client|guest|prospect|caller|agent|support|sales|staff|operator|rep"
    r"|you|me)(?: \d+)?)(?:\s+[-–—|]|\s*>)\s+",
    re.IGNORECASE,
)
_TIME_LINE = re.compile(rf"[ \t]*[\[(]?(?P<stamp>{IN_BRACKETS})[\])]?[ \t]*$", re.IGNORECASE)
_NAME_LINE = re.compile(r"[ \t]*(?P<name>[^\W\d_][\w.'’-]*(?: [\w.'’()#-]+){0,3})[ \t]*:?[ \t]*$")
_NO_NAME = re.compile(
    rf"(?:[ap]\.?m\.?|uhr|utc|gmt|[cemp][es]?[sd]?t|today|yesterday|{DATE}|{DAY_AND_TIME})(?:\W+at)?", re.IGNORECASE
)
_ONLY_DATE = re.compile(rf"{DATE}$", re.IGNORECASE)
_FIRST = 260
"""A head stands within so many characters of its line."""


def is_time_line(line: Line) -> bool:
    """True for a line that is a time and nothing else."""
    return len(line.text) < 60 and _TIME_LINE.match(line.text) is not None


def heads_in(lines: list[Line]) -> list[list[Head]]:
    """For each line the heads that it may begin with, the surest form first."""
    return [list(_heads(lines, n)) for n in range(len(lines))]


def _heads(lines: list[Line], n: int) -> Iterator[Head]:
    line = lines[n]
    if line.blank or is_notice(line.text):
        return
    text = line.text[:_FIRST]
    for form, pattern in _PATTERNS:
        match = pattern.match(text)
        if match is None or (form == "alone" and len(line.text) > 120):
            continue
        parts = match.groupdict()
        name = (parts.get("angle") or parts.get("name") or "").strip(" \t*_,-–—")
        stamp = (parts.get("in") or parts.get("bare") or parts.get("day") or "").strip()
        if (
            not any(sign.isalpha() for sign in name)
            or _NO_NAME.fullmatch(name)
            or (form == "stamp_behind" and _ONLY_DATE.match(stamp) and len(name.split()) > 4)
        ):
            continue
        yield Head(n, form, name, stamp, line.start + match.end())
    yield from _on_two_lines(lines, n)


def _on_two_lines(lines: list[Line], n: int) -> Iterator[Head]:
    """A name on one line, the time on the next, the words below."""
    if n + 1 >= len(lines) or len(lines[n].text) > 60:
        return
    name, time = _NAME_LINE.match(lines[n].text), _TIME_LINE.match(lines[n + 1].text)
    if name is not None and time is not None and not _ONLY_DATE.match(time["stamp"]):
        yield Head(n, "alone", name["name"], time["stamp"], lines[n + 1].after, 2)


_PATTERNS: tuple[tuple[Form, re.Pattern[str]], ...] = (
    ("stamp_first", _COLUMNS),
    ("stamp_first", _STAMP_FIRST),
    ("stamp_behind", _STAMP_BEHIND),
    ("alone", _ALONE),
    ("alone", _STAMP_FIRST_ALONE),
    ("angle", _ANGLE),
    ("square", _SQUARE),
    ("marked", _MARKED),
    ("label", _LABEL),
    ("label", _LABEL_DASH),
)
