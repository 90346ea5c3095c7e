"""The words that cases are found by: a full-text index where this SQLite has one, kept up with the journal.

A word is a run of letters and digits, whatever its case, accents and the way they are written. Each case has one row of
its different words. A case that a program without the index wrote to is marked by `entry.sought`, and looked through
word by word until one with the index writes to it again.
"""

import re
import sqlite3
import unicodedata
from collections.abc import Iterable

_WORD = re.compile(r"[^\W_]+")

# The words come as we cut them; this tokenizer parts them at our blanks and nowhere else. Places are not kept: what has
# signs inside is looked at again.
_TABLE = "create virtual table found using fts5(words, tokenize = 'ascii', detail = none, columnsize = 0)"

_TEXTS = """select title || ' ' || standing || ' ' || best || ' ' || waiting_for || ' ' || words || ' ' || case_id
        from entry where case_id = :case
    union all select text from message where case_id = :case"""


def folded(text: str) -> str:
    """The text as words are compared: without case, accents and ways of writing one sign.

    >>> folded("CRE\\u0300ME Straße")
    'creme strasse'
    """
    apart = unicodedata.normalize("NFKD", unicodedata.normalize("NFKD", text).casefold())
    return "".join(sign for sign in apart if not unicodedata.combining(sign))


def words_of(text: str) -> list[str]:
    """The words in a text, folded.

    >>> words_of("12'6\\" side_grip")
    ['12', '6', 'side', 'grip']
    """
    return _WORD.findall(folded(text))


def has_index(connection: sqlite3.Connection) -> bool:
    """True where this SQLite can keep the full-text index and the book has one."""
    return can_index(connection) and bool(
        connection.execute("select exists(select 1 from sqlite_schema where name = 'found')").fetchone()[0]
    )


def can_index(connection: sqlite3.Connection) -> bool:
    """True where this SQLite knows full-text search (FTS5)."""
    return bool(connection.execute("select sqlite_compileoption_used('ENABLE_FTS5')").fetchone()[0])


def make(connection: sqlite3.Connection) -> None:
    """Make the index, empty, where this SQLite can."""
    if can_index(connection):
        connection.execute(_TABLE)


def seek(connection: sqlite3.Connection, case_id: str) -> None:
    """Bring the words of one case up to date. Without the index: mark that they are not."""
    if not has_index(connection):
        connection.execute("update entry set sought = 0 where case_id = ?", (case_id,))
        return
    row = connection.execute("select id, events, sought from entry where case_id = ?", (case_id,)).fetchone()
    if row is None:
        return
    try:
        id, events, sought = row
        _put(connection, id, events, sought, _words(connection, case_id))
    except sqlite3.DatabaseError as trouble:
        if not is_broken(trouble):
            raise
        connection.execute("update entry set sought = 0 where case_id = ?", (case_id,))


def is_broken(trouble: sqlite3.DatabaseError) -> bool:
    """True where the index is damaged and nothing else: it can be made anew, and nothing waits for it till then."""
    return trouble.sqlite_errorname.startswith("SQLITE_CORRUPT_VTAB")


def _put(connection: sqlite3.Connection, id: int, events: int, sought: int, words: str) -> None:
    before = connection.execute("select words from found where rowid = ?", (id,)).fetchone()
    if before is None:
        connection.execute("insert into found(rowid, words) values (?, ?)", (id, words))
    elif before[0] != words:
        connection.execute("update found set words = ? where rowid = ?", (words, id))
    if sought != events:
        connection.execute("update entry set sought = events where id = ?", (id,))


def seek_all(connection: sqlite3.Connection) -> None:
    """Make the index anew for all cases."""
    if not can_index(connection):
        connection.execute("update entry set sought = 0")
        return
    connection.execute("drop table if exists found")
    connection.execute(_TABLE)
    cases = connection.execute("select id, case_id from entry order by id").fetchall()
    rows = ((id, _words(connection, case_id)) for id, case_id in cases)
    connection.executemany("insert into found(rowid, words) values (?, ?)", rows)
    connection.execute("update entry set sought = events")


def wring(connection: sqlite3.Connection) -> None:
    """Leave no trace in the index of words that were taken out of it."""
    if has_index(connection):
        connection.execute("insert into found(found) values ('optimize')")


def match(words: Iterable[str]) -> str:
    """The query for cases that have words beginning with each of these."""
    return " ".join(f'"{word}"*' for word in dict.fromkeys(words))


def _words(connection: sqlite3.Connection, case_id: str) -> str:
    texts = connection.execute(_TEXTS, {"case": case_id})
    return " ".join(sorted({word for (text,) in texts for word in words_of(text)}))
