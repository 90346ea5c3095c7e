"""Tables pasted from a spreadsheet or a mail: where their cells stand, and signs that keep the cells apart."""

import itertools
import re
from bisect import bisect_left
from dataclasses import dataclass, replace

from intake.reading.text.fold import Folded

_RULE = re.compile(r"[\s|+:=-]*")
_WIDE_GAP = re.compile(r"(?<=\S)[ \t]{2,}(?=\S)")
_UNIT_CELL = re.compile(
    r"\W*(?:mm|cm|m|in|ins|inch|inches|ft|feet|kg|kgs|g|lb|lbs|pounds?|°? ?[cf]|deg(?:rees)?(?: [cf])?|v|volts?|hz|bar"
    r"|psi|kpa|mpa|n|lbf|(?:\w+ ?)?(?:/|per) ?(?:min|minute|h|hr|hour|s|sec)|cpm|ppm|bpm|cph|h|hrs?|hours|weeks?|wks|-"
    r"|%)?\W*"
)
_LEADERS = re.compile(r"(?<=\w )\.{3,}(?= ?\S)|(?<=\w)\.{4,}(?= ?\S)")
"""Dots that lead from a property to its value."""
_FIGURE = re.compile(r"\d")
_LETTER = re.compile(r"[^\W\d_]")


@dataclass(frozen=True, slots=True)
class Cell:
    """A cell's place in the shadow, without the space around it; start == end where it is empty."""

    start: int
    end: int
    text: str


@dataclass(frozen=True, slots=True)
class Table:
    """Three columns or more; the first row names the columns or the first column names the rows."""

    rows: tuple[tuple[Cell, ...], ...]

    def moved(self, before: Folded, after: Folded) -> "Table":
        """The same table in a shadow with fewer spaces."""
        places = after.places or ()
        origin = before.places or range(len(before.shadow) + 1)

        def move(cell: Cell) -> Cell:
            start, end = (bisect_left(places, origin[place]) for place in (cell.start, cell.end))
            return Cell(start, end, cell.text)

        return Table(tuple(tuple(move(cell) for cell in row) for row in self.rows))


def tabled(folded: Folded) -> tuple[Folded, tuple[Table, ...]]:
    """The text with ":" between a property and its value and "|" between other cells, and the tables in it.

    The shadow keeps its length, so that places stay what they are. Texts without tables come back as they are.
    """
    shadow = folded.shadow
    if "\n" not in shadow or not ("\t" in shadow or "|" in shadow or "  " in shadow or ";" in shadow):
        return _led(folded, shadow.replace("\t", " ")), ()
    signs = list(shadow)
    tables: list[Table] = []
    block: list[tuple[Cell, ...]] = []
    kind = ""
    place = place_of = 0
    for line in [*shadow.split("\n"), ""]:
        here, cells = _cells(line, place)
        place += len(line) + 1
        if line.strip() and "-" in line and _RULE.fullmatch(line) and block:
            signs[place - len(line) - 1 : place - 1] = " " * len(line)
            continue
        if (
            len(block) == 1
            and here == kind == "wide"
            and len(cells) == len(block[0]) + 1
            and block[0][0].start - place_of > 3
        ):
            block = [(Cell(place_of, place_of, ""), *block[0])]  # a heading without a name over the first column
        if block and (here != kind or (kind == "wide" and len(cells) != len(block[0]))):
            tables += _settled(signs, block, kind)
            block = []
        place_of = place - len(line) - 1
        kind = here
        if here:
            block.append(cells)
    return _led(folded, "".join(signs)), tuple(tables)


def _led(folded: Folded, shadow: str) -> Folded:
    """Leaders become a colon."""
    if "..." in shadow:
        shadow = _LEADERS.sub(lambda match: ":" + " " * (len(match.group()) - 1), shadow)
    return folded if shadow == folded.shadow else replace(folded, shadow=shadow)


