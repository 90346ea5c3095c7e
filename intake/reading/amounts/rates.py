"""Per minute, an hour, every two seconds, a shift: what stands behind a number to make it a rate."""

from dataclasses import dataclass

from intake.reading.amounts.numbers import number_at
from intake.reading.amounts.unit_words import TIME_UNITS, unit_at
from intake.reading.amounts.units import Unit
from intake.reading.text.tokens import Token

_STOP = frozenset(
    [
        "at", "and", "or", "in", "on", "to", "from", "with", "is", "are", "was", "for", "the", "we", "then", "but",
        "by", "down", "it", "they", "run", "runs", "i", "you", "he", "she", "that", "which", "when", "if", "so", "as",
        "than", "into", "per", "a", "an", "each", "every", "not", "no", "per", "my", "our", "your", "their", "this",
        "these", "those", "will", "can", "could", "should", "would", "must", "shall", "may", "might", "do", "does",
        "did", "have", "has", "had", "be", "been", "goes", "go", "going", "come", "comes", "came", "need", "needs",
        "want", "high", "wide", "long", "tall", "deep", "off", "out", "about", "around", "max", ".", "wait", "sorry",
    ]
) - {"max", "."}  # fmt: skip
_PER = frozenset({"per", "a", "an", "each", "every", "/", "pr", "p", "one", "in", "the", "ea", "@"})
_WORK = frozenset({"shift", "shifts", "day", "days", "workday"})
_NOUNS_MOST = 3


@dataclass(frozen=True, slots=True)
class Per:
    """`unit`: of kind "rate". `hours`: how long the shift or day is, where it is said. `noun`: what is counted."""

    unit: Unit
    after: int
    noun: str = ""
    hours: float | None = None
    each: str = ""
    """"shift" or "day" where the time is not a plain clock time."""


def per_at(tokens: list[Token], at: int, raw: str) -> Per | None:
    """The rate words that begin at token `at`, right behind a number; None where there are none."""
    straight = unit_at(tokens, at, raw)
    if straight is not None and straight[0].kind == "rate":
        return Per(straight[0], straight[1])
    if at + 1 < len(tokens) and tokens[at].text == "-" and tokens[at + 1].text == "per":
        at += 1  # a 40-per-minute line
    where = _skip_nouns(tokens, at)
    if where is None:
        return None
    nouns = " ".join(token.text for token in tokens[at:where] if token.kind == "word")
    if where > at and tokens[where].kind == "word":
        named = unit_at(tokens, where, raw)
        if named is not None and named[0].kind == "rate":
            return Per(named[0], named[1], nouns)
    word = tokens[where].text
    if word == "to" and where + 2 < len(tokens) and tokens[where + 1].text in ("the", "a"):
        time = _time_at(tokens, where + 2, raw)  # twenty to the minute
        plain = time is not None and time[4] in ("min", "h", "s")
        return Per(Unit(f"1/{time[4]}", "rate", 60.0 / time[0]), time[1], nouns) if time is not None and plain else None
    if word not in _PER:
        return None
    after = where + 1
    if word in ("in", "the"):
        if word != "in" or after >= len(tokens):
            return None
        if tokens[after].text in ("a", "an", "one", "each", "the"):
            after += 1
        elif tokens[after].kind != "number" or not _in_minutes(tokens, after):
            return None
    if word in ("p",) and after < len(tokens) and tokens[after].text == "/":
        after += 1
    time = _time_at(tokens, after, raw)
    if time is None or (word == "one" and where == at):
        return None
    seconds, after, hours, each, name = time
    if seconds <= 0:
        return None
    return Per(Unit(f"1/{name}", "rate", 60.0 / seconds), after, nouns, hours, each)


def _in_minutes(tokens: list[Token], at: int) -> bool:
    """ "20 cases in 5 minutes"."""
    return at + 1 < len(tokens) and tokens[at + 1].text in (
        "minutes", "minute", "min", "mins", "seconds", "sec", "secs", "hours",
    )  # fmt: skip


