"""The embedded book: an append-only journal in one SQLite file on a local disk."""

import sqlite3
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from types import TracebackType
from typing import Self

from intake.casebook import exchange, finding, forgetting, journal, names, rebuilding, search, soundness
from intake.casebook import files as _files
from intake.casebook.error import BookError, no_case
from intake.casebook.file import BookFile
from intake.casebook.place import book_path
from intake.casebook.seam import Entry, Find, Forgotten, IndexOf, IndexRow
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

    def append(
        self,
        case_id: str,
        events: Sequence[Event],
        index: IndexRow | None = None,
        *,
        files: Mapping[str, bytes] | None = None,
    ) -> int:
        """Keep events, all or none, with the index and files; see the seam. Once it returns they are safe on disk."""
        names.checked(case_id)
        with self._file.writing() as connection:
            before = journal.count(connection, case_id)
            last = journal.write(connection, case_id, events)
            if files:
                _files.keep(connection, case_id, files)
            if index is not None:
                journal.write_index(connection, case_id, index)
            if last > before or index is not None:
                finding.seek(connection, case_id)
        return last

    def events(self, case_id: str) -> list[Event]:
        """All events of a case in order, empty where there is no such case."""
        with self._file.reading() as connection:
            return [] if connection is None else list(journal.read(connection, case_id))

    def cases(
        self,
        words: str | None = None,
        archived: bool = False,
        *,
        find: Find | None = None,
        limit: int | None = None,
        offset: int = 0,
    ) -> list[Entry]:
        """The cases that are wanted, last changed first; see the seam."""
        wanted = _narrowed(find, words, archived)
        self._mend_index()
        with self._file.reading() as connection:
            return [] if connection is None else search.entries(connection, wanted, limit, offset)

    def count(self, find: Find | None = None) -> int:
        """How many cases `cases` would list without a limit."""
        self._mend_index()
        with self._file.reading() as connection:
            return 0 if connection is None else search.count(connection, find or Find())

    def rebuild(self, index_of: IndexOf) -> int:
        """Drop the index and write it anew for all cases, in one transaction. Returns how many there are.

        `index_of` is called before that for each case, so that desks go on meanwhile; for a case that changed in
        between it is called again.
        """
        with self._file.reading() as connection:
            if connection is None:
                return 0
            ids = rebuilding.case_ids(connection)
        ready = rebuilding.Ready(index_of)
        for case_id in ids:  # one after the other, so that other threads come in between
            with self._file.reading() as connection:
                if connection is not None:
                    ready.work_out(connection, case_id)
        with self._file.writing() as connection:
            return rebuilding.write(connection, ready)

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
            finding.seek(connection, new_id)

    def archive(self, case_id: str) -> None:
        """Put a case on the shelf: kept, not listed."""
        self._shelve(case_id, "archived")

    def restore(self, case_id: str) -> None:
        """Take a case off the shelf."""
        self._shelve(case_id, "restored")

    def attachment(self, case_id: str, file: str) -> bytes:
        """The content of a file attached to a case, by its SHA-256."""
        with self._file.reading() as connection:
            if connection is None:
                raise no_case(case_id)
            return _files.content(connection, case_id, file)

    def has_content(self, case_id: str, file: str) -> bool:
        """True where the content of an attached file is kept here."""
        with self._file.reading() as connection:
            if connection is None:
                return False
            return _files.has_content(connection, file) and case_id in _files.named_by(connection, file)

    def forget(self, case_id: str, index_of: IndexOf, *, files: bool = False) -> Forgotten:
        """Blank what was heard about the person of a case, for good; see the seam.

        It blanks the words in one transaction and then writes the whole file anew, so that they are not left between
        the rows either. That takes as much free space as the book has.
        """
        with self._file.writing() as connection:
            done = forgetting.forget(connection, case_id, index_of, drop_files=files)
        return forgetting.with_copies(done, self.path, self._file.seal())

    def keep_draft(self, case_id: str, text: str) -> None:
        """Keep words that are being typed, in place of those kept before; empty words clear them. No event."""
        names.checked(case_id)
        with self._file.writing() as connection:
            if text:
                connection.execute(
                    "insert or replace into draft values (?, ?, ?)", (case_id, journal.whole(text), now())
                )
            else:
                connection.execute("delete from draft where case_id = ?", (case_id,))

    def draft(self, case_id: str) -> str:
        """The words that were being typed, "" for none."""
        with self._file.reading() as connection:
            if connection is None:
                return ""
            row = connection.execute("select text from draft where case_id = ?", (case_id,)).fetchone()
        return "" if row is None else str(row[0])

    def begun_only(self) -> list[tuple[str, str]]:
        """Names of cases of which nothing was sent yet, with the words that were being typed, the newest first."""
        with self._file.reading() as connection:
            if connection is None:
                return []
            rows = connection.execute(
                "select case_id, text from draft d where not exists (select 1 from event e where e.case_id = d.case_id)"
                " order by at desc"
            )
            return [(str(case_id), str(text)) for case_id, text in rows]

    def export(self, case_id: str, *, personal: bool = False, files: bool = False) -> str:
        """A case as JSON Lines. What was heard about the person is blanked, and files left out, unless asked for."""
        with self._file.reading() as connection:
            if connection is None:
                raise no_case(case_id)
            events = _existing(connection, case_id)
            index = search.index_of(connection, case_id)
            shas = dict.fromkeys(str(event.body["file"]) for event in events if event.kind == "attached")
            here = [sha for sha in shas if files and _files.has_content(connection, sha)]
            contents = {sha: _files.content(connection, case_id, sha) for sha in here}
        return exchange.written(case_id, events, index, personal=personal, files=contents)

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
            _files.keep(connection, case_id, exported.files)
            _files.note_absent(connection, exported.attached)
            journal.write_index(connection, case_id, exported.index)
            finding.seek(connection, case_id)
        return case_id

    def new_id(self) -> str:
        """A short readable id that no case has."""
        with self._file.reading() as connection:
            return names.new_id() if connection is None else _free_id(connection)

    def follow(self, after: int = 0) -> tuple[int, list[str]]:
        """A mark for now, and the cases that changed after an earlier mark."""
        with self._file.reading() as connection:
            return (after, []) if connection is None else search.changed(connection, after)

    def check(self) -> list[str]:
        """What is wrong with the book, a sentence each; empty for a sound one. Reads all of it."""
        with self._file.reading() as connection:
            return [] if connection is None else soundness.problems(connection)

    def backup(self, to: Path) -> None:
        """Write a sound copy of the whole book, while desks are open. Never over another file."""
        with self._file.reading() as connection:
            if connection is None:
                raise BookError("no_case", f"casebook {self.path}: nothing is kept yet", "Keep a case first.")
            soundness.copy_to(connection, to)

    def close(self) -> None:
        """Let go of the file. The next call opens it again."""
        self._file.close()

    def __enter__(self) -> Self:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self.close()

    def _mend_index(self) -> None:
        """Where somebody dropped the index, list the cases again by what the journal alone tells."""
        with self._file.reading() as connection:
            lacks = connection is not None and search.lacks_lines(connection)
        if lacks and self._file.can_write:
            with self._file.writing() as connection:
                search.count_anew(connection)

    def _shelve(self, case_id: str, kind: str) -> None:
        with self._file.writing() as connection:
            last = journal.count(connection, case_id)
            if not last:
                raise no_case(case_id)
            if search.is_archived(connection, case_id) != (kind == "archived"):
                journal.write(connection, case_id, [Event(seq=last + 1, at=now(), kind=kind)])
                finding.seek(connection, case_id)


def _narrowed(find: Find | None, words: str | None, archived: bool) -> Find:
    wanted = find or Find()
    return replace(wanted, words=f"{wanted.words} {words or ''}".strip(), archived=wanted.archived or archived)


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
