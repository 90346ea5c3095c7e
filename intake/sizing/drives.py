"""Belts and chains as loops: pitch and speed of the flow, tensions in both directions, allowed pull, motors."""

from collections.abc import Callable, Mapping
from functools import lru_cache
from math import inf
from re import sub
from typing import NamedTuple

from intake.sizing.check_row import Row
from intake.sizing.job import Num, View
from intake.sizing.physics.flow import belt_speed, pitch_straight
from intake.sizing.physics.power import IEC_KW, NEMA_HP, motor_power_needed, next_motor, shaft_power
from intake.sizing.physics.tension import carry_gain, loop_tensions
from intake.sizing.range_data import Limits
from intake.sizing.unknowns import BEST, LIKELY

_LEAST_SHARE = 0.05
"""Derating by warmth or speed never takes more than this leaves."""


_BED = {"mus": "belt_friction"}
_LOOP = "tensions followed round the loop, order of work as in ISO 5048 (from memory); range data"


class Drive(NamedTuple):
    """One drive running steadily: start (where the belt leaves the drive), greatest tension [N], shaft power [W]."""

    start: float
    greatest: float
    shaft: float
    sign: float


def flow(view: View, floor_gap: float) -> None:
    """Write pitch p [m] and speed v [m/s]: one belt, so one pitch, that of the longest product."""
    set_flow(view, pitch_straight(view.most("Lp"), floor_gap), pitch_straight(view.most_low("Lp"), floor_gap))


def set_flow(view: View, p_hi: float, p_lo: float) -> None:
    """Write pitch and speed for all sizes."""
    for hi, lo in view.sizes:
        hi.p, hi.v = p_hi, belt_speed(hi.R, p_hi)
        if lo is not hi:
            lo.p, lo.v = p_lo, belt_speed(lo.R, p_lo)


def over_directions(view: View, make: Callable[[bool], Drive]) -> Drive:
    """The drive for the way that counts: the worse of those plausible, the better of those possible."""
    words = view.options["direction"]
    if len(words) == 1 and words[0] != "both":
        return make(words[0] == "up")
    drives: list[Drive] = []
    for word in words:
        if word == "both":
            drives.append(max(make(True), make(False), key=_burden))
        else:
            drives.append(make(word == "up"))
    choose = min if view.mode in (BEST, LIKELY) else max
    return choose(drives, key=_burden)


def _burden(drive: Drive) -> float:
    return drive.greatest


@lru_cache(maxsize=4096)  # the same layout is driven alike in many completions, and again for its record
def belt_drive(
    *, load: float, back: float, slope: float, friction: float, guide: float, length: float, level: float,
    least: float, speed: float, climbs: bool, press: float = 0.0,
) -> Drive:  # fmt: skip
    """A belt loop: back along the level ends and the slope, up (or down) it loaded, along the level ends, to the drive.

    load, back: weight per length of the loaded and the empty belt [N/m]. guide: B of the helix [1/m], 0 if straight.
    press: friction per length of the slope from what presses on the load [N/m].
    """
    strands = (
        (back * friction, 0.0, level),
        (carry_gain(back, slope, friction, not climbs), 0.0, length),
        (carry_gain(load, slope, friction, climbs) + press, guide, length),
        (load * friction, 0.0, level),
    )
    loop = loop_tensions(strands, 3, least)
    return Drive(loop.slack, loop.greatest, shaft_power(loop.tight, loop.slack, speed), 1.0 if climbs else -1.0)


_FOOT = "(Ts + qb*g*mus*le + qb*g*(mus*cos(th) - way*sin(th))*s)"
_CLIMB = "(q*g*(mus*cos(th) + way*sin(th)) + press)"
_HEAD = f"({_FOOT}*exp(B*s) + {_CLIMB}*(exp(B*s) - 1)/B)"

PULL_STRAIGHT = (
    f"max(Ts, Ts + qb*g*mus*le, {_FOOT}, {_FOOT} + {_CLIMB}*s, {_FOOT} + {_CLIMB}*s + q*g*mus*le)"
)  # fmt: skip
"""Tension at the nodes of a straight loop [N]; qb and q are masses per length [kg/m]."""

