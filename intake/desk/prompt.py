"""The answer line: Enter sends, Ctrl+J starts a new line, a paste arrives whole."""

from dataclasses import dataclass

from textual import events
from textual.message import Message
from textual.widgets import TextArea

from intake.spec.clean import LONGEST, clean


class Prompt(TextArea):
    """Where the visitor's words are typed or pasted. Hands them up; knows nothing of the talk."""

    @dataclass
    class Said(Message):
        """The words that were sent."""

        text: str

    @dataclass
    class Cut(Message):
        """A paste was longer than one message may be: so many characters were taken."""

        taken: int

    def __init__(self) -> None:
        super().__init__(soft_wrap=True, compact=True, id="prompt", tab_behavior="focus")
        self.cursor_blink = False  # each blink repaints the line, which is slow over a network

    async def _on_key(self, event: events.Key) -> None:
        if event.key == "enter":
            event.stop()
            event.prevent_default()
            text = self.text
            self.clear()
            self.post_message(self.Said(text))
            return
        if event.key in ("ctrl+j", "shift+enter"):
            event.stop()
            event.prevent_default()
            self.insert("\n")
            return
        await super()._on_key(event)

    async def _on_paste(self, event: events.Paste) -> None:
        event.stop()
        event.prevent_default()
        if len(event.text) > LONGEST:
            self.post_message(self.Cut(LONGEST))
        self.insert(clean(event.text))
