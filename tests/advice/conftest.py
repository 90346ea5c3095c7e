"""Whole jobs, invented: everything that matters is said, and the tests on samples are in."""

from collections.abc import Mapping
from typing import Any

import pytest

from intake.advice import Brief
from intake.spec.flat import Spec

COMMON: dict[str, Any] = {
    "product.closed": True, "product.rigidity": "rigid", "product.underside": "flat", "product.fill": "full",
    "product.sizes": 1, "product.wet": False, "rise.direction": "up", "rise.infeed_height": 0.75, "rise.turn": 0.0,
    "rise.levels": 1, "rate.backs_up": False, "space.length": 9.0, "space.width": 3.0, "space.ceiling": 7.5,
    "space.passage": "none", "space.opening_width": 3.0, "space.opening_height": 3.0, "handling.squeeze": True,
    "handling.squeeze_limit": 150.0, "handling.invert": False, "handling.press_top": True, "handling.fragile": False,
    "handling.turn_flat": False, "temperature.room": 21.0, "temperature.product": 21.0, "cleaning.method": "dry",
    "cleaning.exposed_food": False, "cleaning.frame": "painted", "site.hazardous_area": False, "site.air": True,
    "site.air_pressure": 600000.0, "site.hours": 16.0, "site.frequency": 60.0, "site.voltage": 480.0,
    "project.weeks": 30.0, "test.slip_angle": 26.0, "test.tip_angle": 30.0,
}  # fmt: skip

Row = tuple[str, str, float, float, float, float, float, float, dict[str, Any]]
# name: type, surface, length, width, height, weight, rate, upper level, what is other than in COMMON
ROWS: dict[str, Row] = {
    "cases": ("case", "corrugated", 0.4, 0.3, 0.25, 8.0, 40.0, 4.0, {}),
    "tea cartons": ("carton", "paperboard", 0.25, 0.2, 0.15, 2.5, 28.0, 4.3, {}),
    "cordial bottles": ("bottle", "glass", 0.08, 0.08, 0.24, 1.1, 120.0, 3.6, {"test.tip_angle": 17.0}),
    "mail totes": ("tote", "plastic", 0.6, 0.4, 0.3, 14.0, 12.0, 5.5, {"product.closed": False}),
    "pallets of tiles": ("pallet_load", "wood", 1.2, 1.0, 1.1, 600.0, 0.4, 4.2, {"handling.squeeze": False}),
    "seed bags": ("bag", "film", 0.6, 0.4, 0.14, 15.0, 12.0, 3.4, {"product.rigidity": "soft"}),
    "soup pouches": ("pouch", "film", 0.2, 0.15, 0.05, 0.5, 60.0, 3.2, {"product.rigidity": "soft"}),
    "cider kegs": ("keg", "metal", 0.28, 0.28, 0.55, 32.0, 4.0, 3.8, {}),
    "trays coming down": ("tray", "plastic", 0.4, 0.3, 0.12, 6.0, 20.0, 3.9, {"rise.direction": "down"}),
    "jam jars": ("jar", "glass", 0.08, 0.08, 0.11, 0.6, 150.0, 3.3, {}),
    "wet crates": ("crate", "plastic", 0.6, 0.4, 0.25, 16.0, 14.0, 5.0, {"cleaning.method": "low_pressure"}),
    "shrink bundles": ("bundle", "film", 0.4, 0.27, 0.2, 9.0, 24.0, 4.6, {"rise.turn": 180.0, "space.width": 4.0}),
}  # fmt: skip


def _job(row: Row) -> dict[str, Any]:
    kind, surface, length, width, height, weight, rate, top, more = row
    job = COMMON | {
        "product.type": kind, "product.surface": surface, "product.length": length, "product.width": width,
        "product.height": height, "product.weight": weight, "product.base": length, "product.base_width": width,
        "product.centre_height": 0.5 * height, "rate.normal": rate, "rate.peak": rate, "rise.discharge_height": top,
        "test.grip_slip": 11.0 * weight,
    }  # fmt: skip
    job |= more
    if job["rise.direction"] == "down":
        job |= {"rise.infeed_height": top, "rise.discharge_height": job["rise.infeed_height"]}
    return job


@pytest.fixture(scope="session")
def whole_jobs() -> Mapping[str, dict[str, Any]]:
    """A dozen whole jobs by name."""
    return {name: _job(row) for name, row in ROWS.items()}


@pytest.fixture(scope="session")
def whole_briefs(whole_jobs: Mapping[str, dict[str, Any]]) -> Mapping[str, Brief]:
    """The same, each with its sizing made once, told in metres and kilograms."""
    return {name: Brief(spec=Spec.from_flat(job), system="si") for name, job in whole_jobs.items()}


@pytest.fixture
def cases() -> dict[str, Any]:
    """Taped cases to a mezzanine; what the line does and hours run are open."""
    return {
        "product.type": "case", "product.length": 0.4, "product.width": 0.3, "product.height": 0.25,
        "product.weight": 8.0, "product.closed": True, "product.rigidity": "rigid", "product.surface": "corrugated",
        "rate.peak": 40.0, "rise.direction": "up", "rise.infeed_height": 0.75, "rise.discharge_height": 4.0,
        "rise.turn": 0.0, "space.length": 6.0, "space.width": 2.0, "space.ceiling": 6.0, "handling.squeeze": False,
        "temperature.room": 21.0, "cleaning.method": "dry", "site.hazardous_area": False,
    }  # fmt: skip
