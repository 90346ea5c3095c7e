"""The list of kept cases: which are wanted, one line each, and the same for programs."""

import argparse
import shutil
import sys
from datetime import date
from typing import Any

from intake.casebook import Book, Entry, Find
from intake.cli.case_columns import entry_lines
from intake.cli.input_error import InputError
from intake.cli.streams import print_json
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
    from intake.interview.wording import in_force

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
