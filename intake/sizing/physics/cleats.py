"""Cleats: what a product carried by a cleat does on a steep belt."""

from math import inf, pi, tan


def leans_over(slope: float, height: float, base: float) -> float:
    """Share of its footing that a product uses up towards the cleat below it.

        share = tan(slope) height / (base/2)

    Args:
        slope: of the belt above level [rad], 0 <= slope < pi/2.
        height: centre of gravity above the belt [m], 0 or more.
        base: support length along the slope [m], more than 0.

    Returns: share [-]; above 1 it leans over onto the cleat.
    Valid for: a rigid product at steady speed.
    Source: OpenStax, University Physics vol. 1, sec. 12.1.

    >>> from math import pi
    >>> round(leans_over(pi / 4, height=0.05, base=0.2), 6)
    0.5
    """
    if not 0.0 <= slope < pi / 2:
        raise ValueError(f"slope must be from 0 to below pi/2 rad, got {slope!r}")
    if not 0.0 <= height < inf:
        raise ValueError(f"height must be 0 or more m, got {height!r}")
    if not 0.0 < base < inf:
        raise ValueError(f"base must be more than 0 m, got {base!r}")
    return tan(slope) * height / (base / 2.0)


def cleat_height_needed(height: float, share: float) -> float:
    """Height of the cleat that holds a product.

        share height

    Args:
        height: of the product above the belt [m], more than 0.
        share: of the product's height that the cleat must reach [-], more than 0.

    Returns: height [m].
    Valid for: the share chosen.
    Source: common practice, no source.

    >>> cleat_height_needed(0.2, 0.5)
    0.1
    """
    if not 0.0 < height < inf:
        raise ValueError(f"height must be more than 0 m, got {height!r}")
    if not 0.0 < share < inf:
        raise ValueError(f"share must be more than 0, got {share!r}")
    return height * share
