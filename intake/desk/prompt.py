"""The answer line: what is understood lights up in the words; Enter sends, Tab puts right, a paste arrives whole."""

from dataclasses import dataclass
from typing import ClassVar

from rich.text import Text
from textual import events
from textual.message import Message
from textual.widgets import TextArea

from intake.desk.lights import Lit, Tone
from intake.spec.clean import LONGEST, clean

_HINT = "Paste or type what they say. Enter takes it, Tab mends it, / for commands."


class Prompt(TextArea):
    """Where the visitor's words are typed or pasted. Hands them up; knows nothing of the talk."""

    COMPONENT_CLASSES: ClassVar[set[str]] = {"prompt--fact", "prompt--doubt", "prompt--unread", "prompt--ask"}

    @dataclass
    class Said(Message):
        """The words that were sent."""

        text: str

    @dataclass
    class Mend(Message):
        """The words, or those sent last where there are none, are to be put right."""

        text: str

    @dataclass
    class Pasted(Message):
        """A paste longer than one message may be."""

        text: str

    def __init__(self) -> None:
        super().__init__(
            soft_wrap=True,
            compact=True,
            id="prompt",
            tab_behavior="focus",
            placeholder=_HINT,
            highlight_cursor_line=False,  # it would lie over the lights
        )
        self.cursor_blink = False  # each blink repaints the line, which is slow over a network
        self._lit = Lit("")
        self._sent: list[str] = []
        self._recalled = 0

    def light(self, lit: Lit) -> None:
        """Light up what was understood, unless the words have changed since."""
        if lit.words == self.text:
            self._lit = lit
            self.notify_style_update()  # lines are remembered as they were drawn
            self.refresh()

    @property
    def lit(self) -> Lit:
        """The words with what is lit in them now."""
        return self._lit if self._lit.words == self.text else Lit(self.text)

    def picked(self) -> tuple[int, int] | None:
        """The place of the words selected, or of the word that the cursor stands in; None at the end of the text."""
        start, end = sorted((self._place(self.selection.start), self._place(self.selection.end)))
        text = self.text
        if start == end:
            if not text[end:].strip() or not text[end : end + 1].strip():
                return None
            while start > 0 and not text[start - 1].isspace():
                start -= 1
            while end < len(text) and not text[end].isspace():
                end += 1
        said = text[start:end]
        start += len(said) - len(said.lstrip())
        end -= len(said) - len(said.rstrip())
        return (start, end) if start < end else None

    def _place(self, location: tuple[int, int]) -> int:
        row, column = location
        return sum(len(self.document.get_line(n)) + 1 for n in range(row)) + column

    def get_line(self, line_index: int) -> Text:
        """One line with its lights."""
        line = super().get_line(line_index)
        if self._lit.words != self.text or not self._lit.lights:
            return line
        start = sum(len(self.document.get_line(n)) + 1 for n in range(line_index))
        for light in self._lit.lights:
            if light.start < start + len(line) and light.end > start:
                style = self.get_component_rich_style(_CLASSES[light.tone], partial=True)
                line.stylize(style, max(0, light.start - start), max(0, light.end - start))
        return line

    async def _on_key(self, event: events.Key) -> None:
        if event.key in ("enter", "tab"):
            event.stop()
            event.prevent_default()
            text = self.text
            if event.key == "tab":
                self.post_message(self.Mend(text))
                return
            self.clear()
            self._sent += [text] if text.strip() else []
            self._recalled = 0
            self.post_message(self.Said(text))
            return
        if event.key in ("ctrl+j", "shift+enter"):
            event.stop()
            event.prevent_default()
            self.insert("\n")
            return
        if event.key in ("up", "down") and self._recall(-1 if event.key == "up" else 1):
            event.stop()
            event.prevent_default()
            return
        await super()._on_key(event)

    def _recall(self, way: int) -> bool:
        """Leaf through what was sent, from an empty line on. False where the arrow only moves the cursor."""
        shown = self._sent[-self._recalled] if self._recalled else ""
        if self.text != shown or not self._sent:
            return False
        self._recalled = min(max(self._recalled - way, 0), len(self._sent))
        self.text = self._sent[-self._recalled] if self._recalled else ""
        self.move_cursor(self.document.end)
        return True

    async def _on_paste(self, event: events.Paste) -> None:
        event.stop()
        event.prevent_default()
        if len(event.text) > LONGEST:
            self.post_message(self.Pasted(event.text))
            return
        self.insert(clean(event.text))


_CLASSES: dict[Tone, str] = {tone: f"prompt--{tone}" for tone in ("fact", "doubt", "unread", "ask")}
