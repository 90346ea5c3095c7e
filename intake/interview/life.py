"""What happens to a case beside the talk: promises, questions asked back, samples, tests, files."""

from datetime import date
from typing import Literal

from intake.interview.history import History
from intake.interview.recording import only_said
from intake.spec.bodies import fact_to_body
from intake.spec.clean import clean
from intake.spec.events import now
from intake.spec.facts import Fact, Who
from intake.spec.flat import value_of
from intake.spec.matters import Matter, Party
from intake.spec.vocabulary import vocabulary

Move = Literal["samples_asked", "in_test", "closed", "open"]


class Life:
    """The life of one case. Each call is one event, undone like any other; its words are kept as a message."""

    def __init__(self, history: History) -> None:
        self._history = history

    def promise(self, what: str, who: Party = "us", by: str | None = None) -> None:
        """Somebody will do something. `by`: YYYY-MM-DD. Raises ValueError without words, or for what is no day."""
        by = by and date.fromisoformat(by).isoformat()
        message = self._message(what, "visitor" if who == "visitor" else "works" if who == "works" else "staff")
        self._history.append("promised", message=message, who=who, by=by)

    def ask_back(self, what: str) -> None:
        """Engineering wants to know something before it goes on. Raises ValueError without words."""
        self._history.append("asked_back", message=self._message(what, "works"))

    def done(self, seq: int, words: str = "") -> Matter:
        """A promise was kept, or a question asked back answered. Raises ValueError when none such waits."""
        matter = self._history.case.matters.get(seq)
        if matter is None or matter.done:
            raise ValueError("nothing of that number waits")
        message = self._message(words, "staff") if words.strip() else None
        self._history.append("done", of=seq, **only_said(message=message))
        return matter

    def attached(self, name: str, file: str, size: int) -> None:
        """A file is kept with the case. `name`: what people call it; `file`: SHA-256 of the content; `size` [bytes]."""
        self._history.append("attached", message=self._message(name, "staff"), file=file, bytes=size)

    def move(self, to: Move) -> None:
        """Samples were asked for, are in test, the case is closed, or open again."""
        self._history.append("moved", to=to)

    def measured(self, field: str, value: float | bool, report: str, on: str | None = None) -> None:
        """A test on samples. `value` in the field's canonical unit; `report`: who measured, when, on which samples.

        `on`: the day, YYYY-MM-DD. Raises SpecError for a value that cannot be, ValueError for a field that is no test
        or what is no day.
        """
        on = on and date.fromisoformat(on).isoformat()
        if not field.startswith("test.") or field not in vocabulary():
            raise ValueError(f"{field} is no test on samples")
        known = value_of(field, field, value)
        words = clean(report).strip()
        message = self._message(words, "works")
        fact = Fact(
            field=field,
            low=known.low,
            high=known.high,
            value=known.value,
            said=words,
            span=(0, len(words)),
            who="works",
            at=now(),
            message=message,
        )
        self._history.append("known", fact=fact_to_body(fact), message=message, **only_said(measured=on))

    def _message(self, text: str, who: Who) -> int:
        words = clean(text).strip()
        if not words:
            raise ValueError("there are no words")
        return self._history.append("message", text=words, who=who).seq
