"""What stands around a shorthand word: figures, units, and whether its line is prose."""

from dataclasses import dataclass, field
from functools import cached_property

from intake.reading.amounts.compounds import Amount, amount_at
from intake.reading.amounts.unit_words import unit_at
from intake.reading.shorthand.rows import Shorthand
from intake.reading.text.tokens import Token

_VULGAR = frozenset("½¼¾⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞")
_AROUND = frozenset({"~", "≈", "<", ":", "=", ".", "-", "approx", "abt", "about", "ca", "@"})
"""What may stand between a label and its figure."""
LETTERS = frozenset({"l", "w", "h", "d", "ø", "dia"})
"""Letters that name a size."""
_TIMES = frozenset({"h", "hr", "hour", "d", "day", "shift", "shft", "s", "sec", "wk", "week"})


@dataclass
class Line:
    """The tokens of a message. `prose[n]`: token n stands in a sentence with words that shorthand never has.

    `marked[n]`: it stands in one with a word that is shorthand and nothing else.
    """

    tokens: list[Token]
    raw: str
    prose: list[bool]
    marked: list[bool]
    lengths: dict[int, Amount | None] = field(default_factory=dict)

    @cached_property
    def counts_otherwise(self) -> bool:
        """A rate per something else than a minute stands here: a bare figure beside it may be per that as well."""
        return any(
            token.text in ("/", "per") and self.is_number(at - 1) and self.tokens[at + 1].text in _TIMES
            for at, token in enumerate(self.tokens[:-1])
        )

    def amount(self, at: int) -> Amount | None:
        """The figure that begins at a token, with its unit."""
        if at not in self.lengths:
            token = self.tokens[at] if at < len(self.tokens) else None
            isnt = token is None or (token.kind != "number" and token.text not in _VULGAR)
            self.lengths[at] = None if isnt else amount_at(self.tokens, at, self.raw)
        return self.lengths[at]

    def figure_behind(self, at: int) -> int | None:
        """The token of the figure that a label before token `at` speaks of."""
        last = min(at + 3, len(self.tokens))
        while at < last and self.tokens[at].text in _AROUND:
            at += 1
        return at if at < last and self.amount(at) is not None else None

    def is_number(self, at: int) -> bool:
        """True where a number, or a fraction, stands at a token."""
        return 0 <= at < len(self.tokens) and (self.tokens[at].kind == "number" or self.tokens[at].text in _VULGAR)

    def length_before(self, at: int) -> int | None:
        """The first token of the length, with its unit, that ends directly before a token."""
        found = None
        for back in range(at - 2, max(-1, at - 8), -1):
            if self.is_number(back):
                amount = self.amount(back)
                if amount is None or amount.unit is None or amount.unit.kind != "length" or amount.after != at:
                    break
                found = back
        return found

    def is_unit_of_figure(self, at: int) -> bool:
        """True where the word at a token is the unit of the bare figure before it."""
        return self.is_number(at - 1) and unit_at(self.tokens, at, self.raw, glued=True) is not None


def line_of(tokens: list[Token], raw: str, shorthand: Shorthand) -> Line:
    """The tokens with their sentences judged: to a line's end, a full stop, a semicolon."""
    prose, marked = [False] * len(tokens), [False] * len(tokens)
    start = 0
    for at in range(len(tokens) + 1):
        if at < len(tokens) and tokens[at].kind != "line" and tokens[at].text not in (".", "!", ";"):
            continue
        words = {token.text for token in tokens[start:at]}
        prose[start:at] = [not words.isdisjoint(shorthand.prose)] * (at - start)
        is_marked = not words.isdisjoint(shorthand.marks) or _in_and_out(tokens, start, at)
        marked[start:at] = [is_marked] * (at - start)
        start = at + 1
    return Line(tokens, raw, prose, marked)


def _in_and_out(tokens: list[Token], start: int, after: int) -> bool:
    """ "in 30\" out 14'": both words with a figure behind them, or an arrow, are a way of writing heights."""
    led = {tokens[n].text for n in range(start, after - 1) if tokens[n + 1].kind == "number"}
    return {"in", "out"} <= led or bool(led & {">", "→"})
