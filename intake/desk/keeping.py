"""Kept talks: go on with one, keep what happened, and what the lists show of it. Knows no screen."""

from intake.casebook import Book, BookError, IndexRow
from intake.handoff.revision import last_handed_over
from intake.spec import Event
from intake.talk import Interview


def resume(name: str) -> Interview | None:
    """The kept talk of that name, None where there is none. Raises BookError for trouble with the book."""
    with Book() as book:
        events = book.events(name)
    return Interview.from_events(events) if events else None


class Keeper:
    """Keeps one talk under its name, event by event."""

    def __init__(self, name: str) -> None:
        self._name = name
        self._book = Book()
        self._kept = 0

    def keep(self, talk: Interview) -> str | None:
        """Keep what is not kept yet. Returns None once it is safe on disk, else the trouble in words; it may be
        called again, and then tries all of it again."""
        new = talk.events[self._kept :]
        return self._append(new, None) if new else None

    def index(self, talk: Interview) -> str | None:
        """Bring what the lists show up to date. Sizes the talk. Returns trouble in words."""
        return self._append([], index_of(talk))

    def _append(self, events: list[Event], index: IndexRow | None) -> str | None:
        try:
            self._kept = self._book.append(self._name, events, index)
        except BookError as fault:
            return str(fault)
        return None


def index_of(talk: Interview) -> IndexRow:
    """What the lists show of a case, from plain values of the talk."""
    waits = bool(talk.case.later)
    return IndexRow(
        title=talk.title,
        standing=_standing(talk),
        best=talk.result().best or "",
        waiting_for="visitor" if waits else "",
        since=talk.events[-1].at if talk.events else "",
    )


def _standing(talk: Interview) -> str:
    """Where the case is in its life, read off its events."""
    last = last_handed_over(talk.events)
    if last is not None:
        return f"handed over, revision {last['revision']}"
    if talk.case.later:
        return "waiting for the visitor"
    return "decided" if talk.decided else "talking"
