"""What a kept row must look like before anything is made of it: files get damaged, and imports come from anywhere."""

import json
from typing import Any, Literal, Self

from pydantic import BaseModel, ConfigDict, ValidationError, model_validator

from intake.spec import Event, vocabulary
from intake.spec.events import KINDS

Who = Literal["visitor", "staff", "works"]


class _Row(BaseModel):
    """Parts that are not named here are let through: later versions write more."""

    model_config = ConfigDict(extra="allow", strict=True, defer_build=True, allow_inf_nan=False)


class KeptFact(_Row):
    """A fact inside an event."""

    field: str
    low: float | None = None
    high: float | None = None
    value: bool | str | None = None
    approx: bool = False
    hedged: bool = False
    spread: bool = False
    said: str | None = None
    span: tuple[int, int] | None = None
    size: int = 1
    who: Who = "visitor"
    at: str = ""
    message: int | None = None

    @model_validator(mode="after")
    def _of_its_kind(self) -> Self:
        known = vocabulary().get(self.field)
        if known is None:
            raise ValueError("names a field that there is not")
        if known.is_number:
            holds = self.value is None and (self.low is not None or self.high is not None)
        elif known.kind == "yes_no":
            holds = isinstance(self.value, bool)
        else:
            holds = isinstance(self.value, str) or (known.personal and self.value is None)
        if not holds:
            raise ValueError("has a value of the wrong kind")
        return self


class _Doubt(_Row):
    field: str
    said: str | None
    why: str
    ask: str
    span: tuple[int, int] | None = None
    options: list[KeptFact] = []

    @model_validator(mode="after")
    def _of_a_field(self) -> Self:
        if self.field not in vocabulary():
            raise ValueError("names a field that there is not")
        return self


class _Opened(_Row):
    title: str = ""


class _Message(_Row):
    text: str
    who: Who = "visitor"
    sent: str | None = None


class _Ask(_Row):
    span: tuple[int, int]
    card: str | None = None


class _Heard(_Row):
    message: int | None = None
    asked: list[str] = []
    to: str | None = None
    facts: list[KeptFact] = []
    doubts: list[_Doubt] = []
    unread: list[str] = []
    corrects: bool = False
    settles: list[str] = []
    unknown: list[str] = []
    later: list[str] = []
    asks: list[_Ask] = []


class _Known(_Row):
    fact: KeptFact


class _Question(_Row):
    question: str
    fields: list[str] = []


class _Undo(_Row):
    seq: int


class _Noted(_Row):
    message: int


_BODIES: dict[str, type[_Row]] = {
    "opened": _Opened,
    "message": _Message,
    "heard": _Heard,
    "known": _Known,
    "asked": _Question,
    "unknown": _Question,
    "later": _Question,
    "passed": _Question,
    "undone": _Undo,
    "redone": _Undo,
    "noted": _Noted,
}


class _Line(_Row):
    seq: int
    at: str
    kind: str
    body: dict[str, Any] = {}


def event_of(seq: int, at: str, kind: str, body: dict[str, Any]) -> Event:
    """The event in a kept row. Raises ValueError with what is wrong, in words that fit a sentence."""
    if kind not in KINDS:
        raise ValueError(f"unknown kind {kind[:40]!r}, perhaps of a newer program")
    model = _BODIES.get(kind, _Row)
    try:
        model.model_validate_json(json.dumps(body))
    except ValidationError as error:
        raise ValueError(first_slip(error)) from None
    return Event(seq=seq, at=at, kind=kind, body=body)


def event_of_line(text: str) -> Event:
    """The event in a line of an export. Raises ValueError."""
    try:
        line = _Line.model_validate_json(text)
    except ValidationError as error:
        raise ValueError(first_slip(error)) from None
    return event_of(line.seq, line.at, line.kind, line.body)


def first_slip(error: ValidationError) -> str:
    """The first thing wrong, with its place: "facts.0.field: names a field that there is not"."""
    slip = error.errors(include_url=False, include_input=False)[0]
    place = ".".join(str(part) for part in slip["loc"])
    said = slip["msg"].removeprefix("Value error, ")
    return f"{place}: {said}" if place else said
