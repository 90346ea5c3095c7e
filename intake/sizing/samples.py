"""The completions that were tried: who led in each, and what knowing a fact would tell about it."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from math import log, sqrt
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
        gain = sum(max(cell.values()) for cell in cells) - self.led[self.leader]
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
        left = sum(sum(cell.values()) / total * _plain_entropy(cell) for cell in cells)
        freedom = (len(cells) - 1) * (len(self.led) - 1)
        by_chance = (freedom + _SURE * sqrt(2.0 * freedom)) / (2.0 * total)
        return max(0.0, _plain_entropy(self.led) - left - by_chance)

    def settles(self, fields: Iterable[str], share: float) -> float:
        """How often the answer leaves one family leading in more than `share` of what is then still open."""
        cells = self._cells(fields)
        firm = [cell for cell in cells if max(cell.values()) > share * sum(cell.values())]
        return sum(sum(cell.values()) for cell in firm) / len(self.leaders)

    def _cells(self, fields: Iterable[str]) -> list[Counter[str]]:
        """The leaders by groups of answers to these facts together; of many facts the most telling ones count."""
        found = {name: self.columns[name] for name in (self.column_of(one) for one in fields) if name is not None}
        columns = sorted(found.items(), key=lambda item: (-self._alone[item[0]], item[0]))
        keys = [0] * len(self.leaders)
        cells = 1
        for _, column in columns:
            if cells * column.count > _MOST_CELLS:
                break
            cells *= column.count
            keys = [key * column.count + group for key, group in zip(keys, column.groups, strict=True)]
        if cells == 1:
            return []
        by_key: dict[int, Counter[str]] = {}
        for key, leader in zip(keys, self.leaders, strict=True):
            by_key.setdefault(key, Counter())[leader] += 1
        return list(by_key.values())

    def column_of(self, name: str) -> str | None:
        """The column of a field or test; None where nothing of it is open."""
        return name if name in self.columns else self.asks.get(name)

    @cached_property
    def _alone(self) -> Mapping[str, float]:
        """How far the leaders of each column's groups differ, for choosing among many: no correction needed."""
        return {name: _spread(column, self.leaders) for name, column in self.columns.items()}


_GROUPS_AT_NO_COST = 4
"""Groups of answers for which NOISE holds; more of them find more by chance."""


def _spread(column: Column, leaders: Sequence[str]) -> float:
    """Information of one column and the leader, in nats, uncorrected."""
    cells: dict[int, Counter[str]] = {}
    for group, leader in zip(column.groups, leaders, strict=True):
        cells.setdefault(group, Counter())[leader] += 1
    total = len(leaders)
    return -sum(sum(cell.values()) / total * _plain_entropy(cell) for cell in cells.values())


def _plain_entropy(cell: Mapping[str, int]) -> float:
    total = sum(cell.values())
    return -sum(n / total * log(n / total) for n in cell.values())
