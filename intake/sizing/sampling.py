"""Completing a job at random: a Latin hypercube over what is open, the shuffle of each column seeded by its field."""

from collections.abc import Mapping
from math import exp, log
from random import Random
from typing import NamedTuple
from zlib import crc32

from intake.sizing.job import Job, Num, View
from intake.sizing.unknowns import LIKELY, TYPICAL, WORST, Choice, Var

_SCALED = {"b": "L", "bw": "W", "h": "H", "hx": "H"}
_PLACED = ("L", "W", "H", "m", "R", "rise", "zlow", "ztop", "lx", "ly", "ceil")


class Sampler:
    """Draws completions of a job: every open figure and word gets a value, the settled ones stay."""

    def __init__(self, job: Job, count: int) -> None:
        self.job, self.count = job, count
        self.columns: dict[str, list[float]] = {}
        self.words: dict[str, Choice] = {name: choice for name, choice in job.choices.items() if choice.is_open}
        kind = job.spec.word("product.type") or "any"
        self.prior = job.data.priors[kind]
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
        self._asked = [(name, choice) for name, choice in job.choices.items() if len(choice.drawn) > 1]
        self._said = {name: choice.drawn for name, choice in job.choices.items()}
        self._starts = [_start(figures) for figures in job.sizes]

    def _column(self, ask: str) -> None:
        """One draw in each of `count` equal strata, shuffled by the field's own seed: other fields change nothing."""
        if ask in self.columns:
            return
        rng = Random(crc32(ask.encode()))
        strata = list(range(self.count))
        rng.shuffle(strata)
        self.columns[ask] = [(place + rng.random()) / self.count for place in strata]

    def view(self, index: int) -> View:
        """Completion number `index` as a view: settled but for what is spread, of which both ends occur."""
        options = dict(self._said)
        for name, choice in self._asked:
            share = self.columns[choice.asks[0] if choice.asks else name][index]
            options[name] = (choice.drawn[choice.group(share)],)
        need = self.headroom[options["passage"][0]]
        sizes: list[tuple[Num, Num]] = []
        for figures, start in zip(self.job.sizes, self._starts, strict=True):
            high = dict(start.high)
            for name, var in start.drawn:
                high[name] = self._draw(name, var, figures, high, index)
            high["need"], high["Lp"], high["Wp"] = need, high["L"], high["W"]
            hi = Num(high)
            sizes.append((hi, Num({**high, **start.low}) if start.low else hi))
        return View(mode=TYPICAL, sizes=sizes, options=options, quick=True)

    def _draw(self, name: str, var: Var, figures: Mapping[str, Var], drawn: Mapping[str, float], index: int) -> float:
        share = self.columns[var.asks[0]][index] if var.asks else 0.5
        start, end = var.hi[LIKELY], var.hi[WORST]
        if var.missing and name in _PLACED:
            return self._placed(name, figures, drawn, share, index)
        value = start + (end - start) * share
        of = _SCALED.get(name)
        if of is not None and figures[of].typical > 0.0:
            value *= drawn[of] / figures[of].typical
        return value

    def _placed(
        self, name: str, figures: Mapping[str, Var], drawn: Mapping[str, float], share: float, index: int
    ) -> float:
        """A figure that nobody gave and nothing stands in for: what is usual for the kind, in proportion."""
        prior, space = self.prior, self.job.data.prior_space
        if name in ("L", "R", "rise"):
            start, end = prior[{"L": "length", "R": "rate", "rise": "rise"}[name]]
            value = exp(log(start) + (log(end) - log(start)) * share)
            return value / 60.0 if name == "R" else value
        if name in ("W", "H"):
            start, end = prior["width" if name == "W" else "height"]
            return drawn["L"] * (start + (end - start) * share)
        if name == "m":
            start, end = prior["density"]
            return drawn["L"] * drawn["W"] * drawn["H"] * exp(log(start) + (log(end) - log(start)) * share)
        if name == "ztop":
            return drawn["zlow"] + drawn["rise"]
        if name == "zlow":
            return figures["zlow"].typical
        if name == "lx":
            start, end = space["length_per_rise"]
            return drawn["rise"] * (start + (end - start) * share)
        start, end = space["width"] if name == "ly" else space["headroom"]
        extra = drawn["ztop"] if name == "ceil" else 0.0
        return extra + start + (end - start) * share


class Start(NamedTuple):
    """What the completions of one size have in common: settled figures, low ends of spreads, and what is drawn."""

    high: dict[str, float]
    low: dict[str, float]
    drawn: tuple[tuple[str, Var], ...]


def _start(figures: Mapping[str, Var]) -> Start:
    settled = {name: var for name, var in figures.items() if not is_drawn(var)}
    return Start(
        high={name: var.hi[TYPICAL] for name, var in settled.items()},
        low={name: var.lo[TYPICAL] for name, var in settled.items() if var.lo[TYPICAL] != var.hi[TYPICAL]},
        drawn=tuple((name, var) for name, var in figures.items() if is_drawn(var)),
    )


def is_drawn(var: Var) -> bool:
    """True for a figure that may take several plausible values of which one is true."""
    return var.missing or (var.hi[LIKELY] != var.hi[WORST] and not var.is_spread)
