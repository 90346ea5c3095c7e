"""`intake cases`: lists, finds, shows, copies, shelves, exports and imports kept cases."""

import io
import json
from pathlib import Path
from typing import Any

import pytest

from intake.casebook import Book, IndexRow
from intake.cli import main
from intake.spec import Doubt, Event, Fact
from intake.spec.bodies import doubt_to_body, fact_to_body

AT = "2026-03-02T09:00:00+00:00"
TEXT = "Ann Example here: 12 lb cartons, 6 high"

Printed = pytest.CaptureFixture[str]


def story(title: str) -> list[Event]:
    facts = [
        Fact(field="product.weight", low=5.44310844, high=5.44310844, said="12 lb", span=(18, 23), message=2),
        Fact(field="product.type", value="carton", said="cartons", span=(24, 31), message=2),
        Fact(field="contact.name", value="Ann Example", said="Ann Example", span=(0, 11), message=2),
    ]
    doubt = Doubt(field="product.height", said="6", why="a bare number", ask="Is that 6 in?", span=(33, 34))
    heard = {"message": 2, "facts": [fact_to_body(f) for f in facts], "doubts": [doubt_to_body(doubt)]}
    return [
        Event(seq=1, at=AT, kind="opened", body={"title": title}),
        Event(seq=2, at=AT, kind="message", body={"text": TEXT, "who": "visitor"}),
        Event(seq=3, at=AT, kind="heard", body=heard),
        Event(seq=4, at=AT, kind="later", body={"question": "rate", "fields": ["rate.peak"]}),
    ]


@pytest.fixture
def two_cases() -> None:
    """The cases "tea" and "soap" in the book that the command opens."""
    with Book() as book:
        index = IndexRow(title="tea cartons", standing="talking", best="side_grip", since=AT)
        book.append("tea", story("tea cartons"), index)
        book.append("soap", story("soap"), IndexRow(title="soap"))


def output(capsys: Printed, *words: str, code: int = 0) -> str:
    assert main(["cases", *words]) == code
    printed = capsys.readouterr()
    assert (printed.err == "") == (code == 0)
    return printed.out if code == 0 else printed.err


def data(capsys: Printed, *words: str) -> Any:
    return json.loads(output(capsys, *words, "--json"))


def test_an_empty_book_says_how_to_begin_and_makes_no_file(capsys: Printed) -> None:
    assert "intake ask --case" in output(capsys)
    assert data(capsys) == []
    with Book() as book:
        assert not book.path.exists()


@pytest.mark.usefixtures("two_cases")
def test_the_list_is_one_line_a_case(capsys: Printed) -> None:
    first, second, last = output(capsys).splitlines()
    assert first.startswith("soap  2026-03-0")
    assert second.startswith("tea   2026-03-0")
    assert second.endswith("talking  side grip  tea cartons")
    assert last == "2 cases"


@pytest.mark.usefixtures("two_cases")
def test_words_find_cases_and_none_is_told(capsys: Printed) -> None:
    assert [row["id"] for row in data(capsys, "TEA", "ann")] == ["tea"]
    assert "No case has these words" in output(capsys, "coffee")


@pytest.mark.usefixtures("two_cases")
def test_programs_get_the_list_as_json(capsys: Printed) -> None:
    assert data(capsys, "tea")[0] == {
        "id": "tea",
        "title": "tea cartons",
        "standing": "talking",
        "best": "side_grip",
        "waiting_for": None,
        "since": AT,
        "due": None,
        "overdue": False,
        "open": 0,
        "begun": AT,
        "updated": AT,
        "archived": False,
        "events": 4,
    }


@pytest.mark.usefixtures("two_cases")
def test_a_case_is_shown_in_the_units_of_the_visitor_without_the_person(capsys: Printed) -> None:
    shown = output(capsys, "--show", "tea").splitlines()
    assert shown[0] == "tea: tea cartons"
    assert 'weight of one product: 12 lb  (visitor: "12 lb")' in shown
    assert 'kind of product: carton  (visitor: "cartons")' in shown
    assert "to ask: Is that 6 in?" in shown
    assert "the visitor will check: peak rate" in shown
    assert shown[-1] == "1 about the person left out; --with-contacts shows them"
    assert "Ann" not in "".join(shown)
    assert 'name: Ann Example  (visitor: "Ann Example")' in output(capsys, "--show", "tea", "--with-contacts")


@pytest.mark.usefixtures("two_cases")
def test_programs_get_a_case_as_json_without_the_person(capsys: Printed) -> None:
    shape = data(capsys, "--show", "tea")
    assert [fact["field"] for fact in shape["facts"]] == ["product.type", "product.weight"]
    assert (shape["later"], shape["conflicts"], len(shape["doubts"])) == (["rate.peak"], [], 1)
    assert [fact["field"] for fact in data(capsys, "--show", "tea", "--with-contacts")["facts"]][-1] == "contact.name"


