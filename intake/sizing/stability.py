"""Slip and tip of a product that rides a slope, straight or in a curve, as checks."""

from collections.abc import Callable
from math import degrees

from intake.sizing.check_row import Row
from intake.sizing.job import Num
from intake.sizing.physics.flow import lateral_accel
from intake.sizing.physics.friction import friction_needed
from intake.sizing.physics.tipping import tipping_share, tipping_share_lateral, tipping_share_round
from intake.sizing.range_data import Limits

_ACCEL = {"a1": "accel_start", "a2": "accel_stop", "a3": "accel_power_loss"}
_UNITS = {"th": "rad", "v": "m/s", "r": "m", "h": "m", "hx": "m", "b": "m", "bw": "m", "mu": "1"}
_CURVE = "(v^2/r)"
_ALONG = "(g*sin(th) + max(a1, a2, a3))"


def slip_row(friction: str = "mu") -> Row:
    """Friction needed on the slope, with its safety factor, against the friction there is."""
    return Row(
        id="slip", limit=friction, sense="at_most", unit="1",
        body=lambda hi, lo, d: (d.slip_safety * friction_needed(hi.th, d.accel_greatest), getattr(lo, friction)),
        formula=f"SF*{_ALONG}/(g*cos(th))", reads=(friction,), constants={"SF": "slip_safety", **_ACCEL}, units=_UNITS,
        source="OpenStax, University Physics vol. 1, sec. 6.2 (Ex. 6.13, Problem 55)", each_size=True,
    )  # fmt: skip


def curve_row(friction: str = "mu", applies: Callable[[Num], bool] | None = None) -> Row:
    """The same in a curve: friction is one circle."""
    return Row(
        id="curve", limit=friction, sense="at_most", unit="1",
        body=lambda hi, lo, d: (
            d.slip_safety * friction_needed(hi.th_curve, d.accel_greatest, lateral_accel(hi.v, lo.r)),
            getattr(lo, friction),
        ),
        formula=f"SF*sqrt((g*sin(th_curve) + max(a1, a2, a3))^2 + {_CURVE}^2)/(g*cos(th_curve))", reads=(friction,),
        low=frozenset({"r"}), constants={"SF": "slip_safety", **_ACCEL}, units={**_UNITS, "th_curve": "rad"},
        source="OpenStax, University Physics vol. 1, sec. 6.3 (Ex. 6.15, Problem 71); friction circle", each_size=True,
        applies=applies,
    )  # fmt: skip


def tip_row(*, curved: bool) -> Row:
    """Tipping moment as a share of the righting one; each edge by itself, one circle for a round base."""
    lateral = _CURVE if curved else "0"
    formula = (
        f"(1 - rnd)*max({_ALONG}*h/(g*cos(th)*b/2), {lateral}*hx/(g*cos(th)*bw/2))"
        f" + rnd*sqrt({_ALONG}^2 + {lateral}^2)*max(h/b, hx/bw)*2/(g*cos(th))"
    )
    return Row(
        id="tip", limit="1/tip_safety",
        sense="at_most", unit="1", body=_tip_curved if curved else _tip_straight, formula=formula,
        reads=("h", "hx", "b", "bw", "rnd"), low=frozenset({"b", "bw", "r"}), constants=_ACCEL, units=_UNITS,
        source="OpenStax, University Physics vol. 1, sec. 12.1; Wolfson, Essential University Physics, ch. 12, P48",
        each_size=True,
    )  # fmt: skip


def ring(hi: Num, lo: Num) -> tuple[float, float]:
    """Height of the centre of gravity and base of a round product, in the direction in which it stands worse [m]."""
    return (hi.h, lo.b) if hi.h * lo.bw >= hi.hx * lo.b else (hi.hx, lo.bw)


def footing(hi: Num, lo: Num, d: Limits) -> float:
    """Half of the base over the height of the centre of gravity, with its safety: the most thrust over weight [1]."""
    height, base = ring(hi, lo) if hi.rnd else (hi.h, lo.b)
    return float(base / (2.0 * max(height, 1e-9) * d.tip_safety))


def _tip_straight(hi: Num, lo: Num, d: Limits) -> tuple[float, float]:
    if hi.rnd:
        return tipping_share_round(hi.th, d.accel_greatest, 0.0, *ring(hi, lo)), 1.0 / d.tip_safety
    return tipping_share(hi.th, d.accel_greatest, hi.h, lo.b), 1.0 / d.tip_safety


def _tip_curved(hi: Num, lo: Num, d: Limits) -> tuple[float, float]:
    lateral = lateral_accel(hi.v, lo.r)
    if hi.rnd:
        return tipping_share_round(hi.th, d.accel_greatest, lateral, *ring(hi, lo)), 1.0 / d.tip_safety
    along = tipping_share(hi.th, d.accel_greatest, hi.h, lo.b)
    return max(along, tipping_share_lateral(hi.th, lateral, hi.hx, lo.bw)), 1.0 / d.tip_safety


def tip_in_level_curve_row(applies: Callable[[Num], bool]) -> Row:
    """Tipping outwards over one edge in a level curve between slopes; a round base in whatever direction."""
    return Row(
        id="tip_curve", limit="1/tip_safety",
        sense="at_most", unit="1", body=_tip_level_curve,
        formula="(1 - rnd)*(v^2/r)*hx/(g*bw/2) + rnd*sqrt(max(a1, a2, a3)^2 + (v^2/r)^2)*max(h/b, hx/bw)*2/g",
        reads=("h", "hx", "b", "bw", "rnd"), low=frozenset({"b", "bw", "r"}), constants=_ACCEL, units=_UNITS,
        source="moments about the outer edge; level case as in Tayal, Engineering Mechanics, Ex. 15.20", each_size=True,
        applies=applies,
    )  # fmt: skip


def _tip_level_curve(hi: Num, lo: Num, d: Limits) -> tuple[float, float]:
    lateral = lateral_accel(hi.v, lo.r)
    if hi.rnd:
        return tipping_share_round(0.0, d.accel_greatest, lateral, *ring(hi, lo)), 1.0 / d.tip_safety
    return tipping_share_lateral(0.0, lateral, hi.hx, lo.bw), 1.0 / d.tip_safety


def crest_row() -> Row:
    """The angle by which the product turns at each of the steps in which a crest or hollow is made."""
    return Row(
        id="crest", limit="crest_step_most*min(1, L/H)*180/pi", limit_high=frozenset({"H"}),
        sense="at_most", unit="deg",
        body=lambda hi, lo, d: (degrees(hi.th) / d.crest_steps, degrees(crest_step(hi, lo, d))),
        formula="th*180/pi/steps", reads=("L", "H"), constants={"steps": "crest_steps"}, units=_UNITS,
        source="common practice, no source: a step at most, less the taller the product is for its length",
        each_size=True,
    )  # fmt: skip


def crest_step(hi: Num, lo: Num, d: Limits) -> float:
    """The greatest change of slope in one step that a product takes quietly [rad]."""
    return float(d.crest_step_most * min(1.0, lo.L / hi.H))
