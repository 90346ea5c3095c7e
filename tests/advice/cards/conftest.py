"""Whole cases, invented: one that fits, one undecided, one referred out; and no case at all."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from intake.advice.brief import Brief
from intake.advice.cards import Deck, deck_of
from intake.spec.flat import Spec

FITS: dict[str, Any] = {
    "product.type": "case", "product.length": 0.4, "product.width": 0.3, "product.height": 0.25, "product.weight": 8.0,
    "product.closed": True, "product.rigidity": "rigid", "product.surface": "corrugated", "rate.peak": 40.0,
    "rise.direction": "up", "rise.infeed_height": 0.75, "rise.discharge_height": 4.0, "rise.turn": 0.0,
    "space.length": 6.0, "space.width": 2.0, "space.ceiling": 6.0, "handling.squeeze": False,
    "temperature.room": 21.0, "cleaning.method": "dry", "site.hazardous_area": False, "site.voltage": 480.0,
    "site.hours": 16.0, "product.sizes": 3.0, "product.mix": "batches",
}  # fmt: skip
UNDECIDED: dict[str, Any] = {
    "product.type": "bottle", "product.diameter": 0.07, "product.height": 0.24, "product.weight": [0.9, 1.1],
    "product.surface": "glass", "rate.normal": 80.0, "rise.height": 4.5, "rise.direction": "up",
}  # fmt: skip
BARELY: dict[str, Any] = {"product.type": "tote", "product.weight": 14.0}
OUT: dict[str, Any] = {name: value for name, value in FITS.items() if name != "temperature.room"} | {
    "temperature.zone": "freezer"
}
CASES = {"none": {}, "fits": FITS, "undecided": UNDECIDED, "barely begun": BARELY, "referred out": OUT}


@pytest.fixture(scope="session")
def deck() -> Deck:
    """The shipped cards."""
    return deck_of()


@pytest.fixture(scope="session")
def briefs() -> dict[str, Brief]:
    """Each case with its sizing, made once."""
    return {name: Brief(spec=Spec.from_flat(flat)) for name, flat in CASES.items()}


@pytest.fixture(scope="session")
def labelled() -> dict[str, Any]:
    """The ways of asking with the card that each is about."""
    return tomllib.loads((Path(__file__).parent / "asked.toml").read_text(encoding="utf-8"))
