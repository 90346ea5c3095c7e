"""The form of facts and doubts inside an event. Personal values stay in the messages that events point into."""

from collections.abc import Mapping
from typing import Any

from intake.spec.facts import Doubt, Fact
from intake.spec.vocabulary import vocabulary

Messages = Mapping[int, tuple[str, str]]
"""Text and speaker of each message, by the number of its event."""


def fact_to_body(fact: Fact) -> dict[str, Any]:
    """The form of a fact inside an event. A personal value stays out: its span in the message speaks."""
    body = fact.to_json() | {"who": fact.who, "at": fact.at, "message": fact.message}
    if vocabulary()[fact.field].personal:
        body |= {"value": None, "said": None}
    return body


def fact_from_body(body: Mapping[str, Any], messages: Messages) -> Fact:
    """Back from an event; a personal value is cut out of its message again."""
    span = tuple(body["span"]) if body.get("span") else None
    said, value = body.get("said"), body.get("value")
    message = body.get("message")
    if said is None:
        said = _cut(message, span, messages)
        value = said if vocabulary()[body["field"]].personal else value
    return Fact(
        field=body["field"],
        low=body.get("low"),
        high=body.get("high"),
        value=value if value is not None or "low" in body else "",
        approx=body.get("approx", False),
        hedged=body.get("hedged", False),
        spread=body.get("spread", False),
        said=said or "",
        span=(span[0], span[1]) if span else None,
        size=body.get("size", 1),
        who=body.get("who", "visitor"),
        at=body.get("at", ""),
        message=message,
    )


def doubt_to_body(doubt: Doubt) -> dict[str, Any]:
    """The form of a doubt inside an event, with its ready readings."""
    personal = vocabulary()[doubt.field].personal
    return {
        "field": doubt.field,
        "said": None if personal else doubt.said,
        "why": doubt.why,
        "ask": doubt.ask,
        "span": list(doubt.span) if doubt.span else None,
        "options": [fact_to_body(option) for option in doubt.options],
    }


def doubt_from_body(body: Mapping[str, Any], message: int | None, messages: Messages) -> Doubt:
    """Back from an event; `message` is the number of the one that was read."""
    span = tuple(body["span"]) if body.get("span") else None
    said = body.get("said")
    return Doubt(
        field=body["field"],
        said=_cut(message, span, messages) or "" if said is None else said,
        why=body["why"],
        ask=body["ask"],
        span=(span[0], span[1]) if span else None,
        options=tuple(fact_from_body(option, messages) for option in body.get("options", ())),
    )


def _cut(message: int | None, span: tuple[int, ...] | None, messages: Messages) -> str | None:
    """The words at a place in a message, None when there is no such place."""
    if message is None or span is None or message not in messages:
        return None
    return messages[message][0][span[0] : span[1]]
