"""The desk driven by keys, as a person would: what it shows is what the talk below it holds."""

from pathlib import Path
from typing import Any

import pytest
from textual.widgets import OptionList, Static, TextArea

from intake.casebook import Book
from intake.desk.app import Desk
from intake.desk.keeping import Keeper, resume
from intake.desk.pages import ListPage, SurePage, TextPage
from intake.desk.panels import Conversation, Panel, QuestionCard
from intake.desk.prompt import Prompt
from intake.desk.talk_screen import KEYS, TalkScreen
from intake.talk import Interview

SIZES = [(80, 24), (120, 40), (160, 50)]
MESSAGE = "16x12x10 inch taped cases, 30 lb, 25 a minute, from 30 inches to 14 feet, forklifts drive underneath"


@pytest.fixture(autouse=True)
def colours(monkeypatch: pytest.MonkeyPatch) -> None:
    """The same screen whatever the environment says of colour."""
    monkeypatch.delenv("NO_COLOR", raising=False)


def frame(app: Desk) -> list[str]:
    """The screen as rows of text."""
    strips = app.screen._compositor.render_strips()  # the only way to the text of a frame
    return ["".join(segment.text for segment in strip).rstrip() for strip in strips]


def text_of(app: Desk, selector: str) -> str:
    """What a line of the desk says."""
    return str(app.screen.query_one(selector, Static).render())


async def send(app: Desk, pilot: Any, words: str) -> None:
    """Type words and press Enter, and wait for what comes of it."""
    app.screen.query_one(Prompt).text = words
    await pilot.press("enter")
    await app.workers.wait_for_complete()
    await pilot.pause()


@pytest.mark.parametrize("size", SIZES)
async def test_a_pasted_message_becomes_facts_machines_and_the_next_question(size: tuple[int, int]) -> None:
    talk = Interview()
    app = Desk(talk)
    async with app.run_test(size=size) as pilot:
        await app.workers.wait_for_complete()
        await send(app, pilot, MESSAGE)
        assert talk.spec()["product.weight"] == pytest.approx(13.6077711)
        assert text_of(app, "#say").startswith("Ask: ")
        assert text_of(app, "#why").startswith("Why: ")
        assert "out" in text_of(app, "#standing")
        rows = frame(app)
        assert len(rows) == size[1]
        assert all(len(row) <= size[0] for row in rows)
        assert KEYS in rows[-1]


async def test_narrow_screens_have_no_side_and_wide_ones_do() -> None:
    for size, wide in (((80, 24), False), ((160, 50), True)):
        app = Desk(Interview())
        async with app.run_test(size=size) as pilot:
            await app.workers.wait_for_complete()
            await pilot.pause()
            assert app.screen.query_one("#side").display is wide


async def test_a_paste_of_several_lines_arrives_whole_and_clean() -> None:
    app = Desk(Interview())
    async with app.run_test(size=(80, 24)) as pilot:
        from textual import events

        app.screen.query_one(Prompt).post_message(events.Paste("one\ntwo \x1b[31mred\x07\nthree"))
        await pilot.pause()
        assert app.screen.query_one(Prompt).text == "one\ntwo red\nthree"


async def test_unknown_later_undo_and_redo_by_keys_alone() -> None:
    talk = Interview()
    app = Desk(talk)
    async with app.run_test(size=(80, 24)) as pilot:
        await send(app, pilot, MESSAGE)
        assert talk.current is not None
        asked = set(talk.current.fields)
        await pilot.press("f6")
        await app.workers.wait_for_complete()
        assert asked & talk.case.unknown
        await pilot.press("f7")
        await app.workers.wait_for_complete()
        assert talk.case.later
        await pilot.press("f9")
        await app.workers.wait_for_complete()
        assert not talk.case.later
        await pilot.press("f12")
        await app.workers.wait_for_complete()
        assert talk.case.later


