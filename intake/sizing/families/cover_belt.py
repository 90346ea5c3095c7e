"""Cover belt: an unpowered belt draped on the product over a high-friction lower belt, steep and straight."""

from collections import Counter
from collections.abc import Iterator
from math import inf, pi, sin
from typing import NamedTuple

from intake.sizing.check_row import Gate, Row, as_good_as
from intake.sizing.drives import PULL_STRAIGHT, flow, power_row, pull_rows
from intake.sizing.families.incline import (
    STRAIGHT_UNITS,
    holding_pull,
    speed_rows,
    straight_pull,
    width_row,
)
from intake.sizing.families.incline_search import belt_for, end_length
from intake.sizing.family import Family, Variant
from intake.sizing.job import Num, View
from intake.sizing.physics.cover import cover_force, cover_needed_ratio
from intake.sizing.physics.envelope import run_plan_length
from intake.sizing.physics.friction import steepest_slope
from intake.sizing.range_data import Limits
from intake.sizing.shared_checks import (
    CP,
    before_layout,
    hazard,
    kinds,
    no_castors,
    not_freezer,
    room_rows,
    set_envelope,
    tilt_row,
    transfer_rows,
    washing,
)
from intake.sizing.stability import crest_row, crest_step, footing, tip_row

BOXES = ("case", "carton", "tray", "bundle", "tote", "crate", "other")
_ENDS_EACH = 2.0


class Steep(NamedTuple):
    """A layout: the slope [rad]."""

    slope: float


def steep_layouts(view: View, d: Limits, stopped: Counter[str]) -> Iterator[Steep]:
    """The slopes of the range, the steepest (least floor) first.

    One of many samples only asks whether a layout passes: those that have no room on the floor are then left out.
    """
    hi, lo = view.sizes[0]
    end = end_length(view, d) if view.quick else 0.0
    for slope in d.slopes:
        if not view.quick or as_good_as(run_plan_length(hi.rise, slope) + _ENDS_EACH * end, lo.lx, True):
            yield Steep(slope)


def _covered_layouts(view: View, d: Limits, stopped: Counter[str]) -> Iterator[Steep]:
    """Those that the product takes at the crest and stands on; the flattest always, to show what stops it."""
    most, by = inf, "crest"
    for hi, lo in view.sizes:
        stands = steepest_slope(footing(hi, lo, d), d.accel_greatest)
        most, by = min((most, by), (d.crest_steps * crest_step(hi, lo, d), "crest"), (stands, "tip"))
    for lay in steep_layouts(view, d, stopped):
        if lay.slope <= most + 1e-9 or lay.slope == d.slopes[-1]:
            yield lay
        else:
            stopped[by] += 1


def fill_straight(view: View, slope: float, d: Limits, belt: float) -> None:
    """Write the geometry and envelope of one straight run at a slope."""
    end = end_length(view, d)
    end_lo = max(d.level_end, view.most_low("Lp"))
    width = belt + 2.0 * d.frame_margin
    for hi, lo in view.sizes:
        for num, ends in ((hi, end), (lo, end_lo)) if lo is not hi else ((hi, end),):
            num.Wb, num.th, num.tilt_used = belt, slope, slope
            num.run, num.s, num.le = run_plan_length(num.rise, slope), num.rise / sin(slope), _ENDS_EACH * ends
            num.path, num.runs = num.s + num.le, 1.0
            num.fl_own = num.run + _ENDS_EACH * ends
        set_envelope(hi, lo, d, (hi.fl_own, lo.fl_own), (width, width))
        for num in (hi, lo) if lo is not hi else (hi,):
            num.piece_a, num.piece_b = width, 1.0


def straight_shape(view: View, lay: Steep, d: Limits) -> dict[str, float]:
    """What a drawing of one straight run needs."""
    hi = view.sizes[0][0]
    return {
        "belt": hi.Wb, "lanes": 1.0, "series": 1.0, "run": hi.run, "end": end_length(view, d), "joint": 0.0,
        "frame": d.frame_margin, "heading": 0.0,
    }  # fmt: skip


def _fill(view: View, lay: Steep, d: Limits) -> None:
    flow(view, d.gap)
    belt = belt_for(view, d)
    for hi, lo in view.sizes:
        for num in (hi, lo) if lo is not hi else (hi,):
            num.wc = d.cover_mass_per_m2 * belt * 9.80665
            # The cover rests on the product and bridges the gap: its weight over one pitch lies on one product.
            num.nc = cover_force(num.wc, num.p, lay.slope, d.hold_down)
            num.qb = d.belt_mass_per_area * belt
    fill_straight(view, lay.slope, d, belt)


