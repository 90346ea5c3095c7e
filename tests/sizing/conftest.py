"""Random jobs for the audits: whole ones of every kind of product, and parts of them."""

from collections.abc import Callable
from random import Random
from typing import Any

import pytest

KINDS = {
    "case": (0.2, 0.7, 100, 700, 4, 70),
    "carton": (0.08, 0.4, 100, 700, 10, 150),
    "tray": (0.25, 0.6, 200, 900, 5, 80),
    "bottle": (0.05, 0.14, 500, 1000, 20, 300),
    "jar": (0.05, 0.15, 600, 1200, 20, 250),
    "bag": (0.3, 0.8, 300, 900, 5, 30),
    "pouch": (0.1, 0.3, 200, 700, 20, 120),
    "tote": (0.35, 0.7, 80, 400, 4, 40),
    "keg": (0.23, 0.42, 700, 1050, 1, 12),
    "pallet_load": (0.8, 1.25, 150, 800, 0.1, 1.0),
}


def whole_spec(rng: Random) -> dict[str, Any]:
    """A job of which everything that matters is said."""
    kind = rng.choice(sorted(KINDS))
    low, high, light, dense, slow, fast = KINDS[kind]
    length = rng.uniform(low, high)
    width = length * rng.uniform(0.5, 1.0)
    tall = 2.2 if kind in ("bottle", "keg") else 0.9
    height = length * rng.uniform(0.35, tall)
    infeed, rise = rng.uniform(0.5, 1.0), rng.uniform(0.5, 8.0)
    way = rng.choice(["up", "up", "down"])
    low_level, high_level = infeed, infeed + rise
    normal = rng.uniform(slow, fast)
    spec: dict[str, Any] = {
        "product.type": kind,
        "product.length": round(length, 4),
        "product.width": round(width, 4),
        "product.height": round(height, 4),
        "product.weight": round(max(0.03, length * width * height * rng.uniform(light, dense)), 4),
        "product.fill": rng.choice(["full", "full", "empty", "both"]),
        "product.closed": rng.random() < 0.8,
        "product.rigidity": rng.choice(["rigid", "rigid", "semi_rigid", "soft"]),
        "product.surface": rng.choice(
            ["corrugated", "paperboard", "plastic", "film", "glass", "metal", "wood", "other"]
        ),
        "product.wet": rng.random() < 0.1,
        "rate.normal": round(normal, 3),
        "rate.peak": round(normal * rng.uniform(1.0, 1.5), 3),
        "rate.backs_up": rng.random() < 0.5,
        "rise.direction": way,
        "rise.infeed_height": round(low_level if way == "up" else high_level, 3),
        "rise.discharge_height": round(high_level if way == "up" else low_level, 3),
        "rise.turn": rng.choice([0.0, 90.0, 180.0, 270.0]),
        "space.length": round(rng.uniform(1.0, 14.0), 2),
        "space.width": round(rng.uniform(0.7, 4.0), 2),
        "space.ceiling": round(high_level + rng.uniform(0.2, 3.0), 2),
        "space.passage": rng.choice(["none", "none", "people", "forklift"]),
        "handling.squeeze": rng.random() < 0.6,
        "handling.squeeze_limit": round(rng.uniform(10, 300), 1),
        "handling.invert": rng.random() < 0.3,
        "handling.fragile": rng.random() < 0.3,
        "handling.press_top": rng.random() < 0.6,
        "handling.tilt": rng.choice([10.0, 30.0, 60.0, 90.0, 180.0]),
        "temperature.room": round(rng.choice([-20.0, 4.0, 18.0, 21.0, 25.0, 50.0]), 1),
        "temperature.product": rng.choice([4.0, 21.0, 65.0]),
        "cleaning.method": rng.choice(["dry", "wipe", "low_pressure", "high_pressure", "clean_in_place"]),
        "cleaning.exposed_food": rng.random() < 0.1,
        "site.hazardous_area": rng.random() < 0.05,
        "site.air": rng.random() < 0.8,
        "site.hours": rng.choice([8.0, 16.0, 24.0]),
        "site.frequency": rng.choice([50.0, 60.0]),
        "project.weeks": rng.uniform(4, 40),
    }
    if rng.random() < 0.2:
        spec["product.weight"] = [round(spec["product.weight"] * 0.6, 4), spec["product.weight"]]
    if rng.random() < 0.15:
        spec["product.length@2"] = round(length * 0.8, 4)
        spec["product.width@2"] = round(width * 0.8, 4)
        spec["product.height@2"] = round(height * 0.7, 4)
        spec["product.weight@2"] = round(max(0.03, 0.4 * length * width * height * dense), 4)
    return spec


def part_of(spec: dict[str, Any], rng: Random, share: float) -> dict[str, Any]:
    """Some of the facts of a job."""
    first = {key: value for key, value in spec.items() if rng.random() < share}
    return {k: v for k, v in first.items() if "@" not in k} | {k: v for k, v in spec.items() if "@" in k}


@pytest.fixture(scope="session")
def whole() -> Callable[[Random], dict[str, Any]]:
    """A random job of which everything that matters is said."""
    return whole_spec


@pytest.fixture(scope="session")
def part() -> Callable[[dict[str, Any], Random, float], dict[str, Any]]:
    """Some of the facts of a job."""
    return part_of


@pytest.fixture
def case_up() -> dict[str, Any]:
    """Taped cases to a mezzanine: an everyday job with room for everything."""
    return {
        "product.type": "case",
        "product.length": 0.4,
        "product.width": 0.3,
        "product.height": 0.25,
        "product.weight": 8.0,
        "product.fill": "full",
        "product.closed": True,
        "product.rigidity": "rigid",
        "product.surface": "corrugated",
        "rate.normal": 20.0,
        "rate.peak": 25.0,
        "rise.direction": "up",
        "rise.infeed_height": 0.75,
        "rise.discharge_height": 4.0,
        "rise.turn": 0.0,
        "space.length": 14.0,
        "space.width": 4.0,
        "space.ceiling": 7.0,
        "space.passage": "none",
        "handling.squeeze": True,
        "handling.squeeze_limit": 400.0,
        "handling.invert": True,
        "temperature.room": 21.0,
        "cleaning.method": "dry",
        "site.hazardous_area": False,
        "site.air": True,
    }
