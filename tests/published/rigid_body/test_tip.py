"""Tipping along a slope, with and without a start or stop, against a rigid-body engine."""

from math import radians
from random import Random

import pytest

from intake.sizing.physics.friction import STANDARD_GRAVITY
from intake.sizing.physics.tipping import tip_slope, tipping_share, tipping_share_round

from .products import BEYOND, SHORT, Product, drawn, named, where
from .world import HARD_TO_SLIP, Motion

DRAWN = drawn(seed=20_250_304, count=40, suits=Product.tips_first)
NAMES = [named(*one) for one in DRAWN]


def tipping(product: Product, slope: float, accel: float) -> float:
    if product.is_round:
        return tipping_share_round(slope, accel, 0.0, product.centre, product.length)
    return tipping_share(slope, accel, product.centre, product.length)


def slope_where(used: float, product: Product, accel: float) -> float:
    """Slope at which so much of the footing is used, by our formula."""
    return where(lambda slope: tipping(product, slope, accel), used, 1.4)


def start(product: Product, seed: int) -> float:
    """An acceleration that leaves room for a slope [m/s2]."""
    return Random(seed).uniform(0.05, 0.6) * product.length / 2 / product.centre * STANDARD_GRAVITY


def test_the_draw_holds_many_centres_of_gravity_boxes_and_cylinders() -> None:
    heights = [product.centre / product.height for product, _ in DRAWN]
    assert min(heights) < 0.4
    assert max(heights) > 0.6
    assert 8 <= sum(product.is_round for product, _ in DRAWN) <= 24


@pytest.mark.parametrize(("product", "mu"), DRAWN, ids=NAMES)
def test_at_rest_it_tips_beyond_the_slope_we_reckon_and_not_before(product: Product, mu: float) -> None:
    assert Motion(slope_where(SHORT, product, 0.0)).ride(product, mu).stands
    assert Motion(slope_where(BEYOND, product, 0.0)).ride(product, mu).tips


@pytest.mark.parametrize(("seed", "product", "mu"), [(i, *one) for i, one in enumerate(DRAWN)], ids=NAMES)
def test_with_a_start_it_tips_beyond_the_slope_we_reckon_and_not_before(seed: int, product: Product, mu: float) -> None:
    # One half start on the way up, the other stop on the way down: both push the belt uphill under the product.
    accel, speed = start(product, seed), -1.0 if seed % 2 else 0.0
    assert Motion(slope_where(SHORT, product, accel), speed, accel).ride(product, mu).stands
    assert Motion(slope_where(BEYOND, product, accel), speed, accel).ride(product, mu).tips


@pytest.mark.parametrize(("seed", "product", "mu"), [(i, *one) for i, one in enumerate(DRAWN[:8])], ids=NAMES[:8])
def test_a_start_downhill_is_not_the_worse(seed: int, product: Product, mu: float) -> None:
    accel = start(product, seed)
    assert Motion(slope_where(BEYOND, product, accel), accel=-accel).ride(product, mu).stands


@pytest.mark.parametrize("way", [1.0, -1.0], ids=["start", "stop"])
@pytest.mark.parametrize(("product", "mu"), DRAWN[:8], ids=NAMES[:8])
def test_on_the_level_a_start_and_a_stop_tip_it_alike(product: Product, mu: float, way: float) -> None:
    def used(accel: float) -> float:
        return tipping(product, 0.0, accel)

    assert Motion(speed=2.0, accel=way * where(used, SHORT, 20.0)).ride(product, mu).stands
    assert Motion(speed=2.0, accel=way * where(used, BEYOND, 20.0)).ride(product, mu).tips


@pytest.mark.parametrize(("centre", "slope"), [(0.15, 45.0), (0.15 * 3**0.5, 30.0)])
def test_a_box_of_30_cm_that_cannot_slide_goes_over_at_the_slope_of_the_plumb_line(centre: float, slope: float) -> None:
    # Half the base over the height of the centre: 1 at 45 degrees, 1/sqrt(3) at 30, from any table of tangents.
    box = Product(0.3, 0.3, 0.4, centre)
    assert tip_slope(centre, 0.3) == pytest.approx(radians(slope))
    assert Motion(SHORT * radians(slope)).ride(box, HARD_TO_SLIP).stands
    assert Motion(BEYOND * radians(slope)).ride(box, HARD_TO_SLIP).tips
