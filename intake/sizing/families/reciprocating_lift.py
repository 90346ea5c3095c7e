"""Reciprocating lift: one platform up and down, one load a trip."""

from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from intake.sizing.check_row import Row
from intake.sizing.drives import motor_needed, power_row
from intake.sizing.families.lifts import LIGHT_WASH, RIGHT_ANGLES, both, cage, size_rows
from intake.sizing.family import Family, Variant
from intake.sizing.job import View
from intake.sizing.physics.friction import STANDARD_GRAVITY as G
from intake.sizing.physics.lift import reciprocating_cycle
from intake.sizing.physics.motion import trapezoid_peak, trapezoid_time
from intake.sizing.physics.power import lift_power
from intake.sizing.range_data import Limits
from intake.sizing.shared_checks import (
    before_layout,
    hazard,
    not_freezer,
    room_rows,
    tilt_row,
    transfer_rows,
    washing,
)


class Platform(NamedTuple):
    """A layout: loads taken in one trip."""

    loads: int


def _layouts(view: View, d: Limits, stopped: Counter[str]) -> Iterator[Platform]:
    yield Platform(1)


def _fill(view: View, lay: Platform, d: Limits) -> None:
    longest_hi, longest_lo = view.most("L"), view.most_low("L")
    widest = view.most("W")
    lowers = all(word == "down" for word in view.options["direction"])
    for hi, lo in view.sizes:
        for num, longest in ((hi, longest_hi), (lo, longest_lo)) if lo is not hi else ((hi, longest_hi),):
            handling = d.load_time_fixed + longest / d.transfer_speed
            num.longest, num.Tl = longest, handling
            num.Tm = trapezoid_time(num.rise, d.speed_most, d.accel, d.accel)
            num.cycle = reciprocating_cycle(num.rise, d.speed_most, d.accel, handling, handling)
            num.path, num.tilt_used, num.th, num.drives = num.rise, 0.0, 0.0, 1.0
            num.v = trapezoid_peak(num.rise, d.speed_most, d.accel, d.accel)
        hi.platform = d.platform_mass_per_area * longest_hi * widest
        hi.balance = hi.platform + d.counterweight_share * hi.m
        unbalanced = hi.m + hi.platform - hi.balance
        hi.pull = (hi.m + hi.platform) * (G + d.accel) * (1.0 + d.guide_share)
        for num in both(hi, lo):
            num.allow = d.allowed_pull
        moved = hi.m + hi.platform + hi.balance
        peak = (unbalanced * G * (1.0 + d.guide_share) + moved * d.accel) * hi.v
        # The flow of mass is what the drive lifts on the whole; the counterweight only moves it about in time.
        lift = lift_power(hi.m * hi.R, hi.rise)
        mean = lift * (1.0 + d.guide_share)
        hi.shaft = hi.shaft_bu = -lift * (1.0 - d.guide_share) if lowers else mean
        hi.shaft_each = max(peak, mean)
        hi.motor_needed = motor_needed(hi.shaft_each, d)
    cage(view, d)


_RATE = Row(
    id="rate", limit="60/cycle", limit_high=frozenset({"cycle"}),
    sense="at_most", unit="1/min", body=lambda hi, lo, d: (hi.R * 60.0, 60.0 / hi.cycle), formula="R*60",
    reads=("R", "rise", "L"),
    source="cycle = two moves (trapezoid: OpenStax, College Physics 2e, sec. 2.5) + load + unload",
)  # fmt: skip
_PULL = Row(
    id="pull", limit="allowed_pull",
    sense="at_most", unit="N", body=lambda hi, lo, d: (hi.pull, lo.allow),
    formula="(m + platform)*(g + ai)*(1 + share)", reads=("m", "L", "W"),
    constants={"ai": "accel", "share": "guide_share"},
    units={"platform": "kg"}, source="load m (g + a): OpenStax, University Physics vol. 1, Ex. 6.3", each_size=True,
)  # fmt: skip


def _figures(view: View, lay: Platform, d: Limits) -> dict[str, float]:
    hi = view.sizes[0][0]
    # Loaded it would fall, empty its counterweight would lift it.
    apart = max(max(one.m + one.platform - one.balance, one.balance - one.platform) for one, _ in view.sizes)
    return {
        "holding_pull": apart * G * (1.0 - d.guide_share),
        "slope": 0.0, "largest_tilt": 0.0, "cycle_time": hi.cycle, "travel_time": hi.Tm,
        "loads_per_trip": float(lay.loads),
        "products_on": float(lay.loads), "transit_time": hi.Tm + hi.Tl,
    }  # fmt: skip


RECIPROCATING_LIFT = Family(
    name="reciprocating_lift",
    gates=(hazard(), not_freezer(), washing(LIGHT_WASH)),
    before=(*before_layout(), *size_rows()),
    variants=(Variant(name="platform", gates=(), layouts=_layouts, headings=RIGHT_ANGLES),),
    fill=_fill,
    rows=(_RATE, *room_rows(layout_reads=("L", "W")), tilt_row(), _PULL, power_row(), *transfer_rows()),
    figures=_figures,
    name_of=lambda lay: "one_platform",
)  # fmt: skip
