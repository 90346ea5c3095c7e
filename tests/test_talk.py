"""Whole conversations through the real reader and the real sizing: facts, questions asked, verdicts."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from intake import sizing
from intake.interview.question import Question
from intake.sizing import size
from intake.sizing.result import Result
from intake.spec.flat import Spec, SpecError
from intake.spec.vocabulary import vocabulary
from intake.talk import Interview

FIRST = "Hi, 400 x 300 x 250 mm taped cases, 12 kg, up to a mezzanine"
KNOWN = f"{FIRST}. About 20 a minute, 24 at most, from 0.8 m to 3.8 m."


@pytest.fixture
def sampled() -> None:
    """Asked for by the tests that want the sizing with its samples."""


@pytest.fixture(autouse=True)
def without_samples(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> None:
    """The real sizing, but without its 256 samples, which take most of the time of these tests."""

    def bare(spec: Spec, *, worth: bool, questions: Path) -> Result:
        return size(spec, questions=questions)

    if "sampled" not in request.fixturenames:
        monkeypatch.setattr(sizing, "size", bare)


def asked_to_the_end(talk: Interview, reply: str = "don't know", most: int = 80) -> list[Question]:
    """Answers everything with the same words until nothing is left to ask."""
    asked = []
    while (question := talk.ask()) is not None:
        asked.append(question)
        assert len(asked) < most, [question.id for question in asked]
        talk.answer(reply)
    return asked


# --- what was said is not asked again ---


def test_a_first_message_gives_facts_with_their_words() -> None:
    talk = Interview()
    heard = talk.hear(FIRST)
    assert {fact.field for fact in heard.facts} >= {
        "product.type", "product.length", "product.width", "product.height", "product.weight", "rise.direction"
    }  # fmt: skip
    assert all(FIRST[slice(*fact.span)] == fact.said for fact in talk.facts if fact.span)
    assert all(fact.who == "visitor" and fact.message is not None for fact in talk.facts)


def test_rate_and_rise_are_asked_before_anything_else() -> None:
    talk = Interview()
    talk.hear(FIRST)
    first = talk.ask()
    assert first is not None
    assert set(first.fields) >= {"rate.normal", "rate.peak"}
    talk.answer("20 a minute, 24 at most")
    second = talk.ask()
    assert second is not None
    assert "rise.height" in second.fields or "rise.discharge_height" in second.fields
    talk.answer("0.8 m and 3.8 m")
    assert talk.result().best is not None


def test_nothing_is_asked_twice_and_the_talk_ends() -> None:
    talk = Interview()
    talk.hear(KNOWN)
    stood = {fact.field for fact in talk.facts}
    asked = asked_to_the_end(talk)
    fields = [name for question in asked for name in question.fields]
    assert len(fields) == len(set(fields))
    assert not stood & set(fields)
    assert len(asked) > 3


def test_asking_again_without_an_answer_gives_the_same_question_and_no_new_event() -> None:
    talk = Interview()
    talk.hear(FIRST)
    first, events = talk.ask(), len(talk.events)
    assert talk.ask() == first
    assert len(talk.events) == events


def test_an_answer_may_bring_more_than_was_asked() -> None:
    talk = Interview()
    talk.hear(FIRST)
    talk.ask()
    talk.answer("20 a minute, 24 at most. The ceiling is at 5 m")
    assert talk.spec()["rate.peak"] == 24
    assert talk.spec()["space.ceiling"] == 5
    assert not any("space.ceiling" in question.fields for question in talk.open_questions())


# --- don't know, later, back, undo ---


def test_what_the_visitor_does_not_know_becomes_a_follow_up_and_is_not_asked_again() -> None:
    talk = Interview()
    talk.hear(KNOWN)
    question = talk.ask()
    assert question is not None
    talk.unknown()
    assert not any(set(open_one.fields) & set(question.fields) for open_one in talk.open_questions())
    points = {point.field: point.state for point in talk.follow_ups()}
    assert {points.get(name) for name in question.fields} == {"unknown"}


def test_a_promise_to_check_is_kept_apart_from_not_knowing() -> None:
    talk = Interview()
    talk.hear(KNOWN)
    question = talk.ask()
    assert question is not None
    talk.answer("let me check with maintenance")
    assert talk.case.later == set(question.fields)
    assert any(point.state == "later" for point in talk.follow_ups())


def test_a_warning_is_no_follow_up() -> None:
    talk = Interview()
    talk.hear(f"{KNOWN} We need it in 4 weeks.")
    assert "lead_time_risk" in talk.result().flags
    assert talk.follow_ups()
    assert all((point.field or point.test) in vocabulary() for point in talk.follow_ups())


def test_a_fact_that_comes_later_is_no_follow_up_any_more() -> None:
    talk = Interview()
    talk.hear(KNOWN)
    talk.put("space.ceiling")
    talk.answer("no idea")
    assert "space.ceiling" in talk.case.unknown
    talk.hear("ah, the ceiling is at 6 m")
    assert "space.ceiling" not in talk.case.unknown
    assert talk.spec()["space.ceiling"] == 6


def test_back_takes_the_last_answer_back_and_asks_again() -> None:
    talk = Interview()
    talk.hear(FIRST)
    question = talk.ask()
    talk.answer("20 a minute, 24 at most")
    talk.ask()
    talk.answer("back")
    assert "rate.normal" not in talk.spec()
    again = talk.current
    assert question is not None
    assert again is not None
    assert again.id == question.id


def test_back_leaves_alone_what_was_volunteered_since() -> None:
    talk = Interview()
    talk.hear(FIRST)
    talk.put("rate")
    talk.answer("20 a minute, 24 at most")
    talk.know("space.ceiling", 5)
    question = talk.back()
    assert question is not None
    assert question.id == "rate"
    assert "rate.normal" not in talk.spec()
    assert talk.spec()["space.ceiling"] == 5


def test_undo_and_redo_go_answer_by_answer() -> None:
    talk = Interview()
    talk.hear(FIRST)
    before = talk.spec()
    talk.ask()
    talk.answer("20 a minute, 24 at most")
    after = talk.spec()
    assert talk.undo()
    assert talk.spec() == before
    assert talk.redo()
    assert talk.spec() == after
    assert not talk.redo()
    assert talk.undo()
    assert talk.undo()
    assert talk.spec() == {}
    assert not talk.undo()


def test_something_new_said_ends_the_way_forward() -> None:
    talk = Interview()
    talk.know("rate.normal", 20)
    talk.undo()
    talk.know("rate.normal", 30)
    assert not talk.redo()
    assert talk.spec() == {"rate.normal": 30}


# --- corrections and contradictions ---


@pytest.mark.parametrize("words", ["sorry, 45 a minute", "correction: 45 a minute", "I meant 45 a minute"])
def test_a_correction_overrides_without_a_question(words: str) -> None:
    talk = Interview()
    talk.hear(FIRST)
    talk.hear("35 a minute")
    talk.hear(words)
    assert talk.spec()["rate.normal"] == 45
    assert not talk.case.quarrels


def test_a_bare_correction_speaks_of_the_last_answer() -> None:
    talk = Interview()
    talk.hear(FIRST)
    talk.put("rate")
    talk.answer("35 a minute")
    talk.ask()
    talk.answer("sorry, 45")
    assert talk.spec()["rate.normal"] == 45


def test_another_figure_volunteered_later_is_asked_back_with_both() -> None:
    talk = Interview()
    talk.hear(KNOWN)
    talk.hear("it weighs 15 kg")
    question = talk.ask()
    assert question is not None
    assert question.kind == "conflict"
    assert question.fields == ("product.weight",)
    assert [option.label for option in question.options] == ["12 kg", "15 kg"]
    talk.answer("the first")
    assert talk.spec()["product.weight"] == 12
    assert not talk.case.quarrels


def test_a_conflict_passed_over_keeps_what_stands_and_is_quiet() -> None:
    talk = Interview()
    talk.hear(KNOWN)
    talk.hear("it weighs 15 kg")
    assert talk.ask() is not None
    talk.unknown()
    assert talk.spec()["product.weight"] == 15
    assert all(question.kind == "question" for question in talk.open_questions())


def test_an_answer_to_its_own_question_settles_a_fact() -> None:
    talk = Interview()
    talk.hear(KNOWN)
    talk.answer("15 kg", to="product.weight")
    assert talk.spec()["product.weight"] == 15
    assert not talk.case.quarrels


def test_heights_against_the_direction_are_asked_back() -> None:
    talk = Interview()
    for field, value in {"rise.direction": "up", "rise.infeed_height": 4.0, "rise.discharge_height": 1.0}.items():
        talk.know(field, value)
    question = talk.ask()
    assert question is not None
    assert question.kind == "conflict"
    assert "rise.direction" in question.fields
    talk.answer("down")
    assert talk.spec()["rise.direction"] == "down"
    assert not any(open_one.kind == "conflict" for open_one in talk.open_questions())


def test_a_bare_figure_is_a_doubt_and_its_unit_settles_it() -> None:
    talk = Interview()
    talk.hear(FIRST)
    talk.put("space.ceiling")
    talk.answer("15")
    assert "space.ceiling" not in talk.spec()
    question = talk.ask()
    assert question is not None
    assert question.kind == "doubt"
    talk.answer("feet")
    assert talk.spec()["space.ceiling"] == pytest.approx(4.572)
    assert not talk.case.doubts


def test_a_weight_of_a_whole_pallet_is_asked_back_and_yes_leaves_it() -> None:
    talk = Interview()
    talk.hear(KNOWN.replace("12 kg", "400 kg"))
    question = talk.ask()
    assert question is not None
    assert question.id == "density:product.weight"
    talk.answer("yes, per case")
    assert talk.spec()["product.weight"] == 400
    assert not any(open_one.id == question.id for open_one in talk.open_questions())


def test_a_weight_of_a_whole_pallet_is_put_right_by_the_answer() -> None:
    talk = Interview()
    talk.hear(KNOWN.replace("12 kg", "400 kg"))
    talk.ask()
    talk.answer("12 kg per case")
    assert talk.spec()["product.weight"] == 12
    assert not any(question.kind != "question" for question in talk.open_questions())


# --- skipping ---


def squeeze_left_out(talk: Interview) -> str | None:
    found = (left.why for left in talk.skipped if "handling.squeeze_limit" in left.fields)
    return next(found, None)


def test_sides_that_may_not_be_held_end_the_questions_about_squeezing() -> None:
    talk = Interview()
    talk.hear(KNOWN)
    assert squeeze_left_out(talk) is None
    talk.know("handling.squeeze", False)
    assert talk.result().families["side_grip"].verdict == "out"
    assert squeeze_left_out(talk)
    assert not any("handling.squeeze_limit" in question.fields for question in talk.open_questions())


def test_a_correction_that_brings_a_family_back_brings_its_questions_back() -> None:
    talk = Interview()
    talk.hear(KNOWN)
    talk.know("handling.squeeze", False)
    assert squeeze_left_out(talk)
    talk.know("handling.squeeze", True)
    assert squeeze_left_out(talk) is None


def test_a_family_out_by_its_pace_is_named_as_the_reason() -> None:
    talk = Interview()
    talk.hear("bottles, 80 x 80 x 200 mm, 1 kg, glass, 310 a minute, 320 at most, up 3 m from 0.9 m")
    assert talk.result().families["side_grip"].verdict == "out"
    reasons = [left.why for left in talk.skipped if left.fields == ("handling.squeeze_limit",)]
    assert len(reasons) == 1
    assert "no side-grip elevator left" in reasons[0]
    assert "/min" in reasons[0]


def test_every_question_left_out_says_why() -> None:
    talk = Interview()
    talk.hear(KNOWN)
    left = [*talk.skipped, *talk.set_aside]
    assert left
    assert not [one for one in left if "{" in one.why or one.why.endswith(": ") or len(one.why) < 10]


def test_a_question_set_aside_is_one_call_away() -> None:
    talk = Interview()
    talk.hear(KNOWN)
    aside = talk.set_aside[0]
    assert talk.put(aside.question).id == aside.question
    current = talk.current
    assert current is not None
    assert current.id == aside.question


def test_a_freezer_refers_out_and_ends_the_talk() -> None:
    talk = Interview()
    talk.hear(KNOWN)
    talk.hear("it stands in a freezer at -20 F")
    result = talk.result()
    assert result.best is None
    assert result.refer_out
    assert [question for question in talk.open_questions() if question.kind == "question"] == []


@pytest.mark.usefixtures("sampled")
def test_the_choice_of_a_family_is_asked_for_before_what_engineering_needs() -> None:
    talk = Interview()
    talk.hear(KNOWN)
    asked = asked_to_the_end(talk)
    purposes = [question.purpose for question in asked if question.kind == "question"]
    assert "engineering" in purposes
    assert purposes == sorted(purposes, key=["basics", "best", "engineering"].index)


# --- the record ---


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
