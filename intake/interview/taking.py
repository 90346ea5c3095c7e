"""How a message goes into a case: read, put right by staff, kept as events with the visitor's own questions in it."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from intake.interview.hearing import Hearing, Preview, Reply, Taken
from intake.interview.history import History
from intake.interview.mending import Mend, mended, mended_body
from intake.interview.question import Question
from intake.interview.recording import as_heard, heard_body, heard_facts, only_said, without_asked
from intake.interview.wording import Sentences
from intake.interview.zeros import without_zeros
from intake.spec.clean import clean
from intake.spec.facts import Fact, Heard, Who
from intake.spec.inquiry import Inquiry

Spotted = tuple[tuple[int, int], str | None, frozenset[str]]
"""A question of the visitor's own: its place, the card that answers it, the fields that it asks about."""

Spot = Callable[[str, Sequence[Fact]], Sequence[Spotted]]
"""Finds the visitor's own questions in words from which these facts were read."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoken:
    """Words on their way into a case.

    `size`: the product size that the fields of the question speak of. `by_ear`: typed while listening. `mends`: what
    staff say that its words are. `instead`: the reading of the same words that this one stands for.
    """

    text: str
    who: Who = "visitor"
    size: int = 1
    by_ear: bool = False
    mends: Sequence[Mend] = ()
    instead: int | None = None


class Taking:
    """Takes messages into one history."""

    def __init__(self, history: History, folder: Path, sentences: Sentences, spot: Spot) -> None:
        self._history, self._spot = history, spot
        self._hearing = Hearing(folder, sentences)
        self._by_ear = Hearing(folder, sentences, by_ear=True)

    @property
    def hearing(self) -> Hearing:
        """What takes written words in."""
        return self._hearing

    def preview(self, spoken: Spoken, question: Question | None) -> Preview:
        """What a message would give. Nothing of it is kept."""
        words = clean(spoken.text)
        read, found = self._read(words, question, spoken)
        taken = mended(read, spoken.mends, words)
        asks = tuple(Inquiry(text=words[slice(*span)], message=0, span=span, card=card) for span, card, _ in found)
        return Preview(words=words, heard=taken.heard, asks=asks, reply=taken.reply)

    def take(self, spoken: Spoken, question: Question | None) -> tuple[Reply, Heard]:
        """A message, as an answer to `question` or one of its own. Of "back" nothing is kept: that is the caller's."""
        words = clean(spoken.text)
        read, found = self._read(words, question, spoken)
        taken = mended(read, spoken.mends, words)
        if taken.reply == "back":
            return "back", taken.heard
        message = self.message(words, spoken.who, by_ear=spoken.by_ear)
        if question is not None and taken.reply in ("unknown", "later", "passed"):
            self.close(taken.reply, question, message, spoken.instead)
            return taken.reply, taken.heard
        at = self._history.events[-1].at
        facts = heard_facts(taken, message, spoken.who, at)
        if question is not None and spoken.size != 1:
            fields = question.fields
            facts = tuple(replace(fact, size=spoken.size) if fact.field in fields else fact for fact in facts)
        asks = [{"span": list(span), "card": card} for span, card, _ in found]
        body = heard_body(taken, facts, question, self._history.case, message, spoken.who, at, asks)
        more = only_said(mended=mended_body(read, spoken.mends), instead=spoken.instead)
        self._history.append("heard", **body, **more)
        return taken.reply, as_heard(taken, facts)

    def message(self, text: str, who: Who, *, by_ear: bool = False) -> int:
        """Keep somebody's words. Returns the number of the event."""
        how = {"how": "ear"} if by_ear else {}
        return self._history.append("message", text=clean(text), who=who, **how).seq

    def close(self, kind: str, question: Question, message: int | None = None, instead: int | None = None) -> None:
        """A question answered without a fact."""
        known = {name for name, _ in self._history.case.facts}
        if question.kind != "question" and kind == "unknown" and known & set(question.fields):
            kind = "passed"
        body: dict[str, Any] = {"question": question.id, "fields": list(question.fields)}
        body |= {"stood": question.stood} if question.kind != "question" else {}
        self._history.append(kind, **body, **only_said(message=message, instead=instead))

    def _read(self, words: str, question: Question | None, spoken: Spoken) -> tuple[Taken, Sequence[Spotted]]:
        """What a message means here, and the visitor's own questions in it."""
        hearing = self._by_ear if spoken.by_ear else self._hearing
        taken = without_zeros(hearing.take(words, question, self._history.case, self._history.lately()))
        if taken.reply != "facts":
            return taken, ()
        found = self._spot(words, taken.heard.facts) if spoken.who == "visitor" else ()
        return without_asked(taken, [(span, about) for span, _, about in found], words), found
