"""Rope and belt friction, and the helix, against textbooks.

The rope formula is one limit of our strand (no weight) and the straight slope the other (no guide, see
test_sliding.py): so every rope example is put to `capstan` and to `strand_end`.
"""

from collections.abc import Callable
from math import asin, cos, degrees, pi, radians, sqrt, tau
from typing import Any

import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from intake.sizing.physics.helix import curvature, helix_length, slope_of, width_in_curve
from intake.sizing.physics.power import shaft_power
from intake.sizing.physics.tension import capstan, carry_gain, guide_rate, strand_end, strand_start_for_end

ROPES = [  # tight tension, mu, angle [rad], printed slack tension
    pytest.param(100.0, 0.23, 4.5 * tau, "0.15", id="Baker and Haynes, Engineering Statics 9.5: rope, 4.5 turns, lb"),
    pytest.param(
        600.0, 0.25, radians(120.0), "355.4", id="Beer and Johnston Sample Problem 8.8, lb (inputs only, recomputed)"
    ),
    pytest.param(200.0, 0.25, pi, "91.19", id="McLean, Schaum's Problem 9.17, N (inputs only, recomputed)"),
    pytest.param(
        900 * 9.8, 0.2, 2 * tau, "714.4", id="McLean, Schaum's Problem 9.20, two turns, N (inputs only, recomputed)"
    ),
    pytest.param(100.0, 0.40, pi, "28.46", id="Levinson Ex 6.5: half a turn, lb (inputs only, recomputed)"),
    pytest.param(
        100.0, 0.40, 3 * pi, "2.305", id="Levinson Ex 6.5: one and a half turns, lb (inputs only, recomputed)"
    ),
    pytest.param(1000.0, 0.25, pi, "455.9", id="Tayal Ex 7.4: half a turn, N (inputs only, recomputed)"),
    pytest.param(1000.0, 0.3, 3 * tau, "3.50", id="Tayal Ex 7.6: three turns, N (inputs only, recomputed)"),
]


@pytest.mark.parametrize(("tight", "mu", "angle", "printed"), ROPES)
def test_the_hold_behind_a_bend_is_the_printed_one(
    tight: float, mu: float, angle: float, printed: str, as_printed: Callable[..., Any]
) -> None:
    radius = 0.3
    slack = strand_start_for_end(tight, 0.0, guide_rate(mu, 0.0, radius), radius * angle)
    assert slack == as_printed(printed, share=0.0)
    assert capstan(slack, mu, angle) == pytest.approx(tight, rel=1e-12)


GRIPS = [  # slack, tight, turns, printed mu
    pytest.param(150.0, 7500.0, 2, "0.3113", id="Beer and Johnston Sample Problem 8.7 (inputs only, recomputed)"),
    pytest.param(10.0, 1000.0, 4, "0.18323", id="McLean, Schaum's Problem 9.19 (inputs only, recomputed)"),
]


@pytest.mark.parametrize(("slack", "tight", "turns", "printed"), GRIPS)
def test_the_friction_behind_two_tensions_is_the_printed_one(
    slack: float, tight: float, turns: int, printed: str, as_printed: Callable[..., Any]
) -> None:
    mu = brentq(lambda mu: capstan(slack, mu, turns * tau) - tight, 0.0, 1.0, xtol=1e-12)
    assert mu == as_printed(printed, share=0.0)


def test_a_third_turn_holds_the_printed_load(as_printed: Callable[..., Any]) -> None:
    # Beer and Johnston Sample Problem 8.7 (inputs only, recomputed; the book prints 52.9 kN from memory, with 0.311).
    mu = brentq(lambda mu: capstan(150.0, mu, 2 * tau) - 7500.0, 0.0, 1.0, xtol=1e-14)
    assert capstan(150.0, mu, 3 * tau) == as_printed("53033", share=0.0)


def test_each_turn_multiplies_the_tension_by_the_printed_ratio(as_printed: Callable[..., Any]) -> None:
    # Open question page on belt friction (secondary): mu 0.3, one turn 6.6; two turns its square (own arithmetic).
    assert capstan(1.0, 0.3, tau) == as_printed("6.6", share=0.0)
    assert capstan(1.0, 0.3, 2 * tau) == as_printed("43.38", share=0.0)


