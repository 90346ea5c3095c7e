"""Trouble with the book, said to a person: what happened and how to mend it."""

import sqlite3
from pathlib import Path
from typing import Literal

from intake.spec.clean import one_line

Code = Literal[
    "full", "read_only", "locked", "damaged", "disk", "cannot_open", "newer", "not_a_book", "conflict", "no_case",
    "taken", "bad_name", "bad_file", "bad_event", "bad_find", "too_large", "no_file",
]  # fmt: skip


class BookError(Exception):
    """The book could not do it. `code` tells the trouble; nothing of the call was kept."""

    def __init__(self, code: Code, what: str, mend: str) -> None:
        self.code: Code = code
        self.what, self.mend = one_line(what, 400), one_line(mend, 400)
        super().__init__(f"{self.what}. {self.mend}")


_SQLITE: tuple[tuple[tuple[str, ...], Code, str, str], ...] = (
    (("SQLITE_FULL",), "full", "the disk is full", "Free some space; nothing kept before is lost"),
    (
        ("SQLITE_READONLY", "SQLITE_PERM"),
        "read_only",
        "the file or its folder cannot be written to",
        "Give yourself write permission, or name another place in INTAKE_BOOK",
    ),
    (
        ("SQLITE_BUSY", "SQLITE_LOCKED", "SQLITE_PROTOCOL"),
        "locked",
        "another program holds it locked",
        "Close what else uses it, then try again",
    ),
    (
        ("SQLITE_CORRUPT", "SQLITE_FORMAT"),
        "damaged",
        "the file is damaged",
        "Put it aside under another name and bring back the last backup",
    ),
    (
        ("SQLITE_NOTADB",),
        "not_a_book",
        "the file is no casebook",
        "Move it away, or name another place in INTAKE_BOOK",
    ),
    (
        ("SQLITE_CANTOPEN", "SQLITE_AUTH"),
        "cannot_open",
        "the file cannot be opened",
        "Check that the folder is there and is yours, or name another place in INTAKE_BOOK",
    ),
    (
        ("SQLITE_IOERR", "SQLITE_NOLFS"),
        "disk",
        "the disk reports an error",
        "Save a copy elsewhere and have the disk looked at",
    ),
)


def from_sqlite(error: sqlite3.Error, path: Path) -> BookError:
    """The same trouble in words."""
    name = getattr(error, "sqlite_errorname", "") or ""
    for starts, code, what, mend in _SQLITE:
        if name.startswith(starts):
            return BookError(code, f"casebook {path}: {what}", f"{mend}.")
    return BookError(
        "damaged",
        f"casebook {path}: it does not answer as a casebook should ({error})",
        "Put it aside under another name and bring back the last backup.",
    )


def no_case(case_id: str) -> BookError:
    """There is no case of that id."""
    return BookError("no_case", f'no case is kept under "{case_id}"', "List them with: intake cases --all")
