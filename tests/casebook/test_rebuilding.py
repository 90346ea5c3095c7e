"""The index written anew: the same as the kept one, all or nothing, and desks go on meanwhile."""

import sqlite3
from collections.abc import Callable
from pathlib import Path

import pytest

from intake.casebook import Book, BookError, Find, IndexRow
from intake.spec import Event, fold

Story = Callable[..., list[Event]]


def index_of(case_id: str, events: list[Event]) -> IndexRow:
    return IndexRow(title=fold(events).title, standing="talking", words=f"{len(events)}", open=len(events))


def lines(place: Path) -> list[tuple[object, ...]]:
    """Every line of the index as it is kept, and its words, by case."""
    other = sqlite3.connect(place)
    rows = other.execute(
        "select e.*, f.words from entry e left join found f on f.rowid = e.id order by e.case_id"
    ).fetchall()
    other.close()
    return [row[1:] for row in rows]  # without its number, which means nothing


@pytest.fixture
def three(book: Book, story: Story) -> Book:
    for number, name in enumerate(("tea", "soap", "jars")):
        events = story(f"12 kg {name}, says Ann Example", title=name, second=number)
        book.append(name, events, index_of(name, events))
    book.archive("soap")
    book.append("soap", [], index_of("soap", book.events("soap")))
    return book


def test_a_rebuilt_index_is_the_kept_one(three: Book, place: Path) -> None:
    before = lines(place)
    assert three.rebuild(index_of) == 3
    assert lines(place) == before
    assert three.check() == []


@pytest.mark.parametrize("statement", ["delete from entry", "delete from entry; delete from found", "drop table found"])
def test_an_index_that_was_dropped_comes_back(three: Book, place: Path, statement: str) -> None:
    before = lines(place)
    other = sqlite3.connect(place)
    other.executescript(statement)
    other.close()
    assert [entry.id for entry in three.cases()] == ["jars", "tea"]
    assert [entry.id for entry in three.cases("tea")] == ["tea"]
    three.rebuild(index_of)
    assert lines(place) == before


def test_what_an_empty_book_rebuilds_is_nothing(book: Book) -> None:
    assert book.rebuild(index_of) == 0
    assert not book.path.exists()


def test_a_rebuild_that_fails_leaves_the_old_index(three: Book, place: Path) -> None:
    before = lines(place)

    def broken(case_id: str, events: list[Event]) -> IndexRow:
        if case_id == "jars":
            raise ValueError("a fault of the caller")
        return IndexRow(title="new")

    with pytest.raises(ValueError, match="fault"):
        three.rebuild(broken)
    assert lines(place) == before


def test_a_case_that_cannot_be_read_keeps_its_line_and_stops_nothing(three: Book, place: Path) -> None:
    other = sqlite3.connect(place)
    other.executescript("drop trigger event_stays; update event set body = '[]' where case_id = 'tea' and seq = 3")
    other.close()
    assert three.rebuild(lambda case_id, events: IndexRow(title="new")) == 3
    titles = {entry.id: entry.index.title for entry in three.cases(find=Find(archived=True))}
    assert titles == {"tea": "tea", "soap": "new", "jars": "new"}
    with pytest.raises(BookError):
        three.events("tea")


def test_a_case_that_goes_on_during_the_rebuild_is_taken_as_it_is_in_the_end(three: Book, place: Path) -> None:
    with Book(place) as other:

        def slow(case_id: str, events: list[Event]) -> IndexRow:
            if case_id == "tea" and len(events) == 4:  # another desk, while this one works it out
                other.append("tea", [Event(seq=5, at="", kind="asked", body={"question": "rate"})])
                other.append("late", [Event(seq=1, at="", kind="opened", body={"title": "late"})])
            return index_of(case_id, events)

        assert three.rebuild(slow) == 4
    kept = {entry.id: entry.index.open for entry in three.cases(find=Find(archived=True))}
    assert (kept["tea"], kept["late"]) == (5, 1)
    assert three.check() == []


def test_a_case_that_goes_on_after_its_line_was_dropped_is_counted_from_its_beginning(three: Book, place: Path) -> None:
    before = lines(place)
    other = sqlite3.connect(place)
    other.executescript("delete from entry")
    other.close()
    for name in ("tea", "soap"):
        events = three.events(name)
        asked = Event(seq=len(events) + 1, at="2026-04-01T09:00:00+00:00", kind="asked", body={"question": "rate"})
        three.append(name, [asked], index_of(name, events))
    kept = {entry.id: (entry.begun, entry.events, entry.archived) for entry in three.cases(archived=True)}
    assert kept["tea"] == (before[2][1], 5, False)
    assert kept["soap"] == (before[1][1], 6, True)
    assert [line for line in three.check() if "rebuild" in line] == []
