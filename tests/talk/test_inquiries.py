"""Visitors' own questions in a talk: found in messages, answered from the case, and handed to engineering."""

import json
from pathlib import Path

import pytest

from intake.casebook import Book, IndexRow
from intake.handoff import read_package, write
from intake.spec import fold
from intake.talk import Interview

NEED = "Taped cases 400x300x250 mm, 12 kg, 20 a minute, up 3 m."
GLOW = "Can the belt glow in the dark?"


@pytest.fixture
def talk() -> Interview:
    talk = Interview()
    talk.hear(f"{NEED} How tall can you go? {GLOW}")
    return talk


def test_questions_in_a_message_become_inquiries_with_their_own_words(talk: Interview) -> None:
    tall, glow = talk.inquiries
    assert (tall.text, glow.text) == ("How tall can you go", "Can the belt glow in the dark")
    assert tall.card is not None
    assert glow.card is None
    for one in talk.inquiries:
        text = talk.case.messages[one.message][0]
        assert text[slice(*one.span)].strip() == one.text
    assert talk.spec()["product.weight"] == 12
    assert talk.spec()["rise.height"] == 3


def test_a_question_is_not_told_as_not_used() -> None:
    for text in (GLOW, f"{NEED} {GLOW}", f"{GLOW} And does it whistle melodies when starting?"):
        heard = Interview().hear(text)
        assert not any("glow" in piece or "whistle" in piece for piece in heard.unread), text


@pytest.mark.parametrize(
    "text",
    ["How are you?", "Thanks, ok?", "What time do you close?", "right?", NEED, "Correct?", "They weigh 12 kg, ok?", ""],
)
def test_statements_of_need_and_small_talk_are_no_questions_of_theirs(text: str) -> None:
    talk = Interview()
    talk.hear(text)
    assert talk.inquiries == []


@pytest.mark.parametrize("text", ["You can do 60 a minute, right?", "Price?", "So it works in a freezer, right?"])
def test_a_word_of_theirs_behind_it_leaves_a_question_about_us_one(text: str) -> None:
    talk = Interview()
    talk.hear(text)
    assert len(talk.inquiries) == 1


def test_what_staff_say_is_no_question_of_the_visitors() -> None:
    talk = Interview()
    talk.hear(GLOW, who="staff")
    assert talk.inquiries == []


def test_an_answer_to_our_question_may_carry_one_of_theirs() -> None:
    talk = Interview()
    talk.hear("taped cases 400x300x250 mm, 12 kg")
    talk.ask()
    talk.answer(f"20 a minute. {GLOW}")
    assert talk.spec()["rate.normal"] == 20
    assert [one.text for one in talk.inquiries] == ["Can the belt glow in the dark"]


def test_undo_takes_them_back_and_redo_brings_them_again(talk: Interview) -> None:
    before = talk.inquiries
    assert talk.undo()
    assert talk.inquiries == []
    assert not [point for point in talk.follow_ups() if point.state == "asked"]
    assert talk.redo()
    assert talk.inquiries == before


def test_one_typed_as_a_question_is_answered_and_kept(talk: Interview) -> None:
    reply = talk.inquire("how fast could it run?")
    assert reply.card == talk.inquiries[-1].card is not None
    assert talk.reply_to(talk.inquiries[-1]).lines == reply.lines
    assert talk.inquire("do you sell zebras?").card is None
    assert [one.card for one in talk.inquiries][-1] is None


def test_without_a_card_they_are_follow_ups_each_once(talk: Interview) -> None:
    talk.hear(GLOW)
    (point,) = [point for point in talk.follow_ups() if point.state == "asked"]
    assert "Can the belt glow in the dark" in point.say
    assert point.settle
    assert talk.follow_ups()[-1] == point


def test_they_survive_the_casebook_and_an_export(talk: Interview, tmp_path: Path) -> None:
    with Book(tmp_path / "cases.sqlite3") as book:
        book.append("tea", talk.events, IndexRow(title="tea"))
        kept = fold(book.events("tea"))
        book.import_(book.export("tea"), "sent")
        sent = fold(book.events("sent"))
    assert kept.inquiries == sent.inquiries == talk.inquiries
    again = Interview.from_events(talk.events)
    assert again.inquiries == talk.inquiries
    assert again.follow_ups() == talk.follow_ups()


def test_a_name_in_a_question_is_blanked_in_an_export(tmp_path: Path) -> None:
    talk = Interview()
    talk.hear(f"My name is Mira Oldcastle. {NEED} Can Mira Oldcastle have a belt that glows in the dark?")
    assert talk.inquiries
    with Book(tmp_path / "cases.sqlite3") as book:
        book.append("tea", talk.events, IndexRow(title="tea"))
        text = book.export("tea")
        book.import_(text, "sent")
        sent = fold(book.events("sent"))
    assert "Oldcastle" not in text
    assert [one.span for one in sent.inquiries] == [one.span for one in talk.inquiries]
    assert "Oldcastle" not in "".join(one.text for one in sent.inquiries)


def test_engineering_finds_them_among_the_open_points_of_the_hand_off(talk: Interview, tmp_path: Path) -> None:
    write(talk, tmp_path, case="tea")
    (point,) = [point for point in read_package(tmp_path / "spec.json").open_points if point.kind == "visitor_asks"]
    assert "Can the belt glow in the dark" in point.why
    assert "glow in the dark" in (tmp_path / "spec.md").read_text()
    assert "visitor asks" in (tmp_path / "spec.md").read_text()


def test_the_hand_off_names_nobody_in_them(tmp_path: Path) -> None:
    talk = Interview()
    talk.hear(f"{NEED} {GLOW}")
    talk.know("contact.name", "Mira Oldcastle")
    talk.inquire("Could a zebra of Mira Oldcastle, +44 1632 960 123, ride on it?")
    write(talk, tmp_path, case="tea")
    for name in ("spec.json", "spec.md", "result.json"):
        text = (tmp_path / name).read_text()
        assert "Oldcastle" not in text
        assert "1632 960" not in text


def test_a_question_steers_no_terminal() -> None:
    talk = Interview()
    talk.inquire("can it \x1b[31mglow\x07?")
    assert "\x1b" not in json.dumps([event.to_json() for event in talk.events])


def test_a_question_is_answered_by_the_card_that_was_found_in_its_sentence() -> None:
    talk = Interview()
    talk.hear("16x12x10 inch taped cases, 30 lb, 25 a minute, up from 30 inches to 14 ft")
    talk.hear("We are at -20 C in there, would it run?")
    asked = talk.inquiries[-1]
    assert asked.card == "freezer"
    assert talk.reply_to(asked).card == asked.card
