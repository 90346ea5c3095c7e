"""Which card a question is about: by the words that both have, the rarer the weightier."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import sqrt

from intake.advice.cards.card import Card
from intake.advice.cards.deck import ELSEWHERE, Deck
from intake.reading import Piece

SURE_FROM = 0.42
"""Least score of an answer; below it a card is only near."""
NEAR_FROM = 0.3
NEAR_WITHIN = 0.12
"""Another card whose score is so little below that of the first is told beside it."""
STRANGE = 0.4
"""What a word that no card has counts, as a share of the rarest word: people tell more than they ask."""
BEST_WAY = 0.5
"""What the nearest way of asking counts; the rest goes by all ways of the card together."""
ENOUGH = 0.6
"""The words in common weigh at least so much, as a share of the rarest word; else the score is less in proportion."""
WHOLE_SENTENCE = 0.95
"""What a score counts that only the whole sentence reaches: "we are at -20 C in there, would it run?"."""


@dataclass(frozen=True, slots=True)
class Match:
    """A card and how well it answers, 0 to 1."""

    card: Card
    score: float


def ranked(question: str | Piece, deck: Deck) -> list[Match]:
    """The cards that share a word with the question, best first."""
    if isinstance(question, str):
        return _ranked(question, deck)
    found = _ranked(question.said, deck)
    if question.sentence == question.said:
        return found
    scores = {match.card.id: match for match in found}
    for match in _ranked(question.sentence, deck):
        less = Match(match.card, match.score * WHOLE_SENTENCE)
        if less.score > scores.get(match.card.id, Match(match.card, 0.0)).score:
            scores[match.card.id] = less
    return sorted(scores.values(), key=lambda match: -match.score)


def _ranked(text: str, deck: Deck) -> list[Match]:
    if all(word.startswith("#") for word in deck.words.plain(text)):
        return []  # a figure alone asks nothing that a card could answer
    asked = frozenset(deck.words.tokens(text))
    scored = [Match(card, _score(asked, card.id, deck)) for card in deck.cards]
    return sorted((match for match in scored if match.score > 0.0), key=lambda match: -match.score)


def _score(asked: frozenset[str], id: str, deck: Deck) -> float:
    shares = deck.shares[id]
    common = sum(_says(token, deck) for token in asked if token in shares)
    if not common:
        return 0.0
    total = sum(_says(token, deck) for token in asked)
    nearest = max(_covered(asked, way, total, deck) for way in deck.asked[id])
    score = BEST_WAY * nearest + (1.0 - BEST_WAY) * _likeness(asked, shares, total, deck)
    return score * min(1.0, common / (ENOUGH * deck.heaviest))


def _covered(asked: frozenset[str], way: frozenset[str], total: float, deck: Deck) -> float:
    """How much of the one is in the other, both ways, as one figure (their harmonic mean)."""
    both = sum(_says(token, deck) for token in asked & way)
    if not both:
        return 0.0
    there, back = both / sum(_says(token, deck) for token in way), both / total
    return 2.0 * there * back / (there + back)


def _likeness(asked: frozenset[str], shares: Mapping[str, float], total: float, deck: Deck) -> float:
    """How much of the question the card as a whole speaks of; words in many of its ways count more."""
    return sum(sqrt(shares[token]) * _says(token, deck) for token in asked if token in shares) / total


def _says(token: str, deck: Deck) -> float:
    """How much a token says: what few cards have says much, a word that none has less, unless it is of elsewhere."""
    if token in deck.weights:
        return deck.weights[token]
    return deck.heaviest if token == ELSEWHERE else STRANGE * deck.heaviest