PULL_HELIX = f"max(Ts, Ts + qb*g*mus*le, {_FOOT}, {_HEAD}, {_HEAD} + q*g*mus*le)".replace(" + press", "")
"""The same with the guide of a helix on the loaded strand."""


_BACKED_UP = {"Ts": "Tb", "way": "way_bu", "press": "press_bu", "q": "q_bu", "nl": "nl_bu", "w": "w_bu"}


def backed_up(formula: str) -> str:
    """The formula of a pull with the figures of products that touch in place of those that run."""
    return sub(r"[A-Za-z_]\w*", lambda found: _BACKED_UP.get(found[0], found[0]), formula)


def derating(hi: Num, lo: Num, d: Limits) -> None:
    """Write the share of the rated pull that is allowed here: temperature, speed, hours."""
    lo.derate = derated(hi.troom, hi.v, hi.hours, d)
    if lo is not hi:
        hi.derate = derated(lo.troom, lo.v, lo.hours, d)


def derated(room: float, speed: float, hours: float, d: Limits) -> float:
    """Share of the rated pull that a belt or chain may carry in a room [K], at a speed [m/s], for hours a day."""
    share = 1.0
    if room > d.temperature_derating_from:
        share = max(_LEAST_SHARE, 1.0 - (room - d.temperature_derating_from) * d.temperature_derating_per_k)
    if speed > d.speed_derating_from:
        share *= max(_LEAST_SHARE, 1.0 - (speed - d.speed_derating_from) * d.speed_derating_per_m_s)
    return float(share / d.service_factor_long) if hours > d.service_hours_full else share


def backs_up(view: View) -> bool:
    """True when product standing against a stopped outlet has to be reckoned with."""
    words = view.options["backs_up"]
    return any(words) if view.every else all(words)


def pull_rows(
    formula: str,
    reads: tuple[str, ...],
    units: dict[str, str],
    *,
    constants: Mapping[str, str] = _BED,
    source: str = _LOOP,
) -> tuple[Row, ...]:
    """Pull while running and with product backed up, against the allowed pull `allow` of the layout."""
    reads = (*reads, "R", "troom", "hours")  # what is allowed depends on speed, warmth and hours
    return (
        Row(
            id="pull", limit="rated*derate",
            sense="at_most", unit="N", body=lambda hi, lo, d: (hi.pull, lo.allow), formula=formula,
            reads=reads, constants=constants, units=units, each_size=True,
            source=source,
        ),
        Row(
            id="pull_backed_up", limit="rated*derate",
            sense="at_most", unit="N", body=lambda hi, lo, d: (hi.pull_bu, lo.allow),
            formula=backed_up(formula), reads=(*reads, "backs_up"), constants=constants, units=units, each_size=True,
            source="as pull, products touching: p = L",
        ),
    )  # fmt: skip


def power_row(reads: tuple[str, ...] = ("m", "R", "rise")) -> Row:
    """Motor needed, at the shaft divided by efficiency (or braked times it), against the largest of the range."""
    return Row(
        id="power", limit="motor_most",
        sense="at_most", unit="W", body=lambda hi, lo, d: (hi.motor_needed, d.motor_most),
        formula="max(shaft_each/eta, -shaft_each*eta)", reads=reads, constants={"eta": "efficiency"},
        units={"shaft_each": "W"},
        source="motor = shaft / efficiency; a lowering load is braked", each_size=True,
    )  # fmt: skip


def motor_needed(shaft: float, d: Limits) -> float:
    """Rated power that the motor needs at least [W]."""
    return inf if shaft == inf else motor_power_needed(shaft, d.efficiency)


def motor_series(frequency: float | None, voltage: float | None) -> tuple[float, ...]:
    """The standard motors by the site's supply: NEMA at 60 Hz (or at its voltages), else IEC."""
    american = frequency is not None and frequency > 55.0
    if frequency is None and voltage is not None:
        american = min(abs(voltage - v) for v in (120.0, 208.0, 460.0, 480.0, 575.0)) < 6.0
    return tuple(NEMA_HP) if american else tuple(IEC_KW)


def standard_motor(needed: float, series: tuple[float, ...]) -> float | None:
    """The next standard motor at or above what is needed [W]."""
    return next_motor(needed, series) if needed < inf else None
