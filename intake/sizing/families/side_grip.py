"""Side grip: two facing loops of soft grips; S path (delivered upright) or C path (turned over, going back)."""

from collections import Counter
from collections.abc import Iterator
from math import pi
from typing import NamedTuple

from intake.sizing.check_row import Gate, Row
from intake.sizing.drives import Drive, backs_up, derating, flow, motor_needed, over_directions, power_row, pull_rows
from intake.sizing.family import Family, Variant
from intake.sizing.job import Num, View
from intake.sizing.physics.friction import STANDARD_GRAVITY as G
from intake.sizing.physics.grip import bend_accel, grip_needed
from intake.sizing.physics.tension import loop_tensions
from intake.sizing.range_data import Limits
from intake.sizing.shared_checks import (
    CP,
    before_layout,
    hazard,
    kinds,
    not_freezer,
    room_rows,
    set_envelope,
    tilt_row,
    transfer_rows,
    washing,
)

_KINDS = (
    "case", "carton", "tray", "bundle", "bottle", "jar", "jug", "can", "canister", "tub", "pail", "tote", "crate",
    "keg",
    "other",
)  # fmt: skip
_SIDES = 2.0


class Path(NamedTuple):
    """A layout: the C path or the S path."""

    turned_over: bool


def _s_path(view: View, d: Limits, stopped: Counter[str]) -> Iterator[Path]:
    yield Path(False)


def _c_path(view: View, d: Limits, stopped: Counter[str]) -> Iterator[Path]:
    yield Path(True)


def _fill(view: View, lay: Path, d: Limits) -> None:
    flow(view, d.gap)
    widest_hi = view.most("W")
    widest_lo = view.most_low("W")
    narrowest = min(lo.W for _, lo in view.sizes)
    length_hi = _floor_length(lay, view.most("L"), view.most("H"), d)
    length_lo = _floor_length(lay, view.most_low("L"), view.most_low("H"), d)
    for hi, lo in view.sizes:
        for num, widest in ((hi, widest_hi), (lo, widest_lo)) if lo is not hi else ((hi, widest_hi),):
            num.th, num.tilt_used = 0.0, pi if lay.turned_over else pi / 2.0
            num.Rb, num.arc, num.le = d.bend_radius, d.bend_radius * pi / 2.0, d.level_end
            num.climb = max(0.0, num.rise - 2.0 * d.bend_radius)
            num.path = num.climb + 2.0 * (num.arc + num.le)
            num.open_least, num.open_most = narrowest - d.opening_play, widest + d.opening_play
            num.drives = 2.0
        _hold(hi, lo, d)
        width = (max(d.corridor_least, widest_hi + d.side_space), max(d.corridor_least, widest_lo + d.side_space))
        set_envelope(hi, lo, d, (length_hi, length_lo), width)


def _floor_length(lay: Path, length: float, height: float, d: Limits) -> float:
    """Plan length: both bends and ends in a row on the S path, one above the other on the C path [m]."""
    end = max(d.level_end, length)
    return float(d.bend_radius + end + height) if lay.turned_over else float(2.0 * (d.bend_radius + end))


def _hold(hi: Num, lo: Num, d: Limits) -> None:
    """Write the force on each side: midway between needed and allowed where both are known."""
    hi.ab = bend_accel(hi.v, d.bend_radius)
    hi.N_need = grip_needed(hi.m, max(lo.mu_grip, 1e-6), d.grip_safety, d.accel_greatest, hi.ab)
    allowed = lo.squeeze_limit
    hi.N = 0.5 * (hi.N_need + allowed) if hi.N_need < allowed < 4.0 * hi.N_need else hi.N_need


def _load(view: View, lay: Path, d: Limits) -> None:
    for hi, lo in view.sizes:
        derating(hi, lo, d)
        lo.rated = hi.rated = d.allowed_pull
        lo.allow, hi.allow = lo.rated * lo.derate, hi.rated * hi.derate
        _pull(view, hi, lo, d)


def _pull(view: View, hi: Num, lo: Num, d: Limits) -> None:
    drive = over_directions(view, lambda climbs: _loop(hi, hi.N / lo.p, hi.m / lo.p, d, climbs))
    tight_pitch = lo.L if backs_up(view) else lo.p
    backed = drive
    if tight_pitch != lo.p:
        backed = over_directions(view, lambda climbs: _loop(hi, hi.N / tight_pitch, hi.m / tight_pitch, d, climbs))
    hi.nl, hi.nl_bu, hi.w, hi.w_bu = hi.N / lo.p, hi.N / tight_pitch, hi.m / lo.p, hi.m / tight_pitch
    hi.Ts, hi.way, hi.pull, hi.shaft = drive.start, drive.sign, drive.greatest, drive.shaft
    hi.Tb, hi.way_bu, hi.pull_bu, hi.shaft_bu = backed.start, backed.sign, backed.greatest, backed.shaft
    hi.shaft_each = max((hi.shaft, hi.shaft_bu), key=abs) / _SIDES
    hi.motor_needed = motor_needed(hi.shaft_each, d)


