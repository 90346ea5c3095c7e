"""What stands round the machine: floor, ceiling, space at hand, the product at both ends, and what has to be said."""

from collections.abc import Iterator, Mapping
from math import cos, radians, sin

from intake.advice.brief import Brief
from intake.advice.outline.drawn import Drawn, Site
from intake.advice.outline.parts import (
    Arrow,
    Box,
    Circle,
    Dimension,
    Level,
    Line,
    Note,
    Part,
    Point,
    Port,
    along,
)

_SLACK = 1e-9


def ports(site: Site, drawn: Drawn) -> tuple[Port, Port]:
    """Where product comes on and leaves."""
    first, last = drawn.path[0], drawn.path[-1]
    return (
        Port(at=first[:2], height=site.start, heading=0.0),
        Port(at=last[:2], height=site.stop, heading=site.heading),
    )


def side_parts(site: Site, drawn: Drawn, brief: Brief) -> Iterator[Part]:
    """Floor, ceiling, ends of the space, levels, arrows and products, seen from the side."""
    first, last = ports(site, drawn)
    yield Level(height=0.0, key="floor", role="floor")
    yield Level(height=site.top, key="overall", role="machine")
    yield Level(height=site.start, key="infeed", role="infeed")
    yield Level(height=site.stop, key="discharge", role="discharge")
    if brief.spec.knows("space.ceiling"):
        yield Level(height=site["ceiling"], key="ceiling", role="ceiling")
    if passage(brief):
        yield Dimension(start=(site.length, 0.0), end=(site.length, site["under"]), key="under", role="passage")
    if space_known(site, brief)[0]:
        for x in (0.0, site["space_length"]):
            yield Line(points=((x, 0.0), (x, max(site.top, site.shape.get("ceiling", 0.0)))), role="space")
    yield Dimension(start=(0.0, 0.0), end=(site.length, 0.0), key="floor_length", role="machine")
    for port, middle in zip((first, last), product_middles(site, drawn), strict=True):
        half = _half_seen(0.0 if drawn.on_carrier else port.heading, site)
        yield Box(
            left=middle[0] - half, right=middle[0] + half, bottom=port.height, top=port.height + site["tall"],
            role="product",
        )  # fmt: skip
    yield Arrow(at=(0.0, site.start), angle=0.0, role="infeed")
    yield _side_arrow(last)


def plan_parts(site: Site, drawn: Drawn, brief: Brief) -> Iterator[Part]:
    """Space at hand, arrows and products, seen from above."""
    first, last = ports(site, drawn)
    knows = space_known(site, brief)
    if any(knows):
        length = site["space_length"] if knows[0] else site.length
        width = site["space_width"] if knows[1] else site.width
        low = (site.width - width) / 2.0
        yield Box(left=0.0, bottom=low, right=length, top=low + width, role="space")
    yield Dimension(start=(0.0, 0.0), end=(site.length, 0.0), key="floor_length", role="machine")
    yield Dimension(start=(0.0, 0.0), end=(0.0, site.width), key="floor_width", role="machine")
    for port, middle in zip((first, last), product_middles(site, drawn), strict=True):
        yield _product_on_plan(0.0 if drawn.on_carrier else port.heading, middle, site)
    yield Arrow(at=first.at, angle=0.0, role="infeed")
    yield Arrow(at=last.at, angle=-last.heading % 360.0, role="discharge")


def product_middles(site: Site, drawn: Drawn) -> tuple[Point, Point]:
    """The middle of one product just come on, and of one about to leave, on plan."""
    first, last = ports(site, drawn)
    if drawn.on_carrier is not None:
        middle = (drawn.on_carrier, site.width / 2.0)
        return middle, middle
    half, way = site["along"] / 2.0, along(site.heading)
    return (first.at[0] + half, first.at[1]), (last.at[0] - half * way[0], last.at[1] - half * way[1])


