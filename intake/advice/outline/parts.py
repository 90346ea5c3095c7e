"""What an outline is made of: plain shapes in metres, each with the part that it plays. No units, no letters, no signs.

Two views: the elevation looks at the machine from the right-hand side of the infeed's travel (x along that travel, y up
from the floor), the plan from above (x along that travel, y to its left).
"""

from dataclasses import dataclass
from math import cos, radians, sin
from typing import Literal

Point = tuple[float, float]
Role = Literal["machine", "path", "product", "floor", "ceiling", "space", "passage", "infeed", "discharge"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line through points.

    width: across it, 0 where only the line itself is known. tier: which of many like lines it is (turns, carriers), for
    whoever has no room for all. hidden: behind what stands before it.
    """

    points: tuple[Point, ...]
    role: Role
    width: float = 0.0
    tier: int | None = None
    hidden: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """An upright rectangle."""

    left: float
    bottom: float
    right: float
    top: float
    role: Role

    @property
    def width(self) -> float:
        """From left to right [m]."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """From bottom to top [m]."""
        return self.top - self.bottom


@dataclass(frozen=True, slots=True, kw_only=True)
class Circle:
    """A whole circle."""

    centre: Point
    radius: float
    role: Role


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrow:
    """Where product comes on or leaves. angle: degrees from the view's x axis, counterclockwise; None: it goes towards
    the one who looks (`depth` 1) or away (-1)."""

    at: Point
    angle: float | None
    role: Role
    depth: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Level:
    """A height above the floor with its name: overall, ceiling, infeed, discharge."""

    height: float
    key: str
    role: Role


@dataclass(frozen=True, slots=True, kw_only=True)
class Dimension:
    """A length between two points with its name."""

    start: Point
    end: Point
    key: str
    role: Role

    @property
    def value(self) -> float:
        """The length [m]."""
        return float(((self.end[0] - self.start[0]) ** 2 + (self.end[1] - self.start[1]) ** 2) ** 0.5)


Part = Line | Box | Circle | Arrow | Level | Dimension


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """One view. `envelope`: the whole machine with a product on it, floor to highest point, or its floor on plan.

    `caged`: the envelope is also what one sees of the machine: a frame round everything.
    """

    parts: tuple[Part, ...]
    envelope: Box
    caged: bool

    def of(self, role: Role) -> tuple[Part, ...]:
        """The parts of one role."""
        return tuple(part for part in self.parts if part.role == role)


@dataclass(frozen=True, slots=True, kw_only=True)
class Port:
    """Where the path begins or ends: on plan, and the height of the carrying surface."""

    at: Point
    height: float
    heading: float
    """Degrees from the infeed's travel, clockwise seen from above."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """What has to be said beside a drawing: the key of its sentence, and the lengths in it by the name of the blank.

    warns: it does not fit, or is not as it was asked for.
    """

    key: str
    lengths: tuple[tuple[str, float], ...] = ()
    warns: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Outline:
    """One machine in its surroundings.

    `path`: the way of the product in space (x, y, height of the carrying surface), infeed to discharge. On a side grip
    it is the way of the product's middle, half its height higher.
    """

    family: str
    elevation: View
    plan: View
    path: tuple[tuple[float, float, float], ...]
    infeed: Port
    discharge: Port
    notes: tuple[Note, ...]


def along(heading: float) -> Point:
    """The direction on plan of a heading in degrees, clockwise seen from above."""
    angle = radians(heading)
    return round(cos(angle), 12), round(-sin(angle), 12)
