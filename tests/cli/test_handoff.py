"""`intake handoff`: from a kept case to files, and back through `intake size`."""

import io
import json
import sys
from pathlib import Path

import pytest

from intake.casebook import Book
from intake.cli import main


@pytest.fixture
def kept(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> str:
    """A case kept by the interview on plain lines."""
    monkeypatch.setattr(sys, "stdin", io.StringIO("cases 16x12x10 in, 20 lb, 18 a minute, up 10 ft\n/quit\n"))
    assert main(["ask", "--case", "tea"]) == 0
    capsys.readouterr()
    return "tea"


def test_a_kept_case_is_written_and_size_takes_it_back(
    kept: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["handoff", kept, "--to", str(tmp_path / "out")]) == 0
    assert "Revision A" in capsys.readouterr().out
    results = []
    for source in (str(tmp_path / "out" / "spec.json"), str(tmp_path / "out"), kept):
        assert main(["size", source, "--json"]) == 0
        results.append(json.loads(capsys.readouterr().out))
    assert results[0] == results[1] == results[2]


def test_the_hand_over_is_kept_and_the_next_change_takes_the_next_letter(
    kept: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["handoff", kept, "--to", str(tmp_path)]) == 0
    with Book() as book:
        assert [e.body["revision"] for e in book.events(kept) if e.kind == "handed_over"] == ["A"]
    monkeypatch.setattr(sys, "stdin", io.StringIO("peak is 24 a minute\n/quit\n"))
    assert main(["ask", "--case", kept]) == 0
    capsys.readouterr()
    assert main(["handoff", kept, "--to", str(tmp_path)]) == 0
    assert "Revision B" in capsys.readouterr().out


def test_a_case_that_is_not_kept_says_how_to_list_them(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["handoff", "none", "--to", str(tmp_path / "out")]) == 2
    assert "intake cases" in capsys.readouterr().err
    assert not (tmp_path / "out").exists()
