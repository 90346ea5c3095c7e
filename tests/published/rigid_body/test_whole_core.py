"""Whole results of `size`, tried by the rigid-body engine: at the slope, speed, radius and start that they reckon with.

The safety factor is divided out; what is left is where the product must begin to slide, tip or slip. The jobs are our
own.
"""

from math import sqrt
from typing import Any

import pytest

from intake.sizing.physics.friction import friction_needed

from .grip import Carriage
from .helix import wide_helix
from .products import BEYOND, SHORT, Product
from .test_side_grip import HELD, HOLD_S, LOST, SWEPT
from .world import HARD_TO_SLIP, Motion

JOBS: dict[str, dict[str, Any]] = {
    "cases up": {},
    "cases down": {"rise.direction": "down", "rise.infeed_height": 4.0, "rise.discharge_height": 0.75},
    "small cartons, fast": {
        "product.type": "carton", "product.length": 0.18, "product.width": 0.12, "product.height": 0.08,
        "product.weight": 0.9, "rate.peak": 80.0, "rise.discharge_height": 5.25,
    },
    "tall cases": {
        "product.length": 0.3, "product.width": 0.25, "product.height": 0.6, "product.weight": 12.0,
        "product.centre_height": 0.35,
    },
    "jars": {
        "product.type": "jar", "product.length": 0.09, "product.width": 0.09, "product.height": 0.14,
        "product.weight": 0.7, "rate.normal": 100.0, "rate.peak": 120.0,
    },
    "bottles, fast": {
        "product.type": "bottle", "product.length": 0.08, "product.width": 0.08, "product.height": 0.25,
        "product.weight": 1.1, "rate.normal": 150.0, "rate.peak": 200.0,
    },
}  # fmt: skip
ON_A_HELIX = ("spiral", "washdown_spiral")


@pytest.fixture(params=JOBS.values(), ids=list(JOBS))
def spec(request: pytest.FixtureRequest, job: dict[str, Any]) -> dict[str, Any]:
    return {**job, **request.param}


LOW = 0.5  # where only sliding is looked at, the centre of gravity is let down, so that nothing tips before


def body(spec: dict[str, Any], u: dict[str, float], raised: float = 1.0) -> Product:
    """The product of a job, on the footing that a tipping check used, its centre of gravity raised by a factor."""
    return Product(u["b"], u["bw"], spec["product.height"], raised * u["h"], spec["product.weight"], bool(u["rnd"]))


def start(u: dict[str, float]) -> float:
    return max(u["a1"], u["a2"], u["a3"])


@pytest.mark.parametrize("family", [*ON_A_HELIX, "incline"])
def test_on_the_slope_of_a_machine_it_slides_with_less_friction_than_the_check_asks_for(
    machine: Any, spec: dict[str, Any], family: str
) -> None:
    m = machine(spec, family)
    check, u = m.used("slip")
    product, needed = body(spec, m.used("tip")[1], raised=LOW), check.value / u["SF"]
    belt = Motion(u["th"], 0.0, start(u))
    assert belt.ride(product, needed / SHORT).stands
    assert belt.ride(product, needed / BEYOND).slides


@pytest.mark.parametrize("family", [*ON_A_HELIX, "incline"])
def test_in_the_curve_of_a_machine_it_slides_with_less_friction_than_the_check_asks_for(
    machine: Any, spec: dict[str, Any], family: str
) -> None:
    m = machine(spec, family)
    check, u = m.used("curve")
    product, needed = body(spec, m.used("tip")[1], raised=LOW), check.value / u["SF"]
    belt = wide_helix(product, u["th_curve"], u["v"] ** 2 / u["r"], start(u))
    assert belt.ride(product, needed / SHORT).stands
    assert belt.ride(product, needed / BEYOND).slides


@pytest.mark.parametrize("family", ON_A_HELIX)
def test_on_the_radius_of_a_spiral_at_its_steady_speed_it_slides_as_reckoned(
    machine: Any, spec: dict[str, Any], family: str
) -> None:
    # Most seen: 0.9 % more friction than reckoned. Why it is more, and how much that can be, is in test_tight_helix.py.
    m = machine(spec, family)
    _, u = m.used("curve")
    product = body(spec, m.used("tip")[1])
    needed = friction_needed(u["th_curve"], 0.0, u["v"] ** 2 / u["r"])
    belt = Motion(u["th_curve"], u["v"], 0.0, u["r"])
    assert belt.ride(product, needed / SHORT).stands
    assert belt.ride(product, needed / BEYOND).slides


@pytest.mark.parametrize("family", [*ON_A_HELIX, "incline"])
def test_on_the_slope_of_a_machine_it_tips_once_its_centre_is_as_high_as_the_check_bears(
    machine: Any, spec: dict[str, Any], family: str
) -> None:
    check, u = machine(spec, family).used("tip")
    for share, tips in ((SHORT, False), (BEYOND, True)):
        product = body(spec, u, raised=share / check.value)
        belt = Motion(u["th"], 0.0, start(u))
        if family in ON_A_HELIX:
            belt = wide_helix(product, u["th"], u["v"] ** 2 / u["r"], start(u))
        outcome = belt.ride(product, HARD_TO_SLIP)
        assert (outcome.stands, outcome.tips) == (not tips, tips)


def test_in_the_level_curve_of_an_incline_it_tips_at_the_speed_that_the_check_bears(
    machine: Any, spec: dict[str, Any]
) -> None:
    check, u = machine(spec, "incline").used("tip_curve")
    product = body(spec, u)
    for share, tips in ((SHORT, False), (BEYOND, True)):
        # A round base leans to the start as well: what the whole bears is found for the thrust, not for the speed.
        more = share / check.value
        belt = Motion(0.0, u["v"] * sqrt(more), 0.0, u["r"])
        if product.is_round:
            belt = wide_helix(product, 0.0, more * u["v"] ** 2 / u["r"], more * start(u))
        outcome = belt.ride(product, HARD_TO_SLIP)
        assert (outcome.stands, outcome.tips) == (not tips, tips)


def test_between_the_grips_of_a_machine_it_slips_with_less_force_than_the_check_asks_for(
    machine: Any, spec: dict[str, Any]
) -> None:
    check, u = machine(spec, "side_grip").used("squeeze_force")
    height = spec["product.height"]
    product = Product(spec["product.length"], spec["product.width"], height, height / 2, u["m"])
    inwards = u["v"] ** 2 / u["Rb"]
    radius = inwards * (HOLD_S / SWEPT) ** 2
    bend = Carriage(start(u), radius, -SWEPT / 2, sqrt(inwards * radius))
    assert bend.carry(product, u["mu_grip"], SHORT * check.value / u["SF"], HOLD_S) > LOST
    assert bend.carry(product, u["mu_grip"], BEYOND * check.value / u["SF"], HOLD_S) < HELD
