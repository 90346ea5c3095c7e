"""What a brake or backstop has to hold, what the drive has to brake, and how long delivery takes."""

from math import cos, radians, sin, tan
from typing import Any

import pytest

from intake.sizing import load_range, size

G = 9.80665  # m/s2, NIST SP 811


def test_what_an_incline_has_to_hold_is_its_load_down_the_slope_less_friction(case_up: dict[str, Any]) -> None:
    # Block on a slope: m g (sin - mu cos), OpenStax, University Physics vol. 1, sec. 6.2.
    d = load_range().families["incline"]
    found = size(case_up | {"rate.backs_up": True, "test.slip_angle": 35.0}).families["incline"]
    figures = {name: figure.value for name, figure in found.figures.items()}
    slope, runs = radians(figures["slope"]), figures["runs"]
    length = figures["run_length"] * runs * tan(slope) / sin(slope) / runs
    load = case_up["product.weight"] / case_up["product.length"]  # kg/m, products touching
    belt = d.belt_mass_per_area * figures["belt_width"]
    level = figures["path_length"] / runs - length
    down = load * G * sin(slope) * length
    rubs = d.belt_friction * G * ((load + 2 * belt) * cos(slope) * length + (load + belt) * level)
    assert figures["holding_pull"] == pytest.approx(max(0.0, down - rubs), rel=1e-6)


def test_what_a_platform_has_to_hold_is_what_its_counterweight_leaves(case_up: dict[str, Any]) -> None:
    d = load_range().families["reciprocating_lift"]
    found = size(case_up | {"rate.peak": 3.0, "rate.normal": 3.0}).families["reciprocating_lift"]
    apart = max(1.0 - d.counterweight_share, d.counterweight_share) * case_up["product.weight"]
    assert found.figures["holding_pull"].value == pytest.approx(apart * G * (1.0 - d.guide_share))


def test_a_drive_brakes_only_where_a_lowering_load_drives_it(case_up: dict[str, Any]) -> None:
    down = case_up | {
        "rise.direction": "down", "rise.infeed_height": 4.0, "rise.discharge_height": 0.75,
    }  # fmt: skip
    for found in size(case_up).families.values():
        assert found.figures["brake_power"].value in (0.0, None)
    lift = size(down).families["continuous_lift"]
    assert lift.figures["brake_power"].value == pytest.approx(-lift.figures["shaft_power"].value)
    assert lift.figures["brake_power"].value > 0.0


def test_the_cautions_say_what_the_leading_machine_holds_and_brakes(case_up: dict[str, Any]) -> None:
    up = size(case_up)
    assert up.best is not None
    held = up.families[up.best].figures["holding_pull"].value
    assert any("On loss of power" in line for line in up.cautions) == bool(held)


def test_a_trial_of_the_transfers_settles_their_warning_and_puts_nothing_out(case_up: dict[str, Any]) -> None:
    small = case_up | {"product.length": 0.05, "product.width": 0.05, "product.height": 0.05, "product.weight": 0.2}
    before, passed, failed = (
        size(small | facts) for facts in ({}, {"test.transfers": True}, {"test.transfers": False})
    )  # fmt: skip
    for name, found in before.families.items():
        assert found.verdict == passed.families[name].verdict == failed.families[name].verdict
        if found.check("transfer") is not None:
            assert passed.families[name].check("transfer").passes is True
            assert failed.families[name].check("transfer").passes is False


def test_a_stainless_frame_takes_longer_where_it_is_not_the_usual_build(case_up: dict[str, Any]) -> None:
    painted, stainless = (size(case_up | {"cleaning.frame": word}).families for word in ("painted", "stainless"))
    weeks = load_range().families["spiral"].stainless_weeks
    for name in painted:
        later = stainless[name].figures["lead_time"].value - painted[name].figures["lead_time"].value
        assert later == pytest.approx(0.0 if name == "washdown_spiral" else weeks)
