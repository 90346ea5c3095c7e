"""The outline of a machine in its surroundings, in metres, from the figures of its sizing; others draw it."""

from collections.abc import Callable, Mapping
from types import MappingProxyType

from intake.advice.brief import Brief
from intake.advice.outline.belts import cleated, cover_belt, one_line_or_switchback
from intake.advice.outline.drawn import Drawn, Site
from intake.advice.outline.lifts import carriers, platform
from intake.advice.outline.parts import (
    Arrow,
    Box,
    Circle,
    Dimension,
    Level,
    Line,
    Note,
    Outline,
    Part,
    Point,
    Port,
    Role,
    View,
)
from intake.advice.outline.side_grips import side_grip
from intake.advice.outline.spirals import spiral
from intake.advice.outline.surroundings import heights, notes, plan_parts, ports, side_parts

__all__ = [
    "Arrow",
    "Box",
    "Circle",
    "Dimension",
    "Level",
    "Line",
    "Note",
    "Outline",
    "Part",
    "Point",
    "Port",
    "Role",
    "View",
    "outline",
]

_FAMILIES: Mapping[str, Callable[[Site], Drawn]] = MappingProxyType(
    {
        "spiral": spiral,
        "washdown_spiral": spiral,
        "side_grip": side_grip,
        "incline": one_line_or_switchback,
        "cover_belt": cover_belt,
        "cleated_incline": cleated,
        "index_lift": carriers,
        "continuous_lift": carriers,
        "reciprocating_lift": platform,
    }
)


_LEAST_RISE = 1e-3
"""Metres: below that there is nothing to draw but a floor."""


def outline(brief: Brief, family: str | None = None) -> Outline | None:
    """The outline of a family, of the leading one where none is named.

    None while nothing leads, and where a family has no layout to draw, or nothing rises. Raises KeyError for a family
    that there is not.
    """
    found = brief.family(family)
    if found is None or not found.shape or found.shape["upper"] - found.shape["lower"] < _LEAST_RISE:
        return None
    start, stop = heights(found.shape, brief)
    site = Site(shape=found.shape, start=start, stop=stop)
    drawn = _FAMILIES[found.family](site)
    first, last = ports(site, drawn)
    return Outline(
        family=found.family,
        elevation=View(
            parts=(*drawn.side, *side_parts(site, drawn, brief)), envelope=site.side_box, caged=drawn.caged
        ),
        plan=View(parts=(*drawn.plan, *plan_parts(site, drawn, brief)), envelope=site.floor_box, caged=True),
        path=drawn.path,
        infeed=first,
        discharge=last,
        notes=tuple(notes(site, brief)),
    )  # fmt: skip
