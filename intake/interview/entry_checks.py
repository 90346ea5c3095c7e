"""Checks on what was entered, each answered with a question rather than a refusal (design: checks on entry)."""

import json
from collections.abc import Iterator
from math import pi
from pathlib import Path

from intake.interview.question import Option, Question
from intake.interview.tree import Tree
from intake.interview.wording import Sentences, by, fill, joined
from intake.sizing.result import Conflict, Result
from intake.spec.case import Case
from intake.spec.display import System, label, show, show_value
from intake.spec.facts import Doubt, Fact
from intake.spec.flat import Spec, Value
from intake.spec.vocabulary import vocabulary

_HEAVIEST = 3000.0  # kg/m3, common practice, no source: solid stone or light metal, no packed goods
_LIGHTEST = 20.0  # kg/m3, common practice, no source: loose foam
_LIGHTEST_EMPTY = 3.0  # kg/m3, common practice, no source: thin-walled empties


class EntryChecks:
    """All that waits for a clear word before anything else is asked."""

    def __init__(self, tree: Tree, folder: Path, sentences: Sentences) -> None:
        self._tree, self._folder, self._sentences = tree, folder, sentences

    def questions(self, case: Case, spec: Spec, result: Result, system: System) -> list[Question]:
        """Doubts of reading, then quarrels and conflicts, then implausible entries; those passed over are left out."""
        found = [*self._doubts(case), *self._quarrels(case, system), *self._conflicts(case, spec, result, system)]
        busy = {name for question in found for name in question.fields}
        for question in (*self._densities(spec, system), *self._pieces(spec, system), *self._plausible(case, system)):
            if not busy & set(question.fields):
                found.append(question)
        answered = case.unknown | case.later
        return [
            question
            for question in found
            if (not question.stood or case.passed.get(question.id) != question.stood)
            and not answered.issuperset(question.fields)
        ]

    def _branch(self, name: str) -> str:
        entry = self._tree.for_field(name)
        return entry.branch if entry is not None else vocabulary()[name].branch

    def _doubts(self, case: Case) -> Iterator[Question]:
        for doubt in case.doubts:
            yield Question(
                id=f"doubt:{doubt.field}",
                kind="doubt",
                fields=(doubt.field,),
                say=doubt.ask,
                why=self._sentences.say("clear_up.doubt_why", said=doubt.said, why=doubt.why),
                branch=self._branch(doubt.field),
                options=_readings(doubt),
            )

    def _quarrels(self, case: Case, system: System) -> Iterator[Question]:
        for (name, size), pair in case.quarrels.items():
            shown = [show_value(name, fact, system) for fact in pair]
            blanks = {"field": label(name, size), "before": shown[0], "after": shown[1]}
            yield Question(
                id=f"conflict:{_key(name, size)}",
                kind="conflict",
                fields=(name,),
                say=self._sentences.say("clear_up.quarrel_say", **blanks),
                why=self._sentences.say("clear_up.quarrel_why", **blanks),
                branch=self._branch(name),
                options=tuple(Option(label=said, fact=fact) for said, fact in zip(shown, pair, strict=True)),
            )

    def _conflicts(self, case: Case, spec: Spec, result: Result, system: System) -> Iterator[Question]:
        for conflict in result.conflicts:
            given = tuple(name for name in conflict.fields if spec.knows(name))
            if not given or any((name, 1) in case.quarrels for name in given):
                continue
            yield Question(
                id=f"conflict:{'+'.join(given)}",
                kind="conflict",
                fields=given,
                say=self._conflict_say(conflict, given, spec, system),
                why=self._sentences.find(f"conflict_why.{conflict.why}")
                or self._sentences.say("clear_up.conflict_why"),
                branch=self._branch(given[0]),
                options=(Option(label=self._sentences.say("clear_up.keep")),),
                stood=_stood(spec, given),
            )

    def _conflict_say(self, conflict: Conflict, given: tuple[str, ...], spec: Spec, system: System) -> str:
        values = {name: show_value(name, spec[(name, 1)], system) for name in given}
        own = self._sentences.find(f"conflict_ask.{self._id(conflict)}")
        if own is not None:
            return fill(own, **{name.split(".", 1)[1]: said for name, said in values.items()})
        facts = joined([f"{label(name)} {said}" for name, said in values.items()])
        return self._sentences.say("clear_up.conflict_say", facts=facts)

    def _id(self, conflict: Conflict) -> str:
        """The id of a conflict, also where sizing has put its sentence in the place of it."""
        said = self._sentences.group("conflict")
        return next((id for id, sentence in said.items() if sentence == conflict.why), conflict.why)

    def _densities(self, spec: Spec, system: System) -> Iterator[Question]:
        for size in spec.sizes:
            weight, volume = spec.of("product.weight", size), _volume(spec, size)
            if weight is None or volume is None or spec.word("product.underside", size) == "castors":
                continue
            # The heaviest of a spread with the largest size: they belong together more often than not.
            density = (weight.largest or 0.0) / volume
            least = _LIGHTEST_EMPTY if spec.word("product.fill", size) in ("empty", "both") else _LIGHTEST
            if not least <= density <= _HEAVIEST:
                yield self._density(spec, size, density, "heavy" if density > _HEAVIEST else "light", least, system)

    def _density(self, spec: Spec, size: int, density: float, way: str, least: float, system: System) -> Question:
        edges = [name for name in _EDGES if spec.of(name, size) is not None]
        sides = [show_value(name, _of(spec, name, size), system) for name in edges]
        fields = ("product.weight", *edges)
        blanks = {
            "weight": show_value("product.weight", _of(spec, "product.weight", size), system),
            "size": by(sides),
            "density": show(density, "kg/m3", system),
            "least": show(least, "kg/m3", system),
            "most": show(_HEAVIEST, "kg/m3", system),
        }
        return Question(
            id=f"density:{_key('product.weight', size)}",
            kind="doubt",
            fields=fields,
            say=self._sentences.say(f"clear_up.density_{way}_say", **blanks),
            why=self._sentences.say("clear_up.density_why", **blanks),
            branch="product",
            options=(Option(label=self._sentences.say("clear_up.keep")),),
            stood=_stood(spec, fields),
        )

    def _pieces(self, spec: Spec, system: System) -> Iterator[Question]:
        """A rate counted in pieces while something else travels: how many are in one?"""
        if not spec.knows("rate.pieces") or any(spec.knows(name) for name in _RATES):
            return
        travels = (spec.word("product.type") or "product").replace("_", " ")
        fields = ("product.pieces",)
        yield Question(
            id="pieces:product.pieces",
            kind="doubt",
            fields=fields,
            say=self._sentences.say(
                "clear_up.pieces_say",
                rate=show_value("rate.pieces", spec[("rate.pieces", 1)], system),
                unit=f"{travels}s",
            ),
            why=self._sentences.say("clear_up.pieces_why"),
            branch="rate",
            stood=_stood(spec, ("rate.pieces",)),
        )

    def _plausible(self, case: Case, system: System) -> Iterator[Question]:
        """Figures outside what is usual; a measured one from the works is believed."""
        for (name, size), fact in case.facts.items():
            usual = self._tree.plausible.get(name)
            ends = [end for end in (fact.low, fact.high) if end is not None]
            if usual is None or fact.who == "works" or all(usual[0] <= end <= usual[1] for end in ends):
                continue
            unit = vocabulary()[name].unit
            blanks = {
                "field": label(name, size),
                "said": f"“{fact.said}”" if fact.said else show_value(name, fact, system),
                "value": show_value(name, fact, system),
                "low": show(usual[0], unit, system),
                "high": show(usual[1], unit, system),
            }
            yield Question(
                id=f"plausible:{_key(name, size)}",
                kind="doubt",
                fields=(name,),
                say=self._sentences.say("clear_up.plausible_say", **blanks),
                why=self._sentences.say("clear_up.plausible_why", **blanks),
                branch=self._branch(name),
                options=(Option(label=self._sentences.say("clear_up.keep")),),
                stood=json.dumps([fact.low, fact.high]),
            )


