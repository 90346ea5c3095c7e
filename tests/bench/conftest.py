"""A whole job of one size for the benches: cases to a mezzanine, with room for nearly every family."""

from typing import Any

import pytest

collect_ignore = ["extractors"]  # scripts that run in interpreters of their own, no test modules


@pytest.fixture
def case_up() -> dict[str, Any]:
    return {
        "product.type": "case", "product.length": 0.4, "product.width": 0.3, "product.height": 0.3,
        "product.weight": 5.0, "product.fill": "full", "product.closed": True, "product.rigidity": "rigid",
        "product.surface": "corrugated", "rate.normal": 20.0, "rate.peak": 25.0, "rate.backs_up": True,
        "rise.direction": "up", "rise.infeed_height": 0.75, "rise.discharge_height": 3.75, "rise.turn": 0.0,
        "space.length": 14.0, "space.width": 4.0, "space.ceiling": 7.0, "space.passage": "none",
        "handling.squeeze": True, "handling.squeeze_limit": 400.0, "handling.press_top": True,
        "temperature.room": 21.0, "temperature.product": 21.0, "cleaning.method": "dry",
        "site.hazardous_area": False, "site.air": True, "test.slip_angle": 30.0,
    }  # fmt: skip
