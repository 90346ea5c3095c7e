"""What a check is before it meets a job: one body, run bare in the quick pass and wrapped into a record on demand."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from re import findall
from typing import Any

from intake.sizing.job import Num, View
from intake.sizing.range_data import Limits
from intake.sizing.result import Sense

Body = Callable[[Num, Num, Limits], tuple[float, float]]
_FUNCTIONS = frozenset({"pi", "abs", "sqrt", "sin", "cos", "tan", "asin", "acos", "atan", "exp", "min", "max"})
_ROUNDING = 1e-9


@dataclass(frozen=True, kw_only=True)
class Row:
    """One figure held against one limit.

    `body` takes the figures that count where high is worse, those that count where low is worse, and the limits of
    the range; it gives value and limit in `unit`. `formula` says the value in symbols: names of figures, or of
    `constants` (symbol -> range key). `low` names the symbols that count where low is worse. `reads` names the
    job's figures and words behind it, `layout` those among them that only shape the layout.
    """

    id: str
    sense: Sense
    unit: str
    body: Body
    formula: str
    reads: tuple[str, ...]
    low: frozenset[str] = frozenset()
    constants: Mapping[str, str] = field(default_factory=dict)
    units: Mapping[str, str] = field(default_factory=dict)
    source: str
    each_size: bool = False
    warns: bool = False
    is_room: bool = False

    def holds(self, hi: Num, lo: Num, d: Limits) -> bool:
        """True when the value keeps its limit. A figure that is not a number keeps none."""
        value, limit = self.body(hi, lo, d)
        slack = _ROUNDING * abs(limit)
        return value <= limit + slack if self.sense == "at_most" else value >= limit - slack

    def passes(self, view: View, d: Limits) -> bool:
        """True when it holds for every size described. Nothing holds that leans on a missing fact."""
        if view.missing and not view.missing.isdisjoint(self.reads):
            return False
        if self.each_size:
            return all(self.holds(hi, lo, d) for hi, lo in view.sizes)
        hi, lo = view.sizes[0]
        return self.holds(hi, lo, d)

    @cached_property
    def symbols(self) -> tuple[str, ...]:
        """The names in the formula, in order."""
        return tuple(dict.fromkeys(n for n in findall(r"[A-Za-z_]\w*", self.formula) if n not in _FUNCTIONS))


@dataclass(frozen=True, slots=True, kw_only=True)
class Gate:
    """A yes/no or a word that lets a family stand or not. `accept` takes one word for each of `reads`."""

    id: str
    reads: tuple[str, ...]
    accept: Callable[..., bool]
    limit: str
    source: str = "common practice, no source"

    def passes(self, view: View) -> bool:
        """In the best case one way of saying is enough; in the worst every plausible one has to do."""
        if view.missing and not view.missing.isdisjoint(self.reads):
            return False
        if len(self.reads) == 1:
            words = view.options[self.reads[0]]
            return all(map(self.accept, words)) if view.every else any(map(self.accept, words))
        outcomes = [self.accept(*words) for words in _product([view.options[name] for name in self.reads])]
        return all(outcomes) if view.every else any(outcomes)


def _product(pools: list[tuple[Any, ...]]) -> list[tuple[Any, ...]]:
    out: list[tuple[Any, ...]] = [()]
    for pool in pools:
        out = [(*head, word) for head in out for word in pool]
    return out
