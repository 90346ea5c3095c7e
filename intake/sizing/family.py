"""What a family of machines is to the engine: gates, checks before any layout, layouts to try, figures."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from intake.sizing.check_row import Gate, Row
from intake.sizing.job import View
from intake.sizing.range_data import Limits

Layout = Any
"""A family's own named tuple: what stays fixed while the open figures move."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Variant:
    """One way to build a family (in line, folded; S path, C path), with the gates that only it has."""

    name: str
    gates: tuple[Gate, ...]
    layouts: Callable[[View, Limits], Iterator[Layout]]
    headings: frozenset[float] | None
    """Plan angles from infeed to discharge that it can give; None: any (the layouts see to it)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Family:
    """One family. `fill` writes the figures of a layout into a view; `rows` are then held against it."""

    name: str
    gates: tuple[Gate, ...]
    before: tuple[Row, ...]
    variants: tuple[Variant, ...]
    fill: Callable[[View, Layout, Limits], None]
    rows: tuple[Row, ...]
    figures: Callable[[View, Layout, Limits], dict[str, float]]
    name_of: Callable[[Layout], str]
    follows: Mapping[str, tuple[str, ...]]
    """Which job figures stand behind a symbol of the layout, for saying what a check leans on."""

    @property
    def all_rows(self) -> tuple[Row, ...]:
        """Every numeric check, in the order they are tried."""
        return (*self.before, *self.rows)
