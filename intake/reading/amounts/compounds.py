"""One amount: a number with its unit, or several units read together (12 ft 6 in, 6 lb 5 oz, 1 h 30)."""

import re
from dataclasses import dataclass, replace

from intake.reading.amounts.numbers import Number, number_at, share_after_and
from intake.reading.amounts.unit_behind import unit_behind
from intake.reading.amounts.unit_words import unit_at
from intake.reading.amounts.units import UNITS, Unit
from intake.reading.text.tokens import Token

_PARTS = {
    "ft": ("in", 12.0), "yd": ("ft", 100.0), "lb": ("oz", 16.0), "stone": ("lb", 14.0), "kg": ("g", 1000.0),
    "m": ("cm", 100.0),
    "km": ("m", 1000.0), "h": ("min", 60.0), "min": ("s", 60.0), "week": ("day", 7.0), "day": ("h", 24.0),
}  # fmt: skip
_ARTICLE_UNITS = frozenset({"lb", "kg", "oz", "g", "t", "mi", "km", "ft", "in", "yd", "m"})
_SMALL_TALK = re.compile(
    r"i|exactly|our|ours|because|if|though|right|precisely|my|please|thanks|maybe|approx|roughly|about|there|here"
    r"|before|after|plus|according|last|now|today|actual|as|since|unless|except|these|this|you|they|all|by|ish|again"
)
_BEHIND_BARE_INCHES = frozenset(
    {
        "to", "up", "and", "from", "at", "with", "is", "off", "above", "high", "tall", "wide", "long", "deep", "the",
        "so", "or", "clear", "but", "on", "for", "down", "over", "under", "it", "that", "we", "in", "thick", "inside",
        "then", "minimum", "min", "max", "maximum", "across", "tops", "discharge", "infeed", "outfeed", "ceiling",
        "mezz", "mezzanine", "total", "overall", "aff", "tob", "between", "side", "fits", "fit", "toc", "tor",
        "headroom", "which", "where",
    }
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Amount:
    """`value` in `unit` as typed (a compound is in its greatest unit), from token `first` to before `after`."""

    value: float
    unit: Unit | None
    first: int
    after: int
    typed: str = "digits"
    vague: bool = False
    maybe_thousands: bool = False
    fraction: bool = False
    below_zero: bool = False
    compound: bool = False

    @property
    def in_words(self) -> bool:
        """True for "thirty-five", false for 35."""
        return self.typed == "words"

    def times(self, sign: float) -> "Amount":
        """The amount with its sign."""
        return replace(self, value=self.value * sign) if sign != 1.0 else self

    def with_unit(self, unit: Unit) -> "Amount":
        """The amount with a unit that was stated elsewhere."""
        return replace(self, unit=unit)


def amount_at(tokens: list[Token], at: int, raw: str) -> Amount | None:
    """The amount that begins at token `at`, None where none does."""
    number = number_at(tokens, at)
    if number is None:
        return _article(tokens, at, raw) or _one_and(tokens, at, raw)
    unit, after = unit_behind(tokens, number.after, raw)
    amount = Amount(
        _thousands(number, unit, tokens, at, after),
        unit,
        at,
        after,
        "words" if number.in_words else "digits",
        number.vague,
        number.maybe_thousands,
        number.fraction,
    )
    if unit is None:
        return _below_zero(tokens, amount, raw)
    if unit.kind in ("length", "mass", "duration"):
        amount = _with_parts(tokens, amount, raw)
    return _below_zero(tokens, amount, raw)


def _thousands(number: Number, unit: Unit | None, tokens: list[Token], at: int, after: int) -> float:
    """12.000 per hour and 1.200 mm are thousands; 12.500 kg is not."""
    if not number.maybe_thousands:
        return number.value
    if unit is not None:
        return number.value * 1000.0 if unit.name in ("mm", "g") or unit.kind == "rate" else number.value
    words = [token.text for token in tokens[after : after + 5]]
    counted = any(word in ("per", "/", "an", "a") for word in words) or (
        words and words[0] in ("pcs", "pieces", "units")
    )
    return number.value * 1000.0 if counted else number.value


def _with_parts(tokens: list[Token], amount: Amount, raw: str) -> Amount:
    """The amount together with smaller units behind it."""
    while amount.unit is not None:
        last = _last_unit(amount)
        share = share_after_and(tokens, amount.after)
        if share is not None and share[0] < 1:
            return _grown(amount, share[0], UNITS.get(last, amount.unit), share[1], last)
        part = _PARTS.get(last)
        if part is None:
            break
        longer = _one_part(tokens, amount, part[0], part[1], raw)
        if longer is None:
            break
        amount = longer
    return amount


def _last_unit(amount: Amount) -> str:
    return amount.typed.rpartition("+")[2] if "+" in amount.typed else amount.unit.name if amount.unit else ""


def _one_part(tokens: list[Token], amount: Amount, smaller: str, below: float, raw: str) -> Amount | None:
    at, joined = amount.after, ""
    dotted = at + 1 < len(tokens) and tokens[at].text == "." and tokens[at].start == tokens[at - 1].end
    if dotted and smaller != "cm":  # "12 ft. 6 in"; metres are not cut short with a stop
        at += 1
    if at < len(tokens) and tokens[at].text in (",", "and", "-", "&"):
        joined, at = tokens[at].text, at + 1
    if at >= len(tokens):
        return None
    number = number_at(tokens, at)
    if number is None or number.value >= below or number.vague or tokens[at].text in ("a", "an"):
        if (
            joined == "and"
            and number is not None
            and number.value in (0.5, 0.25, 0.75)
            and tokens[at].text in ("a", "half")
        ):
            return _grown(amount, number.value, amount.unit, number.after, _last_unit(amount))
        return None
    if number.value == 0.5 and tokens[at].text == "half" and joined == "and":
        return _grown(amount, 0.5, amount.unit, number.after, _last_unit(amount))
    unit, after = unit_behind(tokens, number.after, raw)
    if unit is not None:
        if unit.name == smaller or (
            unit.kind == "length" and joined in ("", "and") and _last_unit(amount) == "m" and unit.name == "ft"
        ):
            return _grown(amount, number.value, unit, after, unit.name)
        if unit.name == "s" and joined == "and" and _last_unit(amount) == "h":
            return _grown(amount, number.value, unit, after, unit.name)
        return None
    glued = tokens[at].start == tokens[at - 1].end
    if smaller == "in" and joined in ("", "-") and _bare_inches(tokens, number, at, joined, raw):
        return _grown(amount, number.value, UNITS["in"], number.after, "in")
    if (
        smaller == "g"
        and at == amount.after
        and len(tokens[at].text) == 3
        and tokens[at].text.isdigit()
        and amount.unit is not None
    ):
        loose = number.after >= len(tokens) or tokens[number.after].text not in ("x", "by", "*", "/", "per", "a", "-")
        return _grown(amount, number.value, UNITS["g"], number.after, "g") if loose else None
    digits = (
        smaller == "cm"
        and not joined
        and len(tokens[at].text) == 2
        and tokens[at].text.isdigit()
        and _last_unit(amount) == "m"
    )
    if digits and _bare_inches(tokens, number, at, joined, raw):
        return _grown(amount, number.value, UNITS["cm"], number.after, "cm")  # 5 m 40
    spoken = smaller == "cm" and not joined and number.in_words and amount.in_words and 10 <= number.value <= 99
    if spoken and _last_unit(amount) == "m":
        return _grown(amount, number.value, UNITS["cm"], number.after, "cm")  # two metres thirty-five
    if smaller == "min" and not joined and glued and len(tokens[at].text) == 2 and tokens[at].kind == "number":
        return _grown(amount, number.value, UNITS["min"], number.after, "min")
    return None


def _grown(amount: Amount, value: float, unit: Unit | None, after: int, name: str) -> Amount:
    if amount.unit is None or unit is None:
        return amount
    more = value * unit.factor / amount.unit.factor
    return replace(amount, value=amount.value + more, after=after, typed=f"{amount.typed}+{name}", compound=True)


def _bare_inches(tokens: list[Token], number: Number, at: int, joined: str, raw: str) -> bool:
    """Are these the inches of 13 ft 4? Not the 8 of "12 ft 8 per minute"."""
    if joined == "-" and tokens[at].start != tokens[at - 1].end:
        return False
    if tokens[at].kind == "line":
        return False
    after = number.after
    if after >= len(tokens) or tokens[after].kind == "line":
        return True
    following = tokens[after]
    if following.text in ("x", "by"):
        return after + 1 < len(tokens) and tokens[after + 1].kind in ("number", "word")
    if following.kind == "sign":
        joins = following.text in "/-:%#$" and following.start == tokens[after - 1].end
        return not joins and following.text not in ("/", ":", "%", "°")
    if following.text == "in" and after + 1 < len(tokens) and tokens[after + 1].text == "the":
        return True
    links = following.text in _BEHIND_BARE_INCHES or _SMALL_TALK.fullmatch(following.text) is not None
    return links and unit_at(tokens, after, raw) is None


def _article(tokens: list[Token], at: int, raw: str) -> Amount | None:
    """ "a kilogram", "an hour and a half": one of a unit, where it is no rate."""
    if at and tokens[at - 1].kind == "number":
        return None  # 0.80 a kilo
    if tokens[at].text not in ("a", "an") or at + 1 >= len(tokens) or tokens[at + 1].kind != "word":
        return None
    unit = unit_at(tokens, at + 1, raw)
    if unit is None or len(tokens[at + 1].text) < 3:
        return None
    if unit[0].kind == "duration":
        amount = _with_parts(tokens, Amount(1.0, unit[0], at, unit[1], "words"), raw)
        return amount if amount.compound else None
    plain = at == 0 or tokens[at - 1].kind != "word" or tokens[at - 1].text in _BEFORE_ONE_OF
    if unit[0].name not in _ARTICLE_UNITS or not plain:
        return None
    amount = _with_parts(tokens, Amount(1.0, unit[0], at, unit[1], "words"), raw)
    if unit[0].kind == "mass":
        return amount
    measured = unit[1] < len(tokens) and tokens[unit[1]].text in _MEASURED - {"and", "in"}
    return amount if unit[0].kind == "length" and (amount.compound or measured) else None


def _one_and(tokens: list[Token], at: int, raw: str) -> Amount | None:
    """ "Kilo and a half", "foot and a quarter": one of it and a share."""
    if tokens[at].kind != "word" or len(tokens[at].text) < 4 or (at and tokens[at - 1].kind == "number"):
        return None
    unit = unit_at(tokens, at, raw)
    if unit is None or unit[0].name not in _ARTICLE_UNITS or share_after_and(tokens, unit[1]) is None:
        return None
    return _with_parts(tokens, Amount(1.0, unit[0], at, unit[1], "words"), raw)


_BEFORE_ONE_OF = frozenset(
    {
        "of", "weighs", "weigh", "weighing", "about", "is", "to", "are", "around", "roughly", "nearly", "almost",
        "maybe",
        "just", "under", "over", "say", "be", "they're", "it's", "and", "by", "stands", "its", "theyre",
        "approximately",
    }
)  # fmt: skip
_MEASURED = frozenset({"tall", "high", "wide", "long", "deep", "across", "thick", "square", "and", "in"})


def _below_zero(tokens: list[Token], amount: Amount, raw: str) -> Amount:
    """ "20 below", "10 degrees F below zero"."""
    after = amount.after
    if after >= len(tokens) or tokens[after].text != "below":
        return amount
    if after + 1 < len(tokens) and tokens[after + 1].text == "zero":
        scale, end = unit_behind(tokens, after + 2, raw) if amount.unit is None else (None, after + 2)
        return replace(amount, after=end, below_zero=True, unit=amount.unit or scale)
    if amount.unit is not None and amount.unit.kind == "temperature":
        return replace(amount, after=after + 1, below_zero=True)
    return amount
