"""The answer to a visitor's own question: the card that is about it, said with the figures of the case."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from intake.advice.brief import Brief
from intake.advice.cards.blanks import Blanks
from intake.advice.cards.card import FAMILY, Card
from intake.advice.cards.deck import Deck, deck_of
from intake.advice.cards.matching import NEAR_FROM, NEAR_WITHIN, SURE_FROM, Match, ranked
from intake.advice.supposed import Supposed, supposing, supposing_figure
from intake.reading import Piece, quantities, questions, read
from intake.spec.display import show_value
from intake.spec.entry import value_of
from intake.spec.facts import Fact
from intake.spec.value import SpecError

_NEAR_MOST = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Near:
    """Another card that the question may be about: its id, what it answers in one line, its score."""

    id: str
    about: str
    score: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CardAnswer:
    """What is said to a question. `card` is None where no card is about it; `lines` then say that it is passed on."""

    asked: str
    card: str | None
    score: float
    near: tuple[Near, ...]
    lines: tuple[str, ...]
    about: str = ""

    def to_json(self) -> dict[str, Any]:
        """The shape for scripts."""
        near = [{"id": one.id, "about": one.about, "score": round(one.score, 3)} for one in self.near]
        return {
            "asked": self.asked,
            "card": self.card,
            "about": self.about,
            "score": round(self.score, 3),
            "near": near,
            "lines": list(self.lines),
        }


def answer_question(text: str | Piece, brief: Brief, deck: Deck | None = None) -> CardAnswer:
    """The answer to one question, as typed or as `intake.reading.questions` found it.

    Raises TreeError for a folder whose cards are wrong.
    """
    deck = deck or deck_of(brief.folder)
    asked = text.said if isinstance(text, Piece) else text
    found = ranked(text, deck)
    first = found[0] if found and found[0].score >= SURE_FROM else None
    if first is None:
        near = _near([match for match in found if match.score >= NEAR_FROM])
        score = found[0].score if found else 0.0
        return CardAnswer(asked=asked, card=None, score=score, near=near, lines=(brief.sentences.say("card.none"),))
    near = _near([match for match in found[1:] if match.score >= max(NEAR_FROM, first.score - NEAR_WITHIN)])
    whole = text.sentence if isinstance(text, Piece) else text
    lines = say(first.card, brief, deck, (asked, whole))
    return CardAnswer(
        asked=asked, card=first.card.id, score=first.score, near=near, lines=lines, about=first.card.about
    )


def answer_known(text: str, card: str | None, brief: Brief, deck: Deck | None = None) -> CardAnswer:
    """The answer to a question whose card was found when it was asked: the same card, with the case as it stands now.

    A card that the folder no longer has is looked for anew.
    """
    deck = deck or deck_of(brief.folder)
    anew = answer_question(text, brief, deck)
    known = next((one for one in deck.cards if one.id == card), None)
    if known is None or anew.card == card:
        return anew
    near = tuple(one for one in anew.near if one.id != card)
    lines = say(known, brief, deck, (text,))
    return CardAnswer(asked=text, card=card, score=anew.score, near=near, lines=lines, about=known.about)


def answer_message(text: str, brief: Brief, deck: Deck | None = None) -> tuple[CardAnswer, ...]:
    """An answer to each question in a message; a card that two of them meet is said once."""
    answers = [answer_question(piece, brief, deck) for piece in questions(text)]
    said: set[str] = set()
    kept = []
    for answer in answers:
        if answer.card is None or answer.card not in said:
            kept.append(answer)
        said |= {answer.card} if answer.card else set()
    return tuple(kept)


def answer_card(id: str, brief: Brief, deck: Deck | None = None) -> CardAnswer:
    """What the card of that id says in this case, whoever asked. Raises KeyError where there is none."""
    deck = deck or deck_of(brief.folder)
    card = deck.card(id)
    return CardAnswer(asked="", card=id, score=1.0, near=(), lines=say(card, brief, deck, ()), about=card.about)


def say(card: Card, brief: Brief, deck: Deck, texts: tuple[str, ...]) -> tuple[str, ...]:
    """The first template of the card that can be filled. `texts`: where the figure or family asked about may stand."""
    fact = _figure_asked(card, texts)
    blanks = Blanks(
        brief=brief,
        supposed=_supposed(card, brief, fact),
        asked=show_value(fact.field, fact, brief.system) if fact is not None else None,
        named=_family_named(texts, deck) if card.takes == FAMILY else None,
    )
    said = next((one for template in card.says if (one := blanks.fill(template)) is not None), "")
    return tuple(line for line in (part.strip() for part in said.splitlines()) if line)


def _near(matches: list[Match]) -> tuple[Near, ...]:
    return tuple(Near(id=one.card.id, about=one.card.about, score=one.score) for one in matches[:_NEAR_MOST])


def _supposed(card: Card, brief: Brief, fact: Fact | None) -> Supposed | None:
    """The case that the card looks at: with the figure that was asked about, else with the card's own change."""
    if fact is not None:
        return Supposed(now=brief, then=brief.changed(supposing_figure(brief.spec, fact)))
    return Supposed(now=brief, then=brief.changed(supposing(brief.spec, card.what_if))) if card.what_if else None


def _figure_asked(card: Card, texts: tuple[str, ...]) -> Fact | None:
    if card.takes is None or card.takes == FAMILY:
        return None
    return next((fact for text in texts for fact in _readings(card.takes, text)), None)


def _readings(name: str, text: str) -> Iterator[Fact]:
    """The quantities of a text that can be read as this field."""
    alike = {"rate.peak": ("rate.peak", "rate.normal")}.get(name, (name,))
    for quantity in quantities(text):
        if quantity.kind == "number" and not name.startswith("temperature."):
            continue
        for fact in read(quantity.said, asked=name).facts:
            figure = fact.high if fact.high is not None else fact.low
            if fact.field in alike and figure is not None and _can_be(name, figure):
                yield Fact(field=name, low=fact.low, high=fact.high, approx=fact.approx, said=fact.said)


def _can_be(name: str, figure: float) -> bool:
    try:
        value_of(name, name, figure)
    except SpecError:
        return False
    return True


def _family_named(texts: tuple[str, ...], deck: Deck) -> str | None:
    """The family with the longest name that a text has."""
    for text in texts:
        words = f" {' '.join(deck.words.plain(text))} "
        phrases = [(name, " ".join(deck.words.plain(said))) for name, ways in deck.families.items() for said in ways]
        found = [(len(phrase), name) for name, phrase in phrases if f" {phrase} " in words]
        if found:
            return max(found, key=lambda one: one[0])[1]
    return None
