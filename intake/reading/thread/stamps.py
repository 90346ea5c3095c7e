"""Dates and times as people and programs write them in logs and mails."""

import re
from dataclasses import dataclass, replace
from datetime import date

_MONTHS = {
    name: n
    for n, names in enumerate(
        (
            "jan january januar janvier enero", "feb february februar février fevrier", "mar march märz maerz mars mär",
            "apr april avril", "may mai mayo", "jun june juni juin", "jul july juli juillet",
            "aug august août aout", "sep sept september septembre", "oct october okt oktober octobre",
            "nov november novembre", "dec december dez dezember décembre",
        ),
        1,
    )
    for name in names.split()
}  # fmt: skip
_MONTH = rf"(?:{'|'.join(sorted(_MONTHS, key=len, reverse=True))})\.?"
_DAY_NAME = (
    r"(?:(?:mon|tue|tues|wed|wednes|thu|thur|thurs|fri|sat|satur|sun)(?:day)?|mo|di|mi|do|fr|sa|so"
    r"|montag|dienstag|mittwoch|donnerstag|freitag|samstag|sonntag"
    r"|lun|mar|mer|jeu|ven|sam|dim|lundi|mardi|mercredi|jeudi|vendredi|samedi|dimanche)\.?"
)
_ORDINAL = r"(?:st|nd|rd|th|\.)?"
DATE = (
    rf"(?:{_DAY_NAME},?\s+)?(?:\d{{4}}[-/.]\d{{1,2}}[-/.]\d{{1,2}}|\d{{1,2}}[-/.]\d{{1,2}}[-/.](?:\d{{4}}|\d{{2}})"
    rf"|\d{{1,2}}{_ORDINAL}\s+(?:of\s+)?{_MONTH}(?:,?\s+\d{{4}})?|\d{{1,2}}-{_MONTH}-\d{{2,4}}"
    rf"|{_MONTH}\s+\d{{1,2}}{_ORDINAL}(?:,?\s+\d{{4}})?)"
)
_HALF = r"(?:\s?[ap]\.?m\b\.?)"
TIME = rf"(?:[01]?\d|2[0-3])(?::[0-5]\d(?:[:.][0-5]\d(?:[.,]\d{{1,6}})?)?{_HALF}?|{_HALF})"
DOTTED_TIME = r"(?:[01]\d|2[0-3])\.[0-5]\d"
_DOTTED = rf"(?:[01]?\d|2[0-3])[.h][0-5]\d(?:\.[0-5]\d)?{_HALF}?"
_ZONE = r"(?:\s?(?:Z\b|(?:GMT|UTC)?[+-]\d{2}:?\d{2}|GMT|UTC|[CEMP][ES]?[SD]?T)\b)?"
_BOTH = r"(?:T|,?\s+(?:at|um|à|@|-|–)?\s*|,)"
STAMP = rf"(?:{DATE}{_BOTH}{TIME}{_ZONE}|{TIME}{_ZONE}(?:,?\s+(?:on\s+)?{DATE})?|{DATE})"
"""A date with a time, either order, or one of them."""
DAY_AND_TIME = rf"(?:{_DAY_NAME}|today|yesterday),?\s+(?:at\s+)?{TIME}"
IN_BRACKETS = rf"(?:{STAMP}|{_DOTTED}|{DAY_AND_TIME})"
"""What counts as a stamp inside brackets, where a point between hours and minutes can be nothing else."""

_DATE_IN = re.compile(rf"(?<![\w.]){DATE}(?:(?!\w)|(?=T\d))", re.IGNORECASE)
_TIME_IN = re.compile(
    r"(?<![\d.:,/-])(?P<h>[01]?\d|2[0-3])(?:[:.h](?P<m>[0-5]\d)(?:[:.](?P<s>[0-5]\d)(?:[.,]\d{1,6})?)?"
    r"\s?(?P<half>[ap]\.?m)?|\s?(?P<only>[ap]\.?m))(?![\d:])",
    re.IGNORECASE,
)
_OFFSET = re.compile(r"(?:Z\b|(?:GMT|UTC)?(?P<sign>[+-])(?P<h>\d{2}):?(?P<m>\d{2})\b)")


