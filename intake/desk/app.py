"""Opens the desk on a case: the app holds the screens and the signals, nothing else."""

import asyncio
import signal

from textual.app import App

from intake.casebook import new_id
from intake.desk.keeping import Keeper, resume
from intake.desk.steps import Steps
from intake.desk.talk_screen import TalkScreen
from intake.talk import Interview


class Desk(App[None]):
    """The full-screen desk."""

    TITLE = "intake"
    ENABLE_COMMAND_PALETTE = True

    def __init__(self, talk: Interview, keeper: Keeper | None = None, case: str | None = None) -> None:
        super().__init__()
        self._steps, self._case = Steps(talk, keeper), case

    def on_mount(self) -> None:
        """Show the talk; leave the terminal as it was when the program is told to stop."""
        loop = asyncio.get_running_loop()
        for number in (signal.SIGTERM, signal.SIGHUP):
            loop.add_signal_handler(number, self.exit)
        self.push_screen(TalkScreen(self._steps, self._case))

    async def action_quit(self) -> None:
        """Ctrl+Q and the palette's quit: ask first, as a paste can hold that key."""
        if isinstance(self.screen, TalkScreen):
            self.screen.ask_to_leave()


def open_desk(case: str | None = None, *, mouse: bool = True) -> int:
    """Open the desk on a kept case, or a new one. Returns the exit code. Raises BookError when the book is damaged."""
    name = case or new_id()
    talk = (resume(name) if case else None) or Interview()
    Desk(talk, Keeper(name), name).run(mouse=mouse)
    return 0
