"""Tipping and curves, against worked examples of open textbooks."""

from collections.abc import Callable
from math import degrees, radians
from typing import Any

import pytest
from scipy.optimize import brentq

from intake.sizing.physics.flow import lateral_accel
from intake.sizing.physics.friction import STANDARD_GRAVITY, friction_needed, slip_slope
from intake.sizing.physics.tipping import tip_slope, tipping_share, tipping_share_lateral

G = STANDARD_GRAVITY
KMH = 1 / 3.6
FT = 0.3048


def speed_at(limit: float, figure: Callable[[float], float]) -> float:
    """The speed at which a rising figure reaches its limit."""
    return float(brentq(lambda speed: figure(speed) - limit, 0.0, 500.0, xtol=1e-10))


def test_a_block_twice_as_high_as_wide_tips_before_it_slides(as_printed: Callable[..., Any]) -> None:
    # Wolfson, Essential University Physics 1, ch. 12 no. 48: mu_s 0.63. Printed 26.56 is 26.565 cut short.
    width = 0.4
    tips = degrees(tip_slope(height=width, base=width))
    assert tips == as_printed("26.565", share=0.0)
    assert tips < degrees(slip_slope(0.63)) == as_printed("32.2", share=0.0)


def test_the_plumb_line_rule_gives_the_same_slope(as_printed: Callable[..., Any]) -> None:
    # OpenStax UP1 12.1: it stands while the plumb line falls inside the base; for b/H = 0.5 (own number).
    assert degrees(tip_slope(height=1.0 / 2, base=0.5)) == as_printed("26.565", share=0.0)
    assert tipping_share(radians(26.5), 0.0, height=0.5, base=0.5) < 1.0
    assert tipping_share(radians(26.6), 0.0, height=0.5, base=0.5) > 1.0


def test_a_tall_block_tips_at_a_gentler_start_than_it_slides() -> None:
    # McLean, Schaum's Problem 16.28 (inputs only, recomputed): half base 0.3 m, centre of gravity at 1.2 m, mu 0.3:
    # slides at 2.94, tips at 2.45 m/s2 (g 9.8).
    assert tipping_share(0.0, 2.45, height=1.2, base=0.6) == pytest.approx(1.0, rel=2e-3)
    assert friction_needed(0.0, 2.94) == pytest.approx(0.3, rel=2e-3)
    assert tipping_share(0.0, 2.94, height=1.2, base=0.6) > 1.0


def test_a_push_high_up_tips_the_load_at_the_printed_force(as_printed: Callable[..., Any]) -> None:
    # Question-and-answer page with a worked solution (secondary): 250 lb, mu_s 0.4, push 4.5 ft up, half base 1.5 ft.
    # A push at a height turns the load over as the thrust of a start does with its centre of gravity there.
    weight = 250.0
    assert tipping_share(0.0, 83.3 / weight * G, height=4.5 * FT, base=3.0 * FT) == pytest.approx(1.0, rel=1e-3)
    assert friction_needed(0.0, accel=100.0 / weight * G) == pytest.approx(0.4, rel=1e-12)
    shift = tipping_share(0.0, 100.0 / weight * G, height=4.5 * FT, base=3.0 * FT) * 1.5
    assert shift == as_printed("1.80", share=0.0)


def test_the_force_and_friction_of_a_flat_curve_are_the_printed_ones(as_printed: Callable[..., Any]) -> None:
    # OpenStax UP1 6.3 Ex 6.15: 900 kg, 500 m, 25.00 m/s. Check 6.9: 96.8 km/h, 182.9 m.
    thrust = lateral_accel(25.00, 500.0)
    assert 900.0 * thrust == as_printed("1125", share=0.0)
    assert friction_needed(0.0, lateral=thrust) == as_printed("0.13")
    assert friction_needed(0.0, lateral=lateral_accel(96.8 * KMH, 182.9)) == as_printed("0.40")
    # McLean, Schaum's Problem 13.4 (inputs only, recomputed): 1800 lb, 58.7 ft/s, 2000 ft, g 32.2 ft/s2.
    assert 1800.0 * lateral_accel(58.7 * FT, 2000 * FT) / G == as_printed("96.3")


FASTEST = [  # radius [m], mu, printed speed [m/s]
    pytest.param(65.0, 0.70, "21", id="OpenStax UP1 6.3 Problem 77"),
    pytest.param(50.0, 0.15, "8.578", id="Tayal, Engineering Mechanics Ex 15.18 (inputs only, recomputed)"),
    pytest.param(
        200 * FT, 0.5, "17.30", id="Gobby, Problems in Applied Mechanics Ex 3.7: 56.75 ft/s (inputs only, recomputed)"
    ),
]


