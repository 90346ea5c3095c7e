"""Rigid bodies on a belt that moves: a general engine as an independent witness.

MuJoCo (Todorov, Erez and Tassa, IROS 2012, from memory; on PyPI) knows nothing of our formulas: it steps bodies under
gravity with Coulomb contacts. Here a belt really starts, stops, turns and climbs on a helix, and carries the product
along; no thrust is added by thought. Tests that import this are skipped where the engine is not installed.

Its own thresholds, found by bisection for all products drawn here, lie within 0.4 % of ours for slip, 0.6 % for tip and
0.1 % for the grip. On a helix it is 1.0 %: a round base stands on a ring of feet, and a belt that speeds up changes its
curve meanwhile.
"""

from dataclasses import dataclass
from math import acos, cos, degrees, hypot, inf, pi, sin, sqrt
from typing import Any

import numpy as np
import pytest

from intake.sizing.physics.friction import STANDARD_GRAVITY

from .products import Product

mujoco: Any = pytest.importorskip("mujoco", reason="the witness is an extra: pip install rise-intake[witness]")

STEP_S = 0.001
SOFT_S = 2 * STEP_S  # time in which the engine's contacts give way: the shortest with which it is stable
SETTLE_S = 0.2
EASE_S = 0.05  # a start comes in over this time: the contacts are springs, and a blow would make them ring
HOLD_S = 0.5  # at least: long enough for 1.5 % beyond the limit to show
LOOK_STEPS = 20
# A round base stands on a ring of small feet: the corners between them lose at most 0.9 % of its radius. Where it
# slides before it tips, half will do.
FEET, FEET_TO_SLIDE = 24, 12
FOOT_M = 0.002
HEAVY = 1e4  # inertia of the drive over that of the product, so that the product does not slow the belt
# A product that is carried creeps at a steady speed, in a curve outwards, by the engine's own law of contact. One that
# slides gains speed: 1.5 % beyond the weakest friction tried is 22 mm/s2.
STANDS_MM_S2, STANDS_DEG = 3.0, 1.0
GOES_MM_S2, GOES_DEG = 6.0, 2.0
HARD_TO_SLIP = 3.0  # friction for products that shall tip, not slide

# With the usual tolerance the solver stops early, beside so heavy a belt, and the product wanders by centimetres.
OPTIONS = f"""
  <option timestep="{STEP_S}" cone="elliptic" impratio="50" integrator="implicitfast" gravity="0 0 {-STANDARD_GRAVITY}"
          iterations="50" tolerance="1e-20"/>
  <default><geom condim="3" solref="{SOFT_S} 1" solimp="0.99 0.999 0.0005"/></default>
"""
WORLD = """
<mujoco>
  {options}
  <worldbody>
    <body name="belt" gravcomp="{borne}">
      <inertial pos="0 0 0" mass="{heavy}" diaginertia="{heavy_turn} {heavy_turn} {heavy_turn}"/>
      {joints}
      <geom name="surface" type="box" size="4 4 0.5" pos="{surface}" euler="{tilt} 0 0" friction="{mu} 0 0"
            priority="1"/>
    </body>
    <body name="product" pos="{at}" euler="{tilt} 0 0">
      <freejoint/>
      <inertial pos="0 0 {shift}" mass="{mass}" diaginertia="{inertia}"/>
      {shape}
    </body>
  </worldbody>
</mujoco>
"""


@dataclass(frozen=True)
class Outcome:
    """What the product did on the belt while the motion was held."""

    gains_mm_s2: float  # speed over the belt that it gains
    leant_deg: float

    @property
    def stands(self) -> bool:
        return self.gains_mm_s2 < STANDS_MM_S2 and self.leant_deg < STANDS_DEG

    @property
    def tips(self) -> bool:
        return self.leant_deg > GOES_DEG

    @property
    def slides(self) -> bool:
        return self.gains_mm_s2 > GOES_MM_S2 and not self.tips


