"""Promises, questions asked back, samples and tests, as they are typed."""

from datetime import date, timedelta

import pytest

from intake.desk.effect import Slip
from intake.desk.steps import Steps

CASES = "taped cases 400x300x250 mm, 12 kg, 20 a minute, up from 0.8 m to 3.8 m"


def waiting(steps: Steps) -> list[tuple[str, str, str]]:
    return [(matter.who, matter.what, matter.by) for matter in steps.work.talk.case.waiting]


def test_a_promise_with_a_day_is_due_then(steps: Steps) -> None:
    steps.command("/promise send the layout by tomorrow")
    assert waiting(steps) == [("us", "send the layout", (date.today() + timedelta(days=1)).isoformat())]


@pytest.mark.parametrize("end", [".", "!", " ."])
def test_a_full_stop_behind_the_day_does_not_hide_it(steps: Steps, end: str) -> None:
    steps.command(f"/promise send the layout by 2031-03-02{end}")
    assert waiting(steps) == [("us", "send the layout", "2031-03-02")]


def test_by_hand_is_no_day(steps: Steps) -> None:
    shown = steps.command("/promise draw the layout by hand")
    assert waiting(steps) == [("us", "draw the layout by hand", "")]
    assert "no day named" in shown.lines[0]


@pytest.mark.parametrize(("lead", "who"), [("visitor:", "visitor"), ("works:", "works"), ("Us:", "us"), ("", "us")])
def test_whose_promise_it_is_stands_before_it(steps: Steps, lead: str, who: str) -> None:
    steps.command(f"/promise {lead} send a drawing")
    assert waiting(steps) == [(who, "send a drawing", "")]


def test_a_promise_of_nothing_is_a_slip(steps: Steps) -> None:
    for line in ("/promise", "/promise visitor:", "/promise by friday"):
        with pytest.raises(Slip, match="/promise send the layout by friday"):
            steps.command(line)
    assert not waiting(steps)


def test_what_is_overdue_says_so_and_comes_first(steps: Steps) -> None:
    steps.command("/promise call back by tomorrow")
    steps.command("/promise send the layout by yesterday")
    lines = steps.command("/waiting").lines
    assert "send the layout" in lines[1]
    assert "OVERDUE" in lines[1]
    assert "OVERDUE" not in lines[2]


def test_done_takes_the_number_that_waiting_gives(steps: Steps) -> None:
    steps.command("/promise call back by tomorrow")
    steps.command("/promise send the layout by yesterday")
    shown = steps.command("/done 1 sent to the wrong address first")
    assert shown.lines[0] == "Done: send the layout"
    assert [what for _, what, _ in waiting(steps)] == ["call back"]
    steps.command("/undo")
    assert len(waiting(steps)) == 2


def test_the_only_one_is_done_without_a_number(steps: Steps) -> None:
    steps.command("/promise call back")
    steps.command("/done")
    assert not waiting(steps)


def test_done_without_a_number_that_there_is_names_those(steps: Steps) -> None:
    with pytest.raises(Slip, match="Nothing waits"):
        steps.command("/done 1")
    steps.command("/promise call back")
    steps.command("/promise send the layout")
    for line in ("/done", "/done 3", "/done 0", "/done it"):
        with pytest.raises(Slip, match="1 to 2"):
            steps.command(line)


def test_what_engineering_asks_back_waits_until_it_is_answered(steps: Steps) -> None:
    steps.command("/asked-back which pallet?")
    assert any("engineering asks: which pallet?" in line for line in steps.command("/waiting").lines)
    steps.command("/done 1 the wooden one")
    assert not waiting(steps)


def test_a_case_goes_through_its_life(steps: Steps) -> None:
    def standing() -> str:
        return steps.command("/waiting").lines[0]

    steps.say(CASES, None)
    assert standing() == "The case: talking."
    steps.command("/later")
    assert standing() == "The case: waiting for the visitor."
    steps.command("/samples")
    assert standing() == "The case: samples asked for."
    steps.command("/in-test")
    assert standing() == "The case: in test."
    steps.command("/test slip angle 35 deg by R. Osei on today with 3 cartons")
    assert standing() == "The case: waiting for the visitor."
    steps.command("/close")
    assert standing() == "The case: closed."
    steps.command("/reopen")
    assert standing() == "The case: waiting for the visitor."


def test_a_test_moves_verdicts_and_the_check_names_it_as_its_source(steps: Steps) -> None:
    steps.say(CASES, None)
    before = steps.work.talk.bounds()
    shown = steps.command("/test slip angle 5 deg by R. Osei on yesterday with 3 cartons")
    after = steps.work.talk.bounds()
    assert (before.families["incline"].verdict, after.families["incline"].verdict) == ("depends", "out")
    assert any(line.startswith("Out: inclined belt conveyor: the product would slip") for line in shown.lines)
    slip = next(check for check in after.families["incline"].checks if check.id.startswith("slip"))
    assert "test.slip_angle" in slip.source
    facts = "\n".join(steps.command("/facts").lines)
    assert "(works, " in facts
    assert "measured by R. Osei" in facts


def test_a_title_is_what_the_lists_show(steps: Steps) -> None:
    steps.command("/title jars to the gallery")
    assert steps.work.talk.title == "jars to the gallery"
