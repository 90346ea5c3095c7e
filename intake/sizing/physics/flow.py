"""Flow: how far apart products travel and how fast the belt must run."""

from math import inf


def pitch_straight(length: float, floor: float) -> float:
    """Distance from nose to nose on a straight belt.

        pitch = length + floor

    Args:
        length: product length along the travel [m], more than 0.
        floor: least gap that the equipment asks for between two products [m], 0 or more.

    Returns: pitch [m].
    Valid for: products in single file, none beside another.
    Source: definition.

    >>> pitch_straight(0.4, 0.1)
    0.5
    """
    _check(length, floor)
    return length + floor


def pitch_curved(length: float, floor: float, least: float, r_centre: float, r_inside: float) -> float:
    """Distance from nose to nose along the middle of a curved belt.

        pitch = max(length + floor, (length + least) r_centre / r_inside)

    In a curve the inside edge runs slower than the middle, so products close up there: the gap left at the inside
    edge must not fall below `least`.

    Args:
        length: product length along the travel [m], more than 0.
        floor: least gap that the equipment asks for on the straight [m], 0 or more.
        least: least gap left on the inside edge of the curve [m], 0 or more.
        r_centre: radius at the middle of the belt [m], at least r_inside.
        r_inside: radius at the inside edge of the belt [m], more than 0.

    Returns: pitch along the middle of the belt [m].
    Valid for: products in single file on a belt that turns as one body.
    Source: similar arcs, s = r phi (OpenStax, University Physics vol. 1, sec. 10.1).

    >>> round(pitch_curved(0.3, floor=0.05, least=0.02, r_centre=0.6, r_inside=0.4), 6)
    0.48
    """
    _check(length, floor)
    if not 0.0 <= least < inf:
        raise ValueError(f"least must be 0 or more m, got {least!r}")
    if not 0.0 < r_inside <= r_centre < inf:
        raise ValueError(f"radii must hold 0 < r_inside <= r_centre, got {r_inside!r} and {r_centre!r}")
    return max(length + floor, (length + least) * r_centre / r_inside)


def belt_speed(rate_per_s: float, pitch: float) -> float:
    """Speed at which a belt carries a rate of products.

        v = rate pitch

    Args:
        rate_per_s: products per second [1/s], 0 or more.
        pitch: distance from nose to nose [m], more than 0.

    Returns: belt speed [m/s].
    Valid for: one lane.
    Source: definition.

    >>> belt_speed(0.5, 0.6)
    0.3
    """
    if not 0.0 <= rate_per_s < inf:
        raise ValueError(f"rate_per_s must be 0 or more, got {rate_per_s!r}")
    if not 0.0 < pitch < inf:
        raise ValueError(f"pitch must be more than 0 m, got {pitch!r}")
    return rate_per_s * pitch


def lateral_accel(speed: float, radius: float) -> float:
    """Sideways acceleration in a level curve.

        a = speed^2 / radius

    Args:
        speed: along the path [m/s], 0 or more.
        radius: of the path [m], more than 0.

    Returns: acceleration towards the centre [m/s2].
    Valid for: steady speed.
    Source: OpenStax, University Physics vol. 1, sec. 6.3.

    >>> round(lateral_accel(25.0, 500.0), 4)
    1.25
    """
    if not 0.0 <= speed < inf:
        raise ValueError(f"speed must be 0 or more m/s, got {speed!r}")
    if not 0.0 < radius < inf:
        raise ValueError(f"radius must be more than 0 m, got {radius!r}")
    return speed * speed / radius


def _check(length: float, floor: float) -> None:
    if not 0.0 < length < inf:
        raise ValueError(f"length must be more than 0 m, got {length!r}")
    if not 0.0 <= floor < inf:
        raise ValueError(f"floor must be 0 or more m, got {floor!r}")
