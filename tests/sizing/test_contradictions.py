"""Facts about one thing that do not agree: named as a conflict, with what sizing went on with."""

from typing import Any

import pytest

from intake.sizing import size

PAIRS: dict[str, tuple[dict[str, Any], set[str], Any]] = {
    "length and diameter": (
        {"product.diameter": 0.9}, {"product.length", "product.diameter"}, 0.4,
    ),
    "rate and pieces": (
        {"rate.pieces": 6000.0, "product.pieces": 24}, {"rate.normal", "rate.pieces", "product.pieces"}, 20.0,
    ),
    "dry, at the pressure of a washdown": (
        {"cleaning.method": "dry", "cleaning.pressure": 7e6}, {"cleaning.method", "cleaning.pressure"}, "dry",
    ),
    "a limit far below the first mark": (
        {"handling.squeeze_limit": 20.0, "test.squeeze_mark": 900.0},
        {"handling.squeeze_limit", "test.squeeze_mark"}, 20.0,
    ),
    "a low centre that tips early": (
        {"product.centre_height": 0.1, "test.tip_angle": 30.0}, {"product.centre_height", "test.tip_angle"},
        pytest.approx(0.3464, abs=1e-4),
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", PAIRS)
def test_a_contradiction_is_named_with_what_was_taken(name: str, case_up: dict[str, Any]) -> None:
    facts, fields, taken = PAIRS[name]
    found = [conflict for conflict in size(case_up | facts).conflicts if set(conflict.fields) == fields]
    assert len(found) == 1
    assert found[0].taken == taken
    assert " " in found[0].why


@pytest.mark.parametrize(
    "facts",
    [
        {"rate.pieces": 480.0, "product.pieces": 24},
        {"cleaning.method": "high_pressure", "cleaning.pressure": 7e6},
        {"handling.squeeze_limit": 100.0, "test.squeeze_mark": 102.0},
        {"product.centre_height": 0.125, "test.tip_angle": 58.0},
    ],
)
def test_what_agrees_within_a_twentieth_is_no_contradiction(facts: dict[str, Any], case_up: dict[str, Any]) -> None:
    assert size(case_up | facts).conflicts == ()


def test_the_lower_force_and_the_higher_centre_count(case_up: dict[str, Any]) -> None:
    limited = size(case_up | {"handling.squeeze_limit": 20.0, "test.squeeze_mark": 900.0}).families["side_grip"]
    squeeze = limited.check("squeeze_force")
    assert squeeze is not None
    assert squeeze.limit == 20.0
    tall = size(case_up | {"product.centre_height": 0.1, "test.tip_angle": 30.0}).families["incline"].check("tip")
    assert tall is not None
    assert tall.uses["h"].value == pytest.approx(0.3464, abs=1e-4)


def test_two_heights_outrank_a_stated_rise_that_nearly_agrees(case_up: dict[str, Any]) -> None:
    found = size(case_up | {"rise.height": 3.26}).families["spiral"]
    assert found.figures["turns"].value * found.figures["rise_per_turn"].value == pytest.approx(3.25)
