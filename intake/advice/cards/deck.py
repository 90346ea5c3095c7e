"""All cards of a questions folder, laid out for matching; read once."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from math import log
from pathlib import Path

from intake.advice.cards.card import Card
from intake.advice.cards.card_file import WordsModel, read_cards, read_words
from intake.advice.cards.plain_words import PlainWords
from intake.interview.complaints import TreeError
from intake.spec.folder import questions_folder

KIND, ELSEWHERE = "kind_of_machine", "elsewhere"
"""Tokens for any family by name, and for a word of another subject."""


@dataclass(frozen=True, eq=False, kw_only=True)
class Deck:
    """`asked`: by card, each way of asking as tokens. `weights`: by token, the rarer over the cards the greater."""

    cards: tuple[Card, ...]
    words: PlainWords
    families: Mapping[str, tuple[str, ...]]
    asked: Mapping[str, tuple[frozenset[str], ...]]
    shares: Mapping[str, Mapping[str, float]]
    weights: Mapping[str, float]
    heaviest: float

    def card(self, id: str) -> Card:
        """The card of that id. Raises KeyError where there is none."""
        return {card.id: card for card in self.cards}[id]


def deck_of(folder: Path | None = None) -> Deck:
    """The cards of a folder, or the shipped ones where it has none. Raises TreeError with every wrong entry."""
    return _deck((folder or questions_folder()).resolve())


@cache
def _deck(folder: Path) -> Deck:
    placed, problems = read_cards(folder)
    words, _, wrong = read_words(folder)
    if problems or words is None:
        raise TreeError((*problems, *wrong))
    return laid_out(tuple(one.card for one in placed), words)


def laid_out(cards: tuple[Card, ...], model: WordsModel) -> Deck:
    """A deck of these cards."""
    kinds = [name for names in model.families.values() for name in names]
    groups = {**model.alike, KIND: kinds, ELSEWHERE: model.elsewhere.words}
    words = PlainWords(model.passed_over, model.endings, groups)
    words.learn(way for card in cards for way in card.asks)
    asked = {card.id: tuple(frozenset(words.tokens(way)) - {ELSEWHERE} for way in card.asks) for card in cards}
    on = Counter(token for ways in asked.values() for token in frozenset().union(*ways))
    weights = {token: log(1.0 + len(cards) / count) for token, count in on.items()}
    shares = {id: _shares(ways) for id, ways in asked.items()}
    return Deck(
        cards=cards,
        words=words,
        families=model.families,
        asked=asked,
        shares=shares,
        weights=weights,
        heaviest=log(1.0 + len(cards)),
    )


def _shares(ways: tuple[frozenset[str], ...]) -> dict[str, float]:
    """In which share of a card's ways of asking each token stands."""
    count = Counter(token for way in ways for token in way)
    return {token: number / len(ways) for token, number in count.items()}
