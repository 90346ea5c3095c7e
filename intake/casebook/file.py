"""The file of the embedded book: opened when it is needed, transactions, and its troubles in words."""

import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from threading import RLock

from intake.casebook.error import BookError, from_sqlite
from intake.casebook.place import prepare
from intake.casebook.schema import connect, connect_to_read, refuse_changed
from intake.casebook.search import teach


class BookFile:
    """One SQLite file, opened at the first call and made by the first write. Safe to use from several threads."""

    def __init__(
        self, path: Path, *, wait_s: float, on_connect: Callable[[sqlite3.Connection], object] | None = None
    ) -> None:
        self.path = path
        self._wait_s, self._on_connect = wait_s, on_connect
        self._connection: sqlite3.Connection | None = None
        self._opened: tuple[int, int] | None = None
        self._only_reads = False
        self._lock = RLock()

    @contextmanager
    def writing(self) -> Iterator[sqlite3.Connection]:
        """One transaction: all of it is on disk afterwards, or nothing. Raises BookError."""
        with self._lock, self._in_words():
            connection = self._open()
            if self._only_reads:
                raise BookError(
                    "read_only",
                    f"casebook {self.path}: the file or its folder cannot be written to",
                    "Give yourself write permission, or name another place in INTAKE_BOOK.",
                )
            connection.execute("begin immediate")
            try:
                refuse_changed(connection, self.path)
                yield connection
                connection.execute("commit")
            except BaseException:
                if connection.in_transaction:  # a full disk has ended it already
                    connection.execute("rollback")
                raise

    @contextmanager
    def reading(self) -> Iterator[sqlite3.Connection | None]:
        """A connection to read from, None while there is no book yet. Raises BookError."""
        with self._lock, self._in_words():
            connection = self._open() if self._identity() is not None else None
            if connection is not None:
                refuse_changed(connection, self.path)
            yield connection

    def seal(self) -> bool:
        """Write the whole file anew, so that nothing stays of what was blanked in it, between the rows either.

        Returns False while another program still reads the old pages, or where the disk has no room for that.
        """
        with self._lock, self._in_words():
            connection = self._open()
            try:
                connection.execute("vacuum")
                (busy, _, _) = connection.execute("pragma wal_checkpoint(truncate)").fetchone()
            except sqlite3.OperationalError as trouble:
                if from_sqlite(trouble, self.path).code in ("locked", "full"):
                    return False
                raise
            return not busy

    @property
    def can_write(self) -> bool:
        """False where the file is open for reading alone."""
        return not self._only_reads

    def close(self) -> None:
        """Let go of the file. The next call opens it again."""
        with self._lock:
            if self._connection is not None:
                self._connection.close()
            self._connection, self._only_reads = None, False

    @contextmanager
    def _in_words(self) -> Iterator[None]:
        """Any trouble with the file becomes a BookError; after a serious one the file is opened anew next time."""
        try:
            yield
        except sqlite3.Error as error:
            trouble = from_sqlite(error, self.path)
            if trouble.code not in ("full", "locked"):
                self.close()
            raise trouble from None
        except UnicodeEncodeError:
            raise BookError(
                "bad_name", f"casebook {self.path}: what was given has signs that no text can hold", "Type it anew."
            ) from None
        except OSError as error:
            raise BookError(
                "cannot_open",
                f"casebook {self.path}: {error.strerror or error}",
                "Check that the folder is there and is yours, or name another place in INTAKE_BOOK.",
            ) from None

    def _open(self) -> sqlite3.Connection:
        # A file moved away or replaced meanwhile would take what is written with it, unseen.
        if self._connection is not None and self._identity() != self._opened:
            self.close()
        if self._connection is None:
            self._connection = self._connect()
            self._opened = self._identity()
            teach(self._connection)
            if self._on_connect is not None:
                self._on_connect(self._connection)
        return self._connection

    def _connect(self) -> sqlite3.Connection:
        try:
            prepare(self.path)
            return connect(self.path, wait_s=self._wait_s)
        except (sqlite3.OperationalError, PermissionError) as trouble:
            name = getattr(trouble, "sqlite_errorname", "")
            cannot_write = isinstance(trouble, OSError) or name.startswith(("SQLITE_READONLY", "SQLITE_CANTOPEN"))
            if not cannot_write or self._identity() is None or self._has_log():
                raise
        self._only_reads = True
        return connect_to_read(self.path)

    def _has_log(self) -> bool:
        """True where the last answers lie in the log beside the file, which reading alone would miss."""
        log = self.path.with_name(self.path.name + "-wal")
        return log.exists() and log.stat().st_size > 0

    def _identity(self) -> tuple[int, int] | None:
        """Which file stands at the path, None for none."""
        try:
            found = self.path.stat()
        except FileNotFoundError:
            return None
        return found.st_dev, found.st_ino
