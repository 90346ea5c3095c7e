"""The interview behind every screen and script: words in, questions and a sized result out."""

import os
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from intake import reading, sizing
from intake.advice.brief import Brief
from intake.advice.cards import CardAnswer, answer_known, answer_question, card_for, deck_of, spotted
from intake.interview.asking import Asking, Plan
from intake.interview.follow_ups import open_points
from intake.interview.hearing import Preview
from intake.interview.history import History
from intake.interview.life import Life
from intake.interview.mending import Mend, meanings, mends_kept
from intake.interview.question import OpenPoint, Question, Skipped
from intake.interview.recording import direct_fact, only_said
from intake.interview.taking import Spoken, Spotted, Taking
from intake.interview.tree import load_tree
from intake.interview.wording import Sentences
from intake.sizing.result import Result
from intake.spec.case import Case, fact_to_body
from intake.spec.clean import clean, one_line
from intake.spec.display import System, show_value, system_of
from intake.spec.events import Event, now
from intake.spec.facts import Fact, Heard, Who
from intake.spec.flat import Spec, split_key, value_of
from intake.spec.folder import questions_folder
from intake.spec.inquiry import Inquiry
from intake.spec.vocabulary import vocabulary

if TYPE_CHECKING:
    from intake.interview.threads import Thread

_KEPT_RESULTS = 128
"""Results remembered by spec, so that going back and forth costs nothing."""


