"""The vocabulary of facts."""

import pytest

from intake.spec import field, nearest, vocabulary

UNITS = {"m", "kg", "1/min", "deg", "N", "degC", "Pa", "V", "Hz", "h/day", "week"}


def test_every_quantity_has_a_canonical_unit_and_nothing_else_has_one() -> None:
    for known in vocabulary().values():
        if known.kind == "quantity":
            assert known.unit in UNITS, known.id
        else:
            assert known.unit == ("1" if known.kind == "count" else ""), known.id


def test_choices_stand_on_choice_fields_only_and_are_distinct_stored_words() -> None:
    for known in vocabulary().values():
        assert (known.kind == "choice") == bool(known.choices), known.id
        assert len(set(known.choices)) == len(known.choices)
        assert all(word.replace("_", "").isalpha() and word.islower() for word in known.choices)


def test_only_contact_facts_are_personal() -> None:
    assert {f.id for f in vocabulary().values() if f.personal} == {
        "contact.name",
        "contact.company",
        "contact.email",
        "contact.phone",
    }


def test_the_order_is_that_of_the_file() -> None:
    branches = list(dict.fromkeys(f.branch for f in vocabulary().values()))
    assert branches == [
        "product",
        "rate",
        "rise",
        "space",
        "handling",
        "test",
        "temperature",
        "cleaning",
        "site",
        "project",
        "contact",
    ]


def test_the_vocabulary_cannot_be_changed_by_its_readers() -> None:
    with pytest.raises(TypeError):
        vocabulary()["product.colour"] = field("product.type")  # type: ignore[index]  # the point of the test


@pytest.mark.parametrize(
    ("slip", "meant"),
    [("product.heigth", "product.height"), ("rate.peek", "rate.peak"), ("rise.hieght", "rise.height")],
)
def test_a_slip_of_the_pen_finds_the_field_that_was_meant(slip: str, meant: str) -> None:
    assert nearest(slip) == meant


def test_a_word_like_no_field_finds_none() -> None:
    assert nearest("zzz") is None
    assert nearest("corugated", ("corrugated", "film")) == "corrugated"


def test_an_unknown_field_is_a_key_error() -> None:
    with pytest.raises(KeyError):
        field("product.colour")
