"""Laws of cleats."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.sizing.physics.cleats import cleat_height_needed, leans_over
from intake.sizing.physics.tipping import tip_slope, tipping_share


@given(st.floats(0.0, 1.4), st.floats(0.01, 1.0), st.floats(0.01, 1.0))
def test_leaning_on_a_cleat_is_tipping_without_a_start(slope: float, height: float, base: float) -> None:
    assert leans_over(slope, height, base) == pytest.approx(tipping_share(slope, 0.0, height, base), rel=1e-9)


@given(st.floats(0.01, 1.0), st.floats(0.01, 1.0))
def test_it_leans_over_beyond_its_tip_slope_and_not_before(height: float, base: float) -> None:
    limit = tip_slope(height, base)
    assert leans_over(limit * 0.999, height, base) < 1.0 < leans_over(min(limit * 1.001, 1.57), height, base)


def test_half_the_height_of_a_product_is_half_its_height() -> None:
    assert cleat_height_needed(0.3, 0.5) == pytest.approx(0.15, rel=1e-12)
