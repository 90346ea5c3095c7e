"""Visitors' personal data kept out of the hand-off: contact facts, and the same words wherever they stand."""

import re
from collections.abc import Iterable

from intake.spec import Fact, vocabulary
from intake.spec.personal import MAIL, PHONE

WITHHELD = "(withheld)"


class Withholder:
    """Blanks what could tell who the visitor is. `allowed`: contact data were asked for, nothing is blanked."""

    def __init__(self, facts: Iterable[Fact], *, allowed: bool) -> None:
        self.allowed = allowed
        known = vocabulary()
        words = {
            piece.strip()
            for fact in facts
            if known[fact.field].personal
            for piece in (str(fact.value or ""), fact.said)
            if len(piece.strip()) >= 3
        }
        ordered = sorted(words, key=len, reverse=True)
        self._names = re.compile("|".join(map(re.escape, ordered)), re.IGNORECASE) if ordered else None

    def shows(self, fact: Fact) -> bool:
        """False for a contact fact that stays out."""
        return self.allowed or not vocabulary()[fact.field].personal

    def words(self, text: str) -> str:
        """A fact's words with the names that the visitor gave and mail addresses blanked. Figures stay."""
        if self.allowed:
            return text
        if self._names is not None:
            text = self._names.sub(WITHHELD, text)
        return MAIL.sub(WITHHELD, text)

    def prose(self, text: str) -> str:
        """The same for notes and free text, where a long row of digits is a telephone number and no dimension."""
        return text if self.allowed else PHONE.sub(WITHHELD, self.words(text))
