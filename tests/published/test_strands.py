"""One strand of a belt: the closed form against a general solver, and against the limits that have printed numbers.

No publication was found for a belt that climbs, slides on its bed and rubs on a guide, all at once. So its closed form
is held between the rope formula (no weight), the straight slope (no guide) and a solver of differential equations.
"""

from collections.abc import Callable
from itertools import product
from math import exp, pi, radians
from typing import Any

import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from intake.sizing.physics.friction import STANDARD_GRAVITY
from intake.sizing.physics.helix import helix_length, rise_per_turn
from intake.sizing.physics.power import shaft_power
from intake.sizing.physics.tension import capstan, carry_gain, guide_rate, strand_end, strand_start_for_end

G = STANDARD_GRAVITY

# slope [deg], friction on the bed, friction on the guide, radius [m], turns, load [N/m], tension at the start [N]
HELICES = [
    (3.0, 0.10, 0.02, 1.20, 1.0, 40.0, 60.0),
    (6.0, 0.20, 0.15, 0.60, 3.0, 150.0, 0.0),
    (9.0, 0.18, 0.03, 0.80, 8.0, 220.0, 75.0),
    (12.0, 0.25, 0.30, 0.45, 2.5, 90.0, 500.0),
    (11.0, 0.30, 0.45, 0.50, 6.0, 300.0, 20.0),
    (0.0, 0.22, 0.20, 0.70, 0.5, 130.0, 900.0),
]


@pytest.mark.parametrize(("helix", "climbs"), list(product(HELICES, [True, False])))
def test_a_helix_pulls_as_a_general_solver_says_up_and_down(
    helix: tuple[float, ...], climbs: bool, integrated: Callable[..., float]
) -> None:
    slope_deg, bed, guide, radius, turns, load, start = helix
    slope = radians(slope_deg)
    length = helix_length(2 * radius, rise_per_turn(2 * radius, slope), turns)
    a, b = carry_gain(load, slope, bed, climbs), guide_rate(guide, slope, radius)
    ours, theirs = strand_end(start, a, b, length), integrated(start, a, b, length)
    assert ours == pytest.approx(theirs, rel=1e-8, abs=1e-6)
    assert strand_start_for_end(theirs, a, b, length) == pytest.approx(start, rel=1e-7, abs=1e-5)


@pytest.mark.parametrize("b", [0.0, 1e-14, 1e-9, 9.9e-10, 1.1e-9, 1e-6, 1e-3, 0.3, 4.0])
@pytest.mark.parametrize(("start", "a"), [(50.0, 30.0), (400.0, -12.0), (0.0, 5.0)])
def test_from_no_guide_at_all_to_a_very_rough_one_the_form_agrees_with_the_solver(
    start: float, a: float, b: float, integrated: Callable[..., float]
) -> None:
    assert strand_end(start, a, b, 10.0) == pytest.approx(integrated(start, a, b, 10.0), rel=1e-8)


def test_tension_along_a_strand_has_its_extremes_at_the_ends() -> None:
    for start, a, b in [(50.0, 30.0, 0.4), (400.0, -12.0, 0.02), (100.0, -90.0, 0.3)]:
        run = solve_ivp(
            lambda _, t, a=a, b=b: a + b * t, (0.0, 8.0), [start], method="DOP853", max_step=0.05, rtol=1e-10
        )
        ends = sorted((start, strand_end(start, a, b, 8.0)))
        assert ends[0] - 1e-5 <= float(run.y.min())
        assert float(run.y.max()) <= ends[1] + 1e-5


def test_without_weight_any_strand_is_the_rope_of_the_textbook() -> None:
    # Baker and Haynes, Engineering Statics: Open and Interactive, 9.5: T2/T1 = exp(mu beta).
    for mu, turns, radius in [(0.23, 4.5, 0.1), (0.05, 12.0, 0.9), (0.3, 0.25, 2.0)]:
        angle = 2 * pi * turns
        rope = 100.0 * exp(mu * angle)
        assert strand_end(100.0, 0.0, guide_rate(mu, 0.0, radius), radius * angle) == pytest.approx(rope, rel=1e-12)
        assert capstan(100.0, mu, angle) == pytest.approx(rope, rel=1e-12)


def test_a_light_load_on_a_rough_guide_nears_the_rope_from_above() -> None:
    # The guide multiplies what is there (rope formula, printed); weight only adds to it.
    slope, radius, guide = radians(8.0), 0.5, 0.5
    b, length = guide_rate(guide, slope, radius), 10.0
    rope = 1000.0 * exp(b * length)
    shares = [strand_end(1000.0, carry_gain(q, slope, 0.2, climbs=True), b, length) / rope for q in (100.0, 1.0, 0.01)]
    assert shares == sorted(shares, reverse=True)
    assert shares[-1] == pytest.approx(1.0, abs=1e-4)
    assert shares[-1] > 1.0


def test_without_a_guide_the_strand_is_the_slope_of_the_textbook(as_printed: Callable[..., Any]) -> None:
    # OpenStax College Physics 2e 7.7 Problem 42: 950 kg up 2.00 degrees at 30.0 m/s against 600 N: 2.77e4 W. The
    # weight is spread over a strand of 19 m, the 600 N is what the strand begins with.
    gain = carry_gain(950.0 * G / 19.0, radians(2.00), 0.0, climbs=True)
    assert shaft_power(strand_end(600.0, gain, 0.0, 19.0), 0.0, 30.0) == as_printed("2.77e4")


def test_a_block_needs_the_printed_force_up_and_the_printed_one_to_hold_it_back(as_printed: Callable[..., Any]) -> None:
    # OpenStax UP1 6.4 Additional Problem 97: 3.0 kg, 40.0 degrees, 26 N up; 12 N holds it on the way down.
    slope, weight = radians(40.0), 3.0 * G

    def up(mu: float) -> float:
        return strand_end(0.0, carry_gain(weight / 2.0, slope, mu, climbs=True), 0.0, 2.0)

    mu = float(brentq(lambda mu: up(mu) - 26.0, 0.0, 1.0))
    down = strand_end(0.0, carry_gain(weight / 2.0, slope, mu, climbs=False), 0.0, 2.0)
    assert -down == as_printed("12")


def test_the_length_at_which_a_helix_reaches_its_allowed_pull_is_where_the_solver_meets_it() -> None:
    # "How high" asks for a root; the solver stops by itself when the tension gets there.
    a, b, start, allowed = carry_gain(180.0, radians(10.0), 0.18, climbs=True), 0.035, 72.0, 2700.0
    by_root = brentq(lambda length: strand_end(start, a, b, length) - allowed, 0.0, 200.0, xtol=1e-10)

    def reached(_: float, t: Any) -> float:
        return float(t[0]) - allowed

    reached.terminal = True  # type: ignore[attr-defined]  # this is how solve_ivp is told to stop
    run = solve_ivp(lambda _, t: a + b * t, (0.0, 200.0), [start], events=reached, method="DOP853", rtol=1e-11)
    assert by_root == pytest.approx(float(run.t_events[0][0]), rel=1e-8)