def _skip_nouns(tokens: list[Token], at: int) -> int | None:
    """The token of the "per" word behind up to three nouns."""
    here, nouns = at, 0
    while here < len(tokens):
        token = tokens[here]
        if (
            token.text in ("ea", "each")
            and nouns
            and here + 1 < len(tokens)
            and tokens[here + 1].text in ("per", "/", "a")
        ):
            here, nouns = here + 1, nouns + 1
            continue
        if token.text in _PER and _is_per(tokens, here, nouns):
            return here
        if token.kind == "line" and nouns:  # a wrapped line
            here += 1
            continue
        if token.text == "of" and here + 1 < len(tokens) and tokens[here + 1].text in ("them", "these", "those", "em"):
            here += 2
            continue
        if token.text in ("(", ")", "-", "'", ".") and nouns < _NOUNS_MOST and nouns:
            if token.text == "." and not (here + 1 < len(tokens) and tokens[here + 1].text in ("/", "per", "a")):
                return None
            here += 1
            continue
        if (
            token.text == "to"
            and here + 2 < len(tokens)
            and tokens[here + 2].text in ("minute", "hour", "second", "min")
        ):
            return here
        if token.kind != "word" or token.text in _STOP or nouns == _NOUNS_MOST:
            return None
        if nouns and _is_rate_word(token.text):
            return here
        nouns += 1
        here += 1
    return None


def _is_rate_word(word: str) -> bool:
    return word in ("cpm", "ppm", "bpm", "cph", "pph")


def _is_per(tokens: list[Token], here: int, nouns: int) -> bool:
    word = tokens[here].text
    if word == "p":
        return here + 1 < len(tokens) and tokens[here + 1].text in ("/", "min", "m", "minute", "h", "hr")
    if word == "one":
        return nouns > 0
    return True


def _time_at(tokens: list[Token], at: int, raw: str) -> tuple[float, int, float | None, str, str] | None:
    """Seconds of the time span at token `at`, the token behind it, hours and name of a shift or day, unit name."""
    if at >= len(tokens):
        return None
    while at < len(tokens) and tokens[at].text in ("-", "working", "work", "production", "single", "full", "line"):
        at += 1
    count, after = 1.0, at
    number = number_at(tokens, at) if at < len(tokens) else None
    if number is not None:
        count, after = number.value, number.after
        if after < len(tokens) and tokens[after].text == "-":
            after += 1
    if after >= len(tokens):
        return None
    if tokens[after].text in ("shift", "shifts"):
        hours = _hours_behind(tokens, after + 1, raw)
        return _work(count, after + 1, hours, "shift") if number is None else None
    if tokens[after].text == "m" and number is None:  # staff shorthand: 25/m
        return (60.0, after + 1, None, "", "min") if tokens[after - 1].text == "/" else None
    if tokens[after].text == "d" and tokens[after - 1].text == "/":
        return 86400.0, after + 1, _hours_behind(tokens, after + 1, raw), "day", "day"
    unit = unit_at(tokens, after, raw, glued=number is not None and tokens[after].start == tokens[after - 1].end)
    if unit is None or unit[0].name not in TIME_UNITS:
        return None
    name, end = unit[0].name, unit[1]
    if name == "h" and number is not None and end < len(tokens):
        end = end + 1 if tokens[end].text in ("-", ".") and end + 1 < len(tokens) else end
        end = end + 1 if tokens[end].text in ("working", "work") and end + 1 < len(tokens) else end
        if tokens[end].text in _WORK:
            return _work(1.0, end + 1, count, "shift" if "shift" in tokens[end].text else "day")
        end = unit[1]
    if name == "day" and number is None:
        return 86400.0, end, _hours_behind(tokens, end, raw), "day", "day"
    if name in ("week", "month", "year"):
        return unit[0].factor * count, end, None, name, name
    return unit[0].factor * count, end, None, "", name


def _work(count: float, after: int, hours: float | None, each: str) -> tuple[float, int, float | None, str, str]:
    seconds = (hours or 24.0) * 3600.0 * count
    return seconds, after, hours, each, each


def _hours_behind(tokens: list[Token], at: int, raw: str) -> float | None:
    """ "per shift of 8 hours", "per day (16 h)"."""
    if at < len(tokens) and tokens[at].text in ("of", "(", ","):
        number = number_at(tokens, at + 1) if at + 1 < len(tokens) else None
        if number is not None:
            unit = unit_at(tokens, number.after, raw, glued=True)
            if unit is not None and unit[0].name == "h" and (tokens[at].text != "," or number.value <= 24):
                return number.value if 0 < number.value <= 24 else None
    return None
