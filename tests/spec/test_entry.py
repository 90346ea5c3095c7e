"""What a flat spec refuses: each refusal names the key, what is wrong and how to mend it."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.spec import Spec, SpecError, vocabulary

REFUSED = [
    ("product.heigth", 0.3, "no such field", '"product.height"'),
    ("zzz", 0.3, "no such field", "fields.toml"),
    ("product.length", "0.4", '"0.4" is not a number', "number in m"),
    ("product.length", True, "true is not a number", "number in m"),
    ("product.length", -0.4, "-0.4 is negative", "number in m"),
    ("product.length", 0, "cannot be zero", "number in m"),
    ("product.length", float("nan"), "not a finite figure", "number in m"),
    ("product.length", float("-inf"), "not a finite figure", "number in m"),
    ("product.length", 1e13, "within reason", "number in m"),
    ("product.length", 10**400, "within reason", "number in m"),
    ("product.length", [0.4], "a range has two ends", "[low, high]"),
    ("product.length", [0.3, 0.4, 0.5], "a range has two ends", "[low, high]"),
    ("product.length", [None, None], "both ends are open", "leave the key out"),
    ("product.length", {}, "both ends are open", "leave the key out"),
    ("product.length", {"value": None}, "both ends are open", "leave the key out"),
    ("product.length", [0.5, 0.4], "the low end 0.5 is above the high end 0.4", "[low, high]"),
    ("product.length", [0.4, "x"], '"x" is not a number', "number in m"),
    ("product.length", {"lo": 0.4}, 'unknown part "lo"', "low, high, spread, value, hedged"),
    ("product.length", {"low": 0.4, "spread": "no"}, "spread and hedged are true or false", "hedged"),
    ("product.length", {"value": 0.4, "low": 0.3}, "beside it", "value"),
    ("product.length", {"value": {"value": 0.4}}, "beside it", "value"),
    ("product.type", {"value": "case", "spread": True}, "beside it", "value"),
    ("product.type", {"low": 1}, "beside it", "value"),
    ("product.type", "cases", '"cases" is not one of its choices', 'Did you mean "case"?'),
    ("product.type", "zzz", '"zzz" is not one of its choices', "Accepted: case, carton"),
    ("product.type", 4, "4 is not a word", "Accepted: case, carton"),
    ("product.type", ["case"], '["case"] is not a word', "Accepted: case, carton"),
    ("site.before", 4, "4 is not a word", "text in quotes"),
    ("product.closed", "yes", '"yes" is not true or false', "true or false"),
    ("product.closed", 1, "1 is not true or false", "true or false"),
    ("product.closed", {"value": None, "hedged": True}, "null is not true or false", "true or false"),
    ("product.sizes", 2.5, "2.5 is not a whole number", "whole number"),
    ("temperature.room", -300, "below absolute zero", "number in degC"),
    ("rate.peak@2", 40, "only product facts have further sizes", "product.length@2"),
    ("product.length@0", 0.4, "further sizes", "product.length@2"),
    ("product.length@100", 0.4, "further sizes", "product.length@2"),
    ("product.length@two", 0.4, "further sizes", "product.length@2"),
    ("product.length@²", 0.4, "further sizes", "product.length@2"),
]


@pytest.mark.parametrize(("key", "value", "what", "mend"), REFUSED)
def test_a_refusal_names_the_key_what_is_wrong_and_how_to_mend_it(key: str, value: Any, what: str, mend: str) -> None:
    with pytest.raises(SpecError) as refused:
        Spec.from_flat({key: value})
    assert refused.value.field == key
    assert what in refused.value.what
    assert mend in refused.value.mend
    assert str(refused.value) == f"{key}: {refused.value.what}. {refused.value.mend}"


def test_an_unknown_field_is_refused_even_where_it_says_nothing() -> None:
    with pytest.raises(SpecError):
        Spec.from_flat({"product.heigth": None})


@pytest.mark.parametrize(
    "flat",
    [
        {"product.length": 0.4, "product": {"length": 0.5}},
        {"product": {"length": 0.5}, "product.length": 0.4},
        {"product.length": 0.4, "product.length@1": 0.5},
    ],
)
def test_a_fact_given_twice_is_refused_rather_than_the_last_one_taken(flat: dict[str, Any]) -> None:
    with pytest.raises(SpecError, match="given twice"):
        Spec.from_flat(flat)


@pytest.mark.parametrize("flat", [[], "product.length", 4, None])
def test_what_is_no_table_is_refused(flat: Any) -> None:
    with pytest.raises(SpecError, match="not a table"):
        Spec.from_flat(flat)


def test_a_whole_number_too_long_to_print_is_refused() -> None:
    for flat in ({"product.length": 10**5000}, {"product.type": 10**5000}, {"product.closed": 10**5000}):
        with pytest.raises(SpecError):
            Spec.from_flat(flat)


@pytest.mark.parametrize("hostile", ["\x1b[2Jcase", "case\nlater", "case" * 10_000, "case\u202e"])
def test_a_refusal_is_one_harmless_line_whatever_was_given(hostile: str) -> None:
    for flat in ({"product.type": hostile}, {hostile: 1}, {"product.length": hostile}):
        with pytest.raises(SpecError) as refused:
            Spec.from_flat(flat)
        line = str(refused.value)
        assert "\x1b" not in line
        assert "\u202e" not in line
        assert "\n" not in line
        assert len(line) < 600


LETTERS = "pé@.\x1b\n"
PLAIN = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(LETTERS, max_size=8),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.sampled_from(["low", "high", "value", "spread", "hedged"]) | st.text(LETTERS, max_size=5),
            inner,
            max_size=3,
        )
    ),
    max_leaves=6,
)


@given(
    flat=st.dictionaries(
        st.sampled_from([*vocabulary(), "product", "rate", "product.length@2"]) | st.text(LETTERS, max_size=12),
        PLAIN,
        max_size=3,
    )
)
def test_anything_is_either_taken_or_refused_with_a_spec_error(flat: dict[str, Any]) -> None:
    try:
        taken = Spec.from_flat(flat)
    except SpecError:
        return
    assert Spec.from_flat(taken.to_flat()) == taken
