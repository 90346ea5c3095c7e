"""What would change the best family: for each open fact alone, the answers after which another one leads."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from intake.sizing.samples import Column, Samples

_CUTS = 16
_LEAST = 4
"""Completions below which a group of answers tells nothing."""


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

    Facts that tell nothing beyond chance are left out, and so are changes that several facts make together.
    """
    turns: list[Turn] = []
    for about, column in samples.columns.items():
        if samples.tells((about,)) > 0.0:
            turns += _words(about, column, samples, best) if column.words else _figures(about, column, samples, best)
    return tuple(sorted(turns, key=lambda turn: (-turn.share, turn.about, str(turn.word))))


def _words(about: str, column: Column, samples: Samples, best: str) -> list[Turn]:
    turns = []
    for group, word in enumerate(column.words or ()):
        cell = Counter(leader for at, leader in zip(column.groups, samples.leaders, strict=True) if at == group)
        to = _other_leader(cell, best)
        if to is not None:
            turns.append(Turn(about=about, to=to, share=sum(cell.values()) / len(samples.leaders), word=word))
    return turns


def _figures(about: str, column: Column, samples: Samples, best: str) -> list[Turn]:
    """The cut of the range that sorts the leaders best, and the sides of it on which another family leads."""

    def sorted_out(cut: float) -> int:
        return sum(max(cell.values(), default=0) for cell in _sides(column.shares, samples.leaders, cut))

    cuts = [n / _CUTS for n in range(1, _CUTS)]
    cut = max(cuts, key=lambda one: (sorted_out(one), -abs(one - 0.5)))
    turns = []
    for above, cell in zip((False, True), _sides(column.shares, samples.leaders, cut), strict=True):
        to = _other_leader(cell, best)
        if to is not None:
            value = None if column.ends is None else column.ends[0] + (column.ends[1] - column.ends[0]) * cut
            share = sum(cell.values()) / len(samples.leaders)
            turns.append(Turn(about=about, to=to, share=share, above=above, value=value))
    return turns


def _sides(shares: Sequence[float], leaders: Sequence[str], cut: float) -> tuple[Counter[str], Counter[str]]:
    below = Counter(leader for share, leader in zip(shares, leaders, strict=True) if share < cut)
    above = Counter(leader for share, leader in zip(shares, leaders, strict=True) if share >= cut)
    return below, above


def _other_leader(cell: Counter[str], best: str) -> str | None:
    """Who leads in more than half of these completions, unless it is the best family anyway."""
    if sum(cell.values()) < _LEAST:
        return None
    leader, count = cell.most_common(1)[0]
    return leader if leader != best and 2 * count > sum(cell.values()) else None
