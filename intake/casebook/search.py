"""Listing and finding cases, and telling which ones changed."""

import sqlite3
import unicodedata
from dataclasses import replace

from intake.casebook.seam import Entry, IndexRow

_SHELVED = """coalesce((select s.kind from event s
    where s.case_id = {case} and s.kind in ('archived', 'restored') order by s.seq desc limit 1), '') = 'archived'"""

_INDEX = """coalesce(i.title, ''), coalesce(i.standing, ''), coalesce(i.best, ''),
    coalesce(i.waiting_for, ''), coalesce(i.since, ''), coalesce(i.words, '')"""

_CASES = f"""select c.case_id, c.events, first.at, last.at, {_SHELVED.format(case="c.case_id")} as shelved, {_INDEX}
    from (select case_id, count(*) as events, max(seq) as seq from event group by case_id) c
    join event first on first.case_id = c.case_id and first.seq = 1
    join event last on last.case_id = c.case_id and last.seq = c.seq
    left join entry i on i.case_id = c.case_id
    where (:archived or not shelved)"""

_HAS_WORD = """(instr(folded(c.case_id || ' ' || coalesce(i.title || ' ' || i.standing || ' ' || i.best || ' '
    || i.waiting_for || ' ' || i.words, '')), :word{n})
    or exists(select 1 from message m where m.case_id = c.case_id and instr(folded(m.text), :word{n})))"""


def teach(connection: sqlite3.Connection) -> None:
    """Give the connection the comparison that search uses: whatever the case and the way accents are written."""
    connection.create_function("folded", 1, _folded, deterministic=True)


def entries(connection: sqlite3.Connection, words: str, archived: bool) -> list[Entry]:
    """The cases that have all the words, last changed first."""
    wanted = _folded(words).split()
    sql = " and ".join([_CASES, *(_HAS_WORD.format(n=n) for n in range(len(wanted)))])
    values = {"archived": archived} | {f"word{n}": word for n, word in enumerate(wanted)}
    rows = connection.execute(f"{sql} order by last.at desc, last.n desc", values)
    return [
        Entry(id=id, events=count, begun=begun, updated=updated, archived=bool(shelved), index=_index(parts))
        for id, count, begun, updated, shelved, *parts in rows
    ]


def index_of(connection: sqlite3.Connection, case_id: str) -> IndexRow:
    """What the lists show of a case."""
    row = connection.execute(
        f"select {_INDEX} from (select ? as id) c left join entry i on i.case_id = c.id", (case_id,)
    ).fetchone()
    return _index(list(row))


def is_archived(connection: sqlite3.Connection, case_id: str) -> bool:
    """True while a case is on the shelf."""
    (shelved,) = connection.execute(f"select {_SHELVED.format(case=':id')}", {"id": case_id}).fetchone()
    return bool(shelved)


def changed(connection: sqlite3.Connection, after: int) -> tuple[int, list[str]]:
    """The mark of the last event, and the cases with events after an earlier mark."""
    (mark,) = connection.execute("select coalesce(max(n), 0) from event").fetchone()
    rows = connection.execute(
        "select distinct case_id from event where n > ? and n <= ? order by case_id", (after, mark)
    )
    return int(mark), [case_id for (case_id,) in rows]


def retitled(index: IndexRow, title: str) -> IndexRow:
    """The same under another title."""
    return replace(index, title=title)


def _index(parts: list[str]) -> IndexRow:
    title, standing, best, waiting_for, since, words = parts
    return IndexRow(title=title, standing=standing, best=best, waiting_for=waiting_for, since=since, words=words)


def _folded(text: str) -> str:
    return unicodedata.normalize("NFC", unicodedata.normalize("NFKD", text).casefold())
