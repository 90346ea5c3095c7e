"""The completions that were tried: who led in each, and what knowing a fact would tell about it."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import log, prod, sqrt
from typing import Any

NOISE = 0.02
"""Share of samples below which a change of the leader is chance (4 of 256, with room)."""

_MOST_CELLS = 64
_SURE = 3.0
"""Standard deviations beyond chance from which something counts as told."""


@dataclass(frozen=True, slots=True)
class Column:
    """One open fact in all completions: each draw from 0 to 1, and the group of answers that it falls into.

    `words`: the answer of each group, None for figures. `ends`: the figures that the draws 0 and 1 stand for, in the
    canonical unit; None where they hang on other draws. `is_shared`: the draw of the word sets a figure too (a surface
    its friction), so that a group is no answer by itself.
    """

    groups: Sequence[int]
    count: int
    shares: Sequence[float]
    words: tuple[Any, ...] | None = None
    ends: tuple[float, float] | None = None
    is_shared: bool = False


@dataclass(frozen=True, eq=False)
class Samples:
    """Who led in each completion, and each open fact in it. `columns` by the field or test that would settle it.

    `asks`: further fields that would settle the fact of a column.
    """

    leaders: Sequence[str]
    columns: Mapping[str, Column]
    asks: Mapping[str, str]

    @cached_property
    def led(self) -> Counter[str]:
        """In how many completions each family leads; "none" where none passes."""
        return Counter(self.leaders)

    @cached_property
    def leader(self) -> str:
        """Who leads in most completions."""
        return min(self.led, key=lambda name: (-self.led[name], name))

    def changes(self, fields: Iterable[str]) -> float:
        """How much more often one is right about the best family for knowing these facts, less what is chance.

        0 to 1: over few groups of answers, the share of completions that the best family of the group leads, less the
        share that the best one of all leads.
        """
        cells = self._cells(fields)
        gain = sum(max(cell) for cell in cells) - self.led[self.leader]
        chance = NOISE if len(cells) <= _GROUPS_AT_NO_COST else NOISE * len(cells) / _GROUPS_AT_NO_COST
        return round(max(0.0, gain / len(self.leaders) - chance), 4) if cells else 0.0

    def tells(self, fields: Iterable[str]) -> float:
        """What knowing these facts tells about which family is best, in nats, less what chance would tell.

        Mutual information I of the facts, in few groups, and the leader, less three standard deviations more than
        independent facts would show: 2 n I of n samples is then as chi-squared, of mean f and variance 2 f for f
        degrees of freedom (the G-test; NIST/SEMATECH e-Handbook, sec. 1.3.6.6.6 for the distribution). It tells
        something too where no single answer turns the choice: an answer may leave it firmer.
        """
        cells = self._cells(fields)
        if not cells:
            return 0.0
        total = len(self.leaders)
        left = sum(sum(cell) / total * _entropy(cell) for cell in cells)
        freedom = (len(cells) - 1) * (len(self.led) - 1)
        by_chance = (freedom + _SURE * sqrt(2.0 * freedom)) / (2.0 * total)
        return max(0.0, _entropy(self.led.values()) - left - by_chance)

    def _cells(self, fields: Iterable[str]) -> list[list[int]]:
        """How often each family leads, by groups of answers to these facts together; [] where nothing can be told.

        Of many facts the most telling ones count.
        """
        known = dict.fromkeys(name for one in fields if (name := self.column_of(one)) is not None)
        names = [name for name in known if self.columns[name].count > 1]
        if not names or len(self.led) == 1:
            return []
        found = self._counted.get(tuple(names))
        if found is None:
            found = self._counted[tuple(names)] = self._count(tuple(names))
        return found

    def _count(self, names: tuple[str, ...]) -> list[list[int]]:
        if self._cells_of(names) > _MOST_CELLS:
            ranked = sorted(names, key=lambda name: (-self._alone(name), name))
            fitting = [n for n in range(1, len(ranked) + 1) if self._cells_of(ranked[:n]) <= _MOST_CELLS]
            names = tuple(ranked[: max(fitting, default=1)])
        together = zip(*(self.columns[name].groups for name in names), strict=True)
        cells: dict[tuple[int, ...], list[int]] = {}
        for (groups, _), count in Counter(zip(together, self.leaders, strict=True)).items():
            cells.setdefault(groups, []).append(count)
        return list(cells.values())

    def _cells_of(self, names: Sequence[str]) -> int:
        return prod(self.columns[name].count for name in names)

    @cached_property
    def _counted(self) -> dict[tuple[str, ...], list[list[int]]]:
        """What was counted already: several questions look at the same facts."""
        return {}

    def _alone(self, name: str) -> float:
        """How far the leaders of a column's groups differ, for choosing among many: no correction needed."""
        cells = self._cells((name,))
        return -sum(sum(cell) / len(self.leaders) * _entropy(cell) for cell in cells)

    def column_of(self, name: str) -> str | None:
        """The column of a field or test; None where nothing of it is open."""
        return name if name in self.columns else self.asks.get(name)


_GROUPS_AT_NO_COST = 4
"""Groups of answers for which NOISE holds; more of them find more by chance."""


def _entropy(counts: Iterable[int]) -> float:
    """Entropy of counts, in nats."""
    known = list(counts)
    total = sum(known)
    return -sum(n / total * log(n / total) for n in known)
