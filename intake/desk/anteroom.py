"""The desk's first frame: it stands at once, takes words and keys, and hands them on when the case is loaded."""

from collections.abc import Callable

from textual import on
from textual.app import ComposeResult
from textual.containers import Container, Vertical
from textual.screen import Screen
from textual.widgets import Static

from intake.desk.conversation import Conversation
from intake.desk.frame import FIRST, WIDE, CaseFrame
from intake.desk.keys import foot_rows
from intake.desk.panels import QuestionCard
from intake.desk.prompt import Prompt
from intake.desk.welcome import WELCOME

Deed = Callable[[Screen[None]], object]
"""Something that was done before there was a case to do it to."""


class Anteroom(CaseFrame):
    """Looks like the screen of a new case, or of a kept one that is being opened. `name`: that case, "" for none."""

    def __init__(self, case: str = "") -> None:
        super().__init__()
        self._case = case
        self._deeds: list[Deed] = []

    def compose(self) -> ComposeResult:
        """The frame without what is empty as long as there is no case: each part costs time."""
        if self.app.size.width >= WIDE:
            yield from super().compose()
            return
        yield Static("", markup=False, id="top")
        with Container(id="middle"), Vertical(id="talk"):
            yield Conversation(id="conversation")
            yield QuestionCard(id="question")
        yield Prompt()
        yield Static("\n".join(foot_rows()), markup=False, id="keys")

    def on_mount(self) -> None:
        """Greet; words can be typed from here on."""
        self.query_one(Prompt).focus()
        self.query_one("#top", Static).update(f"Opening {self._case} ..." if self._case else "New talk")
        if not self._case:
            self.query_one(Conversation).say("desk", WELCOME)
            self.query_one(QuestionCard).show_question(None, FIRST)

    def hand_over(self, screen: Screen[None]) -> None:
        """All that was typed, sent and pressed here goes to the screen of the case, in its order."""
        left = self.query_one(Prompt).text
        self.query_one(Prompt).clear()
        prompt = screen.query_one(Prompt)
        for deed in self._deeds:
            deed(screen)
        if left:
            prompt.text = "\n".join(words for words in (prompt.text, left) if words)  # a draft was kept, maybe
            prompt.move_cursor(prompt.document.end)

    @on(Prompt.Said)
    @on(Prompt.Mend)
    @on(Prompt.Pasted)
    def _keep(self, event: Prompt.Said | Prompt.Mend | Prompt.Pasted) -> None:
        again = type(event)(event.text)
        self._deeds.append(lambda screen: screen.query_one(Prompt).post_message(again))

    def _later(self, action: str) -> None:
        self._deeds.append(lambda screen: screen.run_worker(screen.run_action(action)))

    def action_command(self, word: str) -> None:
        """A key that stands for a command."""
        self._later(f"command({word!r})")

    def action_page(self, name: str) -> None:
        """A key that opens a page."""
        self._later(f"page({name!r})")

    def action_note(self) -> None:
        """The words as a note."""
        self._later("note")

    def action_next_case(self) -> None:
        """The next of the cases that are open."""
        self._later("next_case")

    def action_leaf(self, way: int) -> None:
        """Leaf through the conversation."""
        self._later(f"leaf({way})")
