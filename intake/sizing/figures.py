"""The figures of a family at the design point, with what they may range over, and the capacities of its layout."""

import tomllib
from collections.abc import ItemsView, Iterator, Mapping
from dataclasses import replace
from functools import cache
from importlib.resources import files
from math import isfinite
from typing import Any

from intake.sizing.capacities import capacities
from intake.sizing.deferred import Deferred
from intake.sizing.drives import motor_series, standard_motor
from intake.sizing.family import Family, Layout
from intake.sizing.job import Job, View
from intake.sizing.range_data import Limits
from intake.sizing.result import Figure
from intake.sizing.unknowns import LIKELY, TYPICAL, WORST
from intake.sizing.views import Views

_NO_PITCH = ("index_lift", "reciprocating_lift")
_NO_GAP = (*_NO_PITCH, "continuous_lift")
_DRIVEN = ("pull", "shaft_power", "motor_power")
"""Figures that hang on the way up or down."""


@cache
def units() -> Mapping[str, str]:
    """Unit of each figure, from figures.toml."""
    text = files("intake.sizing").joinpath("figures.toml").read_text(encoding="utf-8")
    return {name: entry["unit"] for name, entry in tomllib.loads(text).items()}


class Figures(Mapping[str, Figure]):
    """All figures of a family, worked out when they are read. How fast and how high is searched for: that comes last.

    Without a layout, or without the basics, most are None and say what they need. `open_asks`: what is needed for a
    figure that is not known and says nothing itself.
    """

    def __init__(
        self, job: Job, family: Family, layout: Layout | None, views: Views, open_asks: tuple[str, ...]
    ) -> None:  # fmt: skip
        self._at_once = Deferred(_at_once, job, family, layout, views, open_asks)
        self._whole = Deferred(_whole, self._at_once, job, family, layout, views, open_asks)

    def __getitem__(self, name: str) -> Figure:
        found = self._at_once.get(name)
        return found if found is not None else self._whole[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._whole)

    def __len__(self) -> int:
        return len(self._whole)

    def items(self) -> ItemsView[str, Figure]:
        """The figures with their names."""
        return self._whole.items()

    def __repr__(self) -> str:
        return repr(self._whole)

    def __reduce__(self) -> tuple[Any, ...]:
        return dict, (dict(self._whole),)


def _at_once(
    job: Job, family: Family, layout: Layout | None, views: Views, open_asks: tuple[str, ...]
) -> dict[str, Figure]:  # fmt: skip
    """The figures that the layout gives."""
    lead = _lead_time(job, job.data.families[family.name])
    if layout is None or job.missing_basics:
        needs = job.missing_basics or ("rise.turn",)
        blank = {name: Figure(value=None, unit=units()[name], needs=tuple(needs)) for name in _names(family)}
        return {**blank, "lead_time": lead}
    d = job.data.families[family.name]
    typical = raw_figures(job, family, layout, views[TYPICAL], d)
    corners = [raw_figures(job, family, layout, views[mode], d) for mode in (LIKELY, WORST) if views.has(mode)]
    direction = _direction(job, views[TYPICAL])
    found: dict[str, Figure] = {}
    for name, value in typical.items():
        around = [c[name] for c in corners if name in c and isfinite(c[name])]
        shown = _shown(job, name, value, around, open_asks)
        found[name] = replace(shown, direction=direction) if direction and name in _DRIVEN else shown
    return {**found, "lead_time": lead}


def _whole(
    at_once: Mapping[str, Figure], job: Job, family: Family, layout: Layout | None, views: Views,
    open_asks: tuple[str, ...],
) -> dict[str, Figure]:  # fmt: skip
    """The same with the capacities of the layout, the time of delivery last."""
    whole = dict(at_once)
    if layout is not None and not job.missing_basics:
        lead = whole.pop("lead_time")
        for name, value in capacities(job, family, layout, views.turned).items():
            whole[name] = _shown(job, name, value, [], open_asks)
        whole["lead_time"] = lead
    return whole


def _shown(job: Job, name: str, value: float, around: list[float], open_asks: tuple[str, ...]) -> Figure:
    """One figure with the ends that it may range over. `around`: what it is elsewhere in the plausible range."""
    unit = units().get(name, "1")
    if not isfinite(value):
        return Figure(value=None, unit=unit, needs=_unknown(job) or open_asks)
    ends = [value, *around]
    if max(ends) - min(ends) > 1e-12 * max(1.0, abs(value)):
        return Figure(value=value, unit=unit, low=min(ends), high=max(ends))
    return Figure(value=value, unit=unit)


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
