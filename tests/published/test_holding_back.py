"""Loads that drive the machine: power to be braked, and how a gear passes it on backwards."""

from collections.abc import Callable
from math import radians
from typing import Any

import pytest

from intake.sizing.physics.friction import STANDARD_GRAVITY
from intake.sizing.physics.power import lift_power, motor_power_needed, shaft_power
from intake.sizing.physics.tension import carry_gain

G = STANDARD_GRAVITY


def test_what_holds_a_block_back_at_the_printed_force_is_power_below_nothing(as_printed: Callable[..., Any]) -> None:
    # OpenStax UP1 6.4 Additional Problem 111: 100.0 kg steady down 37.0 degrees, mu_k 0.8 tan(37): 120 N holds it
    # back. At 2.5 m/s that is 300 W into the brake.
    along = carry_gain(100.0 * G, radians(37.0), 0.8 * 0.753554, climbs=False)
    shaft = shaft_power(along, 0.0, 2.5)
    assert -shaft == as_printed("3.0e2")
    assert motor_power_needed(shaft, 1.0) == pytest.approx(-shaft)


def test_lowering_gives_back_what_lifting_took(as_printed: Callable[..., Any]) -> None:
    # OpenStax UP1 7.4 Problem 77: 80 kg by 20 m in 10 s: 1.57 kW, up or down.
    assert lift_power(8.0, 20.0) / 1e3 == as_printed("1.57")
    assert lift_power(8.0, -20.0) / 1e3 == as_printed("-1.57")


@pytest.mark.parametrize("efficiency", [0.55, 0.75, 0.8, 0.9, 0.97, 1.0])
def test_a_gear_that_rubs_the_same_both_ways_brakes_at_least_what_is_reckoned(efficiency: float) -> None:
    # A gear that loses a fixed force gives 1/efficiency going up; backwards that force helps, and 2 - 1/efficiency is
    # left (efficiency in reverse; textbook form from memory). We count on more than that, so the brake is not small.
    lift = 1000.0
    lost = lift / efficiency - lift
    up, down = motor_power_needed(lift, efficiency), motor_power_needed(-lift, efficiency)
    assert up == pytest.approx(lift + lost)
    assert down >= (lift - lost) - 1e-9
    assert down <= lift


def test_the_block_of_the_textbook_shows_both_ways_of_one_friction(as_printed: Callable[..., Any]) -> None:
    # OpenStax UP1 6.4 Additional Problem 97: 3.0 kg on 40.0 degrees, 26 N up and 12 N back down. Taken as a gear, its
    # efficiency up is weight along the slope over 26 N; we then ask a bit more than 12 N of the brake.
    along = carry_gain(3.0 * G, radians(40.0), 0.0, climbs=True)
    efficiency = along / 26.0
    assert motor_power_needed(along, efficiency) == pytest.approx(26.0)
    assert 2.0 * along - 26.0 == as_printed("12")
    assert 2.0 * along - 26.0 < motor_power_needed(-along, efficiency) < along
