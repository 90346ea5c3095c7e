"""The side view: floor, ceiling, the machine between them, and the heights beside it."""

from intake.advice.outline import Arrow, Box, Level, Line, Outline
from intake.desk.sketch.canvas import Canvas, arrow_sign, heading_of
from intake.desk.sketch.picture import (
    Picture,
    dimension_row,
    draw_arrow,
    fitting_scale,
    thin,
    title_row,
    warned,
)
from intake.desk.sketch.signs import Signs
from intake.desk.sketch.words import Words

_HIGHEST_CEILING = 1.6
_LONGEST_SPACE = 1.6
"""Times the machine: what reaches further is told, and not drawn at the cost of the machine."""
_MORE_ROWS_FOR_HIDDEN = 3.0
_TIERS_APART, _SHELVES_APART = 1.0, 2.0
"""Rows from one to the next at the least."""


def side_picture(
    outline: Outline, words: Words, columns: int, rows: int, signs: Signs, *, titled: bool
) -> Picture | None:
    """The side view in at most so many columns and rows, title and dimension with it; None where it gets too small.

    titled: the family is named elsewhere.
    """
    view = outline.elevation
    levels = [part for part in view.parts if isinstance(part, Level)]
    if rows - 2 < len(levels):
        levels = [level for level in levels if level.key != "floor"]
    high = view.envelope.top
    drawn_to = max([high, *(level.height for level in levels if level.height <= _HIGHEST_CEILING * high)])
    labels = [(level, words.level(level, outline, level.height > drawn_to)) for level in levels]
    gutter = max(len(text) for _, text in labels) + 1
    long = max([view.envelope.width, *(x for x in _space_ends(outline) if x <= _LONGEST_SPACE * view.envelope.width)])
    most_rows = rows - 2
    scale = fitting_scale((long, drawn_to), columns - gutter - 2, most_rows - 1, min(view.envelope.width, high / 2.0))
    if scale is None or len(labels) > most_rows:
        return None
    canvas = Canvas(
        columns=int(long / scale - 1e-6) + 3,
        rows=min(most_rows, max(len(labels), int(drawn_to / (2.0 * scale) - 1e-6) + 2)),
        left=-scale, bottom=0.0, per_column=scale, signs=signs,
    )  # fmt: skip
    picture = Picture(lines=[], per_column=scale, shows={"path", "product"})
    ceiling = _surroundings(canvas, outline, levels, drawn_to, picture)
    _machine(canvas, outline, picture)
    _product_and_arrows(canvas, outline, picture)
    _misfits(canvas, outline, ceiling, picture)
    where = {"overall": canvas.top_row(high), "ceiling": ceiling if ceiling is not None else 0}
    beside = _beside(labels, where, canvas)
    picture.lines = [f"{row:<{canvas.columns}} {beside.get(place, '')}".rstrip()
                     for place, row in enumerate(canvas.lines())]  # fmt: skip
    while picture.lines and not picture.lines[0]:
        picture.lines.pop(0)
    titles = [words.say("title_side")] if titled else words.titles(outline.family)
    picture.lines.insert(0, title_row(titles, scale, columns, words, signs))
    picture.lines.append(
        dimension_row(
            canvas.column(0.0), canvas.last_column(view.envelope.right),
            words.say("length_of", value=words.size(view.envelope.width)), columns, signs,
        )
    )  # fmt: skip
    return picture


def _space_ends(outline: Outline) -> list[float]:
    return [part.points[0][0] for part in outline.elevation.of("space") if isinstance(part, Line)]


def _surroundings(
    canvas: Canvas, outline: Outline, levels: list[Level], drawn_to: float, picture: Picture
) -> int | None:  # fmt: skip
    """Ends of the space, floor and ceiling. Gives the row of the ceiling, None where it is not in the picture."""
    signs, high = canvas.signs, outline.elevation.envelope.top
    for column in range(canvas.columns):
        canvas.put(column, canvas.rows - 1, signs.floor)
    ceiling = next((level.height for level in levels if level.key == "ceiling"), None)
    if ceiling is None or ceiling > drawn_to:
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
        picture.shows.add("frame")
        for line in lines:
            if line.role == "machine" and line.tier is None:  # cleats are lower than a row
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


def _misfits(canvas: Canvas, outline: Outline, ceiling: int | None, picture: Picture) -> None:
    """Where the machine goes through the ceiling or past the end of the space, or that end where it does not."""
    signs, last = canvas.signs, canvas.last_column(outline.elevation.envelope.right)
    if ceiling is not None and warned(outline.notes, "through_ceiling"):
        picture.shows.add("misfit")
        through = [c for c in range(canvas.columns) if any(canvas.at(c, row).strip() for row in range(ceiling))]
        for column in through or range(canvas.column(0.0), last + 1):
            canvas.put(column, ceiling, signs.misfit)
    too_long = warned(outline.notes, "too_long")
    for x in _space_ends(outline)[1:]:
        if x > _LONGEST_SPACE * outline.elevation.envelope.width:
            continue
        column = min(canvas.last_column(x), last - 1) if too_long else max(canvas.last_column(x), last)
        picture.shows |= {"space", "misfit"} if too_long else {"space"}
        for row in range((ceiling if ceiling is not None else 0) + 1, canvas.rows):
            is_free = canvas.at(column, row) in (" ", signs.floor)
            if is_free or too_long:
                canvas.put(column, row, signs.dash_upright if is_free else signs.misfit)


def _beside(labels: list[tuple[Level, str]], where: dict[str, int], canvas: Canvas) -> dict[int, str]:
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
