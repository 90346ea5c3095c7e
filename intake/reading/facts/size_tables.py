"""A table with a size a row (or a size a column): its figures as facts of those sizes."""

import re

from intake.reading.amounts.figures import Figure, give_unit
from intake.reading.amounts.size_labels import LABELS
from intake.reading.amounts.units import UNITS, Unit
from intake.reading.message.scene import Draft, Scene
from intake.reading.text.tables import Cell, Table

_OF = r"\W*(?:(?:product|case|box|carton|tray|outer|overall|external|ext\.?|pack|unit|total|gross|max\.?|nominal) )*"
_TIMES = r" ?[x*×/-] ?"
_PER = r"\w+ ?(?:/|per) ?(?:min|minute|h|hr|hour|s|sec|second)"
_COLUMNS = tuple(
    (name, re.compile(pattern))
    for name, pattern in (
        (
            "product.size",
            rf"{_OF}(?:(?:l|length){_TIMES}(?:w|b|width|breadth){_TIMES}(?:h|height)\b|(?:dim|size|measure))",
        ),
        ("product.length", rf"{_OF}(?:l|len|lg|length)\b(?! ?[x*])"),
        ("product.width", rf"{_OF}(?:w|b|wd|width|breadth)\b(?! ?[x*])"),
        ("product.height", rf"{_OF}(?:h|ht|hgt|height)\b(?! ?[x*])"),
        ("product.diameter", rf"{_OF}(?:ø|dia|diam|diameter|od)\b"),
        ("product.weight", rf"{_OF}(?:weight|wt|wgt|weighs|mass|gross|kg|kgs|lbs?|gewicht|peso|poids|vikt|waga)\b"),
        (
            "rate.peak",
            r"\W*(?:peak|max\w*)\b.*(?:/|per|rate|speed|through|[cbp]pm)|.*(?:/|per|rate|speed).*(?:peak|max)",
        ),
        ("rate.normal", rf"\W*(?:\w+ )?(?:rate|speed|throughput|output|[cbp]pm|{_PER})\b"),
    )
)
_ADJECTIVES = frozenset(
    {"long", "wide", "tall", "deep", "high", "thick", "across", "round", "broad", "d", "t", "b", "stands"}
)
"""In a heading these name a size ("tall", "wide"), not a column."""
_BY_LABEL = {
    "l": "product.length", "w": "product.width", "h": "product.height", "t": "product.height", "o": "product.diameter",
}  # fmt: skip
_KINDS = {"product.weight": "mass", "rate.normal": "rate", "rate.peak": "rate"}
_LENGTHS = ("product.length", "product.width", "product.height")
_IN_UNIT = re.compile(
    r"\b(?:dim\w*|size\w*|measur\w*|length\w*|all)\b[^.\n|]{0,30}\bin (mm|millimet\w+|cm|centimet\w+|in|inch|inches)\b"
)
_TIME = re.compile(r"(?:/|per) ?(min|minute|h|hr|hour|s|sec|second)\b")
_RATES = {"m": "1/min", "h": "1/h", "s": "1/s"}
_SIZES_MOST = 12


def table_drafts(scene: Scene) -> list[Draft]:
    """Facts of all tables that speak of sizes."""
    found: list[Draft] = []
    for table in scene.tables:
        for columns in (table.rows, _turned(table)):
            named = [(n, name) for n, cell in enumerate(columns[0]) if (name := _field(cell.text))]
            lengths = [name for _, name in named if name in _LENGTHS or name == "product.diameter"]
            if (len(lengths) >= 2 or any(name == "product.size" for _, name in named)) and len(columns) > 1:
                found += _of_rows(scene, columns, dict(named))
                break
    return found


def _turned(table: Table) -> tuple[tuple[Cell, ...], ...]:
    """Columns as rows."""
    width = max(len(row) for row in table.rows)
    empty = Cell(0, 0, "")
    return tuple(tuple(row[n] if n < len(row) else empty for row in table.rows) for n in range(width))


def _field(heading: str) -> str:
    named = next((name for name, pattern in _COLUMNS if pattern.match(heading)), "")
    first = re.match(r"\W*([^\W\d]+)", heading)
    if named or first is None or first.group(1) in _ADJECTIVES:
        return named
    return _BY_LABEL.get(LABELS.get(first.group(1), ""), "")


