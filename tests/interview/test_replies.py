"""Short replies that are no facts."""

import pytest

from intake.interview.replies import Replies
from intake.spec.folder import questions_folder


@pytest.fixture
def replies() -> Replies:
    return Replies(questions_folder())


@pytest.mark.parametrize(
    "text",
    [
        "don't know",
        "Don’t know.",
        "dunno",
        "not sure",
        "I have no idea, honestly",
        "idk",
        "?",
        "Hard to say yet",
        "SKIP",
    ],
)
def test_not_knowing_is_heard_in_many_words(replies: Replies, text: str) -> None:
    assert replies.means("dont_know", text)


@pytest.mark.parametrize(
    "text", ["let me check", "I'll check with the boss", "Will get back to you on that", "later", "TBD"]
)
def test_a_promise_to_check_is_heard(replies: Replies, text: str) -> None:
    assert replies.means("later", text)


@pytest.mark.parametrize(
    "text", ["25 a minute", "corrugated, taped", "we skip Fridays", "the unknown brand", "unsured pallets"]
)
def test_an_answer_is_no_short_reply(replies: Replies, text: str) -> None:
    assert not replies.means("dont_know", text)
    assert not replies.means("later", text)
    assert not replies.corrects(text)


@pytest.mark.parametrize(
    "text", ["sorry, 45", "Sorry - I meant 45", "correction: 45 a minute", "make that 45", "oops 45"]
)
def test_taking_something_back_is_heard(replies: Replies, text: str) -> None:
    assert replies.corrects(text)


def test_back_must_be_the_whole_message(replies: Replies) -> None:
    assert replies.is_just("back", " Back. ")
    assert not replies.is_just("back", "it comes back down again")


@pytest.mark.parametrize(
    ("text", "place"), [("1", 0), ("the second one", 1), ("b)", 1), ("third", 2), ("12", None), ("first floor", None)]
)
def test_an_option_may_be_chosen_by_its_place(replies: Replies, text: str, place: int | None) -> None:
    assert replies.ordinal(text) == place
