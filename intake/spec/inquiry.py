"""A visitor's own question: its words stay in the message that it came in."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Inquiry:
    """What a visitor asked. `message` and `span`: where it stands; `card`: what answers it, None where nothing does.

    `text` is blank once the words have been blanked.
    """

    text: str
    message: int
    span: tuple[int, int]
    card: str | None
