"""What the journal promises: all or nothing, nothing changed, nothing lost, two desks kept apart."""

import json
import os
import signal
import sqlite3
import subprocess
import sys
import threading
from collections.abc import Callable
from pathlib import Path

import pytest

from intake.casebook import Book, BookError, IndexRow
from intake.spec import Event

Story = Callable[..., list[Event]]


def asked(seq: int, question: str = "rate") -> Event:
    return Event(seq=seq, at="2026-03-02T10:00:00+00:00", kind="asked", body={"question": question})


def raw(place: Path) -> sqlite3.Connection:
    return sqlite3.connect(place, isolation_level=None)


def test_keeping_the_same_events_again_changes_nothing(book: Book, story: Story) -> None:
    book.append("tea", story())
    assert book.append("tea", story()) == 4
    assert book.append("tea", [*story(), asked(5)]) == 5
    assert book.events("tea") == [*story(), asked(5)]


def test_two_desks_on_one_case_are_told_apart(place: Path, story: Story) -> None:
    with Book(place) as here, Book(place) as there:
        here.append("tea", story())
        there.append("tea", [asked(5, "rise")])
        with pytest.raises(BookError) as told:
            here.append("tea", [asked(5, "rate")], IndexRow(title="mine"))
        assert told.value.code == "conflict"
        assert here.events("tea")[-1] == asked(5, "rise")
        assert here.cases()[0].index.title == ""


def test_a_hole_in_the_numbers_is_refused(book: Book, story: Story) -> None:
    book.append("tea", story())
    with pytest.raises(BookError, match="event 5 is missing"):
        book.append("tea", [asked(6)])


def test_all_of_a_call_is_kept_or_nothing(book: Book, story: Story) -> None:
    with pytest.raises(BookError):
        book.append("tea", [*story(), asked(7)], IndexRow(title="tea"))
    assert book.events("tea") == []
    assert book.cases() == []


@pytest.mark.parametrize(
    "event",
    [
        Event(seq=1, at="", kind="sold"),
        Event(seq=1, at="", kind="message", body={"who": "visitor"}),
        Event(seq=1, at="", kind="opened", body={"title": float("nan")}),
        Event(seq=1, at="", kind="opened", body={"title": {1, 2}}),
        Event(seq=1, at="", kind="known", body={"fact": {"field": "product.colour", "value": "red"}}),
        Event(seq=1, at="", kind="known", body={"fact": {"field": "product.weight", "value": "red"}}),
    ],
)
def test_what_could_not_be_read_again_is_not_kept(book: Book, event: Event) -> None:
    with pytest.raises(BookError) as told:
        book.append("tea", [event])
    assert told.value.code == "bad_event"
    assert book.events("tea") == []


def test_what_no_row_can_hold_is_kept_as_signs_and_places_stay(book: Book) -> None:
    text = "12 kg \ud83d Ann\x00!"
    event = Event(seq=1, at="", kind="message", body={"text": text, "who": "visitor"})
    title = Event(seq=2, at="", kind="opened", body={"title": "x\udc00"})
    for _ in range(2):  # and they count as the same when kept again
        book.append("tea", [event, title], IndexRow(title="\udc00"))
    kept = book.events("tea")
    assert kept[0].body["text"] == "12 kg \ufffd Ann\ufffd!"
    assert kept[1].body["title"] == "x\ufffd"


WRONG = [
    "update event set body = '{}'",
    "delete from event",
    "insert or replace into event(n, case_id, seq, at, kind, body) values (1, 'tea', 5, '', 'asked', '{}')",
    "insert or replace into event(case_id, seq, at, kind, body) values ('tea', 1, '', 'asked', '{}')",
    "insert into event(case_id, seq, at, kind, body) values ('tea', 9, '', 'asked', '{}')",
    "insert into event(case_id, seq, at, kind, body) values ('tea', 5, '', 'asked', '{')",
    "update message set text = ''",
    "delete from message",
    "insert or replace into message(case_id, seq, text) values ('tea', 2, '')",
]


@pytest.mark.parametrize("statement", WRONG)
def test_no_program_can_change_what_was_kept(book: Book, place: Path, story: Story, statement: str) -> None:
    book.append("tea", story())
    other = raw(place)
    with pytest.raises(sqlite3.IntegrityError):
        other.execute(statement)
    other.close()
    assert book.events("tea") == story()


def test_the_words_of_people_lie_in_a_table_of_their_own(book: Book, place: Path, story: Story) -> None:
    book.append("tea", story())
    other = raw(place)
    bodies = "".join(body for (body,) in other.execute("select body from event"))
    texts = other.execute("select case_id, seq, text from message").fetchall()
    other.close()
    assert "Ann Example" not in bodies
    assert texts == [("tea", 2, "12 kg, says Ann Example")]


def test_every_event_is_synced_to_disk_before_it_counts(place: Path, story: Story) -> None:
    seen: list[sqlite3.Connection] = []
    with Book(place, on_connect=seen.append) as book:
        book.append("tea", story())
        assert seen[0].execute("pragma journal_mode").fetchone() == ("wal",)
        assert seen[0].execute("pragma synchronous").fetchone() == (2,)  # 2 = FULL, SQLite manual, pragma synchronous


