"""Rigid bodies on a belt that moves: a general engine as an independent witness.

MuJoCo (Todorov, Erez and Tassa, IROS 2012, from memory; on PyPI) knows nothing of our formulas: it steps bodies under
gravity with Coulomb contacts. Here a belt really starts, stops, turns and climbs on a helix, and carries the product
along; no thrust is added by thought. Test files take what they need from here, and are skipped without the engine.
"""

from dataclasses import dataclass
from math import acos, cos, degrees, hypot, inf, pi, radians, sin
from typing import Any

import numpy as np
import pytest

from intake.sizing.physics.friction import STANDARD_GRAVITY

mujoco: Any = pytest.importorskip("mujoco", reason="the witness is an extra: pip install rise-intake[witness]")

STEP_S = 0.001
SOFT_S = 2 * STEP_S  # time in which the engine's contacts give way: the shortest that it is stable with
SETTLE_S = 0.2
EASE_S = 0.05  # a start comes in over this time: the contacts are springs, and a blow would make them ring
HOLD_S = 0.8  # long enough for 2 % beyond the limit to show, at these sizes
LOOK_STEPS = 20
FEET = 24  # a round base stands on a ring of small feet: the corners between them lose at most 0.9 % of its radius
FOOT_M = 0.004
WIDE = 400.0  # speed of a belt on a wide helix, over the speed that it gains in a hold
HEAVY = 3e3  # inertia of the drive over that of the product, so that the product does not slow the belt
# A body on a circle creeps outwards at its acceleration times half of SOFT_S, by the engine's own law of contact. What
# slides gains speed all the time: 2 % of the weakest thrust tried, over the hold, is 20 mm/s.
STANDS_MM_S, STANDS_DEG = 5.0, 1.0
GOES_MM_S, GOES_DEG = 10.0, 3.0
HARD_TO_SLIP = 3.0  # friction for products that shall tip, not slide

