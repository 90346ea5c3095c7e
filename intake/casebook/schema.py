"""How a book is opened: recognised, made where it is new, brought up to date where it is of an earlier version."""

import itertools
import os
import sqlite3
from pathlib import Path
from time import monotonic, sleep

from intake.casebook import finding
from intake.casebook.error import BookError
from intake.casebook.tables import APPLICATION, FROM_1, NEW_BOOK, VERSION

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
    """Open a file in a folder that cannot be written to, as it lies there. Raises sqlite3.Error, BookError.

    A book of an earlier version is brought up to date in memory alone.
    """
    uri = f"{path.absolute().as_uri()}?immutable=1"
    connection = sqlite3.connect(uri, uri=True, isolation_level=None, check_same_thread=False)
    try:
        known = _recognise(connection, path)
        if 0 < known < VERSION:
            there = connection
            connection = sqlite3.connect(":memory:", isolation_level=None, check_same_thread=False)
            there.backup(connection)
            there.close()
            connection.execute("begin")
            _bring_up_to_date(connection)
            connection.execute("commit")
    except BaseException:
        connection.close()
        raise
    return connection


def refuse_changed(connection: sqlite3.Connection, path: Path) -> None:
    """Raises BookError where a newer program has brought the book up to date since it was opened here."""
    (version,) = connection.execute("pragma user_version").fetchone()
    if version > VERSION:
        raise _newer(path, version)


def old_copy(path: Path, version: int) -> Path:
    """Where a book of an earlier version is put by before it is brought up to date: never over an older copy."""
    name = f"{path.name}.v{version}-backup"
    names = itertools.chain([name], (f"{name}.{number}" for number in itertools.count(2)))
    return next(free for free in map(path.with_name, names) if not free.exists())


def _build(connection: sqlite3.Connection, path: Path) -> None:
    """Make the tables of a new book. Two programs may try at once: the second finds them made."""
    connection.execute("begin")  # one view of the file: its tables may come while its marks are read
    known = _recognise(connection, path)
    connection.execute("commit")
    if known == VERSION:
        return
    connection.execute("begin immediate")
    known = _recognise(connection, path)
    if known == 0:
        for statement in NEW_BOOK:
            connection.execute(statement)
        finding.make(connection)
        connection.execute(f"pragma application_id={APPLICATION}")
        connection.execute(f"pragma user_version={VERSION}")
    elif known < VERSION:
        copy = _put_by(path, known)
        try:
            _bring_up_to_date(connection)
        except BaseException:
            copy.unlink(missing_ok=True)  # the book is still what it was
            raise
    connection.execute("commit")


def _bring_up_to_date(connection: sqlite3.Connection) -> None:
    """From version 1, inside the caller's transaction: the journal stays as it is, the index is made anew."""
    for statement in FROM_1:
        connection.execute(statement)
    finding.make(connection)
    finding.seek_all(connection)
    connection.execute(f"pragma user_version={VERSION}")


def _put_by(path: Path, version: int) -> Path:
    """A copy of the book as it stood, readable by its owner only. The caller holds the write lock."""
    to = old_copy(path, version)
    os.close(os.open(to, os.O_CREAT | os.O_EXCL | os.O_RDWR, 0o600))
    there, copy = sqlite3.connect(path), sqlite3.connect(to)
    try:
        there.backup(copy)
        copy.execute("pragma journal_mode=delete")
    finally:
        copy.close()
        there.close()
    return to


def _recognise(connection: sqlite3.Connection, path: Path) -> int:
    """The version of the book, 0 for an empty file. Raises BookError for another program's or a newer one."""
    (version,) = connection.execute("pragma user_version").fetchone()
    (owner,) = connection.execute("pragma application_id").fetchone()
    (tables,) = connection.execute("select count(*) from sqlite_schema").fetchone()
    if owner != APPLICATION and (tables or version):
        raise BookError(
            "not_a_book",
            f"casebook {path}: the file is another program's",
            "Move it away, or name another place in INTAKE_BOOK.",
        )
    if version > VERSION:
        raise _newer(path, version)
    return int(version)


def _newer(path: Path, version: int) -> BookError:
    return BookError(
        "newer",
        f"casebook {path}: a newer program wrote it (version {version}, this one reads {VERSION})",
        "Update this program and start it again, or name another place in INTAKE_BOOK.",
    )