def _load(view: View, lay: Steep, d: Limits) -> None:
    """What the cover presses on rubs on the bed, and the cover is dragged along: both on the slope alone."""
    share = d.belt_friction + d.cover_drag
    for hi, lo in view.sizes:
        close = cover_force(hi.wc, lo.L, lay.slope, d.hold_down)
        straight_pull(view, hi, lo, d, 1.0, (share * hi.nc / lo.p, share * close / lo.L))


def _hold(hi: Num, lo: Num, d: Limits) -> tuple[float, float]:
    # The heavier the product, the less the cover adds: high is worse.
    return cover_needed_ratio(hi.m, hi.th, d.accel_greatest, lo.nc, d.cover_drag, d.slip_safety), lo.mu_high


_HOLD = Row(
    id="slip", limit="mu_high",
    sense="at_most", unit="1", body=_hold,
    formula="SF*(m*(g*sin(th) + max(a1, a2, a3)) + cr*nc)/(m*g*cos(th) + nc)", reads=("mu_high", "m"),
    low=frozenset({"nc"}), constants={
        "SF": "slip_safety", "a1": "accel_start", "a2": "accel_stop", "a3": "accel_power_loss", "cr": "cover_drag",
    },
    units={"th": "rad", "nc": "N", "m": "kg"},
    source="pressing harder also drags more: Tayal, Engineering Mechanics, Ex. 6.1 (inputs from the book, recomputed)",
    each_size=True,
)  # fmt: skip

_PRESS = Row(
    id="press", limit="press_most",
    sense="at_most", unit="Pa", body=lambda hi, lo, d: (hi.nc / (lo.L * lo.W), d.press_most),
    formula="nc/(L*W)", reads=("L", "W", "press_top"), low=frozenset({"L", "W"}), units={"nc": "N"},
    source="force over area; range data", each_size=True,
)  # fmt: skip

_TOP = Gate(
    id="press_top",
    reads=("press_top",),
    accept=lambda bears: bears is True,
    limit="a flat, firm, closed top",
    source=CP,
)
_FIRM = Gate(
    id="rigidity",
    reads=("rigidity",),
    accept=lambda r: r in ("rigid", "semi_rigid"),
    limit="rigid or semi_rigid",
    source=CP,
)
_PACKED = Gate(id="exposed_food", reads=("food",), accept=lambda bare: bare is False, limit="no bare food", source=CP)
_CLOSED = Gate(
    id="closed", reads=("closed", "type"), accept=lambda closed, kind: closed is True or kind == "bundle",
    limit="closed", source=CP,
)  # fmt: skip
_NOT_ROUND = Row(
    id="round", limit="0",
    sense="at_most", unit="1", body=lambda hi, lo, d: (hi.rnd, 0.0), formula="rnd", reads=("rnd",),
    source="common practice, no source: round products roll under a cover", each_size=True,
)  # fmt: skip


def _figures(view: View, lay: Steep, d: Limits) -> dict[str, float]:
    hi = view.sizes[0][0]
    slope = lay.slope * 180.0 / pi
    return {
        "slope": slope, "largest_tilt": slope, "belt_width": hi.Wb, "run_length": hi.run, "runs": 1.0,
        "holding_pull": holding_pull(view, d),
        "cover_force": max(num.nc for num, _ in view.sizes),
    }  # fmt: skip


COVER_BELT = Family(
    name="cover_belt",
    gates=(
        hazard(), no_castors(), not_freezer(), washing(("dry", "wipe", "low_pressure", "high_pressure")), kinds(BOXES),
        _CLOSED, _PACKED, _FIRM, _TOP,
    ),
    before=(*before_layout(), _NOT_ROUND),
    variants=(Variant(name="straight", gates=(), layouts=_covered_layouts, headings=frozenset({0.0})),),
    fill=_fill,
    rows=(
        width_row(), *speed_rows(), *room_rows(layout_reads=("L", "W", "rise")), _HOLD, _PRESS, tip_row(curved=False),
        crest_row(), tilt_row(), *transfer_rows(),
    ),
    load=_load,
    load_rows=(*pull_rows(PULL_STRAIGHT, ("m", "L"), STRAIGHT_UNITS), power_row()),
    figures=_figures,
    shape=straight_shape,
    name_of=lambda lay: f"straight_{lay.slope * 180.0 / pi:.0f}_deg",
)  # fmt: skip