@dataclass(frozen=True)
class Motion:
    """How a belt moves: up a slope or down it, speeding up or braking, straight ahead or on a helix.

    The belt runs along y, and the product lies with its length that way; the helix turns about an axis at x = 0.
    """

    slope: float = 0.0  # [rad]
    speed: float = 0.0  # along the path, upwards [m/s]
    accel: float = 0.0  # along the path, upwards [m/s2]
    radius: float = inf  # of the helix, in plan [m]

    def ride(self, product: Product, mu: float) -> Outcome:
        model, data = self.going(product, mu)
        return watched(model, data, hold_s(product))

    def going(self, product: Product, mu: float) -> tuple[Any, Any]:
        """Let the product settle on the belt at rest, set both going as one body, and bring the start in."""
        model = mujoco.MjModel.from_xml_string(self._world(product, mu))
        data = mujoco.MjData(model)
        mujoco.mj_step(model, data, nstep=round(SETTLE_S / STEP_S))
        self._set_going(data)
        drives = self._of_the_drives(self.accel)
        for share in (0.2, 0.4, 0.6, 0.8):
            data.qfrc_applied[: drives.size] = share * drives * model.dof_M0[: drives.size]
            mujoco.mj_step(model, data, nstep=round(EASE_S / STEP_S / 4))
        data.qfrc_applied[: drives.size] = drives * model.dof_M0[: drives.size]
        return model, data

    def _of_the_drives(self, along: float) -> Any:
        """A figure along the path, shared out to the joints of the belt: a slide, or turn and climb."""
        if self.radius == inf:
            return np.array([along])
        return np.array([along * cos(self.slope) / self.radius, along * sin(self.slope)])

    def _set_going(self, data: Any) -> None:
        drives = self._of_the_drives(self.speed)
        moving, turning = np.array([0.0, self.speed * cos(self.slope), self.speed * sin(self.slope)]), np.zeros(3)
        if self.radius < inf:
            product, turning = data.body("product"), np.array([0.0, 0.0, drives[0]])
            moving = np.array([0.0, 0.0, drives[1]]) + np.cross(turning, product.xpos)
            turning = product.xmat.reshape(3, 3).T @ turning
        data.qvel[:] = np.concatenate([drives, moving, turning])

    def _world(self, product: Product, mu: float) -> str:
        c, s, out = cos(self.slope), sin(self.slope), 0.0 if self.radius == inf else self.radius
        up, middle = np.array([0.0, -s, c]), np.array([out, 0.0, 0.0])
        straight, turning = f'<joint type="slide" axis="0 {c} {s}"/>', '<joint type="hinge" axis="0 0 1"/>'
        heavy = HEAVY * product.mass
        return WORLD.format(
            options=OPTIONS,
            joints=turning + '<joint type="slide" axis="0 0 1"/>' if out else straight,
            heavy=heavy,
            borne=1.0 + 1.0 / HEAVY,  # the drive bears the product too
            heavy_turn=heavy * max(1.0, out) ** 2,
            surface=spaced(middle - 0.5 * up),
            tilt=degrees(self.slope),
            mu=mu,
            at=spaced(middle + product.height / 2 * up),
            shift=product.centre - product.height / 2,
            mass=product.mass,
            inertia=inertia(product),
            shape=shape(product, FEET_TO_SLIDE if product.slides_first(mu) else FEET),
        )


def hold_s(product: Product) -> float:
    """A tall product goes over slowly: its lean grows by e in the time of a pendulum turned upside down."""
    arm = hypot(product.centre, product.length / 2)
    return max(HOLD_S, 4.0 * sqrt(4 / 3 * arm / STANDARD_GRAVITY))


def spaced(numbers: Any) -> str:
    return " ".join(str(float(number)) for number in numbers)


def inertia(product: Product) -> str:
    """Of a solid body of that shape, about its axes [kg m2]."""
    l2, w2, h2 = product.length**2, product.width**2, product.height**2
    twelfths = (0.75 * l2 + h2, 0.75 * l2 + h2, 1.5 * l2) if product.is_round else (l2 + h2, w2 + h2, l2 + w2)
    return spaced(product.mass * part / 12 for part in twelfths)


def shape(product: Product, feet: int) -> str:
    if not product.is_round:
        return f'<geom type="box" size="{product.width / 2} {product.length / 2} {product.height / 2}"/>'
    low, r = FOOT_M - product.height / 2, product.length / 2
    ring = ((r * cos(turn), r * sin(turn)) for turn in (2 * pi * i / feet for i in range(feet)))
    return "".join(f'<geom type="sphere" size="{FOOT_M}" pos="{x} {y} {low}"/>' for x, y in ring)


def place(data: Any) -> tuple[Any, Any]:
    """Where the product is and which way is up for it, seen from the belt."""
    surface, product = data.geom("surface"), data.body("product")
    turn = surface.xmat.reshape(3, 3)
    return turn.T @ (product.xpos - surface.xpos), turn.T @ product.xmat.reshape(3, 3)[:, 2]


def watched(model: Any, data: Any, seconds: float) -> Outcome:
    """Step on and see how the product moves over the belt. One that is well on its way is not followed further."""
    seen, leant = [place(data)[0]], 0.0
    for _ in range(round(seconds / STEP_S / LOOK_STEPS)):
        mujoco.mj_step(model, data, nstep=LOOK_STEPS)
        now, up = place(data)
        seen.append(now)
        leant = degrees(acos(min(1.0, up[2])))
        if hypot(*(now - seen[0])[:2]) > 0.05 or leant > 2 * GOES_DEG:
            break
    # From the mean speeds of the first and the last quarter.
    quarter = max(1, (len(seen) - 1) // 4)
    early, late = (hypot(*(b - a)[:2]) for a, b in ((seen[0], seen[quarter]), (seen[-1 - quarter], seen[-1])))
    took, apart = quarter * LOOK_STEPS * STEP_S, (len(seen) - 1 - quarter) * LOOK_STEPS * STEP_S
    return Outcome((late - early) / took / max(apart, took) * 1e3, leant)
