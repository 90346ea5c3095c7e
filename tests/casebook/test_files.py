"""Attached files: kept once, with their event or not at all, and found again byte for byte."""

import sqlite3
from collections.abc import Callable
from pathlib import Path

import pytest

from intake.casebook import LARGEST_FILE, Book, BookError, file_mark
from intake.spec import Event, fold

Story = Callable[..., list[Event]]

PLAN = bytes(range(256)) * 40


def attaching(seq: int, content: bytes = PLAN, name: str = "plan.pdf") -> list[Event]:
    return [
        Event(seq=seq, at="", kind="message", body={"text": name, "who": "staff"}),
        Event(
            seq=seq + 1,
            at="",
            kind="attached",
            body={"message": seq, "file": file_mark(content), "bytes": len(content)},
        ),
    ]


def test_the_mark_of_a_content_is_its_sha_256() -> None:
    # FIPS 180-4 example, as printed in NIST's "SHA256.pdf" of examples with intermediate values: the message "abc".
    assert file_mark(b"abc") == "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"


def test_a_file_comes_back_byte_for_byte(place: Path, story: Story) -> None:
    with Book(place) as book:
        assert book.append("tea", [*story(), *attaching(5)], files={file_mark(PLAN): PLAN}) == 6
    with Book(place) as book:
        assert book.attachment("tea", file_mark(PLAN)) == PLAN
        assert [(file.name, file.bytes) for file in fold(book.events("tea")).files] == [("plan.pdf", len(PLAN))]
        assert book.check() == []


def test_event_and_content_are_kept_together_or_not_at_all(book: Book, story: Story) -> None:
    book.append("tea", story())
    with pytest.raises(BookError) as told:
        book.append("tea", attaching(5), files={file_mark(PLAN): PLAN + b"!"})
    assert told.value.code == "bad_file"
    with pytest.raises(BookError):
        book.append("tea", [], files={file_mark(PLAN): PLAN})  # no event names it
    assert book.events("tea") == story()


def test_a_call_with_a_file_may_be_made_again(book: Book) -> None:
    for _ in range(2):
        assert book.append("tea", attaching(1), files={file_mark(PLAN): PLAN}) == 2
    assert book.attachment("tea", file_mark(PLAN)) == PLAN


def test_one_content_lies_in_the_book_once_whatever_cases_name_it(book: Book, place: Path) -> None:
    book.append("tea", attaching(1), files={file_mark(PLAN): PLAN})
    book.append("soap", attaching(1, name="same.pdf"), files={file_mark(PLAN): PLAN})
    book.copy("tea", "tea2")
    other = sqlite3.connect(place)
    assert other.execute("select count(*) from file").fetchone() == (1,)
    other.close()
    assert [book.attachment(name, file_mark(PLAN)) for name in ("tea", "soap", "tea2")] == [PLAN] * 3


def test_a_file_of_another_case_is_not_handed_out(book: Book, story: Story) -> None:
    book.append("tea", attaching(1), files={file_mark(PLAN): PLAN})
    book.append("soap", story())
    for mark in (file_mark(PLAN), file_mark(b""), "x"):
        with pytest.raises(BookError) as told:
            book.attachment("soap", mark)
        assert told.value.code == "no_file"
        assert not book.has_content("soap", mark)


def test_a_file_that_is_too_large_is_told_in_megabytes(book: Book) -> None:
    content = bytes(LARGEST_FILE + 1)
    with pytest.raises(BookError, match=r"25\.0 MB, and 25 MB is the most") as told:
        book.append("tea", attaching(1, content), files={file_mark(content): content})
    assert told.value.code == "too_large"
    assert book.events("tea") == []


WRONG = [
    "update file set content = x'00'",
    "update file set sha = 'x'",
    "delete from file",
    "insert or replace into file(sha, bytes, content) select sha, 1, x'00' from file",
]


@pytest.mark.parametrize("statement", WRONG)
def test_no_program_can_change_a_kept_file(book: Book, place: Path, statement: str) -> None:
    book.append("tea", attaching(1), files={file_mark(PLAN): PLAN})
    other = sqlite3.connect(place, isolation_level=None)
    with pytest.raises(sqlite3.IntegrityError):
        other.execute(statement)
    other.close()
    assert book.attachment("tea", file_mark(PLAN)) == PLAN


def test_an_export_carries_files_only_when_asked(book: Book) -> None:
    book.append("tea", attaching(1), files={file_mark(PLAN): PLAN})
    without, with_them = book.export("tea"), book.export("tea", files=True)
    assert len(with_them) > len(without) + len(PLAN)
    with Book(book.path.with_name("other.sqlite3")) as other:
        other.import_(without, "bare")
        assert not other.has_content("bare", file_mark(PLAN))
        with pytest.raises(BookError, match="not sent with the case"):
            other.attachment("bare", file_mark(PLAN))
        assert other.check() == []
        other.import_(with_them, "whole")
        assert other.attachment("whole", file_mark(PLAN)) == PLAN
        assert other.attachment("bare", file_mark(PLAN)) == PLAN  # the same content, here by now


@pytest.mark.parametrize(
    ("before", "after"),
    [('"content": "A', '"content": "B'), ('"content": "', '"content": "?'), ('"file": "', '"file": "f')],
)
def test_an_export_with_a_file_that_was_changed_is_refused(book: Book, before: str, after: str) -> None:
    book.append("tea", attaching(1), files={file_mark(PLAN): PLAN})
    head, *events, content = book.export("tea", files=True).splitlines()
    with pytest.raises(BookError) as told:
        book.import_("\n".join([head, *events, content.replace(before, after, 1)]), "sent")
    assert told.value.code == "bad_file"
    assert "line 4" in told.value.what
    assert book.events("sent") == []


@pytest.mark.parametrize("claimed", [0, 7, 10**30])
def test_a_case_from_elsewhere_that_tells_a_wrong_size_keeps_no_file_out(book: Book, claimed: int) -> None:
    book.append("tea", attaching(1), files={file_mark(PLAN): PLAN})
    sent = book.export("tea").replace(f'"bytes": {len(PLAN)}', f'"bytes": {claimed}')
    with Book(book.path.with_name("other.sqlite3")) as other:
        other.import_(sent, "sent")
        other.append("soap", attaching(1), files={file_mark(PLAN): PLAN})
        assert other.attachment("soap", file_mark(PLAN)) == PLAN
