"""The desk's one screen: the talk in the middle, what it came to beside it. Messages go down to the steps."""

import asyncio
from dataclasses import dataclass
from typing import ClassVar

from textual import on, work
from textual.app import ComposeResult
from textual.binding import BindingType
from textual.containers import Container, Vertical
from textual.message import Message
from textual.screen import Screen
from textual.widgets import Static

from intake.advice import next_question_message
from intake.desk.advice_page import advice_page
from intake.desk.keys import bindings, foot_rows
from intake.desk.machine_page import machine_page
from intake.desk.pages import ListPage, TextPage
from intake.desk.panels import Conversation, Panel, QuestionCard, panel_rows
from intake.desk.prompt import Prompt
from intake.desk.snapshot import Snapshot, Verdicts
from intake.desk.steps import Step, Steps
from intake.desk.welcome import HELP, SAMPLE, WELCOME
from intake.spec.clean import clean, one_line

_WIDE, _WIDEST = 110, 150
"""From so many columns on there are panels on one side, and on both."""

_FIRST = "Paste the visitor's message, or press Enter for the first question."
_DONE = "Nothing is left to ask. F5 shows the advice; type on to add or correct."


@dataclass
class Sized(Message):
    """Verdicts of a message just taken in; posted from the worker."""

    verdicts: Verdicts


