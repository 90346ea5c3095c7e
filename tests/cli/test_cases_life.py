"""`intake cases` for a case's life: promises, files, forgetting; and for the book: index, check, copy."""

import json
from datetime import date, timedelta
from pathlib import Path
from typing import Any

import pytest

from intake.casebook import Book
from intake.cli import main
from intake.desk.keeping import index_of
from intake.talk import Interview

Printed = pytest.CaptureFixture[str]

SAID = "Mira Oldcastle here, mira@fennick.example: 16x12x10 inch taped cases, 30 lb, 25 a minute, up 10 ft"


@pytest.fixture(autouse=True)
def kept() -> None:
    """One case of one visitor, as the desk keeps it."""
    talk = Interview()
    talk.hear(SAID)
    with Book() as book:
        book.append("tea", talk.events, index_of(talk))


def output(capsys: Printed, *words: str, code: int = 0) -> str:
    assert main(["cases", *words]) == code
    printed = capsys.readouterr()
    assert (printed.err == "") == (code == 0)
    return printed.out if code == 0 else printed.err


def data(capsys: Printed, *words: str) -> Any:
    return json.loads(output(capsys, *words, "--json"))


def ids(capsys: Printed, *words: str) -> list[str]:
    return [row["id"] for row in data(capsys, *words)]


def test_a_promise_is_listed_with_its_day_until_it_is_done(capsys: Printed) -> None:
    day = (date.today() + timedelta(days=3)).isoformat()
    assert f"send the layout, by {day}" in output(capsys, "--promise", "tea", "send the layout", "--by", "+3d")
    output(capsys, "--promise", "tea", "send samples", "--who", "visitor")
    row = data(capsys)[0]
    assert (row["waiting_for"], row["due"], row["open"], row["overdue"]) == ("us, visitor", day, 2, False)
    assert row["standing"] == "waiting for the visitor"
    assert f"due {day[5:]}" in output(capsys)
    assert (ids(capsys, "--due"), ids(capsys, "--due", "+3d"), ids(capsys, "--open")) == ([], ["tea"], ["tea"])
    assert (ids(capsys, "--waiting-for", "visitor"), ids(capsys, "--waiting-for", "works")) == (["tea"], [])
    shown = output(capsys, "--show", "tea").splitlines()
    assert f"1. we: send the layout, by {day}" in shown
    assert "done: send the layout" in output(capsys, "--done", "tea", "1")
    assert [one["what"] for one in data(capsys, "--done", "tea", "1")["waiting"]] == []
    assert data(capsys)[0]["open"] == 0


def test_what_should_have_been_done_is_overdue_in_words(capsys: Printed) -> None:
    output(capsys, "--promise", "tea", "send the layout", "--by", "yesterday")
    assert "OVERDUE" in output(capsys)
    assert "OVERDUE" in output(capsys, "--show", "tea")
    assert data(capsys, "--due", "today")[0]["overdue"] is True


def test_a_question_of_engineering_waits_until_it_is_answered(capsys: Printed) -> None:
    assert "engineering asks: which pallet?" in output(capsys, "--asked-back", "tea", "which pallet?")
    assert data(capsys, "--show", "tea")["waiting"][0]["kind"] == "question"
    output(capsys, "--done", "tea", "1")
    assert data(capsys, "--show", "tea")["waiting"] == []


def test_a_case_is_closed_and_opened_again(capsys: Printed) -> None:
    output(capsys, "--close", "tea")
    assert ids(capsys, "--standing", "closed") == ["tea"]
    assert "closed since" in output(capsys, "--show", "tea")
    output(capsys, "--reopen", "tea")
    assert ids(capsys, "--standing", "closed") == []


def test_a_file_is_kept_and_written_out_again(capsys: Printed, tmp_path: Path) -> None:
    plan = tmp_path / "floor plan.pdf"
    plan.write_bytes(bytes(range(256)))
    output(capsys, "--attach", "tea", str(plan), "--note", "ground floor")
    assert "file 1: floor plan.pdf: ground floor  (256 bytes" in output(capsys, "--files", "tea")
    assert "file 1: floor plan.pdf" in output(capsys, "--show", "tea")
    assert data(capsys, "--files", "tea")[0]["here"] is True
    for name, to in (("1", "one.pdf"), ("floor plan.pdf", "two.pdf")):
        output(capsys, "--save-file", "tea", name, "--to", str(tmp_path / to))
        assert (tmp_path / to).read_bytes() == bytes(range(256))
    (tmp_path / "folder").mkdir()
    output(capsys, "--save-file", "tea", "1", "--to", str(tmp_path / "folder"))
    assert [file.name for file in (tmp_path / "folder").iterdir()] == ["floor plan.pdf"]
    assert "already" in output(capsys, "--save-file", "tea", "1", "--to", str(tmp_path / "one.pdf"), code=2)


