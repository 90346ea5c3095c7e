"""The tables of the embedded book, their guards, and how a book is opened."""

import sqlite3
from pathlib import Path
from time import monotonic, sleep

from intake.casebook.error import BookError

VERSION = 1
_OURS = 0x494E544B  # application_id: "INTK"

# Message texts lie apart, so that a person can be forgotten without touching what was made of their words.
# Only `entry` may change: it is an index, and can be dropped and written anew.
_TABLES = (
    """create table event(
        n integer primary key,
        case_id text not null,
        seq integer not null check(seq >= 1),
        at text not null,
        kind text not null,
        body text not null check(json_valid(body)),
        unique(case_id, seq)) strict""",
    "create index shelf on event(case_id, seq) where kind in ('archived', 'restored')",
    """create table message(
        case_id text not null,
        seq integer not null,
        text text not null,
        primary key(case_id, seq)) strict""",
    """create table entry(
        case_id text primary key,
        title text not null,
        standing text not null,
        best text not null,
        waiting_for text not null,
        since text not null,
        words text not null) strict""",
)

# A "replace" runs no delete guard, so the insert guards refuse every row that is there already.
_GUARDS = (
    """create trigger event_in_order before insert on event
       when new.seq != (select coalesce(max(seq), 0) + 1 from event where case_id = new.case_id)
         or exists(select 1 from event where n = new.n)
       begin select raise(abort, 'append only: out of order'); end""",
    "create trigger event_stays before update on event begin select raise(abort, 'append only'); end",
    "create trigger event_kept before delete on event begin select raise(abort, 'append only'); end",
    """create trigger message_once before insert on message
       when exists(select 1 from message where case_id = new.case_id and seq = new.seq)
       begin select raise(abort, 'append only'); end""",
    "create trigger message_stays before update on message begin select raise(abort, 'append only'); end",
    "create trigger message_kept before delete on message begin select raise(abort, 'append only'); end",
)

_PRAGMAS = ("synchronous=full", "foreign_keys=on", "secure_delete=on")


def connect(path: Path, *, wait_s: float) -> sqlite3.Connection:
    """Open the file for reading and writing. Transactions are begun and ended by hand. Raises sqlite3.Error."""
    connection = sqlite3.connect(path, timeout=wait_s, isolation_level=None, check_same_thread=False)
    try:
        _log_ahead(connection, wait_s)
        for pragma in _PRAGMAS:
            connection.execute(f"pragma {pragma}")
        _build(connection, path)
    except BaseException:
        connection.close()
        raise
    return connection


def _log_ahead(connection: sqlite3.Connection, wait_s: float) -> None:
    """Keep the log beside the file. This change of mode does not wait for others by itself, as all else does."""
    until = monotonic() + wait_s
    while True:
        try:
            connection.execute("pragma journal_mode=wal")
            return
        except sqlite3.OperationalError as trouble:
            if trouble.sqlite_errorcode & 0xFF != sqlite3.SQLITE_BUSY or monotonic() > until:
                raise
            sleep(0.01)


def connect_to_read(path: Path) -> sqlite3.Connection:
    """Open a file in a folder that cannot be written to, as it lies there. Raises sqlite3.Error, BookError."""
    uri = f"{path.absolute().as_uri()}?immutable=1"
    connection = sqlite3.connect(uri, uri=True, isolation_level=None, check_same_thread=False)
    try:
        _recognise(connection, path)
    except BaseException:
        connection.close()
        raise
    return connection


def _build(connection: sqlite3.Connection, path: Path) -> None:
    """Make the tables of a new book. Two programs may try at once: the second finds them made."""
    connection.execute("begin")  # one view of the file: its tables may come while its marks are read
    known = _recognise(connection, path)
    connection.execute("commit")
    if known == VERSION:
        return
    connection.execute("begin immediate")
    if _recognise(connection, path) == 0:
        for statement in (*_TABLES, *_GUARDS):
            connection.execute(statement)
        connection.execute(f"pragma application_id={_OURS}")
        connection.execute(f"pragma user_version={VERSION}")
    connection.execute("commit")


def _recognise(connection: sqlite3.Connection, path: Path) -> int:
    """The version of the book, 0 for an empty file. Raises BookError for another program's or a newer one."""
    (version,) = connection.execute("pragma user_version").fetchone()
    (owner,) = connection.execute("pragma application_id").fetchone()
    (tables,) = connection.execute("select count(*) from sqlite_schema").fetchone()
    if owner != _OURS and (tables or version):
        raise BookError(
            "not_a_book",
            f"casebook {path}: the file is another program's",
            "Move it away, or name another place in INTAKE_BOOK.",
        )
    if version > VERSION:
        raise BookError(
            "newer",
            f"casebook {path}: a newer program wrote it (version {version}, this one reads {VERSION})",
            "Update this program, or name another place in INTAKE_BOOK.",
        )
    return int(version)
