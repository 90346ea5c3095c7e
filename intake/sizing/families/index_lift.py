"""Index lift: a chain loop with carriers at a fixed pitch; each cycle moves one pitch and pushes one case off above."""

from collections import Counter
from collections.abc import Iterator
from math import ceil, nan
from typing import NamedTuple

from intake.sizing.check_row import Gate, Row
from intake.sizing.drives import motor_needed, power_row
from intake.sizing.families.lifts import LIGHT_WASH, RIGHT_ANGLES, both, cage, size_rows
from intake.sizing.family import Family, Variant
from intake.sizing.job import Num, View
from intake.sizing.physics.friction import STANDARD_GRAVITY as G
from intake.sizing.physics.lift import index_cycle
from intake.sizing.physics.motion import trapezoid_peak, trapezoid_time
from intake.sizing.physics.pneumatics import ISO_15552_RODS, bore_needed, free_air_per_cycle, next_bore, thrust
from intake.sizing.range_data import Limits
from intake.sizing.shared_checks import (
    CP,
    before_layout,
    hazard,
    kinds,
    not_freezer,
    room_rows,
    tilt_row,
    transfer_rows,
    washing,
)

_KINDS = ("case", "carton", "tray", "bundle", "tote", "crate")


class Carriers(NamedTuple):
    """A layout: the pitch of the carriers [m]."""

    pitch: float


def _layouts(view: View, d: Limits, stopped: Counter[str]) -> Iterator[Carriers]:
    need = view.most("H") + d.carrier_structure
    steps = ceil((need - d.carrier_pitch_least) / d.carrier_pitch_step - 1e-9)
    yield Carriers(d.carrier_pitch_least + max(0, steps) * d.carrier_pitch_step)


def _fill(view: View, lay: Carriers, d: Limits) -> None:
    stroke = view.most("W") + d.push_stroke_beyond
    longest = view.most("W")
    travel = trapezoid_time(lay.pitch, d.speed_most, d.accel, d.accel)
    push = max(d.push_time_least, d.push_time_per_m * stroke)
    dwell = max(d.load_time, push + d.push_settle)
    cycle = max(index_cycle(lay.pitch, d.speed_most, d.accel, dwell), 1.0 / d.rate_most)
    for hi, lo in view.sizes:
        for num in both(hi, lo):
            num.cp, num.Tm, num.Tp, num.cycle = lay.pitch, travel, push + d.push_settle, cycle
            num.stroke, num.longest = stroke, longest
            num.aboard = float(ceil(num.rise / lay.pitch - 1e-9))
            num.path, num.tilt_used, num.th = num.rise, 0.0, 0.0
            num.drives, num.v = 1.0, trapezoid_peak(lay.pitch, d.speed_most, d.accel, d.accel)
            num.carriers = float(ceil(2.0 * (num.rise + 2.0 * lay.pitch) / lay.pitch))
        _drive(hi, lo, d)
        hi.Fp = d.push_safety * d.push_friction * hi.m * G
        hi.bore = next_bore(bore_needed(hi.Fp, lo.pair)) or float("inf")
    cage(view, d)


def _drive(hi: Num, lo: Num, d: Limits) -> None:
    """Chains: the products aboard and the loop's own weight hang on the top shaft; the carriers balance."""
    load = hi.aboard * hi.m
    own = d.chain_mass_per_m * hi.rise + d.carrier_mass * hi.aboard
    hi.load, hi.own = load, own
    hi.pull = hi.pull_bu = d.take_up_tension + (load + own) * (G + d.accel) + d.guide_share * load * G
    lo.allow = hi.allow = d.allowed_pull
    lift = load * G * (1.0 + d.guide_share)
    # Mean over the cycle lifts the flow of mass; the motor has to bear the index move itself.
    hi.shaft = lift * hi.R * hi.cp
    hi.shaft_bu = hi.shaft
    hi.shaft_each = (lift + (load + 2.0 * own) * d.accel) * hi.v
    hi.motor_needed = motor_needed(hi.shaft_each, d)


