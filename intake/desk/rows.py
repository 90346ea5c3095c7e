"""One line of a panel or a list."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One line of a panel; `key` says what it is about: a field, a family, a question."""

    key: str
    text: str
    tone: str = ""
