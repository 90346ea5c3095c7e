"""What a check is before it meets a job: one body, run bare in the quick pass and wrapped into a record on demand."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from itertools import product
from math import inf
from re import findall

from intake.sizing.job import Num, View
from intake.sizing.range_data import Limits
from intake.sizing.result import Sense

Body = Callable[[Num, Num, Limits], tuple[float, float]]
_FUNCTIONS = frozenset({"pi", "abs", "sqrt", "sin", "cos", "tan", "asin", "acos", "atan", "exp", "min", "max"})
_ROUNDING = 1e-9
FIRM_MARGIN = 0.15
"""A margin from which a check counts as wholly firm."""

_CHOSEN_TO_FIT = frozenset(
    {"grip", "slope", "carrier_pitch", "cleat_height", "width", "tilt", "rate"}
    | {"temperature", "temperature_warmest", "temperature_product"}
    | {"tier_clearance", "round", "crest", "levels", "lean"}
)
"""Checks that a layout is chosen to just pass, or that repeat another: no measure of how firmly it stands."""


@dataclass(frozen=True, kw_only=True)
class Row:
    """One figure held against one limit.

    `body` takes the figures that count where high is worse, those that count where low is worse, and the limits of
    the range; it gives value and limit in `unit`. `formula` says the value in symbols: names of figures, or of
    `constants` (symbol -> range key). `low` names the symbols that count where low is worse. `limit` says the limit in
    symbols too, range keys by their own names; "" where there is no formula for it. `limit_high` names those of its
    symbols that are the same figure as in the value. `reads` names the job's figures and words behind it. `applies`
    None: to every layout; else a layout of which it does not hold has no such matter (a curve, a tier above another).
    """

    id: str
    sense: Sense
    unit: str
    body: Body
    formula: str
    limit: str = ""
    limit_high: frozenset[str] = frozenset()
    reads: tuple[str, ...]
    low: frozenset[str] = frozenset()
    constants: Mapping[str, str] = field(default_factory=dict)
    units: Mapping[str, str] = field(default_factory=dict)
    source: str
    each_size: bool = False
    warns: bool = False
    is_room: bool = False
    applies: Callable[[Num], bool] | None = None

    @cached_property
    def at_most(self) -> bool:
        """True where the limit is an upper one."""
        return self.sense == "at_most"

    @cached_property
    def measures(self) -> bool:
        """True where the margin says how firmly the machine itself stands: room counts by its floor, once."""
        return not (self.is_room or self.warns or self.id in _CHOSEN_TO_FIT)

    def holds(self, hi: Num, lo: Num, d: Limits) -> bool:
        """True when the value keeps its limit. A figure that is not a number keeps none."""
        return as_good_as(*self.body(hi, lo, d), self.at_most)

    def passes(self, view: View, d: Limits) -> bool:
        """True when it holds for every size described. Nothing holds that leans on a missing fact."""
        if self.applies is not None and not self.applies(view.sizes[0][0]):
            return True
        if view.missing and not view.missing.isdisjoint(self.reads):
            return False
        if self.each_size and len(view.sizes) > 1:
            return all(self.holds(hi, lo, d) for hi, lo in view.sizes)
        hi, lo = view.sizes[0]
        value, limit = self.body(hi, lo, d)
        return as_good_as(value, limit, self.at_most)

    @cached_property
    def symbols(self) -> tuple[str, ...]:
        """The names in the formula, in order."""
        return _names(self.formula)

    @cached_property
    def limit_symbols(self) -> tuple[str, ...]:
        """The names in the formula of the limit, in order."""
        return _names(self.limit)


def _names(formula: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(n for n in findall(r"[A-Za-z_]\w*", formula) if n not in _FUNCTIONS))


class Rows(tuple[Row, ...]):
    """Rows to be walked often: what a walk needs of each is set out once."""

    steps: tuple[tuple[Body, bool, bool, Callable[[Num], bool] | None], ...]

    def __new__(cls, rows: Iterable[Row]) -> "Rows":
        made = super().__new__(cls, rows)
        made.steps = tuple((row.body, row.at_most, row.measures, row.applies) for row in made)
        return made


def walk(rows: Rows, view: View, d: Limits) -> tuple[int, float]:
    """How many rows hold before the first that does not, and the tightest margin of those that measure firmness.

    The margin is that of the first size, FIRM_MARGIN at most. This is the one place where bodies meet their limits.
    """
    sizes = view.sizes
    hi, lo = sizes[0]
    if view.missing or len(sizes) > 1:
        return _walk_with_care(rows, view, d)
    tightest = FIRM_MARGIN
    count = 0
    for body, at_most, measures, applies in rows.steps:
        if applies is None or applies(hi):
            value, limit = body(hi, lo, d)
            room = limit - value if at_most else value - limit
            if not room >= 0.0 and not as_good_as(value, limit, at_most):
                return count, tightest
            if measures and room < tightest * limit:
                tightest = room / limit
        count += 1
    return count, tightest


def as_good_as(value: float, limit: float, at_most: bool) -> bool:
    """True where a value keeps its limit but for rounding, or both are without end."""
    slack = _ROUNDING * abs(limit)
    return value <= limit + slack if at_most else value >= limit - slack


def _walk_with_care(rows: Rows, view: View, d: Limits) -> tuple[int, float]:
    """A walk over several sizes, or where facts are missing: nothing holds that leans on a missing one."""
    missing, sizes = view.missing, view.sizes
    hi, lo = sizes[0]
    tightest = FIRM_MARGIN
    for count, row in enumerate(rows):
        if row.applies is not None and not row.applies(hi):
            continue
        if missing and not missing.isdisjoint(row.reads):
            return count, tightest
        value, limit = row.body(hi, lo, d)
        if not as_good_as(value, limit, row.at_most):
            return count, tightest
        room = limit - value if row.at_most else value - limit
        if row.measures and room < tightest * limit:
            tightest = room / limit
        if row.each_size and not all(row.holds(*pair, d) for pair in sizes[1:]):
            return count, tightest
    return len(rows), tightest


def rooms(rows: Rows, view: View, d: Limits) -> list[float]:
    """The room that each row leaves, below 0 where `walk` would stop. A row without such a matter leaves it all."""
    sizes = view.sizes
    hi, lo = sizes[0]
    found: list[float] = []
    for row, (body, at_most, _, applies) in zip(rows, rows.steps, strict=True):
        least = inf
        if applies is None or applies(hi):
            for pair in sizes if row.each_size else ((hi, lo),):
                value, limit = body(*pair, d)
                room = limit - value if at_most else value - limit
                if not room >= 0.0:  # also a figure that is not a number
                    room = 0.0 if as_good_as(value, limit, at_most) else room if room == room else -inf
                if room < least:
                    least = room
        found.append(least)
    return found


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
        options = view.options
        if len(self.reads) == 1:
            words = options[self.reads[0]]
            if len(words) == 1:
                return self.accept(words[0])
            return all(map(self.accept, words)) if view.every else any(map(self.accept, words))
        outcomes = (self.accept(*words) for words in product(*(options[name] for name in self.reads)))
        return all(outcomes) if view.every else any(outcomes)
