"""Verdicts in situations of the trade. Each expectation is common practice, no source, unless one is named."""

from typing import Any

import pytest

from intake.sizing import FAMILIES, size
from intake.sizing.range_data import load_range
from intake.spec import SpecError


def test_an_empty_spec_gives_nine_families_that_depend_and_no_best() -> None:
    result = size({})
    assert set(result.families) == set(FAMILIES)
    assert {family.verdict for family in result.families.values()} == {"depends"}
    assert result.best is None
    assert result.refer_out is None


def test_an_everyday_case_has_a_best_family_with_figures(case_up: dict[str, Any]) -> None:
    result = size(case_up)
    assert result.best is not None
    best = result.families[result.best]
    for name in ("belt_speed", "path_length", "floor_length", "overall_height", "motor_power", "lead_time"):
        assert best.figures[name].value is not None, name


def test_a_freezer_room_refers_out_with_a_reason(case_up: dict[str, Any]) -> None:
    result = size(case_up | {"temperature.room": -28.9, "temperature.zone": "freezer"})
    assert result.best is None
    assert result.refer_out is not None
    assert "freezer" in result.refer_out
    assert "freezer_refer_out" in result.flags


def test_a_classified_area_refers_out(case_up: dict[str, Any]) -> None:
    result = size(case_up | {"site.hazardous_area": True})
    assert result.best is None
    assert "hazardous_refer_out" in result.flags


def test_thirteen_tonnes_are_too_heavy_for_anything(case_up: dict[str, Any]) -> None:
    result = size(case_up | {"product.weight": 13_000.0})
    assert result.best is None
    assert "heavy_refer" in result.flags


def test_a_rise_of_a_hand_needs_no_lift(case_up: dict[str, Any]) -> None:
    result = size(case_up | {"rise.discharge_height": 0.9})
    assert result.refer_out is not None
    assert "no lift is needed" in result.refer_out
    for family in result.families.values():
        check = family.check("rise")
        assert check is not None
        assert check.passes is False


def test_a_chilled_room_rules_out_the_washdown_spiral_and_not_the_light_one(case_up: dict[str, Any]) -> None:
    result = size(case_up | {"temperature.room": 4.0})
    assert result.families["washdown_spiral"].verdict == "out"
    assert result.families["spiral"].verdict != "out"


def test_what_cannot_be_squeezed_rules_out_side_grip(case_up: dict[str, Any]) -> None:
    family = size(case_up | {"handling.squeeze": False}).families["side_grip"]
    assert family.verdict == "out"
    assert "held by its sides" in family.because[0]


@pytest.mark.parametrize(("turn", "verdict"), [(0.0, "fits"), (180.0, "out")])
def test_what_must_not_be_turned_over_rules_out_the_c_path_but_not_the_s_path(
    case_up: dict[str, Any], turn: float, verdict: str
) -> None:
    family = size(case_up | {"handling.invert": False, "rise.turn": turn}).families["side_grip"]
    assert (family.verdict == "out") == (verdict == "out")


@pytest.mark.parametrize("turn", [0.0, 180.0])
def test_a_full_open_product_rules_out_both_paths(case_up: dict[str, Any], turn: float) -> None:
    spec = case_up | {"product.closed": False, "product.fill": "full", "rise.turn": turn}
    assert size(spec).families["side_grip"].verdict == "out"


def test_an_empty_open_product_may_be_gripped_after_a_test(case_up: dict[str, Any]) -> None:
    spec = case_up | {
        "product.closed": False,
        "product.fill": "empty",
        "product.type": "jar",
        "product.surface": "glass",
    }
    result = size(spec)
    assert result.families["side_grip"].verdict != "out"


def test_high_pressure_washdown_rules_out_the_light_spiral(case_up: dict[str, Any]) -> None:
    result = size(case_up | {"cleaning.method": "high_pressure"})
    assert result.families["spiral"].verdict == "out"
    assert result.families["washdown_spiral"].verdict != "out"
    assert "washdown_pressure" in result.flags


