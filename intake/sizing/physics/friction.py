"""Sliding: dry friction on a slope, with the thrust of starts, stops and curves."""

from math import asin, atan, cos, hypot, inf, pi, sin, sqrt, tan

STANDARD_GRAVITY = 9.80665  # m/s2, exact by definition (3rd CGPM, 1901)


def friction_needed(slope: float, accel: float = 0.0, lateral: float = 0.0) -> float:
    """Least friction coefficient that keeps a product from sliding on a slope.

        mu = sqrt((g sin(slope) + accel)^2 + lateral^2) / (g cos(slope))

    Friction is one circle: what the thrust along the slope takes of it, the curve cannot have.

    Args:
        slope: angle of the carrying surface above level [rad], 0 <= slope < pi/2.
        accel: start or stop acceleration along the slope, in the direction that hurts [m/s2], 0 or more.
        lateral: sideways acceleration in a curve, v^2/r, square to the slope and level [m/s2], 0 or more.

    Returns: friction coefficient [-]. No safety factor is applied here.
    Valid for: dry Coulomb friction; not for wet, oily or sticky surfaces.
    Source: OpenStax, University Physics vol. 1, sec. 6.2 (mu = tan(slope) for accel = lateral = 0) and sec. 6.3
        (level curve, mu = v^2/(r g)).

    >>> round(friction_needed(0.2), 4)
    0.2027
    >>> round(friction_needed(0.2, accel=0.5, lateral=1.0), 4)
    0.2752
    """
    if not 0.0 <= slope < pi / 2:  # also refuses nan
        raise ValueError(f"slope must be from 0 to below pi/2 rad, got {slope!r}")
    if not 0.0 <= accel < inf:
        raise ValueError(f"accel must be 0 or more m/s2, got {accel!r}")
    if not 0.0 <= lateral < inf:
        raise ValueError(f"lateral must be 0 or more m/s2, got {lateral!r}")
    return hypot(STANDARD_GRAVITY * sin(slope) + accel, lateral) / (STANDARD_GRAVITY * cos(slope))


def steepest_slope(grip: float, accel: float = 0.0, lateral: float = 0.0) -> float:
    """Steepest slope on which a product stays put: `friction_needed` turned round.

        sin(slope) = (sqrt(grip^2 (g^2 w - accel^2) - lateral^2 w) - accel) / (g w),  w = 1 + grip^2

    Args:
        grip: friction coefficient, already divided by its safety factor; for tipping, half of the base over the
            height of the centre of gravity [-], 0 or more.
        accel: start or stop acceleration along the slope [m/s2], 0 or more.
        lateral: sideways acceleration in a curve [m/s2], 0 or more.

    Returns: slope above level [rad]; below 0 where the accelerations alone are too much on the level.
    Valid for: as `friction_needed`.
    Source: the friction circle of `friction_needed`, solved for the slope.

    >>> round(steepest_slope(friction_needed(0.2, 0.5, 1.0), 0.5, 1.0), 9)
    0.2
    >>> steepest_slope(0.1, lateral=2.0) < 0.0
    True
    """
    if not 0.0 <= grip < inf:
        raise ValueError(f"grip must be 0 or more, got {grip!r}")
    if not 0.0 <= accel < inf:
        raise ValueError(f"accel must be 0 or more m/s2, got {accel!r}")
    if not 0.0 <= lateral < inf:
        raise ValueError(f"lateral must be 0 or more m/s2, got {lateral!r}")
    whole = 1.0 + grip * grip
    under = grip * grip * (STANDARD_GRAVITY * STANDARD_GRAVITY * whole - accel * accel) - lateral * lateral * whole
    if under < 0.0 or hypot(accel, lateral) > grip * STANDARD_GRAVITY:
        return -1.0
    return asin(min(1.0, (sqrt(under) - accel) / (STANDARD_GRAVITY * whole)))  # 1 but for rounding with a huge grip


def slip_slope(mu: float) -> float:
    """Slope at which a product at rest, or at steady speed, begins to slide.

        slope = atan(mu)

    Args:
        mu: friction coefficient [-], 0 or more.

    Returns: slope above level [rad].
    Valid for: dry Coulomb friction without acceleration.
    Source: OpenStax, University Physics vol. 1, sec. 6.2.

    >>> from math import degrees
    >>> round(degrees(slip_slope(0.1)), 2)
    5.71
    """
    if not 0.0 <= mu < inf:
        raise ValueError(f"mu must be 0 or more, got {mu!r}")
    return atan(mu)


def friction_from_slope(angle: float) -> float:
    """Friction coefficient that a tilting test shows: the angle at which the product slid.

        mu = tan(angle)

    Args:
        angle: slope above level at which it slid [rad], 0 <= angle < pi/2.

    Returns: friction coefficient [-], static when it was read at the first movement.
    Valid for: dry Coulomb friction, slow tilting, clean surfaces as they will run.
    Source: TAPPI T 815, slide-angle method (its summary); OpenStax, University Physics vol. 1, sec. 6.2.

    >>> from math import radians
    >>> round(friction_from_slope(radians(26.565)), 3)
    0.5
    """
    if not 0.0 <= angle < pi / 2:
        raise ValueError(f"angle must be from 0 to below pi/2 rad, got {angle!r}")
    return tan(angle)
