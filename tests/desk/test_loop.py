"""The loop in seconds: words are lit, one key takes them, the next question stands, one key copies it."""

import pytest
from hands import AtDesk
from textual import events

from intake.desk.keys import KEYS, LEAVE, foot_rows
from intake.desk.panels import Panel
from intake.desk.prompt import Prompt
from intake.desk.welcome import SAMPLE
from intake.talk import Interview

SIZES = [(80, 24), (120, 36), (200, 60)]


@pytest.mark.parametrize("size", SIZES)
async def test_a_pasted_message_becomes_facts_machines_and_the_next_question(
    at_desk: AtDesk, first_message: str, size: tuple[int, int]
) -> None:
    async with at_desk(size=size) as hands:
        await hands.send(first_message)
        assert hands.talk.spec()["product.weight"] == pytest.approx(13.6077711)
        assert hands.line("#say").startswith("Ask: ")
        assert hands.line("#why").startswith("Why: ")
        assert "leads" in hands.line("#standing")
        rows = hands.frame()
        assert len(rows) == size[1]
        assert all(len(row) <= size[0] for row in rows)
        assert tuple(rows[-2:]) == foot_rows()


async def test_what_is_understood_lights_up_before_anything_is_sent(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.type("cases of 12 kg, 20 a minute, about 3")
        lit = hands.prompt.lit
        said = {lit.words[one.start : one.end]: one.tone for one in lit.lights}
        assert said["12 kg"] == "fact"
        assert said["20 a minute"] == "fact"
        assert "weight of one product 12 kg" in hands.line("#reading")
        assert hands.talk.events == []


async def test_lit_words_are_underlined_on_the_answer_line_and_in_the_conversation(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.type("cases of 12 kg")
        assert underlined(hands.prompt) == {"cases", "12 kg"}
        await hands.press("enter")
        assert set(hands.underlined()) == {"cases", "12 kg"}


def underlined(prompt: Prompt) -> set[str]:
    """The words on the answer line that are drawn underlined."""
    line = prompt.get_line(0)
    return {line.plain[span.start : span.end] for span in line.spans if getattr(span.style, "underline", False)}


async def test_the_units_shown_while_typing_are_those_that_are_typed(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.type("300 x 200 x 150 mm cartons")
        assert "product length 300 mm" in hands.line("#reading")


async def test_tab_on_a_new_case_puts_a_sample_on_the_line_and_enter_sends_it(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.press("tab")
        assert hands.prompt.text == SAMPLE[0]
        await hands.press("enter")
        assert hands.talk.spec()["product.type"] == "tray"
        for message in SAMPLE[1:]:
            await hands.press("tab")
            assert hands.prompt.text == message
            await hands.press("enter")
        assert hands.talk.spec()["rate.peak"] == 36.0
        assert "Answer: " in hands.said()
        await hands.press("tab")
        assert not hands.on_the_talk()  # the sample is over: Tab puts the last message right


async def test_the_question_is_copied_at_once_and_shown_to_select_at_the_second_press(
    at_desk: AtDesk, first_message: str
) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        await hands.press("ctrl+y")
        assert hands.talk.current is not None
        assert hands.app.clipboard.startswith(hands.talk.current.say)
        assert hands.on_the_talk()
        await hands.press("ctrl+y")
        assert hands.page() == hands.app.clipboard


async def test_a_terminal_that_takes_no_clipboard_shows_the_text_at_once(
    at_desk: AtDesk, first_message: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with at_desk() as hands:
        monkeypatch.setenv("TERM_PROGRAM", "Apple_Terminal")
        await hands.send(first_message)
        await hands.press("ctrl+y")
        assert hands.talk.current is not None
        assert hands.page().startswith(hands.talk.current.say)


async def test_enter_alone_asks_the_first_question(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        assert not hands.line("#say").startswith("Ask: ")
        await hands.press("enter")
        assert hands.line("#say").startswith("Ask: ")


async def test_the_question_stands_above_its_answer_in_the_conversation(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        assert hands.talk.current is not None
        say = hands.talk.current.say
        await hands.send("no idea")
        lines = hands.said().splitlines()
        at = lines.index(f"Asked: {say}")
        assert lines[at + 1] == "visitor: no idea"
        assert "open point" in lines[at + 2]


async def test_two_different_weights_are_asked_about(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.send("cases of 12 kg")
        await hands.send("the cases weigh 15 kg")
        assert hands.talk.current is not None
        assert hands.talk.current.kind == "conflict"
        assert "12 kg" in hands.line("#say")
        await hands.send("15 kg")
        assert hands.talk.case.quarrels == {}
        assert hands.talk.spec()["product.weight"] == 15.0


async def test_unknown_later_undo_and_redo_by_keys_alone(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        assert hands.talk.current is not None
        asked = set(hands.talk.current.fields)
        await hands.press("f6")
        assert asked & hands.talk.case.unknown
        await hands.press("f7")
        assert hands.talk.case.later
        await hands.press("f9")
        assert not hands.talk.case.later
        await hands.press("f12")
        assert hands.talk.case.later


async def test_back_asks_the_last_question_again(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        first = hands.line("#say")
        await hands.press("f6")
        assert hands.line("#say") != first
        await hands.press("f8")
        assert hands.line("#say") == first


async def test_a_second_press_answers_no_question_that_nobody_has_seen(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk() as hands:
        await hands.send(first_message)
        assert hands.app.front.shown is not None
        assert hands.app.front.shown.question is not None
        asked = set(hands.app.front.shown.question.fields)
        hands.app.front.action_command("unknown")
        hands.app.front.action_command("unknown")
        await hands.settle()
        assert hands.talk.case.unknown == asked


async def test_by_phone_what_is_typed_counts_as_heard(at_desk: AtDesk) -> None:
    async with at_desk(size=(160, 50)) as hands:
        await hands.press("ctrl+g")
        assert "PHONE" in hands.line("#top")
        await hands.send("cases of 12 kg")
        fact = hands.talk.facts[0]
        assert hands.talk.case.origin(fact) == "visitor, heard"
        rows = [str(row.render()) for row in hands.app.front.query("#facts .row")]
        assert any(row.startswith("h ") for row in rows)
        await hands.press("ctrl+g")
        assert "PHONE" not in hands.line("#top")


async def test_arrow_up_brings_back_what_was_sent(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.send("cases of 12 kg")
        await hands.send("20 a minute")
        await hands.press("up")
        assert hands.prompt.text == "20 a minute"
        await hands.press("up")
        assert hands.prompt.text == "cases of 12 kg"
        await hands.press("down", "down")
        assert hands.prompt.text == ""


async def test_a_paste_of_several_lines_arrives_whole_and_clean(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        hands.prompt.post_message(events.Paste("one\ntwo \x1b[31mred\x07\nthree"))
        await hands.settle()
        assert hands.prompt.text == "one\ntwo red\nthree"


async def test_without_room_the_machines_stand_in_short(at_desk: AtDesk, first_message: str) -> None:
    async with at_desk(size=(80, 24)) as hands:
        await hands.send(first_message)
        assert not any(panel.display for panel in hands.app.front.query(Panel))
        assert "- out: " in hands.line("#strip")
        assert hands.app.front.query_one("#conversation").region.height >= 8


@pytest.mark.parametrize("size", [(120, 36), (200, 60)])
async def test_with_room_the_panels_stand_beside_the_talk(
    at_desk: AtDesk, first_message: str, size: tuple[int, int]
) -> None:
    async with at_desk(size=size) as hands:
        await hands.send(first_message)
        shown = "\n".join(hands.frame())
        assert "MACHINES" in shown
        assert "FACTS" in shown
        assert "TO ASK" in shown
        assert not hands.app.front.query_one("#strip").display
        assert hands.app.front.query_one("#conversation").region.width >= 50


def test_every_key_at_the_foot_stands_whole_within_80_columns() -> None:
    first, second = foot_rows()
    assert len(first) <= 80
    assert len(second) <= 80
    assert all(f"{key.cap} {key.word}" in f"{first} {second}" for key in KEYS if key.foot)
    assert LEAVE in second


async def test_the_conversation_is_leafed_through_from_the_answer_line(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        for number in range(40):
            hands.app.front.say("desk", (f"line {number}", "x"))
        await hands.settle()
        assert "line 39" in "\n".join(hands.frame())
        for _ in range(12):
            await hands.press("pageup")
        assert "line 1" in "\n".join(hands.frame())
        for _ in range(16):
            await hands.press("pagedown")
        assert "line 39" in "\n".join(hands.frame())


async def test_a_resumed_case_shows_its_messages_lit_and_its_question(at_desk: AtDesk, first_message: str) -> None:
    before = Interview()
    before.hear(first_message)
    before.ask()
    async with at_desk(Interview.from_events(before.events), size=(120, 36)) as hands:
        assert first_message in hands.said()
        assert hands.line("#say").startswith("Ask: ")
        assert {"25 a minute", "14 feet"} <= set(hands.underlined())
