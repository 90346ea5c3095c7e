"""Numbers as people write them: digits, fractions, mixed numbers, number words."""

import re
from dataclasses import dataclass

from intake.reading.text.tokens import VULGAR, Token

_ONES = {
    word: float(n)
    for n, word in enumerate(
        [
            "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
            "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
        ]
    )
}  # fmt: skip
_TENS = {
    word: 10.0 * n
    for n, word in enumerate(["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"], 2)
} | {"fourty": 40.0}
_SCALES = {"hundred": 100.0, "thousand": 1e3, "million": 1e6, "billion": 1e9, "grand": 1e3}
_COUNTED = {"dozen": 12.0, "dozens": 12.0, "gross": 144.0}
_SHARES = {
    "half": 1 / 2, "halves": 1 / 2, "quarter": 1 / 4, "quarters": 1 / 4, "third": 1 / 3, "thirds": 1 / 3,
    "fourth": 1 / 4, "fourths": 1 / 4, "fifth": 1 / 5, "fifths": 1 / 5, "sixth": 1 / 6, "sixths": 1 / 6,
    "eighth": 1 / 8, "eighths": 1 / 8, "tenth": 1 / 10, "tenths": 1 / 10, "sixteenths": 1 / 16, "sixteenth": 1 / 16,
}  # fmt: skip
_ONE_SHARE = frozenset(word for word in _SHARES if not word.endswith("s"))
_DENOMINATORS = frozenset({2, 3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 64, 100, 1000})
NUMBER_WORDS = frozenset({*_ONES, *_TENS, *_SCALES, *_COUNTED, *_SHARES, "couple", "half", "point"})
_WHOLE_WORDS = frozenset({*_ONES, *_TENS})


@dataclass(frozen=True, slots=True)
class Number:
    """A number among the tokens: `after` is the token behind it."""

    value: float
    after: int
    in_words: bool = False
    maybe_thousands: bool = False
    fraction: bool = False
    """A bare a/b: it may be a date."""
    vague: bool = False
    """"A couple hundred": about."""
    whole: bool = True
    """A whole number in digits, which inches may follow."""


def number_at(tokens: list[Token], at: int) -> Number | None:
    """The number that begins at token `at`, None where none does."""
    token = tokens[at]
    if token.kind == "number" or token.text in VULGAR:
        return _digits_at(tokens, at)
    if token.kind == "word":
        return _words_at(tokens, at)
    return None


def _text(tokens: list[Token], at: int) -> str:
    return tokens[at].text if at < len(tokens) else ""


def _glued(tokens: list[Token], at: int) -> bool:
    """True where token `at` follows the one before it without a space."""
    return at < len(tokens) and tokens[at].start == tokens[at - 1].end


def _digits_at(tokens: list[Token], at: int) -> Number | None:
    token = tokens[at]
    if token.value is None:
        return None
    if token.text in VULGAR:
        return Number(token.value, at + 1, whole=False)
    over = _fraction_at(tokens, at)
    if over is not None:
        return Number(over, at + 3, fraction=True, whole=False)
    value, after, whole = token.value, at + 1, token.text.isdigit()
    if whole:
        grouped = _spaced_thousands(tokens, at)
        if grouped is not None:
            return Number(grouped[0], grouped[1])
        mixed = _mixed(tokens, at)
        if mixed is not None:
            return Number(value + mixed[0], mixed[1], whole=False)
    if _text(tokens, after) == "k" and (_glued(tokens, after) or value < 1000) and _text(tokens, after + 1) != "/":
        joined = after + 1 < len(tokens) and _glued(tokens, after + 1) and tokens[after + 1].kind == "number"
        if _glued(tokens, after) and not joined and value < 1000 and len(token.text.partition(".")[2]) < 2:
            return Number(value * 1e3, after + 1, whole=False)
    if _text(tokens, after) == "k" and _glued(tokens, after) and _text(tokens, after + 1) == "/":
        return Number(value * 1e3, after + 1, whole=False)
    while _text(tokens, after) in ("hundred", "thousand", "million", "billion"):
        value, after, whole = value * _SCALES[_text(tokens, after)], after + 1, False
    if _text(tokens, after) == "dozen":
        return Number(value * 12.0, after + 1, whole=False)
    share = share_after_and(tokens, after) if whole else None
    if share is not None:
        return Number(value + share[0], share[1], whole=False)
    return Number(value, after, maybe_thousands=token.maybe_thousands, whole=whole)


def _fraction_at(tokens: list[Token], at: int) -> float | None:
    """a/b in digits without spaces."""
    if at + 2 >= len(tokens) or tokens[at + 1].text != "/" or tokens[at + 2].kind != "number":
        return None
    top, below = tokens[at], tokens[at + 2]
    if not (_glued(tokens, at + 1) and _glued(tokens, at + 2) and top.text.isdigit() and below.text.isdigit()):
        return None
    if _text(tokens, at + 3) == "/" and _glued(tokens, at + 3):
        return None
    if int(below.text[:5]) not in _DENOMINATORS or len(below.text) > 4 or top.value is None:
        return None
    return top.value / float(below.text) if top.value < float(below.text) else None


