"""Kept talks: go on with one, keep what happened, and what the lists show of it. Knows no screen."""

import contextlib

from intake.casebook import Book, BookError, IndexRow
from intake.casebook.names import checked
from intake.spec import Event
from intake.spec.standing import standing_of, waits_of
from intake.talk import Interview


def opened(name: str) -> tuple[Interview, "Keeper"]:
    """The kept talk of that name with what keeps it; an empty one where there is none. Raises BookError."""
    book = Book()
    events = book.events(checked(name))
    return Interview.from_events(events), Keeper(name, len(events), book)


def resume(name: str) -> Interview | None:
    """The kept talk of that name, None where there is none. Raises BookError for trouble with the book."""
    with Book() as book:
        events = book.events(name)
    return Interview.from_events(events) if events else None


_TRIES = 5
"""So often others may be first while this desk keeps something; then it is told as trouble, and tried again later."""


_ALL = 2**62
"""No book has so many events: nothing changed after it, and the mark is that of now."""


class Keeper:
    """Keeps one talk under its name, event by event. `kept`: how many of its events are in the book already."""

    def __init__(self, name: str, kept: int = 0, book: Book | None = None) -> None:
        self.name = name
        self.book = book or Book()
        self._kept = kept
        self._mark: int | None = None
        self._joined_now = False
        self._files: dict[str, bytes] = {}

    def hold(self, file: str, content: bytes) -> None:
        """A file that goes into the book together with the event that attaches it."""
        self._files[file] = content

    def type(self, words: str) -> None:
        """Keep what is half typed, so that it survives whatever ends the program. Trouble here is told when sending."""
        with contextlib.suppress(BookError):
            self.book.keep_draft(self.name, words)

    def typed(self) -> str:
        """What was half typed when the case was left."""
        try:
            return self.book.draft(self.name)
        except BookError:
            return ""

    @property
    def joined(self) -> bool:
        """True once after another desk's events were taken in while something was kept."""
        joined, self._joined_now = self._joined_now, False
        return joined

    def keep(self, talk: Interview) -> str | None:
        """Keep what is not kept yet. Returns None once it is safe on disk, else the trouble in words; it may be
        called again, and then tries all of it again."""
        new = talk.events[self._kept :]
        if not new:
            return None
        try:
            self._kept = self.book.append(self.name, new, files=self._files)
        except BookError as fault:
            return self._joined(talk) if fault.code == "conflict" else str(fault)
        self._files.clear()
        return None

    def _joined(self, talk: Interview) -> str | None:
        """Another desk has gone on with this case: take its events in, and keep ours behind them."""
        trouble: BookError | None = None
        for _ in range(_TRIES):
            try:
                self._take_in(talk, self.book.events(self.name))
                self._joined_now = True
                self._kept = self.book.append(self.name, talk.events[self._kept :], files=self._files)
                self._files.clear()
                return None
            except BookError as fault:
                trouble = fault
                if fault.code != "conflict":
                    break
        return str(trouble)

    def _take_in(self, talk: Interview, theirs: list[Event]) -> None:
        talk.take_in(theirs, self._kept)
        self._kept = len(theirs)

    def news(self, talk: Interview) -> bool:
        """True when another desk has gone on with this case; what it kept is in the talk then. Cheap; ask often."""
        try:
            first = self._mark is None  # what was kept since the case was read is looked at whatever the mark
            mark, changed = self.book.follow(_ALL if self._mark is None else self._mark)
            theirs = self.book.events(self.name) if first or self.name in changed else []
        except BookError:
            return False  # trouble is told when something is to be kept
        self._mark = None if mark == _ALL else mark  # there is no book yet
        if len(theirs) <= self._kept:
            return False
        self._take_in(talk, theirs)
        return True

    def index(self, talk: Interview) -> str | None:
        """Bring what the lists show up to date. Sizes the talk. Returns trouble in words."""
        try:
            self.book.append(self.name, [], index_of(talk))
        except BookError as fault:
            return str(fault)
        return None


def index_of(talk: Interview) -> IndexRow:
    """What the lists show of a case, from plain values of the talk. Sizes it.

    Whoever is due first, or has waited longest, stands first in `waiting_for`, and `since` is theirs.
    """
    case = talk.case
    waits = waits_of(case)
    return IndexRow(
        title=talk.title,
        standing=standing_of(case, decided=talk.decided),
        best=talk.result().best or "",
        waiting_for=", ".join(wait.who for wait in waits),
        since=waits[0].since if waits else "",
        due=min((wait.due for wait in waits if wait.due), default=""),
        open=len(case.waiting) + len(case.later),
    )


def index_of_events(case_id: str, events: list[Event]) -> IndexRow:
    """The same for a kept case, as the book asks for it when it rebuilds its index or forgets a person."""
    return index_of(Interview.from_events(events))
