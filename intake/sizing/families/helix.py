"""The two spirals: a belt climbing a helix, with one drive (`spiral`) or driven at each tier (`washdown_spiral`)."""

from math import ceil, cos, pi

from intake.sizing.check_row import Row
from intake.sizing.drives import (
    PULL_HELIX,
    Drive,
    backs_up,
    belt_drive,
    derating,
    motor_needed,
    over_directions,
    power_row,
    pull_rows,
    set_flow,
)
from intake.sizing.families.helix_search import Helix, helix_layouts
from intake.sizing.family import Family, Variant
from intake.sizing.job import Num, View
from intake.sizing.physics.flow import pitch_curved
from intake.sizing.physics.friction import STANDARD_GRAVITY as G
from intake.sizing.physics.helix import helix_length, slope_of, width_in_curve
from intake.sizing.physics.tension import guide_rate, runaway_pull
from intake.sizing.range_data import Limits
from intake.sizing.shared_checks import (
    before_layout,
    hazard,
    no_castors,
    not_freezer,
    room_rows,
    set_envelope,
    tilt_row,
    transfer_rows,
    washing,
)
from intake.sizing.stability import curve_row, slip_row, tip_row

_WASHDOWN = "washdown_spiral"


def _fill(view: View, lay: Helix, d: Limits) -> None:
    r_path = lay.inside + lay.belt / 2.0
    diameter = 2.0 * r_path
    outside = 2.0 * (lay.inside + lay.belt + d.frame_margin)
    longest, longest_lo = view.most("Lp"), view.most_low("Lp")
    p_hi = p_lo = pitch_curved(longest, d.gap, d.least_gap, r_path, lay.inside)
    if longest_lo != longest:
        p_lo = pitch_curved(longest_lo, d.gap, d.least_gap, r_path, lay.inside)
    set_flow(view, p_hi, p_lo)
    for hi, lo in view.sizes:
        for num in (hi, lo) if lo is not hi else (hi,):
            num.n, num.D, num.r, num.ri, num.Wb = lay.turns, diameter, r_path, lay.inside, lay.belt
            num.tiers = max(1.0, float(ceil(lay.turns - 1e-9)))
            num.P = num.rise / lay.turns
            num.th = num.th_curve = slope_of(diameter, num.P)
            num.tilt_used = num.th
            num.s = helix_length(diameter, num.P, lay.turns)
            num.le = 2.0 * d.level_end
            num.path = num.s + num.le
            num.qb = d.belt_mass_per_area * lay.belt
            num.B = guide_rate(d.guide_friction, num.th, r_path)
        set_envelope(hi, lo, d, (outside, outside), (outside, outside))


def _load(view: View, lay: Helix, d: Limits) -> None:
    rated = d.allowed_pull_by_width[lay.belt_index]
    for hi, lo in view.sizes:
        derating(hi, lo, d)
        lo.rated = hi.rated = rated
        lo.allow, hi.allow = rated * lo.derate, rated * hi.derate
        _pull(view, hi, lo, d)


def _pull(view: View, hi: Num, lo: Num, d: Limits) -> None:
    hi.q = hi.qb + hi.m / lo.p
    hi.q_bu = hi.qb + hi.m / lo.L if backs_up(view) else hi.q
    drive = over_directions(view, lambda climbs: _drive(hi, hi.q, d, climbs))
    backed = drive if hi.q_bu == hi.q else over_directions(view, lambda climbs: _drive(hi, hi.q_bu, d, climbs))
    hi.Ts, hi.way, hi.pull, hi.shaft = drive.start, drive.sign, drive.greatest, drive.shaft
    hi.Tb, hi.way_bu, hi.pull_bu, hi.shaft_bu = backed.start, backed.sign, backed.greatest, backed.shaft
    hi.drives = hi.tiers if d.family == _WASHDOWN else 1.0
    each = max((hi.shaft, hi.shaft_bu), key=abs) / hi.drives
    hi.shaft_each = each
    hi.motor_needed = motor_needed(each, d)


def _drive(hi: Num, q: float, d: Limits, climbs: bool) -> Drive:
    """One drive for the whole helix, or the worst tier of a belt that is driven at each."""
    if d.family != _WASHDOWN:
        return belt_drive(
            load=q * G, back=hi.qb * G, slope=hi.th, friction=d.belt_friction, guide=hi.B, length=hi.s, level=hi.le,
            least=d.take_up_tension, speed=hi.v, climbs=climbs,
        )  # fmt: skip
    tiers = hi.tiers
    tier = belt_drive(
        load=q * G, back=0.0, slope=hi.th, friction=d.belt_friction, guide=hi.B, length=hi.s / tiers,
        level=hi.le / tiers, least=d.take_up_tension, speed=hi.v, climbs=climbs,
    )  # fmt: skip
    # The empty belt goes back down (or up) outside: what it lifts here it gives back there, less its friction.
    back = hi.qb * G * d.belt_friction * (cos(hi.th) * hi.s + hi.le) * hi.v
    sign = 1.0 if climbs else -1.0
    weight_given_back = -sign * hi.qb * G * hi.rise * hi.v
    return Drive(tier.start, tier.greatest, tier.shaft * tiers + back + weight_given_back, tier.sign)


