"""Contents of attached files: each kept once by its SHA-256, dropped only when a person is forgotten."""

import hashlib
import sqlite3
from collections.abc import Mapping

from intake.casebook.error import BookError

LARGEST_FILE = 25_000_000
"""Bytes of one attached file."""

_NAMED = "select distinct case_id from event where kind = 'attached' and json_extract(body, '$.file') = ?"


def file_mark(content: bytes) -> str:
    """The name of a content: its SHA-256 (FIPS 180-4) as 64 hexadecimal digits."""
    return hashlib.sha256(content).hexdigest()


def refuse_too_large(size: int) -> None:
    """Raises BookError for more bytes than one file may have."""
    if size > LARGEST_FILE:
        raise BookError(
            "too_large",
            f"the file has {size / 1e6:.1f} MB, and {LARGEST_FILE // 1_000_000} MB is the most for one file",
            "Make it smaller, or keep it elsewhere and note where.",
        )


def keep(connection: sqlite3.Connection, case_id: str, files: Mapping[str, bytes]) -> None:
    """Keep contents that events of the case name. Raises BookError for one that is too large or not named."""
    for sha, content in files.items():
        refuse_too_large(len(content))
        if sha != file_mark(content) or case_id not in named_by(connection, sha):
            raise BookError(
                "bad_file",
                f'case "{case_id}": the content of a file does not belong to any that is attached',
                "Attach it again.",
            )
        if has_row(connection, sha):
            connection.execute(
                "update file set content = ?, bytes = ? where sha = ? and content is null", (content, len(content), sha)
            )
        else:
            connection.execute("insert into file(sha, bytes, content) values (?, ?, ?)", (sha, len(content), content))


def note_absent(connection: sqlite3.Connection, files: Mapping[str, int]) -> None:
    """Note files (SHA-256 to bytes) that a case names and whose contents did not come along."""
    for sha, size in files.items():
        if not has_row(connection, sha):
            connection.execute(
                "insert into file(sha, bytes, content) values (?, ?, null)", (sha, min(size, LARGEST_FILE))
            )


def content(connection: sqlite3.Connection, case_id: str, sha: str) -> bytes:
    """The content. Raises BookError where the case has no such file, or its content is not here any more."""
    row = connection.execute("select content from file where sha = ?", (sha,)).fetchone()
    if row is None or case_id not in named_by(connection, sha):
        raise BookError("no_file", f'case "{case_id}" has no such file', f"See: intake cases --files {case_id}")
    if row[0] is None:
        raise BookError(
            "no_file",
            f'case "{case_id}": the content of this file is not kept here: it was dropped, or not sent with the case',
            "Attach the file again if it is needed.",
        )
    found = bytes(row[0])
    if file_mark(found) != sha:
        raise BookError("damaged", f'case "{case_id}": the content of a file is damaged', "Bring it from a backup.")
    return found


def drop(connection: sqlite3.Connection, case_id: str, shas: list[str]) -> int:
    """Drop the contents that only this case names. Returns how many."""
    alone = [sha for sha in dict.fromkeys(shas) if named_by(connection, sha) <= {case_id}]
    dropped = 0
    for sha in alone:
        dropped += connection.execute(
            "update file set content = null where sha = ? and content is not null", (sha,)
        ).rowcount
    return dropped


def has_content(connection: sqlite3.Connection, sha: str) -> bool:
    """True where the content is kept here."""
    row = connection.execute("select content is not null from file where sha = ?", (sha,)).fetchone()
    return row is not None and bool(row[0])


def has_row(connection: sqlite3.Connection, sha: str) -> bool:
    """True where the file is known, with its content or without."""
    return connection.execute("select 1 from file where sha = ?", (sha,)).fetchone() is not None


def named_by(connection: sqlite3.Connection, sha: str) -> set[str]:
    """The cases that name a file."""
    return {case_id for (case_id,) in connection.execute(_NAMED, (sha,))}
