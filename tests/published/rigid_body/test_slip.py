"""Slip on a slope, with and without a start or stop, against a rigid-body engine."""

from math import degrees, radians
from random import Random

import pytest

from intake.sizing.physics.friction import STANDARD_GRAVITY, friction_needed, slip_slope
from intake.sizing.physics.tension import carry_gain

from .products import BEYOND, SHORT, Product, drawn, named, where
from .world import Motion

CARTON = Product(0.40, 0.30, 0.20, centre=0.10, mass=5.0)
DRAWN = drawn(seed=20_250_301, count=40, suits=Product.slides_first)
NAMES = [named(*one) for one in DRAWN]


def slope_where(used: float, mu: float, accel: float) -> float:
    """Slope at which so much of the friction is used, by our formula."""
    return where(lambda slope: friction_needed(slope, accel) / mu, used, 1.4)


def start(mu: float, seed: int) -> float:
    """An acceleration that leaves room for a slope [m/s2]."""
    return Random(seed).uniform(0.05, 0.6) * mu * STANDARD_GRAVITY


def test_a_carton_of_five_kilograms_slides_on_seventeen_degrees_and_rests_a_little_below() -> None:
    limit = slip_slope(0.3)
    assert degrees(limit) == pytest.approx(16.7, abs=0.05)  # arctan 0.3, any table
    assert Motion(radians(17.0)).ride(CARTON, 0.3).slides
    assert Motion(BEYOND * limit).ride(CARTON, 0.3).slides
    assert Motion(SHORT * limit).ride(CARTON, 0.3).stands


@pytest.mark.parametrize(("product", "mu"), DRAWN, ids=NAMES)
def test_at_rest_it_slides_beyond_the_slope_we_reckon_and_not_before(product: Product, mu: float) -> None:
    assert Motion(slope_where(SHORT, mu, 0.0)).ride(product, mu).stands
    assert Motion(slope_where(BEYOND, mu, 0.0)).ride(product, mu).slides


@pytest.mark.parametrize(("seed", "product", "mu"), [(i, *one) for i, one in enumerate(DRAWN)], ids=NAMES)
def test_with_a_start_it_slides_beyond_the_slope_we_reckon_and_not_before(
    seed: int, product: Product, mu: float
) -> None:
    # One half start on the way up, the other stop on the way down: both push the belt uphill under the product.
    accel, speed = start(mu, seed), -1.0 if seed % 2 else 0.0
    assert Motion(slope_where(SHORT, mu, accel), speed, accel).ride(product, mu).stands
    assert Motion(slope_where(BEYOND, mu, accel), speed, accel).ride(product, mu).slides


@pytest.mark.parametrize(("seed", "product", "mu"), [(i, *one) for i, one in enumerate(DRAWN[:8])], ids=NAMES[:8])
def test_a_start_downhill_is_not_the_worse(seed: int, product: Product, mu: float) -> None:
    accel = start(mu, seed)
    assert Motion(slope_where(BEYOND, mu, accel), accel=-accel).ride(product, mu).stands


@pytest.mark.parametrize("mu", [0.2, 0.45, 0.7])
def test_beyond_the_slip_slope_it_gains_what_weight_less_friction_gives(mu: float) -> None:
    slope = 1.05 * slip_slope(mu)
    left_over = -carry_gain(STANDARD_GRAVITY, slope, mu, climbs=False)
    assert Motion(slope).ride(CARTON, mu).gains_mm_s2 / 1e3 == pytest.approx(left_over, rel=0.03)
