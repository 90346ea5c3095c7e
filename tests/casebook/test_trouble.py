"""Trouble with the file: each is told in words with what to do, and what was kept stays readable."""

import os
import sqlite3
from collections.abc import Callable
from pathlib import Path

import pytest

from intake.casebook import Book, BookError, IndexRow, file_mark
from intake.casebook.error import from_sqlite
from intake.spec import Event

Story = Callable[..., list[Event]]


def message(seq: int, text: str) -> Event:
    return Event(seq=seq, at="", kind="message", body={"text": text, "who": "visitor"})


def trouble(book: Book, call: Callable[[Book], object]) -> BookError:
    with pytest.raises(BookError) as told:
        call(book)
    assert str(told.value) == f"{told.value.what}. {told.value.mend}"
    assert "Error" not in str(told.value)
    return told.value


def test_a_full_disk_loses_nothing_that_was_kept_and_later_goes_on(place: Path, story: Story) -> None:
    connections: list[sqlite3.Connection] = []
    with Book(place, on_connect=connections.append) as book:
        book.append("tea", story())
        pages = connections[0].execute("pragma page_count").fetchone()[0]
        connections[0].execute(f"pragma max_page_count={pages}")
        told = trouble(book, lambda b: b.append("tea", [message(5, "x" * 100_000)], IndexRow(title="new")))
        assert (told.code, book.events("tea"), book.cases()[0].index.title) == ("full", story(), "")
        connections[0].execute("pragma max_page_count=1000000")
        book.append("tea", [message(5, "x" * 100_000)])
    with Book(place) as again:
        assert len(again.events("tea")) == 5


def test_a_book_locked_by_another_program_is_told(place: Path, story: Story) -> None:
    with Book(place, wait_s=0.05) as book:
        book.append("tea", story())
        other = sqlite3.connect(place, isolation_level=None)
        other.execute("begin immediate")
        assert trouble(book, lambda b: b.append("tea", [message(5, "x")])).code == "locked"
        assert book.events("tea") == story()
        other.execute("rollback")
        other.close()
        assert book.append("tea", [message(5, "x")]) == 5


@pytest.mark.parametrize("junk", [b"not a book at all, only words" * 100, b"SQLite format 3\x00" + b"\xff" * 4096])
def test_a_file_that_is_no_book_is_left_as_it_is(place: Path, junk: bytes) -> None:
    place.parent.mkdir()
    place.write_bytes(junk)
    with Book(place) as book:
        told = trouble(book, lambda b: b.append("tea", [message(1, "x")]))
        assert told.code in ("not_a_book", "damaged")
        assert trouble(book, lambda b: b.cases()).code == told.code
    assert place.read_bytes() == junk


def test_another_programs_database_is_left_as_it_is(place: Path) -> None:
    place.parent.mkdir()
    other = sqlite3.connect(place)
    other.execute("create table shopping(item text)")
    other.close()
    with Book(place) as book:
        assert trouble(book, lambda b: b.append("tea", [message(1, "x")])).code == "not_a_book"
    other = sqlite3.connect(place)
    assert other.execute("select name from sqlite_schema").fetchall() == [("shopping",)]
    other.close()


def test_a_newer_book_is_not_written_to(place: Path, story: Story) -> None:
    with Book(place) as book:
        book.append("tea", story())
    other = sqlite3.connect(place)
    other.execute("pragma user_version=99")
    other.close()
    with Book(place) as book:
        assert trouble(book, lambda b: b.events("tea")).code == "newer"
        assert "Update" in trouble(book, lambda b: b.append("tea", [message(5, "x")])).mend


def test_pages_gone_bad_are_told(place: Path, story: Story) -> None:
    with Book(place) as book:
        for n in range(30):
            book.append(f"case{n}", story("12 kg " + "word " * 300))
    data = bytearray(place.read_bytes())
    data[8192:] = b"\xa5" * (len(data) - 8192)
    place.write_bytes(data)
    with Book(place) as book:
        assert trouble(book, lambda b: b.events("case3")).code == "damaged"


def test_a_folder_in_place_of_the_file_is_told(place: Path) -> None:
    place.mkdir(parents=True)
    with Book(place) as book:
        assert trouble(book, lambda b: b.append("tea", [message(1, "x")])).code == "cannot_open"
        assert trouble(book, lambda b: b.cases()).code == "cannot_open"


