"""Kept cases in columns that fit a width: what matters least is said shorter first, then cut, then left out."""

from collections.abc import Callable, Sequence
from datetime import datetime

from intake.casebook import Entry
from intake.interview.reasons import short_family_name
from intake.interview.wording import in_force
from intake.sizing.result import FAMILIES
from intake.spec.clean import one_line

_SHORT_STANDINGS = (
    ("waiting for the visitor", "waiting"),
    ("samples asked for", "samples"),
    ("handed over, revision", "handed over"),
)


def entry_lines(entries: Sequence[Entry], today: str, width: int) -> list[str]:
    """One line a case: id, last change, standing, who waits since when, what is due, best family, title.

    `today` is YYYY-MM-DD. Columns that say nothing are left out. The id and what is overdue are never cut.
    """
    shown = {name: [say(entry, today) for entry in entries] for name, say in _COLUMNS.items()}
    widths = {name: _widest(texts) for name, texts in shown.items() if name == "id" or any(texts)}
    for name, shorter in _GIVE_WAY:
        over = sum(widths.values()) + 2 * (len(widths) - 1) - width
        if over <= 0 or name not in widths:
            continue
        if shorter is None:
            del widths[name]
        elif isinstance(shorter, int):
            widths[name] = min(widths[name], max(shorter, widths[name] - over))
        else:
            shown[name] = [shorter(entry, today) for entry in entries]
            widths[name] = _widest(shown[name])
    rows = zip(*(shown[name] for name in widths), strict=True)
    return ["  ".join(map(_fit, row, widths.values())).rstrip() for row in rows]


def local(at: str, form: str = "%Y-%m-%d %H:%M") -> str:
    """A time of an event on this computer's clock."""
    try:
        return datetime.fromisoformat(at).astimezone().strftime(form)
    except (ValueError, OverflowError):
        return one_line(at, 20)


def _widest(texts: Sequence[str]) -> int:
    return max(map(len, texts))


def _fit(text: str, size: int) -> str:
    return text.ljust(size) if len(text) <= size else text[: size - 1].rstrip().ljust(size - 1) + "…"


def _near(day: str, today: str) -> str:
    """A day without its year where that is this year's."""
    return day[5:] if day[:4] == today[:4] else day


def _changed(entry: Entry, today: str) -> str:
    return local(entry.updated)


def _changed_day(entry: Entry, today: str) -> str:
    return local(entry.updated, "%Y-%m-%d")


def _standing(entry: Entry, today: str) -> str:
    return "on the shelf" if entry.archived else one_line(entry.index.standing, 40)


def _standing_short(entry: Entry, today: str) -> str:
    said = _standing(entry, today)
    for long, short in _SHORT_STANDINGS:
        said = said.replace(long, short)
    return said


def _waits(entry: Entry, today: str) -> str:
    """Who has something to do, since when."""
    who, since = _waits_who(entry, today), entry.index.since
    return f"{who} since {_near(local(since, '%Y-%m-%d'), today)}" if who and since else who


def _waits_since(entry: Entry, today: str) -> str:
    return _waits(entry, today).replace(" since ", " ")


def _waits_who(entry: Entry, today: str) -> str:
    return one_line(entry.index.waiting_for, 40)


def _due(entry: Entry, today: str) -> str:
    due = one_line(entry.index.due, 10)
    return "" if not due else f"{_near(due, today)} OVERDUE" if due < today else f"due {_near(due, today)}"


def _best(entry: Entry, today: str) -> str:
    return short_family_name(entry.index.best, in_force()) if entry.index.best in FAMILIES else ""


_Form = Callable[[Entry, str], str]

_COLUMNS: dict[str, _Form] = {
    "id": lambda entry, today: entry.id,
    "changed": _changed,
    "standing": _standing,
    "waits": _waits,
    "due": _due,
    "best": _best,
    "title": lambda entry, today: one_line(entry.index.title, 60),
}

# What gives way where the width is short, in that order: cut to so many signs, said shorter, or (None) left out.
_GIVE_WAY: tuple[tuple[str, int | _Form | None], ...] = (
    ("title", 24),
    ("changed", _changed_day),
    ("waits", _waits_since),
    ("standing", _standing_short),
    ("title", 14),
    ("best", 8),
    ("title", 8),
    ("waits", _waits_who),
    ("best", None),
    ("title", None),
    ("changed", None),
    ("standing", 11),
    ("waits", 8),
)
