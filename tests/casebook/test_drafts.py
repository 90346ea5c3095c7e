"""Half-typed words: kept beside the case, overwritten, no event."""

from collections.abc import Callable
from pathlib import Path

from intake.casebook import Book
from intake.spec import Event

Story = Callable[..., list[Event]]


def test_half_typed_words_are_there_again(place: Path, story: Story) -> None:
    with Book(place) as book:
        book.append("tea", story())
        mark, _ = book.follow()
        book.keep_draft("tea", "and 12 k")
        book.keep_draft("tea", "and 12 kg, \ud83d")
        book.keep_draft("new", "before its first event")
    with Book(place) as book:
        assert (book.draft("tea"), book.draft("new"), book.draft("soap")) == (
            "and 12 kg, \ufffd", "before its first event", "",
        )  # fmt: skip
        assert book.events("tea") == story()
        assert book.follow(mark) == (mark, [])
        assert [entry.id for entry in book.cases()] == ["tea"]


def test_words_that_were_sent_are_cleared(book: Book) -> None:
    book.keep_draft("tea", "and 12 kg")
    book.keep_draft("tea", "")
    assert book.draft("tea") == ""


def test_reading_a_draft_makes_no_file(book: Book, place: Path) -> None:
    assert book.draft("tea") == ""
    assert not place.exists()
