"""One line that says why a family is where it is."""

from collections.abc import Callable
from typing import Any

import pytest

from intake.interview.reasons import failing_reason, few, percent, verdict_reason
from intake.interview.wording import Sentences
from intake.sizing.result import Assumption, Check, Result
from intake.spec.folder import questions_folder

SAID = Sentences(questions_folder())


@pytest.mark.parametrize(
    ("check", "system", "words"),
    [
        (("rate", 140.0, 120.0, "1/min"), "us", "140/min is over its rate of 120/min"),
        (("weight", 25.0, 18.0, "kg"), "si", "25 kg is too heavy for it (at most 18 kg)"),
        (("weight", 22.679618, 18.143695, "kg"), "us", "50 lb is too heavy for it (at most 40 lb)"),
        (("rise_most", 12.0, 7.0, "m"), "si", "12 m of rise is above its 7 m"),
        (("room_length", 9.0, 3.0, "m"), "si", "it takes 9 m of length, and there is 3 m"),
    ],
)
def test_a_failed_figure_is_said_in_the_visitors_units(
    fails: Callable[..., Check], check: tuple[Any, ...], system: Any, words: str
) -> None:
    assert failing_reason(fails(*check), SAID, system) == words


def test_a_product_may_be_too_light(fails: Callable[..., Check]) -> None:
    found = fails("weight_least", 0.02, 0.1, "kg", "at_least")
    assert failing_reason(found, SAID, "si") == "20 g is too light for it (at least 100 g)"


def test_a_room_that_is_too_cold_is_said_in_degrees(fails: Callable[..., Check]) -> None:
    found = fails("temperature", 253.15, 274.15, "K", "at_least")
    assert "-20 °C" in failing_reason(found, SAID, "si")
    assert "-4 °F" in failing_reason(found, SAID, "us")


def test_a_gate_says_what_shuts_the_family_out(fails: Callable[..., Check]) -> None:
    assert failing_reason(fails("squeeze", False, True, "", "must_be"), SAID, "si") == (
        "the product may not be held by its sides"
    )
    washing = fails("washing", "high_pressure", "dry or wipe", "", "must_be")
    assert failing_reason(washing, SAID, "si") == ("it does not bear cleaning by high pressure (only dry or wipe)")


def test_a_check_that_nobody_worded_is_still_said(fails: Callable[..., Check]) -> None:
    said = failing_reason(fails("brand_new_check", 3.0, 2.0, "m"), SAID, "si")
    assert said == "brand new check: 3 m against 2 m"


def test_a_verdict_that_depends_names_the_facts_behind_its_assumptions(sized: Callable[..., Result]) -> None:
    assumption = Assumption(
        id="middling_grip", about=("product.surface",), test="test.slip_angle", low=0.4, typical=0.5, high=0.6,
        unit="1", values=None, basis="common practice, no source",
    )  # fmt: skip
    depends = {"verdict": "depends", "depends_on": ("middling_grip", "space.ceiling", "product.surface")}
    result = sized({"incline": depends}, assumptions=(assumption,))
    said = verdict_reason(result.families["incline"], result, SAID, "si")
    assert said == "material of its outside and clear height overhead"


def test_a_fit_says_how_much_room_its_tightest_check_has(sized: Callable[..., Result]) -> None:
    checks = (
        Check(id="pull", sense="at_most", value=88.0, limit=100.0, unit="N", passes=True),
        Check(id="rate", sense="at_most", value=10.0, limit=100.0, unit="1/min", passes=True),
    )
    result = sized({"incline": {"checks": checks}})
    assert verdict_reason(result.families["incline"], result, SAID, "si") == "tightest: pull, 12 % to spare"


def test_long_lists_are_cut_with_a_count() -> None:
    assert few(["a", "b", "c", "d"]) == "a, b, c and d"
    assert few(["a", "b", "c", "d", "e"]) == "a, b, c and 2 more"
    assert percent(0.125) == "12 %"