SYSTEMS: tuple[System, ...] = ("us", "si")
_EDGES = ("product.length", "product.width", "product.diameter", "product.height")
_RATES = ("rate.normal", "rate.peak", "product.pieces")


def _volume(spec: Spec, size: int) -> float | None:
    """Outside volume of the largest of a product size [m3], None until its dimensions are known."""
    ends = {name: found.largest for name in _EDGES if (found := spec.of(name, size)) is not None}
    length, width, height = (ends.get(f"product.{side}") for side in ("length", "width", "height"))
    across = ends.get("product.diameter")
    if height and length and width:
        return length * width * height
    return pi / 4 * across**2 * height if height and across else None


def _of(spec: Spec, name: str, size: int) -> Value:
    found = spec.of(name, size)
    assert found is not None, name  # callers ask only for what is known
    return found


def _stood(spec: Spec, names: tuple[str, ...]) -> str:
    """What stands now of these fields, to notice when it changes."""
    return json.dumps({_key(*key): value.to_json() for key, value in spec.items() if key[0] in names}, sort_keys=True)


def _key(name: str, size: int) -> str:
    return name if size == 1 else f"{name}@{size}"


def _readings(doubt: Doubt) -> tuple[Option, ...]:
    """The ready readings of a doubt: by their fields where those differ, else by their words."""
    by_field = len({fact.field for fact in doubt.options}) > 1
    by_words = len({fact.said for fact in doubt.options}) == len(doubt.options)
    return tuple(
        Option(label=label(fact.field) if by_field else fact.said if by_words else _shortest(fact), fact=fact)
        for fact in doubt.options
    )


def _shortest(fact: Fact) -> str:
    """A reading in the units that it is round in: "15 ft", "15 m"."""
    return min((show_value(fact.field, fact, system) for system in SYSTEMS), key=len)
