"""The conversation: all of it is kept as data, and only the lines around the newest ones, or leafed to, are widgets."""

from dataclasses import dataclass

from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from intake.desk.lights import Lit
from intake.desk.tones import lit_content

MOST_LINES = 60
"""So many lines are mounted; a longer list slows every answer down."""

MOST_ROWS = 16
_LEAF = 40
_FURTHEST = 400
"""So many lines are mounted at most while somebody leafs back."""


@dataclass(frozen=True, slots=True)
class Line:
    """One line: who it is of (a class of the style sheet), what stands before the words, the words."""

    who: str
    lead: str
    lit: Lit


class Conversation(VerticalScroll):
    """What was said and understood, the newest at the bottom. Older lines come when somebody leafs back."""

    can_focus = False

    def __init__(self, id: str) -> None:
        super().__init__(id=id)
        self._lines: list[Line] = []
        self._first = 0
        """The number of the first line that is mounted."""

    @property
    def text(self) -> str:
        """All of it as plain text."""
        return "\n".join(line.lead + line.lit.words for line in self._lines)

    def on_mount(self) -> None:
        """Stay at the newest line."""
        self.anchor()

    def say(self, who: str, lines: tuple[str, ...]) -> None:
        """Add lines of one speaker."""
        self.add([Line(who, "", Lit(words)) for words in lines])

    def add(self, lines: list[Line]) -> None:
        """Add lines, and come to the newest one again."""
        if not lines:
            return
        self._lines += lines
        with self.app.batch_update():
            self.mount(*(_widget(line) for line in lines[-MOST_LINES:]))
            over = len(self.children) - MOST_LINES
            self.anchor()
            if over > 0:
                self.remove_children(list(self.children)[:over])
        self._first = max(0, len(self._lines) - MOST_LINES)
        self.call_after_refresh(self._redraw_bar)

    def on_resize(self) -> None:
        """What stands below has grown or shrunk."""
        self.call_after_refresh(self._redraw_bar)

    def _redraw_bar(self) -> None:
        """The library moves the bar of an anchored list without drawing it: it would show where one was."""
        self.vertical_scrollbar.refresh()

    def retell(self, lines: list[Line]) -> None:
        """These lines in place of all others."""
        with self.app.batch_update():
            self.remove_children()
            self._lines, self._first = [], 0
            self.add(lines)

    def light(self, lit: Lit) -> None:
        """Light up the newest line that has these words."""
        for place in range(len(self._lines) - 1, max(-1, len(self._lines) - 12), -1):
            line = self._lines[place]
            if line.lit.words == lit.words and line.who in ("visitor", "answer"):
                self._lines[place] = Line(line.who, line.lead, lit)
                behind = len(self._lines) - place  # counted from the end: the front may be on its way out
                widget = self.children[-behind] if behind <= len(self.children) else None
                if isinstance(widget, Static):
                    widget.update(_content(self._lines[place]))
                return

    def leaf(self, way: int) -> None:
        """A page back (-1) or forward (1); at the top older lines come."""
        if way < 0 and self.scroll_y <= 1 and self._first > 0 and len(self.children) < _FURTHEST:
            count = min(_LEAF, self._first)
            older = self._lines[self._first - count : self._first]
            first = self.children[0] if self.children else None
            self._first -= count
            self.release_anchor()
            self.mount(*(_widget(line) for line in older), before=first)
            if first is not None:
                self.call_after_refresh(self.scroll_to_widget, first, animate=False, top=True)
        self.scroll_relative(y=way * max(1, self.size.height - 2), animate=False)


def _widget(line: Line) -> Static:
    return Static(_content(line), markup=False, classes=f"line {line.who}")


def _content(line: Line) -> Content:
    """A line as it is shown: of a very long message the first rows; all of it stays in the talk."""
    rows = line.lit.words.split("\n")
    if len(rows) <= MOST_ROWS:
        return lit_content(line.lead, line.lit)
    kept = "\n".join(rows[:MOST_ROWS])
    lights = tuple(light for light in line.lit.lights if light.end <= len(kept))
    return lit_content(line.lead, Lit(kept, lights)) + Content(f"\n({len(rows) - MOST_ROWS} more lines)")
