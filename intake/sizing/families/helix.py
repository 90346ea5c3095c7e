"""The two spirals: a belt climbing a helix, with one drive (`spiral`) or driven at each tier (`washdown_spiral`)."""

from collections.abc import Iterator
from functools import cache
from math import ceil, cos, floor, inf, pi, tan
from typing import NamedTuple

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
from intake.sizing.family import Family, Variant
from intake.sizing.job import Num, View
from intake.sizing.physics.flow import pitch_curved
from intake.sizing.physics.friction import STANDARD_GRAVITY as G
from intake.sizing.physics.helix import slope_of, width_in_curve
from intake.sizing.physics.tension import guide_rate
from intake.sizing.range_data import Limits
from intake.sizing.shared_checks import (
    before_layout,
    hazard,
    not_freezer,
    room_rows,
    set_envelope,
    tilt_row,
    transfer_row,
    washing,
)
from intake.sizing.stability import accel, curve_row, slip_row, tip_row

_MOST_TURNS = 24
_WASHDOWN = "washdown_spiral"


class Helix(NamedTuple):
    """A layout: turns, hand (1 clockwise seen from above, -1 the other way), inside radius and belt width [m]."""

    turns: float
    hand: int
    inside: float
    belt: float
    belt_index: int


@cache
def _frames(
    family: str, widths: tuple[float, ...], factor: float, least: float, most: float, step: float, coarse: bool
) -> tuple[tuple[float, float, int], ...]:
    """Every inside radius and belt width of the range, the smallest floor first; coarse: three radii a width."""
    found = []
    for index, width in enumerate(widths):
        start = max(least, factor * width)
        count = floor((most - start) / step + 1e-9)
        steps = sorted({0, count // 3, count}) if coarse else range(count + 1)
        found += [(start + n * step, width, index) for n in steps]
    return tuple(sorted(found, key=lambda frame: (frame[0] + frame[1], frame[1])))


def _layouts(view: View, d: Limits) -> Iterator[Helix]:
    """Frames by floor, smallest first, each with the turns that may pass; at least one layout, to show what stops it.

    Bounds drop what cannot pass before it is laid out: width in the curve, floor, slope by range and by friction.
    """
    frames = _frames(
        d.family,
        d.belt_widths,
        d.inside_radius_per_belt_width,
        d.least_inside_radius,
        d.largest_inside_radius,
        d.inside_radius_step,
        view.quick,
    )
    hi, lo = view.sizes[0]
    room = min(lo.lx, lo.ly)
    tier = max(one.H for one, _ in view.sizes) + d.tier_structure + d.tier_clearance
    most_turns = max(1.0, lo.rise / tier)
    steepest = min(tan(d.slope_most), _steepest_by_friction(view, d))
    fallback: Helix | None = None
    for inside, belt, index in frames:
        if any(width_in_curve(inside, one.W, one.L) + d.edge_clearance > belt + 1e-9 for one, _ in view.sizes):
            continue
        if fallback is None:
            least = hi.rise / (pi * (2 * inside + belt) * tan(d.slope_most))
            fallback = Helix(max(1.0, float(ceil(least))), 1, inside, belt, index)
        if 2 * (inside + belt + d.frame_margin) > room + 1e-9:
            break
        if steepest > 0.0:
            least = hi.rise / (pi * (2 * inside + belt) * steepest)
            for turns, hand in _turns(view.options["turn"], least, most_turns):
                yield Helix(turns, hand, inside, belt, index)
    if fallback is None:  # not even the widest belt takes the product: let that be what stops it
        inside, belt, index = frames[-1]
        fallback = Helix(1.0, 1, inside, belt, index)
    yield _with_heading(fallback, view.options["turn"])


def _steepest_by_friction(view: View, d: Limits) -> float:
    """Tangent of a slope above which the product surely slips: mu / SF - a / g, without the curve [-]."""
    return float(min(lo.mu for _, lo in view.sizes) / d.slip_safety - accel(d) / G)


def _turns(headings: tuple[object, ...], least: float, most: float) -> list[tuple[float, int]]:
    """Turns from `least` to `most` that give a heading, by either hand, fewest first."""
    found: set[tuple[float, int]] = set()
    for heading in headings:
        degrees = float(heading)  # type: ignore[arg-type]  # headings are floats
        for hand, part in ((1, degrees / 360.0), (-1, (360.0 - degrees) % 360.0 / 360.0)):
            whole = max(0, ceil(least - part - 1e-9))
            if whole + part <= 0.0:
                whole += 1
            while whole + part <= min(most, _MOST_TURNS) + 1e-9:
                found.add((whole + part, hand))
                whole += 1
    return sorted(found)[:12]


def _with_heading(layout: Helix, headings: tuple[object, ...]) -> Helix:
    """The layout with its turns raised to the next that gives the first heading."""
    part = float(headings[0]) / 360.0  # type: ignore[arg-type]  # headings are floats
    return layout._replace(turns=ceil(layout.turns - part - 1e-9) + part)


def _fill(view: View, lay: Helix, d: Limits) -> None:
    r_path = lay.inside + lay.belt / 2.0
    diameter = 2.0 * r_path
    outside = 2.0 * (lay.inside + lay.belt + d.frame_margin)
    p_hi = max(pitch_curved(hi.Lp, d.gap, d.least_gap, r_path, lay.inside) for hi, _ in view.sizes)
    p_lo = max(pitch_curved(lo.Lp, d.gap, d.least_gap, r_path, lay.inside) for _, lo in view.sizes)
    set_flow(view, p_hi, p_lo)
    for hi, lo in view.sizes:
        for num in (hi, lo) if lo is not hi else (hi,):
            num.n, num.D, num.r, num.ri, num.Wb = lay.turns, diameter, r_path, lay.inside, lay.belt
            num.tiers = max(1.0, float(ceil(lay.turns - 1e-9)))
            num.P = num.rise / lay.turns
            num.th = num.th_curve = slope_of(diameter, num.P)
            num.tilt_used = num.th
            num.s = lay.turns * pi * diameter / cos(num.th)
            num.le = 2.0 * d.level_end
            num.path = num.s + num.le
            num.qb = d.belt_mass_per_area * lay.belt
            num.B = guide_rate(d.guide_friction, num.th, r_path)
        set_envelope(hi, lo, d, (outside, outside), (outside, outside))


def _load(view: View, lay: Helix, d: Limits) -> None:
    rated = d.allowed_pull_by_width[lay.belt_index]
    for hi, lo in view.sizes:
        derating(hi, lo, d)
        lo.allow, hi.allow = rated * lo.derate, rated * hi.derate
        _pull(view, hi, lo, d)


def _pull(view: View, hi: Num, lo: Num, d: Limits) -> None:
    hi.q = hi.qb + hi.m / lo.p
    hi.q_bu = hi.qb + hi.m / lo.L if backs_up(view) else hi.q
    drive = over_directions(view, lambda climbs: _drive(hi, hi.q, d, climbs))
    backed = over_directions(view, lambda climbs: _drive(hi, hi.q_bu, d, climbs))
    hi.Ts, hi.way, hi.pull, hi.shaft = drive.start, drive.sign, drive.greatest, drive.shaft
    hi.Tb, hi.pull_bu, hi.shaft_bu = backed.start, backed.greatest, backed.shaft
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
    back = hi.qb * G * (d.belt_friction * cos(hi.th)) * hi.s * hi.v
    sign = 1.0 if climbs else -1.0
    weight_given_back = -sign * hi.qb * G * hi.rise * hi.v
    return Drive(tier.start, tier.greatest, tier.shaft * tiers + back + weight_given_back, tier.sign)


_WIDTH = Row(
    id="width", sense="at_most", unit="m",
    body=lambda hi, lo, d: (width_in_curve(hi.ri, hi.W, hi.L) + d.edge_clearance, lo.Wb),
    formula="sqrt((ri + W)^2 + (L/2)^2) - ri + c", reads=("W", "L"), constants={"c": "edge_clearance"},
    source="Pythagoras: the outer corner of a load that touches the inside edge", each_size=True,
)  # fmt: skip

_SLOPE = Row(
    id="slope", sense="at_most", unit="deg", body=lambda hi, lo, d: (hi.th * 180.0 / pi, d.slope_most * 180.0 / pi),
    formula="atan(P/(pi*D))*180/pi", reads=("rise",), source="OpenStax, Calculus vol. 3, sec. 3.3 (helix)",
)  # fmt: skip

_TIER = Row(
    id="tier_clearance", sense="at_least", unit="m",
    body=lambda hi, lo, d: (lo.P if lo.n > 1.0 + 1e-9 else inf, hi.H + d.tier_structure + d.tier_clearance),
    formula="P", reads=("H", "rise"), low=frozenset({"P"}), source="geometry of the layout", each_size=True,
)  # fmt: skip

_SPEED = Row(
    id="speed", sense="at_most", unit="m/s", body=lambda hi, lo, d: (hi.v, d.speed_most), formula="R*p",
    reads=("R", "L"),
    source="flow: speed = rate x pitch (as T x v of a belt load; Krishnaswamy, Industrial Instrumentation, Ex. 5.15)",
)  # fmt: skip

_RATE = Row(
    id="rate", sense="at_most", unit="1/min", body=lambda hi, lo, d: (hi.R * 60.0, d.speed_most / hi.p * 60.0),
    formula="R*60", reads=("R", "L"), source="top belt speed over pitch",
)  # fmt: skip

_UNITS = {
    "Ts": "N", "Tb": "N", "qb": "kg/m", "q": "kg/m", "q_bu": "kg/m", "th": "rad", "s": "m", "le": "m", "B": "1/m",
    "way": "1", "P": "m", "D": "m", "ri": "m", "Wb": "m", "n": "1",
}  # fmt: skip


def _tier_formula(q: str, start: str) -> str:
    one = "(s/tiers)"
    climb = f"{q}*g*(mus*cos(th) + way*sin(th))"
    end = f"{start}*exp(B*{one}) + {climb}*(exp(B*{one}) - 1)/B"
    return f"max({start}, {end}, {end} + {q}*g*mus*le/tiers)"


def _family(name: str) -> Family:
    per_tier = name == _WASHDOWN
    allowed_zone = ("ambient",) if per_tier else ("chilled", "ambient", "hot")
    wash = ("dry", "wipe", "low_pressure")
    if per_tier:
        pull = pull_rows(_tier_formula("q", "Ts"), _tier_formula("q_bu", "Tb"), ("m", "L"), {**_UNITS, "tiers": "1"})
    else:
        running = PULL_HELIX.format(q="q")
        backed = PULL_HELIX.format(q="q_bu").replace("Ts", "Tb")
        pull = pull_rows(running, backed, ("m", "L"), _UNITS)
    return Family(
        name=name,
        gates=(
            hazard(),
            not_freezer(allowed_zone),
            washing((*wash, "high_pressure", "clean_in_place") if per_tier else wash),
        ),
        before=before_layout(),
        variants=(Variant(name="helix", gates=(), layouts=_layouts, headings=None),),
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
            transfer_row(),
        ),
        load=_load,
        load_rows=(*pull, power_row()),
        drive_group=lambda lay: (lay.inside, lay.belt),
        figures=_figures,
        name_of=lambda lay: f"{lay.turns:g}_turns_{'clockwise' if lay.hand > 0 else 'anticlockwise'}",
    )  # fmt: skip


def _figures(view: View, lay: Helix, d: Limits) -> dict[str, float]:
    hi = view.sizes[0][0]
    return {
        "turns": lay.turns, "rise_per_turn": hi.P, "path_diameter": hi.D, "belt_width": lay.belt,
        "outside_diameter": 2.0 * (lay.inside + lay.belt), "slope": hi.th * 180.0 / pi,
        "largest_tilt": hi.th * 180.0 / pi,
    }  # fmt: skip


SPIRAL = _family("spiral")
WASHDOWN_SPIRAL = _family(_WASHDOWN)
