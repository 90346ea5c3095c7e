"""Every possible answer to a question that is answered with a word."""

from intake.spec.vocabulary import vocabulary


def words_of(field: str) -> tuple[str | bool, ...]:
    """The answers to a yes and no or a choice; none for a figure or a text."""
    known = vocabulary()[field]
    return (True, False) if known.kind == "yes_no" else known.choices
