"""A book of version 1 is brought up to date at once and whole, with a copy of it kept; a newer one is left alone."""

import json
import sqlite3
import stat
from collections.abc import Callable
from pathlib import Path

import pytest

from intake.casebook import Book, BookError, IndexRow, schema
from intake.spec import Event

Story = Callable[..., list[Event]]

# The tables and guards that version 1 of the program made, word for word.
VERSION_1 = """
create table event(
        n integer primary key,
        case_id text not null,
        seq integer not null check(seq >= 1),
        at text not null,
        kind text not null,
        body text not null check(json_valid(body)),
        unique(case_id, seq)) strict;
create index shelf on event(case_id, seq) where kind in ('archived', 'restored');
create table message(
        case_id text not null,
        seq integer not null,
        text text not null,
        primary key(case_id, seq)) strict;
create table entry(
        case_id text primary key,
        title text not null,
        standing text not null,
        best text not null,
        waiting_for text not null,
        since text not null,
        words text not null) strict;
create trigger event_in_order before insert on event
       when new.seq != (select coalesce(max(seq), 0) + 1 from event where case_id = new.case_id)
         or exists(select 1 from event where n = new.n)
       begin select raise(abort, 'append only: out of order'); end;
create trigger event_stays before update on event begin select raise(abort, 'append only'); end;
create trigger event_kept before delete on event begin select raise(abort, 'append only'); end;
create trigger message_once before insert on message
       when exists(select 1 from message where case_id = new.case_id and seq = new.seq)
       begin select raise(abort, 'append only'); end;
create trigger message_stays before update on message begin select raise(abort, 'append only'); end;
create trigger message_kept before delete on message begin select raise(abort, 'append only'); end;
pragma application_id=1229870155;
pragma user_version=1;
"""


def keep_as_1(connection: sqlite3.Connection, case_id: str, events: list[Event], title: str = "") -> None:
    """Rows as version 1 wrote them."""
    for event in events:
        body = dict(event.body)
        text = body.pop("text") if event.kind == "message" else None
        connection.execute(
            "insert into event(case_id, seq, at, kind, body) values (?, ?, ?, ?, ?)",
            (case_id, event.seq, event.at, event.kind, json.dumps(body, ensure_ascii=False)),
        )
        if text is not None:
            connection.execute("insert into message values (?, ?, ?)", (case_id, event.seq, text))
    if title:
        connection.execute(
            "insert into entry values (?, ?, 'talking', 'spiral', 'visitor', 'x', 'w')", (case_id, title)
        )


@pytest.fixture
def old(place: Path, story: Story) -> Path:
    """A book of version 1: three cases, one of them on the shelf, one without a line in the index."""
    place.parent.mkdir()
    connection = sqlite3.connect(place, isolation_level=None)
    connection.execute("pragma journal_mode=wal")
    connection.executescript(VERSION_1)
    keep_as_1(connection, "tea", story(), "tea cartons")
    keep_as_1(
        connection, "soap", [*story(second=2), Event(seq=5, at="2026-03-02T11:00:00+00:00", kind="archived")], "soap"
    )
    keep_as_1(connection, "jars", story("marmalade", second=1))
    connection.close()
    return place


def version(place: Path) -> int:
    connection = sqlite3.connect(place)
    (found,) = connection.execute("pragma user_version").fetchone()
    connection.close()
    return int(found)


def test_all_that_was_kept_is_there_and_listed(old: Path, story: Story) -> None:
    with Book(old) as book:
        assert book.events("tea") == story()
        assert [(entry.id, entry.events, entry.archived) for entry in book.cases(archived=True)] == [
            ("soap", 5, True),
            ("jars", 4, False),
            ("tea", 4, False),
        ]
        kept = {entry.id: entry.index for entry in book.cases()}
        assert kept["jars"] == IndexRow()
        assert kept["tea"] == IndexRow(
            title="tea cartons", standing="talking", best="spiral", waiting_for="visitor", since="x", words="w"
        )
        assert [entry.id for entry in book.cases("marmalade")] == ["jars"]
        assert book.check() == []
    assert version(old) == 2


