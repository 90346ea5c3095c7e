"""The parts of the desk beside the conversation: the question, the side panels. Nothing here knows the talk."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from textual.app import ComposeResult
from textual.containers import Vertical, VerticalScroll
from textual.events import Click
from textual.message import Message
from textual.widgets import Static

from intake.desk.rows import Row

if TYPE_CHECKING:  # the panels stand before the interview is loaded
    from intake.desk.snapshot import Snapshot
    from intake.interview.question import Question


class QuestionCard(Vertical):
    """The question to send next, and why it matters."""

    def compose(self) -> ComposeResult:
        yield Static("", markup=False, id="say")
        yield Static("", markup=False, id="why")

    def show_question(self, question: "Question | None", idle: str) -> None:
        """Show it, or what to do when there is none."""
        say, why = self.query_one("#say", Static), self.query_one("#why", Static)
        if question is None:
            say.update(idle)
            why.update("")
            return
        options = "  ".join(f"({n}) {option.label}" for n, option in enumerate(question.options, 1))
        say.update(f"Ask: {question.say}" + (f"\n{options}" if options else ""))
        why.update(f"Why: {question.why}")


class Panel(VerticalScroll):
    """A titled list beside the conversation; shown where the screen is wide enough."""

    can_focus = False

    def __init__(self, title: str, id: str) -> None:
        super().__init__(id=id)
        self._head = title
        self._keys: dict[int, str] = {}

    def compose(self) -> ComposeResult:
        yield Static(self._head, markup=False, classes="panel-title")
        yield Vertical(classes="panel-rows")

    @dataclass
    class Picked(Message):
        """A row was clicked: the panel's id, and what the row is about."""

        panel: str
        key: str

    def on_click(self, event: Click) -> None:
        """The mouse does what the list on the panel's key would do."""
        row = event.widget
        key = self._keys.get(id(row), "") if row is not None else ""
        if key:
            self.post_message(self.Picked(str(self.id), key))

    def show_rows(self, rows: tuple[Row, ...]) -> None:
        """Replace what the list shows."""
        holder = self.query_one(".panel-rows", Vertical)
        lines = rows or (Row(key="", text="Nothing yet.", tone="aside"),)
        old = list(holder.children)
        with self.app.batch_update():
            for place, row in enumerate(lines):
                if place < len(old):
                    widget = old[place]
                    assert isinstance(widget, Static)  # the holder gets nothing else
                    widget.update(row.text)
                    widget.set_classes(f"row {row.tone}")
                else:
                    holder.mount(Static(row.text, markup=False, classes=f"row {row.tone}"))
            if len(old) > len(lines):
                holder.remove_children(old[len(lines) :])
        self._keys = {id(widget): row.key for widget, row in zip(holder.children, lines, strict=False)}


_LEGEND = Row(key="", text="v visitor, h heard, s staff, w works, n note, ~ assumed", tone="aside")


def panel_rows(shown: "Snapshot") -> dict[str, tuple[Row, ...]]:
    """What each side panel shows."""
    return {"facts": (_LEGEND, *shown.facts, *shown.assumed), "machines": shown.machines, "left": shown.to_ask}