_CYCLE = Row(
    id="rate", limit="60/cycle", limit_high=frozenset({"cycle"}),
    sense="at_most", unit="1/min", body=lambda hi, lo, d: (hi.R * 60.0, 60.0 / hi.cycle), formula="R*60",
    reads=("R", "H", "W"),
    source="cycle = move of one pitch (trapezoid: OpenStax, College Physics 2e, sec. 2.5) + dwell",
)  # fmt: skip
_PITCH = Row(
    id="carrier_pitch", limit="H + carrier_structure",
    sense="at_least", unit="m", body=lambda hi, lo, d: (lo.cp, hi.H + d.carrier_structure),
    formula="cp", reads=("H",), low=frozenset({"cp"}), source="geometry of the layout", each_size=True,
)  # fmt: skip
_PULL = Row(
    id="pull", limit="allowed_pull",
    sense="at_most", unit="N", body=lambda hi, lo, d: (hi.pull, lo.allow),
    formula="T0 + (load + own)*(g + ai) + share*load*g", reads=("m", "rise", "H"),
    constants={"T0": "take_up_tension", "ai": "accel", "share": "guide_share"}, units={"load": "kg", "own": "kg"},
    source="load m (g + a): OpenStax, University Physics vol. 1, Ex. 6.3", each_size=True,
)  # fmt: skip
_CYLINDER = Row(
    id="air_cylinder", limit="0.32",
    sense="at_most", unit="m", body=lambda hi, lo, d: (hi.bore, max(ISO_15552_RODS)),
    formula="bore", reads=("m", "pair"), units={"bore": "m"},
    source="force = pressure x area (OpenStax, College Physics 2e, sec. 11.3); ISO 15552 bores", each_size=True,
)  # fmt: skip

_UP = Gate(id="direction", reads=("direction",), accept=lambda way: way == "up", limit="up", source=CP)
_AIR = Gate(id="air", reads=("air",), accept=lambda air: air is True, limit="compressed air at hand", source=CP)


def _figures(view: View, lay: Carriers, d: Limits) -> dict[str, float]:
    hi, lo = view.sizes[0]
    bore = max(num.bore for num, _ in view.sizes)
    stroke = hi.stroke
    air = free_air_per_cycle(bore, ISO_15552_RODS.get(bore, 0.0), stroke, lo.pair) if bore < 1.0 else float("nan")
    return {
        "holding_pull": max(one.load for one, _ in view.sizes) * G * (1.0 - d.guide_share),
        "slope": 0.0, "largest_tilt": 0.0, "cycle_time": hi.cycle, "travel_time": hi.Tm, "loads_per_trip": 1.0,
        "push_force": max(num.Fp for num, _ in view.sizes), "cylinder_bore": bore, "cylinder_stroke": stroke,
        "cylinder_thrust": thrust(bore, lo.pair) if bore < 1.0 else nan,
        "air_use": air * hi.R * 60.0, "carrier_pitch": lay.pitch, "carriers": hi.carriers, "products_on": hi.aboard,
        "transit_time": hi.aboard / max(hi.R, 1e-9),
    }  # fmt: skip


INDEX_LIFT = Family(
    name="index_lift",
    gates=(hazard(), not_freezer(), washing(LIGHT_WASH), kinds(_KINDS), _UP, _AIR),
    before=(*before_layout(), *size_rows()),
    variants=(Variant(name="carriers", gates=(), layouts=_layouts, headings=RIGHT_ANGLES),),
    fill=_fill,
    rows=(
        _PITCH, _CYCLE, *room_rows(layout_reads=("L", "W")), tilt_row(), _PULL, power_row(), _CYLINDER,
        *transfer_rows(),
    ),
    figures=_figures,
    shape=lambda view, lay, d: {"carrier_pitch": lay.pitch},
    name_of=lambda lay: f"carriers_every_{round(lay.pitch * 1000)}_mm",
)  # fmt: skip