class Interview:
    """One talk about one need. Its events are its only state.

    `questions`: a company's own folder of questions, limits and sentences; the shipped one when None.
    Raises FolderError or TreeError for a folder that cannot be used.
    """

    def __init__(self, questions: str | os.PathLike[str] | None = None) -> None:
        self._folder = questions_folder(questions)
        self._tree = load_tree(self._folder)
        self.sentences = Sentences(self._folder)
        self._asking = Asking(self._tree, self._folder, self.sentences)
        self._history = History()
        self._taking = Taking(self._history, self._folder, self.sentences, self._spot)
        self._results: dict[Spec, Result] = {}
        self._plan: tuple[object, Plan] | None = None

    @classmethod
    def from_events(cls, events: Iterable[Event], questions: str | os.PathLike[str] | None = None) -> "Interview":
        """A talk resumed where its events left it."""
        talk = cls(questions)
        talk._history.go_on_from(events)
        return talk

    # --- what people say ---

    def hear(self, text: str, who: Who = "visitor", *, by_ear: bool = False, mends: Sequence[Mend] = ()) -> Heard:
        """A message of its own: everything in it that can be read becomes facts and doubts.

        `by_ear`: typed while listening, so the words are the staff's. `mends`: what staff say that its words are.
        """
        return self._take(Spoken(text=text, who=who, by_ear=by_ear, mends=mends), None)

    def answer(
        self,
        text: str,
        to: str | None = None,
        who: Who = "visitor",
        *,
        by_ear: bool = False,
        mends: Sequence[Mend] = (),
    ) -> Heard:
        """An answer to the question asked, or to any other by its id or field.

        "Don't know", "I'll check" and "back" count as such. With nothing asked it is a message of its own. Raises
        ValueError when there is no question `to`. `by_ear`, `mends`: as in `hear`.
        """
        question = self._question_for(to) if to is not None else self.current
        return self._take(Spoken(text=text, who=who, by_ear=by_ear, mends=mends), question)

    def preview(self, text: str, to: str | None = None, *, by_ear: bool = False, mends: Sequence[Mend] = ()) -> Preview:
        """What a message would give, as an answer to `to` or as one of its own. Nothing of it is kept."""
        question = self._find(to) if to is not None else None
        return self._taking.preview(Spoken(text=text, by_ear=by_ear, mends=mends), question)

    def meanings(self, piece: str) -> list[Fact]:
        """What a piece of a message may be, one fact a field, what is asked now first."""
        first = self.current.fields if self.current is not None else ()
        return meanings(clean(piece), self._folder, first)

    def value_in_words(self, field: str, words: str) -> Fact | None:
        """The value that words give one field, None for none. Nothing is kept."""
        facts = reading.read(clean(words), asked=(field,), questions=self._folder).facts
        return next((fact for fact in facts if fact.field == field), None)

    def rehear(self, mends: Sequence[Mend]) -> Heard | None:
        """Take the last message in anew, with what staff say that its words are. None without a message.

        What was said of its other words before still holds. Undoing it brings the reading before it back.
        """
        last = self._history.last_heard()
        if last is None:
            return None
        number = int(last.body["message"])
        text, speaker = self.case.messages[number]
        by_ear = number in self.case.by_ear
        every = (*mends_kept(last, self.case.messages, mends), *mends)
        who: Who = "staff" if speaker == "staff" else "works" if speaker == "works" else "visitor"
        self._history.append("undone", seq=last.seq, whole=True)
        question, size = self._asked_for(last)
        again = Spoken(text=text, who=who, size=size, by_ear=by_ear, mends=every, instead=last.seq)
        return self._take(again, question)

    def _asked_for(self, heard: Event) -> tuple[Question | None, int]:
        """The question that words were read as an answer to, and the product size that they spoke of."""
        to, fields = heard.body.get("to"), tuple(heard.body.get("asked", ()))
        if not to:
            return None, 1
        found = self._find(str(to)) or self._asking.put(str(to), self.case, self._spec)
        sizes = [fact.get("size", 1) for fact in heard.body.get("facts", ()) if fact["field"] in fields]
        size = int(sizes[0]) if len(fields) == 1 and len(set(sizes)) == 1 else 1
        return (replace(found, fields=fields) if found is not None else None), size

    @property
    def last_message(self) -> str:
        """The last message that was read for facts, as it was typed; "" for none."""
        last = self._history.last_heard()
        return self.case.messages[int(last.body["message"])][0] if last is not None else ""

    @property
    def last_heard(self) -> Event | None:
        """The last message that was read for facts, as the event that says what was understood; None for none."""
        return self._history.last_heard()

    def withdraw(self, field: str, size: int = 1) -> None:
        """A fact stands no longer, and nothing takes its place. Raises ValueError where none stands."""
        if (field, size) not in self.case.facts:
            raise ValueError(self.sentences.say("talk.no_such_fact", field=field))
        self._history.append("withdrawn", field=field, size=size)

    def take_thread(self, text: str) -> "Thread":
        """A pasted chat log or mail thread: each turn is taken in, the visitor's as answers to what the staff asked.

        A text without speakers is one message of the visitor. Each message in it is undone one by one.
        """
        # Only here: the patterns of chats and mails take a tenth of a second to compile.
        from intake.interview.threads import ThreadPlayer

        player = ThreadPlayer(self._history, self._taking.hearing, self._tree, self._folder, self.sentences, self._spot)
        return player.play(text)

    def mend(self, field: str, text: str, size: int = 1, who: Who = "visitor") -> Heard:
        """The new value of one fact, in words; it replaces what stands. Raises ValueError if nobody asks for it."""
        question = replace(self._question_for(field), fields=(field,))
        return self._take(Spoken(text=text, who=who, size=size), question)

    def unknown(self, to: str | None = None) -> None:
        """The visitor does not know. A doubt or conflict is passed over: what stands is kept."""
        question = self._question_for(to) if to is not None else self.current
        if question is not None:
            self._taking.close("unknown", question)

    def later(self, to: str | None = None) -> None:
        """The visitor will check; the question becomes a follow-up. With none open: nothing."""
        question = self._question_for(to) if to is not None else self.current
        if question is not None:
            self._taking.close("later", question)

    def know(self, field: str, value: Any, size: int = 1, who: Who = "staff") -> None:
        """A fact set directly: canonical unit, choice word, True or False, (low, high). Raises SpecError."""
        key = field if size == 1 else f"{field}@{size}"
        name, number = split_key(key)
        known = value_of(key, name, value)
        typed = vocabulary()[name].kind == "text"
        message = self._taking.message(str(known.value), who) if typed else None
        fact = direct_fact(name, number, known, who, now(), message)
        self._history.append("known", fact=fact_to_body(fact), **only_said(message=message))

    def note(self, text: str) -> None:
        """A note of the staff; it is kept with the case and never read for facts."""
        self._history.append("noted", message=self._taking.message(text, "staff"))

    def rename(self, title: str) -> None:
        """Give the case a title."""
        self._history.append("opened", title=one_line(title, 120))

    def record(self, kind: str, body: Mapping[str, Any]) -> Event:
        """Something that happened outside the talk, as a hand-over. Raises ValueError for an unknown kind."""
        return self._history.append(kind, **body)

    @property
    def life(self) -> Life:
        """What happens to the case beside the talk: promises, samples, tests, files."""
        return Life(self._history)

    # --- taking back ---

    def undo(self) -> bool:
        """Take back the last thing said, known or noted. False when there is nothing left."""
        return self._history.undo()

    def redo(self) -> bool:
        """Let the last thing undone count again. False when something else was said since."""
        return self._history.redo()

    def take_in(self, kept: Sequence[Event], own: int) -> None:
        """Go on from what another desk kept of this case meanwhile. `own`: how many of the events here were kept."""
        self._history.take_in(kept, own)

    def back(self) -> Question | None:
        """Take back the last answer and ask its question again."""
        question = self._history.undo_answer()
        again = self._find(question) if question else None
        return self._put(again) if again is not None else self.ask()

    # --- what is asked ---

    def ask(self) -> Question | None:
        """The next question: doubts, conflicts, what may change the best family, what engineering needs. None: done."""
        waiting = self._planned().open
        return self._put(waiting[0]) if waiting else None

    def put(self, id: str) -> Question:
        """Put any question now, out of order; also one set aside. Raises ValueError when there is none of that id."""
        return self._put(self._question_for(id))

    def open_questions(self) -> list[Question]:
        """All that is still to ask, in the order in which it would be asked."""
        return list(self._planned().open)

    @property
    def current(self) -> Question | None:
        """The question that waits for an answer: the last one put, while it is open."""
        last = self._history.case.asked[-1] if self._history.case.asked else None
        found = self._find(last) if last and self._history.waits() else None
        return found if found is not None else next(iter(self._planned().open), None)

    @property
    def skipped(self) -> list[Skipped]:
        """Questions that cannot change anything, each with the reason."""
        return list(self._planned().skipped)

    @property
    def set_aside(self) -> list[Skipped]:
        """Questions that hardly matter now, each with the reason; `put` asks them all the same."""
        return list(self._planned().set_aside)

    def follow_ups(self) -> list[OpenPoint]:
        """What is still to find out, ranked by how much it matters."""
        return open_points(self.case, self._spec, self.result(), self._tree, self.sentences)

    # --- what the visitor asks ---

    def inquire(self, text: str) -> CardAnswer:
        """A question of the visitor's own, typed as one: its answer. Without a card it becomes a follow-up."""
        words = clean(text)
        message = self._taking.message(words, "visitor")
        card = card_for(words, deck_of(self._folder))
        asks = [{"span": [0, len(words)], "card": card}]
        self._history.append("heard", message=message, asked=[], to=None, facts=[], doubts=[], unread=[], asks=asks)
        return answer_question(words, self.brief)

    @property
    def inquiries(self) -> list[Inquiry]:
        """What the visitor asked, oldest first."""
        return list(self.case.inquiries)

    def reply_to(self, inquiry: Inquiry, brief: Brief | None = None) -> CardAnswer:
        """The answer to a question of the visitor's own, with the figures of the case as it stands.

        `brief`: in other units than the visitor's.
        """
        return answer_known(inquiry.text, inquiry.card, brief or self.brief)

    @property
    def brief(self) -> Brief:
        """What advice is given on: the spec as it stands, with its sizing."""
        return Brief(spec=self._spec, system=self.system, folder=self._folder, sized=self.result())

    # --- what stands ---

    @property
    def events(self) -> list[Event]:
        """Everything that happened, oldest first."""
        return list(self._history.events)

    @property
    def case(self) -> Case:
        """The state that the events make. Read only."""
        return self._history.case

    @property
    def facts(self) -> list[Fact]:
        """What stands now, in the order of the vocabulary, each with its words and who said it."""
        order = {name: place for place, name in enumerate(vocabulary())}
        return sorted(self.case.facts.values(), key=lambda fact: (fact.size, order[fact.field]))

    def spec(self) -> dict[str, Any]:
        """What stands now as a flat spec, as `size` takes it."""
        return self._spec.to_flat()

    def result(self) -> Result:
        """The sizing of what stands now, with what sampling gives: size(talk.spec(), worth=True)."""
        spec = self._spec
        if spec not in self._results:
            if len(self._results) >= _KEPT_RESULTS:
                self._results.pop(next(iter(self._results)))
            self._results[spec] = sizing.size(spec, worth=True, questions=self._folder)
        return self._results[spec]

    def bounds(self) -> Result:
        """The sizing of what stands by bounds alone: the same verdicts, without the samples that ranking takes."""
        return sizing.size(self._spec, worth=False, questions=self._folder)

    @property
    def decided(self) -> bool:
        """True when the best family stays best over what is still unknown."""
        return bool(self.result().decided)

    @property
    def system(self) -> System:
        """The units that the visitor thinks in, guessed from the words."""
        return system_of(text for text, who in self.case.messages.values() if who == "visitor")

    def system_with(self, text: str) -> System:
        """The same when the visitor says this too."""
        return system_of([*(said for said, who in self.case.messages.values() if who == "visitor"), clean(text)])

    @property
    def title(self) -> str:
        """The title given, or what travels, how fast and how far."""
        if self.case.title:
            return self.case.title
        names = ("product.type", "rate.peak", "rate.normal", "rise.direction", "rise.height")
        said = [show_value(name, fact, self.system) for name in names if (fact := self.case.facts.get((name, 1)))]
        return ", ".join(said) or self.sentences.say("talk.untitled")

    # --- inner workings ---

    @property
    def _spec(self) -> Spec:
        return self.case.spec(self._folder)

    def _planned(self) -> Plan:
        case = self.case
        if self._plan is None or self._plan[0] is not case:
            self._plan = (case, self._asking.plan(case, self._spec, self.result(), self.system))
        return self._plan[1]

    def _find(self, id: str) -> Question | None:
        """An open question, or one of the tree that staff put out of order and that still lacks an answer."""
        found = next((question for question in self._planned().open if question.id == id), None)
        if found is None and self._asking.silent(id, self.case, self._spec):
            return self._asking.put(id, self.case, self._spec)
        return found

    def _question_for(self, id: str) -> Question:
        found = self._find(id) or self._asking.put(id, self.case, self._spec)
        if found is None:
            raise ValueError(self.sentences.say("talk.no_such_question", id=id))
        return found

    def _put(self, question: Question) -> Question:
        """Note that a question is put, once for as long as it waits."""
        asked = self.case.asked
        if not asked or asked[-1] != question.id or not self._history.waits():
            self._history.append("asked", question=question.id, fields=list(question.fields), branch=question.branch)
        return question

    def _take(self, spoken: Spoken, question: Question | None) -> Heard:
        reply, heard = self._taking.take(spoken, question)
        if reply == "back":
            self.back()
        return heard

    def _spot(self, words: str, facts: Sequence[Fact]) -> Sequence[Spotted]:
        """The visitor's own questions in a message."""
        spans = [fact.span for fact in facts if fact.span is not None]
        return [(one.span, one.card, one.asks_about) for one in spotted(words, spans, deck_of(self._folder))]