def _loop(hi: Num, press: float, mass: float, d: Limits, climbs: bool) -> Drive:
    """One of the two loops: press [N/m] on it, half of the mass per length [kg/m]; shaft power of both."""
    sign = 1.0 if climbs else -1.0
    chain = d.chain_mass_per_m * G
    level = d.track_friction * (press + chain + mass * G / _SIDES)
    climb = d.track_friction * press + sign * (mass * G / _SIDES + chain)
    rub = d.bend_friction / d.bend_radius
    strands = (
        (-sign * chain, 0.0, hi.rise),
        (level, 0.0, hi.le),
        (climb, rub, hi.arc),
        (climb, 0.0, hi.climb),
        (climb, rub, hi.arc),
        (level, 0.0, hi.le),
    )
    loop = loop_tensions(strands, 5, d.take_up_tension)
    # On the arcs the lift is less than their length: what is counted too much there is within the bend's share.
    return Drive(loop.slack, loop.greatest, (loop.tight - loop.slack) * hi.v * _SIDES, sign)


def _pull_formula() -> str:
    """Tension at the six nodes of one loop."""
    chain, share = "qc*g", "w*g/2"
    level = f"mt*(nl + {chain} + {share})"
    climb = f"(mt*nl + way*({share} + {chain}))"
    grow = "exp(mb*pi/2)"
    bend = f"{climb}*(exp(mb*pi/2) - 1)*Rb/mb"
    n1 = f"(Ts - way*{chain}*rise)"
    n2 = f"({n1} + {level}*le)"
    n3 = f"({n2}*{grow} + {bend})"
    n4 = f"({n3} + {climb}*climb)"
    n5 = f"({n4}*{grow} + {bend})"
    n6 = f"({n5} + {level}*le)"
    return f"max(Ts, {n1}, {n2}, {n3}, {n4}, {n5}, {n6})"


_CONST = {"SF": "grip_safety", "a1": "accel_start", "a2": "accel_stop", "a3": "accel_power_loss"}
_NEED = "SF*m*(g + max(a1, a2, a3) + v^2/Rb)/(2*mu_grip)"
_UNITS = {
    "N": "N", "Ts": "N", "Tb": "N", "nl": "N/m", "nl_bu": "N/m", "w": "kg/m", "w_bu": "kg/m", "climb": "m", "le": "m",
    "Rb": "m", "way": "1", "way_bu": "1",
}  # fmt: skip
_PULL_CONST = {"qc": "chain_mass_per_m", "mt": "track_friction", "mb": "bend_friction"}

_GRIP = Row(
    id="grip", limit="N_need",
    sense="at_least", unit="N", body=lambda hi, lo, d: (hi.N, hi.N_need), formula="N",
    reads=("mu_grip", "m"), units=_UNITS,
    source="two-sided squeeze N = W/(2 mu): Cutnell and Johnson, Physics, 10th ed., ch. 4, P99", each_size=True,
)  # fmt: skip
_SQUEEZE = Row(
    id="squeeze_force", limit="squeeze_limit",
    sense="at_most", unit="N", body=lambda hi, lo, d: (hi.N_need, lo.squeeze_limit), formula=_NEED,
    reads=("mu_grip", "squeeze_limit", "m"), low=frozenset({"mu_grip"}), constants=_CONST, units=_UNITS,
    source="Cutnell and Johnson, Physics, ch. 4, P99: N = W/(2 mu); OpenStax, University Physics vol. 1, Ex. 6.3",
    each_size=True,
)  # fmt: skip
_OPENING = Row(
    id="opening", limit="width_most",
    sense="at_most", unit="m", body=lambda hi, lo, d: (hi.open_most, d.width_most), formula="open_most",
    reads=("W",), units={"open_most": "m"}, source="range data", each_size=True,
)  # fmt: skip
_OPENING_LEAST = Row(
    id="opening_least", limit="opening_least",
    sense="at_least", unit="m", body=lambda hi, lo, d: (lo.open_least, d.opening_least),
    formula="open_least", reads=("W",), low=frozenset({"open_least"}), source="range data", each_size=True,
)  # fmt: skip
_OPENING_SPAN = Row(
    id="opening_span", limit="opening_span",
    sense="at_most", unit="m",
    body=lambda hi, lo, d: (hi.open_most - hi.open_least, d.opening_span), formula="open_most - open_least",
    reads=("W",),
    source="range data: what the crank covers", each_size=True,
)  # fmt: skip
_RATE = Row(
    id="rate", limit="min(rate_most, speed_most/p)*60", limit_high=frozenset({"p"}),
    sense="at_most", unit="1/min",
    body=lambda hi, lo, d: (hi.R * 60.0, min(d.rate_most, d.speed_most / hi.p) * 60.0), formula="R*60",
    reads=("R", "L"),
    source="top speed over pitch; range data",
)  # fmt: skip
_SPEED = Row(
    id="speed", limit="speed_most",
    sense="at_most", unit="m/s", body=lambda hi, lo, d: (hi.v, d.speed_most), formula="R*p",
    reads=("R", "L"),
    source="flow: speed = rate x pitch",
)  # fmt: skip
_RISE_PATH = Row(
    id="rise_path", limit="2*bend_radius",
    sense="at_least", unit="m", body=lambda hi, lo, d: (lo.rise, 2.0 * d.bend_radius), formula="rise",
    reads=("rise",), low=frozenset({"rise"}), source="two bends have to fit into the rise",
)  # fmt: skip


