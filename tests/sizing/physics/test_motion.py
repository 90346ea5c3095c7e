"""Laws of moves from rest to rest, and the closed form held against quadrature and root search."""

from math import inf, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq

from intake.sizing.physics.motion import peak_speed_for_time, trapezoid_peak, trapezoid_time

DISTANCES = st.floats(0.01, 50.0)
SPEEDS = st.floats(0.05, 5.0)
ACCELS = st.floats(0.1, 10.0)

MOVES = pytest.mark.parametrize(
    ("distance", "speed", "accel", "decel"),
    [
        pytest.param(4.0, 1.0, 0.5, 0.5, id="runs"),
        pytest.param(4.0, 1.0, 0.5, 2.0, id="runs, brakes harder"),
        pytest.param(0.5, 3.0, 1.0, 1.0, id="triangle"),
        pytest.param(0.5, 3.0, 1.0, 4.0, id="triangle, brakes harder"),
        pytest.param(12.0, 0.4, 3.0, 0.2, id="long and slow"),
    ],
)


@MOVES
def test_speed_over_the_time_given_adds_up_to_the_distance(
    distance: float, speed: float, accel: float, decel: float
) -> None:
    time = trapezoid_time(distance, speed, accel, decel)

    def speed_at(t: float) -> float:
        return min(speed, accel * t, decel * (time - t))

    peak = trapezoid_peak(distance, speed, accel, decel)
    covered, _ = quad(speed_at, 0.0, time, points=[peak / accel, time - peak / decel])
    assert covered == pytest.approx(distance, rel=1e-9)
    assert speed_at(peak / accel) == pytest.approx(peak, rel=1e-9)


@MOVES
def test_the_speed_for_a_time_found_by_root_search_is_the_closed_form(
    distance: float, speed: float, accel: float, decel: float
) -> None:
    longer = 1.1 * trapezoid_time(distance, speed, accel, decel)
    found = brentq(lambda v: trapezoid_time(distance, v, accel, decel) - longer, 1e-3, speed, xtol=1e-12)
    assert peak_speed_for_time(distance, longer, accel, decel) == pytest.approx(found, rel=1e-7)


@given(DISTANCES, SPEEDS, ACCELS, ACCELS)
def test_the_least_speed_for_a_time_keeps_to_it(distance: float, speed: float, accel: float, decel: float) -> None:
    time = trapezoid_time(distance, speed, accel, decel)
    least = peak_speed_for_time(distance, time, accel, decel)
    assert least == pytest.approx(trapezoid_peak(distance, speed, accel, decel), rel=1e-5)
    assert trapezoid_time(distance, least, accel, decel) == pytest.approx(time, rel=1e-6)


@given(DISTANCES, ACCELS, ACCELS)
def test_a_time_shorter_than_the_ramps_alone_cannot_be_kept(distance: float, accel: float, decel: float) -> None:
    fastest = trapezoid_time(distance, 1e9, accel, decel)
    assert peak_speed_for_time(distance, 0.999 * fastest, accel, decel) == inf
    assert peak_speed_for_time(distance, 1.001 * fastest, accel, decel) < inf


@given(DISTANCES, SPEEDS, ACCELS, ACCELS)
def test_a_move_played_backwards_takes_as_long(distance: float, speed: float, accel: float, decel: float) -> None:
    assert trapezoid_time(distance, speed, decel, accel) == pytest.approx(
        trapezoid_time(distance, speed, accel, decel), rel=1e-12
    )


@given(DISTANCES, SPEEDS, ACCELS, st.floats(1.01, 3.0))
def test_a_longer_move_takes_longer_and_a_livelier_drive_never_does(
    distance: float, speed: float, accel: float, more: float
) -> None:
    time = trapezoid_time(distance, speed, accel, accel)
    assert trapezoid_time(distance * more, speed, accel, accel) > time
    assert trapezoid_time(distance, speed * more, accel, accel) <= time * (1 + 1e-12)
    assert trapezoid_time(distance, speed, accel * more, accel) < time


def test_where_the_triangle_turns_into_a_trapezoid_there_is_no_step() -> None:
    just_reached = 1.0  # v^2/a for 1 m/s at 1 m/s2
    below, above = (trapezoid_time(just_reached * (1 + by), 1.0, 1.0, 1.0) for by in (-1e-9, 1e-9))
    assert below == pytest.approx(above, abs=1e-8)
    assert above == pytest.approx(2.0, abs=1e-8)


def test_no_way_takes_no_time() -> None:
    assert trapezoid_time(0.0, 1.0, 1.0, 1.0) == 0.0
    assert trapezoid_peak(0.0, 1.0, 1.0, 1.0) == 0.0
    assert peak_speed_for_time(0.0, 1.0, 1.0, 1.0) == 0.0


def test_a_symmetric_triangle_takes_twice_the_square_root_of_distance_over_acceleration() -> None:
    assert trapezoid_time(0.5, 100.0, 2.0, 2.0) == pytest.approx(2 * sqrt(0.5 / 2.0), rel=1e-12)
