"""When a shorthand word counts: what its guard demands of the words and figures beside it."""

from intake.reading.shorthand.heights import ARROWS
from intake.reading.shorthand.line import LETTERS, Line
from intake.reading.shorthand.rows import Row, Shorthand

_ORDINALS = frozenset({"st", "nd", "rd", "th"})
_TURNS = frozenset({"90", "180", "270"})
_LETTERS_MOST = 4
"""Letters of one row of sizes that are looked at."""


def holds(line: Line, shorthand: Shorthand, row: Row, at: int) -> bool:
    """Whether the guard of an entry holds at a token."""
    if row.guard == "anywhere":
        return True
    after = at + len(row.words)
    if line.prose[at] or (not line.marked[at] and row.words[0] in shorthand.english) or _joined(line, at, after):
        return False
    if row.guard == "behind.figure":
        value = line.tokens[at - 1].value if at else None
        return (value is not None and value > row.over) or _ends_rate(line, at)
    if row.guard == "behind.length":
        return line.length_before(at) is not None and not _labels_next(line, shorthand, at)
    if row.guard == "behind.turn":
        is_litre = row.words == ("l",) and not _glued(line, at) and line.amount(after) is not None
        return at > 0 and line.tokens[at - 1].text in _TURNS and not is_litre
    if row.guard == "with_type":
        return any(token.text in shorthand.types for token in line.tokens[max(0, at - 12) : at])
    if line.is_unit_of_figure(at) and not opens_pair(line, at):
        return False  # a figure and its unit stay together
    if at and (line.tokens[at - 1].text in ("/", "per") or _glued(line, at)):
        return False  # "25/min 30#", "3ph 50hz"
    figure = line.figure_behind(after)
    if row.guard == "terse":
        return row.words != ("fl",) or not _is_floor(line, shorthand, at)
    if figure is None or row.guard == "before.figure":
        return figure is not None and not _named_behind(line, shorthand, at)
    return _is_length(line, figure) or _bare_pair(line, at)


def _named_behind(line: Line, shorthand: Shorthand, at: int) -> bool:
    """ "22/m nrm 70/m pk 5 mach": the first rate had its name behind it, so this name belongs to what it follows."""
    return _ends_rate(line, at) and any(
        line.tokens[n].text in shorthand.behind and _ends_rate(line, n) for n in range(max(0, at - 8), at)
    )


def _joined(line: Line, at: int, after: int) -> bool:
    """Tied to its neighbours by a sign: "fl->mezz"."""
    around = (line.tokens[at - 1 : at] or line.tokens[:0]) + line.tokens[after : after + 2]
    return any(token.text in (*ARROWS, "@") for token in around)


def _glued(line: Line, at: int) -> bool:
    """A word that hangs on a number: its unit, or part of a code."""
    return line.is_number(at - 1) and line.tokens[at - 1].end == line.tokens[at].start


def _is_floor(line: Line, shorthand: Shorthand, at: int) -> bool:
    """ "fl 20x10" and "2nd fl" are floors, "fl 5m" may be one; "fl 30#" is full."""
    led = line.tokens[at - 2].text if at > 1 else ""
    if line.is_number(at - 1) and not any(row.guard == "before.figure" for row in shorthand.rows.get(led, ())):
        return True
    if at and line.tokens[at - 1].text in _ORDINALS:
        return True
    amount = line.amount(at + 1)
    if amount is None or (amount.unit is not None and amount.unit.kind != "length"):
        return False
    behind = line.tokens[amount.after].text if amount.after < len(line.tokens) else ""
    second = line.amount(amount.after + 1) if behind == "x" else None
    if second is None:
        return amount.unit is not None and behind not in (*ARROWS, "-", "=")
    return second.after >= len(line.tokens) or line.tokens[second.after].text != "x"


def _labels_next(line: Line, shorthand: Shorthand, at: int) -> bool:
    """ "l 400mm w 300mm": letters belong to the figures behind them where the row of both begins with a letter."""
    tokens = line.tokens
    behind = tokens[at + 1] if at + 1 < len(tokens) else None
    if behind is not None and (
        behind.text in ("=", ":") or (behind.kind == "number" and behind.start == tokens[at].end)
    ):
        return True
    first = line.length_before(at)
    for _ in range(_LETTERS_MOST):
        if first is None:
            return True
        before = tokens[first - 1].text if first else ""
        if before not in LETTERS:
            return any(row.guard.startswith("before.") for row in shorthand.rows.get(before, ()))
        first = line.length_before(first - 1)
    return True


def _bare_pair(line: Line, at: int) -> bool:
    """ "in 800 out 4200": no unit, but both words and both figures."""
    tokens = [token.text for token in line.tokens[max(0, at - 2) : at + 4]]
    own = tokens[min(at, 2) :]
    if own[0] == "in":
        return len(own) == 4 and own[2] == "out" and line.is_number(at + 1) and line.is_number(at + 3)
    return (
        own[0] == "out" and len(tokens) > 4 and tokens[0] == "in" and line.is_number(at - 1) and line.is_number(at + 1)
    )


def _is_length(line: Line, figure: int) -> bool:
    """A length with its unit, or the first of several that share one: 22 x 9 ft."""
    amount = line.amount(figure)
    while amount is not None:
        if amount.unit is not None:
            return amount.unit.kind == "length"
        if amount.after >= len(line.tokens) or line.tokens[amount.after].text not in ("x", "*", "by", "-"):
            return False
        amount = line.amount(amount.after + 1)
    return False


def opens_pair(line: Line, at: int) -> bool:
    """ "pk 32 in 30\" out 14'": a height in and a height out leave no figure for the inches before them."""
    figure = line.figure_behind(at + 1)
    amount = line.amount(figure) if figure is not None else None
    if amount is None or amount.after >= len(line.tokens):
        return False
    if amount.unit is not None and amount.unit.kind != "length":
        return False
    return line.tokens[amount.after].text in ("out", "outf", "outfd", "disch") and (
        line.figure_behind(amount.after + 1) is not None
    )


def _ends_rate(line: Line, at: int) -> bool:
    """ "30/m nrm": a figure per minute or per hour ends before the token."""
    return at >= 3 and line.tokens[at - 2].text in ("/", "per") and line.is_number(at - 3)
