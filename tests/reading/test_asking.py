"""Which pieces of a message ask us something. Messages are invented."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.reading import questions, read


@pytest.mark.parametrize(
    ("text", "asked"),
    [
        ("Hi, cases 12 kg up 3 m. can it go in a freezer? and how long is delivery",
         ["can it go in a freezer", "how long is delivery"]),
        ("Can you move 12 kg cases up 3 m?", ["Can you move 12 kg cases up 3 m"]),
        ("16x12x10 in cases, 30 lb, up to a mezzanine, what would that cost and when could we have it",
         ["what would that cost", "when could we have it"]),
        ("freezer ok?", ["freezer ok"]),
        ("Hello! how loud is it", ["how loud is it"]),
        ("we hose it every night, is that a problem?", ["is that a problem"]),
        ("please tell me how loud it is", ["tell me how loud it is"]),
        ("Wondering if it goes in a cooler", ["Wondering if it goes in a cooler"]),
        ("if we lose power does everything slide back down", ["if we lose power does everything slide back down"]),
        ("Is it loud? Who installs it?", ["Is it loud", "Who installs it"]),
        ("does it need air\nwhat voltage does it want", ["does it need air", "what voltage does it want"]),
        ("any chance of a demo", ["any chance of a demo"]),
        ("Thanks. One more thing: is it possible to turn a corner?", ["is it possible to turn a corner"]),
    ],
)  # fmt: skip
def test_questions_are_cut_out_of_a_message(text: str, asked: list[str]) -> None:
    assert [piece.said for piece in questions(text)] == asked


@pytest.mark.parametrize(
    "text",
    ["What we need is a lift.", "When it arrives it turns", "Can be washed", "Is fine", "How high: 3 m",
     "we run trays, which are 12 kg, and where they come from is the filler", "The rise is 3 m and is a straight run",
     "we wash it down every night", "yes", "", "  \n ", "Will discuss with the boss", "Which is fine with us",
     "not sure, I'll ask", "No.", "We do not know yet."],
)  # fmt: skip
def test_statements_and_answers_ask_nothing(text: str) -> None:
    assert questions(text) == ()


def test_a_question_carries_the_sentence_that_it_stands_in() -> None:
    (piece,) = questions("Our room is cold. We're at -20 C in there, would it run?")
    assert piece.said == "would it run"
    assert piece.sentence == "We're at -20 C in there, would it run"


def test_a_sentence_without_end_is_no_context() -> None:
    pieces = questions("can it run, " * 300 + "?")
    assert len(pieces) == 300
    assert {piece.sentence for piece in pieces} == {"can it run"}


def test_quoted_mail_and_signatures_ask_nothing_again() -> None:
    text = "Can it go outside?\n\nOn Monday the desk wrote:\n> How heavy are the cases?\n> How many a minute?"
    assert [piece.said for piece in questions(text)] == ["Can it go outside"]


def test_reading_takes_facts_as_before() -> None:
    heard = read("Cases of 12 kg. can it go in a freezer?")
    assert [fact.field for fact in heard.facts] == ["product.type", "product.weight"]


@given(st.text(max_size=200))
def test_pieces_are_places_in_the_text_as_received(text: str) -> None:
    last = 0
    for piece in questions(text):
        first, after = piece.span
        assert text[first:after] == piece.said
        assert first >= last
        last = after
