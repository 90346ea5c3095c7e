"""Laws of sliding."""

from itertools import pairwise
from math import atan, cos, inf, pi, radians, sin, tan

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants
from scipy.optimize import brentq

from intake.sizing.physics.friction import STANDARD_GRAVITY, friction_from_slope, friction_needed, slip_slope

SLOPES = st.floats(0.0, 1.4)
ACCELS = st.floats(0.0, 20.0)


def test_a_level_belt_at_steady_speed_needs_no_friction() -> None:
    assert friction_needed(0.0) == 0.0


@given(SLOPES)
def test_without_acceleration_the_friction_needed_is_the_tangent_of_the_slope(slope: float) -> None:
    assert friction_needed(slope) == pytest.approx(tan(slope), rel=1e-12, abs=1e-15)


@given(st.floats(0.0, 20.0))
def test_the_slip_slope_of_a_friction_is_the_slope_that_needs_it(mu: float) -> None:
    assert friction_needed(slip_slope(mu)) == pytest.approx(mu, rel=1e-9, abs=1e-12)
    assert friction_from_slope(slip_slope(mu)) == pytest.approx(mu, rel=1e-9, abs=1e-12)


@given(SLOPES, ACCELS, ACCELS)
def test_friction_needed_is_the_lean_of_the_contact_force_of_a_body_in_space(
    slope: float, accel: float, lateral: float
) -> None:
    # World axes: x ahead, y to the side, z up. Contact force per kilogram = acceleration less gravity.
    uphill, normal = np.array([cos(slope), 0.0, sin(slope)]), np.array([-sin(slope), 0.0, cos(slope)])
    contact = accel * uphill + lateral * np.array([0.0, 1.0, 0.0]) + np.array([0.0, 0.0, STANDARD_GRAVITY])
    square = contact @ normal
    in_the_belt = np.linalg.norm(contact - square * normal)
    assert friction_needed(slope, accel, lateral) == pytest.approx(in_the_belt / square, rel=1e-9, abs=1e-12)


@given(SLOPES, ACCELS, ACCELS, st.floats(1e-3, 5.0))
def test_more_start_or_more_curve_never_needs_less_friction(
    slope: float, accel: float, lateral: float, more: float
) -> None:
    need = friction_needed(slope, accel, lateral)
    assert friction_needed(slope, accel + more, lateral) >= need
    assert friction_needed(slope, accel, lateral + more) >= need


def test_a_steeper_slope_always_needs_more_friction() -> None:
    needs = [friction_needed(i * 0.01, accel=0.5, lateral=0.7) for i in range(157)]
    assert all(low < high for low, high in pairwise(needs))


@given(SLOPES, ACCELS, ACCELS)
def test_start_and_curve_together_need_less_than_the_sum_and_more_than_either(
    slope: float, accel: float, lateral: float
) -> None:
    # Friction is one circle, so thrusts at right angles do not add up.
    both, start, curve = (
        friction_needed(slope, accel, lateral),
        friction_needed(slope, accel),
        lateral / (STANDARD_GRAVITY * cos(slope)),
    )
    assert max(start, curve) * (1 - 1e-12) <= both <= (start + curve) * (1 + 1e-12)


def test_on_the_level_a_start_and_a_curve_of_the_same_size_are_alike() -> None:
    assert friction_needed(0.0, accel=1.3) == friction_needed(0.0, lateral=1.3)


def test_the_steepest_slope_for_a_start_found_by_root_search_is_the_closed_form() -> None:
    # mu g cos(s) = g sin(s) + a  <=>  sin(atan(mu) - s) = (a/g) cos(atan(mu))
    mu, accel = 0.5, 0.8
    steepest = brentq(lambda slope: friction_needed(slope, accel) - mu, 0.0, 1.0, xtol=1e-13)
    assert sin(atan(mu) - steepest) == pytest.approx(accel / STANDARD_GRAVITY * cos(atan(mu)), rel=1e-9)


def test_a_slope_just_short_of_upright_needs_a_huge_yet_finite_friction() -> None:
    assert 1e6 < friction_needed(pi / 2 - 1e-7) < inf


def test_standard_gravity_is_the_defined_value() -> None:
    assert constants.g == STANDARD_GRAVITY


def test_a_forty_five_degree_slope_needs_a_friction_of_one() -> None:
    assert friction_needed(radians(45.0)) == pytest.approx(1.0, rel=1e-12)
