"""The events of a case: the only thing that is kept. Everything else is a fold over them."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import Any

KINDS = (
    "opened",  # {title?}
    "message",  # {text, who, sent?}: somebody's words; the book keeps the text in a table of its own
    # ... sent: the time that a pasted thread gives, as told there. Never a name: names are personal
    "heard",  # {message, asked, to: question id | None, facts, doubts, unread, ...}
    # ... asks: the visitor's own questions, each {span in the message, card: what answers it | None}
    # ... of "heard": corrects and settles (has the last word), unknown and later (asked for, not given), passes
    "known",  # {fact, message?}: set directly, not from words
    "asked",  # {question, fields, branch}
    "unknown",  # {question, fields, message?}: "don't know"
    "later",  # {question, fields, message?}: the visitor will check
    "passed",  # {question, fields, stood, message?}: staff passed over a doubt or conflict and keep what stands
    "undone",  # {seq}: that event no longer counts
    "redone",  # {seq}: it counts again
    "noted",  # {message}: a note of the staff, words kept as a message
    "handed_over",  # {revision, spec}
    "archived",  # {}
    "restored",  # {}
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Event:
    """One thing that happened in a case. `seq` counts from 1 without holes; `at` is ISO 8601 in UTC."""

    seq: int
    at: str
    kind: str
    body: Mapping[str, Any] = field(default_factory=dict)

    def to_json(self) -> dict[str, Any]:
        """A plain dict, as kept on disk."""
        return {"seq": self.seq, "at": self.at, "kind": self.kind, "body": dict(self.body)}

    @classmethod
    def from_json(cls, row: Mapping[str, Any]) -> "Event":
        """From the kept form. Raises KeyError or ValueError for a row that is no event."""
        kind = row["kind"]
        if kind not in KINDS:
            raise ValueError(f"unknown kind of event {kind!r}")
        return cls(seq=int(row["seq"]), at=str(row["at"]), kind=kind, body=dict(row.get("body", {})))


def now() -> str:
    """The time to stamp an event with, to the second, in UTC."""
    return datetime.now(UTC).isoformat(timespec="seconds")
