"""The talk in plain lines, for `ask` and `replay`: what was understood, which machines stand, what is asked next.

Every line starts with what it is ("Understood:", "Out:", "Ask:"), so that a screen reader says it first.
"""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from intake.advice import family_name, verdict_line
from intake.advice.cards import CardAnswer
from intake.desk.lights import fact_words
from intake.interview.question import Question
from intake.sizing.result import Result
from intake.spec import Case, Event, Fact, Heard
from intake.spec.clean import one_line
from intake.spec.display import System

_REPLIES = {
    "heard": "nothing in that line is a fact that the interview asks for.",
    "unknown": "the visitor does not know. It becomes an open point.",
    "later": "the visitor will check. It becomes an open point.",
    "passed": "what stands is right.",
    "asked": "one question back.",
}
_SIGN = {"fits": "+", "depends": "?", "out": "-"}


def heard_lines(heard: Heard, system: System) -> Iterator[str]:
    """What one message gave: facts with their words, what needs a question back, what was not used."""
    for fact in heard.facts:
        yield f'Understood: {fact_words(fact, system)}, from "{one_line(fact.said)}"'
    for doubt in heard.doubts:
        yield f'To clear up: "{one_line(doubt.said)}": {one_line(doubt.why)}'
    for piece in heard.unread:
        yield f'Not used: "{one_line(piece)}"'


def heard_briefly(heard: Heard, system: System) -> Iterator[str]:
    """The same where the words themselves are lit: the facts in one line."""
    if heard.facts:
        yield f"Understood: {'; '.join(fact_words(fact, system) for fact in heard.facts)}"
    yield from heard_lines(replace(heard, facts=()), system)


def reply_line(last: Event) -> str:
    """What became of words that gave no fact, no doubt and nothing unread, told by the event they made."""
    return f"Understood: {_REPLIES.get(last.kind, _REPLIES['heard'])}"


def answer_lines(replies: Iterable[CardAnswer]) -> Iterator[str]:
    """What the visitor asked, a draft of the answer from the case, and what else may be meant."""
    for reply in replies:
        yield f'They ask: "{one_line(reply.asked)}"'
        yield from (f"Answer: {line}" for line in reply.lines)
        if reply.card is None:
            yield "No card answers that for sure; it becomes a follow-up for engineering."
        yield from (f"Or they mean: {near.about}" for near in reply.near)


def question_lines(question: Question) -> Iterator[str]:
    """The next question, worded to be sent as it is, the reason for it, and ready answers."""
    yield f"Ask: {one_line(question.say)}"
    for number, option in enumerate(question.options, 1):
        yield f"  {number}. {one_line(option.label)}"
    yield f"Why: {one_line(question.why)}"


def fact_lines(case: Case, facts: Iterable[Fact], system: System) -> Iterator[str]:
    """What stands now, each with who said it, how, and in which words."""
    for fact in facts:
        words = f', "{one_line(fact.said)}"' if fact.said else ""
        yield f"{fact_words(fact, system)} ({case.origin(fact)}{words})"


def family_lines(result: Result, system: System, *, out: bool = True) -> Iterator[str]:
    """Every family with its verdict and the reason, the standing ones first; without `out` only those."""
    gone = [name for name in result.families if name not in result.standing] if out else []
    for name in (*result.standing, *gone):
        yield f"{_SIGN[result.families[name].verdict]} {_family(name, result, system)}"


class Standing:
    """Remembers which families stood, and tells what a message changed."""

    def __init__(self) -> None:
        self._verdicts: dict[str, str] = {}
        self._best: str | None = None

    def news(self, result: Result, system: System) -> Iterator[str]:
        """One line for each family that went out or came back, and for a new best one."""
        for name, found in result.families.items():
            before = self._verdicts.get(name)
            if found.verdict == "out" and before != "out":
                yield f"Out: {_family(name, result, system, 'out: ')}"
            elif before == "out" and found.verdict != "out":
                yield f"Back in: {_family(name, result, system)}"
        self._verdicts = {name: found.verdict for name, found in result.families.items()}
        if result.best != self._best:
            yield f"Best so far: {family_name(result.best) if result.best is not None else 'none yet'}"
            self._best = result.best


def _family(name: str, result: Result, system: System, said_before: str = "") -> str:
    """Name, verdict and reason. `said_before`: what the line has said of the verdict already."""
    return f"{family_name(name)}: {verdict_line(result.families[name], result, system).removeprefix(said_before)}"
