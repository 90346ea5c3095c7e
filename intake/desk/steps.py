"""What a key or a message does to the talk. Runs away from the screen; one step at a time."""

from collections.abc import Callable

from intake.advice import AdviceError, advise
from intake.desk.keeping import Keeper
from intake.desk.snapshot import Snapshot, Verdicts, early_verdicts, snapshot
from intake.desk.talk_text import Standing, answer_lines, heard_lines, reply_line
from intake.interview.question import Question
from intake.spec import SpecError
from intake.spec.clean import one_line
from intake.spec.display import label, show_value
from intake.talk import Interview

Step = Callable[[], Snapshot]

_SHOWN_AGAIN = 20
"""So many messages of a kept talk stand in the conversation when it is opened again."""


class Steps:
    """The talk and its book, behind the calls that the screen makes."""

    def __init__(self, talk: Interview, keeper: Keeper | None) -> None:
        self.talk, self._keeper = talk, keeper
        self.trouble: str | None = None
        self._question: Question | None = None
        self._changing: tuple[str, int] | None = None
        self._standing = Standing()
        self._turn = 0
        self.tell: Callable[[Verdicts], object] | None = None
        """Called from the worker with the verdicts of a message, before the next question is ranked."""

    def safely(self, step: Step) -> Snapshot | str:
        """Do a step. A fault of the program comes back as a line for the screen, and the desk goes on."""
        self._turn += 1
        try:
            return step()
        except Exception as fault:
            return f"That could not be worked on ({type(fault).__name__}: {one_line(str(fault), 200)}). Go on, or F9."

    def start(self) -> Snapshot:
        """What stands when the desk opens."""
        said = list(self.talk.case.messages.values())
        lines = [f"{who}: {one_line(text)}" for text, who in said][-_SHOWN_AGAIN:]
        if said:
            self._question = self.talk.ask()
        list(self._standing.news(self.talk.result(), self.talk.system))  # what is so already is no news
        return self._shot(tuple(lines))

    def say(self, text: str, seen: str | None) -> Snapshot:
        """The visitor's words: the new value of a fact picked, an answer to the question, or a message.

        `seen`: the question that stood on the screen when the words were sent. One that came up since, while an
        earlier message was worked on, has not been read by anybody: then the words are a message of their own.
        """
        before = len(self.talk.inquiries)
        if self._changing is not None:
            field, size = self._changing
            heard = self.talk.mend(field, text, size)
        elif self._question is not None and self._question.id == seen:
            heard = self.talk.answer(text)
        else:
            heard = self.talk.hear(text)
        self._keep()
        asks = self.talk.inquiries[before:]
        understood = tuple(heard_lines(heard, self.talk.system))
        if self.tell is not None and understood:
            self.tell(early_verdicts(self.talk, self._turn, understood))
        lines = (*understood, *answer_lines(map(self.talk.reply_to, asks)))
        return self._go_on(lines or (reply_line(self.talk.events[-1]),))

    def what_if(self, text: str) -> str:
        """The case with what these words say, beside the case as it is; in a line what is wrong with them."""
        try:
            return "\n".join(advise(self.talk.brief, "what-if", text).lines)
        except (AdviceError, SpecError) as fault:
            return str(fault)

    def change(self, key: str) -> Snapshot:
        """Take the next words as the new value of one fact ("product.weight@1")."""
        field, _, size = key.partition("@")
        self._changing = field, int(size or 1)
        return self._shot(())

    def leave_be(self) -> Snapshot:
        """No new value after all: what stands is kept."""
        return self._go_on(("Left as it is.",) if self._changing else ())

    def unknown(self) -> Snapshot:
        """The visitor does not know."""
        return self._close(self.talk.unknown)

    def later(self) -> Snapshot:
        """The visitor will check."""
        return self._close(self.talk.later)

    def _close(self, deed: Callable[[], None]) -> Snapshot:
        if self._question is None:
            return self._shot(("No question is open.",))
        deed()
        return self._go_on((reply_line(self.talk.events[-1]),))

    def back(self) -> Snapshot:
        """Take back the last answer and ask it again."""
        self._question, self._changing = self.talk.back(), None
        return self._shot(("Back to the question before.",))

    def undo(self) -> Snapshot:
        """Take back the last thing that happened."""
        return self._go_on(("Taken back.",) if self.talk.undo() else ("There is nothing to take back.",))

    def redo(self) -> Snapshot:
        """Put back what was taken back."""
        return self._go_on(("Put back.",) if self.talk.redo() else ("There is nothing to put back.",))

    def put(self, id: str) -> Snapshot:
        """Ask a question out of order."""
        self._question, self._changing = self.talk.put(id), None
        return self._shot(())

    def note(self, text: str) -> Snapshot:
        """A note of the staff."""
        self.talk.note(text)
        return self._shot((f"Noted: {one_line(text)}",))

    def _go_on(self, lines: tuple[str, ...]) -> Snapshot:
        self._changing = None
        self._keep()  # before the sizing, which may take a second
        self._question = self.talk.ask()
        return self._shot(lines)

    def _shot(self, lines: tuple[str, ...]) -> Snapshot:
        self._keep()
        news = tuple(self._standing.news(self.talk.result(), self.talk.system))
        shown = snapshot(self.talk, self._question, (*lines, *news), self._asks_anew(), self._turn)
        if self._keeper is not None and self.trouble is None and self.talk.events:
            self._keeper.index(self.talk)
        return shown

    def _asks_anew(self) -> str:
        """What stands in place of the question while a fact is being changed."""
        if self._changing is None:
            return ""
        field, size = self._changing
        fact = self.talk.case.facts.get(self._changing)
        stands = "" if fact is None else f" It stands at {show_value(field, fact, self.talk.system)}."
        return f"Type the new {label(field, size)}; it replaces what stands. Enter alone leaves it.{stands}"

    def _keep(self) -> None:
        if self._keeper is not None and self.talk.events:
            self.trouble = self._keeper.keep(self.talk)
