"""A helix so wide that what counts of it is v^2/r alone."""

from math import cos, sqrt

from intake.sizing.physics.friction import STANDARD_GRAVITY

from .products import Product
from .world import EASE_S, Motion, hold_s

# On a tight and fast helix the centre of gravity, above the belt and so behind it on a slope, is thrust downhill too,
# by up to (v/r)^2 times its height. Here that is so small a part of the weight; at ten times as much the engine's
# thresholds lie 3 % lower.
TIGHT = 0.002
SPEED_OVER_GAIN = 100.0  # where the belt speeds up too: the curve stays within 1 % of what it is in mid-hold


def wide_helix(product: Product, slope: float, lateral: float, accel: float = 0.0, way: float = 1.0) -> Motion:
    """Up or down a slope, speeding up (or braking on the way down), with so much thrust towards the axis [m/s2]."""
    hold = hold_s(product)
    loose = lateral * sqrt(product.centre / STANDARD_GRAVITY / TIGHT)  # level speed at which (v/r)^2 centre = TIGHT g
    speed = max(loose / cos(slope), SPEED_OVER_GAIN * accel * hold)
    at_first = way * speed - accel * (EASE_S + hold / 2)
    return Motion(slope, at_first, accel, (speed * cos(slope)) ** 2 / lateral)
