"""What goes before and behind the figures that a shorthand word names, so that the reader sees where they end."""

from intake.reading.shorthand.changes import Change
from intake.reading.shorthand.guards import opens_pair
from intake.reading.shorthand.line import LETTERS, Line
from intake.reading.shorthand.rows import Row

_LEADING = frozenset({"in", "by", "within", "to", "time", "need", "needs"})
"""Words that lead to a figure already."""
_PER = frozenset({"/", "per", "cpm", "ppm", "bpm", "cph", "pph", "bph", "pm", "ph"})


def then(line: Line, row: Row, after: int) -> list[Change]:
    """What goes behind the figure: nothing where it has a unit or another figure of the line tells what it is per."""
    figure = line.figure_behind(after)
    number = figure + 1 if figure is not None else None
    if number is None or figure is None:
        return []
    tokens = line.tokens
    behind = tokens[number] if number < len(tokens) else None
    if behind is not None and behind.text in ("-", "to") and line.is_number(number + 1):
        number += 2
        behind = tokens[number] if number < len(tokens) else None
    end = tokens[number - 1].end
    is_pair = behind is not None and opens_pair(line, number)
    if behind is not None and not is_pair:
        is_apart = line.is_number(number) or (behind.text in LETTERS and behind.start > end)
        amount = None if is_apart else line.amount(number - 1)
        if (behind.text in _PER and row.then != "hours") or (amount is not None and amount.unit is not None):
            return []
        if behind.start == end and behind.kind != "line" and behind.text not in (",", ";", ".", ")", "/"):
            return []
    if row.then.startswith("per") and line.counts_otherwise:
        return []
    return [Change(end, end, row.then + "," * (behind is None or behind.text != "/"), behind=True)]


def before(line: Line, row: Row, at: int) -> list[Change]:
    """What goes before the figure that an entry stands behind, where no word leads to it yet."""
    first = at - 1
    if first > 1 and line.tokens[first - 1].text in ("-", "to") and line.is_number(first - 2):
        first -= 2
    if first and line.tokens[first - 1].text in _LEADING and not line.is_number(first - 2):
        return []
    return [Change(line.tokens[first].start, line.tokens[first].start, row.before + " ")]


def closed(line: Line, row: Row, after: int) -> list[Change]:
    """The same sign behind the figures that belong to a label as before it, where a word or figure follows at once."""
    amount = line.amount(line.figure_behind(after) or after)
    while amount is not None and amount.after < len(line.tokens):
        behind = line.tokens[amount.after]
        further = line.amount(amount.after + 1) if behind.text in ("x", "by", "-") else None
        if further is None:
            end = line.tokens[amount.after - 1].end
            sign = row.says[:1]
            follows = behind.kind in ("word", "number") and behind.start > end
            follows = follows and (behind.text not in LETTERS or _letters_first(line, amount.after))
            follows = follows or (behind.text == "," and sign == ";")
            return [Change(end, end, sign, behind=True)] if follows and sign in (",", ";") else []
        amount = further
    return []


def _letters_first(line: Line, at: int) -> bool:
    """ "L 30\" W 16\" H 13\"" from the letter at a token: the row ends with a figure."""
    tokens = line.tokens
    while at < len(tokens) and tokens[at].text in LETTERS:
        amount = line.amount(at + 1)
        if amount is None or amount.unit is None or amount.unit.kind != "length":
            return False
        at = amount.after
    return True
