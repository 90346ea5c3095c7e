"""The conversation: lines of people and desk as rows that are drawn when they are looked at, however many there are."""

from dataclasses import dataclass
from typing import ClassVar

from rich.cells import cell_len
from textual.content import Content
from textual.geometry import Size
from textual.scroll_view import ScrollView
from textual.selection import Selection
from textual.strip import Strip
from textual.style import Style
from textual.visual import Visual

from intake.desk.lights import Lit
from intake.desk.tones import lit_content

MOST_ROWS = 16
"""Of a very long message so many rows are shown; all of it stays in the talk."""

_SPEAKERS = ("visitor", "answer", "asked", "staff", "works", "desk", "slip")
_APART = frozenset({"visitor", "asked", "staff", "works"})
"""Before these a row is left free."""

_LATELY = 12
"""A message that is understood only now is among so many lines, counted from the newest."""


@dataclass(frozen=True, slots=True)
class Line:
    """One line: who it is of (one of the styles), what stands before the words, the words."""

    who: str
    lead: str
    lit: Lit


class Conversation(ScrollView):
    """What was said and understood, the newest at the bottom.

    No widget for each line: a frame costs the same at twenty lines and at thousands. Words can be selected with the
    mouse.
    """

    can_focus = False
    COMPONENT_CLASSES: ClassVar[set[str]] = {f"conversation--{who}" for who in _SPEAKERS}

    def __init__(self, id: str) -> None:
        super().__init__(id=id)
        self._lines: list[Line] = []
        self._drawn: list[list[Strip]] = []
        self._rows: list[Strip] = []
        self._width = 0
        self._drawn_in: tuple[Style, ...] = ()

    @property
    def text(self) -> str:
        """All of it as plain text."""
        return "\n".join(line.lead + line.lit.words for line in self._lines)

    @property
    def rows(self) -> list[Strip]:
        """All rows as they are drawn at this width."""
        return list(self._rows)

    def say(self, who: str, lines: tuple[str, ...]) -> None:
        """Add lines of one speaker."""
        self.add([Line(who, "", Lit(words)) for words in lines])

    def add(self, lines: list[Line]) -> None:
        """Add lines, and come to the newest one again."""
        if not lines:
            return
        self._lines += lines
        if self._width:
            added = [self._draw(line) for line in lines]
            self._drawn += added
            self._rows += [row for rows in added for row in rows]
            self._to_newest()

    def retell(self, lines: list[Line]) -> None:
        """These lines in place of all others."""
        self._lines = list(lines)
        self._draw_all()

    def light(self, lit: Lit) -> None:
        """Light up the newest line that has these words."""
        for place in range(len(self._lines) - 1, max(-1, len(self._lines) - _LATELY), -1):
            line = self._lines[place]
            if line.lit.words == lit.words and line.who in ("visitor", "answer"):
                self._lines[place] = Line(line.who, line.lead, lit)
                if self._width:
                    self._drawn[place] = self._draw(self._lines[place])
                    self._rows = [row for rows in self._drawn for row in rows]
                    self.refresh()
                return

    def leaf(self, way: int) -> None:
        """A page back (-1) or forward (1)."""
        to = self.scroll_offset.y + way * max(1, self.size.height - 2)
        self.scroll_to(y=min(max(0, to), self.max_scroll_y), animate=False, immediate=True)

    # ------------------------------------------------------------------ drawing

    def on_resize(self) -> None:
        """Another width breaks the lines elsewhere."""
        if self.scrollable_content_region.width != self._width:
            self._draw_all()
        else:
            self._to_newest()

    def notify_style_update(self) -> None:
        """Other colours, maybe: drawn anew only when they are others, as any change of classes is told here."""
        super().notify_style_update()
        if self._width and self._styles() != self._drawn_in:
            self._draw_all()

    def _styles(self) -> tuple[Style, ...]:
        return tuple(self.get_visual_style(f"conversation--{who}") for who in _SPEAKERS)

    def _draw_all(self) -> None:
        self._width, self._drawn_in = self.scrollable_content_region.width, self._styles()
        self._drawn = [self._draw(line) for line in self._lines] if self._width else []
        self._rows = [row for rows in self._drawn for row in rows]
        self._to_newest()

    def _to_newest(self) -> None:
        self.virtual_size = Size(self._width, len(self._rows))
        self.scroll_end(animate=False, immediate=True, force=True)  # before its bar shows, too
        self.refresh()

    def _draw(self, line: Line) -> list[Strip]:
        who = line.who if line.who in _SPEAKERS else "desk"
        style = self.get_visual_style(f"conversation--{who}")
        rows = Visual.to_strips(self, _content(line), self._width, None, style, apply_selection=False)
        free = [Strip.blank(self._width, self.rich_style)] if line.who in _APART else []
        return [*free, *rows]

    def render_line(self, y: int) -> Strip:
        """One row of the screen; where there are fewer rows than room, they stand at the bottom."""
        place = self.scroll_offset.y + y - max(0, self.size.height - len(self._rows))
        if not 0 <= place < len(self._rows):
            return Strip.blank(self.scrollable_content_region.width, self.rich_style)
        strip = self._selected(place).crop_extend(0, self.scrollable_content_region.width, self.rich_style)
        return strip.apply_offsets(0, place)

    # ------------------------------------------------------------------ selecting with the mouse

    def get_selection(self, selection: Selection) -> tuple[str, str] | None:
        """The text under the selection."""
        return selection.extract("\n".join(row.text.rstrip() for row in self._rows)), "\n"

    def selection_updated(self, selection: Selection | None) -> None:
        """Show what is selected."""
        self.refresh()

    def _selected(self, place: int) -> Strip:
        """A row with what of it is selected in the colours of selections."""
        row, selection = self._rows[place], self.text_selection
        span = selection.get_span(place) if selection is not None else None
        if span is None:
            return row
        start, end = span
        text = row.text
        first, last = cell_len(text[:start]), cell_len(text if end == -1 else text[:end])
        chosen = row.crop(first, last).apply_style(self.screen.get_component_rich_style("screen--selection"))
        return Strip.join([row.crop(0, first), chosen, row.crop(last)])


def _content(line: Line) -> Content:
    """A line as it is shown: of a very long message the first rows."""
    rows = line.lit.words.split("\n")
    if len(rows) <= MOST_ROWS:
        return lit_content(line.lead, line.lit)
    kept = "\n".join(rows[:MOST_ROWS])
    lights = tuple(light for light in line.lit.lights if light.end <= len(kept))
    return lit_content(line.lead, Lit(kept, lights)) + Content(f"\n({len(rows) - MOST_ROWS} more lines)")