WRITER = """
import sys
from pathlib import Path
from intake.casebook import Book
from intake.spec import Event
book = Book(Path(sys.argv[1]))
for seq in range(1, 100000):
    book.append("tea", [Event(seq=seq, at="", kind="message", body={"text": f"line {seq}", "who": "visitor"})])
    print(seq, flush=True)
"""


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="this system has no kill that cannot be caught")
@pytest.mark.parametrize("acknowledged", [1, 7, 40])
def test_a_killed_program_loses_nothing_that_it_said_was_kept(place: Path, acknowledged: int) -> None:
    with subprocess.Popen([sys.executable, "-c", WRITER, str(place)], stdout=subprocess.PIPE, text=True) as writer:
        assert writer.stdout is not None
        for line in writer.stdout:
            if int(line) >= acknowledged:
                break
        os.kill(writer.pid, signal.SIGKILL)
        said = [acknowledged, *(int(line) for line in writer.stdout if line.endswith("\n"))]
    with Book(place) as book:
        kept = book.events("tea")
        assert len(kept) >= said[-1]
        assert [event.body["text"] for event in kept] == [f"line {n}" for n in range(1, len(kept) + 1)]
        book.append("tea", [asked(len(kept) + 1)])


def test_several_writers_wait_for_each_other(place: Path) -> None:
    troubles: list[BaseException] = []

    def write(name: str) -> None:
        try:
            with Book(place) as book:
                for seq in range(1, 21):
                    book.append(name, [asked(seq)])
        except BaseException as trouble:
            troubles.append(trouble)

    desks = [threading.Thread(target=write, args=(f"case{n}",)) for n in range(4)]
    for desk in desks:
        desk.start()
    for desk in desks:
        desk.join()
    assert troubles == []
    with Book(place) as book:
        assert [len(book.events(f"case{n}")) for n in range(4)] == [20] * 4


def test_a_new_book_that_several_open_at_once_is_made_once(tmp_path: Path) -> None:
    troubles: list[BaseException] = []

    def write(place: Path, name: str, together: threading.Barrier) -> None:
        try:
            together.wait()
            with Book(place) as book:
                book.append(name, [asked(1)])
        except BaseException as trouble:
            troubles.append(trouble)

    for turn in range(40):
        place, together = tmp_path / f"{turn}.sqlite3", threading.Barrier(4)
        desks = [threading.Thread(target=write, args=(place, f"case{n}", together)) for n in range(4)]
        for desk in desks:
            desk.start()
        for desk in desks:
            desk.join()
        with Book(place) as book:
            assert len(book.cases()) == 4
    assert troubles == []


def test_one_book_serves_several_threads(book: Book) -> None:
    desks = [
        threading.Thread(target=lambda n=n: [book.append(f"case{n}", [asked(s)]) for s in range(1, 11)])
        for n in range(4)
    ]
    for desk in desks:
        desk.start()
    for desk in desks:
        desk.join()
    assert [len(book.events(f"case{n}")) for n in range(4)] == [10] * 4


DAMAGE = [
    pytest.param("update event set body = '[]' where seq = 3", "event 3", id="a body that is no table"),
    pytest.param("update event set kind = 'sold' where seq = 3", "unknown kind", id="an unknown kind"),
    pytest.param("update event set body = '{\"facts\": 4}' where seq = 3", "facts", id="a part of the wrong kind"),
    pytest.param("delete from event where seq = 2", "some are missing", id="a missing event"),
    pytest.param("delete from message", "text of the message is gone", id="a missing text"),
    pytest.param(
        "update event set body = replace(body, 'product.weight', 'product.wait') where seq = 3",
        "names a field that there is not",
        id="a fact of no field",
    ),
]


@pytest.mark.parametrize(("statement", "said"), DAMAGE)
def test_a_damaged_row_is_told_and_leaves_other_cases_alone(
    book: Book, place: Path, story: Story, statement: str, said: str
) -> None:
    book.append("tea", story())
    other = raw(place)
    for (trigger,) in other.execute("select name from sqlite_schema where type = 'trigger'").fetchall():
        other.execute(f"drop trigger {trigger}")
    other.execute(statement)
    other.close()
    book.append("soap", story())
    with pytest.raises(BookError) as told:
        book.events("tea")
    assert told.value.code == "damaged"
    assert said in str(told.value)
    assert "event" in str(told.value)
    assert book.events("soap") == story()


def test_the_index_can_be_dropped_and_written_anew(book: Book, place: Path, story: Story) -> None:
    book.append("tea", story(), IndexRow(title="tea"))
    other = raw(place)
    other.execute("delete from entry")
    other.close()
    assert [(entry.id, entry.index) for entry in book.cases("says")] == [("tea", IndexRow())]
    book.append("tea", [], IndexRow(title="tea again"))
    assert book.cases("again")[0].index.title == "tea again"


def test_kept_bodies_are_plain_json(book: Book, place: Path, story: Story) -> None:
    book.append("tea", story())
    other = raw(place)
    (body,) = other.execute("select body from event where seq = 4").fetchone()
    other.close()
    assert json.loads(body) == {"question": "size", "fields": ["product.length"]}
