"""Inclines: belts in series in one line, or switchbacks of two or three runs side by side in plan."""

from math import pi, sin

from intake.sizing.check_row import Row
from intake.sizing.drives import (
    PULL_STRAIGHT,
    Drive,
    backs_up,
    belt_drive,
    derating,
    flow,
    motor_needed,
    over_directions,
    power_row,
    pull_rows,
    set_flow,
)
from intake.sizing.families.incline_search import (
    Runs,
    belt_over,
    end_length,
    lane_of,
    plan_length,
    plan_width,
    runs_on,
)
from intake.sizing.family import Family, Layout, Variant
from intake.sizing.job import Num, View
from intake.sizing.physics.envelope import run_plan_length
from intake.sizing.physics.flow import pitch_curved
from intake.sizing.physics.friction import STANDARD_GRAVITY as G
from intake.sizing.physics.helix import width_in_curve
from intake.sizing.physics.tension import runaway_pull
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
from intake.sizing.stability import crest_row, curve_row, slip_row, tip_in_level_curve_row, tip_row

STRAIGHT_UNITS = {
    "Ts": "N", "Tb": "N", "qb": "kg/m", "q": "kg/m", "q_bu": "kg/m", "th": "rad", "s": "m", "le": "m", "way": "1",
    "way_bu": "1",
    "press": "N/m", "press_bu": "N/m",
}  # fmt: skip


def width_row() -> Row:
    """Product and clearance on the belt."""
    return Row(
        id="width", limit="Wb",
        sense="at_most", unit="m", body=lambda hi, lo, d: (hi.W + 2.0 * d.side_clearance, lo.Wb),
        formula="W + 2*c", reads=("W",), constants={"c": "side_clearance"}, source="geometry of the layout",
        each_size=True,
    )  # fmt: skip


def speed_rows() -> tuple[Row, ...]:
    """Belt speed, and the rate that it allows."""
    return (
        Row(
            id="speed", limit="speed_most",
            sense="at_most", unit="m/s", body=lambda hi, lo, d: (hi.v, d.speed_most), formula="R*p",
            reads=("R", "L"), source="flow: speed = rate x pitch",
        ),
        Row(
            id="rate", limit="speed_most/p*60", limit_high=frozenset({"p"}),
            sense="at_most", unit="1/min", body=lambda hi, lo, d: (hi.R * 60.0, d.speed_most / hi.p * 60.0),
            formula="R*60", reads=("R", "L"), source="top belt speed over pitch",
        ),
    )  # fmt: skip


def straight_pull(
    view: View, hi: Num, lo: Num, d: Limits, runs: float, pressed: tuple[float, float] | None = None
) -> None:
    """Write pull, allowed pull and motor of one straight run, and the shaft power of all of them.

    pressed: friction per length of slope from what presses on the load, running and backed up [N/m].
    """
    derating(hi, lo, d)
    # A wider product gets a wider belt, and that may pull more: low is worse.
    narrow = belt_over(max(low.Wp for _, low in view.sizes), d)
    hi.rated = d.allowed_pull_per_width * hi.Wb
    lo.rated = d.allowed_pull_per_width * narrow
    lo.allow, hi.allow = lo.rated * lo.derate, hi.rated * hi.derate
    hi.q = hi.qb + hi.m / lo.p
    hi.q_bu = hi.qb + hi.m / lo.L if backs_up(view) else hi.q
    hi.press, hi.press_bu = pressed if pressed is not None else (0.0, 0.0)
    hi.press_bu = hi.press_bu if backs_up(view) else hi.press

    def run(q: float, press: float, climbs: bool) -> Drive:
        return belt_drive(
            load=q * G, back=hi.qb * G, slope=hi.th, friction=d.belt_friction, guide=0.0, length=hi.s, level=hi.le,
            least=d.take_up_tension, speed=hi.v, climbs=climbs, press=press,
        )  # fmt: skip

    drive = over_directions(view, lambda climbs: run(hi.q, hi.press, climbs))
    backed = drive
    if hi.q_bu != hi.q:
        backed = over_directions(view, lambda climbs: run(hi.q_bu, hi.press_bu, climbs))
    hi.Ts, hi.way, hi.pull = drive.start, drive.sign, drive.greatest
    hi.Tb, hi.way_bu, hi.pull_bu = backed.start, backed.sign, backed.greatest
    hi.drives = runs
    hi.shaft, hi.shaft_bu = drive.shaft * runs, backed.shaft * runs
    hi.shaft_each = max((drive.shaft, backed.shaft), key=abs)
    hi.motor_needed = motor_needed(hi.shaft_each, d)


def holding_pull(view: View, d: Limits) -> float:
    """Pull with which one run would start by itself when power is lost [N]."""
    return max(
        runaway_pull(hi.q_bu * G, hi.qb * G, hi.th, d.belt_friction, hi.s, hi.le) for hi, _ in view.sizes
    )  # fmt: skip


def _has_curves(hi: Num) -> bool:
    """Only switchbacks have curves."""
    return hi.lanes > 1.0


