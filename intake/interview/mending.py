"""What staff say of the reader's work before it counts: these words are something else, or nothing."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from intake import reading
from intake.interview.hearing import Taken
from intake.spec.bodies import Messages, fact_from_body
from intake.spec.events import Event
from intake.spec.facts import Fact
from intake.spec.vocabulary import vocabulary

Span = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Mend:
    """What the words at `span` are: `fact`, or nothing that counts (None)."""

    span: Span
    fact: Fact | None


def mended(taken: Taken, mends: Sequence[Mend], words: str) -> Taken:
    """The message as staff have put it right: at the places mended nothing else is read, and their facts stand."""
    if not mends:
        return taken
    heard = taken.heard
    added = [_placed(mend, words) for mend in mends if mend.fact is not None]
    named = {(fact.field, fact.size) for fact in added}
    kept = [f for f in heard.facts if not _touches(f.span, mends) and (f.field, f.size) not in named]
    doubts = [d for d in heard.doubts if not _touches(d.span, mends) and (d.field, 1) not in named]
    said = [words[start:end] for start, end in (mend.span for mend in mends)]
    unread = [piece for piece in heard.unread if not any(piece in one or one in piece for one in said)]
    settles = tuple(sorted({*taken.settles, *(fact.field for fact in added)}))
    changed = replace(heard, facts=(*kept, *added), doubts=tuple(doubts), unread=tuple(unread))
    return replace(taken, reply="facts", heard=changed, settles=settles)


def mended_body(taken: Taken, mends: Sequence[Mend]) -> list[dict[str, Any]]:
    """What is kept of mends beside the facts: where, and what the reader had made of it. `taken`: as it was read."""
    return [
        {"span": list(mend.span), "was": sorted({f.field for f in taken.heard.facts if _touches(f.span, (mend,))})}
        for mend in mends
    ]


def mends_kept(heard: Event, messages: Messages, but: Sequence[Mend] = ()) -> list[Mend]:
    """The mends that a reading was kept with, less those that `but` speaks of anew."""
    facts = [fact_from_body(body, messages) for body in heard.body.get("facts", ())]
    kept = []
    for body in heard.body.get("mended", ()):
        span = int(body["span"][0]), int(body["span"][1])
        if not _touches(span, but):
            kept.append(Mend(span, next((fact for fact in facts if fact.span == span), None)))
    return kept


def meanings(piece: str, folder: Path, first: Iterable[str] = ()) -> list[Fact]:
    """What these words may be: one fact a field, as they read when asked for it; fields in `first` come first.

    Fields of which they say nothing are left out, and so are those kept as said, which any words would fill.
    """
    known = vocabulary()
    order = [*dict.fromkeys([name for name in first if name in known]), *known]
    found: dict[str, Fact] = {}
    for name in order:
        if name in found or known[name].kind == "text":
            continue
        facts = reading.read(piece, asked=(name,), questions=folder).facts
        fact = next((one for one in facts if one.field == name), None)
        if fact is not None and _same_kind(piece, name, folder):
            found[name] = fact
    return list(found.values())


def _same_kind(piece: str, name: str, folder: Path) -> bool:
    """False for a figure that carries the unit of something else ("30 lb" is no length)."""
    figures = reading.quantities(piece)
    return not figures or vocabulary()[name].is_number


def _placed(mend: Mend, words: str) -> Fact:
    assert mend.fact is not None
    start, end = mend.span
    return replace(mend.fact, span=mend.span, said=words[start:end])


def _touches(span: Span | None, mends: Iterable[Mend]) -> bool:
    return span is not None and any(span[0] < mend.span[1] and mend.span[0] < span[1] for mend in mends)
