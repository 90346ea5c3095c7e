"""What is known of one kept case, as plain lines and as JSON."""

from collections.abc import Iterator, Sequence
from typing import Any

from intake.cli.case_columns import local
from intake.desk.waiting import waiting_lines
from intake.spec import Case, Event, Fact, fold, vocabulary
from intake.spec.clean import one_line
from intake.spec.display import System, label, show_value, system_of
from intake.spec.matters import Attached, Matter

_LONGEST_QUOTE = 80


_STAGES = {"samples_asked": "samples asked for", "in_test": "in test", "handed_over": "handed over", "closed": "closed"}


def case_lines(case_id: str, events: Sequence[Event], *, contacts: bool, today: str) -> Iterator[str]:
    """What is known of a case: where it is, every fact with its words, what waits for whom, files and notes.

    `today` is YYYY-MM-DD.
    """
    case = fold(events)
    system = system_of(text for text, _ in case.messages.values())
    yield " ".join(part for part in (f"{case_id}:", one_line(case.title), "(on the shelf)" * case.archived) if part)
    yield f"begun {local(events[0].at)}, last changed {local(events[-1].at)}"
    if case.stage in _STAGES:
        yield " ".join(part for part in (_STAGES[case.stage], case.revision, f"since {local(case.stage_at)}") if part)
    facts = _facts(case, contacts)
    yield from (_fact_line(fact, system) for fact in facts)
    if not facts:
        yield "nothing is known yet"
    yield from _open_lines(case, system)
    if case.waiting:
        yield from waiting_lines(case.waiting, today)
    yield from file_lines(case.files)
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
        "stage": case.stage,
        "stage_since": case.stage_at or None,
        "revision": case.revision or None,
        "waiting": [_matter_shape(number, matter) for number, matter in enumerate(case.waiting, 1)],
        "files": file_shapes(case.files),
        "notes": list(case.notes),
    }


def file_lines(files: Sequence[Attached]) -> Iterator[str]:
    """The files of a case, numbered as --save-file takes them."""
    for number, file in enumerate(files, 1):
        yield f"file {number}: {one_line(file.name, 100)}  ({_size(file.bytes)}, {local(file.at)})"


def file_shapes(files: Sequence[Attached]) -> list[dict[str, Any]]:
    """The same for programs."""
    return [
        {"number": number, "name": file.name, "sha256": file.file, "bytes": file.bytes, "at": file.at}
        for number, file in enumerate(files, 1)
    ]


def _matter_shape(number: int, matter: Matter) -> dict[str, Any]:
    return {
        "number": number,
        "kind": matter.kind,
        "what": matter.what,
        "who": matter.who,
        "by": matter.by or None,
        "since": matter.at,
    }


def _size(size: int) -> str:
    return f"{size / 1e6:.1f} MB" if size >= 1_000_000 else f"{size / 1e3:.1f} kB" if size >= 1000 else f"{size} bytes"


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
