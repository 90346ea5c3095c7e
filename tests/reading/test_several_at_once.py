"""Answers to several things asked at once: each word and figure goes to one of them."""

from typing import Any

import pytest

from intake.reading import read

PLACE = ("temperature.zone", "temperature.room", "site.hazardous_area")
ROOM = ("space.length", "space.width", "space.ceiling")
SIZE = ("product.length", "product.width", "product.height", "product.diameter", "product.weight")


def told(text: str, asked: tuple[str, ...] = ()) -> dict[str, Any]:
    return {fact.field: fact.value if fact.value is not None else fact.high for fact in read(text, asked=asked).facts}


def test_a_word_for_the_room_says_nothing_of_hazards() -> None:
    assert told("a normal room", PLACE) == {"temperature.zone": "ambient"}
    assert told("a normal room, no explosion zone", PLACE)["site.hazardous_area"] is False


@pytest.mark.parametrize("words", ["chilled, nope, 4 C", "no. It is chilled", "chilled; none; 38 F"])
def test_a_clause_of_its_own_is_the_only_yes_or_no(words: str) -> None:
    assert told(words, PLACE)["site.hazardous_area"] is False


def test_two_yes_or_no_at_once_are_not_told_apart_by_a_bare_no() -> None:
    assert "handling.invert" not in told("fine, no, dry", ("handling.squeeze", "handling.invert", "cleaning.method"))


@pytest.mark.parametrize(
    "words", ["12 x 8 ft and 16 ft high", "12 by 8 feet, 16 ft to the beam", "12 ft x 8 ft, beam bottom 16 ft"]
)
def test_three_lengths_about_the_room_are_no_product(words: str) -> None:
    found = told(words, ROOM)
    assert [round(found[name], 3) for name in ROOM] == [3.658, 2.438, 4.877]


def test_metres_and_feet_are_not_one_sum_over_a_comma() -> None:
    found = told("4 m x 3 m, 19 feet 8 inches clear", ROOM)
    assert (found["space.width"], round(found["space.ceiling"], 3)) == (3.0, 5.994)


def test_three_figures_with_slashes_and_a_unit_are_sizes_and_no_date() -> None:
    found = told("42/31/25 cm", SIZE)
    assert [found[f"product.{side}"] for side in ("length", "width", "height")] == [0.42, 0.31, 0.25]


def test_a_side_may_stand_behind_a_comma() -> None:
    found = told("420 mm lengthwise, 310 mm, crosswise to the belt, 250 mm from the belt to the top", SIZE)
    assert [found[f"product.{side}"] for side in ("length", "width", "height")] == [0.42, 0.31, 0.25]


def test_up_to_a_place_is_no_most() -> None:
    found = told("up to a mezzanine, 25 a minute, 32 at peak")
    assert (found["rate.normal"], found["rate.peak"]) == (25.0, 32.0)
    assert told("up to 45 a minute")["rate.peak"] == 45.0


def test_getting_back_to_somebody_is_no_way_out() -> None:
    assert told("let me get back to you on that", ("rise.turn",)) == {}
    assert told("back the way they came", ("rise.turn",)) == {"rise.turn": 180.0}
