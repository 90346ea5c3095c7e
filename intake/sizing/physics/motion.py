"""Moves from rest to rest: speed up, run, slow down; a triangle where the distance is too short to run."""

from math import inf, sqrt


def trapezoid_peak(distance: float, speed: float, accel: float, decel: float) -> float:
    """Highest speed that a move reaches.

        min(speed, sqrt(2 distance accel decel / (accel + decel)))

    Args:
        distance: of the move [m], 0 or more.
        speed: greatest speed allowed [m/s], more than 0.
        accel: rate of speeding up [m/s2], more than 0.
        decel: rate of slowing down [m/s2], more than 0.

    Returns: peak speed [m/s].
    Valid for: constant rates, rest at both ends.
    Source: OpenStax, University Physics vol. 1, sec. 3.4 (v^2 = 2 a x, both ramps together make the distance).

    >>> trapezoid_peak(1.0, 2.0, 1.0, 1.0)
    1.0
    """
    _check(distance, accel, decel)
    if not 0.0 < speed < inf:
        raise ValueError(f"speed must be more than 0 m/s, got {speed!r}")
    return min(speed, sqrt(2.0 * distance * accel * decel / (accel + decel)))


def trapezoid_time(distance: float, speed: float, accel: float, decel: float) -> float:
    """Time of a move from rest to rest.

        distance/v + (v/2)(1/accel + 1/decel) at the peak speed v, see `trapezoid_peak`

    Args:
        distance: of the move [m], 0 or more.
        speed: greatest speed allowed [m/s], more than 0.
        accel: rate of speeding up [m/s2], more than 0.
        decel: rate of slowing down [m/s2], more than 0.

    Returns: time [s].
    Valid for: constant rates, no jerk limit (a soft start takes longer).
    Source: OpenStax, University Physics vol. 1, sec. 3.4; the case of different rates as in Khurmi and Gupta,
        Theory of Machines, Ex. 3.2.

    >>> trapezoid_time(4.0, 1.0, 0.5, 0.5)
    6.0
    >>> trapezoid_time(1.0, 2.0, 1.0, 1.0)
    2.0
    """
    peak = trapezoid_peak(distance, speed, accel, decel)
    if peak == 0.0:
        return 0.0
    return distance / peak + peak / 2.0 * (1.0 / accel + 1.0 / decel)


def peak_speed_for_time(distance: float, time: float, accel: float, decel: float) -> float:
    """Least speed limit with which a move keeps to a time.

        v = 2 distance / (time + sqrt(time^2 - 2 k distance)),  k = 1/accel + 1/decel

    Args:
        distance: of the move [m], 0 or more.
        time: for the move [s], more than 0.
        accel: rate of speeding up [m/s2], more than 0.
        decel: rate of slowing down [m/s2], more than 0.

    Returns: speed [m/s]; inf where no speed does it, as the ramps alone take longer.
    Valid for: constant rates, rest at both ends.
    Source: inverse of `trapezoid_time`; used as in Chakrabarti et al., Power System Engineering, Ex. 5.1.

    >>> peak_speed_for_time(4.0, 6.0, 0.5, 0.5)
    1.0
    >>> peak_speed_for_time(4.0, 2.0, 0.5, 0.5)
    inf
    """
    _check(distance, accel, decel)
    if not 0.0 < time < inf:
        raise ValueError(f"time must be more than 0 s, got {time!r}")
    room = time * time - 2.0 * (1.0 / accel + 1.0 / decel) * distance
    # A triangle that just makes it comes out a hair below 0 by rounding; that is not "impossible".
    if room < -1e-12 * time * time:
        return inf
    return 2.0 * distance / (time + sqrt(max(room, 0.0)))


def _check(distance: float, accel: float, decel: float) -> None:
    if not 0.0 <= distance < inf:
        raise ValueError(f"distance must be 0 or more m, got {distance!r}")
    if not 0.0 < accel < inf:
        raise ValueError(f"accel must be more than 0 m/s2, got {accel!r}")
    if not 0.0 < decel < inf:
        raise ValueError(f"decel must be more than 0 m/s2, got {decel!r}")
