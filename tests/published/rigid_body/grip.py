"""A product between two pads pressed to its sides, on a frame that lifts and turns: carried by friction alone."""

from dataclasses import dataclass
from math import cos, hypot, sin
from typing import Any

import numpy as np

from .products import Product
from .world import OPTIONS, SOFT_S, STEP_S, inertia, mujoco

HEAVY = 1e4  # inertia of the frame over that of the product, so that the product does not slow it
PAD_SHARE = 0.1  # mass of a pad over that of the product
SETTLE_S, EASE_S, LOOK_STEPS = 0.2, 0.05, 10
SETTLE_FORCE = 2.0  # over the force that is tried
LOST_MM_S = 20.0
WORLD = """
<mujoco>
  {options}
  <default><default class="pad"><geom type="box" size="1 0.01 1" mass="{pad}" friction="{mu} 0 0" priority="1"
                                      contype="2" conaffinity="1"/></default></default>
  <worldbody>
    <body name="frame" gravcomp="1">
      <inertial pos="0 0 0" mass="{heavy}" diaginertia="{turn} {turn} {turn}"/>
      <joint type="slide" axis="0 0 1"/>
      <joint type="hinge" axis="0 -1 0"/>
      <body pos="{x} {left} {z}" gravcomp="1"><joint type="slide" axis="0 -1 0"/><geom class="pad"/></body>
      <body pos="{x} {right} {z}" gravcomp="1"><joint type="slide" axis="0 1 0"/><geom class="pad"/></body>
    </body>
    <body name="product" pos="{x} 0 {z}">
      <freejoint/>
      <inertial pos="0 0 0" mass="{mass}" diaginertia="{inertia}"/>
      <geom type="box" size="{size}" contype="1" conaffinity="2"/>
    </body>
  </worldbody>
</mujoco>
"""


@dataclass(frozen=True)
class Carriage:
    """The frame goes up, and on top of that swings its pads round a level axis, along which they press."""

    lift_accel: float = 0.0  # straight up [m/s2]
    radius: float = 1.0  # of the bend [m]
    angle: float = (
        0.0  # where in the bend the product is at first; 0 is the lowest point, pi/2 level with the axis [rad]
    )
    speed: float = 0.0  # round the bend [m/s]
    accel: float = 0.0  # round the bend [m/s2]

    def carry(self, product: Product, mu: float, force: float, seconds: float) -> float:
        """Press, go, and watch: the greatest speed of the product between the pads, less the engine's creep [mm/s]."""
        model = mujoco.MjModel.from_xml_string(self._world(product, mu))
        data = mujoco.MjData(model)
        data.qfrc_applied[2:4] = SETTLE_FORCE * force
        mujoco.mj_step(model, data, nstep=round(SETTLE_S / STEP_S))
        turning = np.array([0.0, -self.speed / self.radius, 0.0])
        data.qvel[1] = self.speed / self.radius
        data.qvel[4:] = np.concatenate([np.cross(turning, data.body("product").xpos), turning])
        data.qfrc_applied[2:4] = force
        drives = np.array([self.lift_accel, self.accel / self.radius]) * model.dof_M0[:2]
        for share in (0.2, 0.4, 0.6, 0.8):
            data.qfrc_applied[:2] = share * drives
            mujoco.mj_step(model, data, nstep=round(EASE_S / STEP_S / 4))
        data.qfrc_applied[:2] = drives
        return self._fastest(model, data, seconds)

    def _fastest(self, model: Any, data: Any, seconds: float) -> float:
        at, fastest = between_the_pads(data), 0.0
        for _ in range(round(seconds / STEP_S / LOOK_STEPS)):
            mujoco.mj_step(model, data, nstep=LOOK_STEPS)
            now = between_the_pads(data)
            speed = hypot(*(now - at)) / (LOOK_STEPS * STEP_S)
            # By its law of contact the engine lets a product creep outwards at its acceleration times half of SOFT_S.
            creep = data.qvel[1] ** 2 * self.radius * SOFT_S / 2
            at, fastest = now, max(fastest, (speed - creep) * 1e3)
            if fastest > LOST_MM_S:
                break
        return fastest

    def _world(self, product: Product, mu: float) -> str:
        l2, w2, h2 = product.length / 2, product.width / 2, product.height / 2
        return WORLD.format(
            options=OPTIONS,
            pad=PAD_SHARE * product.mass,
            mu=mu,
            heavy=HEAVY * product.mass,
            turn=HEAVY * product.mass * max(1.0, self.radius) ** 2,
            x=self.radius * sin(self.angle),
            z=-self.radius * cos(self.angle),
            left=w2 + 0.01,
            right=-w2 - 0.01,
            mass=product.mass,
            inertia=inertia(product),
            size=f"{l2} {w2} {h2}",
        )


def between_the_pads(data: Any) -> Any:
    """Where the product is, seen from the frame, along and across the bend."""
    frame = data.body("frame")
    return (frame.xmat.reshape(3, 3).T @ (data.body("product").xpos - frame.xpos))[[0, 2]]
