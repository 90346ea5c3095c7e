"""Plays a conversation through the real interview and compares the end with what the file expects."""

import time
from collections.abc import Iterator
from math import isclose
from typing import Any

from intake.advice import follow_up_lines, recommendation
from intake.cli.conversation import Conversation, Turn
from intake.desk.talk_text import Standing, answer_lines, family_lines, heard_lines, reply_line
from intake.interview.question import Question
from intake.sizing import size
from intake.sizing.result import Result
from intake.spec import Spec
from intake.spec.clean import clean
from intake.spec.display import System, system_of
from intake.talk import Interview

_SIGNS_PER_SECOND = 25.0  # a quick reader; common practice, no source


class Player:
    """One performance. `talk` is the interview as it stands; `bests` the best families one after the other."""

    def __init__(self, conversation: Conversation, units: System | None = None) -> None:
        self.conversation = conversation
        self.talk = Interview()
        self.bests: list[str] = []
        self._units = units
        self._standing = Standing()

    @property
    def system(self) -> System:
        """The units to show: those asked for, else those that the visitor uses."""
        said = [turn.says for turn in self.conversation.turn if turn.who == "visitor"]
        return self._units or system_of(said)

    def lines(self) -> Iterator[str]:
        """The whole performance, line by line, ending with the result."""
        yield f"== {self.conversation.title}"
        if self.conversation.scenario:
            yield self.conversation.scenario
        for turn in self.conversation.turn:
            yield ""
            yield from self._turn(turn)
            result = size(self.talk.spec())
            for line in self._standing.news(result, self.system):
                yield f"  {line}"
            if result.best and self.bests[-1:] != [result.best]:
                self.bests.append(result.best)
        yield ""
        yield from self._end(self.talk.result())

    def _turn(self, turn: Turn) -> Iterator[str]:
        question = self._question(turn)
        if question is not None:
            yield f"Desk asks: {question.say}"
        if turn.does is not None:
            yield f"Staff: ({turn.does.replace('unknown', 'the visitor does not know')}) {turn.says}".rstrip()
            self._deed(turn, question)
            return
        yield f"{turn.who.capitalize()}: {turn.says}"
        if turn.who == "staff":
            return
        before = len(self.talk.inquiries)
        heard = self.talk.answer(turn.says, to=question.id) if question else self.talk.hear(turn.says)
        asks = self.talk.inquiries[before:]
        for line in (*heard_lines(heard, self.system), *answer_lines(map(self.talk.reply_to, asks))):
            yield f"  {line}"
        if not (heard.facts or heard.doubts or heard.unread or asks):
            yield f"  {reply_line(self.talk.events[-1])}"

    def _question(self, turn: Turn) -> Question | None:
        """The open question for the fields that the turn is about; None when it is about none or nothing is open."""
        if not turn.about:
            return None
        wanted = set(turn.about)
        found = next((q for q in self.talk.open_questions() if wanted & set(q.fields)), None)
        return self.talk.put(found.id) if found is not None else None

    def _deed(self, turn: Turn, question: Question | None) -> None:
        to = question.id if question else None
        if turn.does == "unknown":
            self.talk.unknown(to=to)
        elif turn.does == "later":
            self.talk.later(to=to)
        elif turn.does == "undo":
            self.talk.undo()
        elif turn.does == "back":
            self.talk.back()
        else:
            self.talk.note(turn.says)

    def _end(self, result: Result) -> Iterator[str]:
        if result.standing:
            yield "== What stands at the end"
            yield from family_lines(result, self.system, out=False)
            yield ""
        yield "== Recommendation"
        yield from recommendation(result, Spec.from_flat(self.talk.spec()), self.system)
        yield ""
        yield "== To find out"
        yield from follow_up_lines(self.talk.follow_ups())

    def missed(self) -> list[str]:
        """How the end differs from what the file expects; empty when it does not."""
        expect = self.conversation.expect
        result = size(self.talk.spec())
        lines = []
        if expect.refers_out and not result.refer_out:
            lines.append(f"it should be referred out, and {result.best} is best")
        if expect.best and result.best != expect.best:
            lines.append(f"best should be {expect.best} and is {result.best}")
        if expect.changes_best and len(self.bests) < 2:
            lines.append("the best family should change on the way and did not")
        for name in expect.out:
            if result.families[name].verdict != "out":
                lines.append(f"{name} should be out and is {result.families[name].verdict}")
        lines += [f"{name} should stand and is out" for name in expect.standing if name not in result.standing]
        lines += [f"the flag {flag} should be up" for flag in expect.flags if flag not in result.flags]
        return lines + list(_other_facts(expect.facts, self.talk.spec()))


def _other_facts(wanted: dict[str, Any], got: dict[str, Any]) -> Iterator[str]:
    """Facts that are not as expected. Figures agree within a thousandth."""
    for key, value in wanted.items():
        if not _same(value, got.get(key)):
            yield f"{key} should be {value} and is {got.get(key)}"


def _same(wanted: Any, got: Any) -> bool:
    if isinstance(got, dict) and "value" in got:
        got = got["value"]
    if isinstance(got, dict):
        got = [got.get("low"), got.get("high")]
    if isinstance(wanted, list) and isinstance(got, list):
        return all(_same(a, b) for a, b in zip(wanted, got, strict=True))
    numbers = all(isinstance(v, int | float) and not isinstance(v, bool) for v in (wanted, got))
    return isclose(wanted, got, rel_tol=1e-3) if numbers else bool(wanted == got)


def play(conversation: Conversation, *, pace: float, units: System | None) -> list[str]:
    """Print it, waiting as for reading at `pace` times that speed (0: at once). Returns what was missed."""
    player = Player(conversation, units)
    for line in player.lines():
        print(clean(line), flush=pace > 0)
        if pace > 0:
            time.sleep(len(line) / _SIGNS_PER_SECOND / pace)
    return player.missed()
