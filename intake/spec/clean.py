"""Text from outside made safe to show: no control codes, no hidden or direction-changing characters."""

import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass

LONGEST = 20_000
"""Characters of one message that are kept; callers say so when something was cut."""

# Whole terminal sequences go with their parameters: CSI, OSC, and DCS/PM/APC strings.
_SEQUENCE = re.compile(
    r"(?:\x1b\[|\x9b)[0-?]*[ -/]*[@-~]"
    r"|(?:\x1b\]|\x9d)[^\x07\x1b\x9c\n]{0,4096}(?:\x07|\x1b\\|\x9c)"
    r"|\x1b[PX^_][^\x1b\n]{0,4096}\x1b\\"
)
# Controls but tab and newline, soft hyphens, zero-width and direction marks, lone surrogates, tag characters.
_HIDDEN = re.compile(
    "[\x00-\x08\x0b-\x1f\x7f-\x9f\u00ad\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f"
    "\ufeff\ufff9-\ufffb\ud800-\udfff\U000e0000-\U000e007f]"
)


def clean(text: str, limit: int = LONGEST) -> str:
    """The words of `text` without anything that a terminal or a page would obey.

    An unfinished sequence loses only its escape sign, not the words after it. Newlines become "\\n";
    the result is in Unicode form C and at most `limit` characters of the text are kept.

    >>> clean("12\\x1b[31m in\\r\\n")
    '12 in\\n'
    """
    kept = text[:limit].replace("\r\n", "\n").replace("\r", "\n")
    return unicodedata.normalize("NFC", _HIDDEN.sub("", _SEQUENCE.sub("", kept)))


@dataclass(frozen=True, slots=True)
class Cleaned:
    """Clean words with the way back: character n stands at `starts[n]`..`ends[n]` of the text as received."""

    words: str
    starts: Sequence[int]
    ends: Sequence[int]

    def span(self, start: int, end: int) -> tuple[int, int]:
        """A half-open place in the clean words as one in the text as received."""
        if end <= start:
            at = self.starts[start] if start < len(self.starts) else self.ends[-1] if self.ends else 0
            return at, at
        return self.starts[start], self.ends[end - 1]


def clean_with_places(text: str) -> Cleaned:
    """The same as `clean` without a limit, with the place of every character."""
    words = clean(text, len(text))
    if words == text:
        return Cleaned(words, range(len(text)), range(1, len(text) + 1))
    places = [n for n, sign in enumerate(text) if not (sign == "\n" and n and text[n - 1] == "\r")]
    kept = "".join("\n" if text[n] == "\r" else text[n] for n in places)
    for pattern in (_SEQUENCE, _HIDDEN):
        gone = {at for match in pattern.finditer(kept) for at in range(match.start(), match.end())}
        places = [place for at, place in enumerate(places) if at not in gone]
        kept = pattern.sub("", kept)
    composed: list[str] = []
    starts: list[int] = []
    ends: list[int] = []
    for first, after in _clusters(kept):
        signs = unicodedata.normalize("NFC", kept[first:after])
        composed.append(signs)
        last = after - first - 1
        starts += [places[first + min(n, last)] for n in range(len(signs))]
        ends += [places[first + min(n, last)] + 1 for n in range(len(signs) - 1)] + [places[after - 1] + 1] * bool(
            signs
        )
    if "".join(composed) != words:  # signs of rare scripts that join what comes before them: the words as they stand
        return Cleaned(kept, places, [place + 1 for place in places])
    return Cleaned(words, starts, ends)


def _clusters(text: str) -> list[tuple[int, int]]:
    """Each letter with the marks behind it that may join it."""
    cuts = [
        n for n, sign in enumerate(text) if not n or not (unicodedata.combining(sign) or "\u1160" <= sign <= "\u11ff")
    ]
    return list(zip(cuts, [*cuts[1:], len(text)], strict=True)) if cuts else []


def one_line(text: str, limit: int = LONGEST) -> str:
    """The same on one line: newlines and tabs become spaces."""
    return " ".join(clean(text, limit).split())
