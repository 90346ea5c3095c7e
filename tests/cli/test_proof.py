"""`intake proof`: prints what is wrong, says by its exit code whether anything is."""

import json
import shutil
from pathlib import Path

import pytest

from intake.advice.cards import deck_of
from intake.cli import main
from intake.spec.folder import questions_folder
from intake.spec.vocabulary import vocabulary


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A copy of the shipped folder, by another name."""
    copy = tmp_path / "our_questions"
    shutil.copytree(questions_folder(), copy)
    return copy


def spoil(folder: Path) -> None:
    """Two slips: an unknown field and a text without quotes."""
    rate = folder / "tree" / "rate.toml"
    text = rate.read_text(encoding="utf-8").replace('["rate.arrival"]', '["rate.arival"]')
    rate.write_text(text, encoding="utf-8")
    (folder / "tree" / "contact.toml").write_text("say = hello\n", encoding="utf-8")


def test_a_sound_folder_is_one_line_and_exit_0(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["proof", str(folder)]) == 0
    printed = capsys.readouterr()
    assert printed.out.startswith("our_questions: ")
    assert f" questions, {len(vocabulary())} fields, " in printed.out
    assert f" choice words, {len(deck_of(folder).cards)} cards: all sound\n" in printed.out
    assert printed.out.count("\n") == 1
    assert printed.err == ""


def test_without_a_folder_the_one_in_force_is_proved(
    folder: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.delenv("INTAKE_QUESTIONS", raising=False)
    assert main(["proof"]) == 0
    spoil(folder)
    monkeypatch.setenv("INTAKE_QUESTIONS", str(folder))
    assert main(["proof"]) == 2
    assert "rate.arival" in capsys.readouterr().out


def test_every_slip_is_a_line_and_the_exit_is_2(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    spoil(folder)
    assert main(["proof", str(folder)]) == 2
    printed = capsys.readouterr()
    lines = printed.out.splitlines()
    assert len(lines) == 2
    assert 'names "rate.arival", which fields.toml does not have. Did you mean "rate.arrival"?' in lines[0]
    assert lines[1].startswith("contact.toml:1: this is not TOML: ")
    assert printed.err.count("\n") == 1
    assert printed.err.startswith("our_questions: 2 problems")


def test_json_has_file_line_what_and_mend(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    spoil(folder)
    assert main(["proof", str(folder), "--json"]) == 2
    rows = json.loads(capsys.readouterr().out)["problems"]
    assert rows[1]["file"] == "contact.toml"
    assert rows[1]["line"] == 1
    assert set(rows[0]) == {"file", "line", "what", "mend"}


def test_a_wrong_card_is_a_line_among_the_others(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    spoil(folder)
    safety = folder / "cards" / "safety.toml"
    safety.write_text(safety.read_text(encoding="utf-8").replace("{figure.holding_pull}", "{figure.holding}"), "utf-8")
    (folder / "cards" / "cost.toml").write_text("say = hello\n", encoding="utf-8")
    assert main(["proof", str(folder), "--json"]) == 2
    found = json.loads(capsys.readouterr().out)
    assert [row["file"] for row in found["problems"]] == ["rate.toml", "contact.toml", "cost.toml", "safety.toml"]
    assert found["problems"][3]["line"]
    assert found["cards"] >= 45


def test_a_folder_that_is_none_is_one_line_and_exit_2(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["proof", str(tmp_path)]) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert printed.err.count("\n") == 1
    assert "not a questions folder" in printed.err


def test_fields_are_listed_with_units_and_choices(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["proof", "--fields"]) == 0
    lines = dict(line.split(maxsplit=1) for line in capsys.readouterr().out.splitlines())
    assert list(lines) == list(vocabulary())
    assert lines["rise.height"] == "m"
    assert lines["product.sizes"] == "a whole number"
    assert lines["rise.direction"] == "up | down | both"
    assert lines["site.air"] == "yes or no"