@dataclass(frozen=True, slots=True)
class Stamp:
    """A moment as far as it is told. `day` and `time` in ISO 8601, "" where they are not; `numeric`: day or month?

    `numeric` holds the three numbers of a date such as 02/03/2026 until the whole log tells which one is the day.
    """

    day: str = ""
    time: str = ""
    offset: str = ""
    numeric: tuple[int, int, int] | None = None
    half: bool = False
    """The time is told with am or pm."""
    dotted: bool = False
    """The date is told with points, which puts the day first."""

    @property
    def iso(self) -> str | None:
        """Date and time, or the one that there is; None for neither."""
        if self.day and self.time:
            return f"{self.day}T{self.time}{self.offset}"
        return self.day or self.time or None

    def on(self, above: "Stamp") -> "Stamp":
        """The same with the day that a line above gives, where it has a time and no day of its own."""
        if self.day or self.numeric or not self.time:
            return self
        return replace(self, day=above.day, numeric=above.numeric, dotted=above.dotted)


NO_STAMP = Stamp()


def stamp_of(text: str) -> Stamp:
    """The moment that these words tell; an empty stamp where they tell none. Never raises."""
    found = _DATE_IN.search(text[:200])
    rest = text[:200] if found is None else text[: found.start()] + " " * 3 + text[found.end() : 200].lstrip("T")
    stamp = _day(found.group()) if found is not None else Stamp()
    time = _TIME_IN.search(rest)
    if time is None:
        return stamp
    hours, minutes = int(time["h"]), int(time["m"] or 0)
    half = (time["half"] or time["only"] or "").lower()[:1]
    if half and 1 <= hours <= 12:
        hours = hours % 12 + (12 if half == "p" else 0)
    told = f"{hours:02d}:{minutes:02d}" + (f":{time['s']}" if time["s"] else "")
    zone = _OFFSET.search(rest, time.end())
    offset = "" if zone is None else f"{zone['sign']}{zone['h']}:{zone['m']}" if zone["sign"] else "+00:00"
    return replace(stamp, time=told, offset=offset, half=bool(half))


def settled(stamps: list[Stamp]) -> list[Stamp]:
    """The same with every date such as 02/03/2026 put right: one of them with a 13 or more tells it for all.

    Where none tells, points and 24-hour times put the day first, am and pm the month.
    """
    open_dates = [stamp for stamp in stamps if stamp.numeric is not None]
    if not open_dates:
        return stamps
    firsts, seconds = (max(stamp.numeric[n] for stamp in open_dates if stamp.numeric) for n in (0, 1))
    day_first = firsts > 12 or (seconds <= 12 and not any(stamp.half for stamp in open_dates))
    day_first = day_first or (seconds <= 12 and any(stamp.dotted for stamp in open_dates))
    return [_ordered(stamp, day_first) for stamp in stamps]


def _ordered(stamp: Stamp, day_first: bool) -> Stamp:
    if stamp.numeric is None:
        return stamp
    first, second, year = stamp.numeric
    day, month = (first, second) if day_first else (second, first)
    return replace(stamp, day=_iso(year, month, day) or _iso(year, day, month), numeric=None)


def _day(text: str) -> Stamp:
    numbers = [int(number) for number in re.findall(r"\d+", text)]
    month = next((_MONTHS[word] for word in re.findall(r"[^\W\d_]+", text.lower())[::-1] if word in _MONTHS), None)
    if month is not None and len(numbers) == 2:
        return Stamp(day=_iso(_year(numbers[1]), month, numbers[0]))
    if month is not None or len(numbers) != 3:
        return Stamp()  # a day without its year is no date of ISO 8601
    if numbers[0] > 31:
        return Stamp(day=_iso(numbers[0], numbers[1], numbers[2]))
    return Stamp(numeric=(numbers[0], numbers[1], _year(numbers[2])), dotted="." in text)


def _year(number: int) -> int:
    return number + 2000 if number < 100 else number


def _iso(year: int, month: int, day: int) -> str:
    try:
        return date(year, month, day).isoformat()
    except ValueError:
        return ""
