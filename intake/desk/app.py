"""Opens the desk on a case: the app holds the screens and the signals, nothing else."""

import asyncio
import signal
from collections.abc import Iterable
from functools import partial

from textual.app import App, SystemCommand
from textual.screen import Screen

from intake.casebook import new_id
from intake.desk.keeping import Keeper, resume
from intake.desk.keys import KEYS
from intake.desk.pages import Choice, SurePage
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

    def get_system_commands(self, screen: Screen[object]) -> Iterable[SystemCommand]:
        """The command palette: every key of the desk, the colours, leaving."""
        if isinstance(screen, TalkScreen):
            for key in KEYS:
                yield SystemCommand(f"{key.word} ({key.cap})", key.does, partial(screen.run_action, key.action))
        yield SystemCommand("colours", "Choose light or dark colours", self.action_change_theme)
        yield SystemCommand("leave (Ctrl+Q)", "Leave the desk", partial(self.run_action, "quit"))

    async def action_quit(self) -> None:
        """Ask before leaving."""
        if isinstance(self.screen, SurePage):
            return
        kept = f"The talk is kept as {self._case}." if self._case else "The talk has no name and is NOT kept."
        kept = "NOT SAVED: the book could not be written." if self._steps.trouble else kept
        self.push_screen(SurePage(Choice(f"Leave the desk? {kept}", "leave")), self._left)

    def _left(self, sure: bool | None) -> None:
        if sure:
            self.exit()


def open_desk(case: str | None = None, *, mouse: bool = True) -> int:
    """Open the desk on a kept case, or a new one. Returns the exit code. Raises BookError when the book is damaged."""
    name = case or new_id()
    talk = (resume(name) if case else None) or Interview()
    Desk(talk, Keeper(name), name).run(mouse=mouse)
    return 0
