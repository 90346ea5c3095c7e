"""Slip and tip, against a general rigid-body engine as an independent witness.

MuJoCo (Todorov, Erez and Tassa, IROS 2012, from memory; on PyPI) knows
nothing of our formulas: it steps bodies under gravity with Coulomb contacts. Starts and curves are real motions of the
belt here, not forces added by thought: the belt accelerates, the table turns. A product must stand at 98 % of the
limit that we reckon and go at 102 % of it. Products are invented, drawn with a fixed seed.
"""

from collections.abc import Callable
from dataclasses import dataclass
from math import acos, cos, degrees, hypot, radians, sin
from random import Random
from typing import Any

import numpy as np
import pytest
from scipy.optimize import brentq

from intake.sizing.physics.flow import lateral_accel
from intake.sizing.physics.friction import STANDARD_GRAVITY, friction_needed, slip_slope
from intake.sizing.physics.tension import carry_gain
from intake.sizing.physics.tipping import tip_slope, tipping_share, tipping_share_lateral, tipping_share_round

mujoco: Any = pytest.importorskip("mujoco", reason="the witness is an extra: pip install rise-intake[witness]")

HOLD_S = 1.5  # long enough for 2 % beyond the limit to show, at these sizes
SETTLE_S = 0.3
RAMP_S = 0.2
STANDS_MM, STANDS_DEG = 3.0, 1.0  # the engine's contacts are a bit soft and creep
GOES_MM, GOES_DEG = 10.0, 10.0
STEP_S = 0.001
TABLE_STEP_S = 0.0002  # a body on a circle creeps outwards by its acceleration times the contact's time, four steps
FEET = 24  # a round base stands on a ring of small feet: the corners between them lose at most 0.9 % of its radius
HARD_TO_SLIP = 3.0  # friction for products that shall tip, not slide

WORLD = """
<mujoco>
  <option timestep="{step}" cone="elliptic" impratio="50" integrator="implicitfast"
          iterations="200" tolerance="1e-12" noslip_iterations="100" noslip_tolerance="1e-10"/>
  <default><geom friction="{mu} 0 0" condim="3" solref="{stiff} 1" solimp="0.99 0.999 0.0005"/></default>
  <worldbody>
    <body name="belt" gravcomp="1">
      <joint name="drive" type="{joint}" axis="{axis}" armature="1e5"/>
      <geom type="box" size="8 8 0.5" pos="0 0 -0.5" mass="1" priority="1"/>
    </body>
    <body name="product" pos="{at} 0 {bottom}">
      <freejoint/>
      <inertial pos="0 0 {shift}" mass="{mass}" diaginertia="{inertia}"/>
      {shape}
    </body>
  </worldbody>
</mujoco>
"""


@dataclass(frozen=True)
class Product:
    """A rigid product. Round: length is its diameter and width is left out."""

    length: float
    width: float
    height: float
    centre: float  # height of the centre of gravity
    mass: float = 5.0
    is_round: bool = False

    def world(self, mu: float, joint: str, axis: str, at: float = 0.0, step: float = STEP_S) -> Any:
        half = self.height / 2
        if self.is_round:
            r = self.length / 2
            squares = (3 * r**2 + self.height**2, 3 * r**2 + self.height**2, 6 * r**2)
            ring = ((r * cos(turn), r * sin(turn)) for turn in (radians(360.0 / FEET * i) for i in range(FEET)))
            shape = "".join(f'<geom type="sphere" size="0.004" pos="{x} {y} {0.004 - half}"/>' for x, y in ring)
        else:
            l2, w2, h2 = self.length**2, self.width**2, self.height**2
            squares = (w2 + h2, l2 + h2, l2 + w2)
            shape = f'<geom type="box" size="{self.length / 2} {self.width / 2} {half}"/>'
        text = WORLD.format(
            step=step,
            stiff=4 * step,
            mu=mu,
            joint=joint,
            axis=axis,
            at=at,
            bottom=half,
            shift=self.centre - half,
            mass=self.mass,
            inertia=" ".join(str(self.mass * square / 12) for square in squares),
            shape=shape,
        )
        return mujoco.MjModel.from_xml_string(text)


@dataclass(frozen=True)
class Outcome:
    """What the product did while the belt held its slope and thrust."""

    slid_mm: float
    leant_deg: float

    @property
    def stands(self) -> bool:
        return self.slid_mm < STANDS_MM and self.leant_deg < STANDS_DEG

    @property
    def tips(self) -> bool:
        return self.leant_deg > GOES_DEG

    @property
    def slides(self) -> bool:
        return self.slid_mm > GOES_MM and not self.tips


