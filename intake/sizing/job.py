"""The job: a spec resolved for the physics. Every figure SI, every open one with its corners."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING, NamedTuple

from intake.sizing.range_data import RangeData
from intake.sizing.result import Assumption, Conflict, Derived
from intake.sizing.unknowns import BEST, MODES, WORST, Choice, Var
from intake.spec.flat import Spec


class Num:
    """The figures that a check reads, as attributes: the job's, and those of the layout being tried.

    No `__getattr__` here: checks do little else than read figures, and with one each reading takes three times as long.
    """

    def __init__(self, figures: Mapping[str, float] | None = None) -> None:
        if figures:
            self.__dict__.update(figures)

    if TYPE_CHECKING:

        def __getattr__(self, name: str) -> float: ...

        def __setattr__(self, name: str, value: float) -> None: ...


class Corners(NamedTuple):
    """What a view of one mode starts from: the figures of each size (hi, lo), the words, what is missing."""

    sizes: tuple[tuple[dict[str, float], dict[str, float]], ...]
    options: Mapping[str, tuple[object, ...]]
    missing: frozenset[str]


class Behind(NamedTuple):
    """What stands behind the figures of one size and the words, by name.

    missing: nobody said it and nothing stands in. assumptions: what stands in. tests: the test on samples it is from.
    """

    missing: frozenset[str]
    assumptions: Mapping[str, str]
    tests: Mapping[str, str]


@dataclass(frozen=True, kw_only=True)
class Job:
    """A resolved spec. `sizes`: one mapping of figures for each product size described."""

    spec: Spec
    data: RangeData
    sizes: tuple[Mapping[str, Var], ...]
    choices: Mapping[str, Choice]
    assumptions: Mapping[str, Assumption]
    derived: tuple[Derived, ...]
    conflicts: tuple[Conflict, ...]

    @cached_property
    def corners(self) -> tuple[Corners, ...]:
        """Where views start from, by mode."""
        return tuple(_corners(self, mode) for mode in MODES)

    @cached_property
    def behind(self) -> tuple[Behind, ...]:
        """What stands behind the figures and words, by size."""
        return tuple(_behind(figures, self.choices) for figures in self.sizes)

    @cached_property
    def is_open(self) -> bool:
        """True while any figure or word may still take more than one value."""
        open_figure = any(var.is_open for figures in self.sizes for var in figures.values())
        return open_figure or any(choice.is_open for choice in self.choices.values())

    @cached_property
    def missing_basics(self) -> tuple[str, ...]:
        """Fields without which no machine can be laid out: size, weight, rate, rise."""
        asks: list[str] = []
        for name in BASICS:
            var = self.sizes[0][name]
            if var.missing:
                asks.extend(var.asks)
        return tuple(dict.fromkeys(asks))


BASICS = ("L", "W", "H", "m", "R", "rise")


@dataclass(slots=True)
class View:
    """A job looked at in one mode: pairs of figures (hi, lo) for each size, and the words to try.

    `swap`: the floor is turned by 90 degrees. `turned`: the product is. `quick`: one of many samples; a coarser
    search of layouts will do.
    """

    mode: int
    sizes: list[tuple[Num, Num]]
    options: Mapping[str, tuple[object, ...]]
    missing: frozenset[str] = frozenset()
    swap: bool = False
    turned: bool = False
    quick: bool = False
    every: bool = field(init=False)
    """True where every option has to pass, not just one of them."""

    def __post_init__(self) -> None:
        self.every = self.mode == WORST

    def most(self, name: str) -> float:
        """The greatest of a figure over all sizes, where high is worse."""
        sizes = self.sizes
        one: float = getattr(sizes[0][0], name)
        return one if len(sizes) == 1 else max([getattr(hi, name) for hi, _ in sizes])

    def most_low(self, name: str) -> float:
        """The greatest of a figure over all sizes, where low is worse."""
        sizes = self.sizes
        one: float = getattr(sizes[0][1], name)
        return one if len(sizes) == 1 else max([getattr(lo, name) for _, lo in sizes])


def view(job: Job, mode: int) -> View:
    """The job in one mode. Fresh figures: a layout may write into them."""
    corners = job.corners[mode]
    sizes: list[tuple[Num, Num]] = []
    for high, low in corners.sizes:
        hi = Num(high)
        sizes.append((hi, hi if low is high else Num(low)))
    return View(mode=mode, sizes=sizes, options=corners.options, missing=corners.missing)


def words_in(job: Job, mode: int) -> View:
    """The words alone in one mode: all that a gate looks at."""
    corners = job.corners[mode]
    return View(mode=mode, sizes=[], options=corners.options, missing=corners.missing)


def _behind(figures: Mapping[str, Var], choices: Mapping[str, Choice]) -> Behind:
    named: dict[str, Var | Choice] = {**figures, **choices}
    return Behind(
        missing=frozenset(name for name, one in named.items() if one.missing),
        assumptions={name: one.assumption for name, one in named.items() if one.assumption},
        tests={name: var.origin for name, var in figures.items() if var.origin.startswith("test.")},
    )


def _corners(job: Job, mode: int) -> Corners:
    options = {name: choice.options(mode) for name, choice in job.choices.items()}
    need = [job.data.common[f"headroom_{word}"] if word != "none" else 0.0 for word in options["passage"]]
    headroom = min(need) if mode == BEST else max(need)
    sizes: list[tuple[dict[str, float], dict[str, float]]] = []
    for figures in job.sizes:
        hi = {name: var.hi[mode] for name, var in figures.items()}
        lo = {name: var.lo[mode] for name, var in figures.items()}
        # A belt has one pitch and one width: a spread of sizes does not make it shorter or narrower for the small ones.
        for name, common in (("L", "Lp"), ("W", "Wp")):
            hi[common] = hi[name]
            lo[common] = (hi if figures[name].is_spread else lo)[name]
        hi["need"] = lo["need"] = headroom
        sizes.append((hi, hi if lo == hi else lo))  # one and the same where nothing is open
    missing: frozenset[str] = frozenset()
    if mode == WORST:
        missing = frozenset(
            [name for figures in job.sizes for name, var in figures.items() if var.missing]
            + [name for name, choice in job.choices.items() if choice.missing]
        )
    return Corners(tuple(sizes), options, missing)
