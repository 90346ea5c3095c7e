"""The desk stands at once and takes words; what it needs for the talk is loaded behind that."""

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

import pytest
from hands import Hands

from intake.casebook import Book
from intake.desk.anteroom import Anteroom
from intake.desk.app import Desk
from intake.desk.keeping import Keeper
from intake.desk.list_page import ListPage
from intake.desk.talk_screen import TalkScreen
from intake.talk import Interview


@pytest.fixture(autouse=True)
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("INTAKE_BOOK", str(tmp_path / "book.db"))
    return tmp_path / "book.db"


@asynccontextmanager
async def arriving(app: Desk) -> AsyncIterator[Hands]:
    """The desk from its first frame on."""
    async with app.run_test(size=(80, 24)) as pilot:
        yield Hands(app, pilot)


async def at_the_case(hands: Hands) -> TalkScreen:
    """Wait until the case has come."""
    for _ in range(1000):
        await hands.pilot.pause(0.01)
        if hands.app.cases and not isinstance(hands.app.screen, Anteroom):
            await hands.settle()
            return hands.app.front
    raise AssertionError("no case came")


async def test_a_new_case_comes_without_anybody_doing_anything(first_message: str) -> None:
    async with arriving(Desk()) as hands:
        await at_the_case(hands)
        assert "Paste what the visitor wrote" in hands.said()
        await hands.send(first_message)
        assert hands.talk.facts


async def test_words_typed_sent_and_keys_pressed_before_the_case_is_there_are_not_lost(first_message: str) -> None:
    async with arriving(Desk()) as hands:
        assert isinstance(hands.app.screen, Anteroom)
        await hands.pilot.press(*"ab ", "enter", *"12 kg")
        await hands.pilot.press("f4")
        await at_the_case(hands)
        assert [text for text, _ in hands.talk.case.messages.values()] == ["ab"]
        assert hands.prompt.text == "12 kg"
        assert isinstance(hands.app.screen, ListPage)


async def test_a_kept_case_is_opened_with_its_draft(first_message: str) -> None:
    talk = Interview()
    talk.hear(first_message)
    keeper = Keeper("tea")
    keeper.keep(talk)
    keeper.type("half a")
    async with arriving(Desk(opening="tea")) as hands:
        await at_the_case(hands)
        assert first_message in hands.said()
        assert hands.line("#say").startswith("Ask: ")
        assert hands.prompt.text == "half a"


async def test_a_damaged_book_ends_the_desk_with_its_trouble(book: Path) -> None:
    with Book() as kept:
        kept.cases("")
    book.write_bytes(b"no book at all" * 1000)
    app = Desk(opening="tea")
    async with app.run_test(size=(80, 24)) as pilot:
        for _ in range(1000):
            await pilot.pause(0.01)
            if app.trouble is not None:
                break
    assert app.trouble is not None
    assert "book" in str(app.trouble)
