"""Answers to the question just asked."""

from collections.abc import Callable
from typing import Any

import pytest

from intake.reading import read

Facts = Callable[..., dict[str, Any]]


@pytest.mark.parametrize(
    ("word", "truth"),
    [
        ("yes", True),
        ("yep", True),
        ("sure, no problem", True),
        ("of course", True),
        ("no", False),
        ("nope", False),
        ("not really", False),
        ("absolutely not", False),
    ],
)
def test_yes_and_no_answer_the_question_asked(word: str, truth: bool, facts: Facts) -> None:
    assert facts(word, "handling.fragile") == {"handling.fragile": truth}


def test_yes_means_nothing_where_nothing_was_asked(facts: Facts) -> None:
    assert facts("yes") == {}


@pytest.mark.parametrize("text", ["don't know", "not sure, let me check", "no idea", "I'd have to ask", "TBD"])
def test_who_does_not_know_gives_no_fact(text: str, facts: Facts) -> None:
    assert facts(text, "rise.height") == {}
    assert facts(text, "handling.squeeze") == {}


def test_an_unsure_yes_is_hedged() -> None:
    (fact,) = read("should be ok", "handling.squeeze").facts
    assert fact.value is True
    assert fact.hedged


def test_a_bare_number_is_taken_only_where_its_unit_is_safe(facts: Facts) -> None:
    assert facts("25", "rate.normal") == {"rate.normal": 25}
    assert facts("480", "site.voltage") == {"site.voltage": 480}
    assert facts("12", "project.weeks") == {"project.weeks": 12}
    assert facts("12", "product.height") == {}
    assert facts("35", "product.weight") == {}


def test_a_bare_number_that_may_be_two_units_is_asked_back_with_both() -> None:
    (doubt,) = read("35", "product.weight").doubts
    assert [round(option.low or 0.0, 2) for option in doubt.options] == [15.88, 35.0]
    assert "pounds" in doubt.ask
    assert "kilograms" in doubt.ask


def test_an_answer_about_something_else_is_kept_under_its_own_field(facts: Facts) -> None:
    assert facts("we run 22 a minute, if that helps", "product.length") == {"rate.normal": 22}


def test_two_heights_asked_together_are_taken_in_order(facts: Facts) -> None:
    got = facts("30 inches and 14 feet", ["rise.infeed_height", "rise.discharge_height"])
    assert got["rise.infeed_height"] == pytest.approx(0.762)
    assert got["rise.discharge_height"] == pytest.approx(4.2672)


def test_twelve_dash_six_may_be_feet_and_inches_or_a_range() -> None:
    (doubt,) = read("12-6", "rise.discharge_height").doubts
    assert doubt.options[0].low == pytest.approx(3.81)


def test_a_text_field_keeps_the_answer_as_said(facts: Facts) -> None:
    assert facts(" a roller conveyor, 24 in wide ", "site.before")["site.before"] == "a roller conveyor, 24 in wide"
