"""The desk driven by keys, as a person would: what it shows is what the talk below it holds."""

from pathlib import Path
from typing import Any

import pytest
from textual import events
from textual.widgets import OptionList, Static, TextArea

from intake.casebook import Book
from intake.desk.app import Desk
from intake.desk.keeping import Keeper, resume
from intake.desk.keys import KEYS, LEAVE, foot_rows
from intake.desk.pages import ListPage, SurePage, TextPage
from intake.desk.panels import Conversation, Panel, QuestionCard
from intake.desk.prompt import Prompt
from intake.desk.steps import Steps
from intake.desk.talk_screen import TalkScreen
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
        assert "- out: " in text_of(app, "#strip")
        assert "leads" in text_of(app, "#standing")
        rows = frame(app)
        assert len(rows) == size[1]
        assert all(len(row) <= size[0] for row in rows)
        assert tuple(rows[-2:]) == foot_rows()
        assert app.screen.query_one(Prompt).region.bottom == size[1] - 2


@pytest.mark.parametrize(("size", "roomy"), [((80, 24), False), ((120, 40), True), ((160, 50), True)])
async def test_panels_show_where_there_is_room_and_else_the_machines_in_short(
    size: tuple[int, int], roomy: bool
) -> None:
    app = Desk(Interview())
    async with app.run_test(size=size) as pilot:
        await send(app, pilot, MESSAGE)
        assert [panel.display for panel in app.screen.query(Panel)] == [roomy] * 3
        assert app.screen.query_one("#strip").display is not roomy
        shown = "\n".join(frame(app))
        assert ("FACTS" in shown) is roomy
        assert ("? depends: " in shown) is not roomy
        talking = app.screen.query_one("#conversation").region
        assert talking.height >= 8
        assert talking.width >= 50


def test_every_key_of_the_desk_stands_at_the_foot_within_80_columns() -> None:
    first, second = foot_rows()
    assert len(first) <= 80
    assert len(second) <= 80
    assert all(f"{key.cap} {key.word}" in f"{first} {second}" for key in KEYS)
    assert LEAVE in second


async def test_the_conversation_is_leafed_through_from_the_answer_line() -> None:
    app = Desk(Interview())
    async with app.run_test(size=(80, 24)) as pilot:
        await send(app, pilot, MESSAGE)
        said = app.screen.query_one(Conversation)
        newest = said.scroll_y
        await pilot.press("pageup")
        await pilot.pause()
        assert said.scroll_y < newest
        await pilot.press("pagedown")
        await pilot.pause()
        assert said.scroll_y == newest


