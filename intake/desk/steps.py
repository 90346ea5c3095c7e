"""What a key, a message or a command does to a case. Runs away from the screen; one step at a time."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import TypeVar

from intake.advice import AdviceError, advise
from intake.desk.commands import table
from intake.desk.effect import Effect, Slip
from intake.desk.lights import Lit, lit_last, lit_message, lit_preview
from intake.desk.snapshot import Snapshot, Verdicts, early_verdicts, snapshot
from intake.desk.talk_text import Standing, answer_lines, heard_briefly, heard_lines, reply_line
from intake.desk.work import Work
from intake.interview.mending import Mend
from intake.spec import SpecError
from intake.spec.case import standing
from intake.spec.clean import one_line
from intake.spec.display import label, show_value
from intake.spec.facts import Heard

Step = Callable[[], Snapshot]
Outcome = TypeVar("Outcome")

_JOINED = "Another desk has gone on with this case; what it kept is taken in."

_SHOWN_AGAIN = 200
"""So many messages of a kept talk stand in the conversation when it is opened again."""


def fault_line(fault: Exception) -> str:
    """A slip or a fault of the program in words for the person."""
    if isinstance(fault, Slip):
        return str(fault)
    return f"That could not be worked on ({type(fault).__name__}: {one_line(str(fault), 200)}). Go on, or undo."


class Steps:
    """The work on one case, behind the calls that the desk and `ask` make.

    `briefly`: what was understood is told in one line, for a screen on which the words themselves are lit.
    `panels`: what they show is worked out with every step, which takes most of its time.
    """

    def __init__(self, work: Work, *, briefly: bool = False, panels: bool = True) -> None:
        self.work = work
        self._panels = panels
        self._heard_lines = heard_briefly if briefly else heard_lines
        self.trouble: str | None = None
        self._standing = Standing()
        self._turn = 0
        self._joined = False
        self.tell: Callable[[Verdicts], object] | None = None
        """Called from the worker with the verdicts of a message, before the next question is ranked."""

    def safely(self, step: Callable[[], Outcome]) -> Outcome | str:
        """Do a step. A slip or a fault of the program comes back as a line, and the desk goes on."""
        self._turn += 1
        try:
            return step()
        except Slip as slip:
            return str(slip)
        except Exception as fault:
            return fault_line(fault)

    # ------------------------------------------------------------------ opening

    def start(self) -> Snapshot:
        """What stands when the case is opened."""
        if self.work.talk.case.messages or self.work.talk.facts:
            self.work.question = self.work.talk.ask()
        list(self._standing.news(self.work.talk.result(), self.work.system))  # what is so already is no news
        return self._shot(())

    def said_before(self) -> list[tuple[str, Lit]]:
        """The last messages of a kept talk with who said them, lit as they were understood."""
        case, heard = self.work.talk.case, {}
        for event in standing(self.work.talk.events):
            if event.kind == "heard" and event.body.get("message") is not None:
                heard[int(event.body["message"])] = event
        newest = list(case.messages.items())[-_SHOWN_AGAIN:]
        return [
            (who, lit_message(case, heard[number], self.work.system) if number in heard else Lit(text))
            for number, (text, who) in newest
        ]

    def retry(self) -> None:
        """Keep what could not be kept before. `trouble` says whether it still cannot."""
        self._keep()

    def news(self) -> Snapshot | None:
        """What another desk kept of this case meanwhile, None for nothing."""
        if self.work.keeper is None or not self.work.keeper.news(self.work.talk):
            return None
        self._turn += 1  # its lines are new ones
        self.work.question = self.work.talk.ask()
        return self._shot((_JOINED,))

    # ------------------------------------------------------------------ words

    def preview(self, text: str, seen: str | None, mends: Sequence[Mend] = ()) -> Lit:
        """How a message would be understood; nothing is kept. `seen` as in `say`."""
        preview = self.work.talk.preview(text, self._to(seen), by_ear=self.work.by_ear, mends=mends)
        return lit_preview(preview, self.work.units or self.work.talk.system_with(text))

    def say(self, text: str, seen: str | None, mends: Sequence[Mend] = ()) -> Snapshot:
        """The visitor's words: the new value of a fact picked, an answer to the question, or a message.

        `seen`: the question that stood on the screen when the words were sent. One that came up since, while an
        earlier message was worked on, has not been read by anybody: then the words are a message of their own.
        """
        talk, by_ear = self.work.talk, self.work.by_ear
        before = len(talk.inquiries)
        if self.work.changing is not None:
            field, size = self.work.changing
            heard = talk.mend(field, text, size)
        elif (to := self._to(seen)) is not None:
            heard = talk.answer(text, to, by_ear=by_ear, mends=mends)
        else:
            heard = talk.hear(text, by_ear=by_ear, mends=mends)
        return self._understood(heard, before)

    def mend_last(self, mends: Sequence[Mend]) -> Snapshot:
        """The last message taken in again, with what staff say that its words are."""
        before = len(self.work.talk.inquiries)
        heard = self.work.talk.rehear(mends)
        if heard is None:
            raise Slip("There is no message yet.")
        return self._understood(heard, min(before, len(self.work.talk.inquiries)))

    def _to(self, seen: str | None) -> str | None:
        question = self.work.question
        return question.id if question is not None and question.id == seen else None

    def _understood(self, heard: Heard, before: int) -> Snapshot:
        """What a message gave, told before the next question is ranked."""
        talk = self.work.talk
        self._keep()
        asks = talk.inquiries[before:]
        lines = tuple(self._heard_lines(heard, self.work.system))
        lit = self._last_lit()
        if self.tell is not None and lines:
            self.tell(early_verdicts(self.work, self._turn, lines, lit))
        brief = self.work.brief if asks else None
        lines = (*lines, *answer_lines(talk.reply_to(one, brief) for one in asks))
        return replace(self._go_on(lines or (reply_line(talk.events[-1]),)), lit=lit)

    def _last_lit(self) -> Lit | None:
        last = self.work.talk.last_heard
        return lit_last(self.work.talk, self.work.system) if last is self.work.talk.events[-1] else None

    def what_if(self, text: str) -> str:
        """The case with what these words say, beside the case as it is; in a line what is wrong with them."""
        try:
            return "\n".join(advise(self.work.brief, "what-if", text).lines)
        except (AdviceError, SpecError) as fault:
            return str(fault)

    # ------------------------------------------------------------------ commands and keys

    def command(self, line: str) -> Snapshot:
        """A typed command, as "/later". Raises Slip for one that cannot be done."""
        question, changing = self.work.question, self.work.changing
        before = len(self.work.talk.events)
        command, effect = table.run(self.work, line)
        if effect.say:
            return replace(self.say(effect.say, None), effect=effect)
        if command.looks or len(self.work.talk.events) == before:
            return replace(self._shot(effect.lines), effect=effect)
        if (self.work.question, self.work.changing) == (question, changing):
            return replace(self._go_on(effect.lines), effect=effect)
        return replace(self._shot(effect.lines), effect=effect)  # the command has put a question itself

    def effect(self, line: str) -> Effect:
        """What a command that only looks comes to, without the rest of the screen. Raises Slip."""
        return table.run(self.work, line)[1]

    def change(self, key: str) -> Snapshot:
        """Take the next words as the new value of one fact ("product.weight@1")."""
        field, _, size = key.partition("@")
        self.work.changing = field, int(size or 1)
        return self._shot(())

    def leave_be(self) -> Snapshot:
        """Enter alone: no new value after all, or on to the next question."""
        return self._go_on(("Left as it is.",) if self.work.changing else ())

    def put(self, id: str) -> Snapshot:
        """Ask a question out of order."""
        self.work.question, self.work.changing = self.work.talk.put(id), None
        return self._shot(())

    # ------------------------------------------------------------------ what stands

    def _go_on(self, lines: tuple[str, ...]) -> Snapshot:
        self.work.changing = None
        self._keep()  # before the sizing, which may take a second
        self.work.question = self.work.talk.ask()
        return self._shot(lines)

    def _shot(self, lines: tuple[str, ...]) -> Snapshot:
        self._keep()
        if self._joined:
            lines, self._joined = (_JOINED, *lines), False
        news = tuple(self._standing.news(self.work.talk.result(), self.work.system))
        shown = snapshot(self.work, (*lines, *news), self._asks_anew(), self._turn, panels=self._panels)
        if self.work.keeper is not None and self.trouble is None and self.work.talk.events:
            self.work.keeper.index(self.work.talk)
        return shown

    def _asks_anew(self) -> str:
        """What stands in place of the question while a fact is being changed."""
        if self.work.changing is None:
            return ""
        field, size = self.work.changing
        fact = self.work.talk.case.facts.get(self.work.changing)
        stands = "" if fact is None else f" It stands at {show_value(field, fact, self.work.system)}."
        return f"Type the new {label(field, size)}; it replaces what stands. Enter alone leaves it.{stands}"

    def _keep(self) -> None:
        if self.work.keeper is not None and self.work.talk.events:
            self.trouble = self.work.keeper.keep(self.work.talk)
            self._joined = self.work.keeper.joined or self._joined
