"""The pieces of a message as they can be put right: those understood, those in doubt, and every other word."""

import re
from dataclasses import dataclass

from intake.desk.lights import Lit

_WORD = re.compile(r"\S+")
_EDGES = "\"'“”‘’()[]{},.;:!?"


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece from `start` to `end`; `means` is what was made of it, "" for nothing."""

    start: int
    end: int
    said: str
    means: str
    sign: str


_SIGNS = {"fact": "+", "doubt": "?", "unread": "-", "ask": "@"}


def pieces(lit: Lit) -> list[Piece]:
    """In the order of the text; between the pieces lit, the words one by one."""
    found = []
    place = 0
    for light in lit.lights:
        found += _words(lit.words, place, light.start)
        said = lit.words[light.start : light.end]
        found.append(Piece(light.start, light.end, said, light.means, _SIGNS[light.tone]))
        place = light.end
    return [*found, *_words(lit.words, place, len(lit.words))]


def _words(text: str, start: int, end: int) -> list[Piece]:
    found = []
    for hit in _WORD.finditer(text, start, end):
        said = hit[0].strip(_EDGES)
        if said:
            at = hit.start() + hit[0].index(said)
            found.append(Piece(at, at + len(said), said, "", " "))
    return found


def joined(first: Piece, last: Piece, text: str) -> Piece:
    """One piece from the beginning of the first to the end of the last."""
    return Piece(first.start, last.end, text[first.start : last.end], "", " ")