def test_a_migrated_book_is_like_a_new_one(old: Path, story: Story) -> None:
    def shape(place: Path) -> set[tuple[str, str]]:
        connection = sqlite3.connect(place)
        rows = set(connection.execute("select name, sql from sqlite_schema where sql is not null"))
        connection.close()
        return rows

    with Book(old) as book, Book(old.with_name("new.sqlite3")) as new:
        book.append("tea", [Event(seq=5, at="", kind="asked", body={"question": "rate"})], IndexRow(title="t", open=1))
        new.append("tea", story())
        assert shape(book.path) == shape(new.path)
        assert book.follow(0)[0] == 14  # the marks go on where they were


def test_a_copy_of_the_old_book_is_kept_for_its_owner_only(old: Path, story: Story) -> None:
    before = old.read_bytes()
    with Book(old) as book:
        book.append("tea", [Event(seq=5, at="", kind="asked", body={"question": "rate"})])
    copy = old.with_name("cases.sqlite3.v1-backup")
    assert stat.S_IMODE(copy.stat().st_mode) == 0o600
    assert version(copy) == 1
    connection = sqlite3.connect(copy)
    assert connection.execute("select count(*), max(n) from event").fetchone() == (13, 13)
    assert connection.execute("pragma integrity_check").fetchone() == ("ok",)
    connection.close()
    assert len(before) > 0
    old.unlink()
    copy.rename(old)
    with Book(old) as book:  # and it can be gone back to
        assert book.events("tea") == story()


def test_two_desks_that_open_an_old_book_at_once_bring_it_up_to_date_once(old: Path) -> None:
    with Book(old) as here, Book(old) as there:
        assert [entry.id for entry in here.cases()] == [entry.id for entry in there.cases()] == ["jars", "tea"]
    assert [file.name for file in old.parent.glob("*backup*")] == ["cases.sqlite3.v1-backup"]


def test_a_migration_that_fails_leaves_the_old_book(old: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(schema, "FROM_1", (*schema.FROM_1, "select no_such_thing()"))
    with Book(old) as book, pytest.raises(BookError):
        book.cases()
    monkeypatch.undo()
    assert version(old) == 1
    assert list(old.parent.glob("*backup*")) == []
    with Book(old) as book:
        assert len(book.cases(archived=True)) == 3


def test_an_older_copy_is_never_written_over(old: Path) -> None:
    old.with_name("cases.sqlite3.v1-backup").write_bytes(b"the first one")
    with Book(old) as book:
        book.cases()
    assert old.with_name("cases.sqlite3.v1-backup").read_bytes() == b"the first one"
    assert version(old.with_name("cases.sqlite3.v1-backup.2")) == 1


def test_an_old_book_that_cannot_be_written_to_is_read_as_it_is(
    old: Path, story: Story, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = old.read_bytes()

    def refuse(path: Path) -> None:
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr("intake.casebook.file.prepare", refuse)
    with Book(old) as book:
        assert book.events("tea") == story()
        assert [entry.id for entry in book.cases("marmalade")] == ["jars"]
        with pytest.raises(BookError) as told:
            book.archive("tea")
        assert told.value.code == "read_only"
    assert old.read_bytes() == before


@pytest.mark.parametrize("call", ["append", "events", "cases", "draft"])
def test_a_desk_that_is_open_while_a_newer_one_changes_the_book_is_told(place: Path, story: Story, call: str) -> None:
    calls: dict[str, Callable[[Book], object]] = {
        "append": lambda b: b.append("tea", [Event(seq=5, at="", kind="asked", body={"question": "rate"})]),
        "events": lambda b: b.events("tea"),
        "cases": lambda b: b.cases(),
        "draft": lambda b: b.draft("tea"),
    }
    with Book(place) as book:
        book.append("tea", story())
        newer = sqlite3.connect(place)
        newer.execute("pragma user_version=3")
        newer.close()
        with pytest.raises(BookError) as told:
            calls[call](book)
        assert told.value.code == "newer"
        assert "Update this program" in told.value.mend


def test_a_desk_of_version_1_that_stays_open_can_spoil_nothing(old: Path, story: Story) -> None:
    before = sqlite3.connect(old, isolation_level=None)
    before.execute("select count(*) from event").fetchone()
    with Book(old) as book:
        book.cases()
        keep_as_1(before, "tea", [Event(seq=5, at="", kind="message", body={"text": "lavender", "who": "visitor"})])
        with pytest.raises(sqlite3.Error):  # its way of writing the index is refused, and nothing of that call is kept
            keep_as_1(before, "tea", [], "another title")
        before.close()
        assert len(book.events("tea")) == 5
        assert [entry.id for entry in book.cases("lavender")] == ["tea"]
        assert book.check() == []
