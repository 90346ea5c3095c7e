"""`intake advise`: answers worked out from a case, in lines or as JSON, and one clear line for what is wrong."""

import io
import json
import sys
from pathlib import Path
from typing import Any

import pytest

from intake.advice import SUBJECTS
from intake.cli import main

CASES: dict[str, Any] = {
    "product.type": "case", "product.length": 0.4, "product.width": 0.3, "product.height": 0.25, "product.weight": 8.0,
    "product.closed": True, "product.rigidity": "rigid", "product.surface": "corrugated", "rate.peak": 40.0,
    "rise.direction": "up", "rise.infeed_height": 0.75, "rise.discharge_height": 4.0, "rise.turn": 0.0,
    "space.length": 6.0, "space.width": 2.0, "space.ceiling": 6.0, "handling.squeeze": False,
    "temperature.room": 21.0, "cleaning.method": "dry", "site.hazardous_area": False,
}  # fmt: skip
BEHIND = {"MACHINE": ["side", "grip"], "CHANGE": ["rise.height=3.5"]}


@pytest.fixture
def job(tmp_path: Path) -> str:
    path = tmp_path / "job.json"
    path.write_text(json.dumps(CASES))
    return str(path)


def run(capsys: pytest.CaptureFixture[str], *words: str) -> list[str]:
    assert main(["advise", *words]) == 0
    said = capsys.readouterr()
    assert said.err == ""
    return said.out.splitlines()


def refused(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    assert main(["advise", *words]) == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.count("\n") == 1, said.err
    assert "Traceback" not in said.err
    return said.err


@pytest.mark.parametrize("subject", SUBJECTS, ids=lambda one: one.word)
def test_every_subject_answers_in_lines_and_as_json(subject: Any, job: str, capsys: pytest.CaptureFixture[str]) -> None:
    behind = BEHIND.get(subject.takes, [])
    lines = run(capsys, job, subject.word, *behind)
    shape = json.loads("\n".join(run(capsys, job, subject.word, *behind, "--json")))
    assert lines == shape["lines"]
    assert shape["topic"] == subject.word.replace("-", "_")
    assert len(shape) > 2
    assert not any(sign in line for line in lines for sign in "{}\x1b")


def test_lines_come_in_the_units_that_are_asked_for(job: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert " ft" in run(capsys, job, "how-high")[0]
    si = run(capsys, job, "how-high", "--units", "si")[0]
    assert " m; beyond" in si
    assert " ft" not in si


def test_the_help_names_every_subject(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["advise", "--help"]) == 0
    said = capsys.readouterr().out
    assert all(f"\n  {one.word}" in said for one in SUBJECTS)


def test_a_spec_may_come_from_standard_input(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys, "stdin", io.StringIO(json.dumps(CASES)))
    assert "could run at 109/min" in run(capsys, "-", "how-fast")[0]


def test_a_kept_case_is_advised_on_by_its_name(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sys, "stdin", io.StringIO("cases 400x300x250 mm, 12 kg, 20/min, up 3 m\n/quit\n"))
    assert main(["ask", "--case", "tea_cartons"]) == 0
    capsys.readouterr()
    assert "stays best" in run(capsys, "tea_cartons", "settled")[0]


def test_a_visitors_question_is_answered_from_the_case(job: str, capsys: pytest.CaptureFixture[str]) -> None:
    lines = run(capsys, job, "answer", "how tall can you go?")
    shape = json.loads("\n".join(run(capsys, job, "answer", "how tall can you go?", "--json")))
    assert shape["card"]
    assert lines[: len(shape["lines"])] == shape["lines"]
    assert all(line.startswith("Or did they mean: ") for line in lines[len(shape["lines"]) :])


def test_a_question_without_a_card_is_said_to_be_passed_on(job: str, capsys: pytest.CaptureFixture[str]) -> None:
    shape = json.loads("\n".join(run(capsys, job, "answer", "does it come with a zebra?", "--json")))
    assert shape["card"] is None
    assert len(shape["lines"]) == 1


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (["how-hihg"], "Did you mean how-high?"),
        (["weather"], "There are: how-high"),
        (["why-not"], "why-not needs a machine behind it"),
        (["would-fit", "spirral"], 'Did you mean "spiral"?'),
        (["what-if"], "what-if needs a change behind it"),
        (["what-if", "rate.paek=60"], 'Did you mean "rate.peak"?'),
        (["what-if", "rate.peak=fast"], "rate.peak"),
        (["answer"], "needs the question behind it"),
        (["how-high", "--units", "ells"], "ells"),
    ],
)
def test_what_cannot_be_told_is_one_line_and_code_2(
    words: list[str], says: str, job: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert says in refused(capsys, job, *words)


def test_a_case_that_there_is_not_says_how_to_list_them(capsys: pytest.CaptureFixture[str]) -> None:
    assert "intake cases" in refused(capsys, "no_such_job", "how-high")


def test_what_was_typed_steers_no_terminal(job: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert "\x1b" not in refused(capsys, job, "why-not", "\x1b[31mspirral")
    assert "\x1b" not in "\n".join(run(capsys, job, "answer", "does it come \x1b[31mwith a zebra?"))
