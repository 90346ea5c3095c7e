"""Jobs for the reverse questions: whole ones, so that a family either fits or is out."""

from random import Random
from typing import Any

import pytest


@pytest.fixture(scope="session")
def settled_jobs(whole: Any) -> list[dict[str, Any]]:
    """Whole jobs in which the tests on samples are in too, so that nothing is left to assume."""
    rng = Random(20)
    jobs = []
    while len(jobs) < 7:
        spec = whole(rng)
        if any("@" in key or isinstance(value, list) for key, value in spec.items()):
            continue
        spec |= {
            "product.base": spec["product.length"],
            "product.base_width": spec["product.width"],
            "product.centre_height": 0.5 * spec["product.height"],
            "test.slip_angle": rng.uniform(15.0, 35.0),
            "test.grip_slip": spec["product.weight"] * rng.uniform(6.0, 14.0),
            "handling.turn_flat": False,
            "product.underside": "flat",
            "rise.levels": 1,
            "cleaning.frame": "painted",
            "space.opening_width": 3.0,
            "space.opening_height": 3.0,
            "site.air_pressure": 600000.0,
        }
        jobs.append(spec)
    return jobs