def _of_rows(scene: Scene, rows: tuple[tuple[Cell, ...], ...], columns: dict[int, str]) -> list[Draft]:
    found: list[Draft] = []
    rates: dict[str, list[tuple[Draft, Figure]]] = {}
    size = 0
    for row in rows[1:]:
        cells = [(columns[n], rows[0][n], cell) for n, cell in enumerate(row) if n in columns and cell.text]
        inside = [(name, heading, _figures(scene, cell)) for name, heading, cell in cells]
        if not any(figures for name, _, figures in inside if name.startswith("product.")) or size == _SIZES_MOST:
            continue
        size += 1
        for name, heading, figures in inside:
            drafts = _drafts(scene, name, heading.text, figures)
            for field, figure in drafts:
                draft = scene.draft(field, figure, rank=8)
                draft.size = size if field.startswith("product.") else 1
                if field.startswith("rate."):
                    rates.setdefault(field, []).append((draft, figure))
                else:
                    found.append(draft)
            scene.use(*figures)
    if size > 1 and found:
        label = rows[-1][0]  # the last size by its name, where it has one
        named = 0 not in columns and label.start < label.end
        start, end = (label.start, label.end) if named else (found[-1].start, found[-1].end)
        found.append(Draft("product.sizes", start, end, float(size), float(size), at=found[-1].at, rank=3))
    for pairs in rates.values():
        first_draft = pairs[0][0]
        first_draft.low = min(draft.low or 0.0 for draft, _ in pairs)
        first_draft.high = max(draft.high or 0.0 for draft, _ in pairs)
        found.append(first_draft)
    return found


def _figures(scene: Scene, cell: Cell) -> list[Figure]:
    return [
        figure
        for figure in scene.figures
        if cell.start <= scene.tokens[figure.first].start and scene.tokens[figure.after - 1].end <= cell.end
    ]


def _drafts(scene: Scene, name: str, heading: str, figures: list[Figure]) -> list[tuple[str, Figure]]:
    """The fields and figures of one cell; bare figures take the unit of the heading."""
    kind = _KINDS.get(name, "length")
    unit = _unit(scene, heading, kind, figures)
    for figure in figures:
        if figure.unit is None and unit is not None:
            give_unit(figure, unit)
    figures = [figure for figure in figures if figure.kind == kind]
    if name == "product.size":
        fields = _LENGTHS if len(figures) == 3 else ("product.length", "product.width")
        return list(zip(fields, figures, strict=False)) if len(figures) in (2, 3) else []
    return [(name, figures[0])] if figures else []


def _unit(scene: Scene, heading: str, kind: str, figures: list[Figure]) -> Unit | None:
    """The unit in the heading, in a line beside the table, or the one that the numbers leave open no other."""
    if kind == "rate":
        time = _TIME.search(heading)
        return (
            UNITS[_RATES[time.group(1)[0]]] if time else UNITS["1/min"] if re.search(r"\b[cpb]pm\b", heading) else None
        )
    words = re.findall(r"[a-z\"']+", heading)
    for word in reversed(words):
        unit = _SHORT.get(word)
        if unit is not None and UNITS[unit].kind == kind:
            return UNITS[unit]
    if kind == "length":
        stated = _IN_UNIT.search(scene.shadow)
        if stated is not None:
            return UNITS[_SHORT.get(stated.group(1), "mm")]
        if figures and all(figure.value >= 100 for figure in figures):
            return UNITS["mm"]
        if scene.imperial and not scene.metric and all(figure.value <= 100 for figure in figures):
            return UNITS["in"]
    if kind == "mass" and scene.imperial != scene.metric:
        return UNITS["lb" if scene.imperial else "kg"]
    return None


_SHORT = {
    "mm": "mm", "millimetres": "mm", "millimeters": "mm", "cm": "cm", "centimetres": "cm", "centimeters": "cm",
    "m": "m", "in": "in", "ins": "in", "inch": "in", "inches": "in", '"': "in", "ft": "ft", "feet": "ft",
    "kg": "kg", "kgs": "kg", "g": "g", "grams": "g", "lb": "lb", "lbs": "lb", "pounds": "lb", "pound": "lb",
}  # fmt: skip
