"""What would change the best family: for each open fact alone, the answers after which another one leads."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt
from typing import Any

from intake.sizing.samples import Column, Samples

_CUTS = 16
_LEAST = 4
"""Completions below which a group of answers tells nothing."""
_SURE, _CHOSEN = 2.0, 3.0
"""Standard deviations of a fair coin by which the leader must be ahead of the next one after a word, and on a side of a
cut: the best of many cuts finds some lead by chance."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Turn:
    """Answers to one fact or test after which another family leads: a word, or figures on one side of a value.

    `value` is in the canonical unit of the field; None where it has no figure of its own (a test). `share`: of the
    completions, those with such an answer. `to`: the family that then leads, "none" for none of the range.
    """

    about: str
    to: str
    share: float
    word: str | bool | float | None = None
    above: bool | None = None
    value: float | None = None

    def to_json(self) -> dict[str, Any]:
        """The shape for scripts."""
        return {"about": self.about, "to": self.to, "share": self.share, "word": self.word, "above": self.above,
                "value": self.value}  # fmt: skip


def would_change(samples: Samples, best: str) -> tuple[Turn, ...]:
    """Every single fact an answer to which changes the best family, the likeliest answer first.

    Facts that tell nothing beyond chance are left out, and so are changes that several facts make together, and facts
    after every answer to which the same family leads: then it is not this one that changes anything. So are words whose
    draw sets a figure as well: which of the two turned the leader cannot be told.
    """
    turns: list[Turn] = []
    for about, column in samples.columns.items():
        if samples.tells((about,)) > 0.0 and not column.is_shared:
            turns += _words(about, column, samples, best) if column.words else _figures(about, column, samples, best)
    return tuple(sorted(turns, key=lambda turn: (-turn.share, turn.about, str(turn.word))))


def _words(about: str, column: Column, samples: Samples, best: str) -> list[Turn]:
    cells: list[Counter[str]] = [Counter() for _ in column.words or ()]
    for at, leader in zip(column.groups, samples.leaders, strict=True):
        cells[at][leader] += 1
    leaders = [_leader(cell) for cell in cells]
    if len(set(leaders)) == 1:
        return []
    return [
        Turn(about=about, to=to, share=cell.total() / len(samples.leaders), word=word)
        for word, cell, to in zip(column.words or (), cells, leaders, strict=True)
        if to is not None and to != best and _is_ahead(cell, _SURE)
    ]


def _figures(about: str, column: Column, samples: Samples, best: str) -> list[Turn]:
    """The cut of the range that sorts the leaders best, and the sides of it on which another family leads."""

    def sorted_out(cut: float) -> int:
        return sum(max(cell.values(), default=0) for cell in _sides(column.shares, samples.leaders, cut))

    cuts = [n / _CUTS for n in range(1, _CUTS)]
    cut = max(cuts, key=lambda one: (sorted_out(one), -abs(one - 0.5)))
    cells = _sides(column.shares, samples.leaders, cut)
    leaders = [_leader(cell) for cell in cells]
    if leaders[0] == leaders[1]:
        return []
    value = None if column.ends is None else column.ends[0] + (column.ends[1] - column.ends[0]) * cut
    return [
        Turn(about=about, to=to, share=cell.total() / len(samples.leaders), above=above, value=value)
        for above, cell, to in zip((False, True), cells, leaders, strict=True)
        if to is not None and to != best and _is_ahead(cell, _CHOSEN)
    ]


def _sides(shares: Sequence[float], leaders: Sequence[str], cut: float) -> tuple[Counter[str], Counter[str]]:
    below = Counter(leader for share, leader in zip(shares, leaders, strict=True) if share < cut)
    above = Counter(leader for share, leader in zip(shares, leaders, strict=True) if share >= cut)
    return below, above


def _leader(cell: Counter[str]) -> str | None:
    """Who leads in more than half of these completions."""
    if cell.total() < _LEAST:
        return None
    leader, count = cell.most_common(1)[0]
    return leader if 2 * count > cell.total() else None


def _is_ahead(cell: Counter[str], sure: float) -> bool:
    """True where more completions than chance would give go to the first of two families, by so many deviations."""
    first, second = (*(count for _, count in cell.most_common(2)), 0)[:2]
    return first - second > sure * sqrt(first + second)
