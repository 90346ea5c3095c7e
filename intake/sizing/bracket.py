"""Where a condition stops holding: bracketed roots of a margin, reported on the side that still holds."""

from collections.abc import Callable, Sequence
from math import isfinite

Rooms = Callable[[float], Sequence[float]]
"""What each of several conditions leaves at a place, in a fixed order; 0 or more holds."""

_RELATIVE = 1e-9
_SMALLEST_FACTOR = 1e-3
_LARGEST_FACTOR = 4096.0
_MOST_TURNS = 200
_STEP = 1.01
_STRIDE = 1.04
_COARSE = 1.12
_TO_A_MILLIONTH = 1e-6


def largest_factor(rooms: Rooms, smallest: float = _SMALLEST_FACTOR) -> float | None:
    """The end of the connected range from 1 upwards in which no room is below 0, rounded inward; below 1 if 1 fails.

    Args:
        rooms: what each of several conditions leaves at a factor on the figure looked at; 0 or more holds.
        smallest: factor below which nobody looks.

    Returns: the factor; None when nothing down to the smallest holds.
    """
    at_one = rooms(1.0)
    if _hold(at_one):
        good, room, bad = 1.0, at_one, 2.0
        while _hold(short := rooms(bad)):
            good, room, bad = bad, short, bad * 2.0
            if bad > _LARGEST_FACTOR:
                return good
    else:
        bad, short, good = 1.0, at_one, 0.5
        while good >= smallest and not _hold(room := rooms(good)):
            bad, short, good = good, room, good / 2.0
        if good < smallest:
            return None
    last = last_holding(rooms, good, room, bad, short)
    # Checks grant a billionth for rounding; a capacity does not use it up.
    return max(1.0, last * (1.0 - 2.0 * _RELATIVE)) if last >= 1.0 else last * (1.0 - 2.0 * _RELATIVE)


def last_holding(rooms: Rooms, good: float, room: Sequence[float], bad: float, short: Sequence[float]) -> float:
    """The last place, between one that holds and one that does not, where no room is below 0.

    Regula falsi on the conditions that fail at the far end (the first of them to fail sets the next place to look),
    with the Illinois rule (halve the weight of an end that stays twice) and every third step a bisection, so that a
    step in a condition costs little more than bisection alone.

    Args:
        rooms: see `largest_factor`. good, bad: places that hold and do not, in either order. room, short: rooms there.

    Returns: a place that holds, a billionth of it from one that does not.
    """
    stayed, weight_good, weight_bad = 0, 1.0, 1.0
    for turn in range(_MOST_TURNS):
        near = 0.5 * _RELATIVE * abs(good)
        if abs(bad - good) <= 2.0 * near:
            break
        share = 0.5 if turn % 3 == 2 else _first_to_fail(room, short, weight_good, weight_bad)
        low, high = min(good, bad), max(good, bad)
        at = good + (bad - good) * share
        at = min(max(at, low + near), high - near)  # a hair off the ends: else one of them would never move
        found = rooms(at)
        if _hold(found):
            good, room = at, found
            weight_good, weight_bad = 1.0, weight_bad * 0.5 if stayed == 1 else weight_bad
            stayed = 1
        else:
            bad, short = at, found
            weight_bad, weight_good = 1.0, weight_good * 0.5 if stayed == -1 else weight_good
            stayed = -1
    return good


def _hold(rooms: Sequence[float]) -> bool:
    return min(rooms) >= 0.0


def _first_to_fail(room: Sequence[float], short: Sequence[float], weight_good: float, weight_bad: float) -> float:
    """How far from the good end to the bad one a straight line first crosses 0; half-way where none can be drawn."""
    crossings = [
        weight_good * here / (weight_good * here - weight_bad * there)
        for here, there in zip(room, short, strict=True)
        if there < 0.0 and isfinite(here - there)
    ]
    return min(crossings, default=0.5)


def scan(holds: Callable[[float], bool], start: float, least: float, most: float) -> float | None:
    """The end of the range around `start` in which something holds: up from it, or down to it where it fails there.

    Steps of 4 %, then of 1 % where it stops holding, then bisection: a gap wider than that ends the range, and 1 %
    beyond the value returned it does not hold.

    Args:
        holds: of a value above 0. start: where to begin. least, most: where to end.

    Returns: a value that holds, a millionth from one that does not (or `most`); None when nothing down to `least`
    holds.
    """
    good = start
    if not holds(start):
        bad = start
        while True:
            if bad <= least:
                return None
            good = max(least, bad / _STRIDE)
            if holds(good):
                break
            bad = good
        return scan(holds, good, least, min(most, bad))
    while True:
        if good >= most:
            return most
        bad = min(most, good * _STRIDE)
        if holds(bad):
            good = bad
            continue
        while holds(nearer := min(bad, good * _STEP)) and nearer < bad:
            good = nearer
        bad = nearer
        good = _edge(holds, good, bad)
        if not holds(min(most, good * _STEP)):
            return good
        good = min(most, good * _STEP)


def first_holding(
    holds: Callable[[float], bool], start: float, end: float, step: float | None = None
) -> float | None:  # fmt: skip
    """The nearest value to `start`, on the way to `end`, at which something holds that does not at `start`.

    Args:
        holds: of a value. step: linear steps of this size; None: steps of 12 %, then of 1 % where it changed.

    Returns: a value that holds, a millionth from one that does not; None when nothing up to `end` holds.
    """
    up = end > start
    coarse = _COARSE if up else 1.0 / _COARSE
    fine = _STEP if up else 1.0 / _STEP
    bad = start
    while bad != end:
        ahead = bad * coarse if step is None else bad + (step if up else -step)
        ahead = min(ahead, end) if up else max(ahead, end)
        if not holds(ahead):
            bad = ahead
            continue
        good = ahead
        nearer = bad * fine
        while step is None and (nearer < ahead if up else nearer > ahead):
            if holds(nearer):
                good = nearer
                break
            bad, nearer = nearer, nearer * fine
        return _edge(holds, good, bad)
    return None


def _edge(holds: Callable[[float], bool], good: float, bad: float) -> float:
    """Bisection between a value that holds and one that does not: the last that holds, to a millionth.

    Limits are mostly round figures: the round one between the two is the edge itself where it holds.
    """
    while abs(bad - good) > _TO_A_MILLIONTH * max(abs(good), abs(bad)):
        middle = 0.5 * (good + bad)
        good, bad = (middle, bad) if holds(middle) else (good, middle)
    edge = float(f"{0.5 * (good + bad):.4g}")
    return edge if min(good, bad) < edge < max(good, bad) and holds(edge) else good
