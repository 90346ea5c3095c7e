"""A frame of the desk as text: its rows, then how they look, as runs of one style. Readable in a diff."""

from dataclasses import dataclass
from itertools import groupby
from typing import Any

from rich.cells import cell_len
from rich.segment import Segment
from rich.style import Style

from intake.desk.app import Desk


@dataclass(frozen=True, slots=True)
class Look:
    """How a cell looks. `fg`, `bg`: "#rrggbb", "" for the terminal's own; `marks`: b, i, u, r, d, s (struck)."""

    fg: str
    bg: str
    marks: str

    def __str__(self) -> str:
        return f"{self.fg}/{self.bg}{'+' if self.marks else ''}{self.marks}"


@dataclass(frozen=True, slots=True)
class Run:
    """Cells of one look side by side. `start`: the first column, from 0; `width` in cells."""

    start: int
    width: int
    text: str
    look: Look


Row = tuple[Run, ...]


def drawn(app: Desk) -> list[Row]:
    """The frame that the screen shows now."""
    strips = app.screen._compositor.render_strips()  # the only way to the cells of a frame
    return [_runs(strip) for strip in strips]


def _runs(segments: Any) -> Row:
    cells = [(_look(segment), segment.text) for segment in segments if segment.text and not segment.control]
    found, start = [], 0
    for look, part in groupby(cells, key=lambda cell: cell[0]):
        text = "".join(text for _, text in part)
        found.append(Run(start, cell_len(text), text, look))
        start += found[-1].width
    return tuple(found)


def _look(segment: Segment) -> Look:
    style = segment.style or Style()
    signs = (
        (style.bold, "b"), (style.italic, "i"), (style.underline, "u"),
        (style.reverse, "r"), (style.dim, "d"), (style.strike, "s"),
    )  # fmt: skip
    return Look(_hex(style.color), _hex(style.bgcolor), "".join(sign for on, sign in signs if on))


def _hex(colour: Any) -> str:
    return "" if colour is None or colour.is_default else str(colour.get_truecolor().hex)


def text_rows(rows: list[Row]) -> list[str]:
    """The words of a frame, without the blanks at the end of a row."""
    return ["".join(run.text for run in row).rstrip() for row in rows]


def style_lines(rows: list[Row]) -> list[str]:
    """How a frame looks: its looks, a letter each, then the rows with what stands where, equal rows together.

    "3 B7-12 C20" is row 3: columns 7 to 12 have look B, column 20 has look C, all others the first look, A.
    Blank cells have no ink, only a ground: a look that begins with a slash.
    """
    spread: dict[str, int] = {}
    inked = [[(run.start, run.width, _inked(run)) for run in row] for row in rows]
    for row in inked:
        for _, width, look in row:
            spread[look] = spread.get(look, 0) + width
    ground = max(spread, key=lambda look: (spread[look], look)).rpartition("/")[2].partition("+")[0]
    inks = [look for look in spread if look.endswith(f"/{ground}") and not look.startswith("/")]
    plain = max(inks, key=lambda look: (spread[look], look), default=f"/{ground}")
    letters = {plain: "A", f"/{ground}": "A"}
    for look in sorted(spread):
        letters.setdefault(look, _letter(len(set(letters.values()))))
    legend = {letter: look for look, letter in letters.items() if look == plain or letter != "A"}
    lines = [f"{letter} {look}" for letter, look in legend.items()]
    place = 0
    for line, same in groupby([_style_line(row, letters) for row in inked]):
        count = len(list(same))
        if line:
            lines.append(f"{place} {line}" if count == 1 else f"{place}-{place + count - 1} {line}")
        place += count
    return lines


def _letter(number: int) -> str:
    return "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"[number]


def _inked(run: Run) -> str:
    blank = not run.text.strip() and not set(run.look.marks) & set("urs")
    return f"/{run.look.bg}" if blank else str(run.look)


def _style_line(row: list[tuple[int, int, str]], letters: dict[str, str]) -> str:
    parts = []
    for letter, same in groupby(row, key=lambda one: letters[one[2]]):
        runs = list(same)
        start, end = runs[0][0], runs[-1][0] + runs[-1][1] - 1
        if letter != "A":
            parts.append(f"{letter}{start}-{end}" if end > start else f"{letter}{start}")
    return " ".join(parts)


# ---------------------------------------------------------------------- contrast


def is_text(run: Run) -> bool:
    """True where something is to be read: no blanks, no lines of boxes, no blocks (bars, borders, cursors)."""
    return any(not sign.isspace() and not 0x2500 <= ord(sign) <= 0x259F for sign in run.text)


def contrast(look: Look) -> float:
    """Contrast of ink and ground, 1 to 21: (L1 + 0.05) / (L2 + 0.05), the lighter luminance first.

    Source: W3C, Web Content Accessibility Guidelines (WCAG) 2.2, "contrast ratio" and "relative luminance"; success
    criterion 1.4.3 wants 4.5 for text. Reverse swaps both, which leaves the ratio as it is.
    """
    ink, ground = _luminance(look.fg), _luminance(look.bg)
    if "d" in look.marks:  # dim ink: terminals mix it half and half with the ground
        ink = _luminance_of([(a + b) / 2 for a, b in zip(_channels(look.fg), _channels(look.bg), strict=True)])
    return (max(ink, ground) + 0.05) / (min(ink, ground) + 0.05)


def _channels(colour: str) -> list[float]:
    return [int(colour[at : at + 2], 16) / 255 for at in (1, 3, 5)]


def _luminance(colour: str) -> float:
    return _luminance_of(_channels(colour))


def _luminance_of(channels: list[float]) -> float:
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
