"""Commands that show what stands change nothing of the case."""

import pytest

from intake.desk.commands import table
from intake.desk.effect import Slip
from intake.desk.steps import Steps

CASES = "taped cases 400x300x250 mm, 12 kg, 20 a minute, up from 0.8 m to 3.8 m"
LOOKS = [one.word for one in table.COMMANDS if one.looks]
TAKES = {"check": "side grip", "open": "tea", "would-fit": "index lift", "why-not": "side grip", "what-if": "60/min",
         "read": "12 kg", "units": "us"}  # fmt: skip


@pytest.mark.parametrize("word", [word for word in LOOKS if word not in ("open", "copy", "save", "export")])
def test_a_command_that_looks_keeps_nothing_and_shows_something(steps: Steps, word: str) -> None:
    steps.say(CASES, None)
    before = steps.work.talk.events
    effect = steps.effect(f"/{word} {TAKES.get(word, '')}")
    assert steps.work.talk.events == before
    assert effect.lines or effect.page or effect.go or effect.leave


def test_a_check_is_shown_with_formula_inputs_and_source(steps: Steps) -> None:
    steps.say(CASES, None)
    page = steps.effect("/check incline slip").page
    assert page is not None
    assert "mu" in page.text
    assert "source:" in page.text


def test_without_a_name_the_leading_machine_is_meant(steps: Steps) -> None:
    steps.say(CASES, None)
    page = steps.effect("/check").page
    assert page is not None
    best = steps.work.talk.result().best
    assert best is not None
    assert page.text == steps.effect(f"/check {best}").page.text  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ("/check bananas", 'has no check "bananas"'),
        ("/check side grip bananas", 'has no check "bananas"'),
        ("/draft bananas", 'There is no draft "bananas" now'),
        ("/units", "us or si"),
        ("/units feet", "us (feet, pounds) or si"),
        ("/why-not bananas", "there is no machine"),
        ("/what-if", "what-if"),
    ],
)
def test_a_slip_says_what_there_is(steps: Steps, line: str, told: str) -> None:
    steps.say(CASES, None)
    with pytest.raises(Slip) as slip:
        steps.effect(line)
    assert told in str(slip.value)


def test_no_machine_leads_in_an_empty_case(steps: Steps) -> None:
    with pytest.raises(Slip, match="No machine leads yet"):
        steps.effect("/check")


def test_a_draft_is_shown_and_copied_as_it_is_sent(steps: Steps) -> None:
    question = steps.say(CASES, None).question
    assert question is not None
    effect = steps.effect("/draft question")
    assert question.say in effect.copy
    assert effect.page is not None
    assert effect.page.text == effect.copy


def test_units_hold_from_there_on(steps: Steps) -> None:
    steps.say(CASES, None)
    steps.command("/units us")
    assert any("26 1/2 lb" in line or "26.5 lb" in line for line in steps.effect("/facts").lines)