_HELD = Gate(
    id="squeeze", reads=("squeeze",), accept=lambda held: held is True, limit="may be held by its sides", source=CP
)
_FIRM = Gate(
    id="rigidity",
    reads=("rigidity",),
    accept=lambda r: r in ("rigid", "semi_rigid"),
    limit="rigid or semi_rigid",
    source=CP,
)
_KEEPS = Gate(
    id="closed", reads=("closed", "fill"), accept=lambda closed, fill: closed is True or fill == "empty",
    limit="closed, or empty", source="common practice, no source: full open products spill on either path",
)  # fmt: skip
_ONE_WIDTH = Gate(id="mix", reads=("mix",), accept=lambda mix: mix != "mixed", limit="one width at a time", source=CP)
_MAY_TURN_OVER = Gate(
    id="turning_over", reads=("invert",), accept=lambda turned: turned is True, limit="may be turned over", source=CP
)


def _holding_pull(hi: Num, d: Limits) -> float:
    """Pull at one loop when power is lost: half of the products' weight, less the friction under the grips [N]."""
    return float(max(0.0, hi.w_bu * G / _SIDES * hi.rise - d.track_friction * hi.nl_bu * hi.path))


def _figures(view: View, lay: Path, d: Limits) -> dict[str, float]:
    hi = view.sizes[0][0]
    return {
        "holding_pull": max(_holding_pull(one, d) for one, _ in view.sizes),
        "slope": 0.0, "largest_tilt": 180.0 if lay.turned_over else 90.0,
        "grip_force": max(num.N for num, _ in view.sizes), "opening_least": hi.open_least, "opening_most": hi.open_most,
        "discharge_turn": 180.0 if lay.turned_over else 0.0, "turned_over": 1.0 if lay.turned_over else 0.0,
    }  # fmt: skip


def _shape(view: View, lay: Path, d: Limits) -> dict[str, float]:
    return {
        "bend": d.bend_radius, "end": max(d.level_end, view.most("L")), "turned_over": float(lay.turned_over),
        "heading": 180.0 if lay.turned_over else 0.0,
    }  # fmt: skip


SIDE_GRIP = Family(
    name="side_grip",
    gates=(
        hazard(), not_freezer(), washing(("dry", "wipe", "low_pressure", "high_pressure")), kinds(_KINDS), _HELD,
        _FIRM, _KEEPS,
        _ONE_WIDTH,
    ),
    before=(*before_layout(), _RISE_PATH),
    variants=(
        Variant(name="s_path", gates=(), layouts=_s_path, headings=frozenset({0.0})),
        Variant(name="c_path", gates=(_MAY_TURN_OVER,), layouts=_c_path, headings=frozenset({180.0})),
    ),
    fill=_fill,
    rows=(
        _OPENING, _OPENING_LEAST, _OPENING_SPAN, _SPEED, _RATE, *room_rows(layout_reads=("L", "W")), _SQUEEZE, _GRIP,
        tilt_row(), *transfer_rows(),
    ),
    load=_load,
    load_rows=(
        *pull_rows(
            _pull_formula(), ("m", "L", "mu_grip"), _UNITS, constants=_PULL_CONST,
            source="rope friction exp(mu phi) at each bend: Baker and Haynes, Engineering Statics, sec. 9.5",
        ),
        power_row(),
    ),
    figures=_figures,
    shape=_shape,
    name_of=lambda lay: "c_path" if lay.turned_over else "s_path",
)  # fmt: skip
