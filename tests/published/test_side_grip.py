"""The side grip, against textbooks."""

from collections.abc import Callable
from math import cos, pi, sin
from typing import Any

import numpy as np
import pytest
from scipy.optimize import brentq

from intake.sizing.physics.friction import STANDARD_GRAVITY
from intake.sizing.physics.grip import bend_accel, grip_needed
from intake.sizing.physics.tension import capstan

G = STANDARD_GRAVITY


def test_a_book_between_two_hands_takes_the_printed_squeeze(as_printed: Callable[..., Any]) -> None:
    # Cutnell and Johnson, Physics, 10th ed., Ch. 4, Problem 99: weight 31 N, mu_s 0.40.
    assert grip_needed(31.0 / G, 0.40, safety=1.0) == as_printed("39", share=0.0)


def test_a_block_held_with_fifty_newtons_a_side_needs_the_printed_friction() -> None:
    # Homework question-and-answer page (secondary), question 36552: 4 kg, g 9.8; printed 0.4, unrounded 0.392.
    assert grip_needed(4.0, 0.392, safety=1.0) == pytest.approx(50.0, rel=1e-3)


@pytest.mark.parametrize(("accel", "printed"), [(1.20, "825"), (0.0, "735")])
def test_a_load_that_speeds_up_weighs_the_printed_force(
    accel: float, printed: str, as_printed: Callable[..., Any]
) -> None:
    # OpenStax UP1 6.1 Ex 6.3: 75.0 kg in a lift. With mu = 0.5 a side carries all that the other pushes.
    assert grip_needed(75.0, 0.5, safety=1.0, accel=accel) == as_printed(printed)


BENDS = [  # speed [m/s], radius [m], printed acceleration [m/s2]
    pytest.param(25.00, 500.0, "1.25", id="OpenStax UP1 6.3 Ex 6.15: 1125 N on 900 kg"),
    pytest.param(30.0, 24.6, "36.6", id="OpenStax UP1 6.3 Problem 69"),
]


@pytest.mark.parametrize(("speed", "radius", "printed"), BENDS)
def test_a_bend_thrusts_as_printed(speed: float, radius: float, printed: str, as_printed: Callable[..., Any]) -> None:
    assert bend_accel(speed, radius) == as_printed(printed, share=0.0)


def test_a_bend_that_squeezes_by_itself_holds_a_load_at_the_printed_speed(as_printed: Callable[..., Any]) -> None:
    # OpenStax UP1 6.4 Additional Problem 117: r 12 m, mu_s 0.68: friction on one wall holds from 13 m/s on. One wall
    # takes what two sides share: twice the force of a side.
    def short_of(speed: float) -> float:
        return 2.0 * grip_needed(1.0, 0.68, safety=1.0) - bend_accel(speed, 12.0)

    assert brentq(short_of, 1.0, 50.0) == as_printed("13")


def test_two_sides_hold_what_a_path_asks_at_its_worst_point() -> None:
    # A quarter bend from level to upright, frame by frame, as vectors: what the sides have to give is never more than
    # weight, start and bend taken one way, and at the lower end of the bend, without a start, just that.
    speed, radius, start, mu, mass = 0.6, 0.45, 0.8, 0.5, 3.0
    needed = []
    for turned in np.linspace(0.0, pi / 2, 200):
        travel, inward = np.array([cos(turned), sin(turned)]), np.array([-sin(turned), cos(turned)])
        force = mass * (np.array([0.0, G]) + start * travel + speed**2 / radius * inward)
        needed.append(float(np.linalg.norm(force)) / (2.0 * mu))
    bend = bend_accel(speed, radius)
    assert max(needed) <= grip_needed(mass, mu, 1.0, start, bend)
    level_end = mass * (G + speed**2 / radius) / (2.0 * mu)
    assert grip_needed(mass, mu, 1.0, bend_accel=bend) == pytest.approx(level_end, rel=1e-12)


def test_a_quarter_bend_holds_back_the_share_that_the_rope_formula_prints(as_printed: Callable[..., Any]) -> None:
    # Levinson, Statics and Strength of Materials Ex 6.5 (inputs only, recomputed): 100 lb, mu 0.40: half a turn leaves
    # 28.46 lb. Two quarter bends, one after the other, are that half turn.
    assert 100.0 / capstan(capstan(1.0, 0.40, pi / 2), 0.40, pi / 2) == as_printed("28.46", share=0.0)