def passage(brief: Brief) -> bool:
    """True where something has to pass underneath."""
    return brief.spec.word("space.passage") not in (None, "none")


def space_known(site: Site, brief: Brief) -> tuple[bool, bool]:
    """Whether the space along and across the machine, as it is laid, was told."""
    names = ("space.length", "space.width")
    first, second = names[::-1] if site["swapped"] else names
    return brief.spec.knows(first), brief.spec.knows(second)


def notes(site: Site, brief: Brief) -> Iterator[Note]:
    """What does not fit first, then what is not known and so not drawn, or drawn as assumed."""
    spec = brief.spec
    yield from _misfits(site, brief)
    if not spec.knows("space.ceiling"):
        yield Note(key="no_ceiling")
    knows = space_known(site, brief)
    if not all(knows):
        yield Note(key="no_space" if not any(knows) else "no_space_length" if not knows[0] else "no_space_width")
    if not (spec.knows("rise.infeed_height") or spec.knows("rise.discharge_height")):
        yield Note(key="levels_assumed", lengths=(("level", min(site.start, site.stop)),))
    if not spec.knows("rise.turn"):
        yield Note(key="heading_open")
    if site["swapped"]:
        yield Note(key="laid_across")
    if brief.result.direction == "both":
        yield Note(key="both_ways")
    elif brief.result.direction is None:
        yield Note(key="direction_open")


def _misfits(site: Site, brief: Brief) -> Iterator[Note]:
    spec, knows = brief.spec, space_known(site, brief)
    if spec.knows("space.ceiling") and site.top > site["ceiling"] + _SLACK:
        yield Note(key="through_ceiling", lengths=(("over", site.top - site["ceiling"]),), warns=True)
    for known, key, size, room in (
        (knows[0], "too_long", site.length, "space_length"), (knows[1], "too_wide", site.width, "space_width")
    ):  # fmt: skip
        if known and size > site[room] + _SLACK:
            yield Note(key=key, lengths=(("over", size - site[room]),), warns=True)
    asked = spec.of("rise.turn")
    if asked is not None and asked.largest is not None and abs((asked.largest - site.heading + 180) % 360 - 180) > 0.05:
        yield Note(key="other_heading", warns=True)
    if passage(brief):
        lengths = (("under", site["under"]), ("need", site["headroom"]))
        low = site["under"] < site["headroom"] - _SLACK
        yield Note(key="passage_low" if low else "passage", lengths=lengths, warns=low)


def _side_arrow(last: Port) -> Arrow:
    """The discharge from the side: on, back, towards the one who looks, or away."""
    x, y = along(last.heading)
    at = (last.at[0], last.height)
    if abs(x) > 0.5:
        return Arrow(at=at, angle=0.0 if x > 0 else 180.0, role="discharge")
    return Arrow(at=at, angle=None, depth=1 if y < 0 else -1, role="discharge")


def _half_seen(heading: float, site: Site) -> float:
    """Half the width of a product as it is seen from the side."""
    angle = radians(heading)
    return (abs(cos(angle)) * site["along"] + abs(sin(angle)) * site["across"]) / 2.0


def _product_on_plan(heading: float, middle: Point, site: Site) -> Part:
    if site["round"] > 0.5:
        return Circle(centre=middle, radius=site["along"] / 2.0, role="product")
    (ax, ay), half, wide = along(heading), site["along"] / 2.0, site["across"] / 2.0
    corners = [(half, wide), (-half, wide), (-half, -wide), (half, -wide), (half, wide)]
    points = tuple((middle[0] + a * ax - b * ay, middle[1] + a * ay + b * ax) for a, b in corners)
    return Line(points=points, role="product")


def heights(shape: Mapping[str, float], brief: Brief) -> tuple[float, float]:
    """Height of infeed and discharge: down is down, anything else is drawn going up."""
    low, high = shape["lower"], shape["upper"]
    return (high, low) if brief.result.direction == "down" else (low, high)
