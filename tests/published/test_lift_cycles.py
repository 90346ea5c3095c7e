"""Lifts with carriers or a platform: times by quadrature, and feeding a moving carrier frame by frame."""

from collections.abc import Callable
from random import Random
from typing import Any

import numpy as np
import pytest

from intake.sizing.physics.lift import carrier_speed, feed_speed_needed, index_cycle, reciprocating_cycle
from intake.sizing.physics.motion import trapezoid_peak, trapezoid_time

MOVES = [  # distance [m], speed [m/s], accel, decel [m/s2]
    (0.4, 0.6, 1.6, 1.6),
    (0.15, 0.9, 1.0, 1.0),
    (3.25, 1.2, 1.2, 1.2),
    (12.0, 0.8, 0.5, 0.7),
    (1.0, 2.0, 3.0, 0.8),
]


@pytest.mark.parametrize(("distance", "speed", "accel", "decel"), MOVES)
def test_a_move_takes_the_time_that_its_slowness_adds_up_to(
    distance: float, speed: float, accel: float, decel: float, move_time: Callable[..., float]
) -> None:
    assert trapezoid_time(distance, speed, accel, decel) == pytest.approx(
        move_time(distance, speed, accel, decel), rel=5e-6
    )
    peak = trapezoid_peak(distance, speed, accel, decel)
    assert peak**2 / 2 / accel + peak**2 / 2 / decel <= distance * (1 + 1e-12)


@pytest.mark.parametrize(("pitch", "speed", "accel", "dwell"), [(0.4, 0.6, 1.6, 0.89), (0.9, 0.5, 0.8, 2.0)])
def test_an_index_cycle_is_one_pitch_by_quadrature_and_the_wait(
    pitch: float, speed: float, accel: float, dwell: float, move_time: Callable[..., float]
) -> None:
    assert index_cycle(pitch, speed, accel, dwell) == pytest.approx(
        move_time(pitch, speed, accel, accel) + dwell, rel=5e-6
    )


def test_a_platform_makes_the_printed_stroke_twice_and_is_loaded_and_unloaded(as_printed: Callable[..., Any]) -> None:
    # Khurmi and Gupta, Theory of Machines Ex 2.5 (inputs only, recomputed): 500 mm in 1 s at 750 mm/s. The loading
    # times are our own.
    assert reciprocating_cycle(0.5, 0.750, 2.25, load_s=1.5, unload_s=2.5) == as_printed("6.000", share=0.0)


@pytest.mark.parametrize("travel", [0.4, 3.25, 9.0])
def test_a_platform_cycle_is_both_ways_by_quadrature(travel: float, move_time: Callable[..., float]) -> None:
    ways = 2.0 * move_time(travel, 1.2, 1.2, 1.2)
    assert reciprocating_cycle(travel, 1.2, 1.2, load_s=1.1, unload_s=0.7) == pytest.approx(ways + 1.8, rel=5e-6)


def test_carriers_pass_as_fast_as_the_printed_belt_that_brings_its_loads(as_printed: Callable[..., Any]) -> None:
    # Krishnaswamy and Vijayachitra, Industrial Instrumentation Ex 5.15 (inputs only, recomputed): 165 kg on each
    # 16 m, 3382.5 kg/min, 328 m/min.
    assert carrier_speed(3382.5 / 165.0 / 60.0, 16.0) * 60.0 == as_printed("328", share=0.0)


def gets_in(feed: float, *, length: float, height: float, chain: float, pitch: float, clear: float) -> bool:
    """Whether a product can run onto a rising column of carriers without meeting one, started at the best moment.

    Frame by frame: each carrier fills what is up to `clear` below its floor; the product lies at level 0 and fills
    what is up to `height` above it, until its tail is in and a carrier takes it along.
    """
    times = np.linspace(0.0, length / feed, 1500)[1:-1]
    for phase in np.linspace(0.0, pitch, 1500):
        floors = phase + chain * times[:, None] + pitch * np.arange(-4, 4)[None, :]
        meets = (floors > 0.0) & (floors - clear < height)
        if not bool(meets.any()):
            return True
    return False


@pytest.mark.parametrize("seed", range(8))
def test_a_feed_as_fast_as_we_ask_gets_in_and_a_slower_one_is_caught(seed: int) -> None:
    rng = Random(seed)
    length, height, clear = rng.uniform(0.15, 0.9), rng.uniform(0.05, 0.4), rng.uniform(0.02, 0.1)
    pitch, chain = height + clear + rng.uniform(0.1, 0.5), rng.uniform(0.05, 0.8)
    needed = feed_speed_needed(length, chain, window=pitch - height - clear)
    how = {"length": length, "height": height, "chain": chain, "pitch": pitch, "clear": clear}
    assert gets_in(1.02 * needed, **how)
    assert not gets_in(0.98 * needed, **how)
