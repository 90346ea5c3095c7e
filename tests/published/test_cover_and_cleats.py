"""Pressing on a product and propping it: the cover belt and the cleat, against textbooks and plain statics."""

from collections.abc import Callable
from math import atan, cos, degrees, radians, sin
from random import Random
from typing import Any

import numpy as np
import pytest
from scipy.optimize import brentq

from intake.sizing.physics.cleats import cleat_height_needed, leans_over
from intake.sizing.physics.cover import cover_force, cover_needed_ratio
from intake.sizing.physics.friction import STANDARD_GRAVITY, friction_needed

G = STANDARD_GRAVITY


def test_a_block_under_another_presses_on_the_floor_with_the_printed_force(as_printed: Callable[..., Any]) -> None:
    # OpenStax UP1 6.2 Ex 6.12: 2.00 kg on 4.00 kg: 58.8 N. The upper one as a cover of one pitch length.
    assert 4.00 * G + cover_force(2.00 * G / 0.5, pitch=0.5, slope=0.0, hold_down=0.0) == as_printed("58.8")


def test_a_block_dragged_out_from_under_another_takes_the_printed_pull(as_printed: Callable[..., Any]) -> None:
    # OpenStax UP1 6.2 Ex 6.12: mu_k 0.400 on both faces, the upper block held by a string over a pulley that pulls the
    # lower one back with the same 7.84 N; the pull is 39.2 N. A belt in place of the hand carries the lower block: it
    # must give the drag of the cover and the string, and the hand the friction of the floor besides.
    held = cover_force(2.00 * G, pitch=1.0, slope=0.0, hold_down=0.0)
    string = 0.400 * held
    assert string == as_printed("7.84")
    by_belt = cover_needed_ratio(4.00, 0.0, string / 4.00, held, drag=0.400, safety=1.0)
    assert (by_belt + 0.400) * (4.00 * G + held) == as_printed("39.2")


STARTS = [  # slope [deg], printed largest start without slip [m/s2], friction
    pytest.param(4.0, 9.09, 1.0, id="OpenStax UP1 6.2 Problem 59: up a slope, dry"),
    pytest.param(4.0, 6.16, 0.7, id="OpenStax UP1 6.2 Problem 59: wet"),
    pytest.param(4.0, 0.294, 0.1, id="OpenStax UP1 6.2 Problem 59: ice"),
]


@pytest.mark.parametrize(("slope_deg", "accel", "friction"), STARTS)
def test_without_a_cover_it_is_the_printed_start_on_a_slope(slope_deg: float, accel: float, friction: float) -> None:
    needed = cover_needed_ratio(7.0, radians(slope_deg), accel, cover_force=0.0, drag=0.0, safety=1.0)
    assert needed == pytest.approx(friction, rel=2e-3)
    assert needed == pytest.approx(friction_needed(radians(slope_deg), accel), rel=1e-12)


@pytest.mark.parametrize("seed", range(15))
def test_a_covered_product_holds_by_the_balance_of_forces_as_vectors(seed: int) -> None:
    # Own statics in level axes: weight down, start against the travel, cover square to the belt and dragging back.
    # What the belt has to give is solved for as two unknowns, and never resolved along the slope by hand.
    rng = Random(seed)
    mass, slope, accel = rng.uniform(1.0, 40.0), radians(rng.uniform(15.0, 45.0)), rng.uniform(0.0, 0.8)
    weight_per_m, pitch, hold_down, drag = rng.uniform(5, 80), rng.uniform(0.2, 1.0), rng.uniform(0, 80), 0.06
    uphill, off = np.array([cos(slope), sin(slope)]), np.array([-sin(slope), cos(slope)])
    cover_weight = np.array([0.0, -weight_per_m * pitch])
    pressed = -float(cover_weight @ off) + hold_down  # its share down the slope hangs on the cover's own loop
    known = np.array([0.0, -mass * G]) - pressed * off - drag * pressed * uphill - mass * accel * uphill
    friction, normal = np.linalg.solve(np.column_stack([uphill, off]), -known)
    force = cover_force(weight_per_m, pitch, slope, hold_down)
    assert force == pytest.approx(pressed, rel=1e-12)
    assert cover_needed_ratio(mass, slope, accel, force, drag, safety=1.0) == pytest.approx(friction / normal, rel=1e-9)
    assert cover_needed_ratio(mass, slope, accel, force, drag, safety=1.3) == pytest.approx(1.3 * friction / normal)


def test_pressing_harder_lets_a_product_climb_steeper() -> None:
    # From the slip angle of the textbook (OpenStax UP1 6.2, mu = tan(slope)) upwards.
    def steepest(force: float) -> float:
        return float(
            brentq(lambda slope: cover_needed_ratio(5.0, slope, 0.0, force, drag=0.05, safety=1.0) - 0.9, 0.0, 1.55)
        )

    slopes = [steepest(force) for force in (0.0, 5.0, 10.0, 20.0)]
    assert slopes == sorted(set(slopes))
    assert degrees(slopes[0]) == pytest.approx(degrees(atan(0.9)), abs=1e-6)


def test_a_block_twice_as_high_as_wide_leans_at_the_printed_angle(as_printed: Callable[..., Any]) -> None:
    # Wolfson, Essential University Physics 1, ch. 12 no. 48: tips at 26.565 degrees (printed 26.56 is cut short).
    leans = brentq(lambda slope: leans_over(slope, height=0.4, base=0.4) - 1.0, 0.0, 1.5)
    assert degrees(leans) == as_printed("26.565", share=0.0)


@pytest.mark.parametrize(("slope_deg", "height", "base"), [(45.0, 0.05, 0.2), (60.0, 0.04, 0.12), (30.0, 0.2, 0.22)])
def test_it_leans_on_the_cleat_once_its_plumb_line_has_left_the_base(
    slope_deg: float, height: float, base: float
) -> None:
    # OpenStax UP1 12.1, with coordinates: the centre of gravity turned by the slope, and the lower end of the base.
    slope = radians(slope_deg)
    centre_x = -height * sin(slope)
    lower_end_x = -base / 2.0 * cos(slope)
    assert (leans_over(slope, height, base) > 1.0) == (centre_x < lower_end_x)
    assert leans_over(slope, height, base) == pytest.approx(centre_x / lower_end_x, rel=1e-12)


def test_a_cleat_of_two_fifths_of_a_250_mm_carton_is_100_mm() -> None:
    # The share is common practice, no source; the product by hand.
    assert cleat_height_needed(0.25, 0.4) == pytest.approx(0.100, rel=1e-12)
