"""The shadow of a text: lower case and plain signs, so that one grammar fits all typing, with the way back."""

import re
from dataclasses import dataclass, replace

_SIGNS = {
    "’‘′‵ʹ`´": "'",
    "“”″„‟ˮ": '"',
    "–—−‐‑‒―﹣－": "-",
    "×✕✖✗⨯": "x",
    "\u00a0\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u205f\u3000\r\x0b\x0c": " ",
    "⁄∕": "/",
    "º∘˚": "°",
    "∅⌀Øø": "ø",
    "～∼〜": "~",
    "²": "2",
    "³": "3",
    "µμ": "µ",
    "，": ",",
    "：": ":",
    "\u2028\u2029\x85": "\n",
}
_INVISIBLE = (
    "\u00ad\u061c\u180e\u200b\u200c\u200d\u200e\u200f\u202a\u202b\u202c"
    "\u202d\u202e\u2060\u2061\u2062\u2063\u2064\u2066\u2067\u2068\u2069\ufeff"
)
_CONTROL = [chr(code) for code in (*range(0, 9), *range(14, 32), *range(127, 133), *range(134, 160))]

_SAME_LENGTH = str.maketrans(
    {sign: plain for signs, plain in _SIGNS.items() for sign in signs} | dict.fromkeys(_CONTROL, " ")
)
_GONE = frozenset(_INVISIBLE)


@dataclass(frozen=True, slots=True)
class Folded:
    """`shadow` and `raw` have one length. `places` maps each of their positions (and the end) to the text as received.

    None where both are the same, which is nearly always. `lasts`: where a span that ends with a position ends in the
    text; None where that is one letter on.
    """

    text: str
    shadow: str
    raw: str
    places: tuple[int, ...] | None = None
    lasts: tuple[int, ...] | None = None

    def span(self, start: int, end: int) -> tuple[int, int]:
        """A half-open place in the shadow as one in the text as received."""
        if self.places is None or start >= end:
            return (start, end) if self.places is None else (self.places[start], self.places[start])
        return self.places[start], self.places[end - 1] + 1 if self.lasts is None else self.lasts[end - 1]

    def said(self, start: int, end: int) -> str:
        """The words as received."""
        first, last = self.span(start, end)
        return self.text[first:last]


_RUN = re.compile(r" {2,}")
_DOTS = re.compile(r"(?<=\d)\.{2,3}(?=\d)")


def squeezed(folded: Folded) -> Folded:
    """The same with single spaces, and "8...14" with a hyphen: people double their spaces without meaning anything."""
    shadow = folded.shadow
    if ".." in shadow:
        shadow = _DOTS.sub(lambda match: "-" + " " * (len(match.group()) - 1), shadow)
    if "  " not in shadow:
        return folded if shadow == folded.shadow else replace(folded, shadow=shadow)
    places = folded.places or range(len(shadow) + 1)
    kept: list[int] = []
    last = 0
    for match in _RUN.finditer(shadow):
        kept += range(last, match.start() + 1)
        last = match.end()
    kept += range(last, len(shadow))
    return Folded(
        folded.text,
        "".join([shadow[n] for n in kept]),
        "".join([folded.raw[n] for n in kept]),
        (*(places[n] for n in kept), places[len(shadow)]),
        None if folded.lasts is None else tuple(folded.lasts[n] for n in kept),
    )


def fold(text: str) -> Folded:
    """The shadow that the grammar reads. Never raises; linear in the text's length."""
    raw, places = text, None
    if not text.isascii() and not _GONE.isdisjoint(text):
        kept = [n for n, sign in enumerate(text) if sign not in _GONE]
        raw, places = "".join(text[n] for n in kept), (*kept, len(text))
    lower = raw.lower()
    if len(lower) != len(raw):  # a few letters grow when they turn small
        lower = "".join(small if len(small := sign.lower()) == 1 else sign for sign in raw)
    return Folded(text, lower.translate(_SAME_LENGTH), raw, places)
