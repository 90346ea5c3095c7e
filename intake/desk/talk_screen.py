"""The desk's screen for one case: the talk in the middle, what it came to beside it. Deeds go down to the steps."""

import asyncio
import contextlib
from dataclasses import dataclass

from textual import on, work
from textual.message import Message
from textual.widgets import Static, TextArea

from intake.desk import talk_pages
from intake.desk.commands.table import is_command
from intake.desk.conversation import Conversation, Line
from intake.desk.effect import Go
from intake.desk.frame import FIRST, CaseFrame
from intake.desk.lights import Lit
from intake.desk.pages import TextPage
from intake.desk.panels import Panel, QuestionCard, panel_rows
from intake.desk.preview import Previewer
from intake.desk.prompt import Prompt
from intake.desk.snapshot import Snapshot, Verdicts
from intake.desk.steps import Step, Steps, fault_line
from intake.desk.welcome import WELCOME, next_sample
from intake.interview.mending import Mend
from intake.spec.clean import LONGEST, clean

_DONE = "Nothing is left to ask. F5 shows the advice; type on to add or correct."
_FRAME_S = 0.05
"""A step waits at most so long for the frame that shows what it is to work on [s]."""

_LOOK_S = 1.0
"""How often it is looked whether another desk has gone on with this case [s]."""


@dataclass
class Sized(Message):
    """Verdicts of a message just taken in; posted from the worker."""

    verdicts: Verdicts


