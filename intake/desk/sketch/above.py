"""The view from above: the machine on the floor, the space at hand round it, the ways in and out."""

from intake.advice.outline import Arrow, Box, Circle, Line, Outline
from intake.desk.sketch.canvas import Canvas, arrow_sign, heading_of
from intake.desk.sketch.picture import (
    WORDED,
    Picture,
    draw_arrow,
    fitting_scale,
    length_row,
    margin_of,
    title_row,
    warned,
)
from intake.desk.sketch.signs import Signs
from intake.desk.sketch.words import Words

_MOST_SPACE = 3.0
"""Times the machine: more space than that is not drawn at the cost of the machine, and its end left open."""
_TURNING = 8
"""A way with more points than that turns round; an arrow on it tells which way."""


def plan_picture(outline: Outline, words: Words, columns: int, rows: int, signs: Signs) -> Picture | None:
    """The plan in at most so many columns and rows, title and dimension with it; None where it gets too small."""
    envelope = outline.plan.envelope
    room = next((part for part in outline.plan.of("space") if isinstance(part, Box)), None)
    seen = _seen(envelope, room)
    above, below = _arrow_rows(outline)
    most = rows - 2 - above - below
    margin = margin_of(columns, (seen.width, seen.height), most)
    scale = fitting_scale((seen.width, seen.height), columns - 2 * margin, most, envelope.width)
    if scale is None or envelope.height / scale < 1.0:
        return None
    tall = min(most, int(seen.height / (2.0 * scale) - 1e-6) + 1)
    canvas = Canvas(
        columns=int(seen.width / scale - 1e-6) + 1 + 2 * margin, rows=tall + above + below,
        left=seen.left - margin * scale, bottom=seen.bottom - below * 2.0 * scale, per_column=scale, signs=signs,
    )  # fmt: skip
    picture = Picture(lines=[], per_column=scale, shows={"path", "product"})
    _machine(canvas, outline)
    if room is not None:
        _space(canvas, envelope, room, outline, picture)
    for part in outline.plan.parts:
        if isinstance(part, Arrow):
            word = words.say("in" if part.role == "infeed" else "out") if margin >= WORDED else ""
            draw_arrow(canvas, part, word, signs)
    title = title_row([words.say("title_plan")], scale, columns, words, signs)
    rows_drawn = canvas.lines()
    while not rows_drawn[-1]:
        rows_drawn.pop()
    picture.lines = [title, *rows_drawn, length_row(envelope, canvas, words, columns)]
    return picture


def _seen(envelope: Box, room: Box | None) -> Box:
    """The part of the floor that the picture shows."""
    if room is None:
        return envelope
    right = max(envelope.right, min(room.right, _MOST_SPACE * envelope.right))
    high = max(envelope.height, min(room.height, _MOST_SPACE * envelope.height))
    middle = envelope.height / 2.0
    return Box(left=0.0, right=right, bottom=middle - high / 2.0, top=middle + high / 2.0, role="space")


def _arrow_rows(outline: Outline) -> tuple[int, int]:
    """Rows above and below that an arrow across the infeed's travel needs."""
    ways = [
        round(part.angle / 90.0) % 4 for part in outline.plan.parts
        if isinstance(part, Arrow) and part.role == "discharge" and part.angle is not None
    ]  # fmt: skip
    return int(1 in ways), int(3 in ways)


def _machine(canvas: Canvas, outline: Outline) -> None:
    signs, view = canvas.signs, outline.plan
    ways = [part for part in view.of("path") if isinstance(part, Line)]
    for line in ways:
        if line.width > 0.0:
            canvas.band(line.points, line.width, signs.belt, view.envelope)
        else:
            canvas.line(line.points, signs.level if line.points[0][1] == line.points[-1][1] else signs.upright)
    if canvas.row(view.envelope.bottom) - canvas.top_row(view.envelope.top) > 1:
        canvas.frame(view.envelope)
    for part in view.of("product"):
        if isinstance(part, Circle):
            canvas.disc(part, signs.product)
        elif isinstance(part, Line):
            canvas.polygon(part.points, signs.product)
    for line in ways:
        if len(line.points) > _TURNING:
            place = 1 + (len(line.points) - 1) // 4
            x, y = line.points[place]
            way = heading_of(line.points[place - 1], line.points[min(place + 1, len(line.points) - 1)])
            canvas.put(canvas.column(x), canvas.row(y), arrow_sign(way, signs))


def _space(canvas: Canvas, envelope: Box, room: Box, outline: Outline, picture: Picture) -> None:
    """The edges of the space that lie within the picture; where the machine passes one, it is marked."""
    picture.shows.add("space")
    long, wide = warned(outline.notes, "too_long"), warned(outline.notes, "too_wide")
    if long or wide:
        picture.shows.add("misfit")
    seen = _seen(envelope, room)
    first, last = canvas.column(0.0), canvas.last_column(envelope.right)
    right = min(canvas.last_column(room.right), last - 1) if long else max(canvas.last_column(room.right), last)
    highest, lowest = canvas.top_row(envelope.top), canvas.row(envelope.bottom)
    if wide:
        top, bottom = max(canvas.top_row(room.top), highest + 1), min(canvas.row(room.bottom), lowest - 1)
    else:
        top, bottom = min(canvas.top_row(room.top), highest), max(canvas.row(room.bottom), lowest)
    high, low = canvas.top_row(seen.top), canvas.row(seen.bottom)
    picture.goes_on = room.right > seen.right + 1e-9 or room.height > seen.height + 1e-9
    end = min(right, canvas.last_column(seen.right))
    if room.height <= seen.height + 1e-9:
        for column in range(first, end + 1):
            for row in (top, bottom):
                _edge(canvas, column, row, canvas.signs.dash, wide)
    for column in [first] + ([right] if room.right <= seen.right + 1e-9 else []):
        for row in range(max(top, high), min(bottom, low) + 1):
            _edge(canvas, column, row, canvas.signs.dash_upright, long and column == right)


def _edge(canvas: Canvas, column: int, row: int, sign: str, misfit: bool) -> None:
    if canvas.at(column, row) in (" ", canvas.signs.dash, canvas.signs.dash_upright):
        canvas.put(column, row, sign)
    elif misfit:
        canvas.put(column, row, canvas.signs.misfit)
