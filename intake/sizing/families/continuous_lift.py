"""Continuous lift: carriers on endless chains that never stop; each takes one product in passing."""

from collections import Counter
from collections.abc import Iterator
from math import ceil, inf
from typing import NamedTuple

from intake.sizing.check_row import Row
from intake.sizing.drives import derating, motor_needed, power_row, set_flow
from intake.sizing.families.lifts import LIGHT_WASH, RIGHT_ANGLES, both, cage, size_rows
from intake.sizing.family import Family, Variant
from intake.sizing.job import Num, View
from intake.sizing.physics.friction import STANDARD_GRAVITY as G
from intake.sizing.physics.lift import feed_speed_needed
from intake.sizing.physics.power import lift_power
from intake.sizing.range_data import Limits
from intake.sizing.shared_checks import (
    before_layout,
    hazard,
    kinds,
    not_freezer,
    room_rows,
    tilt_row,
    transfer_rows,
    washing,
)
from intake.spec.vocabulary import vocabulary

_KINDS = tuple(kind for kind in vocabulary()["product.type"].choices if kind != "pallet_load")


class Carriers(NamedTuple):
    """A layout: the pitch of the carriers [m]."""

    pitch: float


def _layouts(view: View, d: Limits, stopped: Counter[str]) -> Iterator[Carriers]:
    least = view.most("H") + d.carrier_clearance
    for pitch in d.carrier_pitches:
        if pitch > least + 0.02:
            yield Carriers(pitch)


def _fill(view: View, lay: Carriers, d: Limits) -> None:
    set_flow(view, lay.pitch, lay.pitch)
    for hi, lo in view.sizes:
        for num in both(hi, lo):
            num.cp, num.path, num.tilt_used, num.th = lay.pitch, num.rise, 0.0, 0.0
            num.drives = 1.0
            num.carriers = float(ceil(2.0 * (num.rise + 1.0) / lay.pitch))
        hi.window = lay.pitch - hi.H - d.carrier_clearance
        hi.feed = feed_speed_needed(hi.L, hi.v, hi.window) if hi.window > 0 else inf
    cage(view, d)


def _load(view: View, lay: Carriers, d: Limits) -> None:
    lowers = all(word == "down" for word in view.options["direction"])
    for hi, lo in view.sizes:
        derating(hi, lo, d)
        lo.rated = hi.rated = d.allowed_pull
        lo.allow, hi.allow = lo.rated * lo.derate, hi.rated * hi.derate
        _drive(hi, d)
        hi.shaft = hi.shaft_bu = hi.shaft_each = hi.shaft_down if lowers else hi.shaft_up
        hi.motor_needed = motor_needed(hi.shaft, d)


def _drive(hi: Num, d: Limits) -> None:
    hi.load = hi.rise / hi.cp * hi.m
    carrier = d.carrier_mass_per_area * hi.L * hi.W
    hi.own = d.chain_mass_per_m * hi.rise + carrier * hi.rise / hi.cp
    hi.pull = d.take_up_tension + (hi.load + hi.own) * (G + d.accel_greatest) + d.guide_share * hi.load * G
    lift = lift_power(hi.m * hi.R, hi.rise)
    up, down = lift * (1.0 + d.guide_share), -lift * (1.0 - d.guide_share)
    hi.shaft_up, hi.shaft_down = up, down


_RATE = Row(
    id="rate", limit="rate_most*60",
    sense="at_most", unit="1/min", body=lambda hi, lo, d: (hi.R * 60.0, d.rate_most * 60.0), formula="R*60",
    reads=("R",), source="range data",
)  # fmt: skip
_SPEED = Row(
    id="speed", limit="speed_most",
    sense="at_most", unit="m/s", body=lambda hi, lo, d: (hi.v, d.speed_most), formula="R*cp",
    reads=("R", "H"),
    source="speed = rate x carrier pitch",
)  # fmt: skip
_FEED = Row(
    id="feed_speed", limit="feed_speed_most",
    sense="at_most", unit="m/s", body=lambda hi, lo, d: (hi.feed, d.feed_speed_most),
    formula="L*R*cp/(cp - H - c)", reads=("R", "L", "H"), constants={"c": "carrier_clearance"},
    source="equal times: the product runs on while the way is open", each_size=True,
)  # fmt: skip
_PULL = Row(
    id="pull", limit="rated*derate",
    sense="at_most", unit="N", body=lambda hi, lo, d: (hi.pull, lo.allow),
    formula="T0 + (load + own)*(g + max(a1, a2, a3)) + share*load*g", reads=("m", "rise", "H"),
    constants={
        "T0": "take_up_tension", "a1": "accel_start", "a2": "accel_stop", "a3": "accel_power_loss",
        "share": "guide_share",
    },
    units={"load": "kg", "own": "kg"}, source="load m (g + a): OpenStax, University Physics vol. 1, Ex. 6.3",
    each_size=True,
)  # fmt: skip


def _figures(view: View, lay: Carriers, d: Limits) -> dict[str, float]:
    hi = view.sizes[0][0]
    return {
        "holding_pull": max(one.load for one, _ in view.sizes) * G * (1.0 - d.guide_share),
        "slope": 0.0, "largest_tilt": 0.0, "carrier_pitch": lay.pitch, "carriers": hi.carriers,
    }  # fmt: skip


CONTINUOUS_LIFT = Family(
    name="continuous_lift",
    gates=(hazard(), not_freezer(), washing(LIGHT_WASH), kinds(_KINDS)),
    before=(*before_layout(), _RATE, *size_rows(height=True)),
    variants=(Variant(name="carriers", gates=(), layouts=_layouts, headings=RIGHT_ANGLES),),
    fill=_fill,
    rows=(_SPEED, _FEED, *room_rows(layout_reads=("L", "W")), tilt_row()),
    load=_load,
    load_rows=(_PULL, power_row(), *transfer_rows()),
    figures=_figures,
    shape=lambda view, lay, d: {"carrier_pitch": lay.pitch},
    name_of=lambda lay: f"carriers_every_{round(lay.pitch * 1000)}_mm",
)  # fmt: skip
