"""`intake ask`: the whole interview on plain lines, kept under a name, going on where it stopped."""

import io
import sys
from pathlib import Path

import pytest

from intake.casebook import Book, BookError
from intake.cli import main


class Asker:
    """Types lines into `intake ask` and reads what it says."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
        self._monkeypatch, self._capsys = monkeypatch, capsys

    def __call__(self, *lines: str, words: tuple[str, ...] = ()) -> list[str]:
        self._monkeypatch.setattr(sys, "stdin", io.StringIO("".join(f"{line}\n" for line in lines)))
        assert main(["ask", *words]) == 0
        said = self._capsys.readouterr()
        assert said.err == ""
        return said.out.splitlines()


@pytest.fixture
def ask(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Asker:
    return Asker(monkeypatch, capsys)


GATHERS = ("/paste", "/thread")


def starting(lines: list[str], lead: str) -> list[str]:
    return [line for line in lines if line.startswith(lead)]


def test_a_message_is_understood_and_the_next_question_follows(ask: Asker) -> None:
    said = ask("taped cases 400x300x250 mm, 12 kg", "/quit")
    assert any("weight of one product 12 kg" in line for line in starting(said, "Understood:"))
    assert starting(said, "Ask:")
    assert starting(said, "Why:")


def test_every_line_says_first_what_it_is_and_carries_no_codes(ask: Asker) -> None:
    said = ask("cases \x1b[31m12 kg [red]x[/red]\x07", "/families", "/facts", "/left", "/quit")
    assert not any(ord(sign) < 32 or 127 <= ord(sign) < 160 for line in said for sign in line)


def test_a_forbidden_squeeze_puts_the_grip_out_and_undo_brings_it_back(ask: Asker) -> None:
    said = ask("cases 400x300x250 mm, 12 kg, 20/min, up 3 m. they cannot be squeezed", "/undo", "/quit")
    gone = next(n for n, line in enumerate(said) if line.startswith("Out: side-grip"))
    back = next(n for n, line in enumerate(said) if line.startswith("Back in: side-grip"))
    assert gone < back


def test_not_knowing_goes_on_to_another_question(ask: Asker) -> None:
    said = ask("cases 400x300x250 mm", "/unknown", "/quit")
    asked = starting(said, "Ask:")
    assert len(asked) >= 2
    assert asked[0] != asked[1]


def test_an_answer_in_words_that_says_dont_know_is_told_as_such(ask: Asker) -> None:
    said = ask("cases 400x300x250 mm", "no idea", "/quit")
    assert any("does not know" in line for line in starting(said, "Understood:"))


def test_several_lines_can_be_one_message(ask: Asker) -> None:
    said = ask("/paste", "cases 400x300x250 mm", "12 kg each", "/end", "/facts", "/quit")
    assert len(starting(said, "Ask:")) == 1
    assert any(line.startswith("weight of one product 12 kg") for line in said)


def test_a_command_that_there_is_not_is_named(ask: Asker) -> None:
    assert any("/frobnicate" in line and "/help" in line for line in ask("/frobnicate", "/quit"))


def test_help_names_every_command_that_works(ask: Asker) -> None:
    listed = [line.split()[0].rstrip(":") for line in ask("/help", "/quit") if line.startswith("/")]
    assert {"/back", "/unknown", "/later", "/undo", "/facts", "/families", "/result", "/note", "/quit"} <= set(listed)
    lines = [line for word in sorted(set(listed) - {"/quit"}) for line in (word, "/end")[: 1 + (word in GATHERS)]]
    said = ask("cases 12 kg", *lines, "/quit")
    assert not any("no command" in line for line in said)


def test_the_end_of_the_input_gives_the_result_with_its_cautions(ask: Asker) -> None:
    said = ask("cases 400x300x250 mm, 12 kg, 20/min, up 3 m")
    assert any("first sizing" in line.lower() for line in said)


def test_a_named_talk_goes_on_where_it_stopped(ask: Asker) -> None:
    ask("cases 400x300x250 mm, 12 kg", "/note call back on Friday", "/quit", words=("--case", "tea"))
    said = ask("/facts", "/quit", words=("--case", "tea"))
    assert any("weight of one product 12 kg" in line for line in said)
    with Book() as book:
        assert [entry.id for entry in book.cases()] == ["tea"]


def test_a_talk_without_a_name_says_that_it_is_not_kept(ask: Asker) -> None:
    assert any("not kept" in line and "--case" in line for line in ask("cases 12 kg", "/quit"))


def test_trouble_with_the_book_is_said_and_the_talk_goes_on(ask: Asker, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(*_: object, **__: object) -> int:
        raise BookError("full", "the disk is full", "Free some space.")

    monkeypatch.setattr(Book, "append", full)
    said = ask("cases 400x300x250 mm, 12 kg", "/quit", words=("--case", "tea"))
    assert any("the disk is full" in line for line in starting(said, "NOT SAVED:"))
    assert starting(said, "Ask:")


def test_a_book_that_cannot_be_opened_is_said_before_anything_is_typed(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    monkeypatch.setenv("INTAKE_BOOK", str(tmp_path))  # a folder where the file should be
    assert main(["ask", "--case", "tea"]) == 2
    assert "INTAKE_BOOK" in capsys.readouterr().err
