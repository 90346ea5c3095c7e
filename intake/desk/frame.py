"""Where things stand on the screen of a case. Loads nothing of the interview, so that it is there at once."""

from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import Container, Vertical
from textual.screen import Screen
from textual.widgets import Static

from intake.desk.conversation import Conversation
from intake.desk.keys import bindings, foot_rows
from intake.desk.panels import Panel, QuestionCard
from intake.desk.prompt import Prompt

WIDE, WIDEST = 110, 150
"""From so many columns on there are panels on one side, and on both."""

FIRST = "Paste the visitor's message, or press Enter for the first question."
"""What stands in place of the question while there is none."""


class CaseFrame(Screen[None]):
    """The conversation with the question below it, panels beside, the answer line and the keys at the foot."""

    CSS_PATH = "talk_screen.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [*bindings()]

    def compose(self) -> ComposeResult:
        yield Static("", markup=False, id="top")
        with Container(id="middle"):
            with Vertical(id="talk"):
                yield Conversation(id="conversation")
                yield QuestionCard(id="question")
            yield Panel("MACHINES  + fits  ? depends  - out", id="machines")
            yield Panel("FACTS", id="facts")
            yield Panel("SKETCH", id="sketch")
            yield Panel("TO ASK", id="left")
        yield Static("", markup=False, id="strip")
        yield Static("", markup=False, id="standing")
        yield Static("", markup=False, id="trouble")
        yield Prompt()
        yield Static("", markup=False, id="reading")
        yield Static("\n".join(foot_rows()), markup=False, id="keys")

    def on_resize(self) -> None:
        """Panels where there is room for them."""
        self.set_class(WIDE <= self.size.width < WIDEST, "wide")
        self.set_class(self.size.width >= WIDEST, "widest")
        self.set_class(self.size.height < 30, "low")
