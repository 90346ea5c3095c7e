"""Whole belt loops, followed round by a second program of another make, and against the form of a published standard.

The second program knows no closed form: a general solver walks along each strand, and a root finder sets the take-up
so that the belt is nowhere slacker than asked. It goes forwards only, where ours first goes back from the end.
"""

from collections.abc import Callable, Sequence
from math import cos, radians, sin
from random import Random
from typing import Any

import pytest
from scipy.optimize import brentq

from intake.sizing.physics.friction import STANDARD_GRAVITY
from intake.sizing.physics.tension import Strand, carry_gain, loop_tensions, runaway_pull

G = STANDARD_GRAVITY


def followed_round(
    strands: Sequence[Strand], drive_after: int, least: float, end_of: Callable[..., float]
) -> list[float]:
    """Tensions at the nodes from the drive round to the drive [N], with the take-up just tight enough."""
    order = [*strands[drive_after + 1 :], *strands[: drive_after + 1]]
    # dT/ds = a + b T is linear: two walks per strand, from 0 and from 1, tell what comes of any start.
    zero = [end_of(0.0, *strand) for strand in order]
    gain = [end_of(1.0, *strand) - end for strand, end in zip(order, zero, strict=True)]

    def nodes(slack: float) -> list[float]:
        found = [slack]
        for base, grows in zip(zero, gain, strict=True):
            found.append(base + grows * found[-1])
        return found

    if min(nodes(least)) >= least:
        return nodes(least)
    return nodes(float(brentq(lambda slack: min(nodes(slack)) - least, least, 1e6, xtol=1e-9, rtol=1e-13)))


def drawn_loop(rng: Random) -> tuple[list[Strand], int, float]:
    """A loop with level, climbing, descending and curved strands, a drive anywhere and a take-up tension."""
    strands = [
        Strand(
            a=rng.choice([1.0, 1.0, -1.0]) * rng.uniform(0.0, 150.0),
            b=rng.choice([0.0, rng.uniform(0.005, 0.3)]),
            length=rng.uniform(0.2, 9.0),
        )
        for _ in range(rng.randint(1, 7))
    ]
    return strands, rng.randrange(len(strands)), rng.uniform(0.0, 300.0)


@pytest.mark.parametrize("seed", range(40))
def test_a_loop_of_any_shape_has_the_tensions_that_the_second_program_finds(
    seed: int, integrated: Callable[..., float]
) -> None:
    strands, drive_after, least = drawn_loop(Random(seed))
    theirs = followed_round(strands, drive_after, least, integrated)
    ours = loop_tensions(strands, drive_after, least)
    assert ours.slack == pytest.approx(theirs[0], rel=1e-6, abs=1e-4)
    assert ours.tight == pytest.approx(theirs[-1], rel=1e-6, abs=1e-4)
    assert ours.greatest == pytest.approx(max(theirs), rel=1e-6, abs=1e-4)
    assert ours.pull == pytest.approx(theirs[-1] - theirs[0], rel=1e-6, abs=1e-4)


def test_the_draw_holds_loops_that_drive_loops_that_brake_and_take_ups_that_have_to_help() -> None:
    drawn = [drawn_loop(Random(seed)) for seed in range(40)]
    found = [loop_tensions(*one) for one in drawn]
    assert {loop.pull > 0.0 for loop in found} == {True, False}
    assert {loop.slack > one[2] for loop, one in zip(found, drawn, strict=True)} == {True, False}
    assert {loop.greatest > max(loop.tight, loop.slack) for loop in found} == {True, False}


SLIDER_BEDS = [  # slope [deg], length [m], friction, mass of the belt and of the load per length [kg/m]
    (0.0, 30.0, 0.30, 4.5, 20.0),
    (7.0, 14.0, 0.30, 4.5, 35.0),
    (13.0, 8.0, 0.25, 6.0, 12.0),
    (22.0, 5.0, 0.35, 3.0, 60.0),
]


@pytest.mark.parametrize(("slope_deg", "length", "friction", "belt", "load"), SLIDER_BEDS)
def test_a_straight_loop_pulls_what_iso_5048_says_for_a_bed_without_rollers(
    slope_deg: float, length: float, friction: float, belt: float, load: float
) -> None:
    # ISO 5048:1989, clause 5 (formula from memory, title and contents read), no rollers, no side resistances (C = 1):
    # F = f L g (2 qB + qG) cos(slope) + qG g H. The belt's own weight goes up and comes down again.
    slope = radians(slope_deg)
    standard = friction * length * G * (2.0 * belt + load) * cos(slope) + load * G * length * sin(slope)
    loop = [
        Strand(carry_gain(belt * G, slope, friction, climbs=False), 0.0, length),
        Strand(carry_gain((belt + load) * G, slope, friction, climbs=True), 0.0, length),
    ]
    assert loop_tensions(loop, drive_after=1, least=150.0).pull == pytest.approx(standard, rel=1e-12)


HELD_BACK = [  # mass [kg], slope [deg], friction, printed force, divided by the mass where it is an acceleration
    pytest.param(1.0, 13.0, 0.20, "0.29", id="OpenStax UP1 6.2 Ex 6.14: runs away, m/s2"),
    pytest.param(1.0, 10.0, 0.100, "0.737", id="OpenStax UP1 6.2 Problem 55: parcel on a ramp, m/s2"),
    pytest.param(100.0, 37.0, 0.8 * 0.753554, "1.2e2", id="OpenStax UP1 6.4 Additional Problem 111: held back, N"),
]


@pytest.mark.parametrize(("mass", "slope_deg", "friction", "printed"), HELD_BACK)
def test_a_load_that_runs_away_takes_the_printed_force_to_hold(
    mass: float, slope_deg: float, friction: float, printed: str, as_printed: Callable[..., Any]
) -> None:
    held = runaway_pull(mass * G / 5.0, 0.0, radians(slope_deg), friction, length=5.0)
    assert held == as_printed(printed)


def test_a_load_on_a_gentler_slope_stays_by_itself_as_printed() -> None:
    # OpenStax UP1 6.2 Check 6.8: at 10 degrees and mu 0.20 it slows down, by 0.23 m/s2.
    assert runaway_pull(62.0 * G, 0.0, radians(10.0), 0.20, length=1.0) == 0.0


def test_a_stopped_loop_is_held_by_what_is_left_over_link_by_link() -> None:
    # Own statics: every link of both strands for itself, friction against the way that the loop would run.
    slope, friction, load, back, links, link = radians(24.0), 0.12, 160.0, 30.0, 4000, 0.0025
    left = 0.0
    for _ in range(links):
        left += load * link * (sin(slope) - friction * cos(slope))  # wants down
        left -= back * link * (sin(slope) + friction * cos(slope))  # has to be lifted
    left -= 0.7 * load * friction
    assert runaway_pull(load, back, slope, friction, links * link, level=0.7) == pytest.approx(left, rel=1e-9)
