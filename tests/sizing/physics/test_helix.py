"""Laws of the helix."""

from math import cos, hypot, pi, sin, tau

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad

from intake.sizing.physics.helix import curvature, helix_length, rise_per_turn, slope_of, width_in_curve

DIAMETERS = st.floats(0.3, 5.0)
RISES = st.floats(0.0, 3.0)


@given(DIAMETERS, st.floats(0.0, 1.4))
def test_slope_and_rise_per_turn_are_each_others_inverse(diameter: float, slope: float) -> None:
    assert slope_of(diameter, rise_per_turn(diameter, slope)) == pytest.approx(slope, rel=1e-9, abs=1e-12)


@pytest.mark.parametrize(("diameter", "rise", "turns"), [(1.2, 0.5, 3.25), (2.0, 0.0, 1.0), (0.8, 1.5, 0.5)])
def test_the_length_is_the_integral_of_the_speed_along_the_path(diameter: float, rise: float, turns: float) -> None:
    def speed(t: float) -> float:
        return hypot(hypot(-diameter / 2 * sin(t), diameter / 2 * cos(t)), rise / tau)

    measured, _ = quad(speed, 0.0, turns * tau)
    assert helix_length(diameter, rise, turns) == pytest.approx(measured, rel=1e-9)


@given(DIAMETERS, RISES, st.floats(0.0, 20.0))
def test_the_sine_of_the_slope_times_the_length_is_the_height_gained(
    diameter: float, rise: float, turns: float
) -> None:
    length = helix_length(diameter, rise, turns)
    assert length * sin(slope_of(diameter, rise)) == pytest.approx(rise * turns, rel=1e-9, abs=1e-12)
    assert length * cos(slope_of(diameter, rise)) == pytest.approx(pi * diameter * turns, rel=1e-9, abs=1e-12)


@given(DIAMETERS, RISES)
def test_the_curvature_is_that_of_the_textbook_in_radius_and_rise_per_radian(diameter: float, rise: float) -> None:
    r, c = diameter / 2, rise / tau
    assert curvature(diameter, slope_of(diameter, rise)) == pytest.approx(r / (r * r + c * c), rel=1e-9)


def test_a_flat_helix_is_a_circle() -> None:
    assert curvature(1.6, 0.0) == pytest.approx(1.25, rel=1e-15)
    assert slope_of(1.6, 0.0) == 0.0
    assert helix_length(1.6, 0.0, 1.0) == pytest.approx(pi * 1.6, rel=1e-15)


@given(st.floats(0.0, 3.0), st.floats(0.05, 1.0), st.floats(0.0, 2.0))
def test_the_outer_corner_lies_on_the_circle_of_the_swept_width(r_inside: float, width: float, length: float) -> None:
    reach = r_inside + width_in_curve(r_inside, width, length)
    assert reach == pytest.approx(abs(complex(r_inside + width, length / 2)), rel=1e-9)
    assert reach - r_inside >= width - 1e-12


def test_a_product_without_length_sweeps_its_own_width() -> None:
    assert width_in_curve(0.5, 0.3, 0.0) == pytest.approx(0.3, rel=1e-12)


def test_a_wider_curve_sweeps_less_beyond_the_product() -> None:
    swept = [width_in_curve(r, 0.3, 0.6) for r in (0.2, 0.5, 1.0, 3.0, 100.0)]
    assert swept == sorted(swept, reverse=True)
    assert swept[-1] == pytest.approx(0.3, abs=1e-3)


def test_a_turn_that_rises_by_its_own_length_on_plan_slopes_at_forty_five_degrees() -> None:
    assert slope_of(1.0 / pi, 1.0) == pytest.approx(pi / 4, rel=1e-15)
