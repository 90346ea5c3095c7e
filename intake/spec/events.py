"""The events of a case: the only thing that is kept. Everything else is a fold over them."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import Any

KINDS = (
    "opened",  # {title?}
    "message",  # {text, who, how?, sent?}: somebody's words; the book keeps the text in a table of its own
    # ... how "ear": typed while listening, so the words are not the speaker's own; sent: when, as a pasted
    # ... thread tells it. Never a name: names are personal
    "heard",  # {message, asked, to: question id | None, facts, doubts, unread, ...}
    # ... asks: the visitor's own questions, each {span in the message, card: what answers it | None}
    # ... mended: [{span, was: fields that the reader had found there}]: where staff said what the words are
    # ... instead: seq of the reading of the same words that this one stands for
    # ... of "heard": corrects and settles (has the last word), unknown and later (asked for, not given), passes
    "known",  # {fact, message?, measured?}: set directly, not from words; measured: the day of a test on samples
    "withdrawn",  # {field, size}: that fact stands no longer; nothing takes its place
    "asked",  # {question, fields, branch}
    "unknown",  # {question, fields, message?}: "don't know"
    "later",  # {question, fields, message?}: the visitor will check
    "passed",  # {question, fields, stood, message?}: staff passed over a doubt or conflict and keep what stands
    "undone",  # {seq, whole?}: that event no longer counts; whole: nor does a reading that it stands for
    "redone",  # {seq}: it counts again
    "noted",  # {message}: a note of the staff, words kept as a message
    "promised",  # {message, who: us | visitor | works, by: YYYY-MM-DD | None}: what somebody will do
    "asked_back",  # {message}: what engineering wants to know before it goes on
    "done",  # {of: seq of a promise or a question asked back, message?}: kept, or answered
    "attached",  # {message: name and what it shows, file: SHA-256 of its content, bytes}
    "moved",  # {to: samples_asked | in_test | closed | open}: where the case is in its life
    "forgotten",  # {messages: how many were blanked}: the person's own words are gone from the book
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
