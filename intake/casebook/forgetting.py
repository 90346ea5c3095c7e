"""Forgetting a person: blanks in place of their words, the only change that the journal permits."""

import json
import re
import sqlite3
from dataclasses import replace
from pathlib import Path

from intake.casebook import files, finding, journal, personal
from intake.casebook.error import no_case
from intake.casebook.seam import Forgotten, IndexOf
from intake.spec import Event
from intake.spec.events import now


def forget(connection: sqlite3.Connection, case_id: str, index_of: IndexOf, *, drop_files: bool) -> Forgotten:
    """Blank, inside the caller's transaction, and note it. The caller seals the file afterwards."""
    events = list(journal.read(connection, case_id))
    if not events:
        raise no_case(case_id)
    pattern = personal.pattern_of(events)
    also_in = _others(connection, case_id, pattern, events)
    messages = _blank_messages(connection, case_id, events, pattern)
    bodies = _blank_bodies(connection, case_id, pattern)
    connection.execute("delete from draft where case_id = ?", (case_id,))
    shas = [str(event.body["file"]) for event in events if event.kind == "attached"]
    dropped = files.drop(connection, case_id, shas) if drop_files else 0
    noted = Event(seq=len(events) + 1, at=now(), kind="forgotten", body={"messages": messages})
    journal.write(connection, case_id, [noted])
    journal.write_index(connection, case_id, index_of(case_id, list(journal.read(connection, case_id))))
    finding.seek(connection, case_id)
    finding.wring(connection)
    left = sum(files.has_content(connection, sha) for sha in dict.fromkeys(shas))
    return Forgotten(messages=messages, events=bodies, files=dropped, files_kept=left, also_in=also_in)


def with_copies(done: Forgotten, path: Path, sealed: bool) -> Forgotten:
    """The same with the older copies of the book that lie beside it, and whether its pages were written anew."""
    copies = tuple(sorted(file.name for file in path.parent.glob(f"{path.name}.v*-backup*")))
    return replace(done, copies=copies, sealed=sealed)


def _blank_messages(connection: sqlite3.Connection, case_id: str, events: list[Event], pattern: re.Pattern[str]) -> int:
    count = 0
    for event in events:
        if event.kind != "message":
            continue
        before = str(event.body["text"])
        after = personal.blanked(before, pattern)
        if after != before:
            connection.execute("update message set text = ? where case_id = ? and seq = ?", (after, case_id, event.seq))
            count += 1
    return count


def _blank_bodies(connection: sqlite3.Connection, case_id: str, pattern: re.Pattern[str]) -> int:
    count = 0
    for n, before in connection.execute("select n, body from event where case_id = ?", (case_id,)).fetchall():
        after = personal.blanked_json(before, pattern)
        if json.loads(after) != json.loads(before):
            connection.execute("update event set body = ? where n = ?", (after, n))
            count += 1
    return count


def _others(
    connection: sqlite3.Connection, case_id: str, pattern: re.Pattern[str], events: list[Event]
) -> tuple[str, ...]:
    """Other cases whose messages hold the same words of the person: copies of this one, mostly."""
    texts = [str(event.body["text"]) for event in events if event.kind == "message"]
    hits = {hit[0] for text in texts for hit in pattern.finditer(text) if " " in hit[0].strip() or "@" in hit[0]}
    found: set[str] = set()
    for words in hits:
        rows = connection.execute("select distinct case_id from message where instr(text, ?)", (words,))
        found |= {other for (other,) in rows}
    return tuple(sorted(found - {case_id}))
