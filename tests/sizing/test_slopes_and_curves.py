"""Where a slope begins and ends, and the level curves of switchbacks: what they ask of the product and of the belt."""

from math import degrees, hypot
from typing import Any

import pytest

from intake.sizing import load_range, size


def test_a_tall_product_flattens_the_slope_by_what_a_step_may_be(case_up: dict[str, Any]) -> None:
    d = load_range().families["incline"]
    low, tall = ({**case_up, "product.height": height, "test.slip_angle": 40.0} for height in (0.2, 0.6))
    one, other = (size(spec).families["incline"] for spec in (low, tall))
    allowed = d.crest_steps * degrees(d.crest_step_most) * 0.4 / 0.6
    assert other.figures["slope"].value <= min(allowed, one.figures["slope"].value) + 1e-9
    assert other.figures["floor_length"].value > one.figures["floor_length"].value
    crest = other.check("crest")
    assert crest is not None
    assert crest.passes is True
    assert crest.limit == pytest.approx(degrees(d.crest_step_most) * 0.4 / 0.6)


def test_a_product_too_tall_for_any_slope_of_the_range_is_out_by_the_crest(case_up: dict[str, Any]) -> None:
    found = size(case_up | {"product.height": 2.0, "test.slip_angle": 40.0, "test.tip_angle": 60.0}).families["incline"]
    assert found.verdict == "out"
    assert "crest" in {check.id for check in found.failed}


def test_only_switchbacks_have_curves(case_up: dict[str, Any]) -> None:
    line = size(case_up | {"test.slip_angle": 30.0}).families["incline"]
    assert line.variant == "1_in_line"
    assert not {"curve", "tip_curve", "width_curve"} & {check.id for check in line.checks}
    folded = size(case_up | {"rise.turn": 180.0, "test.slip_angle": 30.0}).families["incline"]
    assert folded.variant == "switchback_2_runs"
    assert {"curve", "tip_curve", "width_curve"} <= {check.id for check in folded.checks}


def test_the_belt_of_a_switchback_takes_the_swept_width(case_up: dict[str, Any]) -> None:
    d = load_range().families["incline"]
    found = size(case_up | {"rise.turn": 180.0, "test.slip_angle": 30.0}).families["incline"]
    inside = d.curve_radius_per_product_width * case_up["product.width"]
    # Pythagoras: the outer corners of a box that touches the inside edge half-way along its length.
    swept = hypot(inside + case_up["product.width"], case_up["product.length"] / 2.0) - inside
    assert found.figures["belt_width"].value >= swept + 2.0 * d.side_clearance


def test_castors_roll_on_slopes_and_not_on_platforms(case_up: dict[str, Any]) -> None:
    families = size(case_up | {"product.underside": "castors"}).families
    for name in ("spiral", "washdown_spiral", "incline", "cover_belt", "cleated_incline"):
        assert "underside" in {check.id for check in families[name].failed}
    for name in ("continuous_lift", "reciprocating_lift"):
        assert families[name].check("underside") is None


def test_several_levels_are_for_the_lifts_that_stop_at_them(case_up: dict[str, Any]) -> None:
    families = size(case_up | {"rise.levels": 3}).families
    assert "levels" in {check.id for check in families["spiral"].failed}
    assert families["continuous_lift"].verdict != "out"
    assert all(found.check("levels").passes for found in size(case_up).families.values() if found.check("levels"))