@pytest.mark.usefixtures("two_cases")
def test_two_different_values_are_shown_as_one_thing_to_settle(capsys: Printed) -> None:
    other = Fact(field="product.weight", low=9.07184740, high=9.07184740, said="20 lb")
    with Book() as book:
        book.append("tea", [Event(seq=5, at=AT, kind="heard", body={"facts": [fact_to_body(other)]})])
    assert "to settle: weight of one product: 12 lb or 20 lb" in output(capsys, "--show", "tea")


@pytest.mark.usefixtures("two_cases")
def test_a_case_is_copied_under_a_name_given_or_a_new_one(capsys: Printed) -> None:
    assert output(capsys, "--copy", "tea", "--name", "tea2").startswith("tea2: a copy of tea.")
    fresh = data(capsys, "--copy", "tea")["id"]
    assert {row["id"] for row in data(capsys, "copy")} == {"tea2", fresh}


@pytest.mark.usefixtures("two_cases")
def test_a_shelved_case_is_listed_with_all_and_comes_back(capsys: Printed) -> None:
    assert "intake cases --restore tea" in output(capsys, "--archive", "tea")
    assert [row["id"] for row in data(capsys)] == ["soap"]
    assert "--all" in output(capsys, "kartons")
    assert "on the shelf" in output(capsys, "tea", "--all")
    assert "(on the shelf)" in output(capsys, "--show", "tea")
    output(capsys, "--restore", "tea")
    assert {row["id"] for row in data(capsys)} == {"tea", "soap"}


@pytest.mark.usefixtures("two_cases")
def test_an_export_is_taken_in_again_from_a_file_and_from_standard_input(
    capsys: Printed, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    sent = output(capsys, "--export", "tea")
    assert "Ann Example" not in sent
    assert "Ann Example" in output(capsys, "--export", "tea", "--with-contacts")
    file = tmp_path / "tea.jsonl"
    file.write_text(sent, encoding="utf-8")
    assert output(capsys, "--import", str(file), "--name", "back").startswith("back: kept.")
    monkeypatch.setattr("sys.stdin", io.StringIO(sent))
    fresh = data(capsys, "--import", "-")["id"]
    for name in ("back", fresh):
        assert 'weight of one product: 12 lb  (visitor: "12 lb")' in output(capsys, "--show", name)


@pytest.mark.usefixtures("two_cases")
@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--show", "tee"], 'no case is kept under "tee"'),
        (["--archive", "tee"], 'no case is kept under "tee"'),
        (["--export", ""], 'no case is kept under ""'),
        (["--copy", "tea", "--name", "soap"], 'a case is kept under "soap" already'),
        (["--copy", "tea", "--name", "a/b"], '"a/b" cannot name a case'),
        (["--import", "nowhere.jsonl"], "nowhere.jsonl"),
        (["tea", "--show", "tea"], "one word too many"),
        (["--show", "tea", "--copy", "tea"], "not allowed with"),
    ],
)
def test_a_slip_is_one_line_that_says_what_to_do(capsys: Printed, words: list[str], said: str) -> None:
    line = output(capsys, *words, code=2)
    assert said in line
    assert line.count("\n") == 1


@pytest.mark.parametrize("content", [b"\xff\xfe\x00", b"", b"{}\n", b'{"product.length": 0.4}\n'])
def test_a_file_that_is_no_export_is_refused(capsys: Printed, tmp_path: Path, content: bytes) -> None:
    file = tmp_path / "x.jsonl"
    file.write_bytes(content)
    assert "intake cases --export" in output(capsys, "--import", str(file), code=2)


def test_a_book_that_is_none_is_told_in_one_line(
    capsys: Printed, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "notes.txt").write_text("words " * 500, encoding="utf-8")
    monkeypatch.setenv("INTAKE_BOOK", str(tmp_path / "notes.txt"))
    assert "INTAKE_BOOK" in output(capsys, code=2)


def test_what_people_wrote_cannot_steer_the_terminal(capsys: Printed) -> None:
    evil = "\x1b[2J\x1b]0;x\x07tea\ncartons\u202e"
    note = Event(seq=5, at=AT, kind="message", body={"text": evil, "who": "staff"})
    noted = Event(seq=6, at="\x1b[2J", kind="noted", body={"message": 5})
    with Book() as book:
        book.append("tea", [*story(evil), note, noted], IndexRow(title=evil, standing=evil))
    for shown in (output(capsys), output(capsys, "--show", "tea")):
        assert not set("\x1b\x07\u202e") & set(shown)
    assert "note: tea cartons" in shown
