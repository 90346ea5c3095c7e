"""What would be if: the case with a fact changed, and how that compares with the case as it stands."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from intake.advice.brief import Brief
from intake.advice.families import verdict_line
from intake.interview.reasons import out_reason
from intake.sizing.result import FAMILIES, Result
from intake.sizing.reverse.changed import with_figure, with_word
from intake.spec.entry import value_of
from intake.spec.facts import Fact
from intake.spec.flat import Spec
from intake.spec.value import Value


def supposing(spec: Spec, facts: Mapping[str, str | bool | float]) -> Spec:
    """The spec with these facts changed, and what hangs on them (a room's temperature goes with the word for it)."""
    for name, given in facts.items():
        value = value_of(name, name, given)
        word = value.value
        spec = with_word(spec, (name, 1), word) if word is not None else _with_value(spec, name, value)
    return spec


def supposing_figure(spec: Spec, asked: Fact) -> Spec:
    """The spec with a figure that the visitor asked about."""
    return _with_value(spec, asked.field, Value(low=asked.low, high=asked.high))


def _with_value(spec: Spec, name: str, value: Value) -> Spec:
    figure = value.largest
    if figure is None:
        return spec
    known = spec.of(name)
    upwards = known is not None and known.high is not None and figure < known.high
    return with_figure(spec, (name, 1), figure, upwards=upwards)


@dataclass(frozen=True, eq=False, kw_only=True)
class Supposed:
    """A case and what it would be. Both are sized only when something asks."""

    now: Brief
    then: Brief

    @cached_property
    def result(self) -> Result:
        """The sizing of the changed case."""
        return self.then.result

    @property
    def best(self) -> str | None:
        """The family that would lead."""
        return self.result.best

    @property
    def same(self) -> str | None:
        """The leading family, where it leads now and then."""
        return self.best if self.best is not None and self.best == self.now.result.best else None

    @property
    def out(self) -> list[str]:
        """The families that stand now and would be out."""
        before, after = self.now.result.families, self.result.families
        return [name for name in FAMILIES if before[name].verdict != "out" and after[name].verdict == "out"]

    @property
    def back(self) -> list[str]:
        """The families that are out now and would stand."""
        before, after = self.now.result.families, self.result.families
        return [name for name in FAMILIES if before[name].verdict == "out" and after[name].verdict != "out"]

    @property
    def why(self) -> str | None:
        """Why the family that leads now would be out."""
        lead = self.now.result.best
        if lead is None or self.result.families[lead].verdict != "out":
            return None
        return out_reason(self.result.families[lead], self.now.sentences, self.now.system) or None

    @property
    def verdict(self) -> str | None:
        """The verdict of the family that would lead."""
        if self.best is None:
            return None
        return verdict_line(self.result.families[self.best], self.result, self.now.system, self.now.sentences)
