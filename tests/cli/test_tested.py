"""`intake tested`: what a test on samples showed, kept in its case, and which verdicts it moved."""

import json
from datetime import date

import pytest

from intake.casebook import Book
from intake.cli import main
from intake.desk.keeping import Keeper
from intake.talk import Interview

REST = ("--by", "R. Osei", "--on", "today", "--samples", "3 cartons of line 2")


@pytest.fixture
def tea() -> str:
    """A kept case whose inclines hang on a friction."""
    talk = Interview()
    talk.hear("taped cases 400x300x250 mm, 12 kg, 20 a minute, up from 0.8 m to 3.8 m")
    keeper = Keeper("tea")
    assert keeper.keep(talk) is None
    keeper.book.close()
    return "tea"


def kept() -> Interview:
    with Book() as book:
        return Interview.from_events(book.events("tea"))


def test_a_test_is_kept_with_who_when_and_on_what_and_says_what_it_moved(
    tea: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["tested", tea, "slip angle", "5 deg", *REST]) == 0
    lines = capsys.readouterr().out.splitlines()
    today = date.today().isoformat()
    assert lines[0] == f"Tested: slip angle 5 deg; measured by R. Osei on {today}, on 3 cartons of line 2"
    assert any(line.startswith("Out: inclined belt conveyor: the product would slip") for line in lines)
    fact = kept().case.facts["test.slip_angle", 1]
    assert (fact.low, fact.who) == (5, "works")
    assert "R. Osei" in fact.said


def test_for_programs_the_verdicts_before_and_after(tea: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["tested", tea, "slip_angle", "5 deg", *REST, "--json"]) == 0
    said = json.loads(capsys.readouterr().out)
    assert (said["case"], said["test"], said["value"], said["on"]) == (
        "tea", "test.slip_angle", 5.0, date.today().isoformat(),
    )  # fmt: skip
    assert said["before"]["verdicts"]["incline"] == "depends"
    assert said["after"]["verdicts"]["incline"] == "out"
    assert set(said["before"]) == {"best", "verdicts"}


def test_a_test_that_moves_nothing_says_so(tea: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["tested", tea, "tip angle", "30 deg", *REST]) == 0
    assert main(["tested", tea, "tip angle", "30 deg", *REST]) == 0
    assert capsys.readouterr().out.splitlines()[-1] == "No verdict moves."


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("nowhere", "slip angle", "5 deg", *REST), "no case is kept"),
        (("tea", "hardness", "5", *REST), "There are: slip angle"),
        (("tea", "slip angle", "hot", *REST), "is no single value"),
        (("tea", "slip angle", "5 deg", "--by", "me", "--on", "2026-13-40", "--samples", "3"), "is no day"),
        (("tea", "slip angle", "5 deg", "--by", "me", "--on", "tomorrow", "--samples", "3"), "is still to come"),
        (("tea", "slip angle", "5 deg", "--by", " ", "--on", "today", "--samples", "3"), "Say who measured"),
        (("tea", "slip angle", "5 deg", "--by", "me"), "--on"),
    ],
)
def test_bad_input_is_one_line_and_nothing_is_kept(
    tea: str, capsys: pytest.CaptureFixture[str], words: tuple[str, ...], told: str
) -> None:
    before = len(kept().events)
    assert main(["tested", *words]) == 2
    said = capsys.readouterr()
    assert told in said.err
    assert said.err.count("\n") == 1
    assert said.out == ""
    assert len(kept().events) == before
