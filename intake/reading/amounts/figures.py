"""Every figure in a text: its number or range, its unit, and how it is meant."""

from dataclasses import dataclass, field

from intake.reading.amounts.bounds import bound_around
from intake.reading.amounts.compounds import Amount, amount_at
from intake.reading.amounts.numbers import number_at
from intake.reading.amounts.rates import Per, per_at
from intake.reading.amounts.strangers import stranger_end
from intake.reading.amounts.tolerances import tolerance_at
from intake.reading.amounts.unit_words import unit_at
from intake.reading.amounts.units import CANONICAL, UNITS, Unit
from intake.reading.text.fold import Folded
from intake.reading.text.tokens import Token


@dataclass(slots=True)
class Figure:
    """One figure. Token places `first`..`after` hold its core, `begin`..`end` that and its bound words.

    `ends`: the one or two amounts as typed. `low`, `high`: in the canonical unit of `kind` (as typed where there is no
    unit), None for an open end. `per`: the rate words of a rate.
    """

    first: int
    after: int
    begin: int
    end: int
    ends: tuple[Amount, ...]
    kind: str
    unit: Unit | None
    low: float | None
    high: float | None
    approx: bool = False
    bound: str = ""
    per: Per | None = None
    shared: bool = False
    """The unit was stated once, at another figure."""
    tags: set[str] = field(default_factory=set)

    @property
    def value(self) -> float:
        """The stated number of a single figure, the greater end of a range; canonical."""
        return self.high if self.high is not None else self.low if self.low is not None else 0.0

    @property
    def is_range(self) -> bool:
        """True where two different ends are stated."""
        return len(self.ends) == 2


def figures_of(tokens: list[Token], folded: Folded) -> list[Figure]:
    """All figures in order. Linear in the number of tokens."""
    raw = folded.raw
    found: list[Figure] = []
    at = floor = 0
    while at < len(tokens):
        token = tokens[at]
        if token.kind in ("line", "sign") and token.text not in "½¼¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞.":
            at += 1
            continue
        skip = stranger_end(tokens, at)
        if skip > at:
            at = floor = skip
            continue
        figure = figure_at(tokens, at, raw, floor)
        if figure is None:
            at += 1
            continue
        found.append(figure)
        at = floor = max(figure.end, at + 1)
    _share_units(tokens, found)
    for figure in found:
        _headed(tokens, figure, raw)
        _unit_before(tokens, figure)
    return found


def figure_at(tokens: list[Token], at: int, raw: str, floor: int) -> Figure | None:
    """The figure whose number begins at token `at`."""
    first = amount_at(tokens, at, raw)
    if first is None:
        return None
    start, sign = _sign_before(tokens, at, floor, first)
    first = first.times(sign)
    per = per_at(tokens, first.after, raw) if first.unit is None else None
    ends: tuple[Amount, ...] = (first,)
    after = per.after if per else first.after
    second = _second(tokens, first, after, start, floor, raw, per)
    tolerance = tolerance_at(tokens, first, after, raw, per)
    if tolerance is not None:
        ends, per, after = tolerance
    elif second is not None:
        ends = (first, second[0])
        per = per or second[1]
        after = second[2]
        if start > floor and tokens[start - 1].text in ("between", "from"):
            start -= 1
    bound = bound_around(tokens, start, after, floor)
    unit = _unit_of(ends, per)
    figure = Figure(
        start, after, bound.first, bound.after, ends, "number", unit, None, None, bound.approx, bound.meaning, per
    )
    if any(end.vague for end in ends):
        figure.approx = True
    _set_values(figure)
    if tolerance is not None and bound.meaning == "most":
        figure.low = None
    elif tolerance is not None and bound.meaning == "least":
        figure.high = None
    return figure


def _unit_of(ends: tuple[Amount, ...], per: Per | None) -> Unit | None:
    if per is not None:
        return per.unit
    return next((end.unit for end in reversed(ends) if end.unit is not None), None)


def _set_values(figure: Figure) -> None:
    """Low and high from the ends, units and bound words."""
    unit = figure.unit
    figure.kind = unit.kind if unit is not None else "number"
    values = []
    for end in figure.ends:
        own = figure.per.unit if figure.per is not None else end.unit or unit
        values.append(own.worth(end.value) if own is not None else end.value)
    low, high = min(values), max(values)
    figure.low, figure.high = low, high
    if not figure.is_range:
        if figure.bound == "least":
            figure.high = None
        elif figure.bound == "most":
            figure.low = None


def give_unit(figure: Figure, unit: Unit) -> None:
    """Take a unit that was stated elsewhere for a bare figure."""
    figure.unit, figure.shared = unit, True
    figure.ends = tuple(end if end.unit is not None else end.with_unit(unit) for end in figure.ends)
    if unit.kind == "rate" and figure.per is None:
        figure.per = Per(unit, figure.after)
    _set_values(figure)


