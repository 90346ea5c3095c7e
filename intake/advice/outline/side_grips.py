"""Side grip: the S path (up and on, product upright) and the C path (up and back, product turned over)."""

from math import cos, pi, sin

from intake.advice.outline.drawn import Drawn, Site
from intake.advice.outline.parts import Line, Point

_STEPS = 8
"""Points on each bend."""


def side_grip(site: Site) -> Drawn:
    """The way of the product's middle, as both grips hold it by its sides."""
    lift = site["tall"] / 2.0
    way = 1.0 if site.stop >= site.start else -1.0
    radius = min(site["bend"], abs(site.stop - site.start) / 2.0)
    turns_over = site["turned_over"] > 0.0
    end, low, high = site["end"], site.start + lift, site.stop + lift
    first = _bend((end, low + way * radius), radius, -way * pi / 2.0, way * pi / 2.0)
    if turns_over:
        second = _bend((end, high - way * radius), radius, 0.0, way * pi / 2.0)
        last = 0.0
    else:
        second = _bend((end + 2.0 * radius, high - way * radius), radius, pi, -way * pi / 2.0)
        last = site.length
    side = ((0.0, low), *first, *second, (last, high))
    middle = site.width / 2.0
    furthest = max(x for x, _ in side)
    plan = Line(points=((0.0, middle), (furthest, middle)), role="path", width=site["across"])
    return Drawn(
        path=tuple((x, middle, z) for x, z in side), side=(Line(points=side, role="path"),), plan=(plan,), caged=True,
        lift=lift,
    )  # fmt: skip


def _bend(centre: Point, radius: float, start: float, sweep: float) -> list[Point]:
    angles = [start + sweep * step / _STEPS for step in range(_STEPS + 1)]
    return [(centre[0] + radius * cos(angle), centre[1] + radius * sin(angle)) for angle in angles]
