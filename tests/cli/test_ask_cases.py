"""Several cases in one `ask`, drafts and pages on plain lines, and what another desk does meanwhile."""

from collections.abc import Callable

import pytest

from intake.casebook import Book, BookError
from intake.cli.ask_session import Session
from intake.desk.keeping import opened
from intake.desk.steps import Steps
from intake.desk.welcome import SAMPLE
from intake.desk.work import Work
from intake.talk import Interview

CASES = "taped cases 400x300x250 mm, 12 kg, 20 a minute, up from 0.8 m to 3.8 m"
Typed = Callable[..., list[str]]


def starting(lines: list[str], lead: str) -> list[str]:
    return [line for line in lines if line.startswith(lead)]


def session_on(name: str = "") -> Session:
    talk, keeper = opened(name) if name else (Interview(), None)
    return Session(Work(talk, keeper, units="si"))


@pytest.fixture
def typed(capsys: pytest.CaptureFixture[str]) -> Typed:
    """Types lines into a session, and gives what it says to them."""

    def type_in(session: Session, *lines: str) -> list[str]:
        capsys.readouterr()
        for line in lines:
            assert session.take(line) is (line != "/quit")
        return capsys.readouterr().out.splitlines()

    return type_in


def test_a_first_run_is_told_of_the_sample_which_goes_through_as_a_message(
    typed: Typed, capsys: pytest.CaptureFixture[str]
) -> None:
    session = session_on()
    session.greet()
    assert "/sample" in capsys.readouterr().out
    said = typed(session, "/sample")
    assert said[0] == f"Visitor: {SAMPLE[0]}"
    assert starting(said, "Understood: weight of one product 9 kg")
    assert starting(said, "Ask:")


def test_words_answer_the_question_printed_last(typed: Typed) -> None:
    session = session_on()
    typed(session, "taped cases 400x300x250 mm, 12 kg, up 3 m", "/ask rate", "/facts", "25")
    assert session.work.talk.spec()["rate.normal"] == 25


def test_a_command_that_looks_asks_nothing_again_and_one_that_changes_does(typed: Typed) -> None:
    session = session_on()
    typed(session, CASES)
    for line in ("/facts", "/families", "/check incline slip", "/draft", "/waiting", "/cases", "/read 12 kg", "/help"):
        said = typed(session, line)
        assert said
        assert not starting(said, "Ask:"), line
    for line in ("/undo", "/redo", "/fact weight 14 kg", "/drop rate", "/later", "/back"):
        assert starting(typed(session, line), "Ask:"), line


def test_an_empty_line_asks_the_next_question(typed: Typed) -> None:
    assert starting(typed(session_on(), ""), "Ask:")


def test_a_draft_stands_between_its_marks_as_it_is_sent(typed: Typed) -> None:
    session = session_on()
    typed(session, CASES)
    said = typed(session, "/draft summary")
    assert (said[0], said[-1]) == ("Draft:", "End of draft.")
    assert len(said) > 5


def test_a_page_is_lines_with_its_title_first(typed: Typed) -> None:
    session = session_on()
    typed(session, CASES)
    said = typed(session, "/check side grip")
    assert said[0] == "Machine in full: side-grip elevator:"
    assert "CHECKS" in said


def test_leaving_an_unnamed_talk_keeps_it_and_next_comes_back_to_it(typed: Typed) -> None:
    session = session_on()
    typed(session, "12 kg cases")
    said = typed(session, "/new tea")
    kept = starting(said, "Intake: what was said so far is kept as ")
    assert kept
    assert starting(said, "Intake: this is tea")
    typed(session, "400x300x250 mm")
    said = typed(session, "/next")
    assert starting(said, "Intake: tea is kept.")
    assert any(line.startswith("weight of one product 12 kg") for line in said)
    assert starting(said, "Ask:")
    with Book() as book:
        assert {entry.id for entry in book.cases()} == {"tea", kept[0].removesuffix(".").rpartition(" ")[2]}


def test_an_empty_unnamed_talk_is_dropped_when_it_is_left(typed: Typed) -> None:
    session = session_on()
    typed(session, "/new tea", "12 kg")
    assert starting(typed(session, "/next"), "Intake: No other case is open here.")
    assert session.work.name == "tea"


