"""One message taken in: read, matched against the options of what was asked, corrections and short replies known."""

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Literal

from intake import reading
from intake.interview.by_order import by_order
from intake.interview.question import Question
from intake.interview.replies import Replies
from intake.interview.wording import Sentences
from intake.spec.case import Case
from intake.spec.facts import Fact, Heard
from intake.spec.inquiry import Inquiry
from intake.spec.vocabulary import vocabulary

_CLAUSE = re.compile(r"[,.;:]\s|\s[-–]\s|\bbut\b")
_LEAD = re.compile(r"^(?:it's|its|it is|that's|in)\s+(?=\w)", re.IGNORECASE)  # "in metres"; "in" alone is inches
_WORD = re.compile(r"[\w.,/]*\w")
_FILLERS = frozenset({"the", "it", "is", "it's", "that", "that's", "s", "a", "at", "of", "i", "think", "hand"})

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


@dataclass(frozen=True, slots=True, kw_only=True)
class Preview:
    """What a message would give. `words` are clean, and all places count in them; `asks`: the visitor's questions."""

    words: str
    heard: Heard
    asks: tuple[Inquiry, ...]
    reply: Reply


class Hearing:
    """Takes messages in, for one questions folder. `by_ear`: those that staff typed while listening, in shorthand."""

    def __init__(self, folder: Path, sentences: Sentences, *, by_ear: bool = False) -> None:
        self._folder, self._replies, self._sentences = folder, Replies(folder, by_ear=by_ear), sentences
        self._by_ear = by_ear

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
        return self._all_but(text, question, case) or self._answer(
            text, question, self._placed(text, question, heard), case
        )

    def _placed(self, text: str, question: Question, heard: Heard) -> Heard:
        """What the reader could not place among several fields asked for, by their order."""
        if question.kind != "question":
            return heard
        placed = by_order(text, question.fields, heard, self._folder, self._sentences)
        texts = [name for name in question.fields if vocabulary()[name].kind == "text"]
        if len(texts) < 2 or placed.facts or placed.doubts or self._replies.means("dont_know", text):
            return placed
        return self._read(text, (texts[0],))  # two things asked for, one told: the first

    def _answer(self, text: str, question: Question, heard: Heard, case: Case) -> Taken:
        said = {fact.field for fact in heard.facts} | {doubt.field for doubt in heard.doubts}
        silent = tuple(name for name in question.fields if name not in said and (name, 1) not in case.facts)
        # What was doubted or quarrelled about stands or falls as a whole: one word on it is enough.
        answered = bool(said & set(question.fields))
        later = self._replies.means("later", text) and not answered
        unknown = not later and self._replies.means("dont_know", text) and not answered
        guess = self._guess(text, question.fields) if unknown else None
        if guess is not None:
            return Taken(reply="facts", heard=guess, settles=tuple(sorted({fact.field for fact in guess.facts})))
        if not heard.facts and not heard.doubts and (later or unknown):
            return Taken(reply="later" if later else "unknown", heard=heard)
        return Taken(
            reply="facts",
            heard=heard,
            settles=tuple(sorted(said & set(question.fields))),
            unknown=silent if unknown else (),
            later=silent if later else (),
        )

    def _all_but(self, text: str, question: Question, case: Case) -> Taken | None:
        """ "No idea, but the ceiling is at 5 m": what comes behind is read alone, what else was asked is not known."""
        head, but, _ = text.partition(" but ")
        if not but or not self._replies.means("dont_know", head) or self._read(head, question.fields).facts:
            return None
        start = len(head) + len(but)
        rest = self._read(text[start:], question.fields)
        facts = tuple(_moved(fact, start) for fact in rest.facts if fact.span is not None)
        if not any(fact.field in question.fields for fact in facts):
            return None
        said = {fact.field for fact in facts}
        silent = tuple(name for name in question.fields if name not in said and (name, 1) not in case.facts)
        heard = Heard(facts=facts, unread=rest.unread)
        return Taken(reply="facts", heard=heard, settles=tuple(sorted(said & set(question.fields))), unknown=silent)

    def _guess(self, text: str, asked: tuple[str, ...]) -> Heard | None:
        """ "Not sure, maybe 40": what follows the not knowing, taken as a guess; None where nothing follows."""
        for cut in _CLAUSE.finditer(text):
            rest = self._read(text[cut.end() :], asked)
            facts = [
                replace(_moved(fact, cut.end()), hedged=True)
                for fact in rest.facts
                if fact.field in asked and fact.span is not None
            ]
            if facts:
                return Heard(facts=tuple(facts))
        return None

    def _clear_up(self, text: str, question: Question, case: Case) -> Taken | None:
        """An answer to a doubt or conflict by its options, or by a word that completes what was read before."""
        facts = tuple(option.fact for option in question.options if option.fact is not None)
        may_stand = bool(question.options) and not facts
        if may_stand and self._replies.means("yes", text) and not self._read(text, question.fields).facts:
            return Taken(reply="passed", heard=Heard())
        place = self._replies.ordinal(text)
        if place is not None and place < len(facts):
            return _choice(facts[place], question)
        named = [option.fact for option in question.options if option.fact is not None and _names(text, option.label)]
        if len(named) == 1:
            return _choice(named[0], question)
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
        bare = _LEAD.sub("", text.strip())
        for together in (f"{doubt.said} {bare}", f"{bare} {doubt.said}"):
            found = [fact for fact in self._read(together, (field,)).facts if fact.field == field]
            if found:
                return _choice(replace(found[0], said=together, span=None), question)
        return None

    def _correction(self, text: str, asked: tuple[str, ...], lately: Sequence[str]) -> Taken:
        """ "Sorry, 45": of the last answer if it can be, else of what is asked now; what it says has the last word."""
        of_last = self._read(text, tuple(lately))
        if any(fact.field in lately for fact in of_last.facts):
            return Taken(reply="facts", heard=of_last, corrects=True)
        return Taken(reply="facts", heard=self._read(text, asked), corrects=True, settles=asked)

    def _read(self, text: str, asked: tuple[str, ...]) -> Heard:
        return reading.read(text, asked=asked or None, questions=self._folder, shorthand=self._by_ear)


def _moved(fact: Fact, by: int) -> Fact:
    """A fact read from the end of a message, with its place in the whole of it."""
    start, end = fact.span or (0, 0)
    return replace(fact, span=(start + by, end + by))


def _names(text: str, label: str) -> bool:
    """True when the words name this option: "the rise", "discharge", "15 kg, I think"."""
    said, named = (set(_WORD.findall(words.casefold())) - _FILLERS for words in (text, label))
    return bool(said) and bool(named) and (said <= named or named <= said)


def _choice(fact: Fact, question: Question) -> Taken:
    return Taken(reply="facts", heard=Heard(), settles=(*question.fields, fact.field), kept=fact)
