"""Completing a job at random: a Latin hypercube over what is open, the shuffle of each column seeded by its field."""

from collections.abc import Mapping
from functools import cache
from random import Random
from typing import NamedTuple
from zlib import crc32

from intake.sizing.drawing import Draws, Usual
from intake.sizing.job import Job, Num, View
from intake.sizing.unknowns import LIKELY, TYPICAL, WORST, Choice, Var


class Sampler:
    """Draws completions of a job: every open figure and word gets a value, the settled ones stay.

    All completions of a figure are drawn at once, as a column beside the column of its field: a view only picks a row.
    """

    def __init__(self, job: Job, count: int) -> None:
        self.job, self.count = job, count
        self.columns: dict[str, list[float]] = {}
        self.words: dict[str, Choice] = {name: choice for name, choice in job.choices.items() if choice.is_open}
        for name, choice in self.words.items():
            if len(choice.drawn) > 1:
                self._column(choice.asks[0] if choice.asks else name)
        for figures in job.sizes:
            for var in figures.values():
                if is_drawn(var) and var.asks:
                    self._column(var.asks[0])
        common = job.data.common
        self.headroom: dict[object, float] = {
            word: 0.0 if word == "none" else common[f"headroom_{word}"] for word in job.choices["passage"].possible
        }
        self._said = {name: choice.drawn for name, choice in job.choices.items()}
        self._asked = [(name, self._answers(name)) for name, words in self._said.items() if len(words) > 1]
        self._starts = [_start(figures) for figures in job.sizes]
        kind = job.spec.word("product.type") or "any"
        usual = Usual(job.data.priors[kind], job.data.prior_space)
        self._rows = [
            Draws(figures, start.high, self.columns, usual, count).rows(start.drawn)
            for figures, start in zip(job.sizes, self._starts, strict=True)
        ]

    def _column(self, ask: str) -> None:
        """The field's own draws: other fields change nothing."""
        if ask not in self.columns:
            self.columns[ask] = list(shuffled_strata(ask, self.count))

    def _answers(self, name: str) -> list[tuple[object, ...]]:
        """The word of each completion."""
        choice, alone = self.job.choices[name], [(word,) for word in self._said[name]]
        shares = self.columns[choice.asks[0] if choice.asks else name]
        return [alone[choice.group(share)] for share in shares]

    def view(self, index: int) -> View:
        """Completion number `index` as a view: settled but for what is spread, of which both ends occur."""
        options: dict[str, tuple[object, ...]] = dict(self._said)
        for name, answers in self._asked:
            options[name] = answers[index]
        need = self.headroom[options["passage"][0]]
        sizes: list[tuple[Num, Num]] = []
        for start, rows in zip(self._starts, self._rows, strict=True):
            hi = Num(start.high)
            hi.__dict__.update(zip(start.drawn, rows[index], strict=True))
            hi.need, hi.Lp, hi.Wp = need, hi.L, hi.W
            sizes.append((hi, Num({**hi.__dict__, **start.low}) if start.low else hi))
        return View(mode=TYPICAL, sizes=sizes, options=options, quick=True)


@cache
def shuffled_strata(ask: str, count: int) -> tuple[float, ...]:
    """One draw in each of `count` equal strata, shuffled by the field's own seed: the same for every job."""
    rng = Random(crc32(ask.encode()))
    strata = list(range(count))
    rng.shuffle(strata)
    return tuple((place + rng.random()) / count for place in strata)


class Start(NamedTuple):
    """What the completions of one size have in common: settled figures, low ends of spreads, names of what is drawn."""

    high: dict[str, float]
    low: dict[str, float]
    drawn: tuple[str, ...]


def _start(figures: Mapping[str, Var]) -> Start:
    settled = {name: var for name, var in figures.items() if not is_drawn(var)}
    return Start(
        high={name: var.hi[TYPICAL] for name, var in settled.items()},
        low={name: var.lo[TYPICAL] for name, var in settled.items() if var.lo[TYPICAL] != var.hi[TYPICAL]},
        drawn=tuple(name for name, var in figures.items() if is_drawn(var)),
    )


def is_drawn(var: Var) -> bool:
    """True for a figure that may take several plausible values of which one is true."""
    return var.missing or (var.hi[LIKELY] != var.hi[WORST] and not var.is_spread)
