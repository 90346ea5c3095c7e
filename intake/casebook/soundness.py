"""Whether a book is sound, and a sound copy of it."""

import contextlib
import os
import sqlite3
from pathlib import Path

from intake.casebook import files, finding, journal
from intake.casebook.error import BookError, from_sqlite

_MANY = 20

_COUNTS = """select c.case_id, c.events, c.least, c.most, e.events,
        e.updated is not last.at or e.last != last.n or e.begun is not first.at
        or e.archived != coalesce((select s.kind = 'archived' from event s where s.case_id = c.case_id
            and s.kind in ('archived', 'restored') order by s.seq desc limit 1), 0)
    from (select case_id, count(*) as events, min(seq) as least, max(seq) as most from event group by case_id) c
    join event last on last.case_id = c.case_id and last.seq = c.most
    left join event first on first.case_id = c.case_id and first.seq = 1
    left join entry e on e.case_id = c.case_id"""


def problems(connection: sqlite3.Connection) -> list[str]:
    """What is wrong with the book, a sentence each."""
    found = [f"the file is damaged: {row[0]}" for row in connection.execute("pragma integrity_check(20)")]
    if found != ["the file is damaged: ok"]:
        return found  # what the rows say means little then
    return [*_numbering(connection), *_rows(connection), *_search(connection), *_files(connection)]


def copy_to(connection: sqlite3.Connection, to: Path) -> None:
    """A copy of the book as it stands, readable by its owner only. Never over another file. Raises BookError."""
    if to.exists():
        raise BookError("taken", f"{to}: there is a file already", "Name another one.")
    part = to.with_name(f"{to.name}.{os.getpid()}.part")
    try:
        os.close(os.open(part, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))
        copy = sqlite3.connect(part, isolation_level=None)
        try:
            connection.backup(copy)
            copy.execute("pragma journal_mode=delete")
            sound = copy.execute("pragma quick_check(1)").fetchone()[0]
        finally:
            copy.close()
        if sound != "ok":
            raise BookError("damaged", f"{to}: the copy is damaged ({sound})", "Check the book: intake cases --check")
        part.rename(to)
    except OSError as error:
        raise BookError("cannot_open", f"{to}: {error.strerror or error}", "Check the folder and the space.") from None
    except sqlite3.Error as error:
        raise from_sqlite(error, to) from None
    finally:
        with contextlib.suppress(OSError):
            part.unlink()


def _numbering(connection: sqlite3.Connection) -> list[str]:
    found = []
    for case_id, events, least, most, counted, differs in connection.execute(_COUNTS):
        if (least, most) != (1, events):
            found.append(f'case "{case_id}": its events are not numbered from 1 to {events}; some are missing')
        if counted is None:
            found.append(f'case "{case_id}": the index lacks it. Mend it with: intake cases --rebuild')
        elif counted != events or differs:
            found.append(f'case "{case_id}": the index is behind the events. Mend it with: intake cases --rebuild')
    lost = connection.execute("select case_id from entry except select case_id from event")
    found += [f'case "{case_id}": the index lists it, but it has no events' for (case_id,) in lost]
    stray = connection.execute(
        "select m.case_id, m.seq from message m left join event e on e.case_id = m.case_id and e.seq = m.seq "
        "where e.kind is not 'message'"
    )
    return found + [f'case "{case_id}": a text belongs to no message (event {seq})' for case_id, seq in stray]


def _rows(connection: sqlite3.Connection) -> list[str]:
    """Every event read and looked at."""
    found = []
    for (case_id,) in connection.execute("select distinct case_id from event").fetchall():
        try:
            for _ in journal.read(connection, case_id):
                pass
        except BookError as trouble:
            found.append(trouble.what)
            if len(found) >= _MANY:
                break
    return found


def _search(connection: sqlite3.Connection) -> list[str]:
    if not finding.has_index(connection):
        return []
    lines = connection.execute(
        "select count(*) from entry e where e.sought = e.events and e.id not in (select rowid from found)"
    ).fetchone()[0]
    try:
        connection.execute("insert into found(found) values ('integrity-check')")
    except sqlite3.DatabaseError as trouble:
        if not trouble.sqlite_errorname.startswith(("SQLITE_CORRUPT", "SQLITE_READONLY")):
            raise
        lines += trouble.sqlite_errorname.startswith("SQLITE_CORRUPT")
    return ["the search index is damaged. Mend it with: intake cases --rebuild"] if lines else []


def _files(connection: sqlite3.Connection) -> list[str]:
    found = []
    for sha, content in connection.execute("select sha, content from file where content is not null"):
        if files.file_mark(bytes(content)) != sha:
            found.append(f"the content of an attached file is damaged ({sha[:12]})")
    lost = connection.execute(
        "select case_id, seq from event where kind = 'attached' and json_extract(body, '$.file') not in "
        "(select sha from file)"
    )
    return found + [f'case "{case_id}": the file of event {seq} is missing' for case_id, seq in lost]
