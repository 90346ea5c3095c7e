"""At least, at most, about: the words before and behind a figure that say how it is meant."""

import itertools
from dataclasses import dataclass

from intake.reading.text.tokens import Token


def _phrases(text: str) -> tuple[str, ...]:
    """Phrases between semicolons; their words are tokens, signs apart."""
    return tuple(phrase.strip() for phrase in text.split(";"))


_LEAST = _phrases(
    "at least; more then; better than; heavier than; thicker than; taller than; warmer than; hotter than; a "
    "minimum of; "
    "minimum of; minimum; min; min .; no less than; not less than; never less than; no "
    "fewer than; more than; over; greater than; larger than; bigger than; higher than; exceed; exceeds; "
    "exceeding; upwards of; upward of; in excess of; >; > =; ≥; above; north of; not under; no lower than; no "
    "sooner than; not before; lowest is; starting at"
)
_MOST = _phrases(
    "at most; not more then; no more then; never more then; less then; colder than; cooler than; at the most; a "
    "maximum of; maximum of; maximum; max; max .; no more "
    "than; not more than; never more "
    "than; up to; under; below; less than; lower than; smaller than; lighter than; <; < =; ≤; not over; never "
    "over; not above; not to exceed; not exceeding; does not exceed; not exceed; can't exceed; cannot exceed; "
    "never exceeds; never exceed; as much as; as many as; as heavy as; as tall as; inside of; inside; tops; "
    "tops out at; topping out at; tops at; maxes out "
    "at; max out at; maxing out at; no faster than; not faster than; never faster than; no heavier than; no "
    "higher than; no taller than; no wider than; no longer "
    "than; no later than; not more; anything up to; not later than; at the latest; at latest; anything below; "
    "anything under;  within; nothing over; never goes past; never past; not past; goes no higher than; never "
    "goes over; won't go over; stays under; stay under; stays below; stay below; keep under; kept under; keep "
    "it under; capped at; cap at; tops out around; nothing above; nothing heavier than; nothing bigger than; "
    "nothing larger than; nothing beyond; none over; less than or equal to; less or equal "
    "than; no bigger than; maximum is; max is; the max is; limited to; heaviest is; heaviest being; heaviest one "
    "is; heaviest at; heaviest; biggest is; largest is; the most is; heaviest ones are; heaviest are"
)
_ABOUT = _phrases(
    "a shade over; a shade under; a touch over; a touch under; a hair over; a hair under; a bit over; a bit "
    "under; a little over; a "
    "little under; slightly over; slightly under; about; around; approx; approx .; approximately; aprox; aprox "
    ".; approximatly; roughly; circa; ca; ca .; c .; "
    "~; ≈; some; maybe; say; call it; nearly; almost; close to; just over; just under; in the neighborhood of; "
    "like; perhaps; probably; in the region of; somewhere around; more or less; an estimated; abt; abt .; appx; + "
    "/ -; ballpark; figure; guessing; i think; i guess; i'd say; est; est .; ±; or so; on average; average; "
    "averaging; somewhere near; near; somewhere between; somewhere; kinda; give or take"
)
_BEHIND_LEAST = _phrases(
    "or more; or better; or heavier; or higher; or bigger; or longer; and up; and above; or above; minimum; at "
    "least; at the least; min; min .; plus; or over"
)
_BEHIND_MOST = _phrases(
    "max; max .; maximum; maxi; tops; at most; at the most; at the very most; or less; or under; or below; and "
    "under; at the outside; absolute max; absolute maximum; is the max; is the maximum; is the most; is max; or "
    "sooner; or earlier; or fewer; or smaller; or lower; or shorter; at the latest; at latest; latest; is the limit; "
    "is the absolute max; is the heaviest; is the biggest; at the heaviest; not more; and not more; no more; or "
    "lighter; and below; and down"
)
_BEHIND_ABOUT = _phrases(
    "or so; ish; - ish; give or take; approx; approx .; approximately; roughly; more or less; or thereabouts; "
    "thereabouts; i think; i guess; on average; average; avg; ballpark; + / -; ±; or thereabout; i believe; or "
    "therabouts; if "
    "memory serves; from memory; -ish; about; i would say; i'd say"
)


def _table(*groups: tuple[str, tuple[str, ...]]) -> dict[str, list[tuple[tuple[str, ...], str]]]:
    """Phrases by the word that stands next to the figure, longest first."""
    table: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for meaning, phrases in groups:
        for phrase in phrases:
            words = tuple(phrase.split())
            table.setdefault(words[0], []).append((words, meaning))
    for entries in table.values():
        entries.sort(key=lambda entry: -len(entry[0]))
    return table


