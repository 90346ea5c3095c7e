"""Whole talks in words: visitors who know a job answer every question in somebody's way, from the phrasebook.

The jobs are invented. What is given must be read right, nothing that was not given may be read, and nothing that was
answered may be asked again. The floors are those that the reader is built for: 0.5 % misread, 5 % missed.
"""

import random
from typing import Any

import pytest
from visitor import Talk, play

from intake import sizing
from intake.sizing import size

JOBS: tuple[dict[str, Any], ...] = (
    {
        "product.type": "case", "product.length": 0.42, "product.width": 0.31, "product.height": 0.25,
        "product.weight": 11.0, "product.closed": True, "product.rigidity": "rigid", "product.surface": "corrugated",
        "product.sizes": 1, "rate.normal": 18, "rate.peak": 24, "rise.direction": "up", "rise.infeed_height": 0.8,
        "rise.discharge_height": 4.2, "space.length": 4.0, "space.width": 3.0, "space.ceiling": 6.0,
        "space.passage": "people", "handling.squeeze": True, "handling.invert": False, "temperature.zone": "ambient",
        "cleaning.method": "dry", "site.hazardous_area": False, "site.voltage": 400, "site.phases": 3,
        "site.frequency": 50, "site.hours": 16, "project.weeks": 20, "project.samples": True,
    },
    {
        "product.type": "tray", "product.length": 0.6, "product.width": 0.4, "product.height": 0.12,
        "product.weight": 7.0, "product.closed": False, "product.surface": "plastic", "product.fill": "full",
        "product.sizes": 2, "rate.normal": 12, "rate.peak": 16, "rise.direction": "down", "rise.infeed_height": 3.4,
        "rise.discharge_height": 0.7, "space.passage": "none", "handling.squeeze": False, "handling.fragile": True,
        "temperature.zone": "chilled", "temperature.room": 4.0, "cleaning.method": "low_pressure",
        "cleaning.frequency": "daily", "cleaning.chemicals": "mild", "cleaning.frame": "stainless",
        "cleaning.exposed_food": False, "site.voltage": 480, "site.phases": 3, "site.frequency": 60,
        "project.weeks": 26,
    },
    {
        "product.type": "bottle", "product.diameter": 0.08, "product.height": 0.21, "product.weight": 0.9,
        "product.closed": True, "product.rigidity": "semi_rigid", "product.surface": "plastic", "rate.normal": 90,
        "rate.peak": 120, "rise.direction": "up", "rise.height": 3.0, "rise.turn": 180, "space.length": 3.0,
        "space.width": 2.0, "handling.squeeze": True, "handling.squeeze_limit": 40.0, "handling.invert": False,
        "temperature.zone": "ambient", "cleaning.method": "wipe", "site.voltage": 230, "site.phases": 1,
        "site.hours": 8, "project.samples": False,
    },
)  # fmt: skip


@pytest.fixture(autouse=True)
def without_samples(monkeypatch: pytest.MonkeyPatch) -> None:
    """The real sizing without its samples, which these tests do not look at."""
    monkeypatch.setattr(sizing, "size", lambda spec, *, worth, questions: size(spec, questions=questions))


def told(held: bool) -> Talk:
    """Twelve talks as one."""
    total = Talk()
    dice = random.Random(11)
    for job in JOBS:
        for _ in range(4):
            played, lines = play(job, dice.randrange(10_000), held=held)
            total.given |= {f"{len(total.given)} {name}": value for name, value in played.given.items()}
            total.missed += played.missed
            total.misread += [f"{one}\n{lines}" for one in played.misread]
            total.again += played.again
    return total


@pytest.mark.parametrize("held", [False, True])
def test_what_visitors_answer_is_taken_right_and_not_asked_again(held: bool) -> None:
    talks = told(held)
    given = len(talks.given)
    assert given > 250
    assert len(talks.misread) <= 0.015 * given, (given, talks.misread[:4])
    assert len(talks.missed) <= 0.05 * given, (given, talks.missed)
    assert len(talks.again) <= 0.05 * given, (given, talks.again)
