"""What a message, a key and a command do to a case, told before anything is drawn."""

from collections.abc import Callable
from pathlib import Path

import pytest

from intake.casebook import Book, BookError
from intake.desk.effect import Slip
from intake.desk.keeping import Keeper
from intake.desk.snapshot import Snapshot, Verdicts
from intake.desk.steps import Steps
from intake.desk.work import Work
from intake.talk import Interview

CASES = "taped cases 400x300x250 mm, 12 kg, 20 a minute, up from 0.8 m to 3.8 m"


def test_words_answer_the_question_that_was_seen(steps: Steps) -> None:
    steps.say("taped cases 400x300x250 mm, 12 kg, up 3 m", None)
    question = steps.command("/ask rate").question
    assert question is not None
    steps.say("25", question.id)
    assert steps.work.talk.spec()["rate.normal"] == 25


def test_words_typed_before_the_next_question_came_up_are_no_answer_to_it(steps: Steps) -> None:
    steps.say("taped cases 400x300x250 mm, 12 kg, up 3 m", None)
    steps.command("/ask rate")
    steps.say("25", "another question")
    assert "rate.normal" not in steps.work.talk.spec()


def test_what_was_understood_is_told_before_the_machines_that_went_out(steps: Steps) -> None:
    lines = steps.say(f"{CASES}, they cannot be squeezed", None).lines
    understood = [n for n, line in enumerate(lines) if line.startswith("Understood:")]
    out = [n for n, line in enumerate(lines) if line.startswith("Out: side-grip")]
    assert understood
    assert out
    assert max(understood) < out[0]


def test_verdicts_are_told_while_the_next_question_is_still_worked_out(steps: Steps) -> None:
    told: list[Verdicts] = []
    steps.tell = told.append
    shown = steps.say(CASES, None)
    assert len(told) == 1
    assert told[0].lines == shown.lines[: len(told[0].lines)]
    assert told[0].lit == shown.lit
    assert [row.key for row in told[0].machines]


def test_what_is_so_when_a_case_is_opened_is_no_news(steps: Steps) -> None:
    steps.say(f"{CASES}, they cannot be squeezed", None)
    again = Steps(Work(Interview.from_events(steps.work.talk.events)))
    opened = again.start()
    assert opened.lines == ()
    assert opened.question is not None
    assert not any(line.startswith("Out: side-grip") for line in again.say("call me Al", None).lines)


def test_the_conversation_of_a_kept_talk_comes_back_lit_with_who_said_what(steps: Steps) -> None:
    steps.say("12 kg cases", None)
    steps.command("/staff ceiling is 5 m")
    steps.command("/note ring back")
    said = Steps(Work(Interview.from_events(steps.work.talk.events), units="si")).said_before()
    assert [(who, lit.words) for who, lit in said] == [
        ("visitor", "12 kg cases"),
        ("staff", "ceiling is 5 m"),
        ("staff", "ring back"),
    ]
    assert [light.field for light in said[0][1].lights] == ["product.weight", "product.type"]
    assert not said[2][1].lights


def test_a_fact_that_was_picked_is_replaced_by_the_next_words(steps: Steps) -> None:
    steps.say(CASES, None)
    asked = steps.change("product.weight@1")
    assert "It stands at 12 kg" in asked.anew
    steps.say("14 kg", None)
    assert steps.work.talk.spec()["product.weight"] == 14
    assert not steps.work.talk.case.quarrels


def test_leaving_a_picked_fact_be_changes_nothing(steps: Steps) -> None:
    steps.say(CASES, None)
    before = steps.work.talk.spec()
    steps.change("product.weight@1")
    assert steps.leave_be().lines == ("Left as it is.",)
    assert steps.work.talk.spec() == before
    steps.say("14 kg", None)
    assert steps.work.talk.case.quarrels  # a message again, and no new value of the fact


def test_a_slip_comes_back_as_its_line_and_a_fault_says_that_the_desk_goes_on(steps: Steps) -> None:
    def broken() -> Snapshot:
        raise ZeroDivisionError("by nought\x1b[2J")

    assert "/help" in str(steps.safely(lambda: steps.command("/frobnicate")))
    told = steps.safely(broken)
    assert isinstance(told, str)
    assert "ZeroDivisionError" in told
    assert "\x1b" not in told
    assert isinstance(steps.safely(lambda: steps.say("12 kg", None)), Snapshot)


def test_trouble_with_the_book_is_remembered_until_all_is_kept(
    kept: Callable[[str], Steps], monkeypatch: pytest.MonkeyPatch
) -> None:
    steps = kept("steps_full")
    with monkeypatch.context() as patch:

        def full(*_: object, **__: object) -> int:
            raise BookError("full", "the disk is full", "Free some space.")

        patch.setattr(Book, "append", full)
        steps.say("12 kg", None)
        assert steps.trouble is not None
        assert "the disk is full" in steps.trouble
    steps.say("400x300x250 mm cases", None)
    assert steps.trouble is None
    assert kept("steps_full").work.talk.spec() == steps.work.talk.spec()


def test_mending_the_last_message_tells_what_is_understood_now(steps: Steps) -> None:
    steps.say("trays, 9 kg", None)
    shown = steps.mend_last([])
    assert any("weight of one product 9 kg" in line for line in shown.lines)
    assert shown.lit is not None


def test_what_if_keeps_nothing(steps: Steps) -> None:
    steps.say(CASES, None)
    before = steps.work.talk.events
    assert "60/min" in steps.what_if("60 a minute")
    assert "freezr" in steps.what_if("temperature.zone=freezr")
    assert steps.work.talk.events == before


@pytest.mark.parametrize("line", ["/attach {}", "/save 1 {}", "/export {}/x.jsonl", "/hand-over {}"])
def test_somebody_at_a_browser_reads_and_writes_no_files_of_the_computer_that_serves_it(
    line: str, tmp_path: Path
) -> None:
    (tmp_path / "secret.txt").write_text("secret")
    steps = Steps(Work(talk=Interview(), keeper=Keeper("served"), served=True))
    steps.say("cases of 12 kg", None)
    before = len(steps.work.talk.events)
    with pytest.raises(Slip, match="In a browser"):
        steps.command(line.format(tmp_path / "secret.txt" if "attach" in line else tmp_path))
    assert len(steps.work.talk.events) == before
    assert [path.name for path in tmp_path.iterdir() if path.is_file() and "sqlite" not in path.name] == ["secret.txt"]
