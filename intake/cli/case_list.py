"""The list of kept cases: one line each in columns that fit the width, and the same for programs."""

import argparse
import re
import shutil
import sys
from collections.abc import Callable, Sequence
from datetime import date, datetime
from typing import Any

from intake.casebook import Book, Entry, Find
from intake.cli.input_error import InputError
from intake.cli.streams import print_json
from intake.interview.reasons import short_family_name
from intake.interview.wording import in_force
from intake.sizing.result import FAMILIES
from intake.spec.clean import one_line
from intake.spec.days import day_of

_PIPED, _NARROWEST, _FIRST = 100, 60, 200


def show_list(book: Book, args: argparse.Namespace) -> None:
    """Print the cases that are wanted."""
    find = _find(args)
    limit = args.limit if args.limit is not None else None if args.json else _FIRST
    if limit is not None and limit < 0:
        raise InputError("--limit is a count of cases, 0 for all.")
    found = book.cases(find=find, limit=limit or None)
    today = date.today().isoformat()
    if args.json:
        print_json([entry_shape(entry, today) for entry in found])
        return
    if not found:
        print(_nothing(book, args))
        return
    print(*entry_lines(found, today, _width()), sep="\n")
    whole = book.count(find) if limit and len(found) == limit else len(found)
    print(f"{len(found)} of {whole:,} cases; --limit 0 lists all" if whole > len(found) else _counted(whole))


def entry_lines(entries: Sequence[Entry], today: str, width: int) -> list[str]:
    """One line a case: id, last change, standing, who waits since when, what is due, best family, title.

    Columns that say nothing are left out; where the width is short, times, words and the title are cut.
    """
    columns = {name: [shown(entry, today) for entry in entries] for name, shown in _COLUMNS.items()}
    widths = {name: max(map(len, texts)) for name, texts in columns.items() if name == "id" or any(texts)}
    for name, least in _GIVE_WAY:
        over = sum(widths.values()) + 2 * (len(widths) - 1) - width
        if name in widths and over > 0:
            if least == 0:
                del widths[name]
            else:
                widths[name] = min(widths[name], max(least, widths[name] - over))
    rows = zip(*(columns[name] for name in widths), strict=True)
    return ["  ".join(map(_fit, row, widths.values())).rstrip() for row in rows]


def entry_shape(entry: Entry, today: str) -> dict[str, Any]:
    """One case in the list, for programs."""
    index = entry.index
    return {
        "id": entry.id,
        "title": index.title,
        "standing": index.standing,
        "best": index.best or None,
        "waiting_for": index.waiting_for or None,
        "since": index.since or None,
        "due": index.due or None,
        "overdue": bool(index.due) and index.due < today,
        "open": index.open,
        "begun": entry.begun,
        "updated": entry.updated,
        "archived": entry.archived,
        "events": entry.events,
    }


def local(at: str, form: str = "%Y-%m-%d %H:%M") -> str:
    """A time of an event on this computer's clock."""
    try:
        return datetime.fromisoformat(at).astimezone().strftime(form)
    except (ValueError, OverflowError):
        return one_line(at, 20)


def day(words: str | None, option: str) -> str:
    """A day as people type it, as YYYY-MM-DD; "" for none. Raises InputError."""
    if words is None:
        return ""
    try:
        return day_of(words).isoformat()
    except ValueError as slip:
        raise InputError(f"{option}: {slip}") from None


def _find(args: argparse.Namespace) -> Find:
    return Find(
        words=" ".join(args.words),
        family=_family(args.family),
        standing=args.standing or "",
        since=day(args.since, "--since"),
        until=day(args.until, "--until"),
        due_by=day(args.due, "--due"),
        open_only=args.open,
        waiting_for=args.waiting_for or "",
        archived=args.all,
    )


def _family(words: str | None) -> str:
    if words is None:
        return ""
    from intake.advice import AdviceError
    from intake.advice.by_name import family_of

    try:
        return family_of(words, in_force())
    except AdviceError as slip:
        raise InputError(f"--family: {slip}") from None


def _nothing(book: Book, args: argparse.Namespace) -> str:
    if not book.count(Find(archived=True)):
        return "No cases are kept yet. Begin one: intake ask --case NAME"
    what = (
        "No case has these words."
        if _find(args) == Find(words=" ".join(args.words), archived=args.all)
        else ("No case is like that.")
    )
    return what + ("" if args.all else " Cases on the shelf are looked at with --all.")


def _counted(whole: int) -> str:
    return "1 case" if whole == 1 else f"{whole:,} cases"


def _width() -> int:
    """Columns of the terminal; 100 where nobody's terminal shows it."""
    return max(_NARROWEST, shutil.get_terminal_size().columns) if sys.stdout.isatty() else _PIPED


def _fit(text: str, size: int) -> str:
    if len(text) <= size:
        return text.ljust(size)
    if _DAY_AND_TIME.fullmatch(text):
        return text[:10].ljust(size)[:size]
    return text[: size - 1].rstrip().ljust(size - 1) + "…"


def _standing(entry: Entry, today: str) -> str:
    return "on the shelf" if entry.archived else one_line(entry.index.standing, 40)


def _waits(entry: Entry, today: str) -> str:
    """Who has something to do, since when."""
    who, since = one_line(entry.index.waiting_for, 40), local(entry.index.since, "%m-%d")
    return f"{who} since {since}" if who and entry.index.since else who


def _due(entry: Entry, today: str) -> str:
    due = one_line(entry.index.due, 10)
    return "" if not due else f"{due[5:]} OVERDUE" if due < today else f"due {due[5:]}"


def _best(entry: Entry, today: str) -> str:
    return short_family_name(entry.index.best, in_force()) if entry.index.best in FAMILIES else ""


_COLUMNS: dict[str, Callable[[Entry, str], str]] = {
    "id": lambda entry, today: entry.id,
    "changed": lambda entry, today: local(entry.updated),
    "standing": _standing,
    "waits": _waits,
    "due": _due,
    "best": _best,
    "title": lambda entry, today: one_line(entry.index.title, 60),
}

# Which columns give way where the width is short, in that order, and to how many signs; 0: they may be left out.
_GIVE_WAY = (
    ("title", 24),
    ("changed", 10),
    ("standing", 14),
    ("waits", 14),
    ("title", 8),
    ("best", 6),
    ("waits", 8),
    ("best", 0),
    ("title", 0),
    ("changed", 0),
)
_DAY_AND_TIME = re.compile(r"\d{4}-\d\d-\d\d \d\d:\d\d")