def place(data: Any) -> tuple[Any, Any]:
    """Where the product is and which way is up for it, seen from the belt."""
    belt, product = data.body("belt"), data.body("product")
    turn = belt.xmat.reshape(3, 3)
    return turn.T @ (product.xpos - belt.xpos), turn.T @ product.xmat.reshape(3, 3)[:, 2]


def watched(model: Any, data: Any, seconds: float) -> Outcome:
    """Step on and see how far the product has come. A product well on its way is not followed further."""
    start, _ = place(data)
    slid = leant = 0.0
    for step in range(round(seconds / model.opt.timestep)):
        mujoco.mj_step(model, data)
        if step % 50 == 0:
            now, up = place(data)
            slid = hypot(*(now - start)[:2]) * 1e3
            leant = degrees(acos(min(1.0, up[2])))
            if slid > 300.0 or leant > 2 * GOES_DEG:
                break
    return Outcome(slid, leant)


def on_the_belt(
    product: Product, mu: float, slope: float, accel: float = 0.0, lateral: float = 0.0, hold_s: float = HOLD_S
) -> Outcome:
    """A belt on a slope that speeds up along it and, at the same time, sideways. Axes lie in the belt: x is uphill."""
    thrust = hypot(accel, lateral)
    axis = f"{accel / thrust} {lateral / thrust} 0" if thrust else "1 0 0"
    model = product.world(mu, "slide", axis)
    data = mujoco.MjData(model)

    def set_share(share: float) -> None:
        model.opt.gravity[:] = -STANDARD_GRAVITY * np.array([sin(share * slope), 0.0, cos(share * slope)])
        data.qfrc_applied[0] = model.dof_armature[0] * share * thrust

    for step in range(round((SETTLE_S + RAMP_S) / model.opt.timestep)):
        ramped = (step * model.opt.timestep - SETTLE_S) / RAMP_S
        set_share(0.9 + 0.1 * max(0.0, ramped))
        mujoco.mj_step(model, data)
    set_share(1.0)
    return watched(model, data, hold_s)


def on_the_table(product: Product, mu: float, speed: float, radius: float) -> Outcome:
    """A level table that turns, the product at a radius from its middle: a curve."""
    model = product.world(mu, "hinge", "0 0 1", at=radius, step=TABLE_STEP_S)
    data = mujoco.MjData(model)
    for _ in range(round(SETTLE_S / model.opt.timestep)):
        mujoco.mj_step(model, data)
    # Set in motion as one body: how a table is brought to speed is no matter of the curve.
    turning = speed / radius
    data.qvel[0] = turning
    data.qvel[1:7] = [0.0, speed, 0.0, 0.0, 0.0, turning]
    return watched(model, data, HOLD_S)


LOW = Product(0.40, 0.30, 0.20, centre=0.10)
TALL = Product(0.20, 0.25, 0.50, centre=0.25)
TOP_HEAVY = Product(0.30, 0.30, 0.30, centre=0.20)
FLAT_ROUND = Product(0.30, 0.30, 0.10, centre=0.05, is_round=True)
TALL_ROUND = Product(0.12, 0.12, 0.30, centre=0.14, is_round=True)


@pytest.mark.parametrize("mu", [0.2, 0.45, 0.7])
@pytest.mark.parametrize("product", [LOW, FLAT_ROUND], ids=["box", "round"])
def test_a_product_at_rest_slides_beyond_its_slip_slope_and_not_before(product: Product, mu: float) -> None:
    limit = slip_slope(mu)
    assert on_the_belt(product, mu, 0.98 * limit).stands
    assert on_the_belt(product, mu, 1.02 * limit).slides


@pytest.mark.parametrize("product", [TALL, TOP_HEAVY, TALL_ROUND], ids=["box", "top-heavy box", "round"])
def test_a_product_that_cannot_slide_tips_beyond_its_tip_slope_and_not_before(product: Product) -> None:
    limit = tip_slope(product.centre, product.length)
    assert on_the_belt(product, HARD_TO_SLIP, 0.98 * limit).stands
    assert on_the_belt(product, HARD_TO_SLIP, 1.02 * limit).tips


def test_beyond_the_slip_slope_it_comes_as_far_as_weight_less_friction_takes_it() -> None:
    mu, slope = 0.45, 1.05 * slip_slope(0.45)
    left_over = -carry_gain(STANDARD_GRAVITY, slope, mu, climbs=False)
    early = on_the_belt(LOW, mu, slope, hold_s=0.4).slid_mm
    late = on_the_belt(LOW, mu, slope, hold_s=0.8).slid_mm
    # s = v t + a t^2/2 from an unknown v at the start of the hold: a from the two distances.
    reckoned = (late - 2 * early) / 1e3 / 0.4**2
    assert reckoned == pytest.approx(left_over, rel=0.05)


