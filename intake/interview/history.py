"""The events of one talk: appended to, folded, and undone by appending."""

from collections.abc import Iterable, Mapping
from dataclasses import replace
from typing import Any

from intake.spec.case import Case, fold, standing
from intake.spec.events import KINDS, Event, now

_TAKEN_BACK = (
    "heard", "known", "withdrawn", "unknown", "later", "passed",
    "opened", "noted", "promised", "asked_back", "done", "attached", "moved",
)  # fmt: skip
"""Kinds that a person may undo; a message goes with what was read from it."""

_ANSWERS = ("heard", "known", "unknown", "later", "passed")


class History:
    """An append-only list of events and the case they make."""

    def __init__(self, events: Iterable[Event] = ()) -> None:
        self._events = list(events)
        self._case: Case | None = None

    def go_on_from(self, events: Iterable[Event]) -> None:
        """Take these events as what happened so far."""
        self._events = list(events)
        self._case = None

    @property
    def events(self) -> tuple[Event, ...]:
        """Everything that happened, oldest first."""
        return tuple(self._events)

    @property
    def case(self) -> Case:
        """The fold of all events; the same object until one is added."""
        if self._case is None:
            self._case = fold(self._events)
        return self._case

    def append(self, kind: str, /, **body: Any) -> Event:
        """Add one event, stamped now. Raises ValueError for a kind that there is not."""
        if kind not in KINDS:
            raise ValueError(f"unknown kind of event {kind!r}")
        event = Event(seq=self._events[-1].seq + 1 if self._events else 1, at=now(), kind=kind, body=body)
        self._events.append(event)
        self._case = None
        return event

    def undo(self) -> bool:
        """Take back the last thing that counts. False when there is none."""
        last = next((event for event in reversed(standing(self._events)) if event.kind in _TAKEN_BACK), None)
        if last is not None:
            self.append("undone", seq=last.seq)
        return last is not None

    def redo(self) -> bool:
        """Let the last undone thing count again, unless something else was said since."""
        open_undos: list[int] = []
        for event in self._events:
            seq = event.body.get("seq")
            if event.kind in ("undone", "redone"):  # two desks may have taken the same back
                open_undos = [one for one in open_undos if one != seq]
            if event.kind == "undone":
                open_undos.append(int(event.body["seq"]))
            elif event.kind in _TAKEN_BACK:
                open_undos = []
        if open_undos:
            self.append("redone", seq=open_undos[-1])
        return bool(open_undos)

    def take_in(self, kept: Iterable[Event], own: int) -> None:
        """Go on from events that another desk kept meanwhile: all of theirs, then ours that were not kept.

        `own`: how many of our events were kept; those after it are numbered anew behind theirs, and so is whatever
        points at them, so that nothing said on either side is lost.
        """
        theirs, ours = list(kept), self._events[own:]
        by = len(theirs) - own
        self._events = [*theirs, *(_renumbered(event, own, by) for event in ours)]
        self._case = None

    def undo_answer(self) -> str | None:
        """Take back the last answer to a question, and name the question; what was volunteered since stays."""
        for event in reversed(standing(self._events)):
            asked = event.body.get("to") or event.body.get("question")
            if event.kind in _ANSWERS and asked:
                self.append("undone", seq=event.seq, whole=True)
                return str(asked)
        return None

    def lately(self) -> tuple[str, ...]:
        """The fields of the last answer: those it gave, or else those it was asked for."""
        for event in reversed(standing(self._events)):
            if event.kind == "heard" and event.body.get("facts"):
                return tuple(dict.fromkeys(str(fact["field"]) for fact in event.body["facts"]))
            if event.kind in _ANSWERS:
                return tuple(event.body.get("fields", event.body.get("asked", ())))
        return ()

    def last_heard(self) -> Event | None:
        """The last message that was read for facts."""
        counted = reversed(standing(self._events))
        return next((e for e in counted if e.kind == "heard" and e.body.get("message") is not None), None)

    def waits(self) -> bool:
        """True while the last question put has had no answer; messages of their own do not count as one."""
        for event in reversed(standing(self._events)):
            if event.kind == "asked":
                return True
            if event.kind in ("unknown", "later", "passed") or (event.kind == "heard" and event.body.get("to")):
                return False
        return False


_POINTERS = ("message", "seq", "of", "instead")
"""Parts of a body that are numbers of other events."""


def _renumbered(event: Event, after: int, by: int) -> Event:
    """The event `by` places later, with whatever points at events after number `after`."""
    return replace(event, seq=event.seq + by, body=_pointing(event.body, after, by))


def _pointer(key: str, value: Any, after: int, by: int) -> Any:
    if key in _POINTERS and type(value) is int:
        return value + by if value > after else value
    return _pointing(value, after, by)


def _pointing(part: Any, after: int, by: int) -> Any:
    if isinstance(part, Mapping):
        return {key: _pointer(key, value, after, by) for key, value in part.items()}
    return [_pointing(one, after, by) for one in part] if isinstance(part, list | tuple) else part