def _fill(view: View, lay: Runs, d: Limits) -> None:
    lane = lane_of(view, lay.lanes, d)
    belt, inside = lane
    inside_lo = d.curve_radius_per_product_width * view.most_low("Wp")
    runs = lay.lanes * lay.series
    r_path = inside + belt / 2.0
    # The tighter the curve, the more the gaps close on its inside: a narrow product is the worse case here.
    tight = inside_lo + belt / 2.0
    if lay.lanes == 1:
        flow(view, d.gap)
    else:
        p_hi = pitch_curved(view.most("Lp"), d.gap, d.gap / 2, tight, inside_lo)
        p_lo = pitch_curved(view.most_low("Lp"), d.gap, d.gap / 2, r_path, inside)
        set_flow(view, p_hi, p_lo)
    end = end_length(view, d)
    end_lo = max(d.level_end, view.most_low("Lp"))
    between = (lay.series - 1) * d.joint
    curves = (lay.lanes - 1) * pi * r_path
    width = plan_width(lay.lanes, lane, d)
    for hi, lo in view.sizes:
        for num, ends in ((hi, end), (lo, end_lo)) if lo is not hi else ((hi, end),):
            num.Wb, num.ri, num.r, num.runs = belt, inside, r_path if num is hi else tight, float(runs)
            num.th, num.th_curve, num.tilt_used, num.lanes = lay.slope, 0.0, lay.slope, float(lay.lanes)
            num.run = run_plan_length(num.rise, lay.slope) / runs
            num.s = num.rise / sin(lay.slope) / runs
            num.le = 2.0 * ends / runs + between / runs + curves / runs
            num.path = num.s * runs + 2.0 * ends + between + curves
            num.qb = d.belt_mass_per_area * belt
            num.fl_own = plan_length(num.run, lay, ends, lane, d)
        set_envelope(hi, lo, d, (hi.fl_own, lo.fl_own), (width, width))
        # A run goes by itself: what has to pass a door or ride a trailer is one of them.
        for num in (hi, lo) if lo is not hi else (hi,):
            num.piece_a, num.piece_b = belt + 2.0 * d.frame_margin, 1.0


def load_runs(view: View, lay: Layout, d: Limits) -> None:
    """Pull and power of the runs whose shape is filled in."""
    for hi, lo in view.sizes:
        straight_pull(view, hi, lo, d, hi.runs)


def _figures(view: View, lay: Runs, d: Limits) -> dict[str, float]:
    hi = view.sizes[0][0]
    slope = lay.slope * 180.0 / pi
    return {
        "slope": slope, "largest_tilt": slope, "belt_width": hi.Wb, "run_length": hi.run, "runs": hi.runs,
        "holding_pull": holding_pull(view, d),
    }  # fmt: skip


def _shape(view: View, lay: Runs, d: Limits) -> dict[str, float]:
    hi = view.sizes[0][0]
    return {
        "belt": hi.Wb, "inside": hi.ri, "lanes": float(lay.lanes), "series": float(lay.series), "run": hi.run,
        "end": end_length(view, d), "joint": d.joint, "frame": d.frame_margin,
        "heading": 180.0 if lay.lanes == 2 else 0.0,
    }  # fmt: skip


_STEEP = Row(
    id="slope", sense="at_most", unit="deg", body=lambda hi, lo, d: (hi.th * 180.0 / pi, max(d.slopes) * 180.0 / pi),
    formula="th*180/pi", reads=(), units={"th": "rad"}, source="range data",
)  # fmt: skip

_SWEPT = Row(
    id="width_curve", limit="Wb",
    sense="at_most", unit="m",
    body=lambda hi, lo, d: (width_in_curve(hi.ri, hi.W, hi.L) + 2.0 * d.side_clearance, lo.Wb),
    formula="sqrt((ri + W)^2 + (L/2)^2) - ri + 2*c", reads=("W", "L"), constants={"c": "side_clearance"},
    units={"ri": "m"}, source="Pythagoras: the outer corner of a load that touches the inside edge", each_size=True,
    applies=_has_curves,
)  # fmt: skip

INCLINE = Family(
    name="incline",
    gates=(hazard(), no_castors(), not_freezer(), washing(("dry", "wipe", "low_pressure", "high_pressure"))),
    before=before_layout(),
    variants=(
        Variant(name="one_line", gates=(), layouts=runs_on(1), headings=frozenset({0.0})),
        Variant(name="switchback_2", gates=(), layouts=runs_on(2), headings=frozenset({180.0})),
        Variant(name="switchback_3", gates=(), layouts=runs_on(3), headings=frozenset({0.0})),
    ),
    fill=_fill,
    rows=(
        width_row(), *speed_rows(), _STEEP, *room_rows(layout_reads=("L", "W", "rise")), slip_row(),
        tip_row(curved=False),
        crest_row(), curve_row(applies=_has_curves), tip_in_level_curve_row(_has_curves), _SWEPT, tilt_row(),
        *transfer_rows(),
    ),
    load=load_runs,
    load_rows=(*pull_rows(PULL_STRAIGHT, ("m", "L"), STRAIGHT_UNITS), power_row()),
    drive_group=lambda lay: (lay.lanes, lay.series),
    figures=_figures,
    shape=_shape,
    name_of=lambda lay: f"{lay.series}_in_line" if lay.lanes == 1 else f"switchback_{lay.lanes}_runs",
)  # fmt: skip
