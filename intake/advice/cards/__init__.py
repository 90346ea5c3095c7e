"""Answers to visitors' own questions, from the cards of the questions folder and the figures of the case."""

from intake.advice.cards.answering import CardAnswer, Near, answer_card, answer_message, answer_question
from intake.advice.cards.card_checks import CardProof, prove_cards
from intake.advice.cards.deck import Deck, deck_of

__all__ = [
    "CardAnswer",
    "CardProof",
    "Deck",
    "Near",
    "answer_card",
    "answer_message",
    "answer_question",
    "deck_of",
    "prove_cards",
]
