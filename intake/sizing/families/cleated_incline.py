"""Cleated incline: a steep belt with cleats that the product lies or leans on."""

from math import inf, pi

from intake.sizing.check_row import Gate, Row
from intake.sizing.drives import PULL_STRAIGHT, power_row, pull_rows, set_flow
from intake.sizing.families.cover_belt import Steep, fill_straight, steep_layouts, straight_shape
from intake.sizing.families.incline import (
    STRAIGHT_UNITS,
    holding_pull,
    load_runs,
    speed_rows,
    width_row,
)
from intake.sizing.families.incline_search import belt_for
from intake.sizing.family import Family, Variant
from intake.sizing.job import Num, View
from intake.sizing.physics.cleats import cleat_height_needed, leans_over
from intake.sizing.range_data import Limits
from intake.sizing.shared_checks import (
    CP,
    before_layout,
    hazard,
    kinds,
    no_castors,
    not_freezer,
    room_rows,
    tilt_row,
    transfer_rows,
    washing,
)

_KINDS = ("pouch", "bag", "carton", "case", "bundle", "tray", "tub", "other")


def _fill(view: View, lay: Steep, d: Limits) -> None:
    height = cleat_height_needed(view.most("H"), d.cleat_share)
    cleat = next((c for c in d.cleat_heights if c >= height - 1e-9), d.cleat_heights[-1])
    step = d.gap + d.cleat_thickness
    set_flow(view, view.most("Lp") + step, view.most_low("Lp") + step)
    belt = belt_for(view, d)
    for hi, lo in view.sizes:
        for num in (hi, lo) if lo is not hi else (hi,):
            num.cleat, num.qb = cleat, d.belt_mass_per_area * belt
    fill_straight(view, lay.slope, d, belt)


def _lean(hi: Num, lo: Num, d: Limits) -> tuple[float, float]:
    return cleat_height_needed(hi.H, d.cleat_share), lo.cleat


_CLEAT = Row(
    id="cleat_height", limit="cleat",
    sense="at_most", unit="m", body=_lean, formula="share*H", reads=("H",),
    constants={"share": "cleat_share"}, source="common practice, no source: a share of the product's height",
    each_size=True,
)  # fmt: skip


def _leans(hi: Num, lo: Num, d: Limits) -> tuple[float, float]:
    return leans_over(hi.th, hi.h, lo.b), inf if lo.tilt >= pi / 2.0 else 1.0


_LEAN = Row(
    id="lean", sense="at_most", unit="1", body=_leans, formula="tan(th)*h/(b/2)", reads=("h", "b", "tilt"),
    low=frozenset({"b"}), units={"th": "rad"},
    source="OpenStax, University Physics vol. 1, sec. 12.1: it keeps standing, or it may lean on the cleat below it",
    each_size=True,
)  # fmt: skip
_LONGEST = Row(
    id="length", limit="length_most",
    sense="at_most", unit="m", body=lambda hi, lo, d: (hi.L, d.length_most), formula="L", reads=("L",),
    source="range data", each_size=True,
)  # fmt: skip
_TALLEST = Row(
    id="height", limit="height_most",
    sense="at_most", unit="m", body=lambda hi, lo, d: (hi.H, d.height_most), formula="H", reads=("H",),
    source="range data", each_size=True,
)  # fmt: skip
_CLOSED = Gate(id="closed", reads=("closed",), accept=lambda closed: closed is True, limit="closed", source=CP)
_STANDS_ROUND = Row(
    id="round", limit="0.5",
    sense="at_most", unit="1",
    body=lambda hi, lo, d: (hi.rnd * hi.H / lo.L, 0.5), formula="rnd*H/L", reads=("H", "L", "rnd"),
    low=frozenset({"L"}),
    source="common practice, no source: what is round and stands up falls against a cleat", each_size=True,
)  # fmt: skip


def _figures(view: View, lay: Steep, d: Limits) -> dict[str, float]:
    hi = view.sizes[0][0]
    slope = lay.slope * 180.0 / pi
    return {
        "slope": slope, "largest_tilt": slope, "belt_width": hi.Wb, "run_length": hi.run, "runs": 1.0,
        "holding_pull": holding_pull(view, d),
        "cleat_pitch": hi.p,
    }  # fmt: skip


def _shape(view: View, lay: Steep, d: Limits) -> dict[str, float]:
    hi = view.sizes[0][0]
    return {**straight_shape(view, lay, d), "cleat": hi.cleat, "cleat_pitch": hi.p}


CLEATED_INCLINE = Family(
    name="cleated_incline",
    gates=(
        hazard(), no_castors(), not_freezer(), washing(("dry", "wipe", "low_pressure", "high_pressure")), kinds(_KINDS),
        _CLOSED,
    ),
    before=(*before_layout(), _LONGEST, _TALLEST, _STANDS_ROUND),
    variants=(Variant(name="straight", gates=(), layouts=steep_layouts, headings=frozenset({0.0})),),
    fill=_fill,
    rows=(
        width_row(), *speed_rows(), *room_rows(layout_reads=("L", "W", "rise")), _CLEAT, _LEAN, tilt_row(),
        *transfer_rows(),
    ),
    load=load_runs,
    load_rows=(*pull_rows(PULL_STRAIGHT, ("m", "L"), STRAIGHT_UNITS), power_row()),
    figures=_figures,
    shape=_shape,
    name_of=lambda lay: f"straight_{lay.slope * 180.0 / pi:.0f}_deg",
)  # fmt: skip
