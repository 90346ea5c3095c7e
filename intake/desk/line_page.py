"""One line to type, over the desk."""

from typing import ClassVar

from textual import on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.screen import ModalScreen
from textual.widgets import Input, Static

from intake.spec.clean import one_line


class LinePage(ModalScreen[str | None]):
    """Asks for one line; hands it up clean, None for Escape."""

    CSS_PATH = "pages.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [Binding("escape", "dismiss", "close")]

    def __init__(self, title: str) -> None:
        super().__init__()
        self._title = title

    def compose(self) -> ComposeResult:
        yield Static(self._title, markup=False, classes="page-title")
        line = Input(id="page-line", compact=True)
        line.cursor_blink = False
        yield line
        yield Static("Enter take it   Esc close", markup=False, classes="keys")

    @on(Input.Submitted)
    def take(self, event: Input.Submitted) -> None:
        """Hand up the line."""
        self.dismiss(one_line(event.value))
