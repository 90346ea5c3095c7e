"""What a message would give, before it is sent: nothing is kept, and it is what the message then gives."""

import json
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from intake.spec.facts import Fact
from intake.talk import Interview

OPEN = Path(__file__).parent.parent / "reading" / "labelled" / "open"
MESSAGES = [
    json.loads(line)["text"]
    for file in sorted(OPEN.glob("*.jsonl"))
    for line in file.read_text(encoding="utf-8").splitlines()
    if line.strip()
]
FIRST = "taped cases 400x300x250 mm, 12 kg, up 3 m"
SHORT = ("25", "no idea", "I'll check", "back", "sorry, 45 a minute", "not sure, maybe 40", "the first", "", "yes")
FIXTURES = [HealthCheck.function_scoped_fixture]  # one that only puts the bare sizing in place


def plain(facts: tuple[Fact, ...]) -> list[dict[str, object]]:
    return [fact.to_json() for fact in facts]


@settings(max_examples=60, deadline=None, derandomize=True, suppress_health_check=FIXTURES)
@given(text=st.sampled_from(MESSAGES))
def test_a_preview_keeps_nothing_and_is_what_hearing_then_gives(text: str) -> None:
    talk = Interview()
    talk.hear(FIRST)
    before = talk.events
    preview = talk.preview(text)
    assert talk.events == before
    heard = talk.hear(text)
    assert plain(preview.heard.facts) == plain(heard.facts)
    assert [doubt.to_json() for doubt in preview.heard.doubts] == [doubt.to_json() for doubt in heard.doubts]
    assert preview.heard.unread == heard.unread
    assert [(one.span, one.card) for one in preview.asks] == [(one.span, one.card) for one in talk.inquiries]


@pytest.mark.parametrize("asked", ["rate", "product_kind", "rise.height"])
@pytest.mark.parametrize("text", [*SHORT, *MESSAGES[:6]])
def test_a_preview_of_an_answer_is_what_answering_then_gives(asked: str, text: str) -> None:
    talk = Interview()
    talk.hear(FIRST)
    questions = {question.id: question for question in talk.open_questions()}
    question = questions.get(asked) or talk.put(next(iter(questions)))
    before = talk.events
    preview = talk.preview(text, question.id)
    assert talk.events == before
    heard = talk.answer(text, question.id)
    assert plain(preview.heard.facts) == plain(heard.facts)
    last = talk.events[-1].kind
    ends = {"facts": "heard", "unknown": "unknown", "later": "later", "passed": "passed"}
    assert preview.reply == "back" or last == ends[preview.reply]


def test_places_count_in_the_words_without_what_a_terminal_would_obey() -> None:
    preview = Interview().preview("\x1b[31m12 kg\x1b[0m, can it go in a freezer?")
    assert preview.words == "12 kg, can it go in a freezer?"
    (fact,) = preview.heard.facts
    assert fact.span is not None
    assert preview.words[slice(*fact.span)] == "12 kg"
    (ask,) = preview.asks
    assert ask.text == "can it go in a freezer"


def test_a_preview_for_a_question_that_is_no_longer_open_reads_a_message_of_its_own() -> None:
    talk = Interview()
    talk.hear(FIRST)
    assert [fact.field for fact in talk.preview("25 a minute", "gone").heard.facts] == ["rate.normal"]