OPTIONS = f"""
  <option timestep="{STEP_S}" cone="elliptic" impratio="50" integrator="implicitfast" gravity="0 0 {-STANDARD_GRAVITY}"
          iterations="50" tolerance="1e-12" noslip_iterations="50" noslip_tolerance="1e-10"/>
  <default><geom condim="3" solref="{SOFT_S} 1" solimp="0.99 0.999 0.0005"/></default>
"""
WORLD = """
<mujoco>
  {options}
  <worldbody>
    <body name="belt" gravcomp="1">
      <inertial pos="0 0 0" mass="1" diaginertia="1 1 1"/>
      {joints}
      <geom name="surface" type="box" size="4 4 0.5" pos="{surface}" euler="{tilt} 0 0" friction="{mu} 0 0" priority="1"/>
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
class Product:
    """A rigid product. Round: length is its diameter and width the same."""

    length: float
    width: float
    height: float
    centre: float  # height of the centre of gravity
    mass: float = 5.0
    is_round: bool = False

    @property
    def inertia(self) -> str:
        l2, w2, h2 = self.length**2, self.width**2, self.height**2
        squares = (l2 + h2, w2 + h2, l2 + w2)
        if self.is_round:
            squares = (0.75 * l2 + h2, 0.75 * l2 + h2, 1.5 * l2)
        return " ".join(str(self.mass * square / 12) for square in squares)

    @property
    def shape(self) -> str:
        if not self.is_round:
            return f'<geom type="box" size="{self.width / 2} {self.length / 2} {self.height / 2}"/>'
        turns = (2 * pi * i / FEET for i in range(FEET))
        low, r = FOOT_M - self.height / 2, self.length / 2
        return "".join(
            f'<geom type="sphere" size="{FOOT_M}" pos="{r * cos(turn)} {r * sin(turn)} {low}"/>' for turn in turns
        )


@dataclass(frozen=True)
class Outcome:
    """What the product did on the belt while the motion was held."""

    gained_mm_s: float  # speed over the belt, at the end over the start of the hold
    leant_deg: float

    @property
    def stands(self) -> bool:
        return self.gained_mm_s < STANDS_MM_S and self.leant_deg < STANDS_DEG

    @property
    def tips(self) -> bool:
        return self.leant_deg > GOES_DEG

    @property
    def slides(self) -> bool:
        return self.gained_mm_s > GOES_MM_S and not self.tips


@dataclass(frozen=True)
class Motion:
    """How a belt moves: up a slope, or down it, speeding up or not, straight ahead or in a curve (a helix).

    The product lies with its length along the belt, which runs along y; the curve's middle is at smaller x.
    """

    slope: float = 0.0  # [rad]
    speed: float = 0.0  # along the path, upwards [m/s]
    accel: float = 0.0  # along the path, upwards [m/s2]
    radius: float = inf  # of the helix, in plan [m]

    def ride(self, product: Product, mu: float, hold_s: float = HOLD_S) -> Outcome:
        model = self._model(product, mu)
        data = mujoco.MjData(model)
        mujoco.mj_step(model, data, nstep=round(SETTLE_S / STEP_S))
        self._set_going(data)
        inertia = model.dof_armature[: data.qvel.size - 6]
        for share in (0.2, 0.4, 0.6, 0.8):
            data.qfrc_applied[: inertia.size] = share * inertia * self._drives(self.accel)
            mujoco.mj_step(model, data, nstep=round(EASE_S / STEP_S / 4))
        data.qfrc_applied[: inertia.size] = inertia * self._drives(self.accel)
        return watched(model, data, hold_s)

    def _drives(self, along: float) -> Any:
        """A figure along the path, for each joint of the belt: turn and climb, or the slide."""
        if self.radius == inf:
            return np.array([along])
        return np.array([along * cos(self.slope) / self.radius, along * sin(self.slope)])

    def _set_going(self, data: Any) -> None:
        # Set in motion as one body: how a belt is brought to speed is no matter of the curve.
        drives = self._drives(self.speed)
        data.qvel[: drives.size] = drives
        along = self.speed * np.array([0.0, cos(self.slope), sin(self.slope)])
        data.qvel[drives.size : drives.size + 3] = along
        if self.radius < inf:
            upright = np.array([0.0, 0.0, drives[0]])
            data.qvel[drives.size + 3 :] = data.body("product").xmat.reshape(3, 3).T @ upright

    def _model(self, product: Product, mu: float) -> Any:
        c, s = cos(self.slope), sin(self.slope)
        up, middle = np.array([0.0, -s, c]), np.array([0.0 if self.radius == inf else self.radius, 0.0, 0.0])
        heavy = HEAVY * product.mass
        joints = f'<joint type="slide" axis="0 {c} {s}" armature="{heavy}"/>'
        if self.radius < inf:
            turn = f'<joint type="hinge" axis="0 0 1" armature="{heavy * self.radius**2}"/>'
            joints = turn + f'<joint type="slide" axis="0 0 1" armature="{heavy}"/>'
        text = WORLD.format(
            options=OPTIONS,
            joints=joints,
            surface=spaced(middle - 0.5 * up),
            tilt=degrees(self.slope),
            mu=mu,
            at=spaced(middle + product.height / 2 * up),
            shift=product.centre - product.height / 2,
            mass=product.mass,
            inertia=product.inertia,
            shape=product.shape,
        )
        return mujoco.MjModel.from_xml_string(text)


def spaced(vector: Any) -> str:
    return " ".join(str(float(x)) for x in vector)


def place(data: Any) -> tuple[Any, Any]:
    """Where the product is and which way is up for it, seen from the belt."""
    surface, product = data.geom("surface"), data.body("product")
    turn = surface.xmat.reshape(3, 3)
    return turn.T @ (product.xpos - surface.xpos), turn.T @ product.xmat.reshape(3, 3)[:, 2]


def watched(model: Any, data: Any, seconds: float) -> Outcome:
    """Step on and see how the product moves over the belt. One that is well on its way is not followed further."""
    at, _ = place(data)
    first = None
    gained = leant = 0.0
    for _ in range(round(seconds / STEP_S / LOOK_STEPS)):
        mujoco.mj_step(model, data, nstep=LOOK_STEPS)
        now, up = place(data)
        speed = hypot(*(now - at)[:2]) / (LOOK_STEPS * STEP_S) * 1e3
        at, first = now, speed if first is None else first
        gained, leant = speed - first, degrees(acos(min(1.0, up[2])))
        if gained > 4 * GOES_MM_S or leant > 2 * GOES_DEG:
            break
    return Outcome(gained, leant)
