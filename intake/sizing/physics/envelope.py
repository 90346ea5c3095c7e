"""The space that a slope takes on plan."""

from math import inf, pi, tan


def run_plan_length(rise: float, slope: float) -> float:
    """Length on plan of a straight slope.

        rise / tan(slope)

    Args:
        rise: height gained [m], 0 or more.
        slope: above level [rad], 0 < slope < pi/2.

    Returns: length [m], level ends not included.
    Valid for: one slope throughout.
    Source: trigonometry.

    >>> from math import pi
    >>> round(run_plan_length(3.0, pi / 4), 6)
    3.0
    """
    if not 0.0 <= rise < inf:
        raise ValueError(f"rise must be 0 or more m, got {rise!r}")
    if not 0.0 < slope < pi / 2:
        raise ValueError(f"slope must be above 0 and below pi/2 rad, got {slope!r}")
    return rise / tan(slope)