def test_a_file_name_from_elsewhere_stays_in_the_folder(capsys: Printed, tmp_path: Path) -> None:
    plan = tmp_path / "x"
    plan.write_bytes(b"plan")
    output(capsys, "--attach", "tea", str(plan))
    sent = output(capsys, "--export", "tea", "--with-files").replace('"text": "x"', '"text": "../../up.sh"')
    (tmp_path / "sent.jsonl").write_text(sent)
    output(capsys, "--import", str(tmp_path / "sent.jsonl"), "--name", "sent")
    (tmp_path / "in").mkdir()
    output(capsys, "--save-file", "sent", "1", "--to", str(tmp_path / "in"))
    assert [file.parent.name for file in tmp_path.rglob("*up.sh*")] == ["in"]


def test_files_left_out_of_an_export_are_told(capsys: Printed, tmp_path: Path) -> None:
    (tmp_path / "plan.pdf").write_bytes(b"plan")
    output(capsys, "--attach", "tea", str(tmp_path / "plan.pdf"))
    assert main(["cases", "--export", "tea"]) == 0
    printed = capsys.readouterr()
    assert "1 file of tea left out; --with-files" in printed.err
    (tmp_path / "tea.jsonl").write_text(printed.out)
    with Book() as book:  # into another book, which has no such file
        book.backup(tmp_path / "kept.sqlite3")
        book.path.unlink()
    assert "did not come along" in output(capsys, "--import", str(tmp_path / "tea.jsonl"))
    assert "content not kept here" in output(capsys, "--files", "tea")
    assert "not sent with the case" in output(capsys, "--save-file", "tea", "1", "--to", str(tmp_path), code=2)


def test_forgetting_asks_first_and_says_what_it_does_and_does_not(capsys: Printed, tmp_path: Path) -> None:
    (tmp_path / "card.txt").write_bytes(b"Mira Oldcastle")
    output(capsys, "--attach", "tea", str(tmp_path / "card.txt"))
    output(capsys, "--promise", "tea", "send Mira the layout")
    assert main(["cases", "--forget", "tea", "--with-contacts"]) == 2
    printed = capsys.readouterr()
    assert '"Mira Oldcastle"' in printed.out
    assert "Add --yes" in printed.err
    assert "Oldcastle" in output(capsys, "--show", "tea", "--with-contacts")
    told = output(capsys, "--forget", "tea", "--yes")
    assert "blanked in 2 messages" in told
    assert "exported, handed over or backed up before" in told
    assert "--and-files" in told
    assert "Contents of files that were dropped: 1" in output(capsys, "--forget", "tea", "--yes", "--and-files")
    shown = output(capsys, "--show", "tea", "--with-contacts")
    assert "Oldcastle" not in shown
    assert "we: send the layout" in shown
    assert 'weight of one product: 30 lb  (visitor: "30 lb")' in shown
    with Book() as book:
        assert b"Oldcastle" not in book.path.read_bytes()


def test_programs_are_told_what_was_forgotten(capsys: Printed) -> None:
    assert main(["cases", "--forget", "tea", "--json"]) == 2
    assert json.loads(capsys.readouterr().out) == {"id": "tea", "words": 2, "files": 0, "done": False}
    done = data(capsys, "--forget", "tea", "--yes")
    assert (done["messages"], done["sealed"], done["also_in"]) == (1, True, [])


def test_the_index_is_rebuilt_checked_and_copied(capsys: Printed, tmp_path: Path) -> None:
    before = data(capsys)
    assert data(capsys, "--rebuild") == {"cases": 1}
    assert data(capsys) == before
    assert "sound" in output(capsys, "--check")
    assert data(capsys, "--check") == []
    copy = str(tmp_path / "copy.sqlite3")
    assert "INTAKE_BOOK=" in output(capsys, "--backup", copy)
    assert "already" in output(capsys, "--backup", copy, code=2)
    with Book(Path(copy)) as book:
        assert [entry.id for entry in book.cases()] == ["tea"]


