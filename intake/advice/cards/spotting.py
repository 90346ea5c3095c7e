"""Which pieces of a message are questions of the visitor's own, and what answers each."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from intake.advice.cards.deck import ELSEWHERE, Deck
from intake.advice.cards.matching import SURE_FROM, ranked
from intake.reading import Piece, questions
from intake.spec.vocabulary import vocabulary


@dataclass(frozen=True, slots=True, kw_only=True)
class Spotted:
    """A question in a message: where it stands, and the card that answers it; None where no card does."""

    span: tuple[int, int]
    card: str | None
    asks_about: frozenset[str] = frozenset()
    """Fields that it asks about: what it says of them is asked, not told."""


def spotted(text: str, told: Iterable[tuple[int, int]], deck: Deck) -> tuple[Spotted, ...]:
    """The questions in a message. `told`: the spans of the facts in it.

    "Can you move 12 kg cases up 3 m?" states a need, and "what time do you close?" is nothing for engineering: without
    a card neither counts.
    """
    spans = list(told)
    found = []
    for piece in questions(text):
        if _only_wants_a_nod(piece, spans):
            continue
        card = card_for(piece, deck)
        if card is not None or not (_overlaps(piece, spans) or _is_small_talk(piece, deck)):
            found.append(Spotted(span=piece.span, card=card, asks_about=_asks_about(card, deck)))
    return tuple(found)


def card_for(piece: Piece | str, deck: Deck) -> str | None:
    """The card that answers a question for sure."""
    matches = ranked(piece, deck)
    return matches[0].card.id if matches and matches[0].score >= SURE_FROM else None


def _asks_about(id: str | None, deck: Deck) -> frozenset[str]:
    if id is None:
        return frozenset()
    card = deck.card(id)
    taken = {card.takes} if card.takes in vocabulary() else set()
    return frozenset({*card.what_if, *taken, *({"rate.normal"} if "rate.peak" in taken else ())})


_NOD = re.compile(r"(?:^|,\s*)(?:ok|okay|right|correct|yes|no|sure|fine|agreed|understood)\W*$", re.IGNORECASE)
_OF_THEIRS = re.compile(r"^\W*(?:(?:so|and|well|but)\W+)*(?:they|these|those|we|our|ours|each|i)\b", re.IGNORECASE)


def _only_wants_a_nod(piece: Piece, spans: list[tuple[int, int]]) -> bool:
    """ "Right?" alone, and "they weigh 12 kg, ok?": a fact told, with a word behind it that asks for no answer."""
    nod = _NOD.search(piece.said)
    if nod is None:
        return False
    return nod.start() == 0 or (_overlaps(piece, spans) and _OF_THEIRS.match(piece.said) is not None)


def _overlaps(piece: Piece, spans: list[tuple[int, int]]) -> bool:
    return any(first < piece.span[1] and piece.span[0] < last for first, last in spans)


def _is_small_talk(piece: Piece, deck: Deck) -> bool:
    tokens = set(deck.words.tokens(piece.said))
    return ELSEWHERE in tokens or len(tokens) < _FEW


_FEW = 2
"""Content words below which a question without a card is only small talk: "ok?", "right?"."""
