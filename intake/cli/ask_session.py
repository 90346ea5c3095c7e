"""One interview on plain lines: words go to the talk, lines that start with a slash are commands."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import TYPE_CHECKING

from intake.advice import SUBJECTS, AdviceError, advise, recommendation
from intake.desk.talk_text import (
    Standing,
    answer_lines,
    fact_lines,
    family_lines,
    heard_lines,
    question_lines,
    reply_line,
)
from intake.interview.question import Question
from intake.sizing import size
from intake.spec import Spec, SpecError
from intake.spec.clean import LONGEST, clean
from intake.spec.display import System
from intake.talk import Interview

if TYPE_CHECKING:
    from intake.desk.keeping import Keeper

_HELP = {
    "/unknown": "the visitor does not know: go on, the matter becomes an open point",
    "/later": "the visitor will check and come back",
    "/back": "take back the last answer and ask again",
    "/undo": "take back the last thing that happened; /redo puts it back",
    "/redo": "put back what was taken back",
    "/facts": "what stands now, with who said it",
    "/families": "every machine family with its verdict",
    "/left": "what is still to ask, and what is not asked and why",
    "/result": "the recommendation as it stands",
    "/answer": "QUESTION: the visitor's own question, answered from the case; without a card it becomes a follow-up",
    **{f"/{one.word}": f"{one.takes}: {one.does}".removeprefix(": ") for one in SUBJECTS},
    "/note": "TEXT: a note for the staff",
    "/paste": "take several lines as one message, until a line that is only /end",
    "/help": "this list",
    "/quit": "leave",
}

_SUBJECTS = frozenset(one.word for one in SUBJECTS)


class Session:
    """Prints as it goes. `take` returns False when the person wants to leave."""

    def __init__(self, talk: Interview, *, keeper: "Keeper | None", units: System | None) -> None:
        self.talk = talk
        self._keeper = keeper
        self._units = units
        self._standing = Standing()
        self._question: Question | None = None
        self._pasting: list[str] | None = None
        self._closed = False

    @property
    def system(self) -> System:
        """The units to show: those asked for, else those that the visitor uses."""
        return self._units or self.talk.system

    def greet(self) -> None:
        """Say where the talk is."""
        if self.talk.facts:
            self._say(["Intake: going on with what is kept. It says so far:"])
            self._say(fact_lines(self.talk.facts, self.system))
            self._news()
            self._next()
        else:
            self._say(["Intake: type or paste what the visitor wrote; an empty line for the first question; /help."])

    def take(self, line: str) -> bool:
        """One line of input. False after /quit."""
        if self._pasting is not None:
            if line.strip() != "/end":
                self._pasting.append(line)
                return True
            line, self._pasting = "\n".join(self._pasting), None
        elif line.startswith("/"):
            return self._command(line.strip())
        self._words(line)
        return True

    def leave(self) -> None:
        """The end of the input: what was left half done, and the result."""
        if self._pasting:
            self._words("\n".join(self._pasting))
        if not self._closed:
            self._result()

    def _words(self, text: str) -> None:
        """The visitor's words: an answer while a question is open, else a message."""
        if len(text) > LONGEST:
            self._say([f"Intake: only the first {LONGEST} characters of that were taken."])
        words = clean(text)
        if not words.strip():
            self._next()
            return
        before = len(self.talk.inquiries)
        heard = self.talk.answer(words) if self._question is not None else self.talk.hear(words)
        asks = self.talk.inquiries[before:]
        self._say(heard_lines(heard, self.system))
        if not (heard.facts or heard.doubts or heard.unread or asks):
            self._say([reply_line(self.talk.events[-1])])
        self._keep()
        self._say(answer_lines(self.talk.reply_to(inquiry) for inquiry in asks))
        self._changed()

    def _changed(self) -> None:
        """Keep what happened, tell what it changed, ask the next question."""
        self._keep()
        self._news()
        self._next()

    def _keep(self) -> None:
        if self._keeper is not None:
            trouble = self._keeper.keep(self.talk)
            if trouble:
                self._say([f"NOT SAVED: {trouble}"])

    def _news(self) -> None:
        self._say(self._standing.news(size(self.talk.spec()), self.system))

    def _next(self) -> None:
        self._question = self.talk.ask()
        self._keep()
        if self._question is not None:
            self._say(question_lines(self._question))
        elif not self._closed:
            self._say(["Intake: nothing is left to ask."])
            self._result()

    def _result(self) -> None:
        self._closed = True
        self._say(recommendation(self.talk.result(), Spec.from_flat(self.talk.spec()), self.system))
        if self._keeper is None:
            self._say(["Intake: this talk is not kept. Give it a name to keep it: intake ask --case NAME"])
        elif trouble := self._keeper.index(self.talk):
            self._say([f"NOT SAVED: {trouble}"])

    def _command(self, line: str) -> bool:
        word, _, rest = line.partition(" ")
        if word == "/quit":
            if not self._closed:
                self._result()
            return False
        steps: dict[str, Callable[[], None]] = {
            "/unknown": self._unknown,
            "/later": self._later,
            "/back": self._back,
            "/undo": self._undo,
            "/redo": self._redo,
            "/facts": lambda: self._say(fact_lines(self.talk.facts, self.system)),
            "/families": lambda: self._say(family_lines(size(self.talk.spec()), self.system)),
            "/left": self._left,
            "/result": self._result,
            "/answer": lambda: self._inquire(rest),
            "/note": lambda: self._note(rest),
            "/paste": self._paste,
            "/help": lambda: self._say(f"{name}: {what}" for name, what in _HELP.items()),
        }
        step = steps.get(word)
        if word.removeprefix("/") in _SUBJECTS:
            self._advise(word.removeprefix("/"), rest)
        elif step is None:
            self._say([f"Intake: there is no command {clean(word)}. /help lists them."])
        else:
            step()
        return True

    def _unknown(self) -> None:
        if self._question is None:
            self._say(["Intake: no question is open."])
            return
        self.talk.unknown()
        self._changed()

    def _later(self) -> None:
        if self._question is None:
            self._say(["Intake: no question is open."])
            return
        self.talk.later()
        self._changed()

    def _back(self) -> None:
        self.talk.back()
        self._changed()

    def _undo(self) -> None:
        self._say(["Intake: taken back." if self.talk.undo() else "Intake: there is nothing to take back."])
        self._changed()

    def _redo(self) -> None:
        self._say(["Intake: put back." if self.talk.redo() else "Intake: there is nothing to put back."])
        self._changed()

    def _left(self) -> None:
        for question in self.talk.open_questions():
            self._say([f"{'To start work' if question.purpose == 'engineering' else 'To ask'}: {question.say}"])
        self._say(f"Not asked: {left.why}" for left in self.talk.skipped)
        self._say(f"Set aside: {left.why}" for left in self.talk.set_aside)

    def _advise(self, word: str, rest: str) -> None:
        """One subject worked out from the case."""
        try:
            self._say(advise(replace(self.talk.brief, system=self.system), word, clean(rest)).lines)
        except (AdviceError, SpecError) as fault:
            self._say([f"Intake: {fault}"])

    def _inquire(self, text: str) -> None:
        """A question of the visitor's own, typed as one."""
        if not text.strip():
            self._say(["Intake: write the question behind it: /answer how tall can you go?"])
            return
        self._say(answer_lines([self.talk.inquire(text)]))
        self._keep()

    def _note(self, text: str) -> None:
        if not text.strip():
            self._say(["Intake: write the note behind it: /note TEXT"])
            return
        self.talk.note(clean(text))
        self._keep()
        self._say(["Intake: noted."])

    def _paste(self) -> None:
        self._pasting = []

    def _say(self, lines: Iterable[str]) -> None:
        for line in lines:
            print(clean(line), flush=True)
