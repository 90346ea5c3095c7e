"""A test on samples as people report it: its parts in any order, and slips that say what is missing."""

from datetime import date, timedelta

import pytest

from intake.desk.effect import Slip
from intake.desk.tests_on_samples import EXAMPLE, TESTS, Report, report_in, report_of, test_named
from intake.talk import Interview

named = test_named  # under its own name it would be collected as a test
del test_named


def report(words: str) -> Report:
    return report_in(Interview(), words)


def test_the_example_that_slips_show_is_taken() -> None:
    taken = report_in(Interview(), EXAMPLE.removeprefix("/test ").replace("2026-03-02", "today"))
    assert (taken.field, taken.value, taken.by) == ("test.slip_angle", 22, "R. Osei")
    assert (taken.on, taken.samples) == (date.today().isoformat(), "3 cartons of line 2")


@pytest.mark.parametrize(
    "words",
    [
        "slip angle 22 deg by R. Osei on yesterday with 3 cartons on a pallet",
        "slip angle 22 deg with 3 cartons on a pallet by R. Osei on yesterday",
        "slip angle 22 deg on yesterday, by R. Osei, with 3 cartons on a pallet",
    ],
)
def test_the_parts_come_in_any_order_and_samples_may_stand_on_a_pallet(words: str) -> None:
    taken = report(words)
    assert (taken.value, taken.by, taken.samples) == (22, "R. Osei", "3 cartons on a pallet")
    assert taken.on == (date.today() - timedelta(days=1)).isoformat()


def test_a_second_with_belongs_to_the_samples() -> None:
    assert report("slip angle 22 deg by me with 3 cartons with tape").samples == "3 cartons with tape"


def test_without_a_day_it_was_today() -> None:
    assert report("slip angle 22 deg by me with 3 cartons").on == date.today().isoformat()


@pytest.mark.parametrize("name", TESTS)
def test_every_test_goes_by_its_own_words(name: str) -> None:
    assert named(name) == name
    assert named(name.split(".")[1].replace("_", " ")) == name


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("slip angle 22 deg with 3 cartons", "Say who measured"),
        ("slip angle 22 deg by me", "Say on which samples"),
        ("slip angle much by me with 3 cartons", "is no single value of tested slip angle"),
        ("slip angle 20 to 25 deg by me with 3 cartons", "is no single value of tested slip angle"),
        ("slip angle by me with 3 cartons", "Write what it showed behind the test"),
        ("", "Write the test, what it showed, who measured"),
        ("hardness 22 by me with 3 cartons", "is no one test. There are: slip angle"),
        ("slip 22 deg by me with 3 cartons", "is no one test. There are: slip angle"),
        ("slip angle 22 deg by me on 2026-13-40 with 3 cartons", "is no day"),
        ("slip angle 22 deg by me with 3 cartons on 31/12", "is no day"),
        ("slip angle 22 deg by me on tomorrow with 3 cartons", "is still to come"),
    ],
)
def test_what_is_missing_or_wrong_is_said_with_an_example(words: str, told: str) -> None:
    with pytest.raises(Slip) as slip:
        report(words)
    assert told in str(slip.value)
    assert "slip angle 22 deg" in str(slip.value) or "Give a date" in str(slip.value)


def test_a_name_that_several_tests_share_lists_them_all() -> None:
    with pytest.raises(Slip) as slip:
        named("angle")
    assert "slip angle, tip angle" in str(slip.value)


def test_what_is_kept_says_who_measured_when_and_on_what() -> None:
    taken = report_of(
        Interview(), "test.slip_angle", "22 deg", by="R. Osei", on="2021-03-02", samples="3 \x1b[1mcartons"
    )
    assert taken.words == "slip angle 22 deg; measured by R. Osei on 2021-03-02, on 3 cartons"
