"""How high, how fast, and what would let a family stand, in lines that can be sent."""

import json
from typing import Any

import pytest

from intake.advice import Answer, Brief, how_high, reach, reach_json, reach_lines
from intake.advice.reach import Reach
from intake.sizing.result import FAMILIES
from intake.spec.flat import Spec

CASES: dict[str, Any] = {
    "product.type": "case", "product.length": 0.4, "product.width": 0.3, "product.height": 0.25, "product.weight": 8.0,
    "product.closed": True, "product.rigidity": "rigid", "product.surface": "corrugated", "rate.peak": 40.0,
    "rise.direction": "up", "rise.infeed_height": 0.75, "rise.discharge_height": 4.0, "rise.turn": 0.0,
    "space.length": 6.0, "space.width": 2.0, "space.ceiling": 6.0, "handling.squeeze": False,
    "temperature.room": 21.0, "cleaning.method": "dry", "site.hazardous_area": False,
}  # fmt: skip


@pytest.fixture(scope="module")
def found() -> Reach:
    return reach(Brief(spec=Spec.from_flat(CASES), system="si"))


def test_a_family_that_stands_tells_how_high_and_how_fast_and_what_stops_it(found: Reach) -> None:
    lift = [line for line in reach_lines(found) if "continuous carrier lift" in line]
    assert lift == [
        "At this product and rate the continuous carrier lift could rise 4.3 m; beyond that it stands 6.043 m high, "
        "and there is 6 m.",
        "At this product and rise the continuous carrier lift could run at 65/min; beyond that 65.65/min is over its "
        "rate of 65/min.",
    ]
    assert found["continuous_lift"]["rise"].data["value"] <= 4.3


def test_a_family_that_is_out_tells_what_would_let_it_stand(found: Reach) -> None:
    lines = list(reach_lines(found))
    assert "The indexing chain lift would stand with peak rate 31/min instead of 40/min." in lines
    assert any("side-grip" in line and "may be held by its sides: yes” instead of no" in line for line in lines)


def test_every_family_is_spoken_of_once_for_each_thing_that_can_be_asked(found: Reach) -> None:
    assert set(found) == set(FAMILIES)
    for parts in found.values():
        assert set(parts) in ({"rise", "rate"}, {"changes"})
    assert len(list(reach_lines(found))) == sum(len(parts) for parts in found.values())


def test_the_lines_are_in_the_units_of_the_brief() -> None:
    brief = Brief(spec=Spec.from_flat(CASES), system="us")
    (line,) = reach_lines({"continuous_lift": {"rise": how_high(brief, "continuous_lift")}})
    assert "could rise 14 ft 1 in; beyond that it stands 19 ft 9.9 in high" in line


def test_the_same_goes_out_as_json(found: Reach) -> None:
    shape = json.loads(json.dumps(reach_json(found), allow_nan=False))
    assert shape["continuous_lift"]["rate"]["stops"] == ["rate"]
    assert shape["index_lift"]["changes"][0]["field"] == "rate.peak"


def test_what_would_help_goes_out_as_a_list_also_where_nothing_does() -> None:
    nothing = {"incline": {"changes": Answer(topic="would_fit", lines=("No.",), data={"changes": []})}}
    assert reach_json(nothing) == {"incline": {"changes": []}}
