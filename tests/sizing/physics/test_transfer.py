"""Laws of crests, rollers and gaps."""

from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.sizing.physics.transfer import bridges_gap, rollers_under, sag


@pytest.mark.parametrize("share", [0.05, 0.1, 0.2, 0.4])
def test_the_sag_is_the_height_of_the_arc_within_its_range(share: float) -> None:
    radius = 2.0
    length = share * radius
    exact = radius - sqrt(radius**2 - (length / 2) ** 2)
    assert sag(length, radius) == pytest.approx(exact, rel=0.0102)
    assert sag(length, radius) < exact


def test_a_base_twice_as_long_hangs_four_times_as_high() -> None:
    assert sag(0.8, 3.0) == pytest.approx(4 * sag(0.4, 3.0), rel=1e-12)


@given(st.floats(0.03, 0.3), st.floats(0.0, 1.0), st.floats(0.0, 0.9999))
def test_a_base_of_three_roller_pitches_stands_on_three_rollers_wherever_it_is(
    pitch: float, extra: float, offset: float
) -> None:
    base = 3.0 * pitch * (1.0 + 1e-9) + extra
    assert rollers_under(base, pitch) >= 3.0
    begins = offset * pitch
    touched = [i for i in range(100) if begins <= i * pitch <= begins + base]
    assert len(touched) >= 3


@given(st.floats(0.02, 2.0), st.floats(0.0, 1.0))
def test_below_a_share_of_one_the_nose_lands_before_the_middle_leaves(base: float, gap: float) -> None:
    nose_when_middle_leaves = base / 2
    share = bridges_gap(base, gap)
    assert (share < 1.0) == (gap < nose_when_middle_leaves)


def test_belts_that_touch_leave_nothing_to_bridge() -> None:
    assert bridges_gap(0.2, 0.0) == 0.0
