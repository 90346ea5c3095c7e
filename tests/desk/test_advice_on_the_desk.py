"""Advice, the visitor's own questions, and verdicts before ranking on the desk, driven by keys."""

import asyncio
import threading
from typing import Any

import pytest
from textual.widgets import Static, TextArea

from intake.desk.app import Desk
from intake.desk.pages import TextPage
from intake.desk.prompt import Prompt
from intake.interview.question import Question
from intake.talk import Interview

FIRST = "16x12x10 inch taped cases, 30 lb, 25 a minute, up from 30 inches to 14 ft"


async def send(app: Desk, pilot: Any, words: str) -> None:
    app.screen.query_one(Prompt).text = words
    await pilot.press("enter")
    await app.workers.wait_for_complete()
    await pilot.pause()


def said(app: Desk) -> str:
    return "\n".join(str(line.render()) for line in app.screen.query(Static).filter(".line"))


async def page(app: Desk, pilot: Any, key: str) -> str:
    await pilot.press(key)
    await app.workers.wait_for_complete()
    await pilot.pause()
    assert isinstance(app.screen, TextPage)
    return app.screen.query_one(TextArea).text


async def test_a_question_of_the_visitors_own_gets_a_draft_with_the_figures_of_the_case() -> None:
    talk = Interview()
    app = Desk(talk)
    async with app.run_test(size=(120, 40)) as pilot:
        await send(app, pilot, FIRST)
        await send(app, pilot, "how tall could it go?")
        assert 'They ask: "how tall could it go' in said(app)
        assert "Answer: At this product and rate" in said(app)
        assert talk.spec()["rise.discharge_height"] == pytest.approx(4.2672)


async def test_a_question_without_a_card_says_that_it_goes_to_engineering() -> None:
    talk = Interview()
    app = Desk(talk)
    async with app.run_test(size=(80, 24)) as pilot:
        await send(app, pilot, FIRST)
        await send(app, pilot, "do we need our landlord's leave for it?")
        assert "it becomes a follow-up for engineering" in said(app)
        assert any("landlord" in point.say for point in talk.follow_ups())


async def test_what_if_shows_both_sides_keeps_nothing_and_empties_the_line() -> None:
    talk = Interview()
    app = Desk(talk)
    async with app.run_test(size=(100, 30)) as pilot:
        await send(app, pilot, FIRST)
        before, events = talk.spec(), len(talk.events)
        app.screen.query_one(Prompt).text = "a freezer"
        text = await page(app, pilot, "f10")
        assert "room freezer" in text
        assert "Nothing in the range would stand" in text
        await pilot.press("escape")
        assert app.screen.query_one(Prompt).text == ""
        assert (talk.spec(), len(talk.events)) == (before, events)


async def test_what_if_without_words_says_how_to_use_it() -> None:
    app = Desk(Interview())
    async with app.run_test(size=(80, 24)) as pilot:
        await pilot.press("f10")
        await app.workers.wait_for_complete()
        assert not isinstance(app.screen, TextPage)


async def test_the_page_of_advice_holds_every_subject() -> None:
    app = Desk(Interview())
    async with app.run_test(size=(120, 40)) as pilot:
        await send(app, pilot, FIRST)
        text = await page(app, pilot, "f5")
        heads = ("RECOMMENDATION", "HOW SETTLED", "HOW HIGH", "HOW FAST", "THE ROOM", "DELIVERY", "TO FIND OUT")
        assert all(head in text for head in heads)
        assert "No person rides" in text


async def test_a_machine_in_full_tells_what_would_let_it_stand() -> None:
    app = Desk(Interview())
    async with app.run_test(size=(120, 40)) as pilot:
        await send(app, pilot, FIRST)
        await pilot.press("f3", "end", "enter")
        await app.workers.wait_for_complete()
        await pilot.pause()
        assert isinstance(app.screen, TextPage)
        text = app.screen.query_one(TextArea).text
        assert "would stand with" in text or "No single change" in text


async def test_what_was_understood_and_the_verdicts_stand_before_the_next_question_is_ranked(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    talk = Interview()
    app = Desk(talk)
    async with app.run_test(size=(120, 40)) as pilot:
        await app.workers.wait_for_complete()
        ranked, go_on = threading.Event(), threading.Event()
        ask = talk.ask

        def slow_ask() -> Question | None:
            ranked.set()
            go_on.wait(10.0)
            return ask()

        monkeypatch.setattr(talk, "ask", slow_ask)
        app.screen.query_one(Prompt).text = FIRST
        await pilot.press("enter")
        await asyncio.to_thread(ranked.wait, 10.0)
        await pilot.pause()
        machines = "\n".join(str(row.render()) for row in app.screen.query("#machines .row").results(Static))
        assert "weight of one product 30 lb" in said(app)
        assert "- platform lift: out" in machines
        assert "working" in str(app.screen.query_one("#top", Static).render())
        go_on.set()
        await app.workers.wait_for_complete()
        await pilot.pause()
        assert said(app).count("weight of one product 30 lb") == 1
        assert "Ask: " in str(app.screen.query_one("#say", Static).render())


async def test_a_step_after_a_message_says_all_of_its_lines() -> None:
    app = Desk(Interview())
    async with app.run_test(size=(80, 24)) as pilot:
        await send(app, pilot, FIRST)
        await pilot.press("f9")
        await app.workers.wait_for_complete()
        await pilot.pause()
        assert "Taken back." in said(app)