@pytest.mark.parametrize(("radius", "mu", "printed"), FASTEST)
def test_a_load_slips_out_of_a_curve_at_the_printed_speed(
    radius: float, mu: float, printed: str, as_printed: Callable[..., Any]
) -> None:
    slips = speed_at(mu, lambda speed: friction_needed(0.0, lateral=lateral_accel(speed, radius)))
    assert slips == as_printed(printed)


TIPS = [  # radius, centre of gravity, base [m], printed speed [m/s]
    pytest.param(100.0, 1.0, 1.5, "27.125", id="Tayal, Engineering Mechanics Ex 15.20 (inputs only, recomputed)"),
    pytest.param(
        200 * FT,
        2.5 * FT,
        3.0 * FT,
        "18.96",
        id="Gobby, Problems in Applied Mechanics Ex 3.7: 62.2 ft/s (inputs only, recomputed)",
    ),
]


@pytest.mark.parametrize(("radius", "height", "base", "printed"), TIPS)
def test_a_load_tips_out_of_a_curve_at_the_printed_speed(
    radius: float, height: float, base: float, printed: str, as_printed: Callable[..., Any]
) -> None:
    tips = speed_at(1.0, lambda speed: tipping_share_lateral(0.0, lateral_accel(speed, radius), height, base))
    assert tips == as_printed(printed)


BANKED = [  # radius [m], bank [deg], printed speed [m/s]
    pytest.param(100.0, 31.0, "24.3", id="OpenStax UP1 6.3 Ex 6.16"),
    pytest.param(100.0, 65.0, "45.8", id="OpenStax College Physics 2e 6.3 Ex 6.5"),
    pytest.param(100.0, 15.0, "16.2", id="OpenStax UP1 6.3 Problem 71: ideal speed"),
    pytest.param(500.0, 5.0, "20.7", id="OpenStax UP1 6.3 Problem 75"),
]


def lean_deg(speed: float, radius: float) -> float:
    """Bank on which a curve needs no friction: the lean of thrust and gravity together."""
    return degrees(slip_slope(lateral_accel(speed, radius) / G))


@pytest.mark.parametrize(("radius", "bank", "printed"), BANKED)
def test_a_banked_curve_needs_no_friction_at_the_printed_speed(
    radius: float, bank: float, printed: str, as_printed: Callable[..., Any]
) -> None:
    assert speed_at(bank, lambda speed: lean_deg(speed, radius)) == as_printed(printed)


LEANS = [  # speed [m/s], radius [m], printed bank [deg]
    pytest.param(105 * KMH, 1200.0, "4.14", id="OpenStax UP1 6.3 Problem 67"),
    pytest.param(100 * KMH, 250.0, "17.465", id="Tayal, Engineering Mechanics Ex 15.19 (inputs only, recomputed)"),
    pytest.param(8.578, 50.0, "8.531", id="Tayal, Engineering Mechanics Ex 15.18 (inputs only, recomputed)"),
    # Radius printed with three digits: the bank that follows from it is good to 0.1 degree.
    pytest.param(30.0, 24.6, "75.0", id="OpenStax UP1 6.3 Problem 69: radius 24.6 m"),
]


@pytest.mark.parametrize(("speed", "radius", "printed"), LEANS)
def test_the_bank_of_a_curve_is_the_printed_one(
    speed: float, radius: float, printed: str, as_printed: Callable[..., Any]
) -> None:
    assert lean_deg(speed, radius) == as_printed(printed)


def test_the_thrust_of_a_tight_curve_is_the_printed_multiple_of_gravity(as_printed: Callable[..., Any]) -> None:
    # OpenStax UP1 6.3 Problem 69: 24.6 m, 30.0 m/s.
    assert lateral_accel(30.0, 24.6) == as_printed("36.6", share=0.0)
    assert lateral_accel(30.0, 24.6) / G == as_printed("3.73")


def test_slope_and_curve_together_need_the_printed_friction(as_printed: Callable[..., Any]) -> None:
    # OpenStax UP1 6.3 Problem 71: 100.0 m, bank 15.0 degrees, 20.0 km/h, slower than the bank is made for. Seen from
    # the load, the curve tilts gravity by its lean, and the bank less that lean is the slope that friction holds.
    left = radians(15.0 - lean_deg(20.0 * KMH, 100.0))
    assert friction_needed(left) == as_printed("0.234")
