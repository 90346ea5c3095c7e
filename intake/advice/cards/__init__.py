"""Answers to visitors' own questions, from the cards of the questions folder and the figures of the case."""

from intake.advice.cards.answering import (
    CardAnswer,
    Near,
    answer_card,
    answer_known,
    answer_message,
    answer_question,
)
from intake.advice.cards.card_checks import CardProof, prove_cards
from intake.advice.cards.deck import Deck, deck_of
from intake.advice.cards.spotting import Spotted, card_for, spotted

__all__ = [
    "CardAnswer",
    "CardProof",
    "Deck",
    "Near",
    "Spotted",
    "answer_card",
    "answer_known",
    "answer_message",
    "answer_question",
    "card_for",
    "deck_of",
    "prove_cards",
    "spotted",
]
