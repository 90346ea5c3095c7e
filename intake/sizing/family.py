"""What a family of machines is to the engine: gates, checks before any layout, layouts to try, figures."""

from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cached_property
from typing import Any, NamedTuple

from intake.sizing.check_row import Gate, Row, Rows
from intake.sizing.job import View
from intake.sizing.range_data import Limits

Layout = Any
"""A family's own named tuple: what stays fixed while the open figures move."""


def each_alone(layout: Layout) -> object:
    """A group of its own for every layout."""
    return object()


def nothing_more(view: View, layout: Layout, d: Limits) -> None:
    """The load of a family whose `fill` has written everything."""


def plain_shape(view: View, layout: Layout, d: Limits) -> dict[str, float]:
    """The shape of a family that a drawing knows from floor, heights and product alone."""
    return {}


@dataclass(frozen=True, slots=True, kw_only=True)
class Variant:
    """One way to build a family (in line, folded; S path, C path), with the gates that only it has."""

    name: str
    gates: tuple[Gate, ...]
    layouts: Callable[[View, Limits, Counter[str]], Iterator[Layout]]
    """Layouts to try, the least floor first. What it drops by itself it counts by the check that would stop it."""
    headings: frozenset[float] | None
    """Plan angles from infeed to discharge that it can give; None: any (the layouts see to it)."""


class Blocking(NamedTuple):
    """Rows that can put a family out: before any layout, on the shape of one, on what it takes to drive it."""

    before: Rows
    shape: Rows
    load: Rows


@dataclass(frozen=True, eq=False, kw_only=True)
class Family:
    """One family.

    `fill` writes the shape of a layout into a view, and `rows` are held against it; `load` then writes what it takes
    to drive it, and `load_rows` are held against that. A layout that does not fit is dropped before it is driven.
    """

    name: str
    gates: tuple[Gate, ...]
    before: tuple[Row, ...]
    variants: tuple[Variant, ...]
    fill: Callable[[View, Layout, Limits], None]
    rows: tuple[Row, ...]
    load: Callable[[View, Layout, Limits], None] = nothing_more
    load_rows: tuple[Row, ...] = ()
    drive_group: Callable[[Layout], object] = each_alone
    """Layouts of one group only get harder to drive, one after another: once one fails, the rest are dropped."""
    figures: Callable[[View, Layout, Limits], dict[str, float]]
    name_of: Callable[[Layout], str]
    shape: Callable[[View, Layout, Limits], dict[str, float]] = plain_shape
    """What a drawing of the layout needs besides what all have; see `shape.py`."""

    @cached_property
    def all_rows(self) -> tuple[Row, ...]:
        """Every numeric check, in the order they are tried."""
        return (*self.before, *self.rows, *self.load_rows)

    @cached_property
    def blocking(self) -> Blocking:
        """The rows that can put the family out."""
        return Blocking(*(Rows(row for row in rows if not row.warns) for rows in self._stages))

    @cached_property
    def blocking_without_room(self) -> Blocking:
        """The same, floor, ceiling and doors left out."""
        return Blocking(*(Rows(row for row in rows if not row.is_room) for rows in self.blocking))

    @cached_property
    def limiting(self) -> Rows:
        """Every row that can put the family out but for floor, ceiling and doors: what limits rate and rise."""
        return Rows(row for rows in self.blocking_without_room for row in rows)

    @property
    def _stages(self) -> tuple[tuple[Row, ...], ...]:
        return (self.before, self.rows, self.load_rows)

    def fill_all(self, view: View, layout: Layout, d: Limits) -> None:
        """Shape and load of a layout."""
        self.fill(view, layout, d)
        self.load(view, layout, d)
