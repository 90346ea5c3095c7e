"""Laws of lifts with carriers or a platform."""

from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.sizing.physics.lift import carrier_speed, feed_speed_needed, index_cycle, reciprocating_cycle
from intake.sizing.physics.motion import trapezoid_time


@given(st.floats(0.01, 3.0), st.floats(0.1, 3.0))
def test_as_many_carriers_pass_as_products_come(rate: float, pitch: float) -> None:
    assert carrier_speed(rate, pitch) / pitch == pytest.approx(rate, rel=1e-12)


@given(st.floats(0.05, 2.0), st.floats(0.05, 1.5), st.floats(0.05, 1.0))
def test_the_feed_lays_the_whole_length_in_while_the_window_passes(length: float, speed: float, window: float) -> None:
    open_for = window / speed
    assert feed_speed_needed(length, speed, window) * open_for == pytest.approx(length, rel=1e-9)


@pytest.mark.parametrize("window", [0.0, -0.1])
def test_no_feed_is_fast_enough_for_a_window_that_never_opens(window: float) -> None:
    assert feed_speed_needed(0.4, 0.3, window) == inf


def test_a_carrier_that_stands_may_be_fed_at_any_speed() -> None:
    assert feed_speed_needed(0.4, 0.0, 0.2) == 0.0


@given(st.floats(0.1, 30.0), st.floats(0.2, 2.0), st.floats(0.2, 3.0), st.floats(0.0, 20.0), st.floats(0.0, 20.0))
def test_a_platform_goes_the_way_twice_and_waits_twice(
    travel: float, speed: float, accel: float, load: float, unload: float
) -> None:
    cycle = reciprocating_cycle(travel, speed, accel, load, unload)
    assert cycle - load - unload == pytest.approx(2 * trapezoid_time(travel, speed, accel, accel), abs=1e-9)
    assert reciprocating_cycle(travel, speed, accel, unload, load) == pytest.approx(cycle, rel=1e-12)


def test_a_higher_rise_makes_fewer_trips() -> None:
    cycles = [reciprocating_cycle(rise, 0.8, 0.6, 3.0, 3.0) for rise in (0.5, 1.0, 3.0, 9.0)]
    assert cycles == sorted(cycles)


def test_an_indexing_chain_with_no_dwell_is_bound_by_its_moves_alone() -> None:
    assert index_cycle(0.5, 1.0, 2.0, 0.0) == trapezoid_time(0.5, 1.0, 2.0, 2.0)


@given(st.floats(0.05, 2.0), st.floats(0.0, 5.0), st.floats(0.01, 5.0))
def test_each_second_of_dwell_is_a_second_of_cycle(pitch: float, dwell: float, more: float) -> None:
    gained = index_cycle(pitch, 0.8, 1.5, dwell + more) - index_cycle(pitch, 0.8, 1.5, dwell)
    assert gained == pytest.approx(more, abs=1e-9)
