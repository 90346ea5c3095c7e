"""Advice by the word that staff type for it: `how-high`, `why-not side grip`, `what-if 60 a minute`."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from intake import reading
from intake.advice.brief import Answer, Brief
from intake.advice.delivery import delivery
from intake.advice.families import family_name, short_family_name
from intake.advice.largest import how_fast, how_high
from intake.advice.room import shipping, way_in
from intake.advice.settled import settled
from intake.advice.still import to_find_out
from intake.advice.trials import trials
from intake.advice.what_if import what_if
from intake.advice.why_not import why_not_this
from intake.advice.would_fit import would_fit
from intake.interview.wording import Sentences
from intake.sizing.result import FAMILIES
from intake.spec.clean import one_line
from intake.spec.facts import Fact
from intake.spec.vocabulary import nearest, vocabulary


class AdviceError(Exception):
    """Something asked for that cannot be told. The message says what is wrong and how to mend it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """One thing that can be asked about a case. `takes`: what is typed behind the word, "" for nothing."""

    word: str
    takes: str
    does: str
    answer: Callable[[Brief, str], Answer]


def advise(brief: Brief, word: str, rest: str = "") -> Answer:
    """The answer to one subject.

    Raises AdviceError for a subject or machine that there is not, SpecError for a value that cannot be.
    """
    subject = next((one for one in SUBJECTS if one.word == word), None)
    if subject is None:
        close = nearest(word, tuple(one.word for one in SUBJECTS))
        hint = f"Did you mean {close}? " if close else ""
        raise AdviceError(f'there is no subject "{one_line(word, 40)}". {hint}There are: {", ".join(WORDS)}')
    return subject.answer(brief, rest.strip())


def family_of(words: str, sentences: Sentences) -> str:
    """The family that words name, by its id or its name, in full or in short. Raises AdviceError."""
    ways = {_plain(name): name for name in FAMILIES}
    ways |= {_plain(family_name(name, sentences)): name for name in FAMILIES}
    ways |= {_plain(short_family_name(name, sentences)): name for name in FAMILIES}
    said = _plain(words)
    if said in ways:
        return ways[said]
    inside = {name for way, name in ways.items() if said and said in way.split()}
    if len(inside) == 1:
        return inside.pop()
    close = nearest(said, tuple(ways))
    hint = f'Did you mean "{close}"? ' if close else ""
    raise AdviceError(f'there is no machine "{one_line(words, 40)}". {hint}There are: {", ".join(FAMILIES)}')


def _plain(words: str) -> str:
    return " ".join(words.replace("_", " ").replace("-", " ").casefold().split())


def _of_any(answer: Callable[[Brief, str | None], Answer]) -> Callable[[Brief, str], Answer]:
    """Of the machine that is named, else of the leading one."""
    return lambda brief, rest: answer(brief, family_of(rest, brief.sentences) if rest else None)


def _of_one(word: str, answer: Callable[[Brief, str], Answer]) -> Callable[[Brief, str], Answer]:
    def named(brief: Brief, rest: str) -> Answer:
        if not rest:
            raise AdviceError(f"{word} needs a machine behind it, such as: {word} side grip")
        return answer(brief, family_of(rest, brief.sentences))

    return named


def _alone(answer: Callable[[Brief], Answer]) -> Callable[[Brief, str], Answer]:
    return lambda brief, rest: answer(brief)


def _what_if(brief: Brief, rest: str) -> Answer:
    """Facts as FIELD=VALUE, or in words as a visitor would say them."""
    facts = _pairs(rest) if "=" in rest else _said(rest, brief)
    if not facts:
        raise AdviceError(
            "what-if needs a change behind it, in words or as FIELD=VALUE: what-if 60 a minute, what-if rise.height=6"
        )
    return what_if(brief, facts)


def _pairs(rest: str) -> dict[str, Any]:
    found: dict[str, Any] = {}
    for pair in rest.split():
        name, _, given = pair.partition("=")
        found[name] = {"yes": True, "no": False, "true": True, "false": False}.get(given.casefold(), _figure(given))
    return found


def _figure(given: str) -> float | str:
    try:
        return float(given)
    except ValueError:
        return given


def _said(rest: str, brief: Brief) -> Mapping[str, Any]:
    facts = reading.read(rest, questions=brief.folder).facts
    return {fact.field: _value(fact) for fact in facts if fact.size == 1 and not vocabulary()[fact.field].personal}


def _value(fact: Fact) -> Any:
    return fact.value if not fact.is_number else fact.high if fact.high is not None else fact.low


SUBJECTS = (
    Subject(word="how-high", takes="[MACHINE]", does="the largest rise, and what stops it", answer=_of_any(how_high)),
    Subject(word="how-fast", takes="[MACHINE]", does="the highest rate, and what stops it", answer=_of_any(how_fast)),
    Subject(word="why-not", takes="MACHINE", does="why not this one", answer=_of_one("why-not", why_not_this)),
    Subject(word="would-fit", takes="MACHINE", does="what would let it stand", answer=_of_one("would-fit", would_fit)),
    Subject(word="what-if", takes="CHANGE", does="the case with something changed", answer=_what_if),
    Subject(word="way-in", takes="[MACHINE]", does="ceiling, floor, passage and door", answer=_of_any(way_in)),
    Subject(word="shipping", takes="[MACHINE]", does="whether it ships whole", answer=_of_any(shipping)),
    Subject(word="delivery", takes="[MACHINE]", does="when it could be there", answer=_of_any(delivery)),
    Subject(word="tests", takes="", does="what only samples can tell, and how many", answer=_alone(trials)),
    Subject(word="settled", takes="", does="how settled the choice is, what would change it", answer=_alone(settled)),
    Subject(word="to-find-out", takes="", does="what is still open, by weight", answer=_alone(to_find_out)),
)
WORDS = tuple(subject.word for subject in SUBJECTS)
