"""The moments of a talk of which pictures are kept: how a person gets there."""

from collections.abc import Awaitable, Callable

from hands import Hands
from textual.screen import Screen

from intake.desk.keeping import Keeper
from intake.desk.list_page import ListPage
from intake.desk.pages import TextPage
from intake.talk import Interview

TYPED = (
    "Open crates 600 x 400 x 300 mm, 15 kg, 1.200/h, up 4 m, mornings mostly 3 lines, 35# board. "
    "Can it go in a freezer?"
)
"""Has a piece of each kind: understood, to be asked back, not used, a question of theirs."""

TRAYS = "Shrink-wrapped trays 400 x 300 x 200 mm, 9 kg, 25 a minute, up from 0.8 m to 4.2 m, forklifts pass below"

Scene = Callable[[Hands], Awaitable[None]]


async def _page(hands: Hands, kind: type[Screen[None]] | type[ListPage]) -> None:
    """Wait for a page that is worked out first."""
    for _ in range(1000):
        await hands.settle()
        if isinstance(hands.app.screen, kind):
            await hands.settle()
            return
    raise AssertionError(f"no {kind.__name__} came")


async def welcome(hands: Hands) -> None:
    """Nothing said yet."""


async def typed(hands: Hands) -> None:
    """A message typed and lit, not sent."""
    await hands.type(TYPED)


async def talking(hands: Hands) -> None:
    """In the midst of a talk: machines, facts, the next question; a question of the visitor's is answered."""
    await hands.send(TRAYS)
    await hands.send("wiped down once a day")
    await hands.send("Can it go in a freezer?")


async def conflict(hands: Hands) -> None:
    """Two different weights: which of them holds?"""
    await hands.send(TRAYS)
    await hands.send("one tray is 12 kg")


async def facts(hands: Hands) -> None:
    """The list of facts."""
    await hands.send(TRAYS)
    await hands.press("f2")
    await _page(hands, ListPage)


async def mending(hands: Hands) -> None:
    """Which words are to be put right?"""
    await hands.type(TYPED)
    await hands.press("tab")
    await _page(hands, ListPage)


async def drafts(hands: Hands) -> None:
    """Messages ready to be sent."""
    await talking(hands)
    await hands.press("ctrl+r")
    await _page(hands, ListPage)


async def advice(hands: Hands) -> None:
    """The page of advice."""
    await hands.send(TRAYS)
    await hands.press("f5")
    await _page(hands, TextPage)


async def refer_out(hands: Hands) -> None:
    """Nothing in the range fits."""
    await hands.send("trays 400 x 300 x 200 mm, 300 kg, 90 a minute, up 40 m")


async def not_saved(hands: Hands) -> None:
    """The book cannot be written."""
    await hands.send(TRAYS)


SCENES: dict[str, Scene] = {
    one.__name__: one
    for one in (welcome, typed, talking, conflict, facts, mending, drafts, advice, refer_out, not_saved)
}


class FullDisk(Keeper):
    """A keeper whose book takes nothing any more."""

    def keep(self, talk: Interview) -> str | None:
        """Say so each time."""
        return "the disk is full. Make room, or name another place with INTAKE_BOOK."
