"""Tipping: how much of a product's footing is used up. A share of 1 is the point of going over."""

from math import atan, cos, hypot, inf, pi, sin

from intake.sizing.physics.friction import STANDARD_GRAVITY


def tipping_share(slope: float, accel: float, height: float, base: float) -> float:
    """Share of the footing along the slope that is used up.

        share = (g sin(slope) + accel) height / (g cos(slope) base/2)

    Args:
        slope: angle of the carrying surface above level [rad], 0 <= slope < pi/2.
        accel: start or stop acceleration along the slope, in the direction that hurts [m/s2], 0 or more.
        height: centre of gravity above the surface [m], 0 or more.
        base: support length along the slope, centre of gravity above its middle [m], more than 0.

    Returns: share [-]; it tips above 1. No safety factor is applied here.
    Valid for: a rigid product with its load at rest inside; not for sloshing liquid.
    Source: Baker and Haynes, Engineering Statics: Open and Interactive, sec. 9.2 (slipping vs. tipping).

    >>> round(tipping_share(0.2, 0.0, height=0.3, base=0.3), 4)
    0.4054
    """
    _check(slope, height, base)
    if not 0.0 <= accel < inf:
        raise ValueError(f"accel must be 0 or more m/s2, got {accel!r}")
    return (STANDARD_GRAVITY * sin(slope) + accel) * height / (STANDARD_GRAVITY * cos(slope) * base / 2.0)


def tipping_share_lateral(slope: float, lateral: float, height: float, base_width: float) -> float:
    """Share of the footing across the path that a curve uses up.

        share = lateral height / (g cos(slope) base_width/2)

    Args:
        slope: angle of the carrying surface above level [rad], 0 <= slope < pi/2.
        lateral: sideways acceleration in the curve, v^2/r [m/s2], 0 or more.
        height: centre of gravity above the surface [m], 0 or more.
        base_width: support length across the path [m], more than 0.

    Returns: share [-]; it tips above 1. No safety factor is applied here.
    Valid for: a rectangular base, where each edge stands by itself; a surface that is level across.
    Source: moments about the outer edge; level case as in Tayal, Engineering Mechanics, Ex. 15.20.

    >>> round(tipping_share_lateral(0.0, 1.0, height=0.2, base_width=0.2), 4)
    0.2039
    """
    _check(slope, height, base_width, "base_width")
    if not 0.0 <= lateral < inf:
        raise ValueError(f"lateral must be 0 or more m/s2, got {lateral!r}")
    return lateral * height / (STANDARD_GRAVITY * cos(slope) * base_width / 2.0)


def tipping_share_round(slope: float, accel: float, lateral: float, height: float, diameter: float) -> float:
    """Share of a round footing that slope, start and curve use up together.

        share = sqrt((g sin(slope) + accel)^2 + lateral^2) height / (g cos(slope) diameter/2)

    Args:
        slope: angle of the carrying surface above level [rad], 0 <= slope < pi/2.
        accel: start or stop acceleration along the slope [m/s2], 0 or more.
        lateral: sideways acceleration in a curve [m/s2], 0 or more.
        height: centre of gravity above the surface [m], 0 or more.
        diameter: of the ring on which the product stands [m], more than 0.

    Returns: share [-]; it tips above 1. No safety factor is applied here.
    Valid for: bottles, cans, jars and pails on their base; a round base has no corners to lean on.
    Source: moments about the point of the ring in the direction of the combined thrust.

    >>> round(tipping_share_round(0.2, 0.5, 1.0, height=0.1, diameter=0.07), 4)
    0.7862
    """
    _check(slope, height, diameter, "diameter")
    if not 0.0 <= accel < inf:
        raise ValueError(f"accel must be 0 or more m/s2, got {accel!r}")
    if not 0.0 <= lateral < inf:
        raise ValueError(f"lateral must be 0 or more m/s2, got {lateral!r}")
    thrust = hypot(STANDARD_GRAVITY * sin(slope) + accel, lateral)
    return thrust * height / (STANDARD_GRAVITY * cos(slope) * diameter / 2.0)


def tip_slope(height: float, base: float) -> float:
    """Slope at which a product at rest tips, if friction holds it until then.

        slope = atan(base / (2 height))

    Args:
        height: centre of gravity above the surface [m], more than 0.
        base: support length along the slope [m], more than 0.

    Returns: slope above level [rad].
    Valid for: a rigid product, centre of gravity above the middle of its base.
    Source: OpenStax, University Physics vol. 1, sec. 12.1 (the plumb line leaves the base).

    >>> from math import degrees
    >>> round(degrees(tip_slope(height=0.2, base=0.2)), 3)
    26.565
    """
    if not 0.0 < height < inf:
        raise ValueError(f"height must be more than 0 m, got {height!r}")
    if not 0.0 < base < inf:
        raise ValueError(f"base must be more than 0 m, got {base!r}")
    return atan(base / (2.0 * height))


def _check(slope: float, height: float, base: float, name_of_base: str = "base") -> None:
    if not 0.0 <= slope < pi / 2:
        raise ValueError(f"slope must be from 0 to below pi/2 rad, got {slope!r}")
    if not 0.0 <= height < inf:
        raise ValueError(f"height must be 0 or more m, got {height!r}")
    if not 0.0 < base < inf:
        raise ValueError(f"{name_of_base} must be more than 0 m, got {base!r}")