def test_cases_open_here_are_marked_and_each_keeps_its_own_words(typed: Typed) -> None:
    session = session_on("tea")
    typed(session, "12 kg cases", "/new jars", "jars, 2 lb", "/open tea", "20 a minute")
    assert session.work.talk.spec()["rate.normal"] == 20
    said = typed(session, "/cases")
    assert all(line.endswith("(open here)") for line in said)
    assert {line.split()[0] for line in said} == {"tea", "jars"}
    typed(session, "/open jars")
    assert "rate.normal" not in session.work.talk.spec()


def test_an_answer_does_not_go_to_the_question_of_another_case(typed: Typed) -> None:
    session = session_on("tea")
    typed(session, "taped cases 400x300x250 mm, 12 kg, up 3 m", "/ask rate", "/new jars", "25")
    assert "rate.normal" not in session.work.talk.spec()
    typed(session, "/open tea")
    assert "rate.normal" not in session.work.talk.spec()


def test_a_copy_is_gone_to(typed: Typed) -> None:
    session = session_on("tea")
    said = typed(session, "12 kg cases", "/copy tea2")
    assert starting(said, "tea2 begins with all of tea.")
    assert session.work.name == "tea2"
    assert session.work.talk.spec()["product.weight"] == 12


@pytest.mark.parametrize("line", ["/open nowhere", "/new tea", "/new ../x", "/frobnicate", "/done 3", "/"])
def test_a_slip_is_one_line_of_the_programs_own(typed: Typed, line: str) -> None:
    session = session_on("tea")
    typed(session, "12 kg cases")
    (said,) = typed(session, line)
    assert said.startswith("Intake: ")
    assert session.work.name == "tea"


def test_what_another_desk_kept_meanwhile_is_told_before_the_next_line_is_taken(typed: Typed) -> None:
    session = session_on("tea")
    typed(session, "12 kg cases")
    other = Steps(Work(*opened("tea")))
    other.say("20 a minute", None)
    said = typed(session, "/facts")
    assert said[0].startswith("Intake: Another desk has gone on with this case")
    assert any(line.startswith("normal rate 20/min") for line in said)
    other.work.close()


def test_coming_back_to_a_case_that_another_desk_changed_tells_it(typed: Typed) -> None:
    session = session_on("tea")
    typed(session, "12 kg cases", "/new jars", "jars")
    other = Steps(Work(*opened("tea")))
    other.say("20 a minute", None)
    said = typed(session, "/open tea")
    assert starting(said, "Intake: Another desk has gone on with this case")
    assert any(line.startswith("normal rate 20/min") for line in said)
    other.work.close()


def test_not_saved_is_told_in_words_and_so_is_the_end_of_the_trouble(
    typed: Typed, monkeypatch: pytest.MonkeyPatch
) -> None:
    session = session_on("tea")
    with monkeypatch.context() as patch:

        def full(*_: object, **__: object) -> int:
            raise BookError("full", "the disk is full", "Free some space.")

        patch.setattr(Book, "append", full)
        assert starting(typed(session, "12 kg cases"), "NOT SAVED: the disk is full")
    assert starting(typed(session, "20 a minute"), "Intake: all of it is saved now.")
    with Book() as book:
        assert Interview.from_events(book.events("tea")).spec()["product.weight"] == 12


def test_a_thread_is_gathered_until_its_end(typed: Typed) -> None:
    session = session_on()
    assert typed(session, "/thread", "Ann 10:02", "12 kg cases", "/facts") == []
    assert typed(session, "/end")


def test_what_was_half_pasted_at_the_end_of_the_input_counts(typed: Typed, capsys: pytest.CaptureFixture[str]) -> None:
    session = session_on("tea")
    typed(session, "/paste", "12 kg cases")
    session.leave()
    assert "Understood: weight of one product 12 kg" in capsys.readouterr().out
    with Book() as book:
        assert Interview.from_events(book.events("tea")).spec()["product.weight"] == 12


def test_hostile_words_take_effect_nowhere(typed: Typed) -> None:
    session = session_on()
    said = typed(
        session, "\x1b[31m12 kg\x07 [red]cases[/red]", "/note \x1b]0;x\x07hi", "/title \u202eabc", "/mend", "/x\x1b"
    )
    assert not any(ord(sign) < 32 or 127 <= ord(sign) < 160 or sign == "\u202e" for line in said for sign in line)