def _mixed(tokens: list[Token], at: int) -> tuple[float, int] | None:
    """The fraction behind a whole number: 5 1/2, 5-1/2, 5½."""
    after = at + 1
    if after < len(tokens) and tokens[after].text == "-" and _glued(tokens, after) and _glued(tokens, after + 1):
        after += 1
    if after >= len(tokens) or tokens[after].start - tokens[after - 1].end > 2:
        return None
    if tokens[after].text in VULGAR:
        return tokens[after].value or 0.0, after + 1
    if tokens[after].kind == "number" and tokens[after].text.isdigit():
        over = _fraction_at(tokens, after)
        if over is not None:
            return over, after + 3
    return None


def _spaced_thousands(tokens: list[Token], at: int) -> tuple[float, int] | None:
    """1 234 567 and 12 000: groups of three behind single spaces. Three groups of three are a list, not a number."""
    if len(tokens[at].text) > 3 or tokens[at].text.startswith("0"):
        return None
    after, digits = at + 1, tokens[at].text
    while after < len(tokens) and tokens[after].start - tokens[after - 1].end == 1 and _is_group(tokens[after]):
        digits += tokens[after].text
        after += 1
    decimals = after < len(tokens) and tokens[after].start - tokens[after - 1].end == 1
    if decimals and _GROUP_AND_DECIMALS.fullmatch(tokens[after].text):
        group, _, behind = tokens[after].text.replace(".", ",").partition(",")
        return float(f"{digits}{group}.{behind}"), after + 1
    if after == at + 1 or len(digits) > 12:
        return None
    if len(tokens[at].text) == 3 and after > at + 2:
        return None
    return float(digits), after


_GROUP_AND_DECIMALS = re.compile(r"\d{3},\d{1,2}")


def _is_group(token: Token) -> bool:
    return token.kind == "number" and len(token.text) == 3 and token.text.isdigit()


def _words_at(tokens: list[Token], at: int) -> Number | None:
    """Number words: thirty-five, two and a half, a dozen, half a pound, a couple hundred, seventeen point two."""
    word = tokens[at].text
    if word in ("a", "an"):
        return _after_article(tokens, at)
    if word == "couple" and _text(tokens, at + 1) in ("hundred", "thousand", "dozen"):
        return Number(2 * (_SCALES | _COUNTED)[_text(tokens, at + 1)], at + 2, in_words=True, vague=True)
    if word == "half":
        return _half(tokens, at)
    if (
        word in _SHARES
        and not word.endswith("s")
        and _text(tokens, at + 1) == "of"
        and _text(tokens, at + 2) in ("a", "an")
    ):
        return Number(_SHARES[word], at + 3, in_words=True, whole=False)
    if word == "dozen":
        return Number(12.0, at + 1, in_words=True, whole=False)
    named = at > 0 and _text(tokens, at - 1) in (
        "set", "dew", "end", "high", "low", "pick", "discharge", "drop", "melting",
    )  # fmt: skip
    if word == "point" and not named and (_text(tokens, at + 1) in _ONES or _is_int(tokens, at + 1)):
        decimals, after = _decimals(tokens, at + 1)
        return Number(decimals, after, in_words=True, whole=False) if after > at + 1 else None
    if word not in _WHOLE_WORDS or (word == "one" and _stands_for_a_noun(tokens, at)):
        return None
    value, after = _cardinal(tokens, at)
    return _with_share(tokens, value, after)


_BEFORE_A_PRONOUN = frozenset(
    {
        "the", "this", "that", "each", "every", "which", "another", "other", "no", "any", "big", "small", "large",
        "little", "heavy", "light", "tall", "short", "long", "wide", "old", "new", "first", "second", "last", "only",
        "a", "good", "same", "right", "wrong", "either", "worst", "best", "lower", "upper", "next", "single",
    }
)  # fmt: skip


def _stands_for_a_noun(tokens: list[Token], at: int) -> bool:
    """ "The narrowest one is", "this one": no number, unless a unit or a noun to count stands behind."""
    before = _text(tokens, at - 1) if at else ""
    following = _text(tokens, at + 1)
    if before not in _BEFORE_A_PRONOUN and not before.endswith("est"):
        return following in ("at", "upstairs", "downstairs", "below", "above") and before in (
            "to",
            "from",
            "onto",
            "on",
            "and",
        )
    return before != "a" and not following.startswith(("hundred", "thousand", "shift", "and", "point", "-", "every"))


def _is_int(tokens: list[Token], at: int) -> bool:
    return at < len(tokens) and tokens[at].kind == "number" and tokens[at].text.isdigit()


