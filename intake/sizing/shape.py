"""The lengths that a drawing of a layout needs, at the design point. No part of the JSON: the figures are promised."""

from math import isfinite

from intake.sizing.family import Family, Layout
from intake.sizing.job import Job
from intake.sizing.unknowns import TYPICAL
from intake.sizing.views import Views

RIGHT_ANGLES = (0.0, 90.0, 180.0, 270.0)


def shape_of(job: Job, family: Family, layout: Layout | None, views: Views) -> dict[str, float]:
    """Lengths [m], headings [deg, clockwise seen from above] and counts of a layout; {} where there is none.

    Shared: along, across, tall (of the product as it is fed, round 1 where it is), lower, upper (levels), floor_length,
    floor_width, overall_height, under, heading, space_length, space_width (as the machine is laid), ceiling, headroom,
    swapped (the floor turned by 90 degrees). What the family adds stands in its own `shape`.
    """
    if layout is None or job.missing_basics:
        return {}
    seen, d = views[TYPICAL], job.data.families[family.name]
    hi, lo = seen.sizes[0]
    turn = job.choices["turn"].typical
    found = {
        "along": seen.most("L"), "across": seen.most("W"), "tall": seen.most("H"), "round": hi.rnd,
        "lower": hi.ztop - hi.rise, "upper": hi.ztop, "floor_length": hi.fl, "floor_width": hi.fw,
        "overall_height": max(num.top for num, _ in seen.sizes), "under": hi.under, "headroom": hi.need,
        "heading": float(turn) if turn in RIGHT_ANGLES else 0.0,
        "space_length": lo.lx, "space_width": lo.ly, "ceiling": lo.ceil, "swapped": float(seen.swap),
    }  # fmt: skip
    found |= family.shape(seen, layout, d)
    return {name: value for name, value in found.items() if isfinite(value)}
