"""Slip and tip in a level curve at speed, against a rigid-body engine: a table that turns."""

from math import inf
from random import Random

import pytest

from intake.sizing.physics.flow import lateral_accel
from intake.sizing.physics.friction import friction_needed
from intake.sizing.physics.tipping import tipping_share_lateral, tipping_share_round

from .products import BEYOND, SHORT, Product, drawn, named, where
from .world import HARD_TO_SLIP, Motion

FASTEST = 30.0  # m/s, beyond what any of these products bears
SLIDERS = drawn(seed=20_250_302, count=32, suits=Product.slides_first)
TIPPERS = drawn(seed=20_250_303, count=32, suits=Product.tips_first)


def bend(seed: int) -> float:
    """Radius at the middle of the product [m]."""
    return Random(seed).uniform(0.5, 3.0)


def tipping(product: Product, speed: float, radius: float) -> float:
    lateral = lateral_accel(speed, radius)
    if product.is_round:
        return tipping_share_round(0.0, 0.0, lateral, product.centre, product.length)
    return tipping_share_lateral(0.0, lateral, product.centre, product.width)


@pytest.mark.parametrize(
    ("seed", "product", "mu"), [(i, *one) for i, one in enumerate(SLIDERS)], ids=[named(*one) for one in SLIDERS]
)
def test_in_a_curve_it_slides_beyond_the_speed_we_reckon_and_not_before(seed: int, product: Product, mu: float) -> None:
    radius = bend(seed)

    def used(speed: float) -> float:
        return friction_needed(0.0, lateral=lateral_accel(speed, radius)) / mu

    assert Motion(speed=where(used, SHORT, FASTEST), radius=radius).ride(product, mu).stands
    assert Motion(speed=where(used, BEYOND, FASTEST), radius=radius).ride(product, mu).slides


@pytest.mark.parametrize(
    ("seed", "product", "mu"), [(i, *one) for i, one in enumerate(TIPPERS)], ids=[named(*one) for one in TIPPERS]
)
def test_in_a_curve_it_tips_beyond_the_speed_we_reckon_and_not_before(seed: int, product: Product, mu: float) -> None:
    radius = bend(seed)

    def used(speed: float) -> float:
        return tipping(product, speed, radius)

    assert Motion(speed=where(used, SHORT, FASTEST), radius=radius).ride(product, mu).stands
    assert Motion(speed=where(used, BEYOND, FASTEST), radius=radius).ride(product, mu).tips


def test_the_same_product_goes_straight_ahead_at_that_speed() -> None:
    # So that it is the curve that tips it, and nothing in how it was set going.
    tall = Product(0.2, 0.2, 0.4, centre=0.2)
    speed = where(lambda v: tipping(tall, v, 1.5), BEYOND, FASTEST)
    assert Motion(speed=speed, radius=1.5).ride(tall, HARD_TO_SLIP).tips
    assert Motion(speed=speed, radius=inf).ride(tall, HARD_TO_SLIP).stands
