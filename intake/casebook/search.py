"""Listing and finding cases, and telling which ones changed."""

import sqlite3
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime, time, timedelta
from typing import Any

from intake.casebook import finding
from intake.casebook.error import BookError
from intake.casebook.seam import Entry, Find, IndexRow
from intake.casebook.tables import COUNTED

_MOST_WORDS = 40

_INDEX = "title, standing, best, waiting_for, since, due, open, words"

# The order is that of the index `entry_listed`, read backwards: no sorting, and the first lines come at once.
_ENTRIES = f"""select case_id, events, begun, updated, archived, {_INDEX}
    from entry e indexed by entry_listed where {{wanted}}
    order by updated desc, last desc limit :limit offset :offset"""

_HAS_WORD = """(instr(folded(e.case_id || ' ' || e.title || ' ' || e.standing || ' ' || e.best || ' ' || e.waiting_for
    || ' ' || e.words), :{name})
    or exists(select 1 from message m where m.case_id = e.case_id and instr(folded(m.text), :{name})))"""


# Signs without a letter or digit have no case and no accents: they are looked for as they are, which is quick.
_HAS_SIGN = """(instr(e.case_id || ' ' || e.title || ' ' || e.standing || ' ' || e.words, :{name})
    or exists(select 1 from message m where m.case_id = e.case_id and instr(m.text, :{name})))"""


@dataclass(slots=True)
class _Wanted:
    """Conditions on a line of the list, with the values in them."""

    conditions: list[str] = field(default_factory=list)
    values: dict[str, Any] = field(default_factory=dict)

    def add(self, condition: str, **values: Any) -> None:
        self.conditions.append(condition)
        self.values |= values

    def __str__(self) -> str:
        return " and ".join(self.conditions) or "1"


def teach(connection: sqlite3.Connection) -> None:
    """Give the connection the comparison that search uses: whatever the case, accents and ways of writing."""
    connection.create_function("folded", 1, finding.folded, deterministic=True)


def entries(connection: sqlite3.Connection, find: Find, limit: int | None, offset: int) -> list[Entry]:
    """The cases that are wanted, last changed first."""
    page = {"limit": -1 if limit is None else max(0, limit), "offset": max(0, offset)}
    rows = _ask(connection, _ENTRIES, find, page)
    return [
        Entry(id=id, events=events, begun=begun, updated=updated, archived=bool(archived), index=_index(parts))
        for id, events, begun, updated, archived, *parts in rows
    ]


def count(connection: sqlite3.Connection, find: Find) -> int:
    """How many cases are wanted."""
    return int(_ask(connection, "select count(*) from entry e indexed by entry_listed where {wanted}", find, {})[0][0])


def index_of(connection: sqlite3.Connection, case_id: str) -> IndexRow:
    """What the lists show of a case."""
    row = connection.execute(f"select {_INDEX} from entry where case_id = ?", (case_id,)).fetchone()
    return IndexRow() if row is None else _index(list(row))


def is_archived(connection: sqlite3.Connection, case_id: str) -> bool:
    """True while a case is on the shelf."""
    row = connection.execute("select archived from entry where case_id = ?", (case_id,)).fetchone()
    return row is not None and bool(row[0])


def changed(connection: sqlite3.Connection, after: int) -> tuple[int, list[str]]:
    """The mark of the last event, and the cases with events after an earlier mark."""
    (mark,) = connection.execute("select coalesce(max(n), 0) from event").fetchone()
    rows = connection.execute(
        "select distinct case_id from event where n > ? and n <= ? order by case_id", (after, mark)
    )
    return int(mark), [case_id for (case_id,) in rows]


def lacks_lines(connection: sqlite3.Connection) -> bool:
    """True where the journal has cases that the index has not: it was dropped."""
    (lacks,) = connection.execute(
        "select (select count(*) from entry) != (select count(*) from event indexed by event_first where seq = 1)"
    ).fetchone()
    return bool(lacks)


