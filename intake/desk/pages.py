"""Pages laid over the desk: text to read, select and copy, and a question with two ways out."""

from dataclasses import dataclass
from typing import ClassVar

from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.screen import ModalScreen
from textual.widgets import Static, TextArea

from intake.desk.copying import copy_out


class TextPage(ModalScreen[None]):
    """A page of text. Escape closes it; Ctrl+Y copies all of it."""

    CSS_PATH = "pages.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("escape,q,f1,f5", "dismiss", "close"),
        Binding("ctrl+y", "copy", "copy all"),
    ]

    def __init__(self, title: str, text: str) -> None:
        super().__init__()
        self._title, self._text = title, text

    def compose(self) -> ComposeResult:
        yield Static(self._title, markup=False, classes="page-title")
        yield TextArea(self._text, read_only=True, soft_wrap=True, show_line_numbers=False, id="page-text")
        yield Static("Esc close   Ctrl+Y copy all   arrows and PgUp/PgDn move", markup=False, classes="keys")

    def action_copy(self) -> None:
        """Copy the page by way of the terminal; some terminals refuse without a word."""
        copy_out(self.app, self._text)
        self.notify("Sent to the clipboard. Nothing there? Select the text here with the mouse.", markup=False)


@dataclass(frozen=True, slots=True)
class Choice:
    """A question with two ways out."""

    title: str
    yes: str
    no: str = "no"


class SurePage(ModalScreen[bool]):
    """Asks before something that cannot be taken back on the screen. Hands up None for Escape."""

    CSS_PATH = "pages.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("y,enter", "answer(True)", "yes"),
        Binding("n", "answer(False)", "no"),
        Binding("escape", "dismiss", "close"),
    ]

    def __init__(self, choice: Choice) -> None:
        super().__init__()
        self._choice = choice

    def compose(self) -> ComposeResult:
        yield Static(self._choice.title, markup=False, classes="page-title")
        yield Static(f"Enter or y: {self._choice.yes}   n: {self._choice.no}   Esc: back", markup=False, classes="keys")

    def action_answer(self, sure: bool) -> None:
        """Hand up the answer."""
        self.dismiss(sure)
