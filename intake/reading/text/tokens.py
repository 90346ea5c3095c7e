"""The text cut into numbers, words and signs."""

import re
from typing import Literal

from intake.reading.text.fold import Folded

Kind = Literal["number", "word", "sign", "line"]

_VULGAR = "½¼¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
_TOKEN = re.compile(
    r"(?P<number>\d{1,3}(?:'\d{3})+(?![\d'\"])(?:[.,]\d+)?|\d+(?:[.,]\d+)*(?:e[-+]?\d{1,2}(?![\w.]))?|(?<![\w.])[.]\d+)"
    rf"|(?P<word>(?<=\d)(?:mm|cm|in|ft|m)(?=x\d)|[^\W\d_{_VULGAR}]+(?:'[^\W\d_{_VULGAR}]+)*)"
    r"|(?P<line>\n)"
    r"|(?P<sign>[^\w\s]|_|\d|\w)"
)
_DIGITS_MOST = 15
_COMMA_THOUSANDS = re.compile(r"[1-9]\d{0,2}(?:,\d{3})+(?:\.\d+)?")
_POINT_THOUSANDS = re.compile(r"[1-9]\d{0,2}(?:\.\d{3}){2,}(?:,\d+)?|[1-9]\d{0,2}(?:\.\d{3})+,\d+")
_POINT_AND_THREE = re.compile(r"[1-9]\d{0,2}\.\d{3}")
_COMMA_DECIMAL = re.compile(r"\d+,\d+")
_PLAIN = re.compile(r"\d*\.?\d+(?:e[-+]?\d+)?")
VULGAR = {
    "½": 1 / 2, "¼": 1 / 4, "¾": 3 / 4, "⅓": 1 / 3, "⅔": 2 / 3, "⅕": 1 / 5, "⅖": 2 / 5, "⅗": 3 / 5, "⅘": 4 / 5,
    "⅙": 1 / 6, "⅚": 5 / 6, "⅛": 1 / 8, "⅜": 3 / 8, "⅝": 5 / 8, "⅞": 7 / 8,
}  # fmt: skip


class Token:
    """A piece of the shadow. `value` is None for a number that is none (a date, a phone number, too many digits)."""

    __slots__ = ("end", "kind", "maybe_thousands", "start", "text", "value")

    def __init__(self, kind: Kind, text: str, start: int, end: int) -> None:
        self.kind, self.text, self.start, self.end = kind, text, start, end
        self.value: float | None = None
        self.maybe_thousands = False
        """12.000: twelve in most of the world, twelve thousand in the rest."""
        if kind == "number":
            self.value = value_of(text)
            self.maybe_thousands = _POINT_AND_THREE.fullmatch(text) is not None

    def __repr__(self) -> str:
        return f"{self.kind}:{self.text!r}"


def tokens_of(folded: Folded) -> list[Token]:
    """All tokens in order; spaces between them show as gaps in the places."""
    found: list[Token] = []
    for match in _TOKEN.finditer(folded.shadow):
        kind = match.lastgroup
        text = match.group()
        found.append(Token(kind, text, match.start(), match.end()))  # type: ignore[arg-type]  # the groups are the kinds
        if text in VULGAR:
            found[-1].value = VULGAR[text]
    return found


def value_of(digits: str) -> float | None:
    """What a run of digits, points and commas stands for; None when it is no number.

    >>> value_of("1,200"), value_of("3,2"), value_of("1'200"), value_of("12.5"), value_of("971.4.123")
    (1200.0, 3.2, 1200.0, 12.5, None)
    """
    if sum(sign.isdigit() for sign in digits) > _DIGITS_MOST or not digits.isascii():
        return None
    plain = digits
    if "'" in plain:
        plain = plain.replace("'", "").replace(",", ".")
    elif _COMMA_THOUSANDS.fullmatch(plain):
        plain = plain.replace(",", "")
    elif _POINT_THOUSANDS.fullmatch(plain):
        plain = plain.replace(".", "").replace(",", ".")
    elif _COMMA_DECIMAL.fullmatch(plain):
        plain = plain.replace(",", ".")
    return float(plain) if _PLAIN.fullmatch(plain) else None
