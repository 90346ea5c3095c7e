"""Whole threads on the desk: pasted, told from one message, taken apart."""

from hands import AtDesk
from textual import events

from intake.desk.pages import SurePage
from intake.desk.prompt import Prompt

CHAT = """\
10:02 Visitor: hello, we need to raise cartons to a platform
10:03 Support: Gladly. What does one carton weigh, is it about 30 kg?
10:04 Visitor: no, 12 kg
10:05 Support: And how many a minute?
10:06 Visitor: 20"""


async def test_a_pasted_chat_is_recognised_and_taken_apart(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        hands.prompt.post_message(events.Paste(CHAT))
        await hands.settle()
        assert "A whole thread" in hands.line("#reading")
        await hands.press("enter")
        assert isinstance(hands.app.screen, SurePage)
        assert "3 turns of the visitor" in "\n".join(hands.frame())
        assert hands.prompt.text == CHAT  # still on the line, and kept there, until it is decided
        await hands.press("enter")
        assert hands.prompt.text == ""
        assert hands.talk.spec()["product.weight"] == 12.0
        assert hands.talk.spec()["rate.normal"] == 20.0
        lines = hands.said().splitlines()
        assert "visitor: no, 12 kg" in lines
        assert "staff: And how many a minute?" in lines
        assert any(line.startswith("Thread: 3 turns of the visitor") for line in lines)
        assert hands.line("#say").startswith("Ask: ")


async def test_staff_who_know_better_send_it_as_one_message(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.send(CHAT)
        await hands.press("n")
        assert len([who for _, who in hands.talk.case.messages.values() if who == "visitor"]) == 1


async def test_escape_puts_the_words_back_on_the_line(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.send(CHAT)
        await hands.press("escape")
        assert hands.prompt.text == CHAT
        assert hands.talk.events == []


async def test_a_list_of_figures_is_one_message(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.send("Size: 400x300x200 mm\nWeight: 12 kg\nRate: 20/min")
        assert hands.on_the_talk()
        assert hands.talk.spec()["product.weight"] == 12.0


async def test_a_thread_longer_than_one_message_may_be_is_taken_whole(at_desk: AtDesk) -> None:
    long = "\n".join([CHAT, *(f"10:{n % 60:02} Support: one moment please, number {n}" for n in range(700))])
    assert len(long) > 20_000
    async with at_desk() as hands:
        hands.prompt.post_message(events.Paste(long))
        await hands.settle()
        await hands.press("enter")
        assert hands.talk.spec()["product.weight"] == 12.0


async def test_a_paste_too_long_for_one_message_is_cut_and_said_so(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        hands.prompt.post_message(events.Paste("x" * 30_000))
        await hands.settle()
        assert "Only the first 20000 characters" in hands.said()


async def test_what_is_sent_behind_words_of_several_lines_stays_behind_them(at_desk: AtDesk) -> None:
    sent = ("cases of 12 kg\n400 x 300 mm", "20 a minute", "up 4 m\nstraight on", "the cases are taped")
    async with at_desk() as hands:
        for words in sent:
            hands.app.front.post_message(Prompt.Said(words))
        for _ in range(200):
            await hands.settle()
            if len(hands.talk.case.messages) == len(sent):
                break
        assert [text for text, _ in hands.talk.case.messages.values()] == list(sent)
