"""What is a fact of the need and what is not: questions, suppositions, the past, other machines, denials."""

from collections.abc import Callable
from typing import Any

import pytest

from intake.reading import read

Facts = Callable[..., dict[str, Any]]


@pytest.mark.parametrize(
    "text",
    [
        "could it go 20 ft?",
        "What if we went to 60 lb bags?",
        "Is 40 a minute too much for it?",
        "The old machine lifted 12 ft.",
        "our competitor runs 80 a minute",
        "We used to run 18 cases a minute.",
        "We thought about going to 20 ft.",
        "How tall can it be? 30 ft?",
        "Last year it was 30 lb.",
    ],
)
def test_what_is_asked_supposed_or_past_is_no_figure_of_the_need(text: str, facts: Facts) -> None:
    assert [name for name, value in facts(text).items() if not isinstance(value, str)] == []


def test_a_statement_before_a_question_stands(facts: Facts) -> None:
    assert facts("We run 40 a minute, is that too fast for you?") == {"rate.normal": 40}


def test_a_denied_choice_is_no_fact(facts: Facts) -> None:
    assert facts("It is not a freezer and there is no washdown.") == {}


def test_a_denied_yes_is_a_no(facts: Facts) -> None:
    assert facts("They cannot be squeezed and they are not fragile.") == {
        "handling.squeeze": False,
        "handling.fragile": False,
    }


def test_a_correction_takes_the_place_of_what_it_corrects(facts: Facts) -> None:
    assert facts("25 a minute... sorry, 35") == {"rate.normal": 35}
    assert facts("from 30 in, no wait, 36 in, to 12 ft")["rise.infeed_height"] == pytest.approx(0.9144)


@pytest.mark.parametrize(
    ("text", "corrects"),
    [("sorry, 45", True), ("I meant 14 ft", True), ("Sorry for the late reply. 14 ft", False), ("14 ft", False)],
)
def test_a_message_tells_whether_it_corrects(text: str, corrects: bool) -> None:
    assert read(text, "rise.height").corrects is corrects


def test_spread_and_doubt_are_told_apart() -> None:
    facts = {fact.field: fact for fact in read("cases from 8 to 14 kg, 40 to 45 a minute").facts}
    assert facts["product.weight"].spread
    assert not facts["rate.normal"].spread


def test_containers_sizes_are_no_weights(facts: Facts) -> None:
    assert "product.weight" not in facts("24x 500 ml bottles, 12 fl oz cans and 1.5 L jugs")


def test_a_conversion_in_brackets_counts_once(facts: Facts) -> None:
    assert facts("20 kg (44 lb) each") == {"product.weight": 20}


def test_what_no_fact_used_is_shown_as_unread() -> None:
    heard = read("30 lb each. Belt speed there is 65 fpm.")
    assert [fact.field for fact in heard.facts] == ["product.weight"]
    assert heard.unread == ("Belt speed there is 65 fpm",)


def test_quoted_mail_and_signatures_give_no_facts(facts: Facts) -> None:
    signed = "12 lb each.\n\nBest regards,\nIna Holm\nHolm Candles\n+46 8 555 0101"
    text = f"{signed}\n\nOn Monday Tove wrote:\nhow about 40 lb?"
    got = facts(text)
    assert got["product.weight"] == pytest.approx(5.4431, rel=1e-3)
    assert got["contact.name"] == "Ina Holm"
    assert got["contact.company"] == "Holm Candles"


def test_two_weights_are_asked_back_not_chosen() -> None:
    heard = read("the case is 30 lb. The case weighs 45 lb.")
    assert "product.weight" not in {fact.field for fact in heard.facts}
    assert [doubt.field for doubt in heard.doubts] == ["product.weight"]


def test_a_misspelt_word_is_understood_and_a_like_one_is_not(facts: Facts) -> None:
    assert facts("corrugatd cases") == {"product.type": "case", "product.surface": "corrugated"}
    assert facts("the cartoon was funny") == {}
