"""Two desks on one case of a real book: whatever either of them was told stands in the end, and is told."""

from collections.abc import Callable

import pytest

from intake.casebook import Book
from intake.desk.keeping import Keeper, index_of
from intake.desk.steps import Steps
from intake.interview.mending import Mend
from intake.talk import Interview

Kept = Callable[[str], Steps]
JOINED = "Another desk has gone on with this case"


def messages(steps: Steps) -> list[str]:
    return [text for text, _ in steps.work.talk.case.messages.values()]


def in_the_book(name: str) -> Interview:
    with Book() as book:
        return Interview.from_events(book.events(name))


def test_what_both_sides_said_stands_in_the_book_in_the_order_in_which_it_was_kept(kept: Kept) -> None:
    first, second = kept("two_said"), kept("two_said")
    first.say("taped cases, 12 kg", None)
    second.say("400x300x250 mm", None)
    first.say("20 a minute", None)
    assert first.news() is None or first.trouble is None
    again = in_the_book("two_said")
    assert [text for text, _ in again.case.messages.values()] == ["taped cases, 12 kg", "400x300x250 mm", "20 a minute"]
    assert again.spec()["product.weight"] == 12
    assert again.spec()["product.length"] == pytest.approx(0.4)
    assert again.spec()["rate.normal"] == 20


def test_a_desk_that_takes_in_anothers_words_while_keeping_its_own_says_so(kept: Kept) -> None:
    first, second = kept("two_told"), kept("two_told")
    first.say("taped cases, 12 kg", None)
    shown = second.say("400x300x250 mm", None)
    assert any(line.startswith(JOINED) for line in shown.lines)
    assert second.work.talk.spec()["product.weight"] == 12
    assert not any(line.startswith(JOINED) for line in second.say("20 a minute", None).lines)


def test_news_of_another_desk_are_told_once_and_the_question_follows_them(kept: Kept) -> None:
    first = kept("two_news")
    asked = first.say("taped cases, 12 kg, up 3 m", None).question
    second = kept("two_news")
    assert second.news() is None
    second.start()
    second.say("400x300x250 mm, 20 a minute", None)
    news = first.news()
    assert news is not None
    assert news.lines[0].startswith(JOINED)
    assert asked is not None
    assert news.question is not None
    assert news.question.id != asked.id
    assert first.work.talk.spec()["rate.normal"] == 20
    assert first.news() is None


def test_what_was_kept_between_reading_a_case_and_the_first_look_at_the_book_is_news_too(kept: Kept) -> None:
    kept("two_late").say("12 kg cases", None)
    first = kept("two_late")
    kept("two_late").say("20 a minute", None)
    assert first.news() is not None
    assert first.work.talk.spec()["rate.normal"] == 20


def test_mends_and_undos_point_at_the_same_words_after_a_merge(kept: Kept) -> None:
    kept("two_mends").say("12 kg cases", None)
    first, second = kept("two_mends"), kept("two_mends")
    first.say("20 a minute", None)
    first.say("up 3 m", None)
    talk = second.work.talk  # works on while the book is out of reach
    talk.hear("trays 400 x 300 x 200 mm, 9 kg")
    place = talk.last_message.index("9 kg")
    talk.rehear([Mend((place, place + 4), None)])
    talk.note("x")
    talk.undo()
    second.command("/title merged")
    again = in_the_book("two_mends")
    assert again.spec() == second.work.talk.spec()
    assert again.spec()["product.weight"] == 12
    assert again.spec()["product.length"] == pytest.approx(0.4)
    assert again.spec()["rate.normal"] == 20
    assert again.case.notes == []
    again.undo()
    again.undo()
    assert again.spec()["rate.normal"] == 20


def test_the_same_taken_back_on_two_desks_can_be_put_back_once(kept: Kept) -> None:
    kept("two_undo").say("12 kg cases", None)
    first, second = kept("two_undo"), kept("two_undo")
    first.command("/undo")
    second.command("/undo")
    assert second.work.talk.spec() == {}
    assert second.work.talk.redo()
    assert second.work.talk.spec()["product.weight"] == 12
    assert not second.work.talk.redo()


def test_promises_of_two_desks_are_closed_each_by_its_own_number(kept: Kept) -> None:
    first, second = kept("two_promises"), kept("two_promises")
    first.command("/promise send the layout")
    second.command("/promise call back")
    second.work.talk.life.done(next(m.seq for m in second.work.talk.case.waiting if m.what == "call back"))
    second.leave_be()
    assert [matter.what for matter in in_the_book("two_promises").case.waiting] == ["send the layout"]


def test_keeping_the_same_again_is_no_conflict(kept: Kept) -> None:
    steps = kept("again")
    steps.say("12 kg cases", None)
    keeper = Keeper("again")
    assert keeper.keep(steps.work.talk) is None
    assert not keeper.joined
    keeper.book.close()
    assert messages(steps) == ["12 kg cases"]


def test_the_lists_show_standing_and_who_waits(kept: Kept) -> None:
    steps = kept("lists")
    steps.say("taped cases 400x300x250 mm, 12 kg, 20 a minute, up 3 m", None)
    assert index_of(steps.work.talk).waiting_for == ""
    steps.command("/later")
    row = index_of(steps.work.talk)
    assert (row.standing, row.waiting_for) == ("waiting for the visitor", "visitor")
    steps.command("/promise send the layout by tomorrow")
    assert index_of(steps.work.talk).waiting_for == "us, visitor"
    steps.command("/close")
    with Book() as book:
        assert [entry.index.standing for entry in book.cases("lists")] == ["closed"]
