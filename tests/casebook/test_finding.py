"""Finding cases: words whatever their case and accents, and what the list is narrowed by."""

import sqlite3
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.casebook import Book, BookError, Find, IndexRow, finding
from intake.spec import Event

Story = Callable[..., list[Event]]


def message(seq: int, text: str, at: str = "2026-03-02T09:00:00+00:00") -> Event:
    return Event(seq=seq, at=at, kind="message", body={"text": text, "who": "visitor"})


def ids(book: Book, words: str = "", **find: Any) -> list[str]:
    return [entry.id for entry in book.cases(find=Find(words=words, **find))]


@pytest.fixture(params=["with the search index", "without it"])
def either(request: pytest.FixtureRequest, place: Path, monkeypatch: pytest.MonkeyPatch) -> Book:
    """A book where SQLite knows full-text search, and one where it does not."""
    if request.param == "without it":
        monkeypatch.setattr(finding, "can_index", lambda connection: False)
    return Book(place)


FOUND = [
    "kartons", "KART", "größe", "GRÖSSE", "grosse", "GROẞE", "crème brûlée", "creme", "CRE\u0300ME", "12'6\"", "12'6",
    "side_grip", "side grip", "0302-bkt", "16x12", "½", "straße", "STRASSE", "éclair", "kartons 0302", "½-inch",
]  # fmt: skip


@pytest.mark.parametrize("words", FOUND)
def test_words_are_found_whatever_their_case_accents_and_signs(either: Book, words: str) -> None:
    text = "Kartons 16x12x10, Größe GROSSE Crème Brûlée 12'6\" up, ½-inch Straße e\u0301clair"
    either.append("0302-bkt", [message(1, text)], IndexRow(best="side_grip"))
    either.append("other", [message(1, "5 mm")])
    assert ids(either, words) == ["0302-bkt"]


@pytest.mark.parametrize(
    "words", ["kaffee", "kartons kaffee", "%", "_", "kart%", "12'7", "side-grip", '"', "*", "OR", "-"]
)
def test_all_words_must_be_there_and_signs_mean_themselves(either: Book, words: str) -> None:
    either.append("tea", [message(1, "Kartons 12'6 up or down")], IndexRow(best="side_grip"))
    assert ids(either, words) == (["tea"] if words == "OR" else [])


def test_the_beginning_of_a_word_is_enough_and_its_middle_is_not(book: Book) -> None:
    book.append("tea", [message(1, "cartons")])
    assert ids(book, "cart") == ["tea"]
    assert ids(book, "arton") == []


@given(words=st.text(max_size=12))
def test_no_words_break_the_search(words: str) -> None:
    with sqlite3.connect(":memory:") as connection:
        finding.make(connection)
        connection.execute("insert into found(rowid, words) values (1, 'tea')")
        made = finding.match(finding.words_of(words))
        if made:
            connection.execute("select rowid from found where found match ?", (made,)).fetchall()
    connection.close()


@given(text=st.text(max_size=60), place=st.integers(0, 59), length=st.integers(1, 8))
def test_every_beginning_of_a_word_of_the_text_is_found(text: str, place: int, length: int) -> None:
    words = finding.words_of(text)
    if not words:
        return
    wanted = words[place % len(words)][:length]
    with sqlite3.connect(":memory:") as connection:
        finding.make(connection)
        connection.execute("insert into found(rowid, words) values (1, ?)", (" ".join(words),))
        hits = connection.execute("select rowid from found where found match ?", (finding.match([wanted]),)).fetchall()
    connection.close()
    assert hits == [(1,)]


def test_words_of_a_new_title_are_found_and_those_of_the_old_one_are_not(book: Book) -> None:
    book.append("tea", [message(1, "12 kg")], IndexRow(title="tea"))
    book.append("tea", [], IndexRow(title="soap"))
    assert (ids(book, "tea", archived=True), ids(book, "soap")) == (["tea"], ["tea"])  # "tea" is its id still
    book.append("tea", [], IndexRow(title="jars"))
    assert ids(book, "soap") == []


