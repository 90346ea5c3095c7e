"""What of a message is lit, and where: never one over another, and always the very words."""

import json
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from intake.desk.lights import Lit, lit_last, lit_message, lit_preview, reading_line
from intake.talk import Interview

OPEN = Path(__file__).parent.parent / "reading" / "labelled" / "open"
MESSAGES = [
    json.loads(line)["text"]
    for file in sorted(OPEN.glob("*.jsonl"))
    for line in file.read_text(encoding="utf-8").splitlines()
    if line.strip()
]


def check_places(lit: Lit) -> None:
    for light in lit.lights:
        assert 0 <= light.start < light.end <= len(lit.words)
        assert light.means
    for before, after in pairwise(lit.lights):
        assert before.end <= after.start


@settings(max_examples=150, deadline=None, derandomize=True)
@given(text=st.sampled_from(MESSAGES))
def test_lights_of_a_message_lie_beside_each_other_and_read_as_said(text: str) -> None:
    talk = Interview()
    preview = talk.preview(text)
    lit = lit_preview(preview, "si")
    check_places(lit)
    lit_by_place = {place for light in lit.lights for place in range(light.start, light.end)}
    for fact in preview.heard.facts:
        assert fact.span is not None
        assert lit.words[slice(*fact.span)] == fact.said
        assert set(range(*fact.span)) <= lit_by_place
    pieces = {lit.words[light.start : light.end] for light in lit.lights if light.tone == "unread"}
    assert pieces <= set(preview.heard.unread)


@settings(max_examples=40, deadline=None, derandomize=True)
@given(text=st.sampled_from(MESSAGES))
def test_a_message_is_lit_after_it_was_sent_as_it_was_before(text: str) -> None:
    talk = Interview()
    before = lit_preview(talk.preview(text), "si")
    talk.hear(text)
    after = lit_last(talk, "si")
    assert after is not None
    assert after.words == before.words
    check_places(after)
    assert [(light.start, light.end, light.tone) for light in after.lights] == [
        (light.start, light.end, light.tone) for light in before.lights
    ]


@pytest.mark.parametrize(
    ("text", "tone", "said"),
    [
        ("cases of 12 kg", "fact", "12 kg"),
        ("trays of jars, 6 kg each", "doubt", "6 kg"),
        ("cases 12 kg, can it go in a freezer?", "ask", "can it go in a freezer"),
    ],
)
def test_each_tone_stands_on_its_words(text: str, tone: str, said: str) -> None:
    lit = lit_preview(Interview().preview(text), "si")
    assert said in {lit.words[light.start : light.end] for light in lit.lights if light.tone == tone}


def test_what_was_said_twice_is_lit_twice() -> None:
    talk = Interview()
    talk.hear("cases, 12 kg")
    talk.hear("as I said, 12 kg")
    lit = lit_last(talk, "si")
    assert lit is not None
    assert [light.means for light in lit.lights] == ["weight of one product 12 kg"]


def test_a_doubt_that_was_cleared_up_is_lit_no_longer() -> None:
    talk = Interview()
    talk.hear("trays of jars, 6 kg each")
    first = talk.last_heard
    assert first is not None
    talk.ask()
    talk.answer("6 kg a tray")
    assert "doubt" not in {light.tone for light in lit_message(talk.case, first, "si").lights}


def test_the_reading_line_tells_all_of_it_in_the_order_of_the_words() -> None:
    line = reading_line(lit_preview(Interview().preview("trays of jars, 6 kg each, 25 a minute"), "si"))
    assert line.index("tray") < line.index('? "6 kg"') < line.index("25/min")


def test_hostile_words_are_lit_in_the_clean_text() -> None:
    lit = lit_preview(Interview().preview("\x1b[31m12 kg\x1b[0m ca\u200bses"), "si")
    assert lit.words == "12 kg cases"
    check_places(lit)
    assert [lit.words[light.start : light.end] for light in lit.lights] == ["12 kg", "cases"]


def test_a_talk_without_messages_has_nothing_to_light() -> None:
    assert lit_last(Interview(), "si") is None