@pytest.mark.parametrize("product", [LOW, FLAT_ROUND], ids=["box", "round"])
def test_a_product_in_a_curve_slides_beyond_the_speed_we_reckon_and_not_before(product: Product) -> None:
    mu, radius = 0.4, 1.5
    limit = at_limit(lambda speed: friction_needed(0.0, lateral=lateral_accel(speed, radius)) / mu, 20.0)
    assert on_the_table(product, mu, 0.98 * limit, radius).stands
    assert on_the_table(product, mu, 1.02 * limit, radius).slides


@pytest.mark.parametrize("product", [TALL, TALL_ROUND], ids=["box", "round"])
def test_a_product_in_a_curve_tips_beyond_the_speed_we_reckon_and_not_before(product: Product) -> None:
    radius = 1.5

    def share(speed: float) -> float:
        thrust = lateral_accel(speed, radius)
        if product.is_round:
            return tipping_share_round(0.0, 0.0, thrust, product.centre, product.length)
        # On the table the box lies with its length across the path.
        return tipping_share_lateral(0.0, thrust, product.centre, product.length)

    limit = at_limit(share, 20.0)
    assert on_the_table(product, HARD_TO_SLIP, 0.98 * limit, radius).stands
    assert on_the_table(product, HARD_TO_SLIP, 1.02 * limit, radius).tips


@dataclass(frozen=True)
class Ride:
    """A drawn product on a belt that starts and at the same time turns."""

    product: Product
    mu: float
    accel: float
    lateral: float

    @property
    def slips_at(self) -> float:
        return at_limit(lambda slope: friction_needed(slope, self.accel, self.lateral) / self.mu, 1.4)

    @property
    def tips_at(self) -> float:
        def share(slope: float) -> float:
            body = self.product
            if body.is_round:
                return tipping_share_round(slope, self.accel, self.lateral, body.centre, body.length)
            along = tipping_share(slope, self.accel, body.centre, body.length)
            return max(along, tipping_share_lateral(slope, self.lateral, body.centre, body.width))

        return at_limit(share, 1.4)

    def at(self, slope: float) -> Outcome:
        return on_the_belt(self.product, self.mu, slope, self.accel, self.lateral)


def at_limit(share: Callable[[float], float], most: float) -> float:
    """Where a share that rises reaches 1."""
    return float(brentq(lambda x: share(x) - 1.0, 0.0, most, xtol=1e-10))


def drawn(seed: int, count: int) -> list[Ride]:
    """Invented products, boxes and round ones in turn."""
    draw = Random(seed)
    rides = []
    for i in range(count):
        is_round = i % 2 == 1
        length = draw.uniform(0.06, 0.15) if is_round else draw.uniform(0.15, 0.6)
        width = length if is_round else draw.uniform(0.15, 0.5)
        height = length * draw.uniform(0.6, 2.2)
        product = Product(
            length,
            width,
            height,
            centre=height * draw.uniform(0.4, 0.6),
            mass=draw.uniform(0.3, 20.0),
            is_round=is_round,
        )
        rides.append(Ride(product, draw.uniform(0.35, 0.7), draw.uniform(0.0, 0.8), draw.uniform(0.0, 0.8)))
    return rides


RIDES = drawn(seed=20_240_229, count=10)


@pytest.mark.parametrize(
    "ride", RIDES, ids=[f"{'round' if ride.product.is_round else 'box'}-{i}" for i, ride in enumerate(RIDES)]
)
def test_a_drawn_product_stands_short_of_its_steepest_slope_and_goes_beyond_as_reckoned(ride: Ride) -> None:
    steepest = min(ride.slips_at, ride.tips_at)
    assert ride.at(0.98 * steepest).stands
    beyond = ride.at(1.02 * steepest)
    assert beyond.slides or beyond.tips
    if ride.tips_at > 1.05 * ride.slips_at:
        assert beyond.slides
    elif ride.slips_at > 1.05 * ride.tips_at:
        assert beyond.tips


def test_the_draw_holds_products_that_slide_first_and_products_that_tip_first() -> None:
    tip_first = [ride.tips_at < ride.slips_at for ride in RIDES]
    assert 3 <= sum(tip_first) <= 7
    assert {ride.product.is_round for ride, tips in zip(RIDES, tip_first, strict=True) if tips} == {True, False}
