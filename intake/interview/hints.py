"""The second half of a complaint: the nearest spelling, or where the list is; and how kinds of field are called."""

from collections.abc import Iterable

from intake.interview.complaints import named
from intake.spec.vocabulary import Field, nearest

KINDS = {"quantity": "figure", "count": "count", "choice": "choice", "yes_no": "yes or no", "text": "text"}
"""How sentences call the kinds of field."""


def did_you_mean(word: str, among: Iterable[str] | None = None) -> str:
    """The nearest spelling as a question, or what is accepted. Without `among`: the fields of the vocabulary."""
    pool = None if among is None else tuple(among)
    close = nearest(word, pool)
    if close is not None:
        return f"Did you mean {named(close)}?"
    return f"Accepted: {', '.join(pool)}" if pool else "All fields are listed by: intake proof --fields"


def unit_of(field: Field) -> str:
    """The unit of a figure as a sentence has it."""
    return "whole numbers" if field.kind == "count" else field.unit
