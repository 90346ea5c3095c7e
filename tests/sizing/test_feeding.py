"""A product fed with its other side leading: tried where it may be turned, asked for where nobody said, and told."""

from typing import Any

import pytest

from intake.sizing import size

SLIM = {"product.length": 0.6, "product.width": 0.2, "rate.peak": 85.0, "rate.normal": 85.0}
"""Lengthways it needs more belt speed than there is; across the belt it does not."""


def cover(case_up: dict[str, Any], **facts: Any) -> Any:
    return size(case_up | SLIM | {key.replace("__", "."): value for key, value in facts.items()}).families["cover_belt"]


def test_where_nobody_said_a_family_that_stands_only_turned_depends_on_that(case_up: dict[str, Any]) -> None:
    found = cover(case_up)
    assert (found.verdict, found.likely_out, found.turned) == ("depends", True, False)
    assert "handling.turn_flat" in found.depends_on
    assert "may do if it can be fed broad side first" in found.because[0]
    assert not [check for check in found.checks if check.passes is False and not check.warns]
    pitch, gap = found.figures["pitch"].value, found.figures["gap"].value
    assert pitch - gap == pytest.approx(0.6)  # shown as it was described


def test_where_it_may_be_turned_it_stands_and_says_which_side_leads(case_up: dict[str, Any]) -> None:
    found = cover(case_up, handling__turn_flat=True)
    assert found.verdict != "out"
    assert found.turned
    assert "fed broad side first: 600 mm (23.6 in) across, 200 mm" in found.because[0]
    pitch, gap = found.figures["pitch"].value, found.figures["gap"].value
    assert pitch - gap == pytest.approx(0.2)
    assert found.to_json()["fed_other_side_first"] is True


def test_where_it_may_not_be_turned_it_is_out(case_up: dict[str, Any]) -> None:
    found = cover(case_up, handling__turn_flat=False)
    assert found.verdict == "out"
    assert {"speed", "rate"} & {check.id for check in found.failed}


def test_what_stands_as_described_is_left_as_it_is(case_up: dict[str, Any]) -> None:
    for found in size(case_up | {"handling.turn_flat": True}).families.values():
        if found.verdict == "fits":
            assert not found.turned


def test_a_round_product_has_no_other_side(case_up: dict[str, Any]) -> None:
    can = {key: value for key, value in case_up.items() if key not in ("product.length", "product.width")}
    spec = can | {"product.type": "can", "product.diameter": 0.3, "rate.peak": 400.0, "rate.normal": 400.0}
    for found in size(spec).families.values():
        assert "handling.turn_flat" not in found.depends_on
