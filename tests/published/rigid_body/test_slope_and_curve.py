"""Slope and curve at once, against a rigid-body engine: a belt that turns and climbs, and so moves on a helix."""

from collections.abc import Callable
from dataclasses import dataclass
from math import atan2, cos, hypot, sin
from random import Random

import pytest

from intake.sizing.physics.friction import STANDARD_GRAVITY, friction_needed
from intake.sizing.physics.tipping import tipping_share, tipping_share_lateral, tipping_share_round

from .helix import wide_helix
from .products import BEYOND, SHORT, Product, drawn, named, where
from .world import STEP_S, Motion, mujoco

MOST_ACCEL = 1.2  # m/s2


@dataclass(frozen=True)
class Ride:
    """A product on a helix. `lateral` is square to the slope and level, towards the axis [m/s2]."""

    product: Product
    mu: float
    accel: float
    lateral: float
    way: float  # 1 up, -1 down

    def at(self, slope: float, lateral: float | None = None) -> Motion:
        inwards = self.lateral if lateral is None else lateral
        return wide_helix(self.product, slope, inwards, self.accel, self.way)

    def slipping(self, slope: float) -> float:
        return friction_needed(slope, self.accel, self.lateral) / self.mu

    def tipping(self, slope: float) -> float:
        body = self.product
        if body.is_round:
            return tipping_share_round(slope, self.accel, self.lateral, body.centre, body.length)
        along = tipping_share(slope, self.accel, body.centre, body.length)
        return max(along, tipping_share_lateral(slope, self.lateral, body.centre, body.width))


def rides(seed: int, bodies: list[tuple[Product, float]], bears: Callable[[Product, float], float]) -> list[Ride]:
    """Start and curve each take a part of what friction or footing bears, and leave room for a slope."""
    draw, found = Random(seed), []
    for i, (product, mu) in enumerate(bodies):
        most = bears(product, mu) * STANDARD_GRAVITY
        accel = 0.0 if i % 2 else min(MOST_ACCEL, draw.uniform(0.05, 0.4) * most)
        found.append(Ride(product, mu, accel, draw.uniform(0.2, 0.7) * most, draw.choice((1.0, -1.0))))
    return found


def by_name(found: list[Ride]) -> list[str]:
    return [named(ride.product, ride.mu) + (", starts" if ride.accel else "") for ride in found]


SLIDERS = rides(1, drawn(20_250_305, 36, Product.slides_first), lambda _, mu: mu)
ROUND = rides(
    2,
    drawn(20_250_306, 32, Product.tips_first, rounds=(True,)),
    lambda product, _: product.length / 2 / product.centre,
)
BOXES = rides(
    3,
    drawn(20_250_307, 36, Product.tips_first, rounds=(False,)),
    lambda product, _: min(product.length, product.width) / 2 / product.centre,
)


def test_the_belt_carries_a_product_round_and_up_a_helix() -> None:
    slope, speed, radius, seconds = 0.2, 0.6, 0.8, 2.0
    model, data = Motion(slope, speed, 0.0, radius).going(Product(0.3, 0.2, 0.1, 0.05), 0.6)
    before = data.body("product").xpos.copy()
    mujoco.mj_step(model, data, nstep=round(seconds / STEP_S))
    x, y, z = data.body("product").xpos - [0.0, 0.0, before[2]]
    turned = speed * cos(slope) / radius * seconds
    assert z == pytest.approx(speed * sin(slope) * seconds, abs=0.001)
    assert hypot(x, y) == pytest.approx(hypot(before[0], before[1]), abs=0.002)
    assert atan2(y, x) - atan2(before[1], before[0]) == pytest.approx(turned, abs=0.002)


@pytest.mark.parametrize("ride", SLIDERS, ids=by_name(SLIDERS))
def test_friction_is_one_circle_for_slope_start_and_curve(ride: Ride) -> None:
    assert ride.at(where(ride.slipping, SHORT, 1.4)).ride(ride.product, ride.mu).stands
    assert ride.at(where(ride.slipping, BEYOND, 1.4)).ride(ride.product, ride.mu).slides


@pytest.mark.parametrize("ride", ROUND, ids=by_name(ROUND))
def test_a_round_base_tips_in_the_direction_of_the_whole_thrust(ride: Ride) -> None:
    assert ride.at(where(ride.tipping, SHORT, 1.4)).ride(ride.product, ride.mu).stands
    assert ride.at(where(ride.tipping, BEYOND, 1.4)).ride(ride.product, ride.mu).tips


@pytest.mark.parametrize("ride", BOXES, ids=by_name(BOXES))
def test_a_rectangular_base_tips_over_its_lower_edge_as_if_there_were_no_curve(ride: Ride) -> None:
    assert ride.at(where(ride.tipping, SHORT, 1.4)).ride(ride.product, ride.mu).stands
    assert ride.at(where(ride.tipping, BEYOND, 1.4)).ride(ride.product, ride.mu).tips


@pytest.mark.parametrize("ride", BOXES, ids=by_name(BOXES))
def test_a_rectangular_base_tips_over_its_outer_edge_as_if_there_were_no_slope(ride: Ride) -> None:
    body = ride.product
    slope = where(lambda slope: tipping_share(slope, ride.accel, body.centre, body.length), 0.8, 1.4)

    def used(lateral: float) -> float:
        return tipping_share_lateral(slope, lateral, body.centre, body.width)

    assert ride.at(slope, where(used, SHORT, 100.0)).ride(body, ride.mu).stands
    assert ride.at(slope, where(used, BEYOND, 100.0)).ride(body, ride.mu).tips
