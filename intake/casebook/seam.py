"""The seam between the program and whatever keeps its cases; a shared book can stand behind the same calls."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Protocol

from intake.spec import Event


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexRow:
    """What the lists show of a case, worked out by the caller: the book sizes nothing.

    `standing`: talking, decided, handed over ... `best`: a family, "" while none. `waiting_for`: whom, "" for nobody,
    `since` when (ISO 8601). `words`: more words to find the case by.
    """

    title: str = ""
    standing: str = ""
    best: str = ""
    waiting_for: str = ""
    since: str = ""
    words: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """One line in the list of cases. `events` counts them; `begun` and `updated` are the first and last one's time."""

    id: str
    events: int
    begun: str
    updated: str
    archived: bool
    index: IndexRow


class CaseBook(Protocol):
    """What a book of cases can do. Every call raises BookError, and only that, for trouble with the book."""

    def append(self, case_id: str, events: Sequence[Event], index: IndexRow | None = None) -> int:
        """Keep events, all or none, with what the lists show of the case. Returns how many events the case has now.

        Events that are kept already, word for word, are passed over, so that a failed call may be made again.
        Without an index the one that is there stays. An empty list of events changes the index alone.
        """
        ...

    def events(self, case_id: str) -> list[Event]:
        """All events of a case in order, empty where there is no such case."""
        ...

    def cases(self, words: str | None = None, archived: bool = False) -> list[Entry]:
        """The cases that have all these words in id, title, index or messages, last changed first.

        `archived`: those on the shelf as well.
        """
        ...

    def copy(self, case_id: str, new_id: str) -> None:
        """Begin a case with all that another one has."""
        ...

    def archive(self, case_id: str) -> None:
        """Put a case on the shelf: kept, not listed."""
        ...

    def restore(self, case_id: str) -> None:
        """Take a case off the shelf."""
        ...

    def export(self, case_id: str, *, personal: bool = False) -> str:
        """A case as JSON Lines; what was heard about the person is blanked unless asked for."""
        ...

    def import_(self, text: str, case_id: str | None = None) -> str:
        """Keep a case that was exported, under its own id or another. Returns the id."""
        ...

    def new_id(self) -> str:
        """A short readable id that no case has."""
        ...

    def follow(self, after: int = 0) -> tuple[int, list[str]]:
        """A mark for now, and the cases that changed after an earlier mark."""
        ...
