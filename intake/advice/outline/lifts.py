"""The three lifts: a cage with carriers one above another, or one platform below and above."""

from intake.advice.outline.drawn import Drawn, Site
from intake.advice.outline.parts import Box, Line, along


def carriers(site: Site) -> Drawn:
    """Index lift and continuous lift: carriers at their pitch between both levels."""
    low, high = sorted((site.start, site.stop))
    count = int((high - low) / site["carrier_pitch"] + 1e-9)
    heights = [low + place * site["carrier_pitch"] for place in range(count + 1)]
    return _lift(site, heights)


def platform(site: Site) -> Drawn:
    """Reciprocating lift: its platform at both levels."""
    return _lift(site, sorted((site.start, site.stop)))


def _lift(site: Site, heights: list[float]) -> Drawn:
    middle = (site.length / 2.0, site.width / 2.0)
    half = site["along"] / 2.0
    leaves = site.out_of_floor(middle, along(site.heading))
    path = (
        (0.0, middle[1], site.start), (*middle, site.start), (*middle, site.stop), (*leaves, site.stop)
    )  # fmt: skip
    shelves = tuple(
        Line(points=((middle[0] - half, z), (middle[0] + half, z)), role="machine", tier=place)
        for place, z in enumerate(heights)
    )
    wide = site["across"] / 2.0
    carrier = Box(
        left=middle[0] - half, right=middle[0] + half, bottom=middle[1] - wide, top=middle[1] + wide, role="machine"
    )  # fmt: skip
    plan = (
        Line(points=((0.0, middle[1]), middle), role="path"), Line(points=(middle, leaves), role="path"), carrier
    )  # fmt: skip
    side = Line(points=tuple((x, z) for x, _, z in path), role="path")
    return Drawn(path=path, side=(side, *shelves), plan=plan, caged=True, on_carrier=middle[0])
