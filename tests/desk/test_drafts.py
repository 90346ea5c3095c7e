"""Messages ready to be sent, what is wanted most often first."""

from intake.desk.drafts import drafts
from intake.desk.steps import Steps

CASES = "taped cases 400x300x250 mm, 12 kg, 20 a minute, up from 0.8 m to 3.8 m"


def keys(steps: Steps) -> list[str]:
    return [draft.key for draft in drafts(steps.work)]


def test_an_empty_case_has_nothing_to_send(steps: Steps) -> None:
    assert keys(steps) == []


def test_the_next_question_comes_first(steps: Steps) -> None:
    question = steps.say("12 kg cases", None).question
    assert question is not None
    first = drafts(steps.work)[0]
    assert first.key == "question"
    assert question.say in first.text


def test_answers_to_the_visitors_questions_are_drafts_the_newest_first(steps: Steps) -> None:
    steps.say(f"{CASES}. can it go in a freezer?", None)
    steps.say("how long is delivery?", None)
    found = {draft.key: draft for draft in drafts(steps.work)}
    assert "delivery" in found["answer"].title
    assert "freezer" in found["answer2"].title
    assert "freezer" in found["answer2"].text


def test_a_leader_gives_a_summary_with_its_caveats(steps: Steps) -> None:
    steps.say("12 kg cases", None)
    assert "summary" not in keys(steps)
    steps.say(CASES, None)
    summary = next(draft for draft in drafts(steps.work) if draft.key == "summary")
    assert "First sizing" in summary.text


def test_what_the_visitor_will_check_is_a_reminder(steps: Steps) -> None:
    steps.say(CASES, None)
    assert "open" not in keys(steps)
    steps.command("/later")
    assert "open" in keys(steps)


def test_no_draft_carries_what_a_terminal_would_obey(steps: Steps) -> None:
    steps.say(f"{CASES}. \x1b[31mcan it go in a \u202efreezer?\x07", None)
    for draft in drafts(steps.work):
        assert not any(sign in draft.text + draft.title for sign in "\x1b\x07\u202e")