def _after_article(tokens: list[Token], at: int) -> Number | None:
    following = _text(tokens, at + 1)
    if following in ("hundred", "thousand", "million"):
        value, after = _cardinal(tokens, at + 1, 1.0)
        return _with_share(tokens, value, after)
    if following == "dozen":
        return Number(12.0, at + 2, in_words=True, whole=False)
    if following == "couple":
        scale = at + 3 if _text(tokens, at + 2) == "of" else at + 2
        if _text(tokens, scale) in ("hundred", "thousand", "dozen"):
            return Number(2 * (_SCALES | _COUNTED)[_text(tokens, scale)], scale + 1, in_words=True, vague=True)
        return None
    if following == "half" and _text(tokens, at + 2) in ("dozen",):
        return Number(6.0, at + 3, in_words=True, whole=False)
    if following in ("half", "quarter"):
        return Number(_SHARES[following], at + 2, in_words=True, whole=False)
    return None


def _half(tokens: list[Token], at: int) -> Number | None:
    after = at + 1
    if _text(tokens, after) in ("a", "an", "of"):
        after += 1
    if _text(tokens, after) in ("a", "an"):
        after += 1
    if _text(tokens, after) == "dozen":
        return Number(6.0, after + 1, in_words=True, whole=False)
    if _text(tokens, after) == "million":
        return Number(5e5, after + 1, in_words=True, whole=False)
    return Number(0.5, after, in_words=True, whole=False)


def _cardinal(tokens: list[Token], at: int, value: float | None = None) -> tuple[float, int]:
    """A whole number in words from token `at` on. `value`: an article stood for the first word."""
    total, group, after = 0.0, value or 0.0, at
    last = 0.0  # the size of the last small word: after "twenty" only 1 to 9 may follow
    while after < len(tokens):
        word, step = tokens[after].text, 1
        if (word in ("and", "&") and last >= 100 and _text(tokens, after + 1) in _WHOLE_WORDS) or (
            word == "," and last >= 1000 and _text(tokens, after + 1) in _WHOLE_WORDS
        ):
            word, step = tokens[after + 1].text, 2
        elif word == "-" and _glued(tokens, after) and _glued(tokens, after + 1) and last in _TENS.values():
            if _text(tokens, after + 1) not in _ONES:
                break
            word, step = tokens[after + 1].text, 2
        if word in _ONES and (after == at or last >= 100 or (last in _TENS.values() and 1 <= _ONES[word] <= 9)):
            group, last = group + _ONES[word], _ONES[word]
        elif word in _TENS and (after == at or last >= 100):
            group, last = group + _TENS[word], _TENS[word]
        elif word == "hundred" and group and last != 100:
            group, last = group * 100.0, 100.0
        elif word in ("thousand", "million", "billion") and (group or total):
            total, group, last = total + (group or 1.0) * _SCALES[word], 0.0, 1000.0
        else:
            break
        after += step
    return total + group, after


def _with_share(tokens: list[Token], value: float, after: int) -> Number:
    """What may follow a whole number: point two four, and a half, thirds, hundred thousand, dozen."""
    if _text(tokens, after) == "point":
        decimals, end = _decimals(tokens, after + 1)
        if end > after + 1:
            if _text(tokens, end) in ("hundred", "thousand", "million", "billion"):
                return Number((value + decimals) * _SCALES[_text(tokens, end)], end + 1, in_words=True, whole=False)
            return Number(value + decimals, end, in_words=True, whole=False)
    if _text(tokens, after) == "dozen":
        return Number(value * 12.0, after + 1, in_words=True, whole=False)
    hyphen = after + 1 if _text(tokens, after) == "-" else after
    if _text(tokens, hyphen) in _SHARES and value < 20:
        return Number(value * _SHARES[_text(tokens, hyphen)], hyphen + 1, in_words=True, whole=False)
    share = share_after_and(tokens, after)
    if share is not None:
        value, after = value + share[0], share[1]
        if _text(tokens, after) in ("hundred", "thousand", "million"):
            return Number(value * _SCALES[_text(tokens, after)], after + 1, in_words=True, whole=False)
        return Number(value, after, in_words=True, whole=False)
    return Number(value, after, in_words=True)


def share_after_and(tokens: list[Token], after: int) -> tuple[float, int] | None:
    """ "and a half", "and three quarters", "and one fourth"."""
    if _text(tokens, after) != "and":
        return None
    first, second = _text(tokens, after + 1), _text(tokens, after + 2)
    over = _fraction_at(tokens, after + 1) if _is_int(tokens, after + 1) else None
    if over is not None:
        return over, after + 4
    if first in ("a", "an") and second in _SHARES:
        return _SHARES[second], after + 3
    if first in ("half",):
        return 0.5, after + 2
    behind = after + 2
    if second == "-":
        second, behind = _text(tokens, after + 3), after + 3
    if first in _ONES and second in _SHARES and 1 <= _ONES[first] < 10:
        return _ONES[first] * _SHARES[second], behind + 1
    return None


def _decimals(tokens: list[Token], at: int) -> tuple[float, int]:
    """Digits behind "point": words one by one, or one number."""
    if _is_int(tokens, at):
        return float("0." + tokens[at].text[:15]), at + 1
    digits, after = "", at
    while _text(tokens, after) in (*_ONES, "nought", "oh") and len(digits) < 15:
        digits += str(int(_ONES.get(tokens[after].text, 0.0)))
        after += 1
    return (float("0." + digits), after) if digits else (0.0, at)
