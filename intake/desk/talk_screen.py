"""The desk's one screen: the talk in the middle, what it came to beside it. Messages go down to the steps."""

import asyncio
from collections.abc import Callable
from typing import ClassVar

from textual import on, work
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, Vertical
from textual.screen import Screen
from textual.widgets import Static

from intake.advice import next_question_message
from intake.desk.machine_page import machine_page
from intake.desk.pages import Choice, ListPage, SurePage, TextPage
from intake.desk.panels import Conversation, Panel, QuestionCard, panel_rows
from intake.desk.prompt import Prompt
from intake.desk.snapshot import Snapshot, advice_page, open_point_lines
from intake.desk.steps import Steps
from intake.desk.welcome import HELP, SAMPLE, WELCOME
from intake.spec.clean import clean

KEYS = "F1 help F2 facts F3 machines F4 to ask F5 advice F6 unknown F7 later F8 back"
_WIDE = 110


class TalkScreen(Screen[None]):
    """Shows a talk and passes on what is typed; all judgement is below."""

    CSS_PATH = "talk_screen.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("f1", "help", "help", priority=True),
        Binding("f2", "facts", "facts", priority=True),
        Binding("f3", "machines", "machines", priority=True),
        Binding("f4", "to_ask", "to ask", priority=True),
        Binding("f5", "advice", "advice", priority=True),
        Binding("f6", "step('unknown')", "visitor does not know", priority=True),
        Binding("f7", "step('later')", "visitor will check", priority=True),
        Binding("f8", "step('back')", "back to the last question", priority=True),
        Binding("f9", "step('undo')", "undo", priority=True),
        Binding("f12", "step('redo')", "redo", priority=True),
        Binding("ctrl+y", "copy_question", "copy the question", priority=True),
        Binding("ctrl+n", "note", "keep the typed words as a note", priority=True),
        Binding("ctrl+t", "sample", "try a sample message", priority=True),
    ]

    def __init__(self, steps: Steps, case: str | None) -> None:
        super().__init__()
        self.steps, self._case = steps, case
        self.shown: Snapshot | None = None
        self._turn = asyncio.Lock()
        self._waiting = 0

    def compose(self) -> ComposeResult:
        yield Static("", markup=False, id="top")
        with Horizontal(id="middle"):
            with Vertical(id="talk"):
                yield Conversation(id="conversation")
                yield QuestionCard(id="question")
            with Vertical(id="side"):
                yield Panel("MACHINES", id="machines")
                yield Panel("FACTS", id="facts")
                yield Panel("TO ASK", id="left")
        yield Static("", markup=False, id="standing")
        yield Prompt()
        yield Static(KEYS, markup=False, id="keys")

    def on_mount(self) -> None:
        """Greet, and show what stands."""
        self.query_one(Prompt).focus()
        if not self.steps.talk.events:
            self._say("desk", WELCOME)
        self._run(self.steps.start)

    def on_resize(self) -> None:
        """Side panels where there is room for them."""
        self.set_class(self.size.width >= _WIDE, "wide")

    # ------------------------------------------------------------------ steps, off the screen's thread

    @work(group="talk")
    async def _run(self, step: Callable[[], Snapshot]) -> None:
        """One step of the talk at a time, in the order in which they came; typing goes on meanwhile."""
        self._waiting += 1
        self._show_top()
        try:
            async with self._turn:
                shown = await asyncio.to_thread(step)
        finally:
            self._waiting -= 1
        self._show(shown)

    def _show(self, shown: Snapshot) -> None:
        self.shown = shown
        self._say("desk", shown.lines)
        self.query_one(QuestionCard).show_question(shown.question)
        for name, rows in panel_rows(shown).items():
            self.query_one(f"#{name}", Panel).show_rows(rows)
        self.query_one("#standing", Static).update(shown.standing)
        self._show_top()

    def _show_top(self) -> None:
        title = self.shown.title if self.shown is not None else ""
        name = self._case or "not kept: no name"
        trouble = self.shown.trouble if self.shown is not None else None
        saved = f"NOT SAVED: {trouble}" if trouble else f"case {name}" + (", saved" if self._case else "")
        busy = "  ... working" if self._waiting else ""
        self.query_one("#top", Static).update(f"{title}  |  {saved}{busy}" if title else f"{saved}{busy}")

    def _say(self, who: str, lines: tuple[str, ...]) -> None:
        self.query_one(Conversation).say(who, lines)

    # ------------------------------------------------------------------ what is typed

    @on(Prompt.Said)
    def take(self, event: Prompt.Said) -> None:
        """Words from the answer line."""
        words = clean(event.text).strip()
        if words:
            self._say("visitor", (f"visitor: {words}",))
            self._run(lambda: self.steps.say(words))

    def action_step(self, name: str) -> None:
        """A key that answers or takes back."""
        self._run(getattr(self.steps, name))

    def action_sample(self) -> None:
        """Put a sample message on the answer line, to be sent with Enter."""
        self.query_one(Prompt).text = SAMPLE

    def action_note(self) -> None:
        """Keep what is typed as a note."""
        prompt = self.query_one(Prompt)
        words = prompt.text.strip()
        if words:
            prompt.clear()
            self._run(lambda: self.steps.note(words))
        else:
            self.notify("Type the note first, then Ctrl+N.", markup=False)

    # ------------------------------------------------------------------ pages

    def action_help(self) -> None:
        """The help page."""
        self.app.push_screen(TextPage("Help", HELP))

    def action_advice(self) -> None:
        """Recommendation, open points, samples, cautions."""
        self._advice()

    @work(group="talk")
    async def _advice(self) -> None:
        async with self._turn:
            points = await asyncio.to_thread(open_point_lines, self.steps.talk)
        if self.shown is not None:
            self.app.push_screen(TextPage("Advice as it stands", advice_page(self.shown, points)))

    def action_facts(self) -> None:
        """The facts; Enter asks one again, to change it."""
        rows = () if self.shown is None else (*self.shown.facts, *self.shown.assumed)
        self.app.push_screen(ListPage("Facts and who said them", rows, "say it anew"), self._change)

    def _change(self, key: str | None) -> None:
        if key is not None:
            self._run(lambda: self.steps.change(key))

    def action_machines(self) -> None:
        """The machines; Enter shows one in full."""
        rows = () if self.shown is None else self.shown.machines
        self.app.push_screen(ListPage("Machines: fits, open, out", rows, "show all of it"), self._machine)

    def _machine(self, name: str | None) -> None:
        if name is not None and self.shown is not None:
            self.app.push_screen(TextPage("Machine in full", machine_page(name, self.shown)))

    def action_to_ask(self) -> None:
        """What is still to ask; Enter asks it now."""
        rows = () if self.shown is None else self.shown.to_ask
        self.app.push_screen(ListPage("Still to ask", rows, "ask it now"), self._put)

    def _put(self, id: str | None) -> None:
        if id is not None:
            self._run(lambda: self.steps.put(id))

    def action_copy_question(self) -> None:
        """Copy the question for the visitor, by way of the terminal, and show it to select."""
        if self.shown is None or self.shown.question is None:
            self.notify("No question is open.", markup=False)
            return
        text = next_question_message(self.shown.question)
        self.app.copy_to_clipboard(text)
        self.app.push_screen(TextPage("Copied. If it is not in the clipboard, select it here", text))

    def ask_to_leave(self) -> None:
        """Ask before leaving."""
        kept = "The talk is kept." if self._case else "The talk has no name and is NOT kept."
        self.app.push_screen(SurePage(Choice(f"Leave the desk? {kept}", "leave")), self._left)

    def _left(self, sure: bool | None) -> None:
        if sure:
            self.app.exit()
