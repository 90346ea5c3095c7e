"""What a key or a message does to the talk. Runs away from the screen; one step at a time."""

from collections.abc import Callable

from intake.desk.keeping import Keeper
from intake.desk.snapshot import Snapshot, snapshot
from intake.interview.question import Question
from intake.spec.clean import one_line
from intake.spec.display import System, label, show_value
from intake.spec.facts import Fact, Heard
from intake.talk import Interview

Step = Callable[[], Snapshot]


class Steps:
    """The talk and its book, behind the calls that the screen makes."""

    def __init__(self, talk: Interview, keeper: Keeper | None) -> None:
        self.talk, self._keeper = talk, keeper
        self._question: Question | None = None
        self._changing: str | None = None

    def start(self) -> Snapshot:
        """What stands when the desk opens."""
        lines = [f'{who}: "{one_line(text)}"' for text, who in self.talk.case.messages.values()][-20:]
        if self.talk.facts:
            self._question = self.talk.ask()
        return self._shot(tuple(lines))

    def say(self, text: str) -> Snapshot:
        """The visitor's words: the new value of a fact picked, an answer to the open question, or a message."""
        if self._changing is not None:
            heard = self.talk.answer(text, to=self._changing)
            self._changing = None
        else:
            heard = self.talk.answer(text) if self._question is not None else self.talk.hear(text)
        lines = tuple(heard_lines(heard, self.talk.system))
        return self._go_on(lines or (told_of(self.talk.events[-1].kind),))

    def change(self, key: str) -> Snapshot:
        """Ask again for a fact that stands ("product.weight@1"), so that the answer replaces it."""
        field = key.partition("@")[0]
        self._question = self.talk.put(field)
        self._changing = self._question.id
        return self._shot((f"Say {label(field)} anew; the answer replaces what stands.",))

    def unknown(self) -> Snapshot:
        """The visitor does not know."""
        return self._close(self.talk.unknown, "The visitor does not know: it becomes an open point.")

    def later(self) -> Snapshot:
        """The visitor will check."""
        return self._close(self.talk.later, "The visitor will check: it becomes an open point.")

    def _close(self, deed: Callable[[], None], told: str) -> Snapshot:
        if self._question is None:
            return self._shot(("No question is open.",))
        deed()
        return self._go_on((told,))

    def back(self) -> Snapshot:
        """Take back the last answer and ask it again."""
        self._question = self.talk.back()
        return self._shot(("Back to the question before.",))

    def undo(self) -> Snapshot:
        """Take back the last thing that happened."""
        return self._go_on(("Taken back.",) if self.talk.undo() else ("There is nothing to take back.",))

    def redo(self) -> Snapshot:
        """Put back what was taken back."""
        return self._go_on(("Put back.",) if self.talk.redo() else ("There is nothing to put back.",))

    def put(self, id: str) -> Snapshot:
        """Ask a question out of order."""
        self._question = self.talk.put(id)
        return self._shot(())

    def note(self, text: str) -> Snapshot:
        """A note of the staff."""
        self.talk.note(text)
        return self._shot((f"Noted: {one_line(text)}",))

    def _go_on(self, lines: tuple[str, ...]) -> Snapshot:
        self._changing = None
        self._question = self.talk.ask()
        return self._shot(lines)

    def _shot(self, lines: tuple[str, ...]) -> Snapshot:
        trouble = self._keeper.keep(self.talk) if self._keeper is not None and self.talk.events else None
        return snapshot(self.talk, self._question, lines, trouble)


def told_of(kind: str) -> str:
    """What became of words that gave no fact, by the event they made."""
    return {
        "unknown": "The visitor does not know: it becomes an open point.",
        "later": "The visitor will check: it becomes an open point.",
        "passed": "What stands is right.",
        "asked": "Back to the question before.",
    }.get(kind, "No fact for the spec in that; it stays in the talk.")


def heard_lines(heard: Heard, system: System) -> list[str]:
    """What was understood of one message, line by line."""
    lines = [f'understood {_fact(fact, system)} <- "{one_line(fact.said)}"' for fact in heard.facts]
    lines += [f'to clear up "{one_line(doubt.said)}": {one_line(doubt.why)}' for doubt in heard.doubts]
    lines += [f'not used "{one_line(piece)}"' for piece in heard.unread]
    return lines


def _fact(fact: Fact, system: System) -> str:
    return f"{label(fact.field, fact.size)}: {show_value(fact.field, fact, system)}"
