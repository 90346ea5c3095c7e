"""Laws of the side grip."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.sizing.physics.flow import lateral_accel
from intake.sizing.physics.friction import STANDARD_GRAVITY
from intake.sizing.physics.grip import bend_accel, grip_needed

MASSES = st.floats(0.05, 30.0)
MUS = st.floats(0.1, 1.5)


@given(MASSES, MUS, st.floats(1.0, 4.0), st.floats(0.0, 3.0), st.floats(0.0, 3.0))
def test_the_friction_of_both_sides_bears_the_load_with_the_safety_asked_for(
    mass: float, mu: float, safety: float, accel: float, bend: float
) -> None:
    squeeze = grip_needed(mass, mu, safety, accel, bend)
    load = mass * (STANDARD_GRAVITY + accel + bend)
    assert mu * squeeze + mu * squeeze == pytest.approx(safety * load, rel=1e-12)


def test_a_slippery_side_needs_more_squeeze() -> None:
    squeezes = [grip_needed(2.0, mu, 2.0) for mu in (1.0, 0.8, 0.5, 0.3, 0.1)]
    assert squeezes == sorted(squeezes)
    assert squeezes[-1] == pytest.approx(10 * squeezes[0])


def test_starting_and_bending_are_added_as_the_worst_bend_does() -> None:
    assert grip_needed(2.0, 0.5, 1.0, accel=0.4, bend_accel=0.6) == pytest.approx(
        grip_needed(2.0, 0.5, 1.0, accel=1.0), rel=1e-12
    )


@given(st.floats(0.0, 2.0), st.floats(0.1, 5.0))
def test_a_bend_of_the_grip_is_a_curve_like_any_other(speed: float, radius: float) -> None:
    assert bend_accel(speed, radius) == lateral_accel(speed, radius)
