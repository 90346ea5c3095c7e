"""Bare figures in answer to a question for several: taken in the order asked, or asked back where there is but one."""

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from intake import reading
from intake.interview.wording import Sentences, joined
from intake.reading import Quantity
from intake.spec.display import label
from intake.spec.facts import Doubt, Fact, Heard
from intake.spec.vocabulary import vocabulary


def by_order(text: str, asked: Sequence[str], heard: Heard, folder: Path, sentences: Sentences) -> Heard:
    """What was heard, with the figures that the reader could not place among the fields asked for.

    "0.8 m and 3.8 m" for infeed and discharge height are taken in that order; "3 m" alone is asked back. Dimensions
    of a product are left to the reader, as people tell them in more ways than one order.
    """
    for unit in dict.fromkeys(_unit(name) for name in asked if _unit(name)):
        group = [name for name in asked if _unit(name) == unit]
        placed = [fact for fact in heard.facts if fact.field in group]
        others = [fact for fact in heard.facts if fact.field not in group]
        doubted = any(doubt.field in group for doubt in heard.doubts)
        loose = [q for q in reading.quantities(text) if q.unit == unit and not _used(q, others)]
        if doubted or len(placed) >= len(loose) or len(group) < 2:
            continue
        if len(loose) == 1:
            return replace(heard, doubts=(*heard.doubts, _which(loose[0], group, folder, sentences)))
        if len(loose) <= len(group) and not group[0].startswith("product."):
            facts = [_as(q, name, folder) for q, name in zip(loose, group, strict=False)]
            if all(facts):
                unread = tuple(piece for piece in heard.unread if not any(q.said in piece for q in loose))
                return Heard(facts=(*others, *(f for f in facts if f)), doubts=heard.doubts, unread=unread)
    return heard


def _which(quantity: Quantity, group: Sequence[str], folder: Path, sentences: Sentences) -> Doubt:
    """Asks which of several fields one figure is for."""
    readings = [(name, fact) for name in group if (fact := _as(quantity, name, folder)) is not None]
    names = joined([label(name) for name, _ in readings], "or")
    return Doubt(
        field=group[0],
        said=quantity.said,
        why=sentences.say("clear_up.which_why"),
        ask=sentences.say("clear_up.which_say", said=quantity.said, fields=names),
        span=quantity.span,
        options=tuple(fact for _, fact in readings),
    )


def _as(quantity: Quantity, name: str, folder: Path) -> Fact | None:
    """The figure read as an answer to this field alone, at its place in the whole message."""
    alone = reading.read(quantity.said, asked=name, questions=folder)
    found = next((fact for fact in alone.facts if fact.field == name), None)
    if found is None or found.span is None:
        return None
    start = quantity.span[0]
    return replace(found, span=(found.span[0] + start, found.span[1] + start))


def _used(quantity: Quantity, facts: Sequence[Fact]) -> bool:
    spans = [fact.span for fact in facts if fact.span is not None]
    return any(start < quantity.span[1] and quantity.span[0] < end for start, end in spans)


def _unit(name: str) -> str:
    field = vocabulary()[name]
    return field.unit if field.kind == "quantity" else ""