async def test_without_colour_signs_and_words_tell_the_verdicts(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("NO_COLOR", "1")
    app = Desk(Interview())
    async with app.run_test(size=(160, 50)) as pilot:
        await send(app, pilot, MESSAGE)
        rows = [str(row.render()) for row in app.screen.query_one("#machines", Panel).query(".row")]
        assert len(rows) == 9
        assert sum("best: " in row for row in rows) == 1
        assert all(row.startswith(("+ ", "? ", "- ")) for row in rows)
        assert all(("out: " in row) is row.startswith("- ") for row in rows)


async def test_enter_alone_asks_the_first_question() -> None:
    app = Desk(Interview())
    async with app.run_test(size=(80, 24)) as pilot:
        await app.workers.wait_for_complete()
        assert not text_of(app, "#say").startswith("Ask: ")
        await send(app, pilot, "")
        assert text_of(app, "#say").startswith("Ask: ")


async def test_a_second_press_answers_no_question_that_nobody_has_seen() -> None:
    talk = Interview()
    app = Desk(talk)
    async with app.run_test(size=(80, 24)) as pilot:
        await send(app, pilot, MESSAGE)
        screen = app.screen
        assert isinstance(screen, TalkScreen)
        assert screen.shown is not None
        assert screen.shown.question is not None
        asked = set(screen.shown.question.fields)
        screen.action_answer("unknown")
        screen.action_answer("unknown")
        await app.workers.wait_for_complete()
        assert talk.case.unknown == asked


async def test_words_sent_before_the_next_question_was_seen_are_a_message_and_no_answer_to_it() -> None:
    talk = Interview()
    steps = Steps(talk, None)
    steps.start()
    shown = steps.say(MESSAGE, None)
    assert shown.question is not None
    steps.say("and we are in a hurry", None)
    assert [event.body.get("to") for event in talk.events if event.kind == "heard"] == [None, None]
    steps.say("no idea yet, maybe film", shown.question.id)
    assert talk.events[-2].body.get("to") == shown.question.id or shown.question.fields[0] in talk.case.unknown


async def test_a_fault_of_the_program_is_a_line_and_the_desk_goes_on(monkeypatch: pytest.MonkeyPatch) -> None:
    talk = Interview()
    app = Desk(talk)
    async with app.run_test(size=(80, 24)) as pilot:
        await app.workers.wait_for_complete()
        with monkeypatch.context() as patch:
            patch.setattr(talk, "hear", lambda text: 1 / 0)
            await send(app, pilot, MESSAGE)
        shown = [str(line.render()) for line in app.screen.query_one(Conversation).query(Static)]
        assert any("could not be worked on (ZeroDivisionError" in line for line in shown)
        await send(app, pilot, MESSAGE)
        assert talk.facts


async def test_a_paste_too_long_for_one_message_is_cut_and_said_so() -> None:
    app = Desk(Interview())
    async with app.run_test(size=(80, 24)) as pilot:
        await app.workers.wait_for_complete()
        app.screen.query_one(Prompt).post_message(events.Paste("x" * 30_000))
        await pilot.pause()
        shown = [str(line.render()) for line in app.screen.query_one(Conversation).query(Static)]
        assert any("Only the first 20000 characters" in line for line in shown)


async def test_the_command_palette_names_every_key_and_leaving_asks() -> None:
    app = Desk(Interview())
    async with app.run_test(size=(80, 24)) as pilot:
        await app.workers.wait_for_complete()
        titles = [command.title for command in app.get_system_commands(app.screen)]
        assert all(f"{key.word} ({key.cap})" in titles for key in KEYS)
        await pilot.press("ctrl+p")
        await pilot.pause()
        assert not isinstance(app.screen, TalkScreen)


async def test_the_question_is_copied_and_shown_to_select() -> None:
    talk = Interview()
    app = Desk(talk)
    async with app.run_test(size=(80, 24)) as pilot:
        await send(app, pilot, MESSAGE)
        await pilot.press("ctrl+y")
        await pilot.pause()
        assert talk.current is not None
        assert app.clipboard.startswith(talk.current.say)
        assert app.screen.query_one(TextArea).text == app.clipboard


async def test_another_question_is_asked_from_the_list() -> None:
    talk = Interview()
    app = Desk(talk)
    async with app.run_test(size=(80, 24)) as pilot:
        await send(app, pilot, MESSAGE)
        third = talk.open_questions()[2]
        await pilot.press("f4")
        await pilot.pause()
        app.screen.query_one(OptionList).highlighted = 2
        await pilot.press("enter")
        await app.workers.wait_for_complete()
        await pilot.pause()
        assert talk.current is not None
        assert talk.current.id == third.id
        assert third.say.split()[0] in text_of(app, "#say")


async def test_the_question_stands_above_its_answer_in_the_conversation() -> None:
    talk = Interview()
    app = Desk(talk)
    async with app.run_test(size=(80, 24)) as pilot:
        await send(app, pilot, MESSAGE)
        assert talk.current is not None
        say = talk.current.say
        await send(app, pilot, "no idea")
        lines = [str(line.render()) for line in app.screen.query_one(Conversation).query(Static)]
        at = lines.index(f"Asked: {say}")
        assert lines[at + 1] == "visitor: no idea"
        assert "open point" in lines[at + 2]


async def test_a_note_is_kept_and_not_read_for_facts() -> None:
    talk = Interview()
    app = Desk(talk)
    async with app.run_test(size=(80, 24)) as pilot:
        await app.workers.wait_for_complete()
        app.screen.query_one(Prompt).text = "rang back, 99 kg was a joke"
        await pilot.press("ctrl+n")
        await app.workers.wait_for_complete()
        assert talk.case.notes == ["rang back, 99 kg was a joke"]
        assert talk.facts == []


async def test_a_paste_of_several_lines_arrives_whole_and_clean() -> None:
    app = Desk(Interview())
    async with app.run_test(size=(80, 24)) as pilot:
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
        assert "new weight of one product" in text_of(app, "#say")
        await send(app, pilot, "40 lb")
        assert talk.spec()["product.weight"] == pytest.approx(18.1436948)
        assert talk.case.quarrels == {}
        assert text_of(app, "#say").startswith("Ask: ")


async def test_changing_one_of_several_dimensions_leaves_the_others() -> None:
    talk = Interview()
    steps = Steps(talk, None)
    steps.say(MESSAGE, None)
    before = talk.spec()
    steps.change("product.length@1")
    steps.say("18 in", None)
    after = talk.spec()
    assert after["product.length"] == pytest.approx(0.4572)
    assert {key: after[key] for key in after if key != "product.length"} == {
        key: before[key] for key in before if key != "product.length"
    }


async def test_a_further_size_is_changed_and_not_the_first() -> None:
    talk = Interview()
    talk.know("product.length", 0.4)
    talk.know("product.length", 0.3, size=2)
    steps = Steps(talk, None)
    steps.change("product.length@2")
    steps.say("350 mm", None)
    assert talk.spec()["product.length"] == pytest.approx(0.4)
    assert talk.spec()["product.length@2"] == pytest.approx(0.35)


async def test_the_number_of_a_size_does_not_run_into_its_figure() -> None:
    app = Desk(Interview())
    async with app.run_test(size=(80, 24)) as pilot:
        await send(app, pilot, "two trays: 16 x 12 x 5 in and 24 x 15 3/4 x 6 in")
        lines = [str(line.render()) for line in app.screen.query_one(Conversation).query(Static)]
        assert any("product width, size 2: 15 3/4 in" in line for line in lines)


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
        assert "kept as candles" in text_of(app, "#top")
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
        assert "NOT SAVED: the disk is full" in text_of(app, "#trouble")
        assert app.screen.query_one("#trouble").display
        assert talk.facts
