"""Which unit stands behind a number, and where a word that could be one is none: 12 in a case, the 90s."""

from intake.reading.amounts.unit_words import unit_at
from intake.reading.amounts.units import Unit
from intake.reading.text.tokens import Token

_NOT_AFTER_INCH = frozenset(
    [
        "a", "an", "each", "every", "one", "total", "all", "stock", "production", "use", "service",
        "operation", "case", "cases", "box", "boxes", "tray", "trays", "carton", "1", "two", "three", "four", "five",
        "six", "seven", "eight", "nine", "ten", "this", "our", "my", "your", "their", "there", "line", "place",
        "parallel", "series", "january", "february", "march", "april", "may", "june", "july", "august", "september",
        "october", "november", "december", "the",
    ]
)  # fmt: skip


def unit_behind(tokens: list[Token], at: int, raw: str) -> tuple[Unit | None, int]:
    """The unit behind a number, with or without a hyphen, and the token after it."""
    if at >= len(tokens):
        return None, at
    glued = tokens[at].start == tokens[at - 1].end
    where = at
    said_twice = (
        tokens[at].text == "("
        and at + 2 < len(tokens)
        and tokens[at + 1].kind == "number"
        and tokens[at + 2].text == ")"
    )
    if said_twice:
        behind = unit_behind(tokens, at + 3, raw)  # nineteen (19) weeks
        return behind if behind[0] is not None else (None, at)
    if tokens[at].text in ("odd", "some") and at + 1 < len(tokens):
        behind = unit_behind(tokens, at + 1, raw)
        return behind if behind[0] is not None else (None, at)
    hyphened = tokens[at].text == "-" and at + 1 < len(tokens) and tokens[at + 1].kind == "word"
    if hyphened and (tokens[at + 1].start == tokens[at].end or tokens[at].start == tokens[at - 1].end):
        where = at + 1
    if tokens[where].text == "of" and where + 2 < len(tokens) and tokens[where + 1].text in ("a", "an"):
        where += 2
    elif tokens[where].text in ("a", "an") and tokens[at - 1].text == "half":
        where += 1
    found = unit_at(tokens, where, raw, glued=glued)
    if found is None or found[0].kind == "rate" or not _stands(tokens, where, found, raw, glued):
        return None, at
    return found


def _stands(tokens: list[Token], at: int, found: tuple[Unit, int], raw: str, glued: bool) -> bool:
    """False where the word is no unit here: 12 in a case, 24 m212, the 90s, five years old."""
    unit, after = found
    following = tokens[after] if after < len(tokens) else None
    touching = following is not None and following.start == tokens[after - 1].end
    if tokens[at].text == "in" and not _inch(tokens, after, touching):
        return False
    if (
        tokens[at].text == "in"
        and tokens[at - 1].text == "one"
        and following is not None
        and following.kind == "number"
    ):
        return False  # we need one in 14 weeks
    if unit.name == "m" and tokens[at].text == "m" and tokens[at - 1].text == "/":
        return False
    if tokens[at].text == "#" and not glued and touching and following is not None and following.kind == "number":
        return False
    if unit.name == "s" and glued and tokens[at].text == "s" and _decade(tokens[at - 1].text):
        return at >= 2 and tokens[at - 2].text in ("for", "-", "/", "every", "to")
    if following is None:
        return True
    if tokens[at].kind == "word" and len(tokens[at].text) == 1 and touching and following.kind == "number":
        return tokens[at].text == "h"
    if following.text == "old":
        return False
    if unit.name == "N" and following.kind == "number":
        return False
    if tokens[at].text == "'" and touching and following.kind == "word":
        return following.text in ("x", "h", "w", "l", "d", "ish")
    return not (unit.name == "degF" and tokens[at].text == "f" and (tokens[at - 1].value or 0.0) > 2000)


def _decade(digits: str) -> bool:
    return digits in ("50", "60", "70", "80", "90") or (
        len(digits) == 4 and digits[:2] in ("19", "20") and digits[3] == "0"
    )


def _inch(tokens: list[Token], after: int, touching: bool) -> bool:
    """Is "in" behind a number an inch? Not in "12 in a case" and "6 in each tray"."""
    if after >= len(tokens):
        return True
    following = tokens[after].text
    if following == "the":
        return False
    if after >= 4 and tokens[after - 3].text in ("x", "by", "*"):
        return True  # 16 x 12 x 10 in each
    if following in _NOT_AFTER_INCH:
        product = following in ("case", "cases", "box", "boxes", "tray", "trays", "carton", "line")
        return product and not (after + 1 < len(tokens) and tokens[after + 1].text == "s")
    return not (tokens[after].kind == "number" and len(following) == 4 and following[:2] in ("19", "20"))