class TalkScreen(Screen[None]):
    """Shows a talk and passes on what is typed; all judgement is below."""

    CSS_PATH = "talk_screen.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [*bindings()]

    def __init__(self, steps: Steps, case: str | None) -> None:
        super().__init__()
        self.steps, self._case = steps, case
        self.shown: Snapshot | None = None
        self._turn = asyncio.Lock()
        self._waiting = 0
        self._told = 0, 0
        """The last step of which something is on the screen, and how many of its lines."""

    def compose(self) -> ComposeResult:
        yield Static("", markup=False, id="top")
        with Container(id="middle"):
            with Vertical(id="talk"):
                yield Conversation(id="conversation")
                yield QuestionCard(id="question")
            yield Panel("MACHINES", id="machines")
            yield Panel("FACTS", id="facts")
            yield Panel("TO ASK", id="left")
        yield Static("", markup=False, id="strip")
        yield Static("", markup=False, id="standing")
        yield Static("", markup=False, id="trouble")
        yield Prompt()
        yield Static("\n".join(foot_rows()), markup=False, id="keys")

    def on_mount(self) -> None:
        """Greet, and show what stands."""
        self.query_one(Prompt).focus()
        self.steps.tell = lambda verdicts: self.post_message(Sized(verdicts))
        if not self.steps.talk.events:
            self._say("desk", WELCOME)
        self._run(self.steps.start)

    def on_resize(self) -> None:
        """Panels where there is room for them."""
        self.set_class(_WIDE <= self.size.width < _WIDEST, "wide")
        self.set_class(self.size.width >= _WIDEST, "widest")

    # ------------------------------------------------------------------ steps, off the screen's thread

    def _run(self, step: Step) -> None:
        """Have a step done; from here on the desk counts as working."""
        self._waiting += 1
        self._show_top()
        self._do(step)

    @work(group="talk")
    async def _do(self, step: Step) -> None:
        """One step of the talk at a time, in the order in which they came; typing goes on meanwhile."""
        async with self._turn:
            shown = await asyncio.to_thread(self.steps.safely, step)
        self._waiting -= 1
        if isinstance(shown, Snapshot):
            self._show(shown)
        else:
            self._say("desk", (shown,))
        self._show_top()

    @on(Sized)
    def show_verdicts(self, event: Sized) -> None:
        """What was understood and where the machines stand, while the next question is still worked out."""
        early = event.verdicts
        if early.turn <= self._told[0]:
            return  # the whole of it was quicker
        self._told = early.turn, len(early.lines)
        with self.app.batch_update():
            self._say("desk", early.lines)
            self.query_one("#machines", Panel).show_rows(early.machines)
            self.query_one("#strip", Static).update("\n".join(early.strip))

    def _show(self, shown: Snapshot) -> None:
        self.shown = shown
        told = self._told[1] if self._told[0] == shown.turn else 0
        self._told = shown.turn, len(shown.lines)
        with self.app.batch_update():
            self._say("desk", shown.lines[told:])
            idle = shown.anew or (_DONE if shown.facts else _FIRST)
            self.query_one(QuestionCard).show_question(None if shown.anew else shown.question, idle)
            for name, rows in panel_rows(shown).items():
                self.query_one(f"#{name}", Panel).show_rows(rows)
            self.query_one("#strip", Static).update("\n".join(shown.strip))
            self.query_one("#standing", Static).update(shown.standing)

    def _show_top(self) -> None:
        """Title, where it is kept, and whether work is going on; trouble with the book gets a row of its own."""
        title = self.shown.title if self.shown is not None and self.shown.facts else "New talk"
        trouble = self.steps.trouble
        how = "NOT SAVED as" if trouble else "kept as" if self.steps.talk.events else "will be kept as"
        kept = "not kept" if self._case is None else f"{how} {self._case}"
        busy = "  |  working ..." if self._waiting else ""
        self.query_one("#top", Static).update(f"{title}  |  {kept}{busy}")
        told = self.query_one("#trouble", Static)
        told.update(f"NOT SAVED: {trouble}" if trouble else "")
        told.display = bool(trouble)

    def _say(self, who: str, lines: tuple[str, ...]) -> None:
        self.query_one(Conversation).say(who, lines)

    # ------------------------------------------------------------------ what is typed

    @on(Prompt.Said)
    def take(self, event: Prompt.Said) -> None:
        """Words from the answer line; Enter alone goes on to the next question."""
        words = clean(event.text).strip()
        seen = self._move_up_question() if words else None
        if words:
            self._say("answer" if seen else "visitor", (f"visitor: {words}",))
            self._run(lambda: self.steps.say(words, seen))
        else:
            self._run(self.steps.leave_be)

    @on(Prompt.Cut)
    def tell_cut(self, event: Prompt.Cut) -> None:
        """A paste too long for one message."""
        self._say("desk", (f"Only the first {event.taken} characters of that were taken. Send the rest by itself.",))

    def action_step(self, name: str) -> None:
        """A key that takes back or puts back."""
        self._run(getattr(self.steps, name))

    def action_answer(self, name: str) -> None:
        """A key that answers the question on the screen, so not while the next one is being worked out."""
        if self._waiting:
            self.notify("Still working. Press it again when the next question stands.", markup=False)
        else:
            if name != "back":
                self._move_up_question()
            self._run(getattr(self.steps, name))

    def _move_up_question(self) -> str | None:
        """The question on the screen goes into the conversation, once, as it is answered. Returns its id."""
        if self.shown is None or self.shown.question is None or self.shown.anew:
            return None
        question = self.shown.question
        if not self._waiting:
            self._say("asked", (f"Asked: {question.say}",))
        return question.id

    def action_sample(self) -> None:
        """Put a sample message on an empty answer line, to be sent with Enter."""
        prompt = self.query_one(Prompt)
        if not prompt.text.strip():
            prompt.text = SAMPLE
            prompt.move_cursor(prompt.document.end)

    def action_leaf(self, way: int) -> None:
        """Leaf through the conversation from the answer line."""
        said = self.query_one(Conversation)
        said.scroll_relative(y=way * max(1, said.size.height - 2), animate=False)

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

    @work(group="talk")
    async def action_advice(self) -> None:
        """Recommendation, open points, samples, cautions, once what was said before is worked out."""
        async with self._turn:
            page = await asyncio.to_thread(advice_page, self.steps.talk)
        self.app.push_screen(TextPage("Advice as it stands", page))

    @work(group="talk")
    async def action_what_if(self) -> None:
        """The typed words as a change of the case, beside the case as it is; nothing of it is kept."""
        words = self.query_one(Prompt).text.strip()
        if not words:
            self.notify("Type the change first, then F10: 60 a minute, a freezer, 20 ft up.", markup=False)
            return
        self.query_one(Prompt).clear()  # they are no answer: left there, the next Enter would send them as one
        async with self._turn:
            page = await asyncio.to_thread(self.steps.what_if, clean(words))
        self.app.push_screen(TextPage(f"What if: {one_line(words, 60)} (nothing of this is kept)", page))

    def action_facts(self) -> None:
        """The facts; Enter asks one again, to change it."""
        rows = () if self.shown is None else (*self.shown.facts, *self.shown.assumed)
        self.app.push_screen(ListPage("Facts and who said them", rows, "change it"), self._change)

    def _change(self, key: str | None) -> None:
        if key:
            self._run(lambda: self.steps.change(key))

    def action_machines(self) -> None:
        """The machines; Enter shows one in full."""
        rows = () if self.shown is None else self.shown.machines
        self.app.push_screen(ListPage("Machines: + fits, ? depends, - out", rows, "show all of it"), self._machine)

    def _machine(self, name: str | None) -> None:
        if name is not None and self.shown is not None:
            self._show_machine(name, self.shown)

    @work(group="talk")
    async def _show_machine(self, name: str, shown: Snapshot) -> None:
        async with self._turn:
            page = await asyncio.to_thread(machine_page, name, shown)
        self.app.push_screen(TextPage("Machine in full", page))

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
