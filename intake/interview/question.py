"""What the talk may ask next, and what it leaves out: values for screens, chats and tests."""

from dataclasses import dataclass
from typing import Any, Literal

from intake.spec.facts import Fact

Kind = Literal["doubt", "conflict", "question"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One ready answer to a doubt or conflict. `fact` None: what stands is right as it is."""

    label: str
    fact: Fact | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Question:
    """One question, ready to be sent.

    `fields`: what an answer is read for. `say` is for the visitor, `why` for the staff. `purpose` of a question:
    "basics" (nothing can be sized without), "best" (may change which family is best), "engineering" (needed to start),
    "aside" (hardly matters). `stood`: what stood when it was put; passing it over holds only as long as that stands.
    """

    id: str
    kind: Kind
    fields: tuple[str, ...]
    say: str
    why: str
    branch: str
    options: tuple[Option, ...] = ()
    purpose: str = ""
    unknown_ok: str = ""
    stood: str = ""

    def to_json(self) -> dict[str, Any]:
        """A plain dict for scripts."""
        return {
            "id": self.id,
            "kind": self.kind,
            "fields": list(self.fields),
            "say": self.say,
            "why": self.why,
            "branch": self.branch,
            "options": [option.label for option in self.options],
            "purpose": self.purpose,
        }


@dataclass(frozen=True, slots=True, kw_only=True)
class Skipped:
    """A question that is not asked, and the sentence that says why."""

    question: str
    fields: tuple[str, ...]
    why: str

    def to_json(self) -> dict[str, Any]:
        """A plain dict for scripts."""
        return {"question": self.question, "fields": list(self.fields), "why": self.why}


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenPoint:
    """Something to find out later: by asking for `field` again or by making `test`.

    `say` can be sent to the visitor, and asks for all that is open in the same breath; `why` says what hangs on it;
    `settle` names the photo, drawing or test that gives the answer. `state`: "unknown" (the visitor does not know),
    "later" (is checking), "open" (an assumption stands in or a test is wanted), "asked" (a question of the visitor's
    own, for engineering). `changes_best`: share of plausible answers that change the best family, if sampled.
    """

    field: str | None
    test: str | None
    say: str
    why: str
    settle: str
    state: Literal["unknown", "later", "open", "asked"]
    changes_best: float | None = None

    def to_json(self) -> dict[str, Any]:
        """A plain dict for scripts."""
        return {name: getattr(self, name) for name in self.__slots__}
