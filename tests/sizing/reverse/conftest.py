"""Jobs for the reverse questions: whole ones, so that a family either fits or is out."""

from random import Random
from typing import Any

import pytest

from intake.sizing import FAMILIES, Change, Largest, largest_rate, largest_rise, smallest_changes, verdicts
from intake.spec.flat import Spec


@pytest.fixture(scope="session")
def settled_jobs(whole: Any) -> list[dict[str, Any]]:
    """Whole jobs in which the tests on samples are in too, so that nothing is left to assume; some families stand."""
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
        if sum(verdict != "out" for verdict in verdicts(Spec.from_flat(spec)).values()) >= 2:
            jobs.append(spec)
    return jobs


@pytest.fixture(scope="session")
def reached(settled_jobs: list[dict[str, Any]]) -> list[tuple[dict[str, Any], str, Largest, Largest]]:
    """Job, family, largest rise, largest rate."""
    return [
        (spec, family, largest_rise(spec, family), largest_rate(spec, family))
        for spec in settled_jobs
        for family in FAMILIES
    ]


@pytest.fixture(scope="session")
def changes(settled_jobs: list[dict[str, Any]]) -> list[tuple[dict[str, Any], Change]]:
    """Job, and each smallest change that lets one of its families stand."""
    return [
        (spec, change) for spec in settled_jobs for family in FAMILIES for change in smallest_changes(spec, family)
    ]  # fmt: skip
