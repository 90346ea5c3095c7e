"""What only a test can tell: wanted until it was made, with what is counted on until then and how many samples."""

from typing import Any

import pytest

from intake.advice import Brief, trials
from intake.advice.messages import tests_wanted as wanted
from intake.interview.reasons import shown
from intake.spec.flat import Spec


def brief(job: dict[str, Any]) -> Brief:
    return Brief(spec=Spec.from_flat(job), system="si")


MADE = {
    "test.slip_angle": 24.0, "test.tip_angle": 30.0, "test.squeeze_mark": 300.0, "test.grip_slip": 90.0,
    "test.transfers": True,
}  # fmt: skip


@pytest.fixture
def bottles() -> dict[str, Any]:
    """Small round bottles: friction, tipping, the grip and the transfers are all for a test."""
    return {
        "product.type": "bottle", "product.diameter": 0.06, "product.height": 0.2, "product.weight": 0.6,
        "product.surface": "plastic", "rate.peak": 100.0, "rise.height": 3.0, "rise.direction": "up",
        "rise.infeed_height": 0.8, "handling.squeeze": True,
    }  # fmt: skip


def test_each_test_that_is_wanted_has_its_line_and_stands_in_the_data(bottles: dict[str, Any]) -> None:
    one = brief(bottles)
    answer = trials(one)
    assert answer.data["tests"] == wanted(one.result, one.spec)
    assert len(answer.data["tests"]) >= 3
    for test in answer.data["tests"]:
        name = one.sentences.find(f"test.{test}")
        assert name is not None
        assert any(line.casefold().startswith(f"{name.casefold()}: ") for line in answer.lines), test


@pytest.mark.parametrize("test", sorted(MADE))
def test_a_test_that_was_made_is_wanted_no_longer(test: str, bottles: dict[str, Any]) -> None:
    before = trials(brief(bottles)).data["tests"]
    after = trials(brief(bottles | {test: MADE[test]})).data["tests"]
    assert test not in after
    assert set(after) <= set(before) | set(MADE)


def test_once_all_are_made_nothing_is_asked_for(bottles: dict[str, Any]) -> None:
    answer = trials(brief(bottles | MADE))
    assert answer.lines == ("No test is needed on what is known so far.",)
    assert answer.data == {"tests": []}


def test_what_is_counted_on_until_then_is_the_range_that_the_result_leans_on(cases: dict[str, Any]) -> None:
    one = brief(cases)
    leaned_on = {id for check in one.best.checks for id in check.assumes} if one.best is not None else set()
    friction = next(a for a in one.result.assumptions if a.test == "test.slip_angle" and a.id in leaned_on)
    low, high = (shown(end, friction.unit, "si") for end in (friction.low, friction.high))
    assert any(f"friction is counted at {low} to {high} until" in line for line in trials(one).lines)


def test_samples_are_asked_for_by_number_and_size_and_what_they_show_is_no_rule_for_others(
    cases: dict[str, Any],
) -> None:
    lines = trials(brief(cases)).lines
    assert any("20 of each size, 400 x 300 x 250 mm" in line for line in lines)
    assert lines[-1].startswith("What a test shows holds for the samples tested")


def test_before_a_machine_leads_the_tests_are_told_without_one() -> None:
    lines = trials(brief({"product.type": "bottle", "product.diameter": 0.06, "product.height": 0.2})).lines
    assert not lines[0].startswith("What only a test can tell, for")
