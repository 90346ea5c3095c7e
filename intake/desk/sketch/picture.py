"""One view as rows of text, and what both views share: scale, bar, arrows, dimension lines, thinning."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from intake.advice.outline import Arrow, Box, Line, Note, Point
from intake.desk.sketch.canvas import ASPECT, Canvas, arrow_sign
from intake.desk.sketch.signs import Signs
from intake.desk.sketch.words import Words

WIDE = 44
"""From so many columns on there is room for words beside the arrows."""
WORDED = 4
"""Columns beside a view in which an arrow has its word."""
_LEAST_COLUMNS = 1.0


@dataclass(slots=True, kw_only=True)
class Picture:
    """Rows of one view, the scale bar in its title among them. shows: what the legend has to explain."""

    lines: list[str]
    per_column: float
    shows: set[str] = field(default_factory=set)
    thinned: int = 1
    goes_on: bool = False
    """The space at hand does: further than the picture."""

    @property
    def width(self) -> int:
        """Of the widest row."""
        return max(map(len, self.lines), default=0)


def margin_of(columns: int, size: Point, rows: int) -> int:
    """Columns left free on either side for arrows: with a word where there is room to spare for it."""
    by_rows = size[1] / (max(1, rows) * ASPECT)
    is_free = size[0] / max(1, columns - 2 * WORDED) <= by_rows
    return WORDED if columns >= WIDE or is_free else 1


def fitting_scale(size: Point, columns: int, rows: int, least: float) -> float | None:
    """Metres a column with which a size fits; None where the machine, `least` [m], would be lost in it."""
    if columns < 1 or rows < 1:
        return None
    scale = max(size[0] / columns, size[1] / (rows * ASPECT))
    return scale if least / scale >= _LEAST_COLUMNS else None


def draw_arrow(canvas: Canvas, arrow: Arrow, word: str, signs: Signs) -> None:
    """An arrow with its word, outside of the machine."""
    column, row = canvas.column(arrow.at[0]), canvas.row(arrow.at[1])
    if arrow.angle is None:
        canvas.put(column, row, signs.towards if arrow.depth > 0 else signs.away)
        return
    sign, way = arrow_sign(arrow.angle, signs), round(arrow.angle / 90.0) % 4
    comes_on = arrow.role == "infeed"
    if comes_on:
        canvas.write(column - 1 - len(word), row, word + sign)
    elif way == 0:
        canvas.write(canvas.last_column(arrow.at[0]) + 1, row, sign + word)
    elif way == 2:
        row = row + 1 if canvas.at(column - 1, row).strip() else row
        canvas.write(column - 1 - len(word), row, word + sign)
    else:
        row = canvas.top_row(arrow.at[1]) - 1 if way == 1 else row + 1
        canvas.write(column, min(row, canvas.rows - 1), sign + word)


def thin(lines: Iterable[Line], canvas: Canvas, apart: float) -> tuple[list[Line], int]:
    """Of many like lines one above another those that there is room for, and each how manieth that is.

    apart: rows from one to the next at the least.
    """
    tiers = sorted((line for line in lines if line.tier is not None), key=lambda line: line.tier or 0)
    if len(tiers) < 2:
        return tiers, 1
    first, last = tiers[0], tiers[-1]
    rows = abs(last.points[0][1] - first.points[0][1]) / canvas.per_row
    each = rows / max(1, (last.tier or 0) - (first.tier or 0))
    step = 1 if each <= 0.0 else max(1, -int(-apart // each))
    return [line for line in tiers if (line.tier or 0) % step == 0], step


def dimension_row(start: int, end: int, text: str, columns: int, signs: Signs) -> str:
    """A line from column to column with its length in it, or behind it where it is too short."""
    first, last = signs.ends
    span = end - start + 1
    if span >= len(text) + 4:
        inner = f" {text} ".center(span - 2, signs.level)
        return " " * start + first + inner + last
    bar = first + signs.level * (span - 2) + last if span > 1 else first
    row = " " * start + bar + " " + text
    return row if len(row) <= columns else " " * max(0, columns - len(text)) + text[:columns]


def length_row(envelope: Box, canvas: Canvas, words: Words, columns: int) -> str:
    """The length of the machine under a view."""
    text = words.say("length_of", value=words.size(envelope.width))
    return dimension_row(
        canvas.column(envelope.left), canvas.last_column(envelope.right), text, columns, canvas.signs
    )  # fmt: skip


def title_row(titles: Sequence[str], per_column: float, columns: int, words: Words, signs: Signs) -> str:
    """The title of a view, the first that fits, with a bar of a round length."""
    length, text = words.bar(per_column, max(4, columns // 4))
    cells = max(2, round(length / per_column))
    bar = f"{signs.ends[0]}{signs.level * (cells - 2)}{signs.ends[1]} {text}"
    for one in titles:
        if len(one) + 2 + len(bar) <= columns:
            return f"{one}  {bar}"
    return bar[:columns]


def warned(notes: Iterable[Note], *keys: str) -> bool:
    """Whether one of these misfits is told."""
    return any(note.key in keys for note in notes)
