"""Figures that are no figures of a need: prices, phone numbers, clock times, dates, order numbers, percentages."""

from intake.reading.amounts.named_numbers import named_end
from intake.reading.amounts.unit_words import UNIT_WORDS
from intake.reading.text.tokens import Token

_CURRENCY = frozenset({"$", "€", "£", "¥", "usd", "eur", "gbp", "chf", "rmb", "inr"})
_MONEY_BEHIND = frozenset(
    ["dollars", "dollar", "bucks", "euros", "euro", "eur", "usd", "gbp", "cents", "cent", "€", "£", "quid"]
)
_SIZE_LETTERS = frozenset({"x", "ø", "h", "l", "w", "d"})
_UNITS_AHEAD = frozenset({"ft", "in", "lb", "m", "min", "by", "feet", "kg", "lbs", "cm", "mm", "foot", "hr"})
_ORDINAL = frozenset({"st", "nd", "rd", "th"})


def stranger_end(tokens: list[Token], at: int) -> int:
    """The token behind the stranger that begins at token `at`; `at` itself where there is none.

    Also pieces of codes (P-2209, t2000), which are letters and digits grown together.
    """
    token = tokens[at]
    if token.kind != "number":
        return at
    before = tokens[at - 1] if at else None
    touching = before is not None and before.end == token.start
    following = tokens[at + 1] if at + 1 < len(tokens) else None
    if before is not None and before.text in _CURRENCY:
        return _money_end(tokens, at)
    if before is not None and touching and _grown_together(tokens, at):
        return at + 1
    if token.value is None or _list_number(tokens, at):
        return at + 1
    if following is None:
        return named_end(tokens, at)
    close = following.start == token.end
    if following.text in _MONEY_BEHIND or following.text in ("%", "percent", "pct"):
        return at + 2
    if following.text in ("pound", "pounds") and at + 2 < len(tokens) and tokens[at + 2].text == "sterling":
        return at + 3
    if close and following.text in _ORDINAL:
        return at + 2
    if following.text in ("am", "pm", "a.m", "p.m") or (following.text in ("a", "p") and _meridiem(tokens, at + 1)):
        return at + 2
    clock = _clock_end(tokens, at)
    if clock > at:
        return clock
    chain = _chain_end(tokens, at)
    if chain > at:
        return chain
    return named_end(tokens, at)


def _list_number(tokens: list[Token], at: int) -> bool:
    """1. and 2) at the head of a line."""
    if at and tokens[at - 1].kind != "line":
        return False
    mark = tokens[at + 1] if at + 1 < len(tokens) else None
    if mark is None or mark.text not in ".)" or not tokens[at].text.isdigit() or len(tokens[at].text) > 2:
        return False
    spaced = at + 2 < len(tokens) and tokens[at + 2].start > mark.end and tokens[at + 2].kind == "word"
    return mark.start == tokens[at].end and spaced and (at > 0 or any(t.kind == "line" for t in tokens[at : at + 80]))


def _money_end(tokens: list[Token], at: int) -> int:
    after = at + 1
    while after < len(tokens) and tokens[after].text in ("k", "m", "million", "thousand", "-", "mm"):
        after += 1
    if after < len(tokens) and tokens[after].kind == "number" and tokens[after - 1].text == "-":
        after += 1
    return after


def _grown_together(tokens: list[Token], at: int) -> bool:
    """True where the number grows out of letters (t2000) or a code (P-2209, #10, 2.1/4)."""
    before = tokens[at - 1]
    if before.text == "#":
        return at < 2 or tokens[at - 2].kind != "number" or tokens[at - 2].end < before.start
    if before.kind == "word":
        if before.text in _SIZE_LETTERS:
            return False
        return before.text not in _UNITS_AHEAD or at < 2 or tokens[at - 2].end < before.start
    if before.text == "_":
        return True
    if before.text == "-" and at >= 2 and tokens[at - 2].end == before.start and tokens[at - 2].kind == "word":
        gap = tokens[at - 2].start - tokens[at - 3].end if at >= 3 else 9
        measured = at >= 3 and tokens[at - 3].kind == "number" and gap == 0
        known = UNIT_WORDS | {"m", "g", "v", "n", "minute", "hour"}
        measured = measured or (at >= 3 and gap <= 1 and tokens[at - 2].text in known)
        measured = measured or (at >= 3 and tokens[at - 3].text == "°")
        return not measured and tokens[at - 2].text not in ("to", "max", "x", "ft", "in", "min", "minute", "hour")
    return False


