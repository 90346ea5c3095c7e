"""Whole conversations: which questions are left out, which come first, and why."""

from collections.abc import Callable

import pytest

from intake.interview.question import Question
from intake.talk import Interview

FIRST = "Hi, 400 x 300 x 250 mm taped cases, 12 kg, up to a mezzanine"
KNOWN = f"{FIRST}. About 20 a minute, 24 at most, from 0.8 m to 3.8 m."


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
def test_the_choice_of_a_family_is_asked_for_before_what_engineering_needs(
    asked_to_the_end: Callable[[Interview], list[Question]],
) -> None:
    talk = Interview()
    talk.hear(KNOWN)
    asked = asked_to_the_end(talk)
    purposes = [question.purpose for question in asked if question.kind == "question"]
    assert "engineering" in purposes
    assert purposes == sorted(purposes, key=["basics", "best", "engineering"].index)