def _sign_before(tokens: list[Token], at: int, floor: int, amount: Amount) -> tuple[int, float]:
    """Where the figure begins with its minus, and the sign."""
    if at <= floor:
        return at, -1.0 if amount.below_zero else 1.0
    before = tokens[at - 1]
    if before.text in ("minus", "negative"):
        return at - 1, -1.0
    if before.text == "-" and not amount.in_words:
        glued = before.end == tokens[at].start
        opens = at < 2 or tokens[at - 2].end < before.start or tokens[at - 2].text in "(~:=,@<>"
        bullet = not glued and (at - 2 < 0 or tokens[at - 2].kind == "line")
        cold = amount.unit is not None and amount.unit.kind in ("temperature", "voltage", "degrees")
        loose = not glued and cold and (at - 2 < floor or tokens[at - 2].kind != "number")
        if not bullet and ((glued and opens) or loose):
            dash = glued and at - 2 >= floor and tokens[at - 2].kind == "number"
            return (at, 1.0) if dash else (at - 1, -1.0)
    return at, -1.0 if amount.below_zero else 1.0


_JOIN = frozenset({"à", "bis", "tot", "-", "to", "~", "through", "thru", "till", "until"})


def _second(
    tokens: list[Token], first: Amount, after: int, start: int, floor: int, raw: str, per: Per | None
) -> tuple[Amount, Per | None, int] | None:
    """The other end of a range that begins with `first`: its amount, rate words, and the token behind."""
    if after >= len(tokens):
        return None
    joined = tokens[after].text
    lead = tokens[start - 1].text if start > floor else ""
    if (
        lead in ("from", "between", "anywhere")
        or (start - 2 >= floor and tokens[start - 2].text in ("from", "anywhere"))
        or (joined == "up" and first.unit is None and per is None)
    ):
        after, joined = _up_to(tokens, first, after, joined)
    between = start > floor and (
        tokens[start - 1].text == "between" or (start - 2 >= floor and tokens[start - 2].text == "between")
    )
    if joined == "or" and per is None and first.unit is None:
        return _this_or_that(tokens, first, after + 1, raw)
    if joined == "/" and after + 1 < len(tokens):
        return _slashed_temperatures(tokens, first, after + 1, raw)
    if joined not in _JOIN and not (between and joined in ("and", "&", "-", "to")):
        return None
    spaced = tokens[after].start > tokens[after - 1].end
    if joined == "-" and spaced and start > 0 and tokens[start - 1].text in ("x", "by", "*"):
        return None  # 32 by 18 by 6 - 8 a minute
    if start > 0 and tokens[start - 1].text in ("x", "by", "*") and _times_behind(tokens, after + 1):
        return None  # 200x150x100 to 600x400x400
    at = after + 1
    while at < len(tokens) and tokens[at].text in ("about", "around", "roughly", "maybe", "approx", "~"):
        at += 1
    minus = 1.0
    if at + 1 < len(tokens) and tokens[at].text in ("+", "plus") and tokens[at + 1].kind == "number":
        at += 1
    signed = at + 1 < len(tokens) and tokens[at].text in ("-", "minus")
    if signed and (tokens[at].text == "minus" or tokens[at].end == tokens[at + 1].start):
        minus, at = -1.0, at + 1
    if at >= len(tokens) or stranger_end(tokens, at) > at:
        return None
    second = amount_at(tokens, at, raw)
    if second is None or tokens[at].text in ("a", "an"):
        return None
    second = second.times(minus)
    own_per = per_at(tokens, second.after, raw) if second.unit is None else None
    end = own_per.after if own_per else second.after
    kinds = _kind(first, per), _kind(second, own_per)
    if kinds[1] == "frequency" and kinds[0] == "number" and first.value < 40:
        return None  # 3~ 50 Hz
    if (
        kinds[0] == "number"
        and joined == "-"
        and tokens[after].start > tokens[after - 1].end
        and tokens[after].end == tokens[at].start
    ):
        return None  # 75 -300: a minus, not a range
    if kinds[0] == kinds[1] or kinds[0] == "number" or (kinds[1] == "number" and per is None and joined == "-"):
        if kinds[1] == "number" and kinds[0] != "number":
            if first.unit is not None and first.unit.kind == "length":
                return None
            second = second.with_unit(first.unit) if first.unit is not None else second
        rising = (
            first.value < second.value or kinds[1] in ("temperature", "voltage") or kinds[0] == kinds[1] != "number"
        )
        if joined == "-" and not rising:
            return None
        if (
            kinds[0] == "number"
            and first.value > second.value
            and joined != "-"
            and second.unit is not None
            and second.unit.kind not in ("temperature", "voltage")
        ):
            return None if joined in ("to",) and first.value > 4 * abs(second.value) else (second, own_per, end)
        return second, own_per, end
    return None


