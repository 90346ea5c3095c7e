"""Laws of tipping."""

from math import cos, hypot, pi, sin

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from intake.sizing.physics.friction import STANDARD_GRAVITY, friction_needed
from intake.sizing.physics.tipping import tip_slope, tipping_share, tipping_share_lateral, tipping_share_round

SLOPES = st.floats(0.0, 1.4)
ACCELS = st.floats(0.0, 20.0)
SIZES = st.floats(0.01, 3.0)


@given(SIZES, SIZES)
def test_at_the_tip_slope_the_whole_footing_is_used_up(height: float, base: float) -> None:
    assert tipping_share(tip_slope(height, base), 0.0, height, base) == pytest.approx(1.0, rel=1e-9)


@given(SLOPES, ACCELS, SIZES, SIZES)
def test_the_share_is_how_far_from_the_middle_the_contact_force_must_push(
    slope: float, accel: float, height: float, base: float
) -> None:
    # World axes x ahead, z up. The contact force per kilogram points through the centre of gravity.
    uphill, normal = np.array([cos(slope), sin(slope)]), np.array([-sin(slope), cos(slope)])
    contact = accel * uphill + np.array([0.0, STANDARD_GRAVITY])
    centre = height * normal
    middle_to_push = centre - contact * (centre @ normal) / (contact @ normal)
    assert tipping_share(slope, accel, height, base) == pytest.approx(
        -(middle_to_push @ uphill) / (base / 2), rel=1e-6, abs=1e-9
    )


@given(SLOPES, ACCELS, SIZES, SIZES)
def test_the_thrust_that_decides_slipping_decides_tipping(
    slope: float, accel: float, height: float, base: float
) -> None:
    assert tipping_share(slope, accel, height, base) == pytest.approx(
        friction_needed(slope, accel) * height / (base / 2), rel=1e-9, abs=1e-12
    )


@given(SLOPES, ACCELS, SIZES, SIZES, st.floats(0.001, 100.0))
def test_a_model_of_any_scale_tips_at_the_same_slope(
    slope: float, accel: float, height: float, base: float, scale: float
) -> None:
    assert tipping_share(slope, accel, height * scale, base * scale) == pytest.approx(
        tipping_share(slope, accel, height, base), rel=1e-9
    )


@given(SLOPES, ACCELS, ACCELS, SIZES, SIZES)
def test_a_round_base_feels_slope_and_curve_as_one_thrust(
    slope: float, accel: float, lateral: float, height: float, diameter: float
) -> None:
    along = tipping_share(slope, accel, height, diameter)
    across = tipping_share_lateral(slope, lateral, height, diameter)
    assert tipping_share_round(slope, accel, lateral, height, diameter) == pytest.approx(
        hypot(along, across), rel=1e-9, abs=1e-12
    )


@given(SLOPES, ACCELS, SIZES, SIZES)
def test_a_round_base_without_a_curve_tips_like_a_square_one(
    slope: float, accel: float, height: float, base: float
) -> None:
    assert tipping_share_round(slope, accel, 0.0, height, base) == pytest.approx(
        tipping_share(slope, accel, height, base), rel=1e-12
    )


def test_a_slope_leaves_less_weight_against_the_thrust_of_a_curve() -> None:
    shares = [tipping_share_lateral(i * 0.05, 2.0, 0.3, 0.3) for i in range(30)]
    assert shares == sorted(shares)
    assert shares[-1] > shares[0]


def test_a_start_lowers_the_slope_at_which_a_product_tips() -> None:
    def tips_at(accel: float) -> float:
        return float(brentq(lambda slope: tipping_share(slope, accel, 0.3, 0.3) - 1.0, 0.0, 1.2))

    at_rest = tips_at(0.0)
    assert at_rest == pytest.approx(tip_slope(0.3, 0.3), rel=1e-9)
    assert tips_at(0.5) < tips_at(0.2) < at_rest


def test_a_lying_centre_of_gravity_at_belt_height_never_tips() -> None:
    assert tipping_share(1.0, 3.0, height=0.0, base=0.1) == 0.0


def test_a_cube_tips_at_forty_five_degrees() -> None:
    assert tip_slope(height=0.5, base=1.0) == pytest.approx(pi / 4, rel=1e-15)
