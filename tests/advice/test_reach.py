"""How high, how fast, and what would let a family stand, in lines that can be sent."""

import json
from typing import Any

import pytest

from intake.advice import reach, reach_json, reach_lines
from intake.sizing import Change, size
from intake.spec.flat import Spec

CASES = {
    "product.type": "case", "product.length": 0.4, "product.width": 0.3, "product.height": 0.25, "product.weight": 8.0,
    "product.closed": True, "product.rigidity": "rigid", "product.surface": "corrugated", "rate.peak": 40.0,
    "rise.direction": "up", "rise.infeed_height": 0.75, "rise.discharge_height": 4.0, "rise.turn": 0.0,
    "space.length": 6.0, "space.width": 2.0, "space.ceiling": 6.0, "handling.squeeze": False,
    "temperature.room": 21.0, "cleaning.method": "dry", "site.hazardous_area": False,
}  # fmt: skip


@pytest.fixture(scope="module")
def found() -> dict[str, Any]:
    spec = Spec.from_flat(CASES)
    return reach(spec, size(spec))


def test_a_family_that_stands_tells_how_high_and_how_fast_and_what_stops_it(found: dict[str, Any]) -> None:
    lines = list(reach_lines(found, "si"))
    lift = [line for line in lines if "continuous carrier lift" in line]
    assert lift == [
        "The continuous carrier lift could rise 4.3 m; beyond that: it stands 6.04 m high, and there is 6 m.",
        "The continuous carrier lift could run at 65/min; beyond that: 65.6/min is over its rate of 65/min.",
    ]
    assert found["continuous_lift"]["rise"].value <= 4.3


def test_a_family_that_is_out_tells_what_would_let_it_stand(found: dict[str, Any]) -> None:
    lines = list(reach_lines(found, "us"))
    assert "The indexing chain lift would stand with a peak rate of 31/min." in lines
    assert any("side-grip" in line and "may be held by its sides: yes" in line for line in lines)


def test_nobody_is_told_to_halve_the_product() -> None:
    smaller = Change(
        family="incline", field="product.length", size=1, now=0.4, to=0.1, unit="m", verdict="fits",
    )  # fmt: skip
    assert list(reach_lines({"incline": {"changes": (smaller,)}}, "si")) == [
        "No single change lets the inclined belt conveyor stand."
    ]


def test_the_same_goes_out_as_json(found: dict[str, Any]) -> None:
    shape = json.loads(json.dumps(reach_json(found), allow_nan=False))
    assert shape["continuous_lift"]["rate"]["stops"] == ["rate"]
    assert shape["index_lift"]["changes"][0]["field"] == "rate.peak"
