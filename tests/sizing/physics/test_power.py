"""Laws of drive power and of the choice of a motor."""

from itertools import pairwise
from math import inf

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.sizing.physics.power import (
    IEC_KW,
    NEMA_HP,
    WATTS_PER_HP,
    lift_power,
    motor_power_needed,
    next_motor,
    shaft_power,
)

SERIES = pytest.mark.parametrize("series", [IEC_KW, NEMA_HP], ids=["kW", "hp"])


@SERIES
@given(needed=st.floats(0.0, 70_000.0))
def test_the_motor_gives_the_power_and_the_next_smaller_one_would_not(series: tuple[float, ...], needed: float) -> None:
    rating = next_motor(needed, series)
    assert rating is not None
    assert rating >= needed * (1 - 1e-9)
    assert all(other < needed for other in series if other < rating)


@SERIES
def test_a_need_of_exactly_one_rating_takes_it_even_if_rounding_adds_a_bit(series: tuple[float, ...]) -> None:
    for rating in series:
        assert next_motor(rating, series) == rating
        assert next_motor(rating * (1 + 1e-12), series) == rating
        assert next_motor(rating * 1.001, series) != rating


@SERIES
def test_past_the_end_of_the_series_there_is_no_motor(series: tuple[float, ...]) -> None:
    assert next_motor(series[-1] * 1.01, series) is None
    assert next_motor(inf, series) is None


@SERIES
def test_no_load_takes_the_smallest_motor(series: tuple[float, ...]) -> None:
    assert next_motor(0.0, series) == series[0]


@SERIES
def test_a_series_ascends(series: tuple[float, ...]) -> None:
    assert all(small < large for small, large in pairwise(series))


def test_the_two_series_keep_watts() -> None:
    assert IEC_KW[0] == 60.0
    assert IEC_KW[-1] == 75_000.0
    assert NEMA_HP[0] == pytest.approx(0.25 * WATTS_PER_HP)


@given(st.floats(0.0, 1e5), st.floats(0.05, 1.0))
def test_losses_add_to_a_driving_motor_and_relieve_a_braking_one(shaft: float, efficiency: float) -> None:
    assert motor_power_needed(shaft, efficiency) >= shaft
    assert 0.0 <= motor_power_needed(-shaft, efficiency) <= shaft


def test_without_losses_driving_and_braking_take_the_same_power() -> None:
    assert motor_power_needed(500.0, 1.0) == motor_power_needed(-500.0, 1.0) == 500.0


def test_a_pull_out_of_reach_asks_for_infinite_power_and_stands_still_for_none() -> None:
    assert motor_power_needed(shaft_power(inf, 50.0, 0.5), 0.8) == inf
    assert shaft_power(inf, 50.0, 0.0) == 0.0


def test_a_load_that_pulls_the_belt_through_the_drive_gives_negative_power() -> None:
    assert shaft_power(100.0, 300.0, 0.5) == -100.0


@given(st.floats(0.0, 100.0), st.floats(0.0, 30.0))
def test_lowering_gives_back_what_lifting_took(flow: float, rise: float) -> None:
    assert lift_power(flow, -rise) == -lift_power(flow, rise)
