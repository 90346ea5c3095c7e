"""Bare figures in answer to a question for several: taken in the order asked, or asked back where there is but one."""

import re
from collections import defaultdict
from collections.abc import Mapping, Sequence
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
        heard = _both_ends(text, group, heard, folder) or _the_last_one(text, group, heard, folder)
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


def _both_ends(text: str, group: Sequence[str], heard: Heard, folder: Path) -> Heard | None:
    """Two heights in answer to the heights of both ends: by the end that one of them names, else in the order asked.

    None where it is not so, or where the reader has placed both.
    """
    told = [fact for fact in heard.facts if fact.field in group]
    others = [fact for fact in heard.facts if fact.field not in group]
    loose = [q for q in reading.quantities(text) if q.unit == "m" and not _used(q, others)]
    if not set(_ENDS) <= set(group) or len(loose) != 2 or len(told) > 1:
        return None
    if any(fact.field not in _ENDS for fact in told) or any(doubt.field not in _ENDS for doubt in heard.doubts):
        return None
    named = [_end_named(text, one, two) for one, two in ((loose[0], loose[1]), (loose[1], loose[0]))]
    turned = named[0] == _ENDS[1] or named[1] == _ENDS[0]
    ends = (_ENDS[1], _ENDS[0]) if turned else _ENDS
    facts = [_as(quantity, name, folder) for quantity, name in zip(loose, ends, strict=True)]
    if not all(facts):
        return None
    unread = tuple(piece for piece in heard.unread if not any(q.said in piece for q in loose))
    return replace(heard, facts=(*others, *(fact for fact in facts if fact)), doubts=(), unread=unread)


_ENDS = ("rise.infeed_height", "rise.discharge_height")
_IN = re.compile(r"\b(?:in|in ?feed|inlet|com(?:e|es|ing)|arriv\w+|enter\w*|load\w*|feed\w*)\b", re.IGNORECASE)
_OUT = re.compile(r"\b(?:out|out ?feed|outlet|discharge\w*|leav\w+|exit\w*|deliver\w*|receiv\w+)\b", re.IGNORECASE)
_COMPARED = re.compile(r"\bas (?:the |our )?(?:in ?feed|inlet|out ?feed|outlet|discharge)\b", re.IGNORECASE)
""" "From the same floor as the infeed" names no end."""
_CUT = re.compile(r"[,;\n]|\.\s")


def _end_named(text: str, quantity: Quantity, other: Quantity) -> str | None:
    """The end that the clause of a height names; None where it names none, or both."""
    start, end = quantity.span
    before, behind = text[:start], text[end:]
    if other.span[0] > end:
        behind = text[end : other.span[0]]
    else:
        before = text[other.span[1] : start]
    clause = _COMPARED.sub(" ", f"{_CUT.split(before)[-1]} {_CUT.split(behind)[0]}")
    ins, outs = _IN.search(clause) is not None, _OUT.search(clause) is not None
    return None if ins == outs else _ENDS[0] if ins else _ENDS[1]


def _the_last_one(text: str, group: Sequence[str], heard: Heard, folder: Path) -> Heard:
    """The heard with one figure that is left given to the one field that is left: "420 long, 310 wide, 250 mm"."""
    told = {fact.field for fact in heard.facts}
    left = [name for name in group if name not in told and not any(told >= set(others) for others in _INSTEAD[name])]
    loose = [q for q in reading.quantities(text) if q.unit == _unit(group[0]) and not _used(q, heard.facts)]
    if len(left) != 1 or len(loose) != 1 or len(group) < 3 or heard.doubts:
        return heard
    fact = _as(loose[0], left[0], folder)
    if fact is None:
        return heard
    unread = tuple(piece for piece in heard.unread if loose[0].said not in piece)
    return replace(heard, facts=(*heard.facts, fact), unread=unread)


_INSTEAD: Mapping[str, tuple[tuple[str, ...], ...]] = defaultdict(
    tuple,
    {
        "product.diameter": (("product.length",), ("product.width",)),
        "product.length": (("product.diameter",),),
        "product.width": (("product.diameter",),),
        "rise.height": (("rise.infeed_height", "rise.discharge_height"),),
    },
)
"""Facts that make another of the same breath needless."""


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
