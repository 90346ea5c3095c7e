"""What a case still owes and is owed: promises, questions that engineering asked back, files."""

from dataclasses import dataclass
from typing import Literal, get_args

Party = Literal["us", "visitor", "works"]
PARTIES: tuple[str, ...] = get_args(Party)

Stage = Literal["open", "samples_asked", "in_test", "handed_over", "closed"]
STAGES: tuple[str, ...] = get_args(Stage)


@dataclass(frozen=True, slots=True, kw_only=True)
class Matter:
    """Something that waits until it is done.

    `seq`: the event it came with. `what` are its words. `who` has to do it, `by` when (YYYY-MM-DD, "" for no day).
    `done`: when it was (ISO 8601), "" while it waits.
    """

    seq: int
    kind: Literal["promise", "question"]
    what: str
    who: Party
    by: str = ""
    at: str = ""
    done: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Attached:
    """A file kept with the case: its name and what it shows, SHA-256 of its content, how many bytes."""

    seq: int
    name: str
    file: str
    bytes: int
    at: str = ""