def count_anew(connection: sqlite3.Connection, *, seek: bool = True) -> None:
    """Put the cases into the index that it lacks, with their counts and times and without what a caller says.

    `seek`: with the words that they are found by.
    """
    missing = connection.execute("select case_id from event where seq = 1 except select case_id from entry").fetchall()
    connection.execute(COUNTED)
    for (case_id,) in missing if seek else ():
        finding.seek(connection, case_id)


def retitled(index: IndexRow, title: str) -> IndexRow:
    """The same under another title."""
    return replace(index, title=title)


def _ask(connection: sqlite3.Connection, sql: str, find: Find, page: dict[str, int]) -> list[tuple[Any, ...]]:
    """The rows that are wanted; where the search index is damaged, without it."""
    indexed = finding.has_index(connection)
    try:
        wanted = _wanted(find, indexed)
        return connection.execute(sql.format(wanted=wanted), wanted.values | page).fetchall()
    except sqlite3.DatabaseError as trouble:
        if not (indexed and finding.is_broken(trouble)):
            raise
    wanted = _wanted(find, indexed=False)
    return connection.execute(sql.format(wanted=wanted), wanted.values | page).fetchall()


def _wanted(find: Find, indexed: bool) -> _Wanted:
    wanted = _Wanted()
    if not find.archived:
        wanted.add("e.archived = 0")
    if find.open_only:
        wanted.add("e.open > 0")
    if find.family:
        wanted.add("e.best = :family", family=find.family)
    if find.waiting_for:
        wanted.add("instr(', ' || e.waiting_for || ',', ', ' || :waiting_for || ',')", waiting_for=find.waiting_for)
    if find.standing:
        wanted.add("substr(lower(e.standing), 1, length(:standing)) = :standing", standing=find.standing.lower())
    if find.due_by:
        wanted.add("e.due between '0' and :due_by", due_by=find.due_by)
    if find.since:
        wanted.add("e.updated >= :since", since=_begins(find.since))
    if find.until:
        wanted.add("e.updated < :until", until=_begins(find.until, days=1))
    _add_words(wanted, find.words, indexed)
    return wanted


def _add_words(wanted: _Wanted, words: str, indexed: bool) -> None:
    """All words must be there: as beginnings of words by the index, and as they are where they have signs inside."""
    given = list(dict.fromkeys(finding.folded(words).split()))
    if len(given) > _MOST_WORDS:
        raise BookError(
            "bad_find", f"{len(given)} words are too many to find a case by", f"Give {_MOST_WORDS} at most."
        )
    plain = [word for part in given for word in finding.words_of(part)]
    indexed = indexed and bool(plain)
    exactly = [word for word in given if not indexed or finding.words_of(word) != [word]]
    whole = [_HAS_WORD.format(name=f"word{n}") for n in range(len(given))]
    if indexed:
        wanted.add(
            "e.id in (select rowid from found where found match :match union all select e.id from entry e "
            f"where e.sought < e.events and {' and '.join(whole)})",
            match=finding.match(plain),
            **{f"word{n}": word for n, word in enumerate(given)},
        )
    for word in exactly:
        name = f"word{given.index(word)}"
        has = _HAS_WORD if finding.words_of(word) else _HAS_SIGN
        wanted.add(has.format(name=name), **{name: word})


def _begins(day: str, days: int = 0) -> str:
    """The moment when a day (or the one so many days later) begins on this computer's clock, as events are stamped."""
    try:
        begins = datetime.combine(date.fromisoformat(day) + timedelta(days=days), time()).astimezone(UTC)
    except (ValueError, OverflowError):
        raise BookError("bad_find", f'"{day[:40]}" is no day', "Write it as 2026-03-31.") from None
    return begins.isoformat(timespec="seconds")


def _index(parts: list[Any]) -> IndexRow:
    title, standing, best, waiting_for, since, due, open, words = parts
    return IndexRow(
        title=title,
        standing=standing,
        best=best,
        waiting_for=waiting_for,
        since=since,
        due=due,
        open=open,
        words=words,
    )
