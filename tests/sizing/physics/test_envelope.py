"""Laws of the space on plan."""

from math import atan2, hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.sizing.physics.envelope import run_plan_length


@given(st.floats(0.1, 30.0), st.floats(0.01, 1.5))
def test_rise_and_plan_length_make_the_slope(rise: float, slope: float) -> None:
    assert atan2(rise, run_plan_length(rise, slope)) == pytest.approx(slope, rel=1e-9)


def test_a_three_four_five_slope_takes_four_for_a_rise_of_three() -> None:
    plan = run_plan_length(3.0, atan2(3.0, 4.0))
    assert plan == pytest.approx(4.0, rel=1e-12)
    assert hypot(3.0, plan) == pytest.approx(5.0, rel=1e-12)


def test_a_steeper_slope_takes_less_floor() -> None:
    plans = [run_plan_length(3.0, slope) for slope in (0.1, 0.3, 0.5, 0.8, 1.2)]
    assert plans == sorted(plans, reverse=True)