def test_a_belt_on_two_pulleys_passes_on_the_printed_power(as_printed: Callable[..., Any]) -> None:
    # Khurmi and Gupta, Theory of Machines Ex 11.16 (inputs only, recomputed): pulleys 400 and 250 mm, centres 2 m.
    lap = pi - 2 * asin((0.400 - 0.250) / 2 / 2.0)
    slack = 1200.0 / capstan(1.0, 0.4, lap)
    assert slack == as_printed("351.94", share=0.0)
    assert shaft_power(1200.0, slack, 10.0) / 1e3 == as_printed("8.4806", share=0.0)


LENGTHS = [  # radius, rise per turn, turns, printed length
    pytest.param(0.5, tau * sqrt(3 / 4), 1.0, "6.28319", id="OpenStax Calculus 3 3.3: one turn of length 2 pi"),
    pytest.param(
        3.0, 4.0 * tau, 1 / tau, "5", id="OpenStax Calculus 3 3.3 checkpoint: (3 cos t, 3 sin t, 4 t), a radian"
    ),
    pytest.param(2.0, tau, 2.0, "28.099", id="OpenStax Calculus 3 6.2, a spring: 4 pi sqrt 5 (own arithmetic)"),
    pytest.param(1.0, 2.0, 10.0, "66", id="Open how-to page (secondary): spiral stair of 10 turns"),
]


@pytest.mark.parametrize(("radius", "rise", "turns", "printed"), LENGTHS)
def test_the_length_of_a_helix_is_the_printed_one(
    radius: float, rise: float, turns: float, printed: str, as_printed: Callable[..., Any]
) -> None:
    assert helix_length(2 * radius, rise, turns) == as_printed(printed, share=0.0)


def test_the_curvature_of_a_helix_is_the_printed_one(as_printed: Callable[..., Any]) -> None:
    # OpenStax Calculus 3 3.3 Ex 3.11: (4 cos t, 4 sin t, 3 t) has curvature 4/25.
    slope = slope_of(8.0, 3.0 * tau)
    assert degrees(slope) == as_printed("36.87", share=0.0)
    assert curvature(8.0, slope) == pytest.approx(4 / 25, rel=1e-12)
    # Own arithmetic on that and the rope formula: mu 0.2, one turn.
    turned = strand_end(1.0, 0.0, guide_rate(0.2, slope, 4.0), helix_length(8.0, 3.0 * tau, 1.0))
    assert turned == as_printed("2.7328", share=0.0)


LEADS = [  # lead and diameter [mm], printed slope [deg]
    pytest.param(12.5, 100.0, "2.279", id="Tayal, Engineering Mechanics Ex 7.10 (inputs only, recomputed)"),
    pytest.param(12.5, 50.0, "4.550", id="Khurmi and Gupta, Theory of Machines Ex 10.10 (inputs only, recomputed)"),
    pytest.param(4.0, 10.0, "7.256", id="Beer and Johnston Sample Problem 8.5 (inputs only, recomputed)"),
]


@pytest.mark.parametrize(("lead", "diameter", "printed"), LEADS)
def test_the_slope_of_a_thread_is_the_printed_one(
    lead: float, diameter: float, printed: str, as_printed: Callable[..., Any]
) -> None:
    assert degrees(slope_of(diameter / 1e3, lead / 1e3)) == as_printed(printed, share=0.0)


def test_a_loaded_helix_lies_where_a_general_solver_puts_it(as_printed: Callable[..., Any]) -> None:
    # No publication was found for this one. Its two limits are published (see above); the numbers are our own.
    load, slope, mu_bed, mu_guide, radius = 150.0, radians(6.0), 0.2, 0.15, 0.6
    length = 3 * tau * radius / cos(slope)
    assert length == as_printed("11.3720", share=0.0)
    a, b = carry_gain(load, slope, mu_bed, climbs=True), guide_rate(mu_guide, slope, radius)
    ours = strand_end(0.0, a, b, length)
    assert ours == as_printed("2879.28", share=0.0)
    run = solve_ivp(lambda _, t: a + b * t, (0.0, length), [0.0], method="DOP853", rtol=1e-11, atol=1e-9)
    assert ours == pytest.approx(float(run.y[0, -1]), rel=1e-8)


def test_a_long_load_in_a_curve_needs_the_room_that_pythagoras_says(as_printed: Callable[..., Any]) -> None:
    # Own arithmetic: inside 1.0 m, width 0.4 m, length 0.6 m.
    assert width_in_curve(1.0, 0.4, 0.6) == as_printed("0.43178", share=0.0)
