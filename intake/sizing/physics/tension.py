"""Belt tension: how it grows along a strand that carries, climbs and rubs on a guide, and round a whole loop."""

from collections.abc import Sequence
from math import cos, exp, expm1, inf, pi, sin
from typing import NamedTuple

_LARGEST_EXPONENT = 700.0  # exp(709.78) is the end of the double; short of it we say inf
_SERIES_BELOW = 1e-8  # here expm1(x)/x = 1 + x/2 to the last bit, and x may have lost bits to underflow


class Strand(NamedTuple):
    """One stretch of a belt loop, in the direction of travel, along which dT/ds = a + b T.

    a: growth of tension per length from weight and sliding [N/m], negative where the load pulls along.
    b: growth per length as a share of the tension itself, from rubbing on a guide [1/m], 0 or more.
    length: along the belt [m], 0 or more.
    """

    a: float
    b: float
    length: float


class LoopPull(NamedTuple):
    """Tensions of a belt loop [N].

    tight: where the belt runs onto the drive. slack: where it leaves the drive. greatest: at any node.
    """

    tight: float
    slack: float
    greatest: float

    @property
    def pull(self) -> float:
        """Effective pull of the drive [N]: tight less slack, negative when the load drives the machine."""
        return self.tight - self.slack


def strand_end(start: float, rate_a: float, rate_b: float, length: float) -> float:
    """Tension at the end of a strand, in the direction of travel.

        dT/ds = A + B T,  T(length) = start + (A + B start) expm1(B length) / B;  B = 0: start + A length

    Args:
        start: tension at the beginning [N], any sign, inf allowed.
        rate_a: A, from weight and sliding [N/m], any sign.
        rate_b: B, from rubbing on a guide [1/m], 0 or more.
        length: along the belt [m], 0 or more.

    Returns: tension [N]; inf beyond the largest float.
    Valid for: steady running; tension monotone along the strand, so its extremes are at the ends.
    Source: belt friction with distributed load. A = 0 is the rope formula (Baker and Haynes, Engineering Statics:
        Open and Interactive, sec. 9.5); B = 0 is a straight slope.

    >>> round(strand_end(100.0, 20.0, 0.0, 5.0), 3)
    200.0
    >>> round(strand_end(100.0, 20.0, 0.1, 5.0), 3)
    294.616
    >>> strand_end(100.0, 20.0, 2.0, 5000.0)
    inf
    """
    _check(start, rate_a, rate_b, length)
    return _end(start, rate_a, rate_b, length)


def strand_start_for_end(end: float, rate_a: float, rate_b: float, length: float) -> float:
    """Tension that a strand must begin with so as to end with a given one: the inverse of `strand_end`.

        start = end exp(-B length) + A expm1(-B length) / B;  B = 0: end - A length

    Args:
        end: tension at the end [N], any sign, inf allowed.
        rate_a: A, from weight and sliding [N/m], any sign.
        rate_b: B, from rubbing on a guide [1/m], 0 or more.
        length: along the belt [m], 0 or more.

    Returns: tension [N].
    Valid for: as `strand_end`.
    Source: as `strand_end`.

    >>> round(strand_start_for_end(200.0, 20.0, 0.0, 5.0), 3)
    100.0
    """
    _check(end, rate_a, rate_b, length)
    return _start(end, rate_a, rate_b, length)


