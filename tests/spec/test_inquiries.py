"""Visitors' own questions in a case: their words stay in the message and are cut out of it by their place."""

import json
from typing import Any

from intake.spec import Case, Event, fold
from intake.spec.inquiry import Inquiry

AT = "2026-03-02T09:00:00+00:00"
TEXT = "12 kg each. Can the belt glow in the dark?  And how tall can it go?"
GLOW, TALL = (12, 41), (48, 66)


def events(*bodies: tuple[str, dict[str, Any]]) -> list[Event]:
    # Through JSON, since that is what a kept case has been through.
    return [
        Event(seq=n, at=AT, kind=kind, body=json.loads(json.dumps(body))) for n, (kind, body) in enumerate(bodies, 1)
    ]


def heard(*asks: tuple[tuple[int, int], str | None], message: int = 1) -> tuple[str, dict[str, Any]]:
    return "heard", {"message": message, "asks": [{"span": list(span), "card": card} for span, card in asks]}


def message(text: str = TEXT) -> tuple[str, dict[str, Any]]:
    return "message", {"text": text, "who": "visitor"}


def test_the_words_of_a_question_are_cut_out_of_its_message() -> None:
    case = fold(events(message(), heard((GLOW, None), (TALL, "how_high"))))
    assert case.inquiries == [
        Inquiry(text="Can the belt glow in the dark", message=1, span=GLOW, card=None),
        Inquiry(text="how tall can it go", message=1, span=TALL, card="how_high"),
    ]


def test_an_event_from_before_there_were_questions_has_none() -> None:
    assert fold(events(message(), ("heard", {"message": 1, "facts": []}))).inquiries == []
    assert Case().inquiries == []


def test_questions_stand_in_the_order_in_which_they_were_asked() -> None:
    case = fold(events(message(), heard((TALL, "how_high")), message("Is it loud?"), heard(((0, 10), None), message=3)))
    assert [one.text for one in case.inquiries] == ["how tall can it go", "Is it loud"]
    assert [one.message for one in case.inquiries] == [1, 3]


def test_undo_takes_the_question_and_its_message_back_and_redo_brings_both() -> None:
    asked = [message(), heard((GLOW, None))]
    assert fold(events(*asked, ("undone", {"seq": 2}))).inquiries == []
    assert fold(events(*asked, ("undone", {"seq": 2}))).messages == {}
    again = fold(events(*asked, ("undone", {"seq": 2}), ("redone", {"seq": 2})))
    assert again == fold(events(*asked))


def test_a_blanked_message_leaves_a_question_without_words() -> None:
    case = fold(events(message(" " * len(TEXT)), heard((GLOW, None))))
    assert [(one.text, one.span) for one in case.inquiries] == [("", GLOW)]


def test_the_words_of_a_question_stand_in_no_event_but_its_message() -> None:
    kept = events(message(), heard((GLOW, None)))
    assert "glow" not in json.dumps([one.to_json() for one in kept if one.kind != "message"])
