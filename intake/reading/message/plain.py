"""Tokens as one line of plain words, for patterns that need them as typed, with the way back to the token."""

from bisect import bisect_right
from dataclasses import dataclass

from intake.reading.message.scene import Scene

LONGEST = 120
"""An answer is judged by this many tokens: what comes later is about something else."""


@dataclass(frozen=True, slots=True)
class Plain:
    """`text` has one space between tokens; `starts` are the places where they begin; `first` is the first token."""

    text: str
    starts: tuple[int, ...]
    first: int

    def token_at(self, place: int) -> int:
        """The token that holds a place of the text."""
        return self.first + max(0, bisect_right(self.starts, place) - 1)


def plain(scene: Scene, first: int, after: int) -> Plain:
    """The tokens `first`..`after` as typed, in lower case; a line's end shows as ";"."""
    words: list[str] = []
    starts: list[int] = []
    place = 0
    for token in scene.tokens[first:after]:
        word = ";" if token.kind == "line" else token.text
        starts.append(place)
        words.append(word)
        place += len(word) + 1
    return Plain(" ".join(words), tuple(starts), first)


def answer_of(scene: Scene) -> Plain:
    """The visitor's own words at the head of a message, up to quoted mail and the signature."""
    after = 0
    while after < min(len(scene.tokens), LONGEST) and scene.status[after] not in ("quoted", "signed"):
        after += 1
    return plain(scene, 0, after)
