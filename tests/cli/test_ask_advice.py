"""Advice and the visitor's own questions in `ask`, line by line."""

import pytest

from intake.cli.ask_session import Session
from intake.desk.work import Work
from intake.talk import Interview

FIRST = "16x12x10 inch taped cases, 30 lb, 25 a minute, up from 30 inches to 14 ft"


@pytest.fixture
def session() -> Session:
    made = Session(Work(Interview(), units="si"))
    made.take(FIRST)
    return made


def lines_of(session: Session, capsys: pytest.CaptureFixture[str], line: str) -> str:
    capsys.readouterr()
    assert session.take(line)
    return capsys.readouterr().out


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("/how-high", "could rise"),
        ("/how-fast", "could run at"),
        ("/why-not platform lift", "is out"),
        ("/would-fit platform lift", "would stand with"),
        ("/what-if 60 a minute", "60/min instead of 25/min"),
        ("/way-in", "Overhead"),
        ("/shipping", "trailer"),
        ("/delivery", "Usual delivery"),
        ("/tests", "samples"),
        ("/settled", "ettled"),
        ("/to-find-out", "Still to find out"),
    ],
)
def test_every_subject_is_a_short_command(
    session: Session, capsys: pytest.CaptureFixture[str], line: str, told: str
) -> None:
    assert told in lines_of(session, capsys, line)


def test_a_slip_is_one_clear_line_and_the_talk_goes_on(session: Session, capsys: pytest.CaptureFixture[str]) -> None:
    assert "there is no machine" in lines_of(session, capsys, "/why-not banana")
    assert 'Did you mean "freezer"' in lines_of(session, capsys, "/what-if temperature.zone=freezr")


def test_a_question_in_a_message_is_answered_and_so_is_one_that_is_typed(
    session: Session, capsys: pytest.CaptureFixture[str]
) -> None:
    assert 'They ask: "can it go in a freezer"' in lines_of(session, capsys, "can it go in a freezer?")
    assert "Answer: " in lines_of(session, capsys, "/answer how long is delivery")
    assert "Write the visitor's question behind it" in lines_of(session, capsys, "/answer")


def test_what_is_left_marks_what_engineering_needs(session: Session, capsys: pytest.CaptureFixture[str]) -> None:
    out = lines_of(session, capsys, "/left")
    assert "To ask: " in out
    assert "To start work: " in out
