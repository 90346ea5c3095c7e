"""Opens the desk: the app holds the cases that are open and the signals, nothing else."""

import asyncio
import os
import signal
import sys
from collections.abc import Iterable
from functools import partial
from itertools import count
from typing import TYPE_CHECKING, Any

from rich.text import Text
from textual import events
from textual.app import App, SystemCommand
from textual.screen import Screen

from intake.desk.anteroom import Anteroom
from intake.desk.inks import inks
from intake.desk.keys import KEYS
from intake.desk.orphan import leave_with_the_server
from intake.desk.pages import Choice, SurePage
from intake.desk.prompt import Prompt
from intake.spec.clean import clean

if TYPE_CHECKING:  # what the first frame does not need is loaded behind it
    from intake.desk.keeping import Keeper
    from intake.desk.opened import Opened
    from intake.desk.sitting import Sitting
    from intake.desk.talk_screen import TalkScreen
    from intake.talk import Interview

_NAME = "case {}"
"""What a case's screen is called in the app: only a screen with a name stays as it is behind another one."""


_TURN_S = 0.001
"""So long a thread that sizes holds the drawing of the screen up at most, at each of its turns [s]."""

_PAGE_S = 0.05
"""How often it is looked whether a page over the first frame was closed [s]."""


def _loaded(name: str, sitting: str | None) -> "Opened":
    """The case to begin with. Half a second of modules are loaded here, away from the screen's own thread."""
    from intake.desk.opened import open_cases

    return open_cases(name or None, sitting)


