"""Laws of pitch and speed."""

from math import cos, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.sizing.physics.flow import belt_speed, lateral_accel, pitch_curved, pitch_straight

LENGTHS = st.floats(0.02, 2.0)
GAPS = st.floats(0.0, 0.5)


@given(LENGTHS, GAPS, GAPS, st.floats(0.1, 3.0), st.floats(0.0, 2.0))
def test_a_curve_leaves_the_least_gap_on_the_inside_edge_and_the_floor_on_the_straight(
    length: float, floor: float, least: float, r_inside: float, half_width: float
) -> None:
    pitch = pitch_curved(length, floor, least, r_inside + half_width, r_inside)
    on_the_inside = pitch * r_inside / (r_inside + half_width)
    assert on_the_inside - length >= least - 1e-9
    assert pitch - length >= floor - 1e-9
    # No more than asked: one of the two is met exactly.
    assert min(on_the_inside - length - least, pitch - length - floor) == pytest.approx(0.0, abs=1e-9)


@given(LENGTHS, GAPS)
def test_a_curve_without_width_is_a_straight(length: float, gap: float) -> None:
    assert pitch_curved(length, gap, gap, 1.0, 1.0) == pytest.approx(pitch_straight(length, gap), rel=1e-12)


def test_a_tighter_curve_never_lets_products_run_closer() -> None:
    pitches = [pitch_curved(0.3, 0.1, 0.02, r + 0.2, r) for r in (5.0, 2.0, 1.0, 0.5, 0.3, 0.2)]
    assert pitches == sorted(pitches)
    assert pitches[-1] > pitches[0]


@given(st.floats(0.01, 10.0), st.floats(0.05, 3.0))
def test_the_speed_carries_exactly_the_rate_past_a_point(rate: float, pitch: float) -> None:
    assert belt_speed(rate, pitch) / pitch == pytest.approx(rate, rel=1e-12)


def test_doubling_the_speed_makes_the_thrust_in_a_curve_four_times_as_great() -> None:
    assert lateral_accel(1.0, 0.5) == pytest.approx(4.0 * lateral_accel(0.5, 0.5), rel=1e-12)


def test_the_thrust_in_a_curve_is_the_second_derivative_of_the_path() -> None:
    speed, radius, step = 0.7, 0.6, 1e-4

    def place(t: float) -> tuple[float, float]:
        return radius * cos(speed / radius * t), radius * sin(speed / radius * t)

    before, now, after = place(-step), place(0.0), place(step)
    towards_centre = -(after[0] - 2 * now[0] + before[0]) / step**2
    assert lateral_accel(speed, radius) == pytest.approx(towards_centre, rel=1e-5)
