"""Moves from rest to rest, against textbooks. Where a move has no ramp at one end, that ramp is all but vertical."""

from collections.abc import Callable
from typing import Any

import pytest
from scipy.optimize import brentq

from intake.sizing.physics.lift import index_cycle
from intake.sizing.physics.motion import peak_speed_for_time, trapezoid_peak, trapezoid_time

KMH = 1 / 3.6
MILE = 1609.344
AT_ONCE = 1e12  # m/s2

TIMES = [  # distance, speed, accel, decel (in any one unit of length), printed time [s]
    pytest.param(
        0.5, 0.750, 2.25, 2.25, "1.000", id="Khurmi and Gupta Ex 2.5: stroke of 500 mm (inputs only, recomputed)"
    ),
    pytest.param(100.0, 10.0, 1.5, 6.0, "14.17", id="Khurmi and Gupta Ex 3.2 (inputs only, recomputed)"),
    pytest.param(
        5.00 * MILE,
        183.58 * MILE / 3600,
        60.0 * MILE / 3600 / 4.00,
        AT_ONCE,
        "104",
        id="OpenStax College Physics 2e 2.5 Problem 39: no slow-down",
    ),
    pytest.param(
        75.0, 1e3, 10.0, 15.0, "5.00", id="McLean, Schaum's Problem 12.5: triangle, ft (inputs only, recomputed)"
    ),
    pytest.param(
        8.056,
        200 / 60,
        200 / 60 / 0.5,
        200 / 60 * 3,
        "2.833",
        id="McLean, Schaum's Problem 12.32: turns (inputs only, recomputed)",
    ),
    pytest.param(43.6, 24.56, 24.56 / 0.3, 24.56 / 0.45, "2.15", id="Open article on motion profiles, in (secondary)"),
]


@pytest.mark.parametrize(("distance", "speed", "accel", "decel", "printed"), TIMES)
def test_a_move_takes_the_printed_time(
    distance: float, speed: float, accel: float, decel: float, printed: str, as_printed: Callable[..., Any]
) -> None:
    assert trapezoid_time(distance, speed, accel, decel) == as_printed(printed, share=0.0)


PEAKS = [  # distance, time [s], accel, decel, unit of the print, printed peak speed
    pytest.param(
        1500.0,
        100.0,
        2.4 * KMH,
        3.2 * KMH,
        KMH,
        "73.9",
        id="Chakrabarti, Power System Engineering Ex 5.1, km/h (inputs only, recomputed)",
    ),
    pytest.param(0.5, 1.0, 2.25, 2.25, 1e-3, "750", id="Khurmi and Gupta Ex 2.5, mm/s (inputs only, recomputed)"),
    pytest.param(100.0, 9.69, 4.07, AT_ONCE, 1.0, "12.2", id="OpenStax College Physics 2e 2.5 Problem 40: 100 m"),
    pytest.param(
        200.0, 19.30, 11.2 / 3.00, AT_ONCE, 1.0, "11.2", id="OpenStax College Physics 2e 2.5 Problem 40: 200 m"
    ),
]


@pytest.mark.parametrize(("distance", "time", "accel", "decel", "unit", "printed"), PEAKS)
def test_a_move_kept_to_a_time_peaks_at_the_printed_speed(
    distance: float,
    time: float,
    accel: float,
    decel: float,
    unit: float,
    printed: str,
    as_printed: Callable[..., Any],
) -> None:
    assert peak_speed_for_time(distance, time, accel, decel) / unit == as_printed(printed, share=0.0)


def test_the_steady_part_between_different_ramps_is_the_printed_one(as_printed: Callable[..., Any]) -> None:
    # Khurmi and Gupta, Theory of Machines Ex 3.2 (inputs only, recomputed): 100 m, 10 m/s, 1.5 up, 6 m/s2 down.
    steady = trapezoid_time(100.0, 10.0, 1.5, 6.0) - 10.0 / 1.5 - 10.0 / 6.0
    assert steady == as_printed("5.833", share=0.0)


def test_a_triangle_peaks_where_both_ramps_meet(as_printed: Callable[..., Any]) -> None:
    # McLean, Schaum's Problem 12.5 (inputs only, recomputed): 30 ft/s after 75 ft at 10 up and 15 ft/s2 down.
    assert trapezoid_peak(75.0, 1e3, 10.0, 15.0) == as_printed("30.0", share=0.0)


def test_the_slowing_rate_that_keeps_a_timetable_is_the_printed_one(as_printed: Callable[..., Any]) -> None:
    # Chakrabarti et al., Power System Engineering Ex 5.2 (inputs only, recomputed): 3.0 km, scheduled 43.5 km/h with
    # a stop of 30 s, peak 65 km/h, 1.3 km/h per s up.
    moving = 3.0 / 43.5 * 3600 - 30.0
    rate = brentq(lambda decel: trapezoid_time(3000.0, 65 * KMH, 1.3 * KMH, decel) - moving, 0.1, 5.0, xtol=1e-12)
    assert rate / KMH == as_printed("1.198", share=0.0)


def test_the_starting_rate_that_keeps_a_timetable_is_the_printed_one(as_printed: Callable[..., Any]) -> None:
    # Chakrabarti et al., Power System Engineering Ex 5.3 (inputs only, recomputed): 0.8 km, scheduled 25 km/h with a
    # stop of 20 s, peak a fifth above the mean, 3.0 km/h per s down.
    moving = 0.8 / 25 * 3600 - 20.0
    peak = 1.2 * 800.0 / moving
    rate = brentq(lambda accel: trapezoid_time(800.0, peak, accel, 3.0 * KMH) - moving, 0.1, 5.0, xtol=1e-12)
    assert rate / KMH == as_printed("1.85", share=0.0)


def test_an_indexing_chain_makes_the_printed_move_and_then_waits(as_printed: Callable[..., Any]) -> None:
    # The stroke of Khurmi and Gupta Ex 2.5 once more (inputs only, recomputed), with a dwell of our own.
    assert index_cycle(0.5, 0.750, 2.25, dwell_s=1.25) == as_printed("2.25", share=0.0)