def test_a_book_that_is_not_sound_is_told_line_by_line(capsys: Printed) -> None:
    with Book() as book, book._file.writing() as connection:
        connection.execute("update entry set events = 1")
    assert main(["cases", "--check"]) == 2
    printed = capsys.readouterr()
    assert 'case "tea": the index is behind the events' in printed.out
    assert printed.err.count("\n") == 1


def test_the_list_is_narrowed_by_family_day_and_count(capsys: Printed) -> None:
    with Book() as book:
        best = book.cases()[0].index.best
        for number in range(3):
            book.copy("tea", f"tea{number}")
    assert len(ids(capsys, "--family", best.replace("_", " "))) == 4
    assert ids(capsys, "--family", "cover_belt") == []
    assert len(ids(capsys, "--since", "today", "--until", "today")) == 4
    assert ids(capsys, "--until", "2020-01-31") == []
    assert len(ids(capsys, "oldcastle", "--limit", "2")) == 2
    shown = output(capsys, "--limit", "2").splitlines()
    assert (len(shown), shown[-1]) == (3, "2 of 4 cases; --limit 0 lists all")
    assert "No case is like that" in output(capsys, "--standing", "closed")


@pytest.mark.parametrize("width", [60, 80, 100, 160])
def test_lines_fit_the_width(width: int) -> None:
    from intake.casebook import Entry, IndexRow
    from intake.cli.case_columns import entry_lines

    index = IndexRow(
        title="cartons of tea and a long story about them, 25/min, up 10 ft",
        standing="handed over, revision A",
        best="continuous_lift",
        waiting_for="visitor, us",
        since="2026-03-01T12:00:00+00:00",
        due="2026-03-06",
        open=3,
    )
    at = "2026-03-02T12:00:00+00:00"
    rows = [
        Entry(id="0302-bkt", events=4, begun=at, updated=at, archived=False, index=row) for row in (index, IndexRow())
    ]
    first, second = entry_lines(rows, "2026-03-07", width)
    assert len(first) <= width
    assert all(piece in first for piece in ("0302-bkt", "handed over", "visitor", "03-06 OVERDUE"))
    assert second.startswith("0302-bkt")


SLIPS = [
    (["--who", "us"], "--who goes with --promise, not with a list"),
    (["tea", "--yes"], "--yes goes with --forget, not with a list"),
    (["--show", "tea", "--family", "spiral"], "--family goes with the list of cases, not with --show"),
    (["--export", "tea", "--name", "x"], "--name goes with --copy and --import, not with --export"),
    (["--due", "someday"], '--due: "someday" is no day'),
    (["--since", "31.3."], "--since: "),
    (["--promise", "tea", "x", "--by", "soon"], "--by: "),
    (["--promise", "tea", " "], "tea: there are no words"),
    (["--promise", "tee", "x"], 'no case is kept under "tee"'),
    (["--done", "tea", "1"], "Nothing waits"),
    (["--done", "tea", "first"], '"first" is no number'),
    (["--family", "rocket"], 'there is no machine "rocket"'),
    (["--limit", "-1"], "--limit is a count"),
    (["--limit", "x"], "invalid int value"),
    (["--save-file", "tea", "1"], "--save-file needs --to"),
    (["--save-file", "tea", "1", "--to", "."], 'no file "1"'),
    (["--attach", "tea", "nowhere.pdf"], "nowhere.pdf"),
    (["--attach", "tea", "."], "."),
    (["--forget", "tee", "--yes"], 'no case is kept under "tee"'),
    (["--rebuild", "tea"], "one word too many"),
    (["--check", "--rebuild"], "not allowed with"),
]


@pytest.mark.parametrize(("words", "said"), SLIPS)
def test_a_slip_is_one_line_that_says_what_to_do(capsys: Printed, words: list[str], said: str) -> None:
    line = output(capsys, *words, code=2)
    assert said in line
    assert line.count("\n") == 1
    with Book() as book:
        assert len(book.cases()) == 1


def test_a_file_too_large_is_not_even_read(capsys: Printed, tmp_path: Path) -> None:
    large = tmp_path / "large.bin"
    with large.open("wb") as file:
        file.truncate(30_000_000)
    assert "25 MB is the most" in output(capsys, "--attach", "tea", str(large), code=2)
