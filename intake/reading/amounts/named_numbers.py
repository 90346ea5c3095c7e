"""Numbers that name a thing or a day, and count nothing: line 2, rev 4, PO 45, May 9, the 2023 show, building 4."""

from intake.reading.amounts.unit_words import UNIT_WORDS
from intake.reading.text.tokens import Token

_LABELS = frozenset(
    [
        "po", "p.o", "rfq", "ref", "no", "nr", "building", "bldg", "line", "dock", "suite", "ste", "room", "ext",
        "extension", "section", "sect", "sec", "item", "rev", "revision", "version", "drawing", "dwg", "part", "sku",
        "model", "order", "quote", "job", "ticket", "page", "step", "option", "serial", "zone", "bay", "aisle",
        "gate", "booth", "plant", "unit", "machine", "station", "unit.", "isbn", "chapter", "claim", "table", "id",
        "lot", "batch", "hall", "cell", "iso", "en", "din", "class", "highway", "exit", "route",
    ]
)  # fmt: skip
_LABELS_MAY_COUNT = frozenset(
    {
        "line", "rm", "room", "dock", "gate", "machine", "unit", "zone", "no", "sec", "part", "order", "plant",
        "section", "step", "bay", "option", "class", "table", "item", "en", "cell", "hall", "version", "model",
        "building", "job", "batch", "aisle", "station",
    }
)  # fmt: skip
_MONTHS = frozenset(
    [
        "january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november",
        "december", "jan", "feb", "mar", "apr", "jun", "jul", "aug", "sep", "sept", "oct", "nov", "dec",
    ]
)  # fmt: skip
_AS_A_UNIT = frozenset(
    {
        "l", "w", "wide", "long", "high", "tall", "deep", "x", "ft", "in", "'", '"', "mm", "cm", "m", "kg", "lb", "lbs",
        "/", "per", "cases", "a", "f", "°", "degrees", "feet", "inches", "c", "hz", "v", "volt", "volts", "-", "min",
    }
)  # fmt: skip
"""Behind a number that could name something, these say that it measures or counts."""
_BEFORE_A_YEAR = frozenset(
    {
        "in", "since", "from", "until", "by", "of", "show", "year", "fall", "spring", "summer", "winter", "late",
        "early", "mid", "for",
    }
)  # fmt: skip


def named_end(tokens: list[Token], at: int) -> int:
    """The token behind the number at `at` where it only names something; `at` itself where it does not."""
    if at == 0:
        return at
    before = tokens[at - 1].text
    skip = at - 2 if before in (".", "#", ":") and at >= 2 else at - 1
    word = tokens[skip].text
    text = tokens[at].text
    plain = text.isdigit()
    if plain and word in _LABELS and (skip == at - 1 or before != ":"):
        behind = tokens[at + 1].text if at + 1 < len(tokens) else ""
        unit = behind in UNIT_WORDS or behind in _AS_A_UNIT
        if word not in _LABELS_MAY_COUNT or not unit:
            return at + 1
    if word in _MONTHS and plain and len(text) <= 4 and before != ":":
        return at + 1 if word != "may" or (len(text) <= 2 and _is_day(tokens, at)) else at
    if plain and len(text) == 4 and text[:2] in ("19", "20") and word in _BEFORE_A_YEAR:
        unit_behind = at + 1 < len(tokens) and (tokens[at + 1].kind == "word" or tokens[at + 1].text in "/'\"")
        if not unit_behind or tokens[at + 1].text in ("and", "or", "we", "but", "the", "so", "they", "with", "as", "i"):
            return at + 1
    if (
        at + 1 < len(tokens)
        and tokens[at + 1].text in _MONTHS
        and plain
        and len(text) <= 2
        and tokens[at + 1].text not in ("may", "mar")
    ):
        return at + 2
    return at


def _is_day(tokens: list[Token], at: int) -> bool:
    following = tokens[at + 1].text if at + 1 < len(tokens) else "."
    return following in (".", ",", "?", "!", ";", ")") or following == "\n"
