"""Facts as they are read, kept and sized on."""

import pytest

from intake.spec import Doubt, Fact, Heard, Spec, Value
from intake.spec.facts import Who


def test_a_fact_in_json_has_the_promised_shape() -> None:
    fact = Fact(field="rate.peak", low=45.0, high=45.0, said="up to 45/min", span=(12, 24))
    assert fact.to_json() == {
        "field": "rate.peak",
        "low": 45.0,
        "high": 45.0,
        "approx": False,
        "unit": "1/min",
        "said": "up to 45/min",
        "span": [12, 24],
        "size": 1,
    }


def test_a_word_has_a_value_in_place_of_two_ends() -> None:
    shape = Fact(field="handling.squeeze", value=False, said="no squeezing").to_json()
    assert shape == {"field": "handling.squeeze", "value": False, "said": "no squeezing", "span": None, "size": 1}


def test_hedged_and_spread_are_written_only_where_they_hold() -> None:
    shape = Fact(field="product.weight", low=8.0, high=14.0, spread=True, hedged=True).to_json()
    assert (shape["spread"], shape["hedged"]) == (True, True)


def test_a_reading_in_json_has_facts_doubts_and_what_was_not_read() -> None:
    heard = Heard(
        facts=(Fact(field="product.type", value="case"),),
        doubts=(Doubt(field="product.height", said="12", why="a bare number", ask="12 in or mm?"),),
        unread=("aisle 4",),
    )
    shape = heard.to_json()
    assert shape["doubts"] == [{"field": "product.height", "said": "12", "why": "a bare number", "ask": "12 in or mm?"}]
    assert shape["unread"] == ["aisle 4"]
    assert len(shape["facts"]) == 1


@pytest.mark.parametrize(
    ("fact", "value"),
    [
        (Fact(field="product.weight", low=10.0, high=10.0), Value(low=10.0, high=10.0)),
        (Fact(field="product.weight", low=10.0, high=10.0, approx=True), Value(low=9.0, high=11.0)),
        (Fact(field="product.weight", low=8.0, high=14.0, spread=True), Value(low=8.0, high=14.0, spread=True)),
        (Fact(field="product.weight", low=8.0, high=14.0, spread=True, approx=True), Value(low=8.0, high=14.0)),
        (Fact(field="product.weight", low=10.0, approx=True), Value(low=10.0)),
        (Fact(field="product.weight", high=10.0, spread=True), Value(high=10.0)),
        (Fact(field="temperature.room", low=-20.0, high=-20.0, approx=True), Value(low=-22.0, high=-18.0)),
        (Fact(field="product.pieces", low=24.0, high=24.0, approx=True), Value(low=21.0, high=27.0)),
        (Fact(field="product.type", value="case", hedged=True), Value(value="case", hedged=True)),
    ],
)
def test_what_was_said_becomes_what_sizing_sees(fact: Fact, value: Value) -> None:
    seen = fact.as_value(0.1)
    assert seen == value
    assert Spec.from_flat(Spec({(fact.field, 1): seen}).to_flat())[(fact.field, 1)] == seen


@pytest.mark.parametrize("who", ["visitor", "staff", "works"])
def test_the_same_thing_said_by_another_in_other_words_is_the_same(who: Who) -> None:
    first = Fact(field="product.weight", low=10.0, high=10.0, said="10 kg", span=(0, 5), message=1)
    assert first.same_as(Fact(field="product.weight", low=10.0, high=10.0, said="ten kilos", who=who))


@pytest.mark.parametrize(
    "other",
    [
        Fact(field="product.weight", low=10.0, high=12.0),
        Fact(field="product.weight", low=10.0, high=10.0, approx=True),
        Fact(field="product.weight", low=10.0, high=10.0, size=2),
        Fact(field="product.length", low=10.0, high=10.0),
    ],
)
def test_another_figure_field_or_size_is_not_the_same(other: Fact) -> None:
    assert not Fact(field="product.weight", low=10.0, high=10.0).same_as(other)
