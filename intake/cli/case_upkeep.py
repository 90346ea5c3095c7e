"""Looking after the whole book: its index written anew, its soundness, a copy."""

import argparse
from collections.abc import Callable
from pathlib import Path
from time import monotonic

from intake.casebook import Book, Find, IndexRow
from intake.cli.case_actions import told
from intake.cli.streams import complain, print_json
from intake.spec import Event

_TELL_EACH_S = 2.0


def _rebuild(book: Book, args: argparse.Namespace) -> None:
    from intake.desk.keeping import index_of_events

    whole = book.count(Find(archived=True))
    done, told_at = 0, monotonic()

    def index_of(case_id: str, events: list[Event]) -> IndexRow:
        nonlocal done, told_at
        done += 1
        if monotonic() - told_at > _TELL_EACH_S:
            complain(f"{done:,} of {whole:,} cases")
            told_at = monotonic()
        return index_of_events(case_id, events)

    count = book.rebuild(index_of)
    told(args, {"cases": count}, f"The index of {count:,} cases was written anew.")


def _check(book: Book, args: argparse.Namespace) -> int:
    found = book.check()
    if args.json:
        print_json(found)
    elif found:
        print(*found, sep="\n")
    else:
        print(f"{book.path}: sound.")
    if found:
        complain(f"intake cases: {len(found)} found wrong. Copy the file first; then bring back a backup if need be.")
    return 2 if found else 0


def _backup(book: Book, args: argparse.Namespace, file: str) -> None:
    book.backup(Path(file))
    told(
        args,
        {"file": file, "cases": book.count(Find(archived=True))},
        f"{file}: a copy of all cases, persons and files included. To use it: INTAKE_BOOK={file} intake cases",
    )


DOING: dict[str, Callable[..., int | None]] = {"rebuild": _rebuild, "check": _check, "backup": _backup}