def test_one_drive_passes_at_twelve_feet_and_runs_out_of_pull_near_or_above_twenty() -> None:
    light = {
        "product.type": "carton", "product.length": 0.25, "product.width": 0.2, "product.height": 0.15,
        "product.weight": 1.5, "product.surface": "paperboard", "rate.peak": 28.0, "rise.direction": "up",
        "rise.infeed_height": 0.75, "rise.turn": 0.0, "space.length": 3.0, "space.width": 3.0, "space.ceiling": 15.0,
        "handling.squeeze": False, "test.slip_angle": 26.0, "cleaning.method": "wipe", "temperature.zone": "ambient",
    }  # fmt: skip

    def at(rise_m: float) -> Any:
        return size(light | {"rise.discharge_height": 0.75 + rise_m}).families

    assert at(12 * 0.3048)["spiral"].verdict == "fits"
    capacity = at(12 * 0.3048)["spiral"].figures["rise_capacity"].value
    assert capacity is not None
    assert capacity > 18 * 0.3048
    tall = at(29 * 0.3048)
    assert tall["spiral"].verdict != "fits"
    assert tall["washdown_spiral"].verdict == "fits"


def test_the_index_lift_makes_26_to_30_cases_a_minute_at_a_foot_of_height(case_up: dict[str, Any]) -> None:
    spec = case_up | {"product.height": 0.3, "product.length": 0.35, "product.width": 0.25}
    capacity = size(spec).families["index_lift"].figures["rate_capacity"].value
    assert capacity is not None
    assert 26.0 <= capacity <= 31.0


def test_the_platform_lift_makes_five_to_nine_trips_a_minute_at_three_and_a_half_metres(
    case_up: dict[str, Any],
) -> None:
    spec = case_up | {"rate.peak": 3.0, "rate.normal": 2.0, "rise.discharge_height": 4.25}
    cycle = size(spec).families["reciprocating_lift"].figures["cycle_time"].value
    assert cycle is not None
    assert 5.0 <= 60.0 / cycle <= 9.0


def test_a_test_on_samples_outranks_the_assumption_about_friction(case_up: dict[str, Any]) -> None:
    slick = size(case_up | {"test.slip_angle": 9.0}).families["incline"].check("slip")
    assert slick is not None
    assert "measured: test.slip_angle" in slick.source
    assert slick.uses["g"].value == 9.80665
    assert not slick.assumes


def test_more_friction_never_rules_a_family_out(case_up: dict[str, Any]) -> None:
    order = {"out": 0, "depends": 1, "fits": 2}
    for name in FAMILIES:
        ranks = [
            order[size(case_up | {"test.slip_angle": a}).families[name].verdict] for a in (5.0, 12.0, 20.0, 30.0, 42.0)
        ]
        assert ranks == sorted(ranks), name


def test_a_slower_rate_or_a_larger_floor_never_rules_a_family_out(case_up: dict[str, Any]) -> None:
    order = {"out": 0, "depends": 1, "fits": 2}
    for name in FAMILIES:
        by_rate = [
            order[size(case_up | {"rate.peak": r, "rate.normal": 1.0}).families[name].verdict]
            for r in (90.0, 40.0, 10.0)
        ]
        by_floor = [order[size(case_up | {"space.length": s}).families[name].verdict] for s in (1.0, 2.5, 6.0, 14.0)]
        assert by_rate == sorted(by_rate), name
        assert by_floor == sorted(by_floor), name


def test_a_spread_of_weight_fails_where_its_heaviest_fails(case_up: dict[str, Any]) -> None:
    result = size(case_up | {"product.weight": [8.0, 18.0]})
    assert result.families["spiral"].verdict == "out"


def test_a_doubt_about_weight_only_makes_it_depend(case_up: dict[str, Any]) -> None:
    doubt = {"low": 8.0, "high": 18.0, "spread": False}
    family = size(case_up | {"product.weight": doubt}).families["spiral"]
    assert family.verdict == "depends"
    assert "product.weight" in family.depends_on


def test_at_most_is_sized_at_its_end(case_up: dict[str, Any]) -> None:
    result = size(case_up | {"product.weight": [None, 8.0]})
    assert result.families["continuous_lift"].figures["load_mass"].value == pytest.approx(
        size(case_up).families["continuous_lift"].figures["load_mass"].value
    )


def test_every_check_of_several_sizes_is_made_at_the_size_that_hurts(case_up: dict[str, Any]) -> None:
    spec = case_up | {"product.weight@2": 14.0, "product.length@2": 0.3}
    weight = size(spec).families["spiral"].check("weight")
    assert weight is not None
    assert (weight.value, weight.size) == (14.0, 2)


