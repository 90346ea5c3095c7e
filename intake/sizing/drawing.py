"""Drawing the open figures of one product size: a column of values each, one for every completion of the job."""

from collections.abc import Mapping, Sequence
from math import exp, log
from typing import NamedTuple

from intake.sizing.unknowns import LIKELY, WORST, Var

_SCALED = {"b": "L", "bw": "W", "h": "H", "hx": "H"}
"""Shares of another figure: they grow and shrink with it."""
_PLACED = ("L", "W", "H", "m", "R", "rise", "zlow", "ztop", "lx", "ly", "ceil")
_PRIOR = {"L": "length", "W": "width", "H": "height", "R": "rate", "rise": "rise"}


class Usual(NamedTuple):
    """What is usual for a kind of product, and of rooms: (low, high) by name."""

    product: Mapping[str, tuple[float, float]]
    space: Mapping[str, tuple[float, float]]


class Draws:
    """The draws of one product size. `settled`: the figures that are the same in every completion."""

    def __init__(
        self, figures: Mapping[str, Var], settled: Mapping[str, float], shares: Mapping[str, Sequence[float]],
        usual: Usual, count: int,
    ) -> None:  # fmt: skip
        self._figures, self._settled, self._shares = figures, settled, shares
        self._usual, self._count = usual, count
        self._drawn: dict[str, list[float]] = {}

    def rows(self, names: Sequence[str]) -> list[tuple[float, ...]]:
        """The figures named, completion by completion. A figure comes after those that it is in proportion to."""
        for name in names:
            self._drawn[name] = self._column(name)
        return list(zip(*self._drawn.values(), strict=True)) or [()] * self._count

    def _column(self, name: str) -> list[float]:
        var, figures = self._figures[name], self._figures
        shares = self._shares[var.asks[0]] if var.asks else [0.5] * self._count
        start, end = var.hi[LIKELY], var.hi[WORST]
        if var.missing and name in _PLACED:
            return self._placed(name, shares)
        values = [start + (end - start) * share for share in shares]
        of = _SCALED.get(name)
        if of is None or not figures[of].typical > 0.0:
            return values
        typical = figures[of].typical
        return [value * (whole / typical) for value, whole in zip(values, self._of(of), strict=True)]

    def _of(self, name: str) -> list[float]:
        """A figure drawn before, or a settled one, in every completion."""
        return self._drawn.get(name) or [self._settled[name]] * self._count

    def _placed(self, name: str, shares: Sequence[float]) -> list[float]:
        """A figure that nobody gave and nothing stands in for: what is usual for the kind, in proportion."""
        product, space = self._usual
        if name in ("L", "R", "rise"):
            values = _even_by_ratio(product[_PRIOR[name]], shares)
            return [value / 60.0 for value in values] if name == "R" else values
        if name in ("W", "H"):
            return _times(self._of("L"), _even(product[_PRIOR[name]], shares))
        if name == "m":
            plan = _times(self._of("L"), self._of("W"))
            return _times(_times(plan, self._of("H")), _even_by_ratio(product["density"], shares))
        if name == "ztop":
            return [low + rise for low, rise in zip(self._of("zlow"), self._of("rise"), strict=True)]
        if name == "zlow":
            return [self._figures["zlow"].typical] * self._count
        if name == "lx":
            return _times(self._of("rise"), _even(space["length_per_rise"], shares))
        if name == "ly":
            return _even(space["width"], shares)
        start, end = space["headroom"]
        return [top + start + (end - start) * share for top, share in zip(self._of("ztop"), shares, strict=True)]


def _even(between: tuple[float, float], shares: Sequence[float]) -> list[float]:
    """Figures between two ends, evenly by their difference."""
    start, end = between
    return [start + (end - start) * share for share in shares]


def _even_by_ratio(between: tuple[float, float], shares: Sequence[float]) -> list[float]:
    """Figures between two ends, evenly by their ratio: as many from 1 to 2 as from 10 to 20."""
    start, span = log(between[0]), log(between[1]) - log(between[0])
    return [exp(start + span * share) for share in shares]


def _times(one: Sequence[float], other: Sequence[float]) -> list[float]:
    return [a * b for a, b in zip(one, other, strict=True)]