def _this_or_that(tokens: list[Token], first: Amount, at: int, raw: str) -> tuple[Amount, Per | None, int] | None:
    """ "14 or 15 pallets an hour": one range of a rate."""
    second = amount_at(tokens, at, raw) if at < len(tokens) and tokens[at].text not in ("a", "an") else None
    if second is not None and second.unit is not None and second.unit.kind == "duration":
        return (second, None, second.after) if 0 < second.value - first.value <= 2 else None
    if second is None or second.unit is not None or not first.value < second.value <= 1.6 * first.value:
        return None
    per = per_at(tokens, second.after, raw)
    return (second, per, per.after) if per is not None else None


def _slashed_temperatures(
    tokens: list[Token], first: Amount, at: int, raw: str
) -> tuple[Amount, Per | None, int] | None:
    """ "+2/+4 °C": a range, where the second has the scale."""
    sign = -1.0 if tokens[at].text == "-" else 1.0
    at += tokens[at].text in ("+", "-")
    second = amount_at(tokens, at, raw) if at < len(tokens) else None
    if second is None or second.unit is None or second.unit.kind != "temperature" or first.value >= sign * second.value:
        return None
    return second.times(sign), None, second.after


def _up_to(tokens: list[Token], first: Amount, after: int, joined: str) -> tuple[int, str]:
    """ "From 500 g up to 2 kg" is one range; of lengths it is two heights."""
    if first.unit is not None and first.unit.kind == "length":
        return after, joined
    words = [token.text for token in tokens[after : after + 5]]
    for phrase in (["up", "to"], ["all", "the", "way", "to"], ["all", "the", "way", "up", "to"], ["right", "up", "to"]):
        if words[: len(phrase)] == phrase:
            return after + len(phrase) - 1, "to"
    return after, joined


def _times_behind(tokens: list[Token], at: int) -> bool:
    """True where the number at token `at` begins a group of dimensions."""
    number = number_at(tokens, at) if at < len(tokens) else None
    return number is not None and number.after < len(tokens) and tokens[number.after].text in ("x", "by", "*")


def _kind(amount: Amount, per: Per | None) -> str:
    if per is not None:
        return "rate"
    return amount.unit.kind if amount.unit is not None else "number"


def _headed(tokens: list[Token], figure: Figure, raw: str) -> None:
    """ "Weight (lb): 35", "height in mm: 400": the unit stands in the heading."""
    if figure.unit is not None:
        return
    at = figure.begin - 1
    if at >= 0 and tokens[at].text in (":", "=", "-"):
        at -= 1
    elif at < 0 or tokens[at].text != ")":
        return
    closed = at >= 0 and tokens[at].text == ")"
    last = at if closed else at + 1
    for begin in range(last - 1, max(-1, last - 4), -1):
        opens = begin > 0 and tokens[begin - 1].text in (("(",) if closed else ("in",))
        unit = unit_at(tokens, begin, raw) if opens else None
        if unit is not None and unit[1] == last and unit[0].kind in CANONICAL and tokens[begin].kind == "word":
            give_unit(figure, unit[0])
            return


_BEFORE_NUMBERS = frozenset({"kg", "kgs", "mm", "cm", "lbs"})


def _unit_before(tokens: list[Token], figure: Figure) -> None:
    """ "Kg 8,2", "mm 400": as Italians and some drawings write."""
    at = figure.begin - 1
    if figure.unit is not None or at < 0 or tokens[at].text not in _BEFORE_NUMBERS:
        return
    if at and (tokens[at - 1].kind == "number" or tokens[at - 1].text in ("in", "(", "[", "all", "per", "/", ")")):
        return
    give_unit(
        figure,
        UNITS["kg" if tokens[at].text.startswith("kg") else "lb" if tokens[at].text == "lbs" else tokens[at].text],
    )


def _share_units(tokens: list[Token], found: list[Figure]) -> None:
    """ "45 and 50 mg", "0.35 or 0.5 mm": the unit stated last holds for the bare number before "and", "or", "/"."""
    for figure, following in zip(reversed(found[:-1]), reversed(found[1:]), strict=True):
        if figure.unit is None and following.unit is not None and following.begin - figure.end == 1:
            joined = tokens[figure.end].text
            shares = joined in ("and", "or", "&") and following.kind in CANONICAL and following.kind != "rate"
            grouped = figure.first > 0 and tokens[figure.first - 1].text in ("x", "*", "by")
            if shares and not grouped and figure.ends[0].typed != "words":
                give_unit(figure, following.unit)
