"""Whole conversations: what was said is not asked again, and what is not known is kept."""

from collections.abc import Callable

from intake.interview.question import Question
from intake.spec.vocabulary import vocabulary
from intake.talk import Interview

FIRST = "Hi, 400 x 300 x 250 mm taped cases, 12 kg, up to a mezzanine"
KNOWN = f"{FIRST}. About 20 a minute, 24 at most, from 0.8 m to 3.8 m."


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


def test_nothing_is_asked_twice_and_the_talk_ends(asked_to_the_end: Callable[[Interview], list[Question]]) -> None:
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