def _cells(line: str, place: int) -> tuple[str, tuple[Cell, ...]]:
    """How the line is cut ("tab", "bar", "wide", "semi", "" for no table row) and its cells."""
    if "\t" in line.strip():
        kind, cuts = "tab", [match.span() for match in re.finditer(r"\t", line)]
    elif line.count("|") >= 1 and not line.strip().startswith("||"):
        kind, cuts = "bar", [match.span() for match in re.finditer(r"\|", line)]
    elif line.count(";") >= 2 and len(line) < 200:
        kind, cuts = "semi", [match.span() for match in re.finditer(";", line)]
    elif _WIDE_GAP.search(line.strip()):
        kind, cuts = "wide", [match.span() for match in _WIDE_GAP.finditer(line)]
    else:
        return "", ()
    ends = [0, *(end for _, end in cuts)], [*(start for start, _ in cuts), len(line)]
    cells = []
    for start, end in zip(*ends, strict=True):
        part = line[start:end]
        left = start + len(part) - len(part.lstrip())
        right = max(left, end - (len(part) - len(part.rstrip())))
        cells.append(Cell(place + left, place + right, part.strip()))
    if kind == "bar":
        cells = cells[1:] if cells and not cells[0].text and line.lstrip().startswith("|") else cells
        cells = cells[:-1] if cells and not cells[-1].text else cells
    if kind == "tab":
        while len(cells) > 2 and not cells[-1].text:
            cells.pop()
    return (kind, tuple(cells)) if len(cells) >= 2 else ("", ())


def _settled(signs: list[str], block: list[tuple[Cell, ...]], kind: str) -> list[Table]:
    """Put the signs of a block of rows; a table of three columns or more comes back."""
    block = _without_numbers(signs, block)
    width = max(len(row) for row in block)
    pairs = [row for row in block if len(row) == 2]
    if kind == "semi" and (len(block) < 2 or any(len(row) != width for row in block)):
        return []
    if width == 2 and len(pairs) == len(block):
        if kind == "wide" and (len(block) < 2 or not any(_FIGURE.search(row[1].text) for row in block)):
            return []
        for row in block:
            _mark(signs, row[0], row[1], ";" if ":" in row[0].text[:-1] else ":" if _names(row[0].text) else "|")
        return []
    if len(block) < 2:
        if kind != "wide":
            _bars(signs, block)
        return []
    with_units = [row for row in block if len(row) >= 3 and _UNIT_CELL.fullmatch(row[2].text)]
    valued = [row for row in with_units if _FIGURE.search(row[1].text) and _names(row[0].text)]
    if valued and len(with_units) >= len(block) - 1:
        for row in block:
            _mark(signs, row[0], row[1], ":")
            for left, right in itertools.pairwise(row[1:]):
                _mark(signs, left, right, " " if left is row[1] and row in with_units else ";")
        return []
    _bars(signs, block)
    return [Table(tuple(block))]


_NUMBERING = re.compile(r"(?:\d{1,3}(?:\.\d{1,3}){0,3}[.)]?|[a-z][.)]|no\.?|nr\.?|pos\.?|#|item|line|)")


def _without_numbers(signs: list[str], block: list[tuple[Cell, ...]]) -> list[tuple[Cell, ...]]:
    """The rows without a first column that only counts them; its figures are none."""
    counted = all(len(row) >= 3 and _NUMBERING.fullmatch(row[0].text) and _LETTER.search(row[1].text) for row in block)
    if not counted or len(block) < 2:
        return block
    for row in block:
        for n in range(row[0].start, row[0].end):
            signs[n] = " "
    return [row[1:] for row in block]


def _bars(signs: list[str], block: list[tuple[Cell, ...]]) -> None:
    for row in block:
        for left, right in itertools.pairwise(row):
            _mark(signs, left, right, "|")


def _names(text: str) -> bool:
    return _LETTER.search(text) is not None and not text.endswith(":")


def _mark(signs: list[str], left: Cell, right: Cell, sign: str) -> None:
    """Put one sign into the room between two cells."""
    room = range(left.end, right.start)
    for n in room:
        if signs[n] != "\n":
            signs[n] = " "
    at = next((n for n in room if signs[n] != "\n"), None)
    if at is not None:
        signs[at] = sign
