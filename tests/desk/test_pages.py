"""The pages over the desk: facts, machines, what is to ask, advice, drafts, help, the palette."""

import pytest
from hands import AtDesk

from intake.advice import recommendation
from intake.desk.commands.table import COMMANDS
from intake.desk.keys import KEYS
from intake.desk.list_page import ListPage
from intake.desk.pages import SurePage, TextPage
from intake.spec import Spec
from intake.talk import Interview


async def test_help_names_every_key_and_every_command(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.press("f1")
        text = hands.page()
        assert all(f"{key.cap:<7} {key.does}" in text for key in KEYS)
        assert all(f"/{command.word}" in text for command in COMMANDS)
        assert "local codes" in text
        await hands.press("escape")
        assert hands.on_the_talk()


async def test_the_page_of_advice_holds_the_recommendation_and_its_caveats(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk(size=(120, 40)) as hands:
        await hands.send(first_message)
        await hands.press("f5")
        text = hands.page()
        heads = ("RECOMMENDATION", "HOW SETTLED", "HOW HIGH", "HOW FAST", "THE ROOM", "DELIVERY", "TO FIND OUT")
        assert all(head in text for head in heads)
        assert "No person rides" in text


async def test_a_machine_in_full_shows_every_check_with_formula_and_source(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        await hands.press("f3", "enter")
        assert isinstance(hands.app.screen, TextPage)
        assert "CHECKS" in hands.page()
        assert "source:" in hands.page()
        await hands.press("escape")
        assert hands.on_the_talk()


async def test_a_machine_that_is_out_tells_what_would_let_it_stand(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        await hands.press("f3")
        await hands.choose("- platform lift")
        assert "would stand with" in hands.page() or "No single change" in hands.page()


async def test_another_question_is_asked_from_the_list(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        third = hands.talk.open_questions()[2]
        await hands.press("f4")
        await hands.choose(third.say[:20])
        assert hands.talk.current is not None
        assert hands.talk.current.id == third.id
        assert third.say.split()[0] in hands.line("#say")


async def test_typing_in_a_list_leaves_the_lines_with_these_words(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        await hands.press("f2")
        await hands.press(*"WEIGHT")
        assert len(hands.rows()) == 1
        assert "find: WEIGHT" in "\n".join(hands.frame())
        await hands.press(*"zz")
        assert hands.rows() == []
        assert "Nothing here" in "\n".join(hands.frame())
        await hands.press("backspace", "backspace", "enter")
        assert "new weight of one product" in hands.line("#say")


async def test_a_fact_is_said_anew_from_the_list_of_facts(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk(size=(120, 40)) as hands:
        await hands.send(first_message)
        await hands.press("f2")
        await hands.choose("weight of one product")
        assert "It stands at 30 lb" in hands.line("#say")
        await hands.send("40 lb")
        assert hands.talk.spec()["product.weight"] == pytest.approx(18.1436948)
        assert hands.talk.case.quarrels == {}
        assert hands.line("#say").startswith("Ask: ")


async def test_enter_alone_leaves_a_fact_as_it_is(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        before = hands.talk.spec()
        await hands.press("f2")
        await hands.choose("weight of one product")
        await hands.press("enter")
        assert hands.talk.spec() == before
        assert "Left as it is." in hands.said()


async def test_a_fact_is_dropped_from_the_list_and_undo_brings_it_back(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        await hands.press("f2")
        await hands.press(*"weight", "delete")
        assert "product.weight" not in hands.talk.spec()
        await hands.press("f9")
        assert "product.weight" in hands.talk.spec()


async def test_a_further_size_is_changed_and_not_the_first(at_desk: AtDesk) -> None:
    talk = Interview()
    talk.know("product.length", 0.4)
    talk.know("product.length", 0.3, size=2)
    async with at_desk(talk) as hands:
        await hands.press("f2")
        await hands.choose("product length, size 2")
        await hands.send("350 mm")
        assert hands.talk.spec()["product.length"] == pytest.approx(0.4)
        assert hands.talk.spec()["product.length@2"] == pytest.approx(0.35)


async def test_drafts_hold_question_answer_summary_and_samples_and_one_is_copied(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.send("shrink-wrapped trays 400 x 300 x 200 mm, 9 kg, 25 a minute, up 3.4 m. How tall could it go?")
        await hands.press("ctrl+r")
        rows = hands.rows()
        leads = ("Next question", "Answer to", "Summary of the recommendation", "Request for samples")
        assert all(any(row.startswith(lead) for row in rows) for lead in leads)
        await hands.choose("Summary of the recommendation")
        brief = hands.talk.brief
        lines = recommendation(brief.result, Spec.from_flat(hands.talk.spec()), hands.talk.system)
        assert hands.app.clipboard == "\n".join(lines) == hands.page()


async def test_the_answer_to_the_visitors_own_question_is_a_draft(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        await hands.send("how tall could it go?")
        assert 'They ask: "how tall could it go' in hands.said()
        await hands.press("ctrl+r")
        await hands.choose("Answer, and the next question")
        assert hands.talk.current is not None
        assert hands.talk.current.say in hands.app.clipboard
        await hands.press("escape", "ctrl+r")
        await hands.choose("Answer to")
        assert hands.app.clipboard.startswith("At this product and rate")


async def test_a_question_without_a_card_goes_to_engineering(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        await hands.send("do we need our landlord's leave for it?")
        assert "it becomes a follow-up for engineering" in hands.said()
        assert any("landlord" in point.say for point in hands.talk.follow_ups())


async def test_what_if_shows_both_sides_keeps_nothing_and_empties_the_line(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk(size=(100, 30)) as hands:
        await hands.send(first_message)
        before, events = hands.talk.spec(), len(hands.talk.events)
        await hands.type("a freezer")
        await hands.press("f10")
        assert "room freezer" in hands.page()
        assert "Nothing in the range would stand" in hands.page()
        await hands.press("escape")
        assert hands.prompt.text == ""
        assert (hands.talk.spec(), len(hands.talk.events)) == (before, events)


async def test_what_if_without_words_says_how_to_use_it(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.press("f10")
        assert hands.on_the_talk()


async def test_the_palette_names_every_key_and_puts_commands_on_the_line(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        commands = {one.title: one for one in hands.app.get_system_commands(hands.app.screen)}
        assert {f"{key.word} ({key.cap})" for key in KEYS} <= set(commands)
        commands["/promise [visitor:|works:] WHAT [by DAY]"].callback()
        assert hands.prompt.text == "/promise "
        await hands.press("ctrl+p")
        assert not hands.on_the_talk()


async def test_leaving_asks_first_and_tells_of_words_not_sent(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.type("half a mess")
        await hands.press("ctrl+q")
        assert isinstance(hands.app.screen, SurePage)
        assert "were not sent" in "\n".join(hands.frame())
        await hands.press("n")
        assert hands.on_the_talk()
        assert hands.prompt.text == "half a mess"


async def test_list_pages_close_on_the_key_that_opened_them(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        for key in ("f2", "f3", "f4", "ctrl+r"):
            await hands.press(key)
            assert isinstance(hands.app.screen, ListPage), key
            await hands.press(key)
            assert hands.on_the_talk(), key


async def test_the_mouse_on_a_panel_does_what_its_list_would_do(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk(size=(160, 50)) as hands:
        await hands.send(first_message)
        await hands.pilot.click("#machines .row")
        await hands.settle()
        assert "CHECKS" in hands.page()
        await hands.press("escape")
        rows = list(hands.app.front.query("#facts .row"))
        place = next(n for n, row in enumerate(rows) if "weight of one product" in str(row.render()))
        await hands.pilot.click(rows[place])
        await hands.settle()
        assert "new weight of one product" in hands.line("#say")
        assert hands.prompt.has_focus
