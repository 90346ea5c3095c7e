"""The side view: floor, ceiling, the machine between them, and the heights beside it."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import dropwhile

from intake.advice.outline import Arrow, Box, Level, Line, Outline
from intake.desk.sketch.canvas import Canvas, arrow_sign, heading_of
from intake.desk.sketch.picture import (
    Picture,
    draw_arrow,
    fitting_scale,
    length_row,
    thin,
    title_row,
    warned,
)
from intake.desk.sketch.signs import Signs
from intake.desk.sketch.words import Words

_REACHES = (1.6, 1.3, 1.0)
"""Times the machine: a ceiling or an end of the space further off is told, and not drawn at the cost of the machine."""
_ROOMY = 8
"""Rows from which on the furthest of these holds."""
_MORE_ROWS_FOR_HIDDEN = 3.0
_TIERS_APART, _SHELVES_APART = 1.0, 2.0
"""Rows from one to the next at the least."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Window:
    """What of the surroundings is in the picture. drawn_to: the greatest height; ends: those of the space."""

    drawn_to: float
    ends: tuple[float, ...]
    long: float
    labels: tuple[tuple[Level, str], ...]
    scale: float


def side_picture(
    outline: Outline, words: Words, columns: int, rows: int, signs: Signs, *, titled: bool, measured: bool
) -> Picture | None:
    """The side view in at most so many columns and rows, its title with it; None where it gets too small.

    titled: the family is named elsewhere. measured: with the length under the floor.
    """
    envelope = outline.elevation.envelope
    most_rows = rows - 1 - int(measured)
    window = _window(outline, words, columns, most_rows)
    if window is None:
        return None
    scale = window.scale
    canvas = Canvas(
        columns=int(window.long / scale - 1e-6) + 3,
        rows=min(most_rows, max(len(window.labels), int(window.drawn_to / (2.0 * scale) - 1e-6) + 2)),
        left=-scale, bottom=0.0, per_column=scale, signs=signs,
    )  # fmt: skip
    picture = Picture(lines=[], per_column=scale, shows={"path", "product"})
    ceiling = _surroundings(canvas, outline, window, picture)
    _machine(canvas, outline, picture)
    _product_and_arrows(canvas, outline, picture)
    _misfits(canvas, outline, ceiling, window, picture)
    beside = _beside(window.labels, {"overall": canvas.top_row(envelope.top), "ceiling": ceiling or 0}, canvas)
    drawn = [f"{row:<{canvas.columns}} {beside.get(place, '')}".rstrip() for place, row in enumerate(canvas.lines())]
    titles = [words.say("title_side")] if titled else words.titles(outline.family)
    under = [length_row(envelope, canvas, words, columns)] if measured else []
    picture.lines = [title_row(titles, scale, columns, words, signs), *dropwhile(lambda row: not row, drawn), *under]
    return picture


def _window(outline: Outline, words: Words, columns: int, rows: int) -> _Window | None:
    """As much of the surroundings as goes with a machine that can still be seen; None where not even it can."""
    envelope = outline.elevation.envelope
    levels = [part for part in outline.elevation.parts if isinstance(part, Level)]
    if rows < len(levels):
        levels = [level for level in levels if level.key != "floor"]
    for reach in _REACHES if rows >= _ROOMY else _REACHES[1:]:
        drawn_to = max([envelope.top, *(one.height for one in levels if one.height <= reach * envelope.top)])
        ends = [part.points[0][0] for part in outline.elevation.of("space") if isinstance(part, Line)]
        ends = [x for x in ends[1:] if x <= reach * envelope.width]
        labels = [(level, words.level(level, outline, level.height > drawn_to)) for level in levels]
        free = columns - max(len(text) for _, text in labels) - 3
        long = max([envelope.width, *ends])
        scale = fitting_scale((long, drawn_to), free, rows - 1, min(envelope.width, envelope.top / 2.0))
        if scale is not None and len(labels) <= rows:
            return _Window(drawn_to=drawn_to, ends=tuple(ends), long=long, labels=tuple(labels), scale=scale)
    return None


def _surroundings(
    canvas: Canvas, outline: Outline, window: _Window, picture: Picture
) -> int | None:  # fmt: skip
    """Ends of the space, floor and ceiling. Gives the row of the ceiling, None where it is not in the picture."""
    signs, high = canvas.signs, outline.elevation.envelope.top
    for column in range(canvas.columns):
        canvas.put(column, canvas.rows - 1, signs.floor)
    ceiling = next((level.height for level, _ in window.labels if level.key == "ceiling"), None)
    if ceiling is None or ceiling > window.drawn_to:
        return None
    picture.shows.add("ceiling")
    top = canvas.top_row(high)
    clears = not warned(outline.notes, "through_ceiling")
    row = min(canvas.row(ceiling), top - 1) if clears else max(canvas.row(ceiling), top + 1)
    for column in range(canvas.columns):
        canvas.put(column, row, signs.ceiling)
    return row


