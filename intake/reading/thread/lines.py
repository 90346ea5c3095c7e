"""A text as lines with their places, and the depth at which each is quoted."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

_END = re.compile(r"\r\n|[\n\r\u2028\u2029\x85]")
_QUOTES = re.compile(r"(?:[ \t]*>)+ ?")


@dataclass(frozen=True, slots=True)
class Line:
    """One line: `start`..`end` its words behind quote marks, `after` behind its line end. `depth`: quote marks."""

    start: int
    end: int
    after: int
    depth: int
    text: str

    @property
    def blank(self) -> bool:
        """True where nothing is written."""
        return not self.text.strip()


def lines_of(text: str, *, quoted: bool = False) -> list[Line]:
    """The lines of a text. `quoted`: marks at the beginning are taken off and counted."""
    return list(_lines(text, quoted))


def _lines(text: str, quoted: bool) -> Iterator[Line]:
    start = 0
    while start < len(text):
        found = _END.search(text, start)
        end, after = (found.start(), found.end()) if found is not None else (len(text), len(text))
        depth, begin = 0, start
        marks = _QUOTES.match(text, start, end) if quoted else None
        if marks is not None:
            depth, begin = marks.group().count(">"), marks.end()
        yield Line(begin, end, after, depth, text[begin:end])
        start = after
