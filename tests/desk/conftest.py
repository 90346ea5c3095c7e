"""Sits a person down at a desk."""

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager

import pytest
from hands import AtDesk, Hands

from intake.desk.app import Desk
from intake.desk.keeping import Keeper
from intake.talk import Interview


@pytest.fixture
def at_desk(monkeypatch: pytest.MonkeyPatch) -> AtDesk:
    """Sits down at a desk: `async with at_desk(talk, size=(80, 24)) as hands`. The colours are the same everywhere."""
    for name in ("NO_COLOR", "TMUX", "TERM_PROGRAM", "TEXTUAL_THEME"):
        monkeypatch.delenv(name, raising=False)

    @asynccontextmanager
    async def sit(
        talk: Interview | None = None, *, size: tuple[int, int] = (80, 24), keeper: Keeper | None = None
    ) -> AsyncIterator[Hands]:
        app = Desk(talk or Interview(), keeper)
        async with app.run_test(size=size) as pilot:
            hands = Hands(app, pilot)
            await hands.settle()
            yield hands

    return sit


@pytest.fixture
def first_message() -> str:
    """A visitor's first message with enough in it to be sized."""
    return "16x12x10 inch taped cases, 30 lb, 25 a minute, from 30 inches to 14 feet, forklifts drive underneath"
