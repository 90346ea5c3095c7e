"""The least that a talk on a screen can be: one line to type and a log. What the desk is measured against.

`python tests/bench/bare_app.py [log|area] [LINES]`: `log` is an Input and a RichLog with so many lines in it already,
`area` a TextArea alone.
"""

import sys

from textual import on
from textual.app import App, ComposeResult
from textual.widgets import Input, RichLog, TextArea


class Log(App[None]):
    """Each line sent goes into the log, with one below it."""

    def compose(self) -> ComposeResult:
        yield RichLog()
        line = Input(placeholder="BARE-READY")
        line.cursor_blink = False
        yield line

    def on_mount(self) -> None:
        """Fill the log, and be ready to type."""
        log = self.query_one(RichLog)
        for number in range(LINES):
            log.write(f"line {number} of a talk that has gone on for a while")
        self.query_one(Input).focus()

    @on(Input.Submitted)
    def take(self, event: Input.Submitted) -> None:
        """Echo."""
        log = self.query_one(RichLog)
        log.write(f"visitor: {event.value}")
        log.write("heard")
        event.input.value = ""


class Area(App[None]):
    """Words on several lines, nothing else."""

    def compose(self) -> ComposeResult:
        area = TextArea(placeholder="BARE-READY")
        area.cursor_blink = False
        yield area

    def on_mount(self) -> None:
        """Be ready to type."""
        self.query_one(TextArea).focus()


LINES = int(sys.argv[2]) if len(sys.argv) > 2 else 0

if __name__ == "__main__":
    (Area() if sys.argv[1:2] == ["area"] else Log()).run()
