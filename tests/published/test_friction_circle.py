"""Slope, start and curve at once: thrust and gravity as vectors in space, and moments about every point of a ring."""

from collections.abc import Callable
from math import atan2, cos, hypot, pi, radians, sin
from random import Random
from typing import Any

import numpy as np
import pytest
from scipy.optimize import brentq

from intake.sizing.physics.friction import STANDARD_GRAVITY, friction_needed, slip_slope, steepest_slope
from intake.sizing.physics.tipping import tip_slope, tipping_share, tipping_share_lateral, tipping_share_round

G = STANDARD_GRAVITY

PRINTED = [  # friction, start [m/s2], printed slope [deg]
    pytest.param(0.100, 0.0, "5.71", id="OpenStax UP1 6.2 Problem 55: parcel on a ramp"),
    pytest.param(1.0, 9.09, "4.0", id="OpenStax UP1 6.2 Problem 59: dry"),
    pytest.param(0.7, 6.16, "4.0", id="OpenStax UP1 6.2 Problem 59: wet"),
    pytest.param(0.1, 0.294, "4.0", id="OpenStax UP1 6.2 Problem 59: ice"),
    pytest.param(0.63, 0.0, "32.2", id="Wolfson, Essential University Physics 1, ch. 12 no. 48: slides at"),
]


@pytest.mark.parametrize(("friction", "accel", "printed"), PRINTED)
def test_the_steepest_slope_of_a_start_is_the_printed_one(
    friction: float, accel: float, printed: str, as_printed: Callable[..., Any]
) -> None:
    assert steepest_slope(friction, accel) * 180.0 / pi == as_printed(printed)


def test_on_the_level_a_curve_at_the_printed_speed_is_just_too_much_for_any_slope() -> None:
    # OpenStax UP1 6.3 Problem 77: 65 m, mu_s 0.70: 21 m/s, to two digits.
    assert steepest_slope(0.70, lateral=20.5**2 / 65.0) >= 0.0
    assert steepest_slope(0.70, lateral=21.5**2 / 65.0) < 0.0


def thrust_and_normal(slope: float, accel: float, lateral: float) -> tuple[Any, float]:
    """What the belt must give a kilogram: the force in its plane (along, across), and that square to it [N]."""
    along = np.array([cos(slope), 0.0, sin(slope)])
    across = np.array([0.0, 1.0, 0.0])
    off = np.cross(along, across)
    needed = np.array([0.0, 0.0, G]) + accel * along + lateral * across
    return np.array([needed @ along, needed @ across]), float(needed @ off)


def drawn(seed: int) -> tuple[float, float, float]:
    """Slope [rad], start and thrust of a curve [m/s2]."""
    rng = Random(seed)
    return radians(rng.uniform(0.0, 20.0)), rng.uniform(0.0, 1.0), rng.uniform(0.0, 2.0)


@pytest.mark.parametrize("seed", range(15))
def test_friction_has_to_give_the_length_of_one_vector(seed: int) -> None:
    slope, accel, lateral = drawn(seed)
    plane, normal = thrust_and_normal(slope, accel, lateral)
    assert friction_needed(slope, accel, lateral) == pytest.approx(float(np.linalg.norm(plane)) / normal, rel=1e-12)


@pytest.mark.parametrize("seed", range(10))
def test_the_steepest_slope_is_the_root_of_that_vector(seed: int) -> None:
    _, accel, lateral = drawn(seed)
    grip = hypot(accel, lateral) / G + 0.2

    def over(slope: float) -> float:
        plane, normal = thrust_and_normal(slope, accel, lateral)
        return float(np.linalg.norm(plane)) - grip * normal

    assert steepest_slope(grip, accel, lateral) == pytest.approx(brentq(over, 0.0, 1.5, xtol=1e-13), abs=1e-9)
    assert steepest_slope(grip) == pytest.approx(slip_slope(grip), rel=1e-12)


def worst_share(feet: Any, slope: float, accel: float, lateral: float, height: float) -> float:
    """Overturning over righting moment about the worst edge between neighbouring feet of a base (x along, y across)."""
    plane, normal = thrust_and_normal(slope, accel, lateral)
    shares = []
    for start, end in zip(feet, np.roll(feet, -1, axis=0), strict=True):
        edge = (end - start) / np.linalg.norm(end - start)
        outward = np.array([edge[1], -edge[0]])
        arm = float(start @ outward)
        shares.append(float(-plane @ outward) * height / (normal * arm))
    return max(shares)


@pytest.mark.parametrize("seed", range(10))
def test_a_round_base_tips_over_the_worst_point_of_its_ring(seed: int) -> None:
    # Moments about each edge of a polygon of 3600 feet; a start, a slope and a curve at once.
    slope, accel, lateral = drawn(seed)
    angles = np.linspace(0.0, 2 * pi, 3600, endpoint=False)
    ring = 0.035 * np.column_stack([np.cos(angles), np.sin(angles)])
    ours = tipping_share_round(slope, accel, lateral, height=0.11, diameter=0.07)
    assert ours == pytest.approx(worst_share(ring, slope, accel, lateral, 0.11), rel=1e-5)


@pytest.mark.parametrize("seed", range(10))
def test_a_rectangular_base_tips_over_one_of_its_four_edges(seed: int) -> None:
    slope, accel, lateral = drawn(seed)
    length, width, height = 0.30, 0.22, 0.18
    corners = np.array([[1, -1], [1, 1], [-1, 1], [-1, -1]]) * np.array([length / 2, width / 2])
    along = tipping_share(slope, accel, height, length)
    across = tipping_share_lateral(slope, lateral, height, width)
    assert max(along, across) == pytest.approx(worst_share(corners, slope, accel, lateral, height), rel=1e-12)


def test_a_round_product_on_a_slope_alone_tips_at_the_printed_angle(as_printed: Callable[..., Any]) -> None:
    # Wolfson, Essential University Physics 1, ch. 12 no. 48: base as wide as the centre of gravity is high.
    tips = brentq(lambda slope: tipping_share_round(slope, 0.0, 0.0, 0.4, 0.4) - 1.0, 0.0, 1.5)
    assert tips * 180.0 / pi == as_printed("26.565", share=0.0)
    assert tips == pytest.approx(tip_slope(0.4, 0.4))
    assert tips == pytest.approx(atan2(0.2, 0.4))
    assert sin(tips) > 0.4
