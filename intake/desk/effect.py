"""What a command comes to: lines to show, a page to read, text to copy, a case to go to."""

from dataclasses import dataclass

from intake.spec.clean import one_line


class Slip(ValueError):  # noqa: N818  # a person's slip, told as a line, and no fault of the program
    """Something typed that cannot be done. The message says in one line what, where and how to mend it."""

    def __init__(self, told: str) -> None:
        super().__init__(one_line(told))


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """A text to read, select and copy."""

    title: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Go:
    """Another case to bring to the front: its name, "" for a new one; `onward`: the next of those open.

    `anew`: read it from the book again, as what the book holds of it has changed.
    """

    case: str = ""
    onward: bool = False
    anew: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Effect:
    """What comes of a command.

    `copy`: text for the clipboard; `say`: words to put through as the visitor's; `retell`: the
    conversation has changed as a whole; `leave`: the person wants to go.
    """

    lines: tuple[str, ...] = ()
    page: Page | None = None
    copy: str = ""
    say: str = ""
    retell: bool = False
    go: Go | None = None
    leave: bool = False
