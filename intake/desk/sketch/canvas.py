"""A sheet of cells to draw on in metres: a cell is twice as high as it is wide."""

from collections.abc import Iterator, Sequence
from itertools import groupby, pairwise
from math import atan2, ceil, degrees, floor, hypot

from intake.advice.outline import Box, Circle, Point
from intake.desk.sketch.signs import Signs

ASPECT = 2.0
"""Height of a cell over its width; common practice, no source: terminals differ by a tenth or so."""

_STEEP = 0.7
"""Rows a column: steeper lines get one sign a row, flatter ones one a column."""
_UPRIGHT = 4.0
_NEAR = 1e-9


class Canvas:
    """So many columns and rows. `left`, `bottom`: what the lower left corner is in metres; `per_column` [m]."""

    def __init__(
        self, columns: int, rows: int, left: float, bottom: float, per_column: float, signs: Signs
    ) -> None:  # fmt: skip
        self.columns, self.rows, self.signs = columns, rows, signs
        self.left, self.bottom, self.per_column = left, bottom, per_column
        self._cells = [[" "] * columns for _ in range(rows)]

    @property
    def per_row(self) -> float:
        """Height of a row [m]."""
        return self.per_column * ASPECT

    def lines(self) -> list[str]:
        """The rows, nothing behind their last sign."""
        return ["".join(row).rstrip() for row in self._cells]

    def column(self, x: float) -> int:
        """The column in which a place lies."""
        return floor((x - self.left) / self.per_column + _NEAR)

    def last_column(self, x: float) -> int:
        """The column of a right-hand edge: one that ends with a cell lies in that cell."""
        return ceil((x - self.left) / self.per_column - _NEAR) - 1

    def row(self, y: float) -> int:
        """The row, from the top, in which a place lies."""
        return self.rows - 1 - floor((y - self.bottom) / self.per_row + _NEAR)

    def top_row(self, y: float) -> int:
        """The row of an upper edge."""
        return self.rows - ceil((y - self.bottom) / self.per_row - _NEAR)

    def at(self, column: int, row: int) -> str:
        """The sign in a cell, "" outside."""
        return self._cells[row][column] if 0 <= row < self.rows and 0 <= column < self.columns else ""

    def put(self, column: int, row: int, sign: str) -> None:
        """One sign; outside of the sheet nothing happens."""
        if 0 <= row < self.rows and 0 <= column < self.columns:
            self._cells[row][column] = sign

    def write(self, column: int, row: int, text: str) -> None:
        """A word from a cell on."""
        for place, sign in enumerate(text):
            self.put(column + place, row, sign)

    def frame(self, box: Box, *, dashed: bool = False, on_floor: bool = False) -> None:
        """The edges of a box; on_floor: without its lower edge."""
        s = self.signs
        level, upright = (s.dash, s.dash_upright) if dashed else (s.level, s.upright)
        first, last = self.column(box.left), max(self.column(box.left) + 1, self.last_column(box.right))
        top, bottom = self.top_row(box.top), self.row(box.bottom)
        for column in range(first, last + 1):
            self.put(column, top, level)
            if not on_floor:
                self.put(column, bottom, level)
        for row in range(top, bottom + 1):
            self.put(first, row, upright)
            self.put(last, row, upright)
        if not dashed:
            places = ((first, top), (last, top), (last, bottom), (first, bottom))
            for corner, (column, row) in list(zip(s.corners, places, strict=True))[: 2 if on_floor else 4]:
                self.put(column, row, corner)

    def filled(self, box: Box, sign: str) -> None:
        """All cells of a box, one at least."""
        first, last = self.column(box.left), max(self.column(box.left), self.last_column(box.right))
        for row in range(min(self.top_row(box.top), self.row(box.bottom)), self.row(box.bottom) + 1):
            for column in range(first, last + 1):
                self.put(column, row, sign)

    def polygon(self, points: Sequence[Point], sign: str) -> None:
        """All cells whose middle lies inside, and that in which its own middle lies."""
        for column, row, place in self._middles():
            if _inside(place, points):
                self.put(column, row, sign)
        corners = points[:-1]
        x, y = (sum(point[axis] for point in corners) / len(corners) for axis in (0, 1))
        self.put(self.column(x), self.row(y), sign)

    def disc(self, circle: Circle, sign: str) -> None:
        """All cells whose middle lies inside, one at least."""
        for column, row, (x, y) in self._middles():
            if hypot(x - circle.centre[0], y - circle.centre[1]) <= circle.radius:
                self.put(column, row, sign)
        self.put(self.column(circle.centre[0]), self.row(circle.centre[1]), sign)

    def band(self, points: Sequence[Point], width: float, sign: str, within: Box) -> None:
        """All cells whose middle is within half the width of a line, and all that the line itself crosses.

        within: the ends of the line are cut off at the edges of this box.
        """
        for column, row, place in self._middles():
            if any(_away(place, start, end) <= width / 2.0 for start, end in pairwise(points)) and _in(place, within):
                self.put(column, row, sign)
        for x, y, _ in self._along(points):
            self.put(min(self.column(x), self.last_column(within.right)), self.row(y), sign)

    def line(self, points: Sequence[Point], sign: str | None = None) -> None:
        """A line in signs that lean as it does; `sign`: in that one instead."""
        for _, group in groupby(self._along(points), key=self._cell_run):
            places = list(group)
            x, y, slope = min(places, key=self._off_middle)
            up = (y - self.bottom) / self.per_row
            self.put(self.column(x), self.row(y), sign or self._leaning(slope, up - floor(up + _NEAR)))

    def _leaning(self, slope: float, share: float) -> str:
        s = self.signs
        if abs(slope) > _UPRIGHT:
            return s.upright
        if abs(slope) > _STEEP:
            return s.rising if slope > 0 else s.falling
        return s.shallow[min(2, max(0, int(share * 3.0 + 1e-6)))]

    def _cell_run(self, place: tuple[float, float, float]) -> tuple[bool, int]:
        x, y, slope = place
        return (True, self.row(y)) if abs(slope) > _STEEP else (False, self.column(x))

    def _off_middle(self, place: tuple[float, float, float]) -> float:
        x, y, slope = place
        across, up = (x - self.left) / self.per_column, (y - self.bottom) / self.per_row
        at = up if abs(slope) > _STEEP else across
        return abs(at - floor(at) - 0.5)

    def _along(self, points: Sequence[Point]) -> Iterator[tuple[float, float, float]]:
        """Places along a line, eight a cell, each with the slope there in rows a column, signed as it is seen."""
        for (x0, y0), (x1, y1) in pairwise(points):
            across, up = (x1 - x0) / self.per_column, (y1 - y0) / self.per_row
            steps = max(1, ceil(8.0 * max(abs(across), abs(up))))
            slope = up / across if abs(across) > _NEAR else float("inf")
            for step in range(steps + 1):
                share = step / steps
                yield x0 + share * (x1 - x0), y0 + share * (y1 - y0), slope

    def _middles(self) -> Iterator[tuple[int, int, Point]]:
        for row in range(self.rows):
            y = self.bottom + (self.rows - row - 0.5) * self.per_row
            for column in range(self.columns):
                yield column, row, (self.left + (column + 0.5) * self.per_column, y)


def arrow_sign(angle: float, signs: Signs) -> str:
    """The arrow nearest to an angle in degrees, counterclockwise from the right."""
    return signs.arrows[round(angle / 90.0) % 4]


def heading_of(start: Point, end: Point) -> float:
    """The angle in degrees from one place to another."""
    return degrees(atan2(end[1] - start[1], end[0] - start[0]))


def _away(place: Point, start: Point, end: Point) -> float:
    """How far a place is from a stretch."""
    (x, y), (x0, y0), (x1, y1) = place, start, end
    square = (x1 - x0) ** 2 + (y1 - y0) ** 2
    share = 0.0 if square == 0.0 else min(1.0, max(0.0, ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / square))
    return hypot(x - x0 - share * (x1 - x0), y - y0 - share * (y1 - y0))


def _in(place: Point, box: Box) -> bool:
    return box.left <= place[0] <= box.right and box.bottom <= place[1] <= box.top


def _inside(place: Point, points: Sequence[Point]) -> bool:
    """Whether a place lies within a closed line, by how often a ray from it crosses the line."""
    x, y = place
    crossed = False
    for (x0, y0), (x1, y1) in pairwise(points):
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) / (y1 - y0) * (x1 - x0):
            crossed = not crossed
    return crossed
