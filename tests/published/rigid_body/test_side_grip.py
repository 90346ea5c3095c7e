"""The least force of a side grip, on the straight and round a bend, against a rigid-body engine."""

from dataclasses import dataclass, replace
from math import pi, sqrt
from random import Random

import pytest

from intake.sizing.physics.grip import bend_accel, grip_needed

from .grip import Carriage
from .products import Product, drawn, named

HELD, LOST = 1.0, 5.0  # mm/s between the pads
SHORT, BEYOND = 0.99, 1.01  # of the force that we reckon: there it slips, and there it is held
HOLD_S = 0.4
SWEPT = 0.1  # rad in a hold: so little of a wide bend that it stays at its lowest point, all but 0.1 % of the weight
BOXES = [(replace(box, centre=box.height / 2), mu) for box, mu in drawn(20_250_308, 36, lambda *_: True, (False,))]
NAMES = [named(*one) for one in BOXES]
NUMBERED = [(i, *one) for i, one in enumerate(BOXES)]


@pytest.mark.parametrize(("seed", "product", "mu"), NUMBERED, ids=NAMES)
def test_going_straight_up_it_is_held_by_the_force_we_reckon_and_not_by_less(
    seed: int, product: Product, mu: float
) -> None:
    accel = Random(seed).uniform(0.1, 2.5) if seed % 3 else 0.0
    needed = grip_needed(product.mass, mu, safety=1.0, accel=accel)
    frame = Carriage(lift_accel=accel)
    assert frame.carry(product, mu, SHORT * needed, HOLD_S) > LOST
    assert frame.carry(product, mu, BEYOND * needed, HOLD_S) < HELD


@pytest.mark.parametrize(("seed", "product", "mu"), NUMBERED, ids=NAMES)
def test_at_the_lowest_point_of_a_bend_that_is_itself_lifted_all_three_add_up(
    seed: int, product: Product, mu: float
) -> None:
    draw = Random(seed)
    accel, inwards = draw.uniform(0.1, 2.0) if seed % 3 else 0.0, draw.uniform(0.2, 5.0)
    radius = inwards * (HOLD_S / SWEPT) ** 2
    speed = sqrt(inwards * radius)
    needed = grip_needed(product.mass, mu, safety=1.0, accel=accel, bend_accel=bend_accel(speed, radius))
    frame = Carriage(accel, radius, -SWEPT / 2, speed)
    assert frame.carry(product, mu, SHORT * needed, HOLD_S) > LOST
    assert frame.carry(product, mu, BEYOND * needed, HOLD_S) < HELD


@dataclass(frozen=True)
class Bend:
    """A quarter of a bend of the size and speed that a machine has, run through, or braked in until it stands."""

    radius: float
    speed: float
    brakes: float  # m/s2; 0 runs through
    angle: float  # where it comes in [rad]
    way: float  # 1 forwards, -1 backwards

    @property
    def seconds(self) -> float:
        return self.speed / self.brakes if self.brakes else pi / 2 * self.radius / self.speed

    def needed(self, product: Product, mu: float) -> float:
        return grip_needed(product.mass, mu, 1.0, self.brakes, bend_accel(self.speed, self.radius))

    def carry(self, product: Product, mu: float, force: float) -> float:
        frame = Carriage(0.0, self.radius, self.angle, self.way * self.speed, -self.way * self.brakes)
        return frame.carry(product, mu, force, self.seconds)


def a_bend(seed: int) -> Bend:
    """From level to upright or back, with the axis above or below; every third is at its lowest point at first."""
    draw = Random(seed)
    angle = draw.choice((0.0, pi / 2, pi, 3 * pi / 2)) if seed % 3 else 0.0
    brakes = draw.uniform(0.3, 1.5) if seed % 2 else 0.0
    return Bend(draw.uniform(0.3, 0.8), draw.uniform(0.4, 1.2), brakes, angle, draw.choice((1.0, -1.0)))


@pytest.mark.parametrize(("seed", "product", "mu"), NUMBERED, ids=NAMES)
def test_no_bend_of_a_machine_asks_for_more_than_we_reckon(seed: int, product: Product, mu: float) -> None:
    bend = a_bend(seed)
    assert bend.carry(product, mu, BEYOND * bend.needed(product, mu)) < HELD


@pytest.mark.parametrize(("seed", "product", "mu"), NUMBERED[::6], ids=NAMES[::6])
def test_a_bend_run_through_from_its_lowest_point_asks_for_just_that(seed: int, product: Product, mu: float) -> None:
    bend = a_bend(seed)
    assert (bend.brakes, bend.angle) == (0.0, 0.0)
    assert bend.carry(product, mu, 0.98 * bend.needed(product, mu)) > LOST
