"""Straight slopes: inclines in one line or as switchbacks, cover belt, cleated incline."""

from math import cos, hypot, pi, sin

from intake.advice.outline.drawn import Drawn, Place, Site
from intake.advice.outline.parts import Box, Line, Part, Point

_STEPS = 12
"""Points on each level curve."""


def one_line_or_switchback(site: Site) -> Drawn:
    """The runs of an incline."""
    return _in_line(site) if site["lanes"] < 2 else _switchback(site)


def cover_belt(site: Site) -> Drawn:
    """A straight run with the cover above the product."""
    drawn = _in_line(site)
    return _with(drawn, _cover(site, drawn))


def cleated(site: Site) -> Drawn:
    """A straight run with its cleats."""
    drawn = _in_line(site)
    return _with(drawn, _cleats(site, drawn))


def _in_line(site: Site) -> Drawn:
    middle, series = site.width / 2.0, int(site["series"])
    points = [(0.0, site.start)]
    x = site["end"]
    for place in range(series):
        points += [(x, site.height(place / series)), (x + site["run"], site.height((place + 1) / series))]
        x += site["run"] + site["joint"]
    points.append((site.length, site.stop))
    side = tuple(points)
    plan = (Line(points=((0.0, middle), (site.length, middle)), role="path", width=site["belt"]),)
    return Drawn(
        path=tuple((x, middle, z) for x, z in side), side=(*_frame(site, side), Line(points=side, role="path")),
        plan=plan, caged=False,
    )  # fmt: skip


def _switchback(site: Site) -> Drawn:
    """Lanes side by side, each to the right of the one before it, joined by level half circles."""
    lanes, radius = int(site["lanes"]), site["inside"] + site["belt"] / 2.0
    reach = site["inside"] + site["belt"] + site["frame"]
    left = max(site["end"], reach) if lanes > 2 else site["end"]
    ends = (left, left + site["run"])
    y = site.width - site["frame"] - site["belt"] / 2.0
    path: list[Place] = [(0.0, y, site.start)]
    boxes: list[Part] = []
    for lane in range(lanes):
        here, there = ends if lane % 2 == 0 else ends[::-1]
        path += [(here, y, site.height(lane / lanes)), (there, y, site.height((lane + 1) / lanes))]
        half = site["belt"] / 2.0 + site["frame"]
        boxes.append(Box(left=ends[0], bottom=y - half, right=ends[1], top=y + half, role="machine"))
        if lane + 1 < lanes:
            path += _half_circle((there, y - radius), radius, path[-1][2], there > here)
            y -= 2.0 * radius
    path.append((0.0 if lanes == 2 else site.length, y, site.stop))
    side = tuple((x, z) for x, _, z in path)
    plan = (Line(points=tuple((x, y) for x, y, _ in path), role="path", width=site["belt"]), *boxes)
    return Drawn(path=tuple(path), side=(Line(points=side, role="path"),), plan=plan, caged=False)


def _half_circle(centre: Point, radius: float, height: float, outward: bool) -> list[Place]:
    way = 1.0 if outward else -1.0
    angles = [pi / 2.0 - pi * step / _STEPS for step in range(1, _STEPS + 1)]
    return [(centre[0] + way * radius * cos(a), centre[1] + radius * sin(a), height) for a in angles]


def _frame(site: Site, side: tuple[Point, ...]) -> tuple[Line, ...]:
    """The underside of the frame, as deep below the belt as the clear height under the raised end tells."""
    depth = site["upper"] - site["under"]
    lower = tuple((x, max(0.0, z - depth)) for x, z in side)
    return (Line(points=lower, role="machine"),) if depth > 0.0 else ()


def _with(drawn: Drawn, more: tuple[Line, ...]) -> Drawn:
    return Drawn(path=drawn.path, side=(*drawn.side, *more), plan=drawn.plan, caged=drawn.caged)


def _slope(drawn: Drawn) -> tuple[Point, Point, Point]:
    """Foot and head of the slope as (x, height), whichever comes first, and the normal to it."""
    (x0, _, z0), (x1, _, z1) = drawn.path[1], drawn.path[2]
    length = hypot(x1 - x0, z1 - z0)
    return (x0, z0), (x1, z1), (-(z1 - z0) / length, (x1 - x0) / length)


def _cover(site: Site, drawn: Drawn) -> tuple[Line, ...]:
    """The loop of the cover: its lower strand on the product, its highest point the machine's own."""
    first, last, normal = _slope(drawn)
    over = (site.top - site["upper"]) / normal[1]
    foot, head = (first, last) if first[1] < last[1] else (last, first)
    past_end = max(0.0, over * abs(normal[0]) - site["end"]) / site["run"]
    foot = (foot[0] + past_end * (head[0] - foot[0]), foot[1] + past_end * (head[1] - foot[1]))
    loop = [
        (x + off * normal[0], z + off * normal[1])
        for (x, z), off in ((foot, site["tall"]), (head, site["tall"]), (head, over), (foot, over))
    ]
    return (Line(points=(*loop, loop[0]), role="machine"),)


def _cleats(site: Site, drawn: Drawn) -> tuple[Line, ...]:
    first, last, normal = _slope(drawn)
    length = hypot(last[0] - first[0], last[1] - first[1])
    found = []
    for place in range(int(length / site["cleat_pitch"]) + 1):
        share = place * site["cleat_pitch"] / length
        x, z = first[0] + share * (last[0] - first[0]), first[1] + share * (last[1] - first[1])
        tip = (x + site["cleat"] * normal[0], z + site["cleat"] * normal[1])
        found.append(Line(points=((x, z), tip), role="machine", tier=place))
    return tuple(found)
