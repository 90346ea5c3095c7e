"""Whether a book is sound, told in sentences; and copies of it, made while desks are open."""

import sqlite3
import stat
from collections.abc import Callable
from pathlib import Path

import pytest

from intake.casebook import Book, BookError, IndexRow, file_mark
from intake.spec import Event

Story = Callable[..., list[Event]]

PLAN = b"plan " * 100


@pytest.fixture
def kept(book: Book, story: Story) -> Book:
    file = [
        Event(seq=5, at="", kind="message", body={"text": "plan.pdf", "who": "staff"}),
        Event(seq=6, at="", kind="attached", body={"message": 5, "file": file_mark(PLAN), "bytes": len(PLAN)}),
    ]
    book.append("tea", [*story(), *file], IndexRow(title="tea"), files={file_mark(PLAN): PLAN})
    book.append("soap", story())
    return book


def test_a_sound_book_has_nothing_to_tell(kept: Book, place: Path) -> None:
    assert kept.check() == []
    assert Book(place.with_name("none.sqlite3")).check() == []


UNSOUND = [
    ("delete from event where case_id = 'tea' and seq = 2", 'case "tea": its events are not numbered from 1 to 5'),
    ("delete from event where case_id = 'tea' and seq = 2", "a text belongs to no message (event 2)"),
    ("delete from message where case_id = 'soap'", "the text of the message is gone"),
    ("update event set body = '[]' where case_id = 'tea' and seq = 3", "event 3 cannot be read"),
    ("update entry set events = 3 where case_id = 'tea'", 'case "tea": the index is behind'),
    ("update entry set archived = 1 where case_id = 'tea'", 'case "tea": the index is behind'),
    ("delete from entry where case_id = 'tea'", 'case "tea": the index lacks it'),
    (
        "insert into entry(case_id, begun, updated, last, events, archived) values ('x', '', '', 0, 0, 0)",
        "has no events",
    ),
    ("delete from found where rowid = 1", "the search index is damaged"),
    ("update file set content = zeroblob(bytes)", "the content of an attached file is damaged"),
    ("delete from file", 'case "tea": the file of event 6 is missing'),
]


@pytest.mark.parametrize(("statement", "said"), UNSOUND)
def test_what_is_wrong_is_told_in_a_sentence(kept: Book, place: Path, statement: str, said: str) -> None:
    other = sqlite3.connect(place, isolation_level=None)
    for (trigger,) in other.execute("select name from sqlite_schema where type = 'trigger'").fetchall():
        other.execute(f"drop trigger {trigger}")
    other.execute(statement)
    other.close()
    assert any(said in line for line in kept.check())


def test_pages_gone_bad_are_found(kept: Book, place: Path, story: Story) -> None:
    for number in range(30):
        kept.append(f"case{number}", story("12 kg " + "word " * 300))
    kept.close()
    data = bytearray(place.read_bytes())
    data[16384:20480] = b"\xa5" * 4096
    place.write_bytes(data)
    with Book(place) as book:
        try:
            found = book.check()
        except BookError as trouble:
            found = [trouble.what]
        assert "damaged" in found[0]


def test_a_copy_is_whole_while_another_desk_writes(kept: Book, place: Path, tmp_path: Path, story: Story) -> None:
    to = tmp_path / "copy.sqlite3"
    other = sqlite3.connect(place, isolation_level=None)
    other.execute("begin immediate")  # a write that is not ended yet is not in it
    other.execute("insert into event(case_id, seq, at, kind, body) values ('late', 1, '', 'opened', '{}')")
    kept.backup(to)
    other.execute("rollback")
    other.close()
    assert [file.name for file in tmp_path.iterdir() if file.is_file()] == ["copy.sqlite3"]  # no log beside it
    assert stat.S_IMODE(to.stat().st_mode) == 0o600
    with Book(to) as copy:
        assert copy.check() == []
        assert copy.events("tea") == kept.events("tea")
        assert copy.attachment("tea", file_mark(PLAN)) == PLAN
        assert [entry.index for entry in copy.cases()] == [entry.index for entry in kept.cases()]
        copy.append("tea", [Event(seq=7, at="", kind="asked", body={"question": "rate"})])


def test_a_copy_is_never_written_over_another_file(kept: Book, place: Path, tmp_path: Path) -> None:
    (tmp_path / "there").write_bytes(b"mine")
    for to in (tmp_path / "there", place):
        with pytest.raises(BookError) as told:
            kept.backup(to)
        assert told.value.code == "taken"
    assert (tmp_path / "there").read_bytes() == b"mine"


def test_a_copy_that_cannot_be_written_is_told_and_leaves_nothing(kept: Book, tmp_path: Path) -> None:
    with pytest.raises(BookError) as told:
        kept.backup(tmp_path / "no folder" / "copy.sqlite3")
    assert told.value.code == "cannot_open"
    assert list(tmp_path.glob("**/*.part")) == []
    with pytest.raises(BookError):
        Book(tmp_path / "none.sqlite3").backup(tmp_path / "copy.sqlite3")
