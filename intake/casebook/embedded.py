"""The embedded book: an append-only journal in one SQLite file on a local disk."""

import sqlite3
from collections.abc import Callable, Sequence
from pathlib import Path
from types import TracebackType
from typing import Self

from intake.casebook import exchange, journal, names, search
from intake.casebook.error import BookError, no_case
from intake.casebook.file import BookFile
from intake.casebook.place import book_path
from intake.casebook.seam import Entry, IndexRow
from intake.spec import Event
from intake.spec.events import now


class Book:
    """Cases in one file; several threads and several programs on one machine may use it at once.

    `path`: the file, else INTAKE_BOOK, else one in the user's data folder; made by the first thing kept.
    `wait_s`: how long to wait for another program's write. `on_connect` is called with each new connection.
    """

    def __init__(
        self,
        path: Path | None = None,
        *,
        wait_s: float = 5.0,
        on_connect: Callable[[sqlite3.Connection], object] | None = None,
    ) -> None:
        self._file = BookFile(path or book_path(), wait_s=wait_s, on_connect=on_connect)

    @property
    def path(self) -> Path:
        """The file."""
        return self._file.path

    def append(self, case_id: str, events: Sequence[Event], index: IndexRow | None = None) -> int:
        """Keep events, all or none, with the index; see the seam. Once it returns they are safe on disk."""
        names.checked(case_id)
        with self._file.writing() as connection:
            last = journal.write(connection, case_id, events)
            if index is not None and last:
                journal.write_index(connection, case_id, index)
        return last

    def events(self, case_id: str) -> list[Event]:
        """All events of a case in order, empty where there is no such case."""
        with self._file.reading() as connection:
            return [] if connection is None else list(journal.read(connection, case_id))

    def cases(self, words: str | None = None, archived: bool = False) -> list[Entry]:
        """The cases that have all these words somewhere, last changed first; `archived`: those on the shelf too."""
        with self._file.reading() as connection:
            return [] if connection is None else search.entries(connection, words or "", archived)

    def copy(self, case_id: str, new_id: str) -> None:
        """Begin a case with all that another one has. Its title says that it is a copy."""
        names.checked(new_id)
        with self._file.writing() as connection:
            events = _existing(connection, case_id)
            _refuse_taken(connection, new_id)
            index = search.index_of(connection, case_id)
            title = f"{index.title or case_id} (copy)"
            more = [Event(seq=len(events) + 1, at=now(), kind="opened", body={"title": title})]
            if search.is_archived(connection, case_id):
                more.append(Event(seq=len(events) + 2, at=now(), kind="restored"))
            journal.write(connection, new_id, [*events, *more])
            journal.write_index(connection, new_id, search.retitled(index, title))

    def archive(self, case_id: str) -> None:
        """Put a case on the shelf: kept, not listed."""
        self._shelve(case_id, "archived")

    def restore(self, case_id: str) -> None:
        """Take a case off the shelf."""
        self._shelve(case_id, "restored")

    def export(self, case_id: str, *, personal: bool = False) -> str:
        """A case as JSON Lines, one event a line; what was heard about the person is blanked unless asked for."""
        with self._file.reading() as connection:
            if connection is None:
                raise no_case(case_id)
            events = _existing(connection, case_id)
            index = search.index_of(connection, case_id)
        return exchange.written(case_id, events, index, personal=personal)

    def import_(self, text: str, case_id: str | None = None) -> str:
        """Keep a case that was exported. Without an id it keeps its own, or gets a new one where that is taken."""
        exported = exchange.read_export(text)
        with self._file.writing() as connection:
            own = exported.case_id
            if case_id is None:
                case_id = own if names.is_fit(own) and not journal.count(connection, own) else _free_id(connection)
            names.checked(case_id)
            _refuse_taken(connection, case_id)
            journal.write(connection, case_id, exported.events)
            journal.write_index(connection, case_id, exported.index)
        return case_id

    def new_id(self) -> str:
        """A short readable id that no case has."""
        with self._file.reading() as connection:
            return names.new_id() if connection is None else _free_id(connection)

    def follow(self, after: int = 0) -> tuple[int, list[str]]:
        """A mark for now, and the cases that changed after an earlier mark."""
        with self._file.reading() as connection:
            return (after, []) if connection is None else search.changed(connection, after)

    def close(self) -> None:
        """Let go of the file. The next call opens it again."""
        self._file.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self.close()

    def _shelve(self, case_id: str, kind: str) -> None:
        with self._file.writing() as connection:
            last = journal.count(connection, case_id)
            if not last:
                raise no_case(case_id)
            if search.is_archived(connection, case_id) != (kind == "archived"):
                journal.write(connection, case_id, [Event(seq=last + 1, at=now(), kind=kind)])


def _existing(connection: sqlite3.Connection, case_id: str) -> list[Event]:
    events = list(journal.read(connection, case_id))
    if not events:
        raise no_case(case_id)
    return events


def _refuse_taken(connection: sqlite3.Connection, case_id: str) -> None:
    if journal.count(connection, case_id):
        raise BookError("taken", f'a case is kept under "{case_id}" already', "Choose another name.")


def _free_id(connection: sqlite3.Connection) -> str:
    while journal.count(connection, found := names.new_id()):
        pass
    return found
