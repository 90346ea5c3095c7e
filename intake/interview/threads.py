"""A whole thread taken in: its turns are played one after the other, as if the talk had been held here.

Each stretch of a turn becomes a message of its own rather than the whole paste one message: so it is undone, handed on
and shown like any message, the places of facts mean the same everywhere, and what nobody needs (names, addresses in
headers, signatures of the staff's programs) never enters the case.
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import zip_longest
from pathlib import Path
from typing import Any

from intake.interview.hearing import Hearing, Taken
from intake.interview.history import History
from intake.interview.nods import Nods, figures_alone
from intake.interview.question import Question
from intake.interview.recording import heard_body, heard_facts, only_said, without_asked
from intake.interview.taking import Spot
from intake.interview.tree import Tree
from intake.interview.units_told import unit_told
from intake.interview.wording import Sentences
from intake.reading.text.portions import portions
from intake.reading.thread import Asked, Part, Turn, asked_in, split_thread
from intake.spec.case import advance, fold
from intake.spec.clean import LONGEST, Cleaned, clean_with_places
from intake.spec.display import label, show_value, system_of
from intake.spec.events import Event
from intake.spec.facts import Doubt, Fact, Heard


@dataclass(frozen=True, slots=True, kw_only=True)
class Thread:
    """A thread as it was understood. Spans of turns and facts are places in the whole text, `text[a:b] == said`.

    `facts`: what stands in the end, out of this thread. `doubts`: what needs a question back, two different values of
    one field among them. `unread`: pieces with a figure or a known word that no fact used.
    """

    turns: tuple[Turn, ...]
    facts: tuple[Fact, ...]
    doubts: tuple[Doubt, ...]
    unread: tuple[str, ...]

    def to_json(self) -> dict[str, Any]:
        """The shape promised to scripts."""
        return {
            "turns": [turn.to_json() for turn in self.turns],
            "facts": [fact.to_json() for fact in self.facts],
            "doubts": [doubt.to_json() for doubt in self.doubts],
            "unread": list(self.unread),
        }


class ThreadPlayer:
    """Plays one text into a talk. The case is carried along event by event, so that a long log stays quick."""

    def __init__(
        self, history: History, hearing: Hearing, tree: Tree, folder: Path, sentences: Sentences, spot: Spot
    ) -> None:
        self._history, self._hearing, self._tree, self._folder = history, hearing, tree, folder
        self._sentences, self._spot = sentences, spot
        self._nods = Nods(folder)
        self._case = fold(history.events)
        self._lately = history.lately()
        self._places: dict[int, tuple[Part, int, Cleaned]] = {}
        self._unread: list[str] = []
        self._waiting: list[str] = []
        """What the staff said since the visitor last spoke."""
        self._asked_last = ""
        self._open = Asked()
        """What was asked and not answered yet."""

    def play(self, text: str) -> Thread:
        """Take in all turns of a text, and say what stands of it."""
        before = {id(doubt) for doubt in self._case.doubts}, dict(self._case.quarrels)
        turns = split_thread(text, questions=self._folder)
        for turn in turns:
            for part in turn.parts:
                if turn.who == "staff":
                    self._staff(part, turn.at)
                else:
                    self._visitor(part, turn.at)
        if self._waiting:
            self._ask(asked_in(self._waiting, self._folder))
        facts = sorted(
            (self._in_whole(text, fact) for fact in self._case.facts.values() if fact.message in self._places),
            key=lambda fact: (fact.span or (0, 0), fact.field),
        )
        doubts = [doubt for doubt in self._case.doubts if id(doubt) not in before[0]]
        quarrels = [self._quarrel(text, *row) for row in self._case.quarrels.items() if before[1].get(row[0]) != row[1]]
        return Thread(turns=turns, facts=tuple(facts), doubts=(*doubts, *quarrels), unread=tuple(self._unread))

    # --- what each side says ---

    def _staff(self, part: Part, at: str | None) -> None:
        for words, _, _ in _messages(part):
            self._append("message", text=words, who="staff", **only_said(sent=at))
            self._waiting.append(words)

    def _visitor(self, part: Part, at: str | None) -> None:
        if part.before or self._waiting:
            said = [part.before] if part.before else self._waiting
            self._open, self._asked_last, self._waiting = asked_in(said, self._folder), said[-1], []
        question = self._ask(self._open)
        items = _numbered(part.text)
        if items and question is not None:
            self._numbered_answers(part, at, question, items)
            return
        self._take_in(part, at, question, (0, len(part.text)))

    def _numbered_answers(
        self, part: Part, at: str | None, question: Question, items: Sequence[tuple[int, int]]
    ) -> None:
        """ "1. 12 kg 2. 20": each is for the question of its number; the numbers themselves say nothing."""
        whole, each = self._open, self._open.each
        for n, item in enumerate(items):
            fields = each[n] if len(each) == len(items) else whole.fields
            self._open = replace(whole, fields=fields, last=fields, offer="")
            self._take_in(part, at, replace(question, fields=fields), item)
        self._open = Asked()

    def _take_in(self, part: Part, at: str | None, question: Question | None, place: tuple[int, int]) -> None:
        """A stretch of the visitor's words as messages."""
        for words, start, cleaned in _messages(part, place):
            message = self._append("message", text=words, who="visitor", **only_said(sent=at)).seq
            self._places[message] = (part, start, cleaned)
            self._hear(words, message, question)
            question = self._narrowed(question)

    def _ask(self, asked: Asked) -> Question | None:
        """The question of the tree that these fields belong to, noted as asked; None where nothing is asked."""
        entry = next((found for name in asked.fields if (found := self._tree.for_field(name)) is not None), None)
        if entry is None:
            return None
        if not self._case.asked or self._case.asked[-1] != entry.id or self._open is not asked:
            self._append("asked", question=entry.id, fields=list(asked.fields), branch=entry.branch)
        return Question(id=entry.id, kind="question", fields=asked.fields, say="", why="", branch=entry.branch)

    def _narrowed(self, question: Question | None) -> Question | None:
        """The question with what is still silent; None when all of it was answered."""
        if question is None:
            return None
        said = {name for name, _ in self._case.facts} | self._case.unknown | self._case.later
        fields = tuple(name for name in question.fields if name not in said)
        self._open = replace(self._open, fields=fields, last=tuple(n for n in self._open.last if n in fields))
        return replace(question, fields=fields) if fields else None

    # --- one message of the visitor ---

    def _hear(self, words: str, message: int, question: Question | None) -> None:
        told = unit_told(words, self._asked_last, self._case.doubts, self._folder) if self._case.doubts else ()
        if told:
            taken = Taken(reply="facts", heard=Heard(facts=told), settles=tuple(fact.field for fact in told))
            at = self._history.events[-1].at
            self._append("heard", **heard_body(taken, told, question, self._case, message, "visitor", at))
            self._lately = taken.settles
            return
        nod = self._nods.of(words, self._open, question)
        if self._open.unknown and question is None and figures_alone(words):
            taken = Taken(reply="facts", heard=Heard(unread=(words.strip(),)))  # an answer to nobody knows what
        elif nod is not None:
            taken = Taken(reply="facts", heard=nod.heard, settles=nod.settles)
            if nod.unclear is not None:
                taken = replace(taken, heard=replace(nod.heard, doubts=(self._unclear(nod.unclear, words),)))
        else:
            narrow = self._nods.narrowed(words, self._open, question)
            taken = self._hearing.take(words, narrow, self._case, self._lately)
            if taken.reply == "back":
                taken = self._hearing.take(words, None, self._case, self._lately)
        if question is not None and taken.reply in ("unknown", "later"):
            self._append(taken.reply, question=question.id, fields=list(question.fields), message=message)
            self._lately = question.fields
            return
        found = self._spot(words, taken.heard.facts)
        taken = without_asked(taken, [(span, fields) for span, _, fields in found], words)
        at = self._history.events[-1].at
        facts = heard_facts(taken, message, "visitor", at)
        asks = [{"span": list(span), "card": card} for span, card, _ in found]
        self._append("heard", **heard_body(taken, facts, question, self._case, message, "visitor", at, asks))
        self._unread += taken.heard.unread
        if facts or question is not None:
            self._lately = tuple(dict.fromkeys(fact.field for fact in facts)) or (question.fields if question else ())

    def _unclear(self, field: str, words: str) -> Doubt:
        entry = self._tree.for_field(field)
        return Doubt(
            field=field,
            said=words.strip()[:80],
            why=self._sentences.say("clear_up.yes_why"),
            ask=next((one.say for one in entry.wordings if one.asks == (field,)), entry.say) if entry else label(field),
        )

    # --- where it stands ---

    def _append(self, kind: str, /, **body: Any) -> Event:
        event = self._history.append(kind, **body)
        advance(self._case, event)
        return event

    def _in_whole(self, text: str, fact: Fact) -> Fact:
        """The fact with its place in the whole text. Words put together from two messages stand at the later one."""
        part, start, cleaned = self._places[fact.message or 0]
        first, last = cleaned.span(*fact.span) if fact.span is not None else (0, len(cleaned.words))
        span = part.place(start + first, start + last)
        return replace(fact, span=span, said=text[span[0] : span[1]])

    def _quarrel(self, text: str, key: tuple[str, int], pair: tuple[Fact, Fact]) -> Doubt:
        """Two different values of one field, neither taken back."""
        system = system_of(words for words, who in self._case.messages.values() if who == "visitor")
        name, size = key
        shown = [show_value(name, fact, system) for fact in pair]
        later = self._in_whole(text, pair[1]) if pair[1].message in self._places else pair[1]
        return Doubt(
            field=name,
            said=later.said,
            why=self._sentences.say("clear_up.quarrel_why", field=label(name, size)),
            ask=self._sentences.say("clear_up.quarrel_say", field=label(name, size), before=shown[0], after=shown[1]),
            span=later.span,
            options=pair,
        )


_NUMBER = re.compile(r"^[ \t]*\(?(\d{1,2})[.):][ \t]+", re.MULTILINE)


def _numbered(text: str) -> list[tuple[int, int]]:
    """The places of the items of a list that is numbered 1, 2, 3 from its first word on; [] where there is none."""
    found = list(_NUMBER.finditer(text))
    if len(found) < 2 or found[0].start() > 0 or [int(mark[1]) for mark in found] != list(range(1, len(found) + 1)):
        return []
    return [
        (mark.end(), after.start() if after is not None else len(text)) for mark, after in zip_longest(found, found[1:])
    ]


def _messages(part: Part, place: tuple[int, int] | None = None) -> Iterable[tuple[str, int, Cleaned]]:
    """Clean words of at most the length of a message, where they begin in the part, and the way back."""
    begin, end = place or (0, len(part.text))
    for start, piece in portions(part.text[begin:end], LONGEST):
        cleaned = clean_with_places(piece)
        if cleaned.words.strip():
            yield cleaned.words, begin + start, cleaned