async def test_hostile_words_show_as_words() -> None:
    app = Desk(Interview())
    async with app.run_test(size=(80, 24)) as pilot:
        await send(app, pilot, "[/] [@click=app.quit]press[/] 12 [in] x 10 [in]\x1b]52;c;AAAA\x07")
        shown = [str(line.render()) for line in app.screen.query_one(Conversation).query(Static)]
        assert any("[@click=app.quit]press[/] 12 [in] x 10 [in]" in line for line in shown)
        assert not any("\x1b" in line for line in shown)
        assert app.is_running


async def test_a_fact_is_said_anew_from_the_list_of_facts() -> None:
    talk = Interview()
    app = Desk(talk)
    async with app.run_test(size=(120, 40)) as pilot:
        await send(app, pilot, MESSAGE)
        await pilot.press("f2")
        await pilot.pause()
        page = app.screen
        assert isinstance(page, ListPage)
        place = [fact.field for fact in talk.facts].index("product.weight")
        page.query_one(OptionList).highlighted = place
        await pilot.press("enter")
        await app.workers.wait_for_complete()
        await pilot.pause()
        await send(app, pilot, "40 lb")
        assert talk.spec()["product.weight"] == pytest.approx(18.1436948)


async def test_pages_open_on_their_keys_and_close_with_escape() -> None:
    app = Desk(Interview())
    async with app.run_test(size=(80, 24)) as pilot:
        await send(app, pilot, MESSAGE)
        for key, kind, word in (("f1", TextPage, "THE LOOP"), ("f5", TextPage, "RECOMMENDATION")):
            await pilot.press(key)
            await app.workers.wait_for_complete()
            await pilot.pause()
            assert isinstance(app.screen, kind)
            assert word in app.screen.query_one(TextArea).text
            await pilot.press("escape")
            await pilot.pause()
        await pilot.press("f3")
        await pilot.pause()
        await pilot.press("enter")
        await pilot.pause()
        assert "CHECKS" in app.screen.query_one(TextArea).text
        assert "source:" in app.screen.query_one(TextArea).text
        await pilot.press("escape")
        await pilot.pause()
        assert isinstance(app.screen, TalkScreen)


async def test_leaving_asks_first() -> None:
    app = Desk(Interview())
    async with app.run_test(size=(80, 24)) as pilot:
        await app.workers.wait_for_complete()
        await pilot.press("ctrl+q")
        await pilot.pause()
        assert isinstance(app.screen, SurePage)
        await pilot.press("n")
        await pilot.pause()
        assert isinstance(app.screen, TalkScreen)


async def test_a_sample_message_is_one_key_away() -> None:
    app = Desk(Interview())
    async with app.run_test(size=(80, 24)) as pilot:
        await app.workers.wait_for_complete()
        await pilot.press("ctrl+t")
        assert "mezzanine" in app.screen.query_one(Prompt).text


async def test_what_was_said_is_in_the_book_and_the_talk_goes_on_from_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("INTAKE_BOOK", str(tmp_path / "book.db"))
    app = Desk(Interview(), Keeper("candles"), "candles")
    async with app.run_test(size=(80, 24)) as pilot:
        await send(app, pilot, MESSAGE)
        assert "saved" in text_of(app, "#top")
    with Book() as book:
        assert [event.kind for event in book.events("candles")][:2] == ["message", "heard"]
    again = resume("candles")
    assert again is not None
    app = Desk(again, Keeper("candles"), "candles")
    async with app.run_test(size=(160, 50)) as pilot:
        await app.workers.wait_for_complete()
        await pilot.pause()
        facts = app.screen.query_one("#facts", Panel)
        assert any("30 lb" in str(row.render()) for row in facts.query(Static))
        assert app.screen.query_one(QuestionCard).query_one("#say", Static)


async def test_trouble_with_the_book_is_said_and_the_work_goes_on(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("INTAKE_BOOK", str(tmp_path / "book.db"))
    keeper = Keeper("x")
    monkeypatch.setattr(keeper, "keep", lambda talk: "the disk is full")
    talk = Interview()
    app = Desk(talk, keeper, "x")
    async with app.run_test(size=(80, 24)) as pilot:
        await send(app, pilot, MESSAGE)
        assert "NOT SAVED: the disk is full" in text_of(app, "#top")
        assert talk.facts
