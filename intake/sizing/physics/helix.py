"""The helix: slope, rise, length and curvature of a path that climbs round a column."""

from math import atan, cos, hypot, inf, pi, sqrt, tan


def slope_of(path_diameter: float, rise_per_turn: float) -> float:
    """Slope of a helical path.

        slope = atan(rise_per_turn / (pi path_diameter))

    Args:
        path_diameter: of the middle of the belt, seen from above [m], more than 0.
        rise_per_turn: height gained in one turn [m], 0 or more.

    Returns: slope above level [rad].
    Valid for: a helix of constant radius and lead.
    Source: lead angle of a screw thread, e.g. Tayal, Engineering Mechanics, Ex. 7.10.

    >>> from math import degrees
    >>> round(degrees(slope_of(0.1, 0.0125)), 3)
    2.279
    """
    _check(path_diameter, rise_per_turn)
    return atan(rise_per_turn / (pi * path_diameter))


def rise_per_turn(path_diameter: float, slope: float) -> float:
    """Height gained in one turn of a helix.

        rise_per_turn = pi path_diameter tan(slope)

    Args:
        path_diameter: of the middle of the belt, seen from above [m], more than 0.
        slope: above level [rad], 0 <= slope < pi/2.

    Returns: height [m].
    Valid for: a helix of constant radius and lead.
    Source: inverse of `slope_of`.

    >>> round(rise_per_turn(1.2, 0.15), 4)
    0.5698
    """
    if not 0.0 < path_diameter < inf:
        raise ValueError(f"path_diameter must be more than 0 m, got {path_diameter!r}")
    if not 0.0 <= slope < pi / 2:
        raise ValueError(f"slope must be from 0 to below pi/2 rad, got {slope!r}")
    return pi * path_diameter * tan(slope)


def helix_length(path_diameter: float, rise_per_turn: float, turns: float) -> float:
    """Length along a helical path.

        length = turns sqrt((pi path_diameter)^2 + rise_per_turn^2)

    Args:
        path_diameter: of the middle of the belt, seen from above [m], more than 0.
        rise_per_turn: height gained in one turn [m], 0 or more.
        turns: number of turns, parts of a turn included [-], 0 or more.

    Returns: length [m].
    Valid for: a helix of constant radius and lead.
    Source: OpenStax, Calculus vol. 3, sec. 3.3 (arc length of a helix).

    >>> round(helix_length(2.0, 2.0, 10.0), 2)
    65.94
    """
    _check(path_diameter, rise_per_turn)
    if not 0.0 <= turns < inf:
        raise ValueError(f"turns must be 0 or more, got {turns!r}")
    return turns * hypot(pi * path_diameter, rise_per_turn)


def curvature(path_diameter: float, slope: float) -> float:
    """Curvature of a helical path: the guide presses on a belt with tension times this.

        curvature = cos(slope)^2 / (path_diameter / 2)

    Args:
        path_diameter: of the middle of the belt, seen from above [m], more than 0.
        slope: above level [rad], 0 <= slope < pi/2.

    Returns: curvature [1/m].
    Valid for: a helix of constant radius and lead.
    Source: OpenStax, Calculus vol. 3, sec. 3.3 (curvature of a helix).

    >>> from math import atan
    >>> round(curvature(8.0, atan(0.75)), 4)
    0.16
    """
    if not 0.0 < path_diameter < inf:
        raise ValueError(f"path_diameter must be more than 0 m, got {path_diameter!r}")
    if not 0.0 <= slope < pi / 2:
        raise ValueError(f"slope must be from 0 to below pi/2 rad, got {slope!r}")
    flat = cos(slope)
    return 2.0 * flat * flat / path_diameter


def width_in_curve(r_inside: float, width: float, length: float) -> float:
    """Width that a rectangular product sweeps in a curve when its side touches the inside edge.

        swept = sqrt((r_inside + width)^2 + (length/2)^2) - r_inside

    Args:
        r_inside: radius at the inside edge of the lane [m], 0 or more.
        width: product width across the travel [m], more than 0.
        length: product length along the travel [m], 0 or more.

    Returns: width [m], clearance not included.
    Valid for: a rectangular footprint that touches the inside edge at the middle of its length.
    Source: Pythagoras on the outer corner.

    >>> round(width_in_curve(1.0, 0.4, 0.6), 5)
    0.43178
    """
    if not 0.0 <= r_inside < inf:
        raise ValueError(f"r_inside must be 0 or more m, got {r_inside!r}")
    if not 0.0 < width < inf:
        raise ValueError(f"width must be more than 0 m, got {width!r}")
    if not 0.0 <= length < inf:
        raise ValueError(f"length must be 0 or more m, got {length!r}")
    return sqrt((r_inside + width) ** 2 + (length / 2.0) ** 2) - r_inside


def least_inside_radius(width: float, length: float, lane: float) -> float:
    """Least radius at the inside edge with which a lane takes a product: `width_in_curve` turned round.

        r = (width^2 + length^2/4 - lane^2) / (2 (lane - width)), 0 at least

    Args:
        width: product width across the travel [m], more than 0.
        length: product length along the travel [m], 0 or more.
        lane: width of the lane, clearance taken off [m], any finite number.

    Returns: radius [m]; inf where the lane is not wider than the product.
    Valid for: as `width_in_curve`.
    Source: Pythagoras, solved for the radius.

    >>> round(least_inside_radius(0.3, 0.4, width_in_curve(0.5, 0.3, 0.4)), 9)
    0.5
    >>> least_inside_radius(0.3, 0.4, 0.3)
    inf
    """
    if not 0.0 < width < inf:
        raise ValueError(f"width must be more than 0 m, got {width!r}")
    if not 0.0 <= length < inf:
        raise ValueError(f"length must be 0 or more m, got {length!r}")
    if not -inf < lane < inf:
        raise ValueError(f"lane must be a finite number of m, got {lane!r}")
    if lane <= width:
        return inf
    return max(0.0, (width * width + length * length / 4.0 - lane * lane) / (2.0 * (lane - width)))


def _check(path_diameter: float, rise_per_turn: float) -> None:
    if not 0.0 < path_diameter < inf:
        raise ValueError(f"path_diameter must be more than 0 m, got {path_diameter!r}")
    if not 0.0 <= rise_per_turn < inf:
        raise ValueError(f"rise_per_turn must be 0 or more m, got {rise_per_turn!r}")
