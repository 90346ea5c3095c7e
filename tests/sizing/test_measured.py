"""Tests on samples outrank assumptions about the same thing, and about nothing else."""

from math import radians, tan
from typing import Any

import pytest

from intake.sizing import size


@pytest.mark.parametrize(
    ("fact", "value", "assumption", "family", "check", "symbol", "shown"),
    [
        ("test.slip_angle", 24.0, "belt_friction_board", "spiral", "slip", None, tan(radians(24.0))),
        ("test.tip_angle", 40.0, None, "incline", "tip", "h", 0.4 / (2 * tan(radians(40.0)))),
        ("test.squeeze_mark", 333.0, "squeeze_limit_other_wall", "side_grip", "squeeze_force", None, 333.0),
        ("test.grip_slip", 60.0, "grip_friction_dry", "side_grip", "squeeze_force", "mu_grip", 8.0 * 9.80665 / 120.0),
    ],
)
def test_a_test_takes_the_place_of_the_assumption_and_is_named(
    fact: str, value: float, assumption: str | None, family: str, check: str, symbol: str | None, shown: float,
    case_up: dict[str, Any],
) -> None:  # fmt: skip
    spec = {key: fact for key, fact in case_up.items() if key != "handling.squeeze_limit"}
    before, after = size(spec), size(spec | {fact: value})
    if assumption is not None:
        assert assumption in {one.id for one in before.assumptions}
        assert assumption not in {one.id for one in after.assumptions}
    found = after.families[family].check(check)
    assert found is not None
    assert fact in found.source
    assert (found.limit if symbol is None else found.uses[symbol].value) == pytest.approx(shown)


def test_a_slip_test_on_the_belt_says_nothing_of_the_grip(case_up: dict[str, Any]) -> None:
    before, after = size(case_up), size(case_up | {"test.slip_angle": 8.0})
    one, other = (r.families["side_grip"].check("squeeze_force") for r in (before, after))
    assert one is not None
    assert other is not None
    assert one.value == other.value


def test_the_size_that_hurts_is_named(case_up: dict[str, Any]) -> None:
    two = case_up | {
        "product.length@2": 0.5,
        "product.width@2": 0.35,
        "product.height@2": 0.3,
        "product.weight@2": 40.0,
    }
    found = size(two).families["spiral"]
    weight = found.check("weight")
    assert weight is not None
    assert weight.size == 2
    assert any("(product size 2)" in line for line in found.because)
    assert found.figures["pitch"].value - found.figures["gap"].value == pytest.approx(0.5)


def test_both_ways_the_worse_one_is_shown_and_named(case_up: dict[str, Any]) -> None:
    ways = {way: size({**case_up, "rise.direction": way}) for way in ("both",)}
    up = size(case_up)
    for name, found in ways["both"].families.items():
        pull = found.figures["pull"]
        if pull.value is not None and up.families[name].figures["pull"].value is not None:
            assert pull.direction in ("up", "down")
            assert pull.value >= up.families[name].figures["pull"].value * (1.0 - 1e-9)
