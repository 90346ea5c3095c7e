"""Transfers: crests and hollows between slopes, rollers and dead plates between machines."""

from math import inf


def sag(length: float, radius: float) -> float:
    """Gap between a rigid base and a rounded change of slope.

        sag = length^2 / (8 radius)

    Over a crest the ends of the base hang this high above the belt; in a hollow its middle does.

    Args:
        length: of the product base along the travel [m], 0 or more.
        radius: of the crest or hollow [m], more than 0.

    Returns: gap [m].
    Valid for: length well below the radius (1 % low at length = 0.4 radius).
    Source: height of a flat arc over its chord; its use as a limit is common practice, no source.

    >>> round(sag(0.4, 2.0), 4)
    0.01
    """
    if not 0.0 <= length < inf:
        raise ValueError(f"length must be 0 or more m, got {length!r}")
    if not 0.0 < radius < inf:
        raise ValueError(f"radius must be more than 0 m, got {radius!r}")
    return length * length / (8.0 * radius)


def rollers_under(base: float, roller_pitch: float) -> float:
    """How many roller pitches the base of a product spans.

        base / roller_pitch

    Args:
        base: support length along the travel [m], 0 or more.
        roller_pitch: from roller to roller [m], more than 0.

    Returns: pitches [-]; three or more always leave it on at least three rollers.
    Valid for: a flat rigid base.
    Source: three rollers under every product: common practice, no source.

    >>> round(rollers_under(0.3, 0.075), 6)
    4.0
    """
    if not 0.0 <= base < inf:
        raise ValueError(f"base must be 0 or more m, got {base!r}")
    if not 0.0 < roller_pitch < inf:
        raise ValueError(f"roller_pitch must be more than 0 m, got {roller_pitch!r}")
    return base / roller_pitch


def bridges_gap(base: float, gap: float) -> float:
    """Share of half the base that a gap without support takes.

        gap / (base/2)

    Args:
        base: support length along the travel, centre of gravity above its middle [m], more than 0.
        gap: without support between two belts, or a dead plate without drive [m], 0 or more.

    Returns: share [-]; below 1 the product reaches the far side before its centre of gravity leaves the near one.
    Valid for: a rigid base.
    Source: centre of gravity over its support (OpenStax, University Physics vol. 1, sec. 12.1).

    >>> bridges_gap(0.2, 0.05)
    0.5
    """
    if not 0.0 < base < inf:
        raise ValueError(f"base must be more than 0 m, got {base!r}")
    if not 0.0 <= gap < inf:
        raise ValueError(f"gap must be 0 or more m, got {gap!r}")
    return gap / (base / 2.0)
