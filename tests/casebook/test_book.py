"""The book as the program uses it: keep, read, find, copy, shelve."""

import stat
from collections.abc import Callable
from pathlib import Path

import pytest

from intake.casebook import Book, BookError, CaseBook, IndexRow, book_path, new_id
from intake.spec import Event, fold

Story = Callable[..., list[Event]]


def later(seq: int, kind: str = "asked", at: str = "2026-03-02T10:00:00+00:00") -> Event:
    return Event(seq=seq, at=at, kind=kind, body={"question": "rate", "fields": ["rate.peak"]})


def ids(book: CaseBook, words: str | None = None, archived: bool = False) -> list[str]:
    return [entry.id for entry in book.cases(words, archived)]


def test_what_was_kept_is_read_again_word_for_word(book: Book, story: Story) -> None:
    assert book.append("tea", story()) == 4
    assert book.events("tea") == story()


def test_a_book_that_was_closed_goes_on(place: Path, story: Story) -> None:
    with Book(place) as first:
        first.append("tea", story())
    with Book(place) as second:
        assert second.append("tea", [later(5)]) == 5
        assert fold(second.events("tea")) == fold([*story(), later(5)])


def test_reading_makes_no_file(book: Book, place: Path) -> None:
    assert book.cases() == []
    assert book.events("tea") == []
    assert book.follow() == (0, [])
    assert book.new_id()
    assert not place.parent.exists()


def test_only_the_owner_may_read_the_file_and_its_folder(book: Book, place: Path, story: Story) -> None:
    book.append("tea", story())
    assert stat.S_IMODE(place.parent.stat().st_mode) == 0o700
    assert {stat.S_IMODE(file.stat().st_mode) for file in place.parent.iterdir()} == {0o600}


def test_a_file_that_others_could_read_is_closed_to_them(place: Path, story: Story) -> None:
    place.parent.mkdir()
    place.touch(0o644)
    place.chmod(0o644)
    with Book(place) as book:
        book.append("tea", story())
    assert stat.S_IMODE(place.stat().st_mode) == 0o600