def test_a_case_written_to_without_the_search_index_is_found_all_the_same(place: Path, story: Story) -> None:
    with Book(place) as book, pytest.MonkeyPatch.context() as patched:
        book.append("tea", story())
        patched.setattr(finding, "can_index", lambda connection: False)
        book.append("tea", [message(5, "marmalade")])
        book.append("soap", [message(1, "lavender")])
        patched.undo()
        assert (ids(book, "marmalade"), ids(book, "lavender"), ids(book, "says")) == (["tea"], ["soap"], ["tea"])
        book.append("soap", [message(2, "thyme")])  # and now it is in the index
        assert (ids(book, "lavender"), ids(book, "thyme")) == (["soap"], ["soap"])
        assert book.check() == []


@pytest.fixture
def shop(book: Book) -> Book:
    """Four cases: what waits and what is due, when they changed, on the shelf or not."""
    rows = {
        "a": IndexRow(best="spiral", standing="talking", waiting_for="us", due="2020-03-06", open=2),
        "b": IndexRow(best="side_grip", standing="handed over, revision A", waiting_for="visitor, us", open=1),
        "c": IndexRow(best="spiral", standing="handed over, revision B", due="2020-04-01", open=1),
        "d": IndexRow(standing="talking"),
    }
    for number, (name, row) in enumerate(rows.items(), 1):
        at = f"2020-03-{number:02d}T12:00:00+00:00"
        book.append(name, [message(1, f"case {name} of tea", at)], row)
    book.archive("d")
    return book


NARROWED = [
    (Find(), "cba"),
    (Find(archived=True), "dcba"),
    (Find(family="spiral"), "ca"),
    (Find(standing="handed over"), "cb"),
    (Find(standing="Handed over, revision a"), "b"),
    (Find(standing="%"), ""),
    (Find(waiting_for="us"), "ba"),
    (Find(waiting_for="visitor"), "b"),
    (Find(waiting_for="u"), ""),
    (Find(open_only=True), "cba"),
    (Find(due_by="2020-03-31"), "a"),
    (Find(due_by="2020-04-01"), "ca"),
    (Find(since="2020-03-02"), "cb"),
    (Find(until="2020-03-02"), "ba"),
    (Find(since="2020-03-02", until="2020-03-02"), "b"),
    (Find(words="tea", family="spiral", since="2020-03-02"), "c"),
    (Find(words="tea", archived=True), "dcba"),
]


@pytest.mark.parametrize(("find", "wanted"), NARROWED)
def test_the_list_is_narrowed_by_what_is_asked(shop: Book, find: Find, wanted: str) -> None:
    assert "".join(entry.id for entry in shop.cases(find=find)) == wanted
    assert shop.count(find) == len(shop.cases(find=find))


def test_a_list_comes_in_pages(shop: Book) -> None:
    pages = [[entry.id for entry in shop.cases(limit=2, offset=offset)] for offset in (0, 2, 4)]
    assert pages == [["c", "b"], ["a"], []]
    assert [entry.id for entry in shop.cases("tea", limit=1)] == ["c"]


def test_a_day_that_is_none_is_told(shop: Book) -> None:
    for find in (Find(since="march"), Find(until="9999-12-31")):
        with pytest.raises(BookError) as told:
            shop.cases(find=find)
        assert told.value.code == "bad_find"


def test_a_whole_page_of_words_is_told_to_be_too_much(either: Book) -> None:
    either.append("tea", [message(1, " ".join(f"word{n}" for n in range(40)))])
    assert ids(either, " ".join(f"word{n}" for n in range(40))) == ["tea"]
    with pytest.raises(BookError) as told:
        ids(either, " ".join(f"word{n}" for n in range(5000)))
    assert told.value.code == "bad_find"


def test_half_a_character_is_told_wherever_it_is_given(book: Book) -> None:
    book.append("tea", [message(1, "x")])
    calls: list[Callable[[], object]] = [
        lambda: book.cases("\udc80"),
        lambda: book.cases(find=Find(standing="\udc80")),
        lambda: book.events("\udc80"),
        lambda: book.draft("\udc80"),
        lambda: book.archive("\udc80"),
        lambda: book.attachment("tea", "\udc80"),
    ]
    for call in calls:
        with pytest.raises(BookError) as told:
            call()
        assert told.value.code == "bad_name"
