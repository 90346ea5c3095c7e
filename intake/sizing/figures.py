"""The figures of a family at the design point, with what they may range over, and the capacities of its layout."""

import tomllib
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from math import ceil, isfinite
from typing import Any

from intake.sizing.bracket import largest_factor
from intake.sizing.check_row import rooms
from intake.sizing.drives import motor_series, standard_motor
from intake.sizing.engine import feed
from intake.sizing.family import Family, Layout
from intake.sizing.job import Job, View, view
from intake.sizing.range_data import Limits
from intake.sizing.result import Figure
from intake.sizing.unknowns import LIKELY, TYPICAL, WORST
from intake.sizing.views import Views

_NO_PITCH = ("index_lift", "reciprocating_lift")
_NO_GAP = (*_NO_PITCH, "continuous_lift")


@cache
def units() -> Mapping[str, str]:
    """Unit of each figure, from figures.toml."""
    text = files("intake.sizing").joinpath("figures.toml").read_text(encoding="utf-8")
    return {name: entry["unit"] for name, entry in tomllib.loads(text).items()}


def figures(job: Job, family: Family, layout: Layout | None, views: Views) -> dict[str, Figure]:
    """All figures of a family. Without a layout, or without the basics, most are None and say what they need."""
    d = job.data.families[family.name]
    lead = _lead_time(job, d)
    if layout is None or job.missing_basics:
        needs = job.missing_basics or ("rise.turn",)
        names = [n for n in _names(family)]
        blank = {name: Figure(value=None, unit=units()[name], needs=tuple(needs)) for name in names}
        return {**blank, "lead_time": lead}
    typical = raw_figures(job, family, layout, views[TYPICAL], d)
    corners = [raw_figures(job, family, layout, views[mode], d) for mode in (LIKELY, WORST) if views.has(mode)]
    typical |= _capacities(job, family, layout, d, views.turned)
    out: dict[str, Figure] = {}
    direction = _direction(job, views[TYPICAL])
    for name, value in typical.items():
        around = [c[name] for c in corners if name in c and isfinite(c[name])]
        known = isfinite(value)
        ends = [value, *around] if known else []
        ranges = bool(around) and known and max(ends) - min(ends) > 1e-12 * max(1.0, abs(value))
        out[name] = Figure(
            value=value if known else None,
            unit=units().get(name, "1"),
            low=min(ends) if ranges else None,
            high=max(ends) if ranges else None,
            needs=() if known else _unknown(job),
            direction=direction if name in ("pull", "shaft_power", "motor_power") else None,
        )
    out["lead_time"] = lead
    return out


def raw_figures(job: Job, family: Family, layout: Layout, seen: View, d: Limits) -> dict[str, float]:
    """The figures of one view as plain numbers in the units of figures.toml."""
    hi, _ = seen.sizes[0]
    heaviest = max(num.m for num, _ in seen.sizes)
    own = family.figures(seen, layout, d)
    hardest = max((num for num, _ in seen.sizes), key=lambda num: num.pull)
    strongest = max((num for num, _ in seen.sizes), key=lambda num: abs(num.shaft))
    found: dict[str, float] = {
        "belt_speed": hi.v,
        "path_length": hi.path,
        "pull": hardest.pull,
        "pull_allowed": min(lo.allow for _, lo in seen.sizes),
        "shaft_power": strongest.shaft,
        "motor_power": _motor_power(job, max(num.motor_needed for num, _ in seen.sizes), hi.drives),
        "motors": hi.drives,
        "brake_power": max(0.0, -strongest.shaft),
        "floor_length": hi.fl,
        "floor_width": hi.fw,
        "overall_height": max(num.top for num, _ in seen.sizes),
        "pass_under": hi.under,
        "ship_width": hi.piece_a,
    }
    if family.name not in _NO_PITCH:
        found["pitch"] = hi.p
        found["products_on"] = hi.path / hi.p
        found["transit_time"] = hi.path / hi.v if hi.v > 0 else float("nan")
    if family.name not in _NO_GAP:
        found["gap"] = hi.p - max(num.Lp for num, _ in seen.sizes)
    found |= own
    found["load_mass"] = found["products_on"] * heaviest
    return found


def _motor_power(job: Job, needed: float, drives: float) -> float:
    frequency, voltage = job.spec.of("site.frequency"), job.spec.of("site.voltage")
    series = motor_series(frequency.largest if frequency else None, voltage.largest if voltage else None)
    motor = standard_motor(needed, series)
    return float("nan") if motor is None else motor * drives


def _lead_time(job: Job, d: Limits) -> Figure:
    rise = job.sizes[0]["rise"]
    late = d.very_tall_weeks if not rise.missing and rise.typical > d.tall_above else 0.0
    special = job.sizes[0]["stainless"]
    usual, most = (late + weeks * d.stainless_weeks for weeks in (special.typical, special.hi[WORST]))
    return Figure(value=d.weeks_typical + usual, unit="week", low=d.weeks_least + usual, high=d.weeks_most + most)


def _direction(job: Job, seen: View) -> str | None:
    word = job.choices["direction"].typical
    if word != "both":
        return None
    way = getattr(seen.sizes[0][0], "way", 1.0)
    return "up" if way > 0 else "down"


def _unknown(job: Job) -> tuple[str, ...]:
    return tuple(dict.fromkeys(ask for var in job.sizes[0].values() if var.missing for ask in var.asks))


def _names(family: Family) -> list[str]:
    shared = [
        "pitch", "gap", "belt_speed", "rate_capacity", "rise_capacity", "path_length", "slope", "products_on",
        "load_mass", "pull", "pull_allowed", "largest_tilt",
        "shaft_power", "motor_power", "motors", "holding_pull", "brake_power", "transit_time",
        "floor_length", "floor_width", "overall_height", "pass_under", "ship_width",
    ]  # fmt: skip
    drop = {"pitch", "gap"} if family.name in _NO_PITCH else {"gap"} if family.name in _NO_GAP else set()
    return [name for name in shared if name not in drop]


# ---------------------------------------------------------------- how fast, how high


def _capacities(job: Job, family: Family, layout: Layout, d: Limits, turned: bool) -> dict[str, float]:
    """The largest rate and rise of one layout with every check but room still holding, in canonical units."""
    seen = view(job, TYPICAL)
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