def _meridiem(tokens: list[Token], at: int) -> bool:
    """a.m. and p.m. in three tokens."""
    return at + 2 < len(tokens) and tokens[at + 1].text == "." and tokens[at + 2].text == "m"


def _clock_end(tokens: list[Token], at: int) -> int:
    """3:30, 8:00:31: the token behind a clock time."""
    after = at
    while (
        after + 2 < len(tokens)
        and tokens[after + 1].text == ":"
        and tokens[after + 2].kind == "number"
        and tokens[after + 1].start == tokens[after].end
        and tokens[after + 2].start == tokens[after + 1].end
        and len(tokens[after + 2].text) == 2
    ):
        after += 2
    return after + 1 if after > at else at


def _chain_end(tokens: list[Token], at: int) -> int:
    """Dates, phone and order numbers: three or more numbers joined by - or /, or two that are too long for a range."""
    after, links = at, 0
    while (
        after + 2 < len(tokens)
        and tokens[after + 1].text in ("-", "/")
        and tokens[after + 2].kind == "number"
        and tokens[after + 1].start == tokens[after].end
        and tokens[after + 2].start == tokens[after + 1].end
    ):
        links += 1
        after += 2
    if links >= 2 and not _fraction_chain(tokens, at, after) and not _sizes_by_slash(tokens, at, after):
        return after + 1
    if links == 1 and tokens[at + 1].text == "-":
        second = tokens[at + 2].text
        measured = at + 3 < len(tokens) and tokens[at + 3].kind == "word"
        if len(second) >= 4 and second.isdigit() and len(tokens[at].text) == 3 and not measured:
            return at + 3
        coded = at + 4 < len(tokens) and tokens[at + 3].text == "-" and tokens[at + 3].start == tokens[at + 2].end
        if (
            coded
            and tokens[at + 4].kind == "word"
            and tokens[at + 4].start == tokens[at + 3].end
            and len(tokens[at + 4].text) < 3
        ):
            return at + 5  # part number 88-1207-C
        if second.startswith("0") and second.isdigit() and len(second) > 1:
            return at + 3
        both = second.isdigit() and tokens[at].text.isdigit()
        if both and len(second) >= 5 and len(tokens[at].text) < len(second) - 1:
            return at + 3
    return at


def _fraction_chain(tokens: list[Token], first: int, last: int) -> bool:
    """5-1/2 and 31-1/2 are mixed numbers; 480/3/60 is a supply; 2-3/4."""
    signs = [tokens[n].text for n in range(first + 1, last, 2)]
    return signs == ["-", "/"] or signs == ["-", "/", "-", "/"] or (signs[:1] == ["/"] and _supply(tokens, first, last))


def _sizes_by_slash(tokens: list[Token], first: int, last: int) -> bool:
    """600/400/220: three sizes; no date has so great a number in all three places, and none has a unit behind it."""
    values = [tokens[n].value or 0.0 for n in range(first, last + 1, 2)]
    slashes = all(tokens[n].text == "/" for n in range(first + 1, last, 2))
    if len(values) == 3 and slashes and last + 1 < len(tokens) and tokens[last + 1].text in ("cm", "mm"):
        return True
    return len(values) == 3 and slashes and min(values) >= 40 and max(values) >= 100 and max(values) <= 3000


def _supply(tokens: list[Token], first: int, last: int) -> bool:
    """volts / phases / hertz as electricians write it: 480/3/60."""
    values = [tokens[n].value or 0.0 for n in range(first, last + 1, 2)]
    return len(values) == 3 and 100 <= values[0] <= 700 and values[1] in (1.0, 3.0) and values[2] in (50.0, 60.0)
