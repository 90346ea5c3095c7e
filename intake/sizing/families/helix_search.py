"""The search for a helix: frames by floor, and the turns on each that end on a heading."""

from collections import Counter
from collections.abc import Iterator
from functools import cache
from math import ceil, floor, inf
from typing import NamedTuple

from intake.sizing.job import View
from intake.sizing.physics.flow import pitch_curved
from intake.sizing.physics.friction import steepest_slope
from intake.sizing.physics.helix import least_inside_radius, rise_per_turn
from intake.sizing.range_data import Limits
from intake.sizing.stability import footing

_MOST_TURNS = 24
_TRIES = 12
_QUICK_FRAMES = 4


class Helix(NamedTuple):
    """A layout: turns, hand (1 clockwise seen from above, -1 the other way), inside radius and belt width [m]."""

    turns: float
    hand: int
    inside: float
    belt: float
    belt_index: int


class Frame(NamedTuple):
    """Inside radius and belt width [m], and which belt width of the range it is."""

    inside: float
    belt: float
    belt_index: int


@cache
def frames_of(d: Limits, coarse: bool = False) -> tuple[Frame, ...]:
    """The inside radii and belt widths of a range, the smallest floor first; coarse: three radii a width."""
    found = []
    for index, width in enumerate(d.belt_widths):
        start = max(d.least_inside_radius, d.inside_radius_per_belt_width * width)
        count = floor((d.largest_inside_radius - start) / d.inside_radius_step + 1e-9)
        steps = sorted({0, count // 3, count}) if coarse else range(count + 1)
        found += [Frame(start + n * d.inside_radius_step, width, index) for n in steps]
    return tuple(sorted(found, key=lambda frame: (frame.inside + frame.belt, frame.belt)))


def helix_layouts(view: View, d: Limits, stopped: Counter[str]) -> Iterator[Helix]:
    """Frames by floor, smallest first, each with the turns that may pass; at least one layout, to show what stops it.

    What cannot pass by width, floor, room between tiers, slope, slip or tip is dropped before it is laid out, and
    counted. All bounds are those of the checks themselves.
    """
    frames = frames_of(d, view.quick)
    hi, lo = view.sizes[0]
    reach = min(lo.lx, lo.ly) / 2.0 - d.frame_margin + 1e-9
    tier = view.most("H") + d.tier_structure + d.tier_clearance
    most_turns = min(max(1.0, lo.rise / tier), _MOST_TURNS) + 1e-9
    parts = _parts(view.options["turn"])
    radius: list[float | None] = [None] * len(d.belt_widths)
    fallback: Helix | None = None
    laid = too_narrow = 0
    for place, (inside, belt, index) in enumerate(frames):
        least_radius = radius[index]
        if least_radius is None:
            least_radius = radius[index] = _radius_for(view, belt - d.edge_clearance + 1e-9)
        if inside < least_radius:
            too_narrow += 1
            continue
        if fallback is None:
            least = hi.rise / rise_per_turn(2.0 * inside + belt, d.slope_most)
            fallback = Helix(max(1.0, float(ceil(least))), 1, inside, belt, index)
        if inside + belt > reach:
            stopped["room_length" if lo.lx <= lo.ly else "room_width"] += len(frames) - place
            break
        r_path = inside + belt / 2.0
        speed = hi.R * pitch_curved(view.most("Lp"), d.gap, d.least_gap, r_path, inside)
        if speed > d.speed_most * (1.0 + 1e-9):
            stopped["speed"] += 1
            continue
        slope, by = _steepest(view, d, speed * speed / r_path)
        least = hi.rise / rise_per_turn(2.0 * inside + belt, slope) if slope > 0.0 else inf
        options = _turns(parts, least, most_turns)
        if not options:
            stopped[by if slope <= 0.0 or most_turns < 1.1 else "tier_clearance"] += 1
            continue
        laid += 1
        if too_narrow:
            stopped["width"], too_narrow = too_narrow, 0
        for count, hand in options[: 1 if view.quick else _TRIES]:
            yield Helix(count, hand, inside, belt, index)
        if view.quick and laid >= _QUICK_FRAMES:
            break
    if too_narrow:
        stopped["width"] = too_narrow
    if fallback is None:  # not even the widest belt takes the product: let that be what stops it
        fallback = Helix(1.0, 1, *frames[-1])
    yield _with_heading(fallback, view.options["turn"])


def _radius_for(view: View, lane: float) -> float:
    """The least inside radius with which a lane [m] takes every size."""
    if len(view.sizes) == 1:
        one = view.sizes[0][0]
        return least_inside_radius(one.W, one.L, lane)
    return max(least_inside_radius(one.W, one.L, lane) for one, _ in view.sizes)


def _steepest(view: View, d: Limits, lateral: float) -> tuple[float, str]:
    """The steepest slope [rad] that range, friction and footing allow in a curve, and the check that sets it."""
    found: tuple[float, str] = (d.slope_most, "slope")
    for one, low in view.sizes:
        found = min(found, (steepest_slope(low.mu / d.slip_safety, d.accel_greatest, lateral), "curve"))
        found = min(found, (steepest_slope(footing(one, low, d), d.accel_greatest, lateral if one.rnd else 0.0), "tip"))
    return found[0] + 1e-9, found[1]


@cache
def _parts(headings: tuple[object, ...]) -> tuple[tuple[float, int], ...]:
    """Parts of a turn that give one of the headings, with the hand: 1 clockwise seen from above, -1 the other way."""
    parts: set[tuple[float, int]] = set()
    for heading in headings:
        degrees = float(heading)  # type: ignore[arg-type]  # headings are floats
        parts |= {(degrees / 360.0, 1), ((360.0 - degrees) % 360.0 / 360.0, -1)}
    return tuple(sorted(parts))


def _turns(parts: tuple[tuple[float, int], ...], least: float, most: float) -> list[tuple[float, int]]:
    """Turns from `least` to `most` that end on one of the parts, fewest first, with the hand."""
    found: list[tuple[float, int]] = []
    if least <= most:
        for part, hand in parts:
            count = max(0, ceil(least - part - 1e-9)) + part
            if count <= 0.0:
                count += 1.0
            while count <= most:
                found.append((count, hand))
                count += 1.0
        found.sort()
    return found


def _with_heading(layout: Helix, headings: tuple[object, ...]) -> Helix:
    """The layout with its turns raised to the next that gives the first heading."""
    part = float(headings[0]) / 360.0  # type: ignore[arg-type]  # headings are floats
    return layout._replace(turns=ceil(layout.turns - part - 1e-9) + part)
