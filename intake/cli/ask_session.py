"""Cases on plain lines: words go to the steps of a case, lines that start with a slash are commands."""

import re
from collections.abc import Callable, Iterable, Iterator

from intake.advice import recommendation
from intake.casebook import BookError
from intake.cli.open_cases import OpenCases
from intake.desk.commands import table
from intake.desk.effect import Effect, Go, Slip
from intake.desk.snapshot import Snapshot
from intake.desk.steps import Steps
from intake.desk.talk_text import fact_lines, question_lines
from intake.desk.work import Work
from intake.interview.question import Question
from intake.spec.clean import LONGEST, clean

_GATHERING = {"/paste": "", "/thread": "/thread "}
"""Commands that take the lines behind them as one text, until /end; the text is put behind these words."""

_END = "/end"
_NAMED = re.compile(r"[^\W\d][\w' ]{1,30}: |\d+\. ")
_WELCOME = (
    "Intake: type or paste what the visitor wrote; an empty line for the first question; /help.",
    "Intake: first time here? /sample puts a sample message through.",
)


class Session:
    """Prints as it goes. `take` returns False when the person wants to leave."""

    def __init__(self, work: Work) -> None:
        self.cases = OpenCases(work)
        self._shown: Question | None = None
        """The question that the last printed lines ended with; words that come now answer it."""
        self._gathering: tuple[str, list[str]] | None = None
        self._unsaved = False
        self._closed = False

    @property
    def work(self) -> Work:
        """The case in front."""
        return self.cases.front.work

    @property
    def _steps(self) -> Steps:
        return self.cases.front

    # ------------------------------------------------------------------ what is typed

    def greet(self) -> None:
        """Say where the talk is."""
        if self.work.talk.events:
            self._resume(f"going on with {self.work.name or 'what was said'}")
        else:
            self._say(_WELCOME)

    def take(self, line: str) -> bool:
        """One line of input. False after /quit."""
        word = line.strip()
        if self._gathering is not None:
            if word == _END:
                self._gathered()
            else:
                self._gathering[1].append(line)
            return True
        self._tell_news()
        if word in _GATHERING:
            self._gathering = _GATHERING[word], []
            return True
        if table.is_command(word):
            return self._command(word)
        self._words(line)
        return True

    def leave(self) -> None:
        """The end of the input: what was left half done, and the result."""
        self._gathered()
        if not self._closed:
            self._result()
        for steps in self.cases:
            steps.work.close()

    def _gathered(self) -> None:
        """The lines between /paste or /thread and /end, as one text."""
        if self._gathering is None:
            return
        (lead, lines), self._gathering = self._gathering, None
        text = "\n".join(lines)
        if lead:
            self._change(f"{lead}{text}")
        else:
            self._words(text)

    def _words(self, text: str) -> None:
        """The visitor's words: an answer to the question printed last, else a message; none ask the next question."""
        if len(text) > LONGEST:
            self._say([f"Intake: only the first {LONGEST} characters of that were taken."])
        words, steps = clean(text), self._steps
        seen = self._shown.id if self._shown is not None else None
        if words.strip():
            self._closed = False
            done = self._done(lambda: steps.say(words, seen))
        else:
            done = self._done(steps.leave_be)
        if done is not None:
            self._tell(done)
            self._put(done.question)

    def _command(self, line: str) -> bool:
        command = table.by_word(line.split(maxsplit=1)[0])
        if command is None or not command.looks:
            self._change(line)
            return True
        steps = self._steps
        effect = steps.safely(lambda: steps.effect(line))
        if isinstance(effect, str):
            self._say([f"Intake: {effect}"])
            return True
        self._closed |= command.word == "result"
        return self._look(effect)

    def _change(self, line: str) -> None:
        """A command that may change the case: what it says, and the next question where it did."""
        steps = self._steps
        before = len(self.work.talk.events)
        done = self._done(lambda: steps.command(line))
        if done is None:
            return
        if done.effect is not None and done.effect.say:
            self._say([f"Visitor: {done.effect.say}"])
        self._tell(done)
        command = table.by_word(line.split(maxsplit=1)[0])
        same = command is not None and command.beside and done.question == self._shown
        if (len(self.work.talk.events) != before and not same) or not done.lines:
            self._put(done.question)

    def _look(self, effect: Effect) -> bool:
        """What a command shows, hands over or goes to. False when it leaves."""
        if effect.leave:
            self.leave()
            return False
        self._say(effect.lines)
        if effect.copy:
            self._say(["Draft:", *effect.copy.split("\n"), "End of draft."])
        elif effect.page is not None:
            self._say([f"{effect.page.title}:", *effect.page.text.split("\n")])
        if effect.go is not None:
            self._go(effect.go)
        return True

    # ------------------------------------------------------------------ several cases

    def _go(self, to: Go) -> None:
        """Another case to the front."""
        try:
            told = self.cases.go(to)
        except (BookError, Slip) as trouble:
            self._say([f"Intake: {trouble}"])
            return
        self._closed = False
        self._say(told)
        self._resume(f"this is {self.work.name}")

    def _resume(self, lead: str) -> None:
        """Which case this is, and what stands in it."""
        self._tell_news(ask=False)
        work = self.work
        if not (work.talk.case.messages or work.talk.facts):
            self._shown = None
            self._say([f"Intake: {lead}, where nothing was said yet. Type or paste what the visitor wrote."])
            return
        self._say([f"Intake: {lead}. It says so far:"])
        self._say(list(fact_lines(work.talk.case, work.talk.facts, work.system)) or ["Nothing is known yet."])
        done = self._done(self._steps.start)
        if done is not None:
            self._say([f"Standing: {done.standing}", *done.strip])
            self._put(done.question)

    def _tell_news(self, *, ask: bool = True) -> None:
        """What another desk kept of this case meanwhile."""
        news = self._steps.safely(self._steps.news)
        if isinstance(news, Snapshot):
            self._tell(news)
            if ask:
                self._put(news.question)

    # ------------------------------------------------------------------ what is said

    def _done(self, step: Callable[[], Snapshot]) -> Snapshot | None:
        """Have a step done; None where it could not be, which is told."""
        done = self._steps.safely(step)
        if isinstance(done, str):
            self._say([f"Intake: {done}"])
            return None
        return done

    def _tell(self, done: Snapshot) -> None:
        """What came of a step, and whether it is safe in the book."""
        self._say(_said_by_us(done.lines))
        trouble = self._steps.trouble
        if trouble:
            self._say([f"NOT SAVED: {trouble}"])
        elif self._unsaved:
            self._say(["Intake: all of it is saved now."])
        self._unsaved = bool(trouble)

    def _put(self, question: Question | None) -> None:
        self._shown = question
        if question is not None:
            self._say(question_lines(question))
        elif not self._closed:
            self._say(["Intake: nothing is left to ask."])
            self._result()

    def _result(self) -> None:
        self._closed = True
        brief = self.work.brief
        self._say(recommendation(brief.result, brief.spec, self.work.system, brief.sentences))
        if self.work.keeper is None:
            self._say(["Intake: this talk is not kept. Give it a name to keep it: intake ask --case NAME"])
        elif trouble := self.work.keeper.index(self.work.talk):
            self._say([f"NOT SAVED: {trouble}"])

    def _say(self, lines: Iterable[str]) -> None:
        for line in lines:
            print(clean(line).replace("\n", " "), flush=True)


def _said_by_us(lines: Iterable[str]) -> Iterator[str]:
    """Each line says first what it is; one that does not is the program's own."""
    for line in lines:
        yield line if _NAMED.match(line) or line.startswith(" ") else f"Intake: {line}"
