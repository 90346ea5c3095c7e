"""Cover belt: a belt that lies on the product and presses it onto a belt of high friction."""

from math import cos, inf, pi, sin

from intake.sizing.physics.friction import STANDARD_GRAVITY


def cover_force(weight_per_m: float, pitch: float, slope: float, hold_down: float) -> float:
    """Force with which the cover presses on one product, square to the slope.

        n = weight_per_m pitch cos(slope) + hold_down

    Args:
        weight_per_m: weight of the cover belt per length [N/m], 0 or more.
        pitch: distance from nose to nose; each product bears the cover over one pitch [m], more than 0.
        slope: above level [rad], 0 <= slope < pi/2.
        hold_down: sprung or weighted force per product [N], 0 or more.

    Returns: force on one product [N].
    Valid for: a cover that touches nothing but the products; its weight down the slope hangs on its own loop.
    Source: weight square to a slope, w cos(slope): OpenStax, University Physics vol. 1, sec. 5.6.

    >>> round(cover_force(20.0, 0.5, 0.7, hold_down=5.0), 3)
    12.648
    """
    if not 0.0 <= weight_per_m < inf:
        raise ValueError(f"weight_per_m must be 0 or more N/m, got {weight_per_m!r}")
    if not 0.0 < pitch < inf:
        raise ValueError(f"pitch must be more than 0 m, got {pitch!r}")
    if not 0.0 <= slope < pi / 2:
        raise ValueError(f"slope must be from 0 to below pi/2 rad, got {slope!r}")
    if not 0.0 <= hold_down < inf:
        raise ValueError(f"hold_down must be 0 or more N, got {hold_down!r}")
    return weight_per_m * pitch * cos(slope) + hold_down


def cover_needed_ratio(
    mass: float, slope: float, accel: float, cover_force: float, drag: float, safety: float
) -> float:
    """Friction coefficient that the lower belt must have to hold a covered product.

        mu (m g cos(slope) + n) >= safety (m (g sin(slope) + accel) + drag n)

    Args:
        mass: of one product, m [kg], more than 0.
        slope: above level [rad], 0 <= slope < pi/2.
        accel: start or stop acceleration along the slope [m/s2], 0 or more.
        cover_force: force of the cover on one product, n [N], 0 or more.
        drag: share of n with which the cover, dragged along, holds the product back [-], 0 or more.
        safety: factor on the load [-], 1 or more.

    Returns: friction coefficient between product and lower belt [-].
    Valid for: firm flat tops. The cover is not driven: it presses, and costs drag.
    Source: forces along and square to a slope with a pressing force, as in Tayal, Engineering Mechanics, Ex. 6.1
        (push at an angle: pressing harder also costs more).

    >>> round(cover_needed_ratio(10.0, 0.7, 0.3, cover_force=12.6, drag=0.05, safety=1.3), 4)
    0.9914
    """
    if not 0.0 < mass < inf:
        raise ValueError(f"mass must be more than 0 kg, got {mass!r}")
    if not 0.0 <= slope < pi / 2:
        raise ValueError(f"slope must be from 0 to below pi/2 rad, got {slope!r}")
    if not 0.0 <= accel < inf:
        raise ValueError(f"accel must be 0 or more m/s2, got {accel!r}")
    if not 0.0 <= cover_force < inf:
        raise ValueError(f"cover_force must be 0 or more N, got {cover_force!r}")
    if not 0.0 <= drag < inf:
        raise ValueError(f"drag must be 0 or more, got {drag!r}")
    if not 1.0 <= safety < inf:
        raise ValueError(f"safety must be 1 or more, got {safety!r}")
    load = mass * (STANDARD_GRAVITY * sin(slope) + accel) + drag * cover_force
    return safety * load / (mass * STANDARD_GRAVITY * cos(slope) + cover_force)
