"""Kept cases as plain lines and as JSON: the list, and what is known of one."""

from collections.abc import Iterator, Sequence
from datetime import datetime
from typing import Any

from intake.advice import short_family_name
from intake.casebook import Entry
from intake.spec import Case, Event, Fact, fold, vocabulary
from intake.spec.clean import one_line
from intake.spec.display import System, label, show_value, system_of

_WIDEST_TITLE, _LONGEST_QUOTE = 60, 80


def entry_lines(entries: Sequence[Entry]) -> Iterator[str]:
    """One line a case, in columns: id, last change, standing, best family, title."""
    rows = [_columns(entry) for entry in entries]
    widths = [max(len(row[n]) for row in rows) for n in range(4)]
    for *columns, title in rows:
        yield "  ".join([*(text.ljust(width) for text, width in zip(columns, widths, strict=True)), title]).rstrip()
    yield "1 case" if len(entries) == 1 else f"{len(entries)} cases"


def entry_shape(entry: Entry) -> dict[str, Any]:
    """One case in the list, for programs."""
    index = entry.index
    return {
        "id": entry.id,
        "title": index.title,
        "standing": index.standing,
        "best": index.best or None,
        "waiting_for": index.waiting_for or None,
        "since": index.since or None,
        "begun": entry.begun,
        "updated": entry.updated,
        "archived": entry.archived,
        "events": entry.events,
    }


def case_lines(case_id: str, events: Sequence[Event], *, contacts: bool) -> Iterator[str]:
    """What is known of a case: every fact with its words, what waits for an answer, and notes."""
    case = fold(events)
    system = system_of(text for text, _ in case.messages.values())
    yield " ".join(part for part in (f"{case_id}:", one_line(case.title), "(on the shelf)" * case.archived) if part)
    yield f"begun {_when(events[0].at)}, last changed {_when(events[-1].at)}"
    facts = _facts(case, contacts)
    yield from (_fact_line(fact, system) for fact in facts)
    if not facts:
        yield "nothing is known yet"
    yield from _open_lines(case, system)
    yield from (f"note: {one_line(note)}" for note in case.notes)
    left_out = len(case.facts) - len(facts)
    if left_out:
        yield f"{left_out} about the person left out; --with-contacts shows them"


def case_shape(case_id: str, events: Sequence[Event], *, contacts: bool) -> dict[str, Any]:
    """The same for programs. Doubts about the person are left out with the facts."""
    case, known = fold(events), vocabulary()
    return {
        "id": case_id,
        "title": case.title,
        "archived": case.archived,
        "begun": events[0].at,
        "updated": events[-1].at,
        "facts": [fact.to_json() | {"who": fact.who, "at": fact.at} for fact in _facts(case, contacts)],
        "doubts": [doubt.to_json() for doubt in case.doubts if contacts or not known[doubt.field].personal],
        "conflicts": [[fact.to_json() for fact in pair] for pair in case.quarrels.values()],
        "unknown": sorted(case.unknown),
        "later": sorted(case.later),
        "notes": list(case.notes),
    }


def _columns(entry: Entry) -> tuple[str, ...]:
    index = entry.index
    standing = "on the shelf" if entry.archived else one_line(index.standing, 40)
    return (
        entry.id,
        _when(entry.updated),
        standing,
        short_family_name(index.best) if index.best else "",
        one_line(index.title, _WIDEST_TITLE),
    )


def _facts(case: Case, contacts: bool) -> list[Fact]:
    """The standing facts in the order of the vocabulary, sizes together."""
    order, known = list(vocabulary()), vocabulary()
    kept = [fact for fact in case.facts.values() if contacts or not known[fact.field].personal]
    return sorted(kept, key=lambda fact: (fact.size, order.index(fact.field)))


def _fact_line(fact: Fact, system: System) -> str:
    line = f"{label(fact.field, fact.size)}: {show_value(fact.field, fact, system)}"
    quote = one_line(fact.said, _LONGEST_QUOTE)
    return f'{line}  ({fact.who}: "{quote}")' if quote else f"{line}  ({fact.who})"


def _open_lines(case: Case, system: System) -> Iterator[str]:
    for pair in case.quarrels.values():
        first, second = (show_value(fact.field, fact, system) for fact in pair)
        yield f"to settle: {label(pair[0].field, pair[0].size)}: {first} or {second}"
    yield from (f"to ask: {one_line(doubt.ask)}" for doubt in case.doubts)
    for said, fields in (("not known", case.unknown), ("the visitor will check", case.later)):
        if fields:
            yield f"{said}: {', '.join(label(name) for name in vocabulary() if name in fields)}"


def _when(at: str) -> str:
    """The time on the desk's own clock, to the minute."""
    try:
        return f"{datetime.fromisoformat(at).astimezone():%Y-%m-%d %H:%M}"
    except (ValueError, OverflowError):
        return one_line(at, 20)
