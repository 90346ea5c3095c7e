"""Kept talks: go on with one, keep what happened, and what the lists show of it. Knows no screen."""

from intake.casebook import Book, BookError, IndexRow
from intake.spec import Event
from intake.spec.standing import standing_of, waits_of
from intake.talk import Interview


def resume(name: str) -> Interview | None:
    """The kept talk of that name, None where there is none. Raises BookError for trouble with the book."""
    with Book() as book:
        events = book.events(name)
    return Interview.from_events(events) if events else None


_ALL = 2**62
"""No book has so many events: what changed after it is nothing, and the mark is that of now."""


class Keeper:
    """Keeps one talk under its name, event by event. `kept`: how many of its events are in the book already."""

    def __init__(self, name: str, kept: int = 0) -> None:
        self.name = name
        self.book = Book()
        self._kept = kept
        self._mark: int | None = None

    def keep(self, talk: Interview) -> str | None:
        """Keep what is not kept yet. Returns None once it is safe on disk, else the trouble in words; it may be
        called again, and then tries all of it again."""
        new = talk.events[self._kept :]
        if not new:
            return None
        try:
            self._kept = self.book.append(self.name, new)
        except BookError as fault:
            return self._joined(talk) if fault.code == "conflict" else str(fault)
        return None

    def _joined(self, talk: Interview) -> str | None:
        """Another desk has gone on with this case: take its events in, and keep ours behind them."""
        try:
            theirs = self.book.events(self.name)
            talk.take_in(theirs, self._kept)
            self._kept = len(theirs)
            self._kept = self.book.append(self.name, talk.events[self._kept :])
        except BookError as fault:
            return str(fault)
        return None

    def news(self, talk: Interview) -> bool:
        """True when another desk has gone on with this case; what it kept is in the talk then. Cheap; ask often."""
        try:
            if self._mark is None:
                self._mark, _ = self.book.follow(_ALL)
            mark, changed = self.book.follow(self._mark)
            if mark == self._mark or self.name not in changed:
                self._mark = mark
                return False
            theirs = self.book.events(self.name)
        except BookError:
            return False  # trouble is told when something is to be kept
        self._mark = mark
        if len(theirs) <= self._kept:
            return False
        talk.take_in(theirs, self._kept)
        self._kept = len(theirs)
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
