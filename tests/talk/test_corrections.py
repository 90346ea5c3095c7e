"""Whole conversations: corrections override, contradictions are asked back."""

import pytest

from intake.talk import Interview

FIRST = "Hi, 400 x 300 x 250 mm taped cases, 12 kg, up to a mezzanine"
KNOWN = f"{FIRST}. About 20 a minute, 24 at most, from 0.8 m to 3.8 m."


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
