"""What a family gives to be drawn: its path in space, and what is seen of it in each view."""

from collections.abc import Mapping
from dataclasses import dataclass

from intake.advice.outline.parts import Box, Part, Point

Place = tuple[float, float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """The shape of a layout with the heights at which product comes on and leaves [m]."""

    shape: Mapping[str, float]
    start: float
    stop: float

    def __getitem__(self, name: str) -> float:
        return self.shape[name]

    @property
    def length(self) -> float:
        """Of the floor, along the infeed's travel."""
        return self.shape["floor_length"]

    @property
    def width(self) -> float:
        """Of the floor, across it."""
        return self.shape["floor_width"]

    @property
    def top(self) -> float:
        """The highest point."""
        return self.shape["overall_height"]

    @property
    def heading(self) -> float:
        """Of the discharge, degrees clockwise seen from above."""
        return self.shape["heading"]

    def height(self, share: float) -> float:
        """The height at a share of the rise."""
        return self.start + (self.stop - self.start) * share

    @property
    def floor_box(self) -> Box:
        """The floor that the machine takes, on plan."""
        return Box(left=0.0, bottom=0.0, right=self.length, top=self.width, role="machine")

    @property
    def side_box(self) -> Box:
        """The whole machine, seen from the side."""
        return Box(left=0.0, bottom=0.0, right=self.length, top=self.top, role="machine")

    def out_of_floor(self, start: Point, direction: Point) -> Point:
        """Where a line from inside the floor leaves it."""
        steps = []
        for at, way, end in zip(start, direction, (self.length, self.width), strict=True):
            if abs(way) > 1e-9:
                steps.append(((end if way > 0 else 0.0) - at) / way)
        step = min(steps)
        return start[0] + step * direction[0], start[1] + step * direction[1]


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """One family. `path` in space; `side` and `plan`: the parts of each view; `caged`: a frame stands round it all."""

    path: tuple[Place, ...]
    side: tuple[Part, ...]
    plan: tuple[Part, ...]
    caged: bool
    lift: float = 0.0
    """How far the path runs above the carrying surface."""
    on_carrier: float | None = None
    """Lifts: how far from the infeed's end of the floor the middle of a product stands before it rises. A lift
    pushes a product out to any side as it stands: it is not turned with its way."""
