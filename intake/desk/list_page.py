"""A list to choose from: typing narrows it down, Enter takes a line, Escape closes."""

from collections.abc import Callable, Mapping
from typing import ClassVar

from textual import events, on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.screen import ModalScreen
from textual.widgets import OptionList, Static
from textual.widgets.option_list import Option

from intake.desk.snapshot import Row

_CAPS = {"plus": "+"}


class ListPage(ModalScreen[str | None]):
    """Hands up the key of the line taken, or "<verb>:<key>" for one of the further keys, None for nothing.

    `more`: further keys, each with its word at the foot and the verb that is handed up ("delete": ("drop it", "drop")).
    `find`: gives the rows for words typed, where they are too many to be handed over; else the rows are narrowed here.
    """

    CSS_PATH = "pages.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [Binding("escape,f2,f3,f4,ctrl+o,ctrl+r", "dismiss", "close")]

    def __init__(
        self,
        title: str,
        rows: tuple[Row, ...],
        hint: str,
        *,
        more: Mapping[str, tuple[str, str]] | None = None,
        find: Callable[[str], tuple[Row, ...]] | None = None,
    ) -> None:
        super().__init__()
        self._title, self._rows, self._hint = title, rows, hint
        self._more, self._find = dict(more or {}), find
        self._words = ""
        self._shown = rows

    def compose(self) -> ComposeResult:
        yield Static(self._head(), markup=False, classes="page-title", id="page-head")
        yield OptionList(*(Option(row.text) for row in self._rows), markup=False, id="page-list")
        yield Static("Nothing here.", markup=False, id="page-none")
        more = "".join(f"   {_CAPS.get(key, key.capitalize())} {word}" for key, (word, _) in self._more.items())
        yield Static(f"Enter {self._hint}{more}   type to find   Esc close", markup=False, classes="keys")

    def on_mount(self) -> None:
        """The list has the keys."""
        self._show()

    def _head(self) -> str:
        return f"{self._title}   find: {self._words}_" if self._words else self._title

    def on_key(self, event: events.Key) -> None:
        """What is typed narrows the list down."""
        if event.key in self._more:
            self._take(self._more[event.key][1])
        elif event.key == "backspace":
            self._narrow(self._words[:-1])
        elif event.is_printable and event.character:
            self._narrow(self._words + event.character)
        else:
            return
        event.stop()
        event.prevent_default()

    def _narrow(self, words: str) -> None:
        self._words = words
        wanted = words.casefold().split()
        if self._find is not None:
            self._shown = self._find(words)
        else:
            self._shown = tuple(row for row in self._rows if all(word in row.text.casefold() for word in wanted))
        self.query_one("#page-head", Static).update(self._head())
        listed = self.query_one(OptionList)
        listed.clear_options()
        listed.add_options([Option(row.text) for row in self._shown])
        listed.highlighted = 0 if self._shown else None
        self._show()

    def _show(self) -> None:
        self.query_one(OptionList).display = bool(self._shown)
        self.query_one("#page-none").display = not self._shown
        if self._shown:
            self.query_one(OptionList).focus()  # what is not shown loses the keys

    @on(OptionList.OptionSelected)
    def take(self, event: OptionList.OptionSelected) -> None:
        """Hand up the key of the line."""
        self.dismiss(self._shown[event.option_index].key)

    def _take(self, verb: str) -> None:
        place = self.query_one(OptionList).highlighted
        if place is not None and self._shown:
            self.dismiss(f"{verb}:{self._shown[place].key}")
