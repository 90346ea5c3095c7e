"""Both spirals: from the side the tiers of the helix, those in front before those behind; on plan a ring."""

from itertools import pairwise
from math import ceil, cos, pi, sin

from intake.advice.outline.drawn import Drawn, Place, Site
from intake.advice.outline.parts import Circle, Line, along

_STEPS = 24
"""Points on each turn."""


def spiral(site: Site) -> Drawn:
    """A helix between the end that comes on and the one that leaves, both touching it."""
    helix = _helix(site)
    (x, y, _), direction = helix[-1], along(site.heading)
    entry = (0.0, helix[0][1])
    leaves = site.out_of_floor((x, y), direction)
    path = ((*entry, site.start), *helix, (*leaves, site.stop))
    middle = (site.length / 2.0, site.width / 2.0)
    outer = site["inside"] + site["belt"]
    once = helix[: _STEPS + 1]
    plan = (
        Line(points=(entry, *((x, y) for x, y, _ in once)), role="path", width=site["belt"]),
        Line(points=((x, y), leaves), role="path", width=site["belt"]),
        Circle(centre=middle, radius=outer, role="machine"),
        Circle(centre=middle, radius=site["inside"], role="machine"),
    )
    side = (
        *_tiers(helix, site),
        Line(points=((0.0, site.start), (site.length / 2.0, site.start)), role="path"),
        Line(points=((x, site.stop), (leaves[0], site.stop)), role="path"),
    )
    return Drawn(path=path, side=side, plan=plan, caged=True)


def _helix(site: Site) -> tuple[Place, ...]:
    """From the point where the infeed touches the ring; the whole of it on the middle of the belt."""
    turns, hand = site["turns"], site["hand"]
    radius, middle = site["inside"] + site["belt"] / 2.0, (site.length / 2.0, site.width / 2.0)
    count = max(1, ceil(turns * _STEPS - 1e-9))
    points: list[Place] = []
    for step in range(count + 1):
        share = min(1.0, step / (turns * _STEPS))
        angle = hand * (pi / 2.0 - 2.0 * pi * turns * share)
        points.append((middle[0] + radius * cos(angle), middle[1] + radius * sin(angle), site.height(share)))
    return tuple(points)


def _tiers(helix: tuple[Place, ...], site: Site) -> list[Line]:
    """The helix from the side, cut where it goes from the front to the back."""
    last, middle = len(helix) - 1, site.width / 2.0
    cuts = [0, *range(_STEPS // 4, last, _STEPS // 2), last]
    found = []
    for place, (start, stop) in enumerate(pairwise(cuts)):
        piece = helix[start : stop + 1]
        behind = sum(y - middle for _, y, _ in piece) > 0.0
        points = tuple((x, z) for x, _, z in piece)
        found.append(Line(points=points, role="path", tier=place // 2, hidden=behind))
    return found
