"""How fast, how high: the largest rate and rise of one layout."""

from math import ceil
from typing import Any

from intake.sizing.bracket import largest_factor
from intake.sizing.check_row import rooms
from intake.sizing.engine import feed
from intake.sizing.family import Family, Layout
from intake.sizing.job import Job, View, view
from intake.sizing.range_data import Limits
from intake.sizing.unknowns import TYPICAL


def capacities(job: Job, family: Family, layout: Layout, turned: bool) -> dict[str, float]:
    """The largest rate and rise of one layout with every check but room still holding, in canonical units."""
    d, seen = job.data.families[family.name], view(job, TYPICAL)
    feed(seen, turned)
    rate, rise = seen.sizes[0][0].R, seen.sizes[0][0].rise

    def at_rate(factor: float) -> list[float]:
        return _rooms(family, layout, seen, d, "R", rate * factor)

    def at_rise(factor: float) -> list[float]:
        return _rooms(family, stretched(layout, factor), seen, d, "rise", rise * factor)

    # What fails at a thousandth of the rate fails at any: less flow never hurts.
    fastest = largest_factor(at_rate) if min(at_rate(1.0)) >= 0.0 or min(at_rate(1e-3)) >= 0.0 else None
    _set(seen, "R", rate)
    highest = largest_factor(at_rise, smallest=d.least_rise / rise if rise > 0.0 else 1.0)
    return {
        "rate_capacity": rate * 60.0 * fastest if fastest is not None else float("nan"),
        "rise_capacity": rise * highest if highest is not None else float("nan"),
    }


def stretched(layout: Layout, factor: float) -> Layout:
    """The layout for another rise: a helix keeps its rise per turn and gets more turns; all others stay."""
    if hasattr(layout, "turns"):
        return layout._replace(turns=layout.turns * factor)
    if hasattr(layout, "series") and layout.lanes == 1:
        return layout._replace(series=max(1, ceil(layout.series * factor - 1e-9)))
    return layout


def _set(seen: View, name: str, value: float) -> None:
    for hi, lo in seen.sizes:
        setattr(hi, name, value)
        setattr(lo, name, value)


def _rooms(family: Family, layout: Any, seen: View, d: Limits, name: str, value: float) -> list[float]:
    """The room that each check but those on floor, ceiling and doors leaves when one figure is set."""
    _set(seen, name, value)
    family.fill_all(seen, layout, d)
    return rooms(family.limiting, seen, d)
