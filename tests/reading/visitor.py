"""A visitor who knows a whole job and answers each question in somebody's words, from the phrasebook."""

import random
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

import phrases

from intake.interview.question import Question
from intake.spec.vocabulary import vocabulary
from intake.talk import Interview

_SIZE = ("product.length", "product.width", "product.height")
_TOGETHER = {
    _SIZE: (
        ("in", "{0} x {1} x {2} in"), ("in", '{0}" x {1}" x {2}"'), ("mm", "{0}x{1}x{2} mm"),
        ("cm", "{0} * {1} * {2} cm"), ("in", "{0} by {1} by {2} inches"), ("mm", "L {0} W {1} H {2} mm"),
        ("in", "{0} long, {1} wide and {2} tall, inches"), ("mm", "length {0} mm, width {1} mm, height {2} mm"),
        ("in", '{0}"L x {1}"W x {2}"H'), ("cm", "{0}/{1}/{2} cm"),
    ),
    ("space.length", "space.width"): (
        ("ft", "{0} x {1} ft"), ("m", "{0} m x {1} m"), ("ft", "{0} by {1} feet"), ("mm", "{0} x {1} mm"),
        ("ft", "{0} ft long and {1} ft wide"), ("m", "{0} m in length, {1} m in width"),
    ),
    ("space.opening_width", "space.opening_height"): (
        ("in", "{0} wide by {1} high, inches"), ("ft", "{0} ft wide, {1} ft high"), ("mm", "{0} x {1} mm"),
        ("m", "{0} m x {1} m"), ("m", "{0} m wide and {1} m high"),
    ),
    ("product.diameter", "product.height"): (
        ("mm", "Ø {0} x {1} mm"), ("in", '{0}" dia, {1}" tall'), ("mm", "{0} mm across and {1} mm tall"),
        ("cm", "{0} cm in diameter, {1} cm high"),
    ),
}  # fmt: skip
_METRES = {"in": 0.0254, "mm": 0.001, "cm": 0.01, "m": 1.0, "ft": 0.3048}
_STEP = {"in": 0.125, "mm": 1.0, "cm": 0.1, "m": 0.01, "ft": 0.25}
_UNKNOWN = (
    "don't know", "not sure", "no idea, sorry", "I'd have to check", "will find out", "dunno", "can't say right now",
    "let me get back to you on that", "no clue",
)  # fmt: skip
NEAR = 0.006


@dataclass
class Talk:
    """What came of a talk: facts given, those of them missed or read otherwise, and questions put a second time."""

    given: dict[str, Any] = field(default_factory=dict)
    missed: list[str] = field(default_factory=list)
    misread: list[str] = field(default_factory=list)
    again: list[str] = field(default_factory=list)
    turns: int = 0


class Visitor:
    """Answers from a flat spec. `held`: phrases kept back while the reader was built, or the others."""

    def __init__(self, spec: Mapping[str, Any], seed: int, *, held: bool | None) -> None:
        known = vocabulary()
        self.spec = {name: value for name, value in spec.items() if name in known and known[name].kind != "text"}
        self.dice = random.Random(seed)
        self.given: dict[str, Any] = {}
        self._ways: dict[str, list[dict[str, Any]]] = {}
        for entry in phrases.entries(held=held):
            self._ways.setdefault(entry["field"], []).append(entry)

    def reply(self, question: Question) -> str:
        """The answer to a question, in words."""
        if question.kind != "question":
            return self._settled(question)
        known = [name for name in question.fields if name in self.spec]
        said, parts = set[str](), []
        for names, ways in _TOGETHER.items():
            if set(names) <= set(known) and not said & set(names) and self.dice.random() < 0.8:
                parts.append(self._together(names, self.dice.choice(ways)))
                said |= set(names)
        parts += [text for name in known if name not in said and (text := self._one(name))]
        joined = self.dice.choice([", ", ". ", "; ", ", ", "\n" if len(parts) > 2 else ", "])
        return joined.join(parts) if parts else self.dice.choice(_UNKNOWN)

    def _one(self, name: str) -> str:
        ways = list(self._ways.get(name, ()))
        self.dice.shuffle(ways)
        for entry in ways:
            filled = phrases.filled(entry, self.spec[name], self.dice)
            if filled is not None:
                self.given[name] = filled[1]
                return filled[0]
        return ""

    def _together(self, names: tuple[str, ...], way: tuple[str, str]) -> str:
        unit, pattern = way
        shown = []
        for name in names:
            amount = max(1, round(self.spec[name] / _METRES[unit] / _STEP[unit])) * _STEP[unit]
            shown.append(f"{amount:.6g}")
            self.given[name] = amount * _METRES[unit]
        return pattern.format(*shown)

    def _settled(self, question: Question) -> str:
        """To a doubt or a conflict: the option that is true; else the thing said again."""
        for option in question.options:
            fact = option.fact
            truth = self.given.get(fact.field, self.spec.get(fact.field)) if fact is not None else None
            if fact is not None and truth is not None and same(truth, fact.low if fact.is_number else fact.value):
                return option.label
        return next((self._one(name) for name in question.fields if name in self.spec), "don't know")


def same(truth: Any, got: Any) -> bool:
    """The same word, or a figure within a rounding."""
    if isinstance(truth, (bool, str)) or isinstance(got, (bool, str)) or got is None:
        return bool(truth == got)
    return bool(abs(truth - got) <= NEAR * max(abs(truth), abs(got)) + 1e-9)


def play(spec: Mapping[str, Any], seed: int, *, held: bool | None, most: int = 70) -> tuple[Talk, list[str]]:
    """A talk from the first question to the last; and its lines, for a person to look at."""
    visitor, talk, played = Visitor(spec, seed, held=held), Interview(), Talk()
    lines: list[str] = []
    answered: dict[str, int] = {}
    while (question := talk.ask()) is not None and played.turns < most:
        played.turns += 1
        before = dict(visitor.given)
        reply = visitor.reply(question)
        if question.kind == "question":
            played.again += [name for name in question.fields if answered.get(name) and name in before]
            for name in question.fields:
                answered[name] = answered.get(name, 0) + (name in visitor.given)
        heard = talk.answer(reply)
        read = {fact.field: fact.low if fact.is_number else fact.value for fact in heard.facts}
        lines += [f"{question.kind} {question.fields}: {question.say}", f"    > {reply}", f"    = {read}"]
    played.given = visitor.given
    _compare(visitor, talk, played)
    return played, lines


def _compare(visitor: Visitor, talk: Interview, played: Talk) -> None:
    stands = {fact.field: fact for fact in talk.facts if fact.size == 1}
    for name, truth in visitor.given.items():
        fact = stands.get(name)
        if fact is None:
            played.missed.append(name)
        elif not same(truth, fact.low if fact.is_number else fact.value):
            got = fact.low if fact.is_number else fact.value
            played.misread.append(f"{name}: {truth} read as {got} in {fact.said!r}")
    for name, fact in stands.items():
        if name in visitor.given or vocabulary()[name].kind == "text":
            continue
        truth = visitor.spec.get(name)
        if truth is None or not same(truth, fact.low if fact.is_number else fact.value):
            played.misread.append(f"{name}: never said, read in {fact.said!r}")