def loop_tensions(strands: Sequence[tuple[float, float, float]], drive_after: int, least: float) -> LoopPull:
    """Tensions of a belt loop, followed once round from the drive to the drive.

    The tension with which the belt leaves the drive is the least one that keeps every node at `least` or above;
    a take-up has to see to it. Then every strand in turn, `strand_end` after `strand_end`.

    Args:
        strands: the loop in the direction of travel, at least one; each a Strand or its three figures.
        drive_after: index of the strand at whose end the drive stands, 0 <= drive_after < len(strands).
        least: tension that the belt must nowhere fall below [N], 0 or more.

    Returns: tight, slack and greatest tension [N]. Tight and greatest are inf beyond the largest float.
    Valid for: one drive, steady running, no slip between drive and belt.
    Source: method of following the tensions node by node, as in ISO 5048 (from memory: order of work only).

    >>> loop = loop_tensions([Strand(60.0, 0.0, 10.0), Strand(-10.0, 0.0, 10.0)], drive_after=0, least=50.0)
    >>> loop
    LoopPull(tight=650.0, slack=150.0, greatest=650.0)
    >>> loop.pull
    500.0
    """
    if not 0 <= drive_after < len(strands):
        raise ValueError(f"drive_after must be the index of a strand, got {drive_after!r} of {len(strands)}")
    if not 0.0 <= least < inf:
        raise ValueError(f"least must be 0 or more N, got {least!r}")
    from_drive = [*strands[drive_after + 1 :], *strands[: drive_after + 1]]
    need, needs = least, [least]  # from the end back: what each node must have so that no later one is below `least`
    for a, b, length in reversed(from_drive):
        if not (-inf < a < inf and 0.0 <= b < inf and 0.0 <= length < inf):
            raise ValueError(f"strands must be finite, b and length 0 or more, got {Strand(a, b, length)!r}")
        start = need - a * length if b == 0.0 else _start(need, a, b, length)
        need = start if start > least else least
        needs.append(need)
    needs.reverse()
    # Up to the first node at `least` the tensions are the needs themselves. Worked out forwards again, a rounding
    # error would grow with the tension.
    at_least = needs.index(least)
    tension = least
    greatest = max(needs[: at_least + 1])
    for a, b, length in from_drive[at_least:]:
        tension = tension + a * length if b == 0.0 else _end(tension, a, b, length)
        if tension > greatest:
            greatest = tension
    return LoopPull(tension if tension > least else least, needs[0], greatest)


def carry_gain(load_n_per_m: float, slope: float, friction: float, climbs: bool) -> float:
    """Growth of tension per length of a strand that slides on its bed and climbs or descends.

        A = load (friction cos(slope) + sin(slope)) climbing,  load (friction cos(slope) - sin(slope)) descending

    Args:
        load_n_per_m: weight of belt and products per length of belt [N/m], 0 or more.
        slope: above level [rad], 0 <= slope < pi/2.
        friction: coefficient between belt and bed, or rolling resistance [-], 0 or more.
        climbs: True when the strand travels upwards.

    Returns: A for `strand_end` [N/m]; negative where a descending load pulls the belt along.
    Valid for: steady running.
    Source: OpenStax, University Physics vol. 1, sec. 6.2 and 6.4 (force up a slope for moving up and for down).

    >>> round(carry_gain(150.0, 0.1, 0.2, climbs=True), 3)
    44.825
    >>> round(carry_gain(150.0, 0.3, 0.2, climbs=False), 3)
    -15.668
    """
    if not 0.0 <= load_n_per_m < inf:
        raise ValueError(f"load_n_per_m must be 0 or more N/m, got {load_n_per_m!r}")
    if not 0.0 <= slope < pi / 2:
        raise ValueError(f"slope must be from 0 to below pi/2 rad, got {slope!r}")
    if not 0.0 <= friction < inf:
        raise ValueError(f"friction must be 0 or more, got {friction!r}")
    lift = sin(slope) if climbs else -sin(slope)
    return load_n_per_m * (friction * cos(slope) + lift)


def runaway_pull(
    load_n_per_m: float, back_n_per_m: float, slope: float, friction: float, length: float, level: float = 0.0
) -> float:
    """Pull with which a loaded slope would run downhill by itself when nothing drives or brakes it.

        F = (load - back) sin(slope) length - friction ((load + back) cos(slope) length + load level), 0 at least

    Args:
        load_n_per_m: weight of belt and products per length of the loaded strand [N/m], 0 or more.
        back_n_per_m: weight of the empty return strand per length, which hangs on the other side [N/m], 0 or more.
        slope: above level [rad], 0 <= slope < pi/2.
        friction: coefficient between belt and bed [-], 0 or more.
        length: of the slope [m], 0 or more.
        level: length of the loaded level ends [m], 0 or more.

    Returns: force that a brake or backstop has to hold [N]; 0 where friction holds the load by itself.
    Valid for: standstill. Friction of drive and guides helps and is left out.
    Source: block on a slope, net force m g (sin(slope) - mu cos(slope)): OpenStax, University Physics vol. 1, sec. 6.2.

    >>> round(runaway_pull(100.0, 20.0, 0.4, 0.1, 10.0), 2)
    201.01
    >>> runaway_pull(100.0, 20.0, 0.05, 0.3, 10.0)
    0.0
    """
    for name, value in (("load_n_per_m", load_n_per_m), ("back_n_per_m", back_n_per_m), ("friction", friction)):
        if not 0.0 <= value < inf:
            raise ValueError(f"{name} must be 0 or more, got {value!r}")
    for name, value in (("length", length), ("level", level)):
        if not 0.0 <= value < inf:
            raise ValueError(f"{name} must be 0 or more m, got {value!r}")
    if not 0.0 <= slope < pi / 2:
        raise ValueError(f"slope must be from 0 to below pi/2 rad, got {slope!r}")
    down = (load_n_per_m - back_n_per_m) * sin(slope) * length
    held = friction * ((load_n_per_m + back_n_per_m) * cos(slope) * length + load_n_per_m * level)
    return max(0.0, down - held)