def _machine(canvas: Canvas, outline: Outline, picture: Picture) -> None:
    """What is seen of the machine, what lies behind first."""
    view, signs = outline.elevation, canvas.signs
    lines = [part for part in view.parts if isinstance(part, Line) and part.role in ("machine", "path")]
    behind, _ = thin((line for line in lines if line.hidden), canvas, _TIERS_APART)
    tiers, step = thin((line for line in lines if line.role == "path" and not line.hidden), canvas, _TIERS_APART)
    if step == 1 and _rows_each(behind, canvas) >= _MORE_ROWS_FOR_HIDDEN:
        picture.shows.add("hidden")
        for line in behind:
            canvas.line(line.points, signs.hidden)
    if not view.caged:
        for line in lines:
            if line.role == "machine" and line.tier is None:  # cleats are lower than a row
                picture.shows.add("frame")
                canvas.line(line.points, signs.frame)
    ways = [line for line in lines if line.role == "path" and line.tier is None]
    for line in (*tiers, *ways):
        canvas.line(line.points)
    if view.caged:
        shelves, each = thin((line for line in lines if line.role == "machine"), canvas, _SHELVES_APART)
        step = max(step, each)
        for line in shelves:
            canvas.line(line.points)
        canvas.frame(view.envelope, on_floor=True)
    picture.thinned = step
    for line in ways:
        _flow(canvas, line)


def _rows_each(lines: list[Line], canvas: Canvas) -> float:
    if len(lines) < 2:
        return 0.0
    return abs(lines[1].points[0][1] - lines[0].points[0][1]) / canvas.per_row


def _flow(canvas: Canvas, line: Line) -> None:
    """An arrow half way up or down an upright stretch."""
    for start, end in zip(line.points, line.points[1:], strict=False):
        if abs(end[0] - start[0]) < 1e-6 and abs(end[1] - start[1]) > 2.0 * canvas.per_row:
            middle = (start[1] + end[1]) / 2.0
            canvas.put(
                canvas.column(start[0]), canvas.row(middle), arrow_sign(heading_of(start, end), canvas.signs)
            )  # fmt: skip


def _product_and_arrows(canvas: Canvas, outline: Outline, picture: Picture) -> None:
    for part in outline.elevation.parts:
        if isinstance(part, Box) and part.role == "product":
            canvas.filled(part, canvas.signs.product)
    for part in outline.elevation.parts:
        if isinstance(part, Arrow):
            draw_arrow(canvas, part, "", canvas.signs)
            if part.angle is None:
                picture.shows.add("towards" if part.depth > 0 else "away")


def _misfits(canvas: Canvas, outline: Outline, ceiling: int | None, window: _Window, picture: Picture) -> None:
    """Where the machine goes through the ceiling or past the end of the space, or that end where it does not."""
    signs, last = canvas.signs, canvas.last_column(outline.elevation.envelope.right)
    if ceiling is not None and warned(outline.notes, "through_ceiling"):
        picture.shows.add("misfit")
        through = [c for c in range(canvas.columns) if any(canvas.at(c, row).strip() for row in range(ceiling))]
        if not through:  # guards over the product: known by their height alone
            through = _over_the_upper_product(canvas, outline)
            for column in through:
                canvas.put(column, canvas.top_row(outline.elevation.envelope.top), signs.misfit)
        for column in through:
            canvas.put(column, ceiling, signs.misfit)
    too_long = warned(outline.notes, "too_long")
    for x in window.ends:
        column = min(canvas.last_column(x), last - 1) if too_long else max(canvas.last_column(x), last)
        picture.shows |= {"space", "misfit"} if too_long else {"space"}
        for row in range((ceiling if ceiling is not None else 0) + 1, canvas.rows):
            is_free = canvas.at(column, row) in (" ", signs.floor)
            if is_free or too_long:
                canvas.put(column, row, signs.dash_upright if is_free else signs.misfit)


def _over_the_upper_product(canvas: Canvas, outline: Outline) -> list[int]:
    boxes = [part for part in outline.elevation.of("product") if isinstance(part, Box)]
    upper = max(boxes, key=lambda box: box.top)
    first = canvas.column(upper.left)
    return list(range(first, max(first, canvas.last_column(upper.right)) + 1))


def _beside(labels: Sequence[tuple[Level, str]], where: dict[str, int], canvas: Canvas) -> dict[int, str]:
    """Which label stands in which row: its own, or the nearest that is free, the order of heights kept."""
    order = sorted(labels, key=lambda one: -one[0].height)
    rows: list[int] = []
    for level, _ in order:
        wanted = where.get(level.key, canvas.row(level.height))
        rows.append(max(wanted, rows[-1] + 1 if rows else 0))
    limit = canvas.rows - 1
    for place in range(len(rows) - 1, -1, -1):
        rows[place] = min(rows[place], limit)
        limit = rows[place] - 1
    return {row: text for row, (_, text) in zip(rows, order, strict=True)}
