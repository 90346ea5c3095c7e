"""A value that the staff's question offers: "is it about 30 lb?" read as the statement that a yes makes of it."""

import re
from collections.abc import Sequence
from pathlib import Path

from intake.reading.reader import read
from intake.spec.facts import Heard

_LEADS = re.compile(
    r"^\W*(?:(?:so|and|ok|okay|then|just to (?:confirm|check|be sure)|to confirm"
    r"|right|got it|i take it|i assume|i guess)\W+)*"
    r"(?:(?:is|are|was|were|do|does|did|will|would|can|could|should|may"
    r"|shall)\s+)?(?:that\s+(?=(?:the|it|they|one|each)\b))?"
)
_ENDS = re.compile(
    r"[\s,]*\b(?:right|correct|yes|no|ok|okay|is it|is that right|isn't it|aren't they"
    r"|then)?[\s?.!]*$"
)


def offered(piece: str, asked: Sequence[str], folder: Path) -> Heard:
    """What the words of a question say where they are taken for a statement. Spans are of no use to anybody.

    >>> from intake.spec.folder import shipped_folder
    >>> [fact.field for fact in offered("so is it about 30 lb?", (), shipped_folder()).facts]
    ['product.weight']
    """
    statement = _ENDS.sub("", _LEADS.sub("", " ".join(piece.casefold().split())))
    return read(statement, asked=tuple(asked) or None, questions=folder)
