"""One card: what visitors ask, and what is said to it."""

from collections.abc import Mapping
from dataclasses import dataclass, field

FAMILY = "family"
"""`takes` for a card that answers about the family that the question names."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """What one card of a file says.

    `asks`: ways in which people ask it. `about`: one line for the staff. `says`: templates, the first of which every
    blank has a value is said. `what_if`: the case with these facts changed fills the `then.` blanks. `takes`: the field
    that a figure in the question is read as, or "family".
    """

    id: str
    topic: str
    asks: tuple[str, ...]
    about: str
    says: tuple[str, ...]
    what_if: Mapping[str, str | bool | float] = field(default_factory=dict)
    takes: str | None = None

    @property
    def supposes(self) -> bool:
        """True where the answer may look at a changed case."""
        return bool(self.what_if) or self.takes not in (None, FAMILY)
