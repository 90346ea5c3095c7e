"""Helices and curves, measured on points: nothing but coordinates, a quadrature and a minimiser stand against ours."""

from collections.abc import Callable
from math import atan2, cos, degrees, hypot, pi, radians, sin, tau
from random import Random
from typing import Any

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.optimize import brentq, minimize_scalar

from intake.sizing.physics.helix import (
    curvature,
    helix_length,
    least_inside_radius,
    rise_per_turn,
    slope_of,
    width_in_curve,
)

LEADS = [  # diameter [mm], printed slope [deg], lead [mm]
    pytest.param(100.0, 2.279, "12.5", id="Tayal, Engineering Mechanics Ex 7.10 (inputs only, recomputed)"),
    pytest.param(50.0, 4.550, "12.5", id="Khurmi and Gupta, Theory of Machines Ex 10.10 (inputs only, recomputed)"),
    pytest.param(10.0, 7.256, "4.00", id="Beer and Johnston Sample Problem 8.5 (inputs only, recomputed)"),
]


@pytest.mark.parametrize(("diameter", "slope_deg", "lead"), LEADS)
def test_a_thread_of_the_printed_slope_rises_by_its_lead_in_a_turn(
    diameter: float, slope_deg: float, lead: str, as_printed: Callable[..., Any]
) -> None:
    assert rise_per_turn(diameter / 1e3, radians(slope_deg)) * 1e3 == as_printed(lead, share=0.0)


def at(turned: float, diameter: float, rise: float) -> Any:
    """The point of a helix after an angle [rad]."""
    return np.array([diameter / 2 * cos(turned), diameter / 2 * sin(turned), rise * turned / tau])


HELICES = [(1.67, 1.0833, 3.0), (1.2, 0.45, 7.5), (0.9, 0.05, 0.25), (2.3, 1.5, 1.75)]  # diameter, rise a turn, turns


@pytest.mark.parametrize(("diameter", "rise", "turns"), HELICES)
def test_a_helix_is_as_long_and_as_steep_as_its_points_say(diameter: float, rise: float, turns: float) -> None:
    step = 1e-5

    def speed(turned: float) -> float:
        return float(np.linalg.norm(at(turned + step, diameter, rise) - at(turned - step, diameter, rise))) / (2 * step)

    walked, _ = quad(speed, 0.0, turns * tau, epsabs=1e-10, epsrel=1e-9, limit=200)
    assert helix_length(diameter, rise, turns) == pytest.approx(walked, rel=1e-7)
    ahead = at(step, diameter, rise) - at(-step, diameter, rise)
    assert slope_of(diameter, rise) == pytest.approx(atan2(ahead[2], hypot(ahead[0], ahead[1])), rel=1e-7)
    assert rise_per_turn(diameter, slope_of(diameter, rise)) == pytest.approx(rise, rel=1e-12)


@pytest.mark.parametrize(("diameter", "rise", "turns"), HELICES)
def test_the_guide_bends_a_belt_as_the_circle_through_three_near_points(
    diameter: float, rise: float, turns: float
) -> None:
    a, b, c = (at(turned, diameter, rise) for turned in (1.0, 1.001, 1.002))
    doubled_area = float(np.linalg.norm(np.cross(b - a, c - a)))
    sides = [float(np.linalg.norm(p - q)) for p, q in ((a, b), (b, c), (c, a))]
    circle = 2.0 * doubled_area / (sides[0] * sides[1] * sides[2])
    assert curvature(diameter, slope_of(diameter, rise)) == pytest.approx(circle, rel=1e-5)


def swept_width(r_inside: float, width: float, length: float, shifted: float = 0.0) -> float:
    """Width of the ring that a rectangle sweeps while it is turned about the centre of a curve, by its points [m].

    Its side touches the inside edge; `shifted`: how far its middle is from the point of touch [m].
    """
    along = np.linspace(shifted - length / 2, shifted + length / 2, 201)
    if not along[0] <= 0.0 <= along[-1]:
        raise ValueError("the side no longer touches")
    sides = [np.column_stack([along, np.full_like(along, r_inside + out)]) for out in (0.0, width)]
    reaches: list[float] = []
    for turned in np.linspace(0.0, radians(120.0), 61):
        spin = np.array([[cos(turned), -sin(turned)], [sin(turned), cos(turned)]])
        reaches += [float(r) for side in sides for r in np.linalg.norm(side @ spin.T, axis=1)]
    assert min(reaches) >= r_inside - 1e-12
    return max(reaches) - r_inside


def drawn(seed: int) -> tuple[float, float, float]:
    """Inside radius, width and length of a product in a curve."""
    rng = Random(seed)
    return rng.uniform(0.3, 1.5), rng.uniform(0.05, 0.5), rng.uniform(0.05, 0.8)


@pytest.mark.parametrize("seed", range(12))
def test_a_rectangle_turned_through_a_curve_sweeps_the_width_we_say(seed: int) -> None:
    r_inside, width, length = drawn(seed)
    assert width_in_curve(r_inside, width, length) == pytest.approx(swept_width(r_inside, width, length), rel=1e-9)


@pytest.mark.parametrize("seed", range(6))
def test_no_other_way_of_touching_the_inside_edge_takes_less_room(seed: int) -> None:
    r_inside, width, length = drawn(seed)
    found = minimize_scalar(
        lambda shifted: swept_width(r_inside, width, length, shifted),
        bounds=(-length / 2.0001, length / 2.0001),
        method="bounded",
        options={"xatol": 1e-6},
    )
    assert found.x == pytest.approx(0.0, abs=1e-3 * length)
    assert found.fun >= width_in_curve(r_inside, width, length) - 1e-9


@pytest.mark.parametrize("seed", range(6))
def test_the_tightest_curve_that_a_lane_allows_is_where_the_swept_width_fills_it(seed: int) -> None:
    _, width, length = drawn(seed)
    lane = width + 0.1 * (hypot(width, length / 2) - width)  # a tenth of what it would need to turn on the spot
    by_points = brentq(lambda r: swept_width(r, width, length) - lane, 1e-6, 200.0, xtol=1e-9)
    assert least_inside_radius(width, length, lane) == pytest.approx(by_points, rel=1e-6)


def test_the_outer_corner_of_a_3_4_5_load_comes_where_the_triangle_says() -> None:
    # Own arithmetic: inside 3 m, width 1 m, length 6 m: the corner is at sqrt(4^2 + 3^2) = 5 m, 2 m of width.
    assert width_in_curve(3.0, 1.0, 6.0) == pytest.approx(2.0, rel=1e-12)
    assert least_inside_radius(1.0, 6.0, 2.0) == pytest.approx(3.0, rel=1e-12)


def test_a_stair_of_ten_turns_is_as_steep_as_its_length_and_rise_say(as_printed: Callable[..., Any]) -> None:
    # Open how-to page (secondary): radius 1 m, rise 2 m a turn, 10 turns, 66 m long.
    slope = slope_of(2.0, 2.0)
    assert 20.0 / sin(slope) == as_printed("66", share=0.0)
    assert 10.0 * pi * 2.0 / cos(slope) == as_printed("66", share=0.0)
    assert degrees(slope) == pytest.approx(17.66, abs=0.005)
