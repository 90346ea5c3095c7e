"""The seam between the program and whatever keeps its cases; a shared book can stand behind the same calls."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Protocol

from intake.spec import Event


@dataclass(frozen=True, slots=True, kw_only=True)
class IndexRow:
    """What the lists show of a case, worked out by the caller: the book sizes nothing.

    `standing`: talking, decided, handed over ... `best`: a family, "" while none. `waiting_for`: whom, "" for nobody,
    several with ", " between them; `since` when (ISO 8601) the first of them. `due`: the first day that something was
    promised for (YYYY-MM-DD, "" for none). `open`: how many promises, questions asked back and things that the visitor
    will check still wait. `words`: more words to find the case by.
    """

    title: str = ""
    standing: str = ""
    best: str = ""
    waiting_for: str = ""
    since: str = ""
    due: str = ""
    open: int = 0
    words: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Find:
    """Which cases are wanted; what is left out narrows nothing.

    `words`: all of them, each the beginning of a word in id, index or messages. `family`: the best one. `standing`: how
    it begins ("handed over"). `since`, `until`: days of the last change on this computer's clock, both counted in.
    `due_by`: what is due on that day or earlier. `waiting_for`: one of those waited for. Days are YYYY-MM-DD.
    `archived`: those on the shelf as well.
    """

    words: str = ""
    family: str = ""
    standing: str = ""
    since: str = ""
    until: str = ""
    due_by: str = ""
    open_only: bool = False
    waiting_for: str = ""
    archived: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Forgotten:
    """What forgetting a person did.

    `messages` had words blanked, and so had `events` (titles, words quoted beside a fact). `files`: contents dropped;
    `files_kept`: contents that stay. `also_in`: other cases that hold the same words. `copies`: older copies of the
    book that lie beside it and hold them still. `sealed`: False while another program still reads the old pages, so
    that the words may stand in the file until `forget` is called again.
    """

    messages: int
    events: int = 0
    files: int = 0
    files_kept: int = 0
    also_in: tuple[str, ...] = ()
    copies: tuple[str, ...] = ()
    sealed: bool = True


IndexOf = Callable[[str, list[Event]], IndexRow]
"""Works out what the lists show of a case from its id and its events."""


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

    def append(
        self,
        case_id: str,
        events: Sequence[Event],
        index: IndexRow | None = None,
        *,
        files: Mapping[str, bytes] | None = None,
    ) -> int:
        """Keep events, all or none, with what the lists show of the case. Returns how many events the case has now.

        Events that are kept already, word for word, are passed over, so that a failed call may be made again.
        Without an index the one that is there stays. An empty list of events changes the index alone. `files`: the
        contents of files that "attached" events of the case name, by SHA-256 (`file_mark`), at most 25 MB each.
        """
        ...

    def events(self, case_id: str) -> list[Event]:
        """All events of a case in order, empty where there is no such case."""
        ...

    def cases(
        self,
        words: str | None = None,
        archived: bool = False,
        *,
        find: Find | None = None,
        limit: int | None = None,
        offset: int = 0,
    ) -> list[Entry]:
        """The cases that are wanted, last changed first. `words` and `archived` are short for the same in `find`."""
        ...

    def count(self, find: Find | None = None) -> int:
        """How many cases `cases` would list without a limit."""
        ...

    def rebuild(self, index_of: IndexOf) -> int:
        """Drop the index and write it anew for all cases, all or nothing. Returns how many there are.

        A case that cannot be read keeps what the lists showed of it.
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

    def attachment(self, case_id: str, file: str) -> bytes:
        """The content of a file attached to a case, by its SHA-256."""
        ...

    def has_content(self, case_id: str, file: str) -> bool:
        """True where that content is kept here: not dropped, and not left out when the case was sent."""
        ...

    def forget(self, case_id: str, index_of: IndexOf, *, files: bool = False) -> Forgotten:
        """Blank what was heard about the person of a case, for good; with `files` drop its files' contents too."""
        ...

    def keep_draft(self, case_id: str, text: str) -> None:
        """Keep words that are being typed, in place of those kept before; empty words clear them. No event."""
        ...

    def draft(self, case_id: str) -> str:
        """The words that were being typed, "" for none."""
        ...

    def begun_only(self) -> list[tuple[str, str]]:
        """Names of cases of which nothing was sent yet, with the words that were being typed, the newest first."""
        ...

    def export(self, case_id: str, *, personal: bool = False, files: bool = False) -> str:
        """A case as JSON Lines. What was heard about the person is blanked, and files left out, unless asked for."""
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

    def check(self) -> list[str]:
        """What is wrong with the book, a sentence each; empty for a sound one. Reads all of it."""
        ...

    def backup(self, to: Path) -> None:
        """Write a sound copy of the whole book, while desks are open."""
        ...
