"""Two heights with an arrow between them: from where to where, up or down by which of them is higher."""

from intake.reading.amounts.compounds import Amount
from intake.reading.shorthand.changes import Change
from intake.reading.shorthand.line import Line

ARROWS = (">", "→")
_LABELS = frozenset({"in", "inf", "infd", "infeed", "from"})


def height_pairs(line: Line) -> tuple[list[Change], set[int]]:
    """Changes for every "30\" > 14'", and the tokens that they have dealt with.

    At least one of the two must have a unit of length; with both, the direction is told as well.
    """
    changes: list[Change] = []
    taken: set[int] = set()
    for at, token in enumerate(line.tokens):
        if token.text not in ARROWS or line.prose[at]:
            continue
        arrow = at - 1 if at and line.tokens[at - 1].text in ("-", "=") else at
        left, right = _ending_at(line, arrow), line.amount(at + 1)
        if left is None or right is None:
            continue
        way = _way(left, right)
        if way is None:
            continue
        start = line.tokens[left.first].start
        if left.first and line.tokens[left.first - 1].text in _LABELS:
            start = line.tokens[left.first - 1].start
            taken.add(left.first - 1)
        changes.append(Change(start, line.tokens[left.first].start, ", infeed height "))
        changes.append(Change(line.tokens[arrow].start, token.end, f"{way} to discharge height".strip()))
        end = line.tokens[right.after - 1].end
        changes.append(Change(end, end, ",", behind=True))
        taken.update(range(arrow, at + 1))
    return changes, taken


def _ending_at(line: Line, arrow: int) -> Amount | None:
    """The figure that ends directly before a token."""
    for at in range(max(0, arrow - 8), arrow):
        amount = line.amount(at)
        if amount is not None and amount.after == arrow:
            return amount
    return None


def _way(left: Amount, right: Amount) -> str | None:
    """ "up", "down", "" where only one has a unit; None where these are no two heights."""
    kinds = [amount.unit.kind for amount in (left, right) if amount.unit is not None]
    if not kinds or any(kind != "length" for kind in kinds):
        return None
    if left.unit is None or right.unit is None:
        return ""
    low, high = left.unit.worth(left.value), right.unit.worth(right.value)
    return "" if low == high else "up" if high > low else "down"
