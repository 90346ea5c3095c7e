"""Laws of the cover belt."""

from math import cos, radians, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from intake.sizing.physics.cover import cover_force, cover_needed_ratio
from intake.sizing.physics.friction import friction_needed, slip_slope

SLOPES = st.floats(0.0, 1.2)
MASSES = st.floats(0.1, 50.0)
FORCES = st.floats(0.0, 300.0)


@given(MASSES, SLOPES, st.floats(0.0, 3.0))
def test_a_cover_that_does_not_press_leaves_a_plain_slope(mass: float, slope: float, accel: float) -> None:
    assert cover_needed_ratio(mass, slope, accel, 0.0, 0.1, 1.0) == pytest.approx(
        friction_needed(slope, accel), rel=1e-12, abs=1e-15
    )


@given(MASSES, SLOPES, FORCES, st.floats(1.0, 100.0))
def test_a_cover_without_drag_always_helps(mass: float, slope: float, force: float, more: float) -> None:
    need = cover_needed_ratio(mass, slope, 0.2, force, 0.0, 1.3)
    assert cover_needed_ratio(mass, slope, 0.2, force + more, 0.0, 1.3) < need


@given(MASSES, st.floats(0.1, 1.2), st.floats(1.0, 300.0), st.floats(1.0, 100.0))
def test_a_cover_that_drags_as_much_as_the_slope_pulls_neither_helps_nor_harms(
    mass: float, slope: float, force: float, more: float
) -> None:
    # With drag = tan(slope) each newton pressed on costs just what the slope costs each newton of weight.
    drag = tan(slope)
    assert cover_needed_ratio(mass, slope, 0.0, force, drag, 1.0) == pytest.approx(drag, rel=1e-9)
    assert cover_needed_ratio(mass, slope, 0.0, force + more, drag, 1.0) == pytest.approx(drag, rel=1e-9)


@given(MASSES, SLOPES, FORCES, st.floats(1.0, 3.0))
def test_the_safety_factor_is_on_the_load(mass: float, slope: float, force: float, safety: float) -> None:
    plain = cover_needed_ratio(mass, slope, 0.2, force, 0.05, 1.0)
    assert cover_needed_ratio(mass, slope, 0.2, force, 0.05, safety) == pytest.approx(safety * plain, rel=1e-9)


def test_pressing_with_the_weight_of_the_product_lets_it_climb_beyond_its_own_slip_slope() -> None:
    mu, mass = 0.8, 10.0

    def short_of_slipping(slope: float) -> float:
        return cover_needed_ratio(mass, slope, 0.0, mass * 9.80665, 0.05, 1.0) - mu

    steepest = brentq(short_of_slipping, 0.0, 1.5)
    assert steepest > slip_slope(mu) + radians(10.0)


def test_the_weight_of_the_cover_counts_for_less_as_the_slope_steepens_and_the_spring_does_not() -> None:
    level, steep = cover_force(20.0, 0.5, 0.0, 7.0), cover_force(20.0, 0.5, 1.0, 7.0)
    assert level == pytest.approx(17.0)
    assert steep - 7.0 == pytest.approx((level - 7.0) * cos(1.0), rel=1e-12)


def test_products_far_apart_each_bear_more_of_the_cover() -> None:
    assert cover_force(20.0, 1.0, 0.5, 0.0) == pytest.approx(2.0 * cover_force(20.0, 0.5, 0.5, 0.0), rel=1e-12)
