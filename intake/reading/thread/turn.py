"""One turn of a thread: who speaks, when, and which characters of the whole text are the words."""

from bisect import bisect_right
from dataclasses import dataclass, field
from typing import Any, Literal

Side = Literal["visitor", "staff"]
Span = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Part:
    """Words of a turn that belong together. `pieces`: their places in the whole text, in order.

    `before`: the quoted words that they answer right below ("" where nothing is quoted above them). The text is the
    pieces one after the other, so that every place in it has its place in the whole.
    """

    text: str
    pieces: tuple[Span, ...]
    before: str = ""
    starts: tuple[int, ...] = field(default=(), repr=False)

    @classmethod
    def of(cls, whole: str, pieces: list[Span], before: str = "") -> "Part":
        """The part that these places make; neighbours become one, white space at both ends goes."""
        joined: list[Span] = []
        for start, end in _stripped(whole, pieces):
            if joined and joined[-1][1] == start:
                joined[-1] = (joined[-1][0], end)
            else:
                joined.append((start, end))
        starts, length = [], 0
        for start, end in joined:
            starts.append(length)
            length += end - start
        return cls("".join(whole[a:b] for a, b in joined), tuple(joined), before, tuple(starts))

    @property
    def span(self) -> Span:
        """From the first to the last character, in the whole text."""
        return self.pieces[0][0], self.pieces[-1][1]

    def place(self, start: int, end: int) -> Span:
        """A half-open place in the text of this part as one in the whole text; marks between pieces lie within."""
        if end <= start:
            at = self._at(min(start, max(len(self.text) - 1, 0)))
            return at, at
        return self._at(start), self._at(end - 1) + 1

    def _at(self, place: int) -> int:
        n = max(bisect_right(self.starts, place) - 1, 0)
        return self.pieces[n][0] + place - self.starts[n]


def _stripped(whole: str, pieces: list[Span]) -> list[Span]:
    kept = [(start, end) for start, end in pieces if end > start]
    while kept and not whole[kept[0][0] : kept[0][1]].strip():
        kept.pop(0)
    while kept and not whole[kept[-1][0] : kept[-1][1]].strip():
        kept.pop()
    if kept:
        start, end = kept[0]
        kept[0] = (end - len(whole[start:end].lstrip()), end)
        start, end = kept[-1]
        kept[-1] = (start, start + len(whole[start:end].rstrip()))
    return kept


@dataclass(frozen=True, slots=True)
class Turn:
    """What one person said at one time.

    `name`: the speaker as written, None where nobody is named. `at`: ISO 8601 ("2026-03-02T10:32", with seconds and
    offset where they are told) where the thread gives date and time, the time alone ("10:32") or the date alone
    ("2026-03-02") where it gives just that, else None. `parts`: one, or several where a mail answers between quotes.
    """

    who: Side
    name: str | None
    at: str | None
    parts: tuple[Part, ...]

    @property
    def span(self) -> Span:
        """From the first to the last character of its words, in the whole text."""
        return self.parts[0].span[0], self.parts[-1].span[1]

    @property
    def text(self) -> str:
        """Its words, without quote marks."""
        return "\n".join(part.text for part in self.parts)

    def to_json(self) -> dict[str, Any]:
        """The shape promised to scripts."""
        return {"who": self.who, "name": self.name, "at": self.at, "span": list(self.span)}
