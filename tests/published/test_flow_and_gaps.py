"""Flow and gaps: counted at a fixed mark, measured on the lanes of a running track, and laid out as rectangles."""

from collections.abc import Callable
from math import cos, pi, sin, tau
from random import Random
from typing import Any

import numpy as np
import pytest
from scipy.spatial.distance import cdist

from intake.sizing.physics.flow import belt_speed, lateral_accel, pitch_curved, pitch_straight

FIRST_LANE = 36.50 + 0.30  # m, kerb and how far from it the first lane is measured


@pytest.mark.parametrize(("length", "gap", "per_minute"), [(0.40, 0.08, 25), (0.066, 0.02, 180), (1.2, 0.3, 2)])
def test_so_many_noses_pass_a_mark_in_a_minute(length: float, gap: float, per_minute: int) -> None:
    # Counting, no source needed: products on a belt, the first nose half a pitch short of the mark.
    pitch = pitch_straight(length, gap)
    speed = belt_speed(per_minute / 60.0, pitch)
    noses = np.array([-(0.5 + n) * pitch for n in range(3 * per_minute)])
    passed = noses + speed * 60.0 > 0.0
    assert int(passed.sum()) == per_minute
    tails = noses[:-1] - length
    assert tails - noses[1:] == pytest.approx(gap)


LANES = [(2, "407.037"), (3, "414.703"), (4, "422.368"), (5, "430.034"), (6, "437.699"), (7, "445.365"), (8, "453.030")]


@pytest.mark.parametrize(("lane", "printed"), LANES)
def test_what_is_one_length_inside_is_longer_outside_as_on_a_running_track(
    lane: int, printed: str, as_printed: Callable[..., Any]
) -> None:
    # The 400 m standard track: bends of 36.50 m, lanes of 1.22 m, measured 0.30 m from the kerb and 0.20 m from each
    # line (several open pages). Lap lengths as computed for such a track on an open forum page (secondary), lane 1
    # being 400.000 m; the straights are equal in all lanes.
    bends = tau * FIRST_LANE
    middle = 36.50 + 1.22 * (lane - 1) + 0.20
    along = pitch_curved(bends, floor=0.0, least=0.0, r_centre=middle, r_inside=FIRST_LANE)
    assert 400.0 + along - bends == as_printed(printed, share=0.0)


def test_a_straight_course_is_not_stretched_by_its_curve_rule() -> None:
    assert pitch_curved(0.4, floor=0.1, least=0.1, r_centre=1e9, r_inside=1e9 - 0.3) == pytest.approx(0.5)


def outline(length: float, width: float, radius: float, turned: float) -> Any:
    """Points round a rectangle that touches a circle of that radius from outside with the middle of its long side."""
    along, across = np.linspace(-length / 2, length / 2, 161), np.linspace(0.0, width, 81)
    sides = [
        np.column_stack([np.full_like(along, radius), along]),
        np.column_stack([np.full_like(along, radius + width), along]),
        np.column_stack([radius + across, np.full_like(across, -length / 2)]),
        np.column_stack([radius + across, np.full_like(across, length / 2)]),
    ]
    spin = np.array([[cos(turned), sin(turned)], [-sin(turned), cos(turned)]])
    return np.concatenate(sides) @ spin


def room_between(length: float, width: float, r_inside: float, r_centre: float, pitch: float) -> float:
    """Least distance between two rectangles one pitch apart on a curved belt, both against its inside edge [m]."""
    angle = pitch / r_centre
    first, second = (outline(length, width, r_inside, turned) for turned in (0.0, angle))
    return float(cdist(first, second).min())


@pytest.mark.parametrize("seed", range(30))
def test_rectangles_laid_out_in_a_curve_keep_the_least_gap(seed: int) -> None:
    rng = Random(seed)
    length, width, least = rng.uniform(0.05, 0.6), rng.uniform(0.04, 0.4), rng.uniform(0.005, 0.05)
    r_inside = rng.uniform(0.45, 1.2)
    r_centre = r_inside + rng.uniform(0.5, 1.0) * (width + 0.1)
    pitch = pitch_curved(length, floor=0.0, least=least, r_centre=r_centre, r_inside=r_inside)
    assert room_between(length, width, r_inside, r_centre, pitch) >= least * (1.0 - 1e-9)
    # And no more room than the bending of the edge away from the straight sides gives.
    assert r_inside * pitch / r_centre - length == pytest.approx(least, rel=1e-9)


def test_a_pitch_that_is_enough_on_the_straight_lets_them_collide_in_a_tight_curve() -> None:
    straight = pitch_straight(0.40, 0.05)
    r_inside, r_centre = 0.45, 0.75
    assert r_inside * straight / r_centre < 0.40  # on the inside edge they would lie within each other
    curved = pitch_curved(0.40, floor=0.05, least=0.02, r_centre=r_centre, r_inside=r_inside)
    assert room_between(0.40, 0.30, r_inside, r_centre, curved) > 0.0


def test_the_thrust_of_a_curve_is_how_fast_the_velocity_turns(as_printed: Callable[..., Any]) -> None:
    # OpenStax UP1 6.3 Ex 6.15: 25.00 m/s on 500 m, 1125 N on 900 kg. The same from three positions a moment apart.
    step, speed, radius = 1e-3, 25.00, 500.0
    spots = [np.array([cos(t), sin(t)]) * radius for t in (-step * speed / radius, 0.0, step * speed / radius)]
    measured = float(np.linalg.norm(spots[0] - 2 * spots[1] + spots[2])) / step**2
    assert lateral_accel(speed, radius) == pytest.approx(measured, rel=1e-5)
    assert 900.0 * lateral_accel(speed, radius) == as_printed("1125", share=0.0)
    assert lateral_accel(1.0, 1 / pi) == pytest.approx(pi)
