"""How high and how fast: at the value every check passes, 1 % more fails, and what stops it is said."""

from collections.abc import Callable
from typing import Any

import pytest
from scipy.optimize import brentq

from intake.sizing import Largest, largest_rate, largest_rise, size
from intake.sizing.result import FamilyResult


def at_rise(spec: dict[str, Any], family: str, rise: float) -> FamilyResult:
    low = min(spec["rise.infeed_height"], spec["rise.discharge_height"])
    ends = ("rise.infeed_height", "rise.discharge_height")
    lower, upper = ends if spec["rise.direction"] == "up" else reversed(ends)
    return size(spec | {lower: low, upper: low + rise}).families[family]


def at_rate(spec: dict[str, Any], family: str, rate: float) -> FamilyResult:
    return size(spec | {"rate.peak": rate, "rate.normal": min(rate, spec["rate.normal"])}).families[family]


def holds(found: FamilyResult) -> bool:
    return all(check.passes is not False for check in found.checks if not check.warns) and found.verdict != "out"


Reached = list[tuple[dict[str, Any], str, Largest, Largest]]


@pytest.mark.parametrize(("which", "at", "end"), [(2, at_rise, 60.0), (3, at_rate, 2000.0)], ids=["rise", "rate"])
def test_at_the_largest_every_check_passes_and_a_hundredth_more_fails(
    which: int, at: Callable[[dict[str, Any], str, float], FamilyResult], end: float, reached: Reached
) -> None:
    looked = 0
    for one in reached:
        spec, family, found = one[0], one[1], one[which]
        assert isinstance(found, Largest)
        if found.value is not None and found.value < end:
            looked += 1
            assert holds(at(spec, family, found.value)), (spec, family, found)
            assert at(spec, family, found.value * 1.01).verdict == "out", (spec, family, found)
            assert found.stops, (spec, family, found)
            assert len(found.why) == len(found.stops) == len(found.checks)
    assert looked > 8


def test_what_is_asked_for_lies_in_the_range_where_the_family_stands(reached: Reached) -> None:
    for spec, family, *both in reached:
        verdict = size(spec).families[family].verdict
        for asked in both:
            assert asked.now is not None
            if verdict == "fits":
                assert asked.value is not None
                assert asked.value >= asked.now * (1.0 - 1e-9)
                assert asked.fits_to is not None
            elif verdict == "out" and asked.value is not None:
                assert asked.value < asked.now


def test_the_ceiling_stops_a_lift_where_arithmetic_says(case_up: dict[str, Any]) -> None:
    found = largest_rise(case_up, "continuous_lift")
    top = next(c for c in size(case_up).families["continuous_lift"].checks if c.id == "ceiling")
    assert isinstance(top.value, float)
    overhead = top.value - case_up["rise.discharge_height"]
    assert found.stops == ("ceiling",)
    assert found.value == pytest.approx(case_up["space.ceiling"] - overhead - case_up["rise.infeed_height"], rel=2e-6)


def test_the_fastest_platform_is_where_brent_finds_its_cycle_used_up(case_up: dict[str, Any]) -> None:
    found = largest_rate(case_up, "reciprocating_lift")
    cycle = size(case_up).families["reciprocating_lift"].figures["cycle_time"].value
    assert cycle is not None
    root = brentq(lambda rate: 60.0 / rate - cycle, 0.1, 100.0, xtol=1e-12)
    assert found.value == pytest.approx(root, rel=2e-6)
    assert found.stops == ("rate",)


def test_one_drive_runs_out_of_pull_where_a_drive_at_each_tier_does_not(case_up: dict[str, Any]) -> None:
    light = case_up | {
        "product.length": 0.25, "product.width": 0.2, "product.height": 0.15, "product.weight": 2.5, "rate.peak": 28.0,
        "rate.normal": 28.0, "rise.discharge_height": 0.75 + 12 * 0.3048, "space.ceiling": 20.0,
    }  # fmt: skip
    one, tiers = largest_rise(light, "spiral"), largest_rise(light, "washdown_spiral")
    assert one.value is not None
    assert tiers.value is not None
    assert 12 * 0.3048 < one.value < 26 * 0.3048
    assert "pull" in one.stops or "pull_backed_up" in one.stops
    assert tiers.value > 29 * 0.3048


def test_a_family_that_a_gate_shuts_out_has_no_largest_and_says_which(case_up: dict[str, Any]) -> None:
    found = largest_rise(case_up | {"handling.squeeze": False}, "side_grip")
    assert isinstance(found, Largest)
    assert found.value is None
    assert found.fits_to is None
    assert found.stops == ("squeeze",)
    assert found.to_json()["stops"] == ["squeeze"]


def test_an_unknown_rate_starts_from_nothing_and_goes_up(case_up: dict[str, Any]) -> None:
    spec = {key: value for key, value in case_up.items() if not key.startswith("rate.")}
    found = largest_rate(spec, "index_lift")
    assert found.now is None
    assert found.value == pytest.approx(31.0, rel=1e-5)


def test_where_no_rate_is_said_at_all_the_spec_is_left_alone(case_up: dict[str, Any]) -> None:
    before = dict(case_up)
    largest_rise(case_up, "spiral")
    assert case_up == before
