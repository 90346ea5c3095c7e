"""What would make it fit: the value reported lets the family stand, 1 % less of a change does not."""

from typing import Any

import pytest

from intake.sizing import Change, size, smallest_changes
from intake.sizing.reverse.changed import with_figure, with_rate, with_rise
from intake.spec.flat import Spec


def verdict_with(spec: dict[str, Any], change: Change, value: float) -> str:
    upwards = isinstance(change.now, float) and value > change.now
    key = (change.field, change.size)
    return size(with_figure(Spec.from_flat(spec), key, value, upwards=upwards)).families[change.family].verdict


Changes = list[tuple[dict[str, Any], Change]]


def test_the_change_turns_out_into_fits_and_a_hundredth_less_does_not(changes: Changes) -> None:
    looked = 0
    for spec, change in changes:
        if not isinstance(change.to, float) or not isinstance(change.now, float) or change.field == "rise.turn":
            continue
        looked += 1
        assert verdict_with(spec, change, change.to) == change.verdict != "out", (spec, change)
        less = change.to - 0.01 * (change.to - change.now)
        assert verdict_with(spec, change, less) == "out", (spec, change)
    assert looked > 8


def test_on_a_settled_job_what_stands_fits(changes: Changes) -> None:
    assert len(changes) > 15
    assert sum(change.verdict == "fits" for _, change in changes) > 0.8 * len(changes)


def test_a_word_that_lets_a_family_stand_is_named(case_up: dict[str, Any]) -> None:
    found = smallest_changes(case_up | {"handling.squeeze": False}, "side_grip")
    assert [(change.field, change.now, change.to) for change in found] == [("handling.squeeze", False, True)]
    assert found[0].to_json()["to"] is True
    assert found[0].share is None


def test_the_floor_that_is_missing_is_told_to_the_millimetre(case_up: dict[str, Any]) -> None:
    narrow = case_up | {"space.length": 3.0}
    change = next(c for c in smallest_changes(narrow, "cover_belt") if c.field == "space.length")
    assert isinstance(change.to, float)
    wide = size(narrow | {"space.length": change.to}).families["cover_belt"]
    assert wide.verdict != "out"
    assert wide.figures["floor_length"].value == pytest.approx(change.to, rel=2e-6)


def test_feeding_it_the_other_way_is_tried_where_nobody_spoke_of_it(case_up: dict[str, Any]) -> None:
    fast = case_up | {"product.length": 0.6, "product.width": 0.2, "rate.peak": 85.0, "rate.normal": 85.0}
    found = size(fast).families["cover_belt"]
    assert found.verdict == "depends"
    assert "handling.turn_flat" in found.depends_on
    turned = size(fast | {"handling.turn_flat": True}).families["cover_belt"]
    assert turned.verdict != "out"
    assert any("broad side first" in line for line in turned.because)
    assert size(fast | {"handling.turn_flat": False}).families["cover_belt"].verdict == "out"
    changes = smallest_changes(fast | {"handling.turn_flat": False}, "cover_belt")
    assert ("handling.turn_flat", True) in [(change.field, change.to) for change in changes]


def test_nothing_is_changed_of_a_family_that_stands(case_up: dict[str, Any]) -> None:
    assert smallest_changes(case_up, "index_lift") == ()


def test_two_shut_gates_are_opened_by_no_single_change(case_up: dict[str, Any]) -> None:
    assert smallest_changes(case_up | {"handling.squeeze": False, "product.rigidity": "soft"}, "side_grip") == ()


def test_a_warmer_room_is_told_in_degrees_and_takes_the_word_for_the_room_with_it(case_up: dict[str, Any]) -> None:
    cold = case_up | {"temperature.room": -22.0, "temperature.zone": "freezer"}
    found = {change.field: change for change in smallest_changes(cold, "index_lift")}
    assert found["temperature.room"].to == pytest.approx(1.0, abs=1e-4)
    assert {change.to for change in smallest_changes(cold, "index_lift") if change.field == "temperature.zone"} == {
        "chilled", "ambient", "hot",
    }  # fmt: skip


def test_a_changed_rise_leaves_the_lower_level_where_it_is() -> None:
    up = Spec.from_flat({"rise.direction": "up", "rise.infeed_height": 0.8, "rise.discharge_height": 4.0})
    assert with_rise(up, 2.0).to_flat() == {
        "rise.direction": "up", "rise.infeed_height": 0.8, "rise.height": 2.0,
    }  # fmt: skip
    down = Spec.from_flat({"rise.direction": "down", "rise.infeed_height": 4.0, "rise.height": 3.0})
    assert with_rise(down, 2.0).to_flat()["rise.discharge_height"] == pytest.approx(1.0)


def test_a_changed_rate_takes_the_normal_one_along_where_it_has_to() -> None:
    spec = Spec.from_flat({"rate.normal": 40.0, "rate.peak": 50.0})
    assert with_rate(spec, 30.0).to_flat() == {"rate.normal": 30.0, "rate.peak": 30.0}
    assert with_rate(spec, 45.0).to_flat() == {"rate.normal": 40.0, "rate.peak": 45.0}


def test_of_a_spread_only_the_end_that_is_in_the_way_moves() -> None:
    spec = Spec.from_flat({"product.weight": [8.0, 14.0]})
    lighter = with_figure(spec, ("product.weight", 1), 12.0, upwards=False).to_flat()["product.weight"]
    heavier = with_figure(spec, ("product.weight", 1), 9.0, upwards=True).to_flat()["product.weight"]
    assert (lighter["low"], lighter["high"]) == (8.0, 12.0)
    assert (heavier["low"], heavier["high"]) == (9.0, 14.0)