def test_a_file_in_place_of_the_folder_is_told(tmp_path: Path) -> None:
    (tmp_path / "kept").write_text("a file")
    with Book(tmp_path / "kept" / "cases.sqlite3") as book:
        assert trouble(book, lambda b: b.append("tea", [message(1, "x")])).code == "cannot_open"


def _read_only(place: Path) -> None:
    place.chmod(0o400)
    place.parent.chmod(0o500)


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="root can write anywhere")
def test_a_read_only_folder_can_be_read_and_says_why_it_is_not_written(place: Path, story: Story) -> None:
    with Book(place) as book:
        book.append("tea", story())
    _read_only(place)
    try:
        with Book(place) as book:
            assert book.events("tea") == story()
            assert trouble(book, lambda b: b.append("tea", [message(5, "x")])).code == "read_only"
    finally:
        place.parent.chmod(0o700)


def test_a_read_only_book_can_be_read_and_says_why_it_is_not_written(
    place: Path, story: Story, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The same where root runs the tests: the refusal of the folder is played, the reading is real."""
    with Book(place) as book:
        book.append("tea", story())

    def refuse(path: Path) -> None:
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr("intake.casebook.file.prepare", refuse)
    with Book(place) as book:
        assert book.events("tea") == story()
        assert [entry.id for entry in book.cases("says")] == ["tea"]
        assert trouble(book, lambda b: b.append("tea", [message(5, "x")])).code == "read_only"
        assert trouble(book, lambda b: b.archive("tea")).code == "read_only"
    with Book(place.with_name("none.sqlite3")) as book:
        assert trouble(book, lambda b: b.append("tea", [message(1, "x")])).code == "cannot_open"


def test_answers_still_in_the_log_are_never_passed_over_when_only_reading(
    place: Path, story: Story, monkeypatch: pytest.MonkeyPatch
) -> None:
    with Book(place) as book:
        book.append("tea", story())  # still in the log while the book is open

        def refuse(path: Path) -> None:
            raise PermissionError(13, "Permission denied", str(path))

        monkeypatch.setattr("intake.casebook.file.prepare", refuse)
        with Book(place) as other:
            assert trouble(other, lambda b: b.events("tea")).code == "cannot_open"


def test_a_book_moved_away_takes_nothing_unseen(place: Path, story: Story) -> None:
    with Book(place) as book:
        book.append("tea", story())
        for file in list(place.parent.iterdir()):
            file.rename(file.with_suffix(file.suffix + ".away"))
        assert book.events("tea") == []
        assert trouble(book, lambda b: b.append("tea", [message(5, "x")])).code == "conflict"


@pytest.mark.parametrize(
    ("name", "code"),
    [
        ("SQLITE_FULL", "full"),
        ("SQLITE_READONLY_DIRECTORY", "read_only"),
        ("SQLITE_BUSY_SNAPSHOT", "locked"),
        ("SQLITE_CORRUPT_INDEX", "damaged"),
        ("SQLITE_NOTADB", "not_a_book"),
        ("SQLITE_CANTOPEN_ISDIR", "cannot_open"),
        ("SQLITE_IOERR_FSYNC", "disk"),
        ("SQLITE_INTERNAL", "damaged"),
    ],
)
def test_every_trouble_of_the_library_has_words_of_ours(name: str, code: str) -> None:
    # Names: SQLite manual, "Result and Error Codes".
    error = sqlite3.OperationalError("x")
    error.sqlite_errorname = name
    told = from_sqlite(error, Path("cases.sqlite3"))
    assert told.code == code
    assert "cases.sqlite3" in told.what
    assert told.mend.endswith(".")


WRITING: list[Callable[[Book], object]] = [
    lambda b: b.append("tea", [message(5, "x" * 100_000)]),
    lambda b: b.append("tea", attaching(5, PLAN), files={file_mark(PLAN): PLAN}),
    lambda b: b.keep_draft("tea", "x" * 100_000),
    lambda b: b.copy("large", "large2"),
    lambda b: b.import_(b.export("large"), "large2"),
    lambda b: b.rebuild(lambda case_id, events: IndexRow(title="x" * 100_000)),
    lambda b: b.forget("tea", lambda case_id, events: IndexRow(title="x" * 100_000)),
]
WRITES = ["append", "attach", "keep_draft", "copy", "import", "rebuild", "forget"]
PLAN = b"plan " * 20_000


def attaching(seq: int, content: bytes) -> list[Event]:
    body = {"message": seq, "file": file_mark(content), "bytes": len(content)}
    return [message(seq, "plan.pdf"), Event(seq=seq + 1, at="", kind="attached", body=body)]


def kept(book: Book) -> tuple[object, ...]:
    """All that may not change when a call fails."""
    return book.events("tea"), book.events("large"), book.draft("tea"), book.cases(archived=True)


@pytest.mark.parametrize("call", WRITING, ids=WRITES)
def test_every_call_on_a_full_disk_is_told_keeps_all_and_works_again_later(
    place: Path, story: Story, call: Callable[[Book], object]
) -> None:
    connections: list[sqlite3.Connection] = []
    with Book(place, on_connect=connections.append) as book:
        book.append("tea", story(), IndexRow(title="tea"))
        book.append("large", [message(1, "word " * 20_000)])
        book.keep_draft("tea", "half-typed")
        before = kept(book)
        pages = connections[0].execute("pragma page_count").fetchone()[0]
        connections[0].execute(f"pragma max_page_count={pages}")
        assert trouble(book, call).code == "full"
        assert kept(book) == before
        assert book.check() == []
        connections[0].execute("pragma max_page_count=1000000")
        call(book)
    with Book(place) as again:
        assert again.check() == []


@pytest.mark.parametrize("call", WRITING, ids=WRITES)
def test_every_call_on_a_locked_book_is_told_and_works_again_later(
    place: Path, story: Story, call: Callable[[Book], object]
) -> None:
    with Book(place, wait_s=0.05) as book:
        book.append("tea", story(), IndexRow(title="tea"))
        book.append("large", [message(1, "word " * 200)])
        before = kept(book)
        other = sqlite3.connect(place, isolation_level=None)
        other.execute("begin immediate")
        assert trouble(book, call).code == "locked"
        assert kept(book) == before
        other.execute("rollback")
        other.close()
        call(book)
        assert book.check() == []


@pytest.mark.parametrize("call", WRITING, ids=WRITES)
def test_every_call_on_a_read_only_book_is_told_while_it_can_be_read(
    place: Path, story: Story, call: Callable[[Book], object], monkeypatch: pytest.MonkeyPatch
) -> None:
    with Book(place) as book:
        book.append("tea", story(), IndexRow(title="tea"))
        book.append("large", [message(1, "word " * 200)])
        before = kept(book)

    def refuse(path: Path) -> None:
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr("intake.casebook.file.prepare", refuse)
    with Book(place) as book:
        assert trouble(book, call).code == "read_only"
        assert kept(book) == before
        assert [entry.id for entry in book.cases("ann example")] == ["tea"]
        assert book.check() == []
        book.backup(place.with_name("copy.sqlite3"))
    with Book(place.with_name("copy.sqlite3")) as copy:
        assert copy.events("tea") == story()


def test_a_book_replaced_by_another_one_is_read_anew(place: Path, story: Story) -> None:
    with Book(place) as book, Book(place.with_name("other.sqlite3")) as other:
        book.append("tea", story())
        book.keep_draft("tea", "half-typed")
        other.append("soap", story())
        other.close()
        for file in list(place.parent.glob("cases.sqlite3*")):
            file.rename(file.with_name(f"away-{file.name}"))
        place.with_name("other.sqlite3").rename(place)
        assert [entry.id for entry in book.cases("says")] == ["soap"]
        assert (book.draft("tea"), book.check()) == ("", [])
        assert trouble(book, lambda b: b.append("tea", [message(5, "x")])).code == "conflict"
    with Book(place.with_name(f"away-{place.name}")) as away:
        assert away.events("tea") == story()


def test_a_damaged_search_index_stops_no_case_from_being_kept_or_opened(place: Path, story: Story) -> None:
    with Book(place) as book:
        book.append("tea", story())
        other = sqlite3.connect(place)
        other.executescript("delete from found_data where id > 10")
        other.close()
        assert book.events("tea") == story()
        assert [entry.id for entry in book.cases()] == ["tea"]
        assert any("intake cases --rebuild" in line for line in book.check())
    with Book(place) as book:
        assert [entry.id for entry in book.cases("says")] == ["tea"]  # word by word, as long as it lasts
        assert book.append("tea", [message(5, "lavender")]) == 5
        book.rebuild(lambda case_id, events: IndexRow())
        assert [entry.id for entry in book.cases("lavender says")] == ["tea"]
        assert book.check() == []
