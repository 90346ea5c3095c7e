"""What was said and meant, in the form that events keep it."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from typing import Any

from intake.interview.hearing import Taken
from intake.interview.question import Question
from intake.spec.bodies import doubt_to_body, fact_to_body
from intake.spec.case import Case, renumbered
from intake.spec.facts import Doubt, Fact, Heard, Who
from intake.spec.flat import Value


def heard_facts(taken: Taken, message: int, who: Who, at: str) -> tuple[Fact, ...]:
    """The facts of one message as they enter the case: with message, speaker and time."""
    facts = [renumbered(fact, message=message, who=who, at=at) for fact in taken.heard.facts]
    kept = taken.kept
    if kept is not None:
        # An earlier reading that was chosen keeps the words that it came from.
        facts.append(kept if kept.message is not None else renumbered(kept, message=message, who=who, at=at))
    return tuple(facts)


def heard_body(
    taken: Taken,
    facts: tuple[Fact, ...],
    question: Question | None,
    case: Case,
    message: int,
    who: Who,
    at: str,
    asks: Sequence[Mapping[str, Any]] = (),
) -> dict[str, Any]:
    """The body of a "heard" event. `asks`: the visitor's own questions in the message."""
    confirmed = question is not None and bool(question.stood) and bool(facts) and _all_stand(facts, case)
    return {
        "message": message,
        "asked": list(question.fields) if question is not None else [],
        "to": question.id if question is not None else None,
        "facts": [fact_to_body(fact) for fact in facts],
        "doubts": [_doubt_body(doubt, message, who, at) for doubt in taken.heard.doubts],
        "unread": list(taken.heard.unread),
    } | only_said(
        corrects=taken.corrects,
        settles=list(taken.settles),
        unknown=list(taken.unknown),
        later=list(taken.later),
        asks=list(asks),
        passes={"question": question.id, "stood": question.stood} if confirmed and question is not None else None,
    )


def without_asked(taken: Taken, questions: Sequence[tuple[tuple[int, int], frozenset[str]]], words: str) -> Taken:
    """The same without what questions of the visitor's own say: facts on what they ask about, and pieces not used.

    questions: the span of each, and the fields that it asks about.
    """
    if not questions:
        return taken
    heard = taken.heard
    facts = tuple(fact for fact in heard.facts if not any(_asks(fact, *one) for one in questions))
    said = [words[start:end] for (start, end), _ in questions]
    unread = tuple(piece for piece in heard.unread if not any(piece in asked for asked in said))
    return replace(taken, heard=replace(heard, facts=facts, unread=unread))


def _asks(fact: Fact, span: tuple[int, int], fields: frozenset[str]) -> bool:
    within = fact.span is not None and span[0] <= fact.span[0] and fact.span[1] <= span[1]
    return within and fact.field in fields


def as_heard(taken: Taken, facts: tuple[Fact, ...]) -> Heard:
    """What the caller is told of the message."""
    return Heard(facts=facts, doubts=taken.heard.doubts, unread=taken.heard.unread)


def direct_fact(name: str, size: int, known: Value, who: Who, at: str, message: int | None) -> Fact:
    """A fact set directly. What somebody typed is a message too: then its words are the whole of that."""
    words = str(known.value) if message is not None else ""
    return Fact(
        field=name,
        low=known.low,
        high=known.high,
        value=known.value,
        hedged=known.hedged,
        spread=known.spread,
        said=words,
        span=(0, len(words)) if message is not None else None,
        size=size,
        who=who,
        at=at,
        message=message,
    )


def only_said(**parts: Any) -> dict[str, Any]:
    """Only the parts that say something, so that events stay short."""
    return {name: value for name, value in parts.items() if value not in (None, False, [], ())}


def _all_stand(facts: tuple[Fact, ...], case: Case) -> bool:
    """True when these facts say what stands already: then what was asked about is confirmed."""
    standing = [case.facts.get((fact.field, fact.size)) for fact in facts]
    return all(before is not None and before.same_as(fact) for before, fact in zip(standing, facts, strict=True))


def _doubt_body(doubt: Doubt, message: int, who: Who, at: str) -> dict[str, Any]:
    options = tuple(renumbered(option, message=message, who=who, at=at) for option in doubt.options)
    return doubt_to_body(replace(doubt, options=options))
