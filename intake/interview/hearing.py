"""One message taken in: read, matched against the options of what was asked, corrections and short replies known."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Literal

from intake import reading
from intake.interview.question import Question
from intake.interview.replies import Replies
from intake.spec.case import Case
from intake.spec.facts import Fact, Heard

Reply = Literal["facts", "passed", "unknown", "later", "back"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """What a message means here. `settles`: fields on which it has the last word; `kept`: an earlier reading chosen."""

    reply: Reply
    heard: Heard
    corrects: bool = False
    settles: tuple[str, ...] = ()
    unknown: tuple[str, ...] = ()
    later: tuple[str, ...] = ()
    kept: Fact | None = None


class Hearing:
    """Takes messages in, for one questions folder."""

    def __init__(self, folder: Path) -> None:
        self._folder, self._replies = folder, Replies(folder)

    def take(self, text: str, question: Question | None, case: Case, lately: Sequence[str]) -> Taken:
        """What this text means as an answer to `question`, or as a message of its own.

        `text` is clean. `lately`: the fields of the last answer, which a bare "sorry, 45" speaks of.
        """
        if question is not None and self._replies.is_just("back", text):
            return Taken(reply="back", heard=Heard())
        asked = question.fields if question is not None else ()
        if self._replies.corrects(text):
            return self._correction(text, asked, lately)
        if question is not None and question.kind != "question":
            cleared = self._clear_up(text, question, case)
            if cleared is not None:
                return cleared
        heard = self._read(text, asked)
        if self._replies.thinks_again(text) and not any(fact.field in asked for fact in heard.facts):
            return self._correction(text, asked, lately)
        if question is None:
            return Taken(reply="facts", heard=heard)
        return self._answer(text, question, heard, case)

    def _answer(self, text: str, question: Question, heard: Heard, case: Case) -> Taken:
        said = {fact.field for fact in heard.facts} | {doubt.field for doubt in heard.doubts}
        silent = tuple(name for name in question.fields if name not in said and (name, 1) not in case.facts)
        # What was doubted or quarrelled about stands or falls as a whole: one word on it is enough.
        answered = bool(said & set(question.fields))
        later = self._replies.means("later", text) and not answered
        unknown = not later and self._replies.means("dont_know", text) and not answered
        if not heard.facts and not heard.doubts and (later or unknown):
            return Taken(reply="later" if later else "unknown", heard=heard)
        return Taken(
            reply="facts",
            heard=heard,
            settles=tuple(sorted(said & set(question.fields))),
            unknown=silent if unknown else (),
            later=silent if later else (),
        )

    def _clear_up(self, text: str, question: Question, case: Case) -> Taken | None:
        """An answer to a doubt or conflict by its options, or by a word that completes what was read before."""
        facts = tuple(option.fact for option in question.options if option.fact is not None)
        may_stand = bool(question.options) and not facts
        if may_stand and self._replies.means("yes", text) and not self._read(text, question.fields).facts:
            return Taken(reply="passed", heard=Heard())
        place = self._replies.ordinal(text)
        if place is not None and place < len(facts):
            return _choice(facts[place])
        plain = text.strip().casefold()
        named = [option.fact for option in question.options if option.label.casefold() == plain]
        if len(named) == 1 and named[0] is not None:
            return _choice(named[0])
        if question.id.startswith("doubt:"):
            return self._completed(text, question, case)
        return None

    def _completed(self, text: str, question: Question, case: Case) -> Taken | None:
        """ "12", then "inches": read together where the answer alone gives no fact."""
        field = question.fields[0]
        doubt = next((doubt for doubt in case.doubts if doubt.field == field), None)
        if doubt is None or any(fact.field == field for fact in self._read(text, (field,)).facts):
            return None
        if self._replies.means("dont_know", text) or self._replies.means("later", text):
            return None
        for together in (f"{doubt.said} {text}", f"{text} {doubt.said}"):
            found = [fact for fact in self._read(together, (field,)).facts if fact.field == field]
            if found:
                return _choice(replace(found[0], said=together, span=None))
        return None

    def _correction(self, text: str, asked: tuple[str, ...], lately: Sequence[str]) -> Taken:
        """ "Sorry, 45": of the last answer if it can be, else of what is asked now; what it says has the last word."""
        of_last = self._read(text, tuple(lately))
        if any(fact.field in lately for fact in of_last.facts):
            return Taken(reply="facts", heard=of_last, corrects=True)
        return Taken(reply="facts", heard=self._read(text, asked), corrects=True, settles=asked)

    def _read(self, text: str, asked: tuple[str, ...]) -> Heard:
        return reading.read(text, asked=asked or None, questions=self._folder)


def _choice(fact: Fact) -> Taken:
    return Taken(reply="facts", heard=Heard(), settles=(fact.field,), kept=fact)