class Desk(App[None]):
    """The full-screen desk. Each open case has a screen of its own; one of them is in front."""

    TITLE = "intake"
    ENABLE_COMMAND_PALETTE = True

    def __init__(
        self,
        talk: "Interview | None" = None,
        keeper: "Keeper | None" = None,
        *,
        opening: str = "",
        sitting: str | None = None,
    ) -> None:
        """Either a talk that is there already, or a case to be loaded behind the first frame.

        `opening`: its name, "" for a new one. `sitting`: of a browser, which goes on with all that it had open.
        """
        super().__init__()
        self._numbers = count(1)
        self._opening, self._sitting_id, self._served = opening, sitting, sitting is not None
        self._cases: list[TalkScreen] = []
        self._sitting: Sitting | None = None
        self.trouble: Exception | None = None
        """Why the case to begin with could not be opened."""
        if talk is not None:
            from intake.desk.opened import case_screen

            self._cases.append(case_screen(talk, keeper))

    @property
    def front(self) -> "TalkScreen":
        """The case in front."""
        return self._cases[0]

    @property
    def cases(self) -> "list[TalkScreen]":
        """The open cases, the one in front first, the others in the order in which they come next."""
        return list(self._cases)

    def on_mount(self) -> None:
        """Show the talk; leave the terminal as it was when the program is told to stop."""
        loop = asyncio.get_running_loop()
        for number in (signal.SIGTERM, signal.SIGHUP):
            loop.add_signal_handler(number, self.exit)
        if self._cases:
            self._install()
            self.push_screen(self.front)
        else:
            self.call_after_refresh(lambda: self.run_worker(self._open(), group="opening"))

    def get_default_screen(self) -> Screen[Any]:
        """Where nothing is loaded yet, the first screen is the one on which words can be typed meanwhile."""
        return super().get_default_screen() if self._cases else Anteroom(self._opening)

    def _install(self) -> None:
        for screen in self._cases:
            self.install_screen(screen, _NAME.format(next(self._numbers)))

    async def _open(self) -> None:
        """Load the interview and the case while the first frame stands, and bring the case to the front."""
        try:
            opened = await asyncio.to_thread(_loaded, self._opening, self._sitting_id)
        except Exception as trouble:
            self.trouble = trouble  # the command line tells it in one line
            self.exit()
            return
        from intake.desk.opened import case_screen

        self._cases = [case_screen(talk, keeper, served=self._served) for talk, keeper in opened.cases]
        self._sitting = opened.sitting
        self._install()
        while not isinstance(before := self.screen, Anteroom):  # a page lies over it
            await asyncio.sleep(_PAGE_S)
        await self.push_screen(self.front)
        self._show_tabs()
        before.hand_over(self.front)

    async def on_event(self, event: events.Event) -> None:
        """A paste is made clean wherever it goes: lines of the library's own, as the palette's, keep codes in it."""
        if isinstance(event, events.Paste):
            event.text = clean(event.text, len(event.text))
        await super().on_event(event)

    def get_css_variables(self) -> dict[str, str]:
        """The theme's colours, and inks made from them that can be read on every ground."""
        variables = super().get_css_variables()
        return {**variables, **inks(variables)}

    # ------------------------------------------------------------------ several cases

    def on_talk_screen_wanted(self, event: "TalkScreen.Wanted") -> None:
        """Bring a case to the front: one that is open, one of the book, or a new one."""
        from intake.casebook import BookError, new_id
        from intake.desk.opened import called_screen

        if event.go.onward:
            self._next_case()
            return
        name = event.go.case
        there = next((screen for screen in self._cases if name and screen.steps.work.name == name), None)
        keep = self.front.steps.work.keeper is not None
        if there is not None and event.go.anew:
            self._cases.remove(there)
            there = None
        try:
            screen = there or called_screen(name or new_id(), keep, served=self._served)
        except BookError as trouble:
            self.notify(str(trouble), severity="error", markup=False)
            return
        if there is not None:
            self._cases.remove(there)
        else:
            self.install_screen(screen, _NAME.format(next(self._numbers)))
        self._to_front(screen)

    def _next_case(self) -> None:
        """The case that has waited longest comes to the front."""
        if len(self._cases) > 1:
            self._to_front(self._cases.pop())
        else:
            self.notify("One case is open. Ctrl+O goes on with another one or begins one.", markup=False)

    def _to_front(self, screen: "TalkScreen") -> None:
        self._cases.insert(0, screen)
        self._show_tabs()
        self.switch_screen(screen)

    def on_talk_screen_changed(self) -> None:
        """Something that the row of open cases shows."""
        self._show_tabs()

    def _show_tabs(self) -> None:
        """The row of open cases on each screen, the one in front in brackets."""
        names = sorted(screen.steps.work.name for screen in self._cases)
        for screen in self._cases:
            own = screen.steps.work.name
            screen.steps.work.beside = names
            screen.tabs = " ".join(f"[{name}]" if name == own else name for name in names) if len(names) > 1 else ""
        if self.front.is_mounted:
            self.front.show_top()
        if self._sitting is not None:
            open_cases = [screen.steps.work.name for screen in self._cases if screen.steps.work.name]
            self._sitting.remember(open_cases, self.front.steps.work.name)

    # ------------------------------------------------------------------ palette, leaving

    def get_system_commands(self, screen: Screen[object]) -> Iterable[SystemCommand]:
        """The command palette: every key and every command of the desk, the colours, leaving."""
        if screen in self._cases:
            from intake.desk.commands.table import COMMANDS

            for key in KEYS:
                yield SystemCommand(f"{key.word} ({key.cap})", key.does, partial(screen.run_action, key.action))
            for command in COMMANDS:
                put = partial(self._put_on_line, f"/{command.word} ")
                yield SystemCommand(command.usage, command.does, put)
        yield SystemCommand("colours", "Choose light or dark colours", self.action_change_theme)
        yield SystemCommand("leave (^Q)", "Leave the desk", partial(self.run_action, "quit"))

    def _put_on_line(self, words: str) -> None:
        """A command on the answer line, to be finished and sent with Enter; words already there are kept behind it."""
        prompt = self.front.query_one(Prompt)
        prompt.text = words + prompt.text
        prompt.move_cursor(prompt.document.end)

    async def action_quit(self) -> None:
        """Ask before leaving."""
        if isinstance(self.screen, SurePage):
            return
        unsaved = [screen for screen in self._cases if screen.steps.trouble]
        names = ", ".join(screen.steps.work.name for screen in self._cases if screen.steps.work.name)
        kept = f"What was said is kept as {names}." if names else "The talk has no name and is NOT kept."
        kept = "Nothing was said yet." if not self._cases else kept
        kept = "NOT SAVED: the book could not be written." if unsaved else kept
        typed = " Words on the answer line were not sent." if self._typed() else ""
        self.push_screen(SurePage(Choice(f"Leave the desk? {kept}{typed}", "leave")), self._left)

    def _typed(self) -> bool:
        """True where words stand on an answer line that were not sent."""
        screens = [screen for screen in (*self._cases, *self.screen_stack) if screen.is_mounted]
        return any(prompt.text.strip() for screen in screens for prompt in screen.query(Prompt))

    def _fatal_error(self) -> None:
        """A fault in a screen itself: no page of code for the person, but what is safe and how to go on."""
        if os.environ.get("INTAKE_DEBUG") == "1":
            super()._fatal_error()
            return
        names = ", ".join(screen.steps.work.name for screen in self._cases if screen.steps.work.name)
        kept = f" What was said is kept; go on with: intake desk {names.split(', ')[0]}" if names else ""
        self.panic(Text(f"The desk had to stop ({type(self._exception).__name__}).{kept}"))

    def _left(self, sure: bool | None) -> None:
        if sure:
            self.exit()


def open_desk(case: str | None = None, *, mouse: bool = True, sitting: str | None = None) -> int:
    """Open the desk on a kept case, or a new one. Returns the exit code. Raises BookError when the book is damaged.

    `sitting`: of a browser, which goes on with the cases it had open.
    """
    sys.setswitchinterval(_TURN_S)
    desk = Desk(opening=case or "", sitting=sitting)
    if sitting:
        leave_with_the_server()
    desk.run(mouse=mouse)
    if desk.trouble is not None:
        raise desk.trouble
    return 0