def test_two_heights_outrank_a_stated_rise(case_up: dict[str, Any]) -> None:
    result = size(case_up | {"rise.height": 5.0})
    assert any("rise.height" in conflict.fields for conflict in result.conflicts)
    rise = result.families["incline"].check("rise")
    assert rise is not None
    assert rise.value == pytest.approx(3.25)


def test_words_of_direction_outrank_the_heights(case_up: dict[str, Any]) -> None:
    result = size(case_up | {"rise.direction": "down"})
    assert result.direction == "down"
    assert any("rise.direction" in conflict.fields for conflict in result.conflicts)
    assert result.families["index_lift"].verdict == "out"


def test_rate_of_pieces_and_pieces_in_one_give_a_derived_rate(case_up: dict[str, Any]) -> None:
    spec = {key: value for key, value in case_up.items() if not key.startswith("rate.")}
    result = size(spec | {"rate.pieces": 480.0, "product.pieces": 24})
    assert [(d.field, d.value) for d in result.derived if d.field == "rate.normal"] == [("rate.normal", 20.0)]


def test_a_lowering_load_drives_the_machine(case_up: dict[str, Any]) -> None:
    spec = case_up | {"rise.direction": "down", "rise.infeed_height": 4.0, "rise.discharge_height": 0.75}
    shaft = size(spec).families["continuous_lift"].figures["shaft_power"].value
    assert shaft is not None
    assert shaft < 0.0


def test_motors_come_from_the_list_of_the_sites_supply(case_up: dict[str, Any]) -> None:
    def motor(frequency: float) -> float | None:
        found = size(case_up | {"site.frequency": frequency}).families["spiral"].figures
        return found["motor_power"].value

    assert motor(50.0) in [w * 1000 for w in (0.06, 0.09, 0.12, 0.18, 0.25, 0.37, 0.55, 0.75, 1.1, 1.5, 2.2, 3.0, 4.0)]
    american = motor(60.0)
    assert american is not None
    assert american / 745.699872 == pytest.approx(round(american / 745.699872 * 12) / 12, rel=2e-3)


@pytest.mark.parametrize(
    ("spec", "field"),
    [
        ({"product.lenght": 0.4}, "product.lenght"),
        ({"product.length": -1}, "product.length"),
        ({"product.length": float("nan")}, "product.length"),
        ({"product.type": "crates"}, "product.type"),
        ({"rate.normal": "fast"}, "rate.normal"),
    ],
)
def test_what_cannot_be_taken_names_the_key_and_how_to_mend_it(spec: dict[str, Any], field: str) -> None:
    with pytest.raises(SpecError) as error:
        size(spec)
    assert error.value.field == field
    assert error.value.mend


def test_every_limit_has_a_unit_and_a_basis() -> None:
    data = load_range()
    for limits in data.families.values():
        assert all(basis.strip() for basis in limits.bases.values())


def test_worth_says_how_sure_the_best_is_and_repeats_exactly(case_up: dict[str, Any]) -> None:
    spec = {key: value for key, value in case_up.items() if key not in ("handling.squeeze", "space.length")}
    first, second = size(spec, worth=True), size(spec, worth=True)
    assert first.to_json() == second.to_json()
    assert first.share is not None
    assert 0.0 <= first.share <= 1.0
    assert size(spec).share is None
    assert all(follow.changes_best is not None for follow in first.follow_ups)


def test_answering_one_field_leaves_the_draws_of_the_others_alone(case_up: dict[str, Any]) -> None:
    from intake.sizing.resolve import resolve
    from intake.sizing.sampling import Sampler
    from intake.spec import Spec

    open_two = {key: value for key, value in case_up.items() if key not in ("space.length", "space.width")}
    open_one = open_two | {"space.length": 5.0}
    data = load_range()
    two = Sampler(resolve(Spec.from_flat(open_two), data), 64)
    one = Sampler(resolve(Spec.from_flat(open_one), data), 64)
    assert one.columns["space.width"] == two.columns["space.width"]
    assert "space.length" not in one.columns


@pytest.mark.parametrize(("pascal", "method"), [(6.9e6, "high_pressure"), (3e5, "low_pressure")])
def test_a_washing_pressure_tells_the_way_of_washing(case_up: dict[str, Any], pascal: float, method: str) -> None:
    spec = {key: value for key, value in case_up.items() if key != "cleaning.method"}
    result = size(spec | {"cleaning.pressure": pascal})
    assert [d.value for d in result.derived if d.field == "cleaning.method"] == [method]
    assert (result.families["spiral"].verdict == "out") == (method == "high_pressure")