_WIDTH = Row(
    id="width", limit="Wb",
    sense="at_most", unit="m",
    body=lambda hi, lo, d: (width_in_curve(hi.ri, hi.W, hi.L) + d.edge_clearance, lo.Wb),
    formula="sqrt((ri + W)^2 + (L/2)^2) - ri + c", reads=("W", "L"), constants={"c": "edge_clearance"},
    source="Pythagoras: the outer corner of a load that touches the inside edge", each_size=True,
)  # fmt: skip

_SLOPE = Row(
    id="slope", limit="slope_most*180/pi",
    sense="at_most", unit="deg", body=lambda hi, lo, d: (hi.th * 180.0 / pi, d.slope_most * 180.0 / pi),
    formula="atan(P/(pi*D))*180/pi", reads=("rise",), source="OpenStax, Calculus vol. 3, sec. 3.3 (helix)",
)  # fmt: skip

_TIER = Row(
    id="tier_clearance", limit="H + tier_structure + tier_clearance",
    sense="at_least", unit="m",
    body=lambda hi, lo, d: (lo.P, hi.H + d.tier_structure + d.tier_clearance),
    formula="P", reads=("H", "rise"), low=frozenset({"P"}), source="geometry of the layout", each_size=True,
    applies=lambda hi: hi.n > 1.0 + 1e-9,
)  # fmt: skip

_SPEED = Row(
    id="speed", limit="speed_most",
    sense="at_most", unit="m/s", body=lambda hi, lo, d: (hi.v, d.speed_most), formula="R*p",
    reads=("R", "L"),
    source="flow: speed = rate x pitch (as T x v of a belt load; Krishnaswamy, Industrial Instrumentation, Ex. 5.15)",
)  # fmt: skip

_RATE = Row(
    id="rate", limit="speed_most/p*60", limit_high=frozenset({"p"}),
    sense="at_most", unit="1/min", body=lambda hi, lo, d: (hi.R * 60.0, d.speed_most / hi.p * 60.0),
    formula="R*60", reads=("R", "L"), source="top belt speed over pitch",
)  # fmt: skip

_UNITS = {
    "Ts": "N", "Tb": "N", "qb": "kg/m", "q": "kg/m", "q_bu": "kg/m", "th": "rad", "s": "m", "le": "m", "B": "1/m",
    "way": "1", "way_bu": "1", "P": "m", "D": "m", "ri": "m", "Wb": "m", "n": "1",
}  # fmt: skip


_ONE = "(s/tiers)"
_CLIMB = "q*g*(mus*cos(th) + way*sin(th))"
_END = f"Ts*exp(B*{_ONE}) + {_CLIMB}*(exp(B*{_ONE}) - 1)/B"
_PULL_TIER = f"max(Ts, {_END}, {_END} + q*g*mus*le/tiers)"
"""Tension at the nodes of one tier [N]."""


def _family(name: str) -> Family:
    per_tier = name == _WASHDOWN
    allowed_zone = ("ambient",) if per_tier else ("chilled", "ambient", "hot")
    wash = ("dry", "wipe", "low_pressure")
    pull = pull_rows(_PULL_TIER if per_tier else PULL_HELIX, ("m", "L"), {**_UNITS, "tiers": "1"})
    return Family(
        name=name,
        gates=(
            hazard(),
            no_castors(),
            not_freezer(allowed_zone),
            washing((*wash, "high_pressure", "clean_in_place") if per_tier else wash),
        ),
        before=before_layout(),
        variants=(Variant(name="helix", gates=(), layouts=helix_layouts, headings=None),),
        fill=_fill,
        rows=(
            _WIDTH,
            _SPEED,
            _RATE,
            _SLOPE,
            _TIER,
            *room_rows(layout_reads=("W", "L", "rise")),
            slip_row(),
            curve_row(),
            tip_row(curved=True),
            tilt_row(),
            *transfer_rows(),
        ),
        load=_load,
        load_rows=(*pull, power_row()),
        drive_group=lambda lay: (lay.inside, lay.belt),
        figures=_figures,
        shape=_shape,
        name_of=lambda lay: f"{lay.turns:g}_turns_{'clockwise' if lay.hand > 0 else 'anticlockwise'}",
    )  # fmt: skip


def _holding_pull(hi: Num, d: Limits) -> float:
    """Pull with which the load at one drive would start by itself when power is lost [N]."""
    back = 0.0 if hi.drives > 1.0 else hi.qb * G
    return runaway_pull(hi.q_bu * G, back, hi.th, d.belt_friction, hi.s / hi.drives, hi.le / hi.drives)


def _figures(view: View, lay: Helix, d: Limits) -> dict[str, float]:
    hi = view.sizes[0][0]
    return {
        "holding_pull": max(_holding_pull(one, d) for one, _ in view.sizes),
        "turns": lay.turns, "rise_per_turn": hi.P, "path_diameter": hi.D, "belt_width": lay.belt,
        "outside_diameter": 2.0 * (lay.inside + lay.belt), "slope": hi.th * 180.0 / pi,
        "largest_tilt": hi.th * 180.0 / pi,
    }  # fmt: skip


def _shape(view: View, lay: Helix, d: Limits) -> dict[str, float]:
    return {
        "turns": lay.turns, "hand": float(lay.hand), "inside": lay.inside, "belt": lay.belt,
        "heading": lay.hand * lay.turns * 360.0 % 360.0,
    }  # fmt: skip


SPIRAL = _family("spiral")
WASHDOWN_SPIRAL = _family(_WASHDOWN)