class TalkScreen(CaseFrame):
    """Shows a case and passes on what is typed; all judgement is below."""

    @dataclass
    class Wanted(Message):
        """Another case is to come to the front."""

        go: Go

    @dataclass
    class Changed(Message):
        """Something of the case that the row of open cases shows has changed."""

    def __init__(self, steps: Steps) -> None:
        super().__init__()
        self.steps = steps
        self.shown: Snapshot | None = None
        self.turn = asyncio.Lock()
        self.sending = asyncio.Lock()
        self.looking = 0
        """So many texts are being looked at, whether they are threads."""
        self.tabs = ""
        self._waiting = 0
        self._told = 0, 0
        """The last step of which something is on the screen, and how many of its lines."""
        self._previewer = Previewer(self)

    def on_mount(self) -> None:
        """Greet, and show what stands."""
        self.query_one(Prompt).focus()
        self.steps.tell = lambda verdicts: self.post_message(Sized(verdicts))
        if not self.steps.work.talk.events:
            self.say("desk", WELCOME)
        self.retell()
        keeper = self.steps.work.keeper
        if keeper is not None and (typed := keeper.typed()):
            prompt = self.query_one(Prompt)
            self._previewer.found(typed)
            prompt.text = typed
            prompt.move_cursor(prompt.document.end)
        self.run_step(self.steps.start)
        self.set_interval(_LOOK_S, self.look_elsewhere)

    def on_resize(self) -> None:
        """Panels where there is room for them."""
        self.call_after_refresh(talk_pages.draw_sketch, self)

    def on_screen_resume(self) -> None:
        """Back in front: the answer line has the keys."""
        self.query_one(Prompt).focus()

    @property
    def busy(self) -> bool:
        """True while a step is being worked on."""
        return self._waiting > 0

    # ------------------------------------------------------------------ steps, off the screen's thread

    def run_step(self, step: Step, typed: str = "") -> None:
        """Have a step done; from here on the desk counts as working. `typed`: words to give back if it cannot be."""
        self._waiting += 1
        self.show_top()
        self._do(step, typed)

    @work(group="talk")
    async def _do(self, step: Step, typed: str) -> None:
        """One step of the talk at a time, in the order in which they came; typing goes on meanwhile."""
        async with self.turn:  # taken first: whoever waits for a frame outside could be overtaken
            await self._drawn()
            shown = await asyncio.to_thread(self.steps.safely, step)
        self._waiting -= 1
        if isinstance(shown, Snapshot):
            self._show(shown)
        else:
            self.say("slip", (shown,))
            prompt = self.query_one(Prompt)
            if typed and not prompt.text:
                prompt.text = typed
                prompt.move_cursor(prompt.document.end)
        self.show_top()

    async def _drawn(self) -> None:
        """Let what was just sent be drawn first: the step's thread would take turns with the drawing of it."""
        drawn = asyncio.Event()
        self.call_after_refresh(drawn.set)
        with contextlib.suppress(TimeoutError):  # a screen behind another one is not drawn
            await asyncio.wait_for(drawn.wait(), _FRAME_S)

    async def look_elsewhere(self) -> None:
        """Take in what another desk kept of this case, and keep what could not be kept before."""
        if self._waiting or not self.is_current or self.turn.locked():
            return
        async with self.turn:
            try:
                if self.steps.trouble:
                    await asyncio.to_thread(self.steps.retry)
                    self.show_top()
                news = await asyncio.to_thread(self.steps.news)
            except Exception as fault:
                self.say("slip", (fault_line(fault),))
                return
        if news is not None:
            self._show(news)
            self.show_top()

    @on(Sized)
    def show_verdicts(self, event: Sized) -> None:
        """What was understood and where the machines stand, while the next question is still worked out."""
        early = event.verdicts
        if early.turn <= self._told[0]:
            return  # the whole of it was quicker
        self._told = early.turn, len(early.lines)
        with self.app.batch_update():
            if early.lit is not None:
                self.query_one(Conversation).light(early.lit)
            self.say("desk", early.lines)
            self.query_one("#machines", Panel).show_rows(early.machines)
            self.query_one("#strip", Static).update("\n".join(early.strip))

    def _show(self, shown: Snapshot) -> None:
        self.shown = shown
        told = self._told[1] if self._told[0] == shown.turn else 0
        self._told = shown.turn, len(shown.lines)
        with self.app.batch_update():
            if shown.effect is not None and shown.effect.retell:
                self.retell()
            if shown.lit is not None:
                self.query_one(Conversation).light(shown.lit)
            self.say("desk", shown.lines[told:])
            idle = shown.anew or (_DONE if shown.facts else FIRST)
            self.query_one(QuestionCard).show_question(None if shown.anew else shown.question, idle)
            for name, rows in panel_rows(shown).items():
                self.query_one(f"#{name}", Panel).show_rows(rows)
            self.query_one("#strip", Static).update("\n".join(shown.strip))
            self.query_one("#standing", Static).update(shown.standing)
            talk_pages.draw_sketch(self)
        self.post_message(self.Changed())
        if shown.effect is not None:
            talk_pages.follow(self, shown.effect)
        self._previewer.look()

    def show_top(self) -> None:
        """Title, where it is kept, and whether work is going on; trouble with the book gets a row of its own."""
        work = self.steps.work
        title = self.shown.title if self.shown is not None and self.shown.facts else "New talk"
        trouble = self.steps.trouble
        how = "NOT SAVED as" if trouble else "kept as" if work.talk.events else "will be kept as"
        kept = f"{how} {work.name}" if work.name else "not kept"
        parts = [self.tabs, "PHONE" if work.by_ear else "", title, kept, "working ..." if self._waiting else ""]
        self.query_one("#top", Static).update("  |  ".join(part for part in parts if part))
        told = self.query_one("#trouble", Static)
        told.update(f"NOT SAVED: {trouble} A copy elsewhere: /export FILE" if trouble else "")
        told.display = bool(trouble)

    def retell(self) -> None:
        """All that people said in this case, lit, in place of what the conversation shows."""
        lines = [Line(who, f"{who}: ", lit) for who, lit in self.steps.said_before()]
        if lines:
            self.query_one(Conversation).retell(lines)

    def say(self, who: str, lines: tuple[str, ...]) -> None:
        """Lines in the conversation."""
        self.query_one(Conversation).say(who, lines)

    # ------------------------------------------------------------------ what is typed

    @on(TextArea.Changed, "#prompt")
    def look_at_words(self) -> None:
        """Light up what is understood in the words typed."""
        self._previewer.look()

    @on(Prompt.Said)
    def take(self, event: Prompt.Said) -> None:
        """Words from the answer line; Enter alone goes on to the next question."""
        words, mends = clean(event.text).strip(), self._previewer.taken(event.text)
        if is_command(words):
            self.run_step(lambda: self.steps.command(words), words)
            return
        if not words:
            self.run_step(self.steps.leave_be)
            return
        talk_pages.if_thread(self, words, lambda: self.send(words, mends))

    def send(self, words: str, mends: tuple[Mend, ...] = ()) -> None:
        """The visitor's words go into the case."""
        with self.app.batch_update():
            seen = self._move_up_question()
            who = "heard" if self.steps.work.by_ear else "visitor"
            self.query_one(Conversation).add([Line("answer" if seen else "visitor", f"{who}: ", Lit(words))])
        self.run_step(lambda: self.steps.say(words, seen, mends), words)

    @on(Prompt.Mend)
    def mend(self, event: Prompt.Mend) -> None:
        """Tab: complete a command, put words right, or on an empty line of a new case a sample."""
        prompt = self.query_one(Prompt)
        if is_command(event.text):
            talk_pages.complete(prompt)
        elif event.text.strip():
            self._previewer.mend()
        elif (sample := next_sample(self.steps.work.said)) is not None:
            prompt.text = sample
            prompt.move_cursor(prompt.document.end)
        else:
            self._previewer.mend_last()

    @on(Prompt.Pasted)
    def take_long_paste(self, event: Prompt.Pasted) -> None:
        """A paste too long for one message: a whole thread, or else its first part."""
        talk_pages.long_paste(self, event.text)

    @on(Panel.Picked)
    def take_row(self, event: Panel.Picked) -> None:
        """A row of a panel was clicked."""
        self.query_one(Prompt).focus()
        talk_pages.pick(self, event.panel, event.key)

    def action_command(self, word: str) -> None:
        """A key that stands for a command. One that answers waits for the question that it answers."""
        if word in ("unknown", "later", "back") and self._waiting:
            self.notify("Still working. Press it again when the next question stands.", markup=False)
            return
        if word in ("unknown", "later"):
            self._move_up_question()
        self.run_step(lambda: self.steps.command(f"/{word}"))

    def seen(self) -> str | None:
        """The question that stands on the screen, by its id."""
        if self._waiting or self.shown is None or self.shown.question is None or self.shown.anew:
            return None
        return self.shown.question.id

    def _move_up_question(self) -> str | None:
        """The question on the screen goes into the conversation, once, as it is answered. Returns its id."""
        if self.shown is None or self.shown.question is None or self.shown.anew:
            return None
        question = self.shown.question
        if not self._waiting:
            self.say("asked", (f"Asked: {question.say}",))
        return question.id

    def action_leaf(self, way: int) -> None:
        """Leaf through the conversation from the answer line."""
        self.query_one(Conversation).leaf(way)

    def action_note(self) -> None:
        """Keep what is typed as a note."""
        prompt = self.query_one(Prompt)
        words = prompt.text.strip()
        if words:
            prompt.clear()
            self.run_step(lambda: self.steps.command(f"/note {words}"))
        else:
            self.notify("Type the note first, then Ctrl+N.", markup=False)

    # ------------------------------------------------------------------ pages

    def action_next_case(self) -> None:
        """The next of the cases that are open."""
        self.post_message(self.Wanted(Go(onward=True)))

    def action_page(self, name: str) -> None:
        """A page over the desk."""
        talk_pages.PAGES[name](self)

    def show_text(self, title: str, text: str) -> None:
        """A text to read."""
        self.app.push_screen(TextPage(title, text))

    @property
    def longest(self) -> int:
        """So many characters are one message at most."""
        return LONGEST