def test_the_place_follows_the_environment(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("INTAKE_BOOK", str(tmp_path / "ours.sqlite3"))
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    assert Book().path == tmp_path / "ours.sqlite3"
    monkeypatch.delenv("INTAKE_BOOK")
    assert book_path().is_relative_to(tmp_path / "data")
    # XDG Base Directory Specification: all paths in these variables must be absolute, others are ignored.
    monkeypatch.setenv("XDG_DATA_HOME", "data")
    monkeypatch.delenv("LOCALAPPDATA", raising=False)
    monkeypatch.setenv("HOME", str(tmp_path))
    assert book_path().is_relative_to(tmp_path / ".local" / "share")


def test_the_list_shows_the_index_last_changed_first(book: Book, story: Story) -> None:
    index = IndexRow(title="tea cartons", standing="talking", best="spiral", waiting_for="visitor", since="2026-03-02")
    book.append("old", story(second=1), index)
    book.append("new", story(second=2))
    newer, older = book.cases()
    assert (newer.id, older.id) == ("new", "old")
    assert older.index == index
    assert newer.index == IndexRow()
    assert (older.events, older.begun, older.updated) == (4, "2026-03-02T09:00:01+00:00", "2026-03-02T09:00:01+00:00")
    book.append("old", [later(5)])
    assert ids(book) == ["old", "new"]


def test_the_index_stays_unless_a_new_one_is_handed_in(book: Book, story: Story) -> None:
    book.append("tea", story(), IndexRow(title="tea"))
    book.append("tea", [later(5)])
    assert book.cases()[0].index.title == "tea"
    book.append("tea", [], IndexRow(title="tea cartons"))
    assert book.cases()[0].index.title == "tea cartons"


def test_an_index_without_a_case_is_not_listed(book: Book) -> None:
    assert book.append("nobody", [], IndexRow(title="x")) == 0
    assert book.cases() == []


@pytest.mark.parametrize("words", ["KARTONS", "ann", "kartons Ann", "side_grip", "waits", "crème", "CRE\u0300ME", ""])
def test_a_case_is_found_by_any_of_its_words(book: Book, story: Story, words: str) -> None:
    index = IndexRow(title="Tea Kartons", best="side_grip", waiting_for="waits", words="Crème")
    book.append("tea", story(), index)
    book.append("other", story("4 mm", title=""), IndexRow(title="x"))
    assert "tea" in ids(book, words)
    assert ids(book, words) == (["other", "tea"] if not words else ["tea"])


@pytest.mark.parametrize("words", ["coffee", "tea coffee", "%", "_", "te%"])
def test_all_words_must_be_there_and_signs_mean_themselves(book: Book, story: Story, words: str) -> None:
    book.append("tea", story(), IndexRow(title="tea"))
    assert ids(book, words) == []


def test_a_shelved_case_is_kept_but_listed_only_on_request(book: Book, story: Story) -> None:
    book.append("tea", story())
    book.archive("tea")
    assert ids(book) == []
    assert [(entry.id, entry.archived) for entry in book.cases(archived=True)] == [("tea", True)]
    book.archive("tea")
    assert len(book.events("tea")) == 5
    assert fold(book.events("tea")).archived
    book.restore("tea")
    assert ids(book) == ["tea"]


def test_a_copy_has_all_of_the_first_and_goes_its_own_way(book: Book, story: Story) -> None:
    book.append("tea", story(), IndexRow(title="tea cartons", best="spiral"))
    book.archive("tea")
    book.copy("tea", "tea2")
    assert fold(book.events("tea2")).facts == fold(story()).facts
    (entry,) = book.cases()
    assert (entry.id, entry.index.title, entry.index.best) == ("tea2", "tea cartons (copy)", "spiral")
    assert fold(book.events("tea2")).title == "tea cartons (copy)"
    book.append("tea2", [later(8)])
    assert len(book.events("tea")) == 5


def test_nothing_is_copied_over_a_case(book: Book, story: Story) -> None:
    book.append("tea", story())
    book.append("soap", story())
    with pytest.raises(BookError, match="kept under"):
        book.copy("tea", "soap")
    assert book.events("soap") == story()


@pytest.mark.parametrize("call", ["archive", "restore", "export"])
def test_a_case_that_is_not_there_is_told(book: Book, story: Story, call: str) -> None:
    for _ in ("no book yet", "a book without it"):
        with pytest.raises(BookError) as told:
            getattr(book, call)("tee")
        assert told.value.code == "no_case"
        book.append("tea", story())
    with pytest.raises(BookError, match="intake cases"):
        book.copy("tee", "tea2")


@pytest.mark.parametrize("name", ["", "a/b", "../up", "a\\b", "-x", ".x", "a..b", "x" * 61, "a\nb", "a\x1b[2J"])
def test_a_name_that_no_file_could_bear_is_refused(book: Book, story: Story, name: str) -> None:
    with pytest.raises(BookError) as told:
        book.append(name, story())
    assert told.value.code == "bad_name"
    assert "\x1b" not in str(told.value)


@pytest.mark.parametrize("name", ["tea_cartons", "0302-bkt", "Größe.2", "x" * 60])
def test_names_that_people_give_are_taken(book: Book, story: Story, name: str) -> None:
    assert book.append(name, story()) == 4


def test_new_ids_are_short_and_free(book: Book, story: Story) -> None:
    for _ in range(20):
        fresh = book.new_id()
        assert len(fresh) == 8
        book.append(fresh, story())
    assert len(ids(book)) == 20
    assert len({new_id() for _ in range(50)}) > 40


def test_changes_can_be_followed(book: Book, story: Story) -> None:
    book.append("tea", story())
    mark, changed = book.follow()
    assert changed == ["tea"]
    book.append("soap", story())
    book.append("tea", [later(5)])
    mark_after, changed = book.follow(mark)
    assert changed == ["soap", "tea"]
    assert book.follow(mark_after) == (mark_after, [])


def test_the_embedded_book_stands_behind_the_seam(book: Book) -> None:
    seam: CaseBook = book  # the type check is the test; the names are looked at here
    assert all(hasattr(seam, name) for name in vars(CaseBook) if not name.startswith("_"))