def _backwards(phrases: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(" ".join(reversed(phrase.split())) for phrase in phrases)


_BEFORE = _table(("least", _backwards(_LEAST)), ("most", _backwards(_MOST)), ("about", _backwards(_ABOUT)))
_BEHIND = _table(("least", _BEHIND_LEAST), ("most", _BEHIND_MOST), ("about", _BEHIND_ABOUT))
_MAY_STAND_BETWEEN = frozenset({":", "=", "is", "the", "a", "an", "at", "of", "being"})
_MEASURES = frozenset(
    {
        "weight", "wt", "height", "ht", "length", "width", "depth", "size", "load", "mass", "temperature", "temp",
        "diameter", "clearance", "footprint", "clear", "gross", "overall", "room", "floor", "space", "dimensions",
        "dims",
        "loaded", "stack", "total", "pallet", "case", "box", "tray", "tote", "product", "lead", "time", "delivery",
        "pressure",
    }
)  # fmt: skip
"""What may stand between "max" and its figure: "max. weight 25 kg"."""
_ADJACENT = frozenset({"over", "under", "above", "below", "some", "like", "say"})
_SEEN = frozenset(
    {
        "drops", "falls", "sinks", "dips", "seen", "been", "go", "goes", "gone", "had", "run", "ran", "get", "see",
        "have", "done", "do", "hit",
    }
)  # fmt: skip
_UNDER = frozenset(
    {"colder than", "cooler than", "under", "below", "less than", "lighter than", "smaller than", "lower than"}
)
_NEVER = frozenset(
    {
        "doubt", "hardly", "rarely", "seldom", "nothing", "none", "nobody", "not", "never", "no", "doesn't", "don't",
        "cannot", "can't", "won't",
    }
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Bound:
    """`meaning`: "least", "most" or "" ; `first`..`after`: the tokens taken with the figure."""

    meaning: str
    approx: bool
    first: int
    after: int
    words: str = ""


def bound_around(tokens: list[Token], first: int, after: int, floor: int) -> Bound:
    """The bound words around the tokens `first`..`after`; none before token `floor` belong to this figure."""
    meaning, approx, begin, end, words = "", False, first, after, ""
    for _ in range(3):  # "maybe about", "up to about", "at least around"
        hit = _match_before(tokens, begin, floor)
        if hit is None:
            break
        length, phrase, what = hit
        if what == "about":
            approx = True
        elif not meaning:
            meaning, words = what, phrase
        begin -= length
        if what == "least" and begin > floor:
            back = 1
            while tokens[begin - back].text in _SEEN and begin - back > floor and back < 5:
                back += 1
            if tokens[begin - back].text in _NEVER:
                meaning, begin = "most", begin - back
        elif what == "most" and phrase in _UNDER and begin > floor:
            back = 1
            while tokens[begin - back].text in _SEEN and begin - back > floor and back < 4:
                back += 1
            if tokens[begin - back].text in _NEVER:
                meaning, begin = "least", begin - back
    for _ in range(2):
        behind = _match_behind(tokens, end)
        if behind is None:
            break
        phrase, what = behind
        if what == "about":
            approx = True
        elif not meaning:
            meaning, words = what, phrase
        end += len(phrase.split())
    return Bound(meaning, approx, begin, end, words)


def _match_before(tokens: list[Token], first: int, floor: int) -> tuple[int, str, str] | None:
    """How many tokens before `first` belong to the bound, its phrase and meaning. ": = is the a" may stand between."""
    at = first - 1
    measured = False
    while at >= floor and first - at <= 5:
        if tokens[at].text == "than" and at != first - 1:
            return None
        if tokens[at].text == ">" and _quotes(tokens, at):
            return None
        for words, meaning in _BEFORE.get(tokens[at].text, ()):
            start = at - len(words) + 1
            if measured and words[0 if tokens[at].text != "." else -1] not in ("max", "maximum", "min", "minimum"):
                continue
            if at != first - 1 and len(words) == 1 and words[0] in _ADJACENT:
                continue  # it fell over at 19 degrees
            if start >= floor and all(tokens[at - n].text == word for n, word in enumerate(words)):
                return first - start, " ".join(reversed(words)), meaning
        measured = measured or tokens[at].text in _MEASURES
        if tokens[at].text not in _MAY_STAND_BETWEEN and tokens[at].text not in _MEASURES:
            return None
        at -= 1
    return None


def _quotes(tokens: list[Token], at: int) -> bool:
    """True for a ">" that marks a line of older mail, not "more than"."""
    if at + 1 < len(tokens) and tokens[at].end == tokens[at + 1].start:
        return False  # >2 kg
    if at:
        return tokens[at - 1].kind == "line"
    return any(a.kind == "line" and b.text == ">" for a, b in itertools.pairwise(tokens[:400]))


def _match_behind(tokens: list[Token], after: int) -> tuple[str, str] | None:
    skip = after
    if skip < len(tokens) and tokens[skip].text in (",", "(") and skip + 1 < len(tokens):
        skip += 1
    if skip >= len(tokens):
        return None
    for words, meaning in _BEHIND.get(tokens[skip].text, ()):
        last = skip + len(words)
        if last <= len(tokens) and all(tokens[skip + n].text == word for n, word in enumerate(words)):
            following = tokens[last].text if last < len(tokens) else ""
            if skip > after and (tokens[skip - 1].text == "(" and following != ")"):
                continue
            if words[0] in _EITHER_WAY and not (skip == after and following == ".") and _starts_next(tokens, last):
                continue
            lead = skip - after
            return " ".join([",", *words][1 - lead :]), meaning
    return None


_EITHER_WAY = frozenset(
    {"max", "maximum", "min", "minimum", "about", "top", "tops", "approx", "average", "i", "plus", "not", "no", "and"}
)
"""Bound words that may belong to the figure before them or to the one behind."""


def _starts_next(tokens: list[Token], at: int) -> bool:
    """True where the bound word belongs to the figure behind it: "40 kg, max 60"."""
    steps = 0
    while (
        at < len(tokens)
        and steps < 4
        and (
            tokens[at].text in _MEASURES
            or tokens[at].text in (".", "of", ":", "is", "=", "than", "then", "at", "about")
        )
    ):
        at, steps = at + 1, steps + 1
    return at < len(tokens) and tokens[at].kind == "number"
