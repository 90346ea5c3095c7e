"""Whole conversations: the record of a talk, and what it agrees with."""

import json
from collections.abc import Callable

import pytest

from intake.sizing import size
from intake.spec.flat import SpecError
from intake.talk import Interview

FIRST = "Hi, 400 x 300 x 250 mm taped cases, 12 kg, up to a mezzanine"
KNOWN = f"{FIRST}. About 20 a minute, 24 at most, from 0.8 m to 3.8 m."


@pytest.mark.usefixtures("sampled")
def test_the_talk_and_the_core_agree() -> None:
    talk = Interview()
    talk.hear(KNOWN)
    assert talk.result().to_json() == size(talk.spec(), worth=True).to_json()


def test_a_talk_goes_on_from_its_events() -> None:
    talk = Interview()
    talk.hear(KNOWN)
    talk.ask()
    talk.answer("don't know")
    talk.hear("it weighs 15 kg")
    talk.note("call back on Friday")
    kept = [json.loads(json.dumps(event.to_json())) for event in talk.events]
    again = Interview.from_events([type(talk.events[0]).from_json(row) for row in kept])
    assert again.case == talk.case
    assert again.spec() == talk.spec()
    assert again.ask() == talk.ask()
    assert again.case.notes == ["call back on Friday"]


def test_what_was_typed_cannot_carry_control_codes_into_the_record() -> None:
    talk = Interview()
    talk.hear("20 a minute\x1b]0;owned\x07 up\x1b[31m")
    talk.note("see\x1b[2J")
    assert "\x1b" not in json.dumps([event.to_json() for event in talk.events])
    assert talk.spec()["rate.normal"] == 20


def test_a_personal_value_stands_in_its_message_only() -> None:
    talk = Interview()
    talk.know("contact.email", "jo@example.org")
    assert talk.facts[0].value == "jo@example.org"
    assert talk.spec() == {}
    bodies = [event.to_json() for event in talk.events if event.kind != "message"]
    assert "jo@example.org" not in json.dumps(bodies)


def test_the_works_have_the_last_word_on_a_test() -> None:
    talk = Interview()
    talk.know("test.slip_angle", 24, who="works")
    assert talk.spec()["test.slip_angle"] == 24
    assert talk.facts[0].who == "works"


@pytest.mark.parametrize(
    ("field", "value"),
    [("rate.norml", 3), ("rate.normal", -3), ("product.type", "boxes"), ("handling.squeeze", "maybe")],
)
def test_a_fact_that_cannot_be_is_refused_with_the_way_to_mend_it(field: str, value: object) -> None:
    talk = Interview()
    with pytest.raises(SpecError) as refused:
        talk.know(field, value)
    assert refused.value.mend
    assert talk.events == []


def test_an_answer_to_no_question_of_ours_says_so() -> None:
    with pytest.raises(ValueError, match="no question"):
        Interview().answer("12", to="product.colour")


def test_the_title_is_what_travels_until_one_is_given() -> None:
    talk = Interview()
    empty = talk.title
    talk.hear(KNOWN)
    assert talk.title != empty
    assert "case" in talk.title
    talk.rename("Tea\x1b[31m to the loft")
    assert talk.title == "Tea to the loft"


@pytest.mark.parametrize(
    "tell",
    [
        lambda talk: talk.hear(KNOWN),
        lambda talk: [talk.hear(piece) for piece in reversed(KNOWN.replace("Hi, ", "").split(", "))],
    ],
    ids=["at once", "piece by piece, backwards"],
)
def test_it_does_not_matter_in_which_order_things_are_said(tell: Callable[[Interview], object]) -> None:
    talk = Interview()
    tell(talk)
    whole = Interview()
    whole.hear(KNOWN)
    assert talk.result().best == whole.result().best


def test_a_fact_is_mended_by_its_own_words_and_the_rest_stays() -> None:
    talk = Interview()
    talk.hear("16x12x10 inch cases, 30 lb, 25 a minute")
    before = talk.spec()
    talk.mend("product.weight", "40 lb")
    after = talk.spec()
    assert after["product.weight"] == pytest.approx(18.1436948)
    assert {k: v for k, v in after.items() if k != "product.weight"} == {
        k: v for k, v in before.items() if k != "product.weight"
    }
