"""How an open figure or an open word enters the physics: by corners, one for each way of looking.

A check is worse with more of one input (weight) or with less of another (friction). So every figure has, for each
way of looking, the value that counts where high is worse (`hi`) and the one that counts where low is worse (`lo`).
Spread: the bad end counts, always. Doubt: the good end counts in the best case, the bad end in the worst.
"""

from dataclasses import dataclass, replace
from math import inf
from typing import Any

BEST, LIKELY, TYPICAL, WORST = range(4)
"""Best possible case; best plausible case; the design point; worst plausible case."""

MODES = (BEST, LIKELY, TYPICAL, WORST)
Range = tuple[float, float]
Corners = tuple[float, float, float, float]
"""A value for each mode."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Var:
    """One figure of the job in SI. `hi`, `lo`: by mode, see the module.

    `missing`: nobody said it and nothing stands in. `asks`: the fields or tests that would settle it.
    """

    hi: Corners
    lo: Corners
    origin: str
    asks: tuple[str, ...] = ()
    assumption: str | None = None
    missing: bool = False

    @property
    def is_open(self) -> bool:
        """True while the value is not settled: more than one may be true."""
        return self.hi[BEST] != self.hi[WORST] or self.lo[BEST] != self.lo[WORST] or self.missing

    @property
    def is_spread(self) -> bool:
        """True where every value between two ends occurs."""
        return self.hi[BEST] == self.hi[WORST] and self.lo[BEST] == self.lo[WORST] and self.hi[BEST] != self.lo[BEST]

    @property
    def typical(self) -> float:
        """The value at the design point, the high one of a spread."""
        return self.hi[TYPICAL]


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """One word, yes/no or heading of the job. `plausible` None: nobody said it and nothing stands in."""

    possible: tuple[Any, ...]
    plausible: tuple[Any, ...] | None
    typical: Any
    origin: str
    asks: tuple[str, ...] = ()
    assumption: str | None = None
    rare: tuple[tuple[Any, float], ...] = ()
    """Words that no assumption counts on, each with the share of jobs that have it: sampling draws them too."""

    @property
    def missing(self) -> bool:
        """True when nothing stands in for what nobody said."""
        return self.plausible is None

    @property
    def is_open(self) -> bool:
        """True while more than one word may be true."""
        return len(self.possible) > 1

    @property
    def drawn(self) -> tuple[Any, ...]:
        """The words that sampling draws from, the rare ones last."""
        return (*self.options(LIKELY), *(word for word, _ in self.rare))

    def group(self, share: float) -> int:
        """Which of the drawn words a draw from 0 to 1 falls on: rare ones at their share, the others alike."""
        at = 1.0
        for place in range(len(self.rare) - 1, -1, -1):
            at -= self.rare[place][1]
            if share >= at:
                return len(self.options(LIKELY)) + place
        count = len(self.options(LIKELY))
        return min(count - 1, int(share / at * count))

    def options(self, mode: int) -> tuple[Any, ...]:
        """The words to look at in a mode."""
        if mode == BEST:
            return self.possible
        if mode == TYPICAL:
            return (self.typical,)
        return self.plausible if self.plausible is not None else self.possible


def exact(value: float, origin: str) -> Var:
    """A settled figure."""
    four = (value, value, value, value)
    return Var(hi=four, lo=four, origin=origin)


def spread(low: float, high: float, origin: str) -> Var:
    """Every value between the ends occurs: the bad end counts, whichever that is."""
    return Var(hi=(high,) * 4, lo=(low,) * 4, origin=origin)


def doubt(
    possible: Range,
    plausible: Range | None,
    typical: float,
    origin: str,
    *,
    asks: tuple[str, ...] = (),
    assumption: str | None = None,
    likely: Range | None = None,
) -> Var:
    """One value is true and we do not know which.

    `plausible` None: nothing stands in, the figure is missing; `likely` is then what is usual, for a first look.
    """
    if plausible is None:
        usual = likely or possible
        return Var(
            hi=(possible[0], usual[0], typical, usual[1]),
            lo=(possible[1], usual[1], typical, usual[0]),
            origin=origin,
            asks=asks,
            missing=True,
        )
    return Var(
        hi=(possible[0], plausible[0], typical, plausible[1]),
        lo=(possible[1], plausible[1], typical, plausible[0]),
        origin=origin,
        asks=asks,
        assumption=assumption,
    )


def combine(parts: tuple[Var, ...], hi: Any, lo: Any, origin: str) -> Var:
    """A figure worked out of others: `hi` and `lo` take the parts and a mode and give the corner."""
    return Var(
        hi=tuple(hi(mode) for mode in MODES),
        lo=tuple(lo(mode) for mode in MODES),
        origin=origin,
        asks=tuple(dict.fromkeys(ask for part in parts for ask in part.asks)),
        assumption=next((part.assumption for part in parts if part.assumption), None),
        missing=any(part.missing for part in parts),
    )


def between(var: Var, least: float, most: float) -> Var:
    """The same figure, none of its corners outside of what the physics can take."""

    def kept(corners: Corners) -> Corners:
        best, likely, typical, worst = (min(max(value, least), most) for value in corners)
        return best, likely, typical, worst

    return replace(var, hi=kept(var.hi), lo=kept(var.lo))


def at_least(var: Var, least: float) -> Var:
    """The same figure, none of its corners below what the physics can take."""
    return between(var, least, inf)