def guide_rate(friction: float, slope: float, radius: float) -> float:
    """Share of the tension that a belt gains per length by rubbing on the guide of a helix.

        B = friction cos(slope)^2 / radius

    Args:
        friction: coefficient between belt edge and guide, or that of rolling guides [-], 0 or more.
        slope: of the helix above level [rad], 0 <= slope < pi/2.
        radius: of the guided edge or chain [m], more than 0.

    Returns: B for `strand_end` [1/m].
    Valid for: a belt pulled round the inside of its curve, pressed on the guide by its own tension.
    Source: curvature of a helix (OpenStax, Calculus vol. 3, sec. 3.3) in the rope formula.

    >>> round(guide_rate(0.15, 0.1, 0.6), 5)
    0.24751
    """
    if not 0.0 <= friction < inf:
        raise ValueError(f"friction must be 0 or more, got {friction!r}")
    if not 0.0 <= slope < pi / 2:
        raise ValueError(f"slope must be from 0 to below pi/2 rad, got {slope!r}")
    if not 0.0 < radius < inf:
        raise ValueError(f"radius must be more than 0 m, got {radius!r}")
    flat = cos(slope)
    return friction * flat * flat / radius


def capstan(tension: float, mu: float, angle: float) -> float:
    """Tension behind a bend that the belt rubs round.

        T = tension exp(mu angle)

    Args:
        tension: before the bend [N], 0 or more, inf allowed.
        mu: friction coefficient in the bend [-], 0 or more.
        angle: turned through [rad], 0 or more.

    Returns: tension [N]; inf beyond the largest float.
    Valid for: a belt without weight of its own in the bend.
    Source: Baker and Haynes, Engineering Statics: Open and Interactive, sec. 9.5 (rope friction).

    >>> round(capstan(100.0, 0.25, 3.14159265), 2)
    219.33
    """
    if not 0.0 <= tension <= inf:
        raise ValueError(f"tension must be 0 or more N, got {tension!r}")
    if not 0.0 <= mu < inf:
        raise ValueError(f"mu must be 0 or more, got {mu!r}")
    if not 0.0 <= angle < inf:
        raise ValueError(f"angle must be 0 or more rad, got {angle!r}")
    if tension == 0.0:
        return 0.0
    exponent = mu * angle
    return inf if exponent > _LARGEST_EXPONENT else tension * exp(exponent)


def _end(start: float, a: float, b: float, length: float) -> float:
    """`strand_end` of values that are known to be in range: a loop checks each strand once."""
    if start == inf:
        return inf
    growth = a + b * start
    if growth == 0.0 or length == 0.0:
        return start
    x = b * length
    if x < _SERIES_BELOW:
        return start + growth * length * (1.0 + x / 2.0)
    if x > _LARGEST_EXPONENT:
        return inf if growth > 0.0 else -inf
    return start + growth * (expm1(x) / b)


def _start(end: float, a: float, b: float, length: float) -> float:
    """`strand_start_for_end` of values that are known to be in range."""
    if end == inf:
        return inf
    x = b * length
    if x < _SERIES_BELOW:
        return end - (a + b * end) * length * (1.0 - x / 2.0)
    return end * exp(-x) + a * (expm1(-x) / b)


def _check(tension: float, rate_a: float, rate_b: float, length: float) -> None:
    if not -inf < tension <= inf:
        raise ValueError(f"tension must be a number of N, got {tension!r}")
    if not -inf < rate_a < inf:
        raise ValueError(f"rate_a must be a finite number of N/m, got {rate_a!r}")
    if not 0.0 <= rate_b < inf:
        raise ValueError(f"rate_b must be 0 or more 1/m, got {rate_b!r}")
    if not 0.0 <= length < inf:
        raise ValueError(f"length must be 0 or more m, got {length!r}")
