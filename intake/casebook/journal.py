"""Events to rows of the journal and back. The texts of messages go to a table of their own."""

import json
import re
import sqlite3
from collections.abc import Iterator, Sequence

from intake.casebook.error import BookError
from intake.casebook.rows import event_of
from intake.casebook.seam import IndexRow
from intake.spec import Event

_LONE = re.compile("[\0\ud800-\udfff]")  # halves of a character, which no file can hold, and what ends a text early

_READ = """select e.seq, e.at, e.kind, e.body, m.text
    from event e left join message m on m.case_id = e.case_id and m.seq = e.seq
    where e.case_id = ? and e.seq >= ? order by e.seq"""


def write(connection: sqlite3.Connection, case_id: str, events: Sequence[Event]) -> int:
    """Add the events that are not kept yet, inside the caller's transaction. Returns the number of the last.

    Raises BookError when the case has gone on otherwise meanwhile, or an event is none.
    """
    last = count(connection, case_id)
    fresh = [event for event in events if event.seq > last]
    if len(fresh) < len(events):
        _same_again(connection, case_id, [event for event in events if event.seq <= last])
    for expected, event in enumerate(fresh, last + 1):
        if event.seq != expected:
            raise BookError(
                "conflict",
                f'case "{case_id}": event {event.seq} was to be kept, but event {expected} is missing before it',
                "Open the case again and repeat what was not kept.",
            )
        body, text = _row(case_id, event)
        connection.execute(
            "insert into event(case_id, seq, at, kind, body) values (?, ?, ?, ?, ?)",
            (case_id, event.seq, event.at, event.kind, body),
        )
        if text is not None:
            connection.execute("insert into message(case_id, seq, text) values (?, ?, ?)", (case_id, event.seq, text))
    return last + len(fresh)


def read(connection: sqlite3.Connection, case_id: str, first: int = 1) -> Iterator[Event]:
    """The events of a case from number `first` on. Raises BookError for a damaged row."""
    for expected, (seq, at, kind, body, text) in enumerate(connection.execute(_READ, (case_id, first)), first):
        try:
            if seq != expected:
                raise ValueError("it is not the next one; some are missing")
            parts = json.loads(body)
            if not isinstance(parts, dict):
                raise ValueError("its parts are no table")
            if kind == "message":
                if text is None:
                    raise ValueError("the text of the message is gone")
                parts["text"] = text
            event = event_of(seq, at, kind, parts)
        except (ValueError, RecursionError) as slip:
            raise BookError(
                "damaged",
                f'case "{case_id}": event {seq} cannot be read: {slip}',
                "The other cases are not touched. Bring this one back from a backup or an export.",
            ) from None
        yield event


def count(connection: sqlite3.Connection, case_id: str) -> int:
    """How many events a case has."""
    (last,) = connection.execute("select coalesce(max(seq), 0) from event where case_id = ?", (case_id,)).fetchone()
    return int(last)


def write_index(connection: sqlite3.Connection, case_id: str, index: IndexRow) -> None:
    """What the lists show of a case that has events, in place of what they showed."""
    texts = (index.title, index.standing, index.best, index.waiting_for, index.since, index.due, index.words)
    connection.execute(
        "update entry set title = ?, standing = ?, best = ?, waiting_for = ?, since = ?, due = ?, words = ?, open = ? "
        "where case_id = ?",
        (*(whole(text) for text in texts), index.open, case_id),
    )


def whole(text: str) -> str:
    """The text with a sign in place of what a row cannot hold, of the same length."""
    return _LONE.sub("\ufffd", text)


def _row(case_id: str, event: Event) -> tuple[str, str | None]:
    """The body as JSON and, for a message, its text. Raises BookError for what could not be read again."""
    try:
        body = json.loads(whole(json.dumps(dict(event.body), ensure_ascii=False, allow_nan=False)))
        event_of(event.seq, event.at, event.kind, body)
    except (TypeError, ValueError) as slip:
        raise BookError(
            "bad_event",
            f'case "{case_id}": event {event.seq} cannot be kept: {slip}',
            "Everything before it is kept. Please report this.",
        ) from None
    text = whole(body.pop("text")) if event.kind == "message" else None
    return json.dumps(body, ensure_ascii=False), text


def _same_again(connection: sqlite3.Connection, case_id: str, events: Sequence[Event]) -> None:
    """Raises BookError unless these events are kept already, word for word."""
    kept = {event.seq: event for event in read(connection, case_id, events[0].seq)}
    for event in events:
        body, text = _row(case_id, event)
        there = kept.get(event.seq)
        if there is None or (there.at, there.kind, *_row(case_id, there)) != (event.at, event.kind, body, text):
            raise BookError(
                "conflict",
                f'case "{case_id}" has gone on elsewhere since it was opened here',
                "Open it again to go on from there; what was typed here since is not kept in it.",
            )
