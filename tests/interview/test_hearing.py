"""Answers to questions for several things at once, to doubts, and half-answers."""

import pytest

from intake.talk import Interview

CASES = "400 x 300 x 250 mm taped cases, 12 kg, up"


@pytest.fixture
def talk() -> Interview:
    talk = Interview()
    talk.hear(CASES)
    return talk


@pytest.mark.parametrize("words", ["0.8 m and 3.8 m", "0.8 m in, 3.8 m out", "800 mm, then 3.8 m"])
def test_bare_heights_are_taken_in_the_order_they_were_asked(talk: Interview, words: str) -> None:
    talk.put("rise_heights")
    heard = talk.answer(words)
    assert talk.spec()["rise.infeed_height"] == pytest.approx(0.8)
    assert talk.spec()["rise.discharge_height"] == pytest.approx(3.8)
    assert all(words[slice(*fact.span)] == fact.said for fact in heard.facts if fact.span)
    assert heard.unread == ()


def test_one_figure_for_several_is_asked_back_and_named(talk: Interview) -> None:
    talk.put("rise_heights")
    talk.answer("3 m")
    assert not {"rise.height", "rise.infeed_height", "rise.discharge_height"} & set(talk.spec())
    question = talk.ask()
    assert question is not None
    assert question.kind == "doubt"
    assert [option.label for option in question.options] == ["infeed height", "discharge height", "rise"]
    talk.answer("that's the rise")
    assert talk.spec()["rise.height"] == pytest.approx(3.0)
    assert talk.case.doubts == []
    assert next(fact for fact in talk.facts if fact.field == "rise.height").said == "3 m"


def test_dimensions_of_a_product_are_never_taken_by_order() -> None:
    talk = Interview()
    talk.put("product_size")
    talk.answer("8 in and 3 in")
    assert not {"product.length", "product.width"} & set(talk.spec())


def test_a_figure_that_answers_something_else_is_left_to_it(talk: Interview) -> None:
    assert talk.put("space_floor").fields == ("space.length", "space.width", "space.ceiling")
    talk.answer("no idea, but the ceiling is at 5 m")
    assert talk.spec()["space.ceiling"] == 5
    assert "space.length" not in talk.spec()
    assert {"space.length", "space.width"} <= talk.case.unknown


def test_the_first_of_two_texts_is_taken_and_the_second_still_asked(talk: Interview) -> None:
    talk.put("site_neighbours")
    talk.answer("a case sealer")
    assert talk.spec()["site.before"] == "a case sealer"
    assert "site.after" not in talk.spec()
    again = talk.put("site_neighbours")
    assert again.fields == ("site.after",)


def test_a_guess_after_not_knowing_is_taken_as_unsure(talk: Interview) -> None:
    talk.put("space_ceiling")
    words = "not sure, maybe 5 m"
    talk.answer(words)
    fact = next(fact for fact in talk.facts if fact.field == "space.ceiling")
    assert (fact.low, fact.hedged) == (5, True)
    assert fact.span is not None
    assert words[slice(*fact.span)] == fact.said


def test_an_answer_that_says_nothing_leaves_the_question_open(talk: Interview) -> None:
    question = talk.put("space_ceiling")
    talk.answer("what a lovely day")
    current = talk.current
    assert current is not None
    assert talk.put(question.id) == question
    assert not talk.case.unknown


@pytest.mark.parametrize(
    ("words", "metres"), [("feet", 4.572), ("15 ft", 4.572), ("the first", 4.572), ("in metres", 15.0)]
)
def test_a_bare_figure_is_settled_by_its_unit_by_its_place_or_anew(talk: Interview, words: str, metres: float) -> None:
    talk.put("space_ceiling")
    talk.answer("15")
    assert "space.ceiling" not in talk.spec()
    question = talk.ask()
    assert question is not None
    assert question.fields == ("space.ceiling",)
    talk.answer(words)
    assert talk.spec()["space.ceiling"] == pytest.approx(metres)


def test_not_knowing_which_unit_was_meant_leaves_the_field_unknown(talk: Interview) -> None:
    talk.put("space_ceiling")
    talk.answer("15")
    talk.ask()
    talk.answer("don't know")
    assert talk.case.doubts == []
    assert "space.ceiling" in talk.case.unknown


def test_a_slow_answer_is_no_correction(talk: Interview) -> None:
    talk.know("rise.infeed_height", 0.8)
    talk.put("space_ceiling")
    talk.answer("hmm, 5 m")
    assert talk.spec()["space.ceiling"] == 5
    assert talk.spec()["rise.infeed_height"] == 0.8


@pytest.mark.parametrize(
    ("words", "infeed", "discharge"),
    [
        ('31.5" TOR at the infeed end, 4.2 m', 0.8001, 4.2),
        ("4.2 m where it leaves, 0.8 m", 0.8, 4.2),
    ],
)
def test_two_heights_go_by_the_end_that_one_of_them_names_else_by_order(
    talk: Interview, words: str, infeed: float, discharge: float
) -> None:
    talk.put("rise_heights")
    talk.answer(words)
    assert talk.spec()["rise.infeed_height"] == pytest.approx(infeed)
    assert talk.spec()["rise.discharge_height"] == pytest.approx(discharge)


def test_the_last_figure_goes_to_the_last_field_of_the_breath() -> None:
    talk = Interview()
    talk.put("product_size")
    talk.answer("420 mm long, 310 mm wide, ~250 mm, 11 kg")
    assert talk.spec()["product.height"]["low"] < 0.25 < talk.spec()["product.height"]["high"]
