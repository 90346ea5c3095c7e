"""A whole thread taken into a talk: events, undo, what waits, and what a bare yes may say."""

import json
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from intake.casebook.rows import event_of
from intake.interview.threads import Thread
from intake.spec.facts import Fact
from intake.talk import Interview

LOG = (
    "[2026-03-02 10:32] Quillan Ashby: we need to raise cases\n[2026-03-02 10:33] Odette Finch: How heavy is one?\n"
    "[2026-03-02 10:34] Quillan Ashby: 30 lb\n[2026-03-02 10:35] Odette Finch: And what's the ceiling like?\n"
)


def stands(thread: Thread) -> dict[str, Fact]:
    return {fact.field: fact for fact in thread.facts}


def dialogue(*lines: str) -> Thread:
    """Lines of the visitor and the staff in turns, the visitor first."""
    who = ("Visitor", "Agent")
    return Interview().take_thread("".join(f"{who[n % 2]}: {line}\n" for n, line in enumerate(lines)))


def test_each_turn_becomes_a_message_and_no_name_is_written_into_an_event() -> None:
    talk = Interview()
    talk.take_thread(LOG)
    said = [event.body for event in talk.events if event.kind == "message"]
    assert [body["who"] for body in said] == ["visitor", "staff", "visitor", "staff"]
    assert [body["sent"] for body in said] == [f"2026-03-02T10:3{n}" for n in range(2, 6)]
    kept = json.dumps([event.to_json() for event in talk.events])
    assert not any(name in kept for name in ("Quillan", "Ashby", "Odette", "Finch"))


def test_what_the_events_keep_makes_the_same_case_again() -> None:
    talk = Interview()
    talk.take_thread(LOG)
    rows = [json.loads(json.dumps(event.to_json())) for event in talk.events]
    again = Interview.from_events(event_of(row["seq"], row["at"], row["kind"], row["body"]) for row in rows)
    assert again.facts == talk.facts
    assert again.case == talk.case


def test_the_turns_are_undone_one_by_one() -> None:
    talk = Interview()
    talk.take_thread(LOG)
    assert {fact.field for fact in talk.facts} == {"product.type", "rise.direction", "product.weight"}
    assert talk.undo()
    assert {fact.field for fact in talk.facts} == {"product.type", "rise.direction"}
    assert talk.undo()
    assert talk.facts == []
    assert talk.redo()
    assert talk.redo()
    assert {fact.field for fact in talk.facts} == {"product.type", "rise.direction", "product.weight"}


def test_the_staffs_last_question_waits_for_its_answer() -> None:
    talk = Interview()
    talk.take_thread(LOG)
    assert talk.current is not None
    assert talk.current.id == "space_ceiling"
    talk.answer("16 ft")
    assert talk.case.facts[("space.ceiling", 1)].high == pytest.approx(16 * 0.3048)


def test_a_thread_goes_on_from_what_stood_before() -> None:
    talk = Interview()
    talk.hear("cases of 12 kg")
    thread = talk.take_thread("Visitor: the cases weigh 15 kg\nAgent: thanks!\n")
    assert [doubt.field for doubt in thread.doubts] == ["product.weight"]
    assert {fact.field for fact in thread.facts} == {"product.weight"}


@pytest.mark.parametrize(
    ("asks", "reply", "value"),
    [
        ("Are they open at the top?", "yes", False),
        ("Are they open at the top?", "no", True),
        ("Are they taped shut?", "yes", True),
        ("Is it closed?", "yes, I think so", True),
    ],
)
def test_a_bare_yes_goes_the_way_in_which_it_was_asked(asks: str, reply: str, value: bool) -> None:
    assert stands(dialogue("we need to lift cases", asks, reply))["product.closed"].value is value


@pytest.mark.parametrize("asks", ["Aren't they closed?", "Are they closed or open?", "So they are not sealed?"])
def test_a_yes_that_may_go_either_way_is_asked_back(asks: str) -> None:
    thread = dialogue("we need to lift totes", asks, "yes")
    assert "product.closed" not in stands(thread)
    assert [doubt.field for doubt in thread.doubts] == ["product.closed"]


def test_a_yes_to_one_offered_value_is_the_visitors_fact_in_the_visitors_word() -> None:
    text = "Visitor: we need to lift cases\nAgent: is it about 30 lb?\nVisitor: yes, I think so\n"
    fact = stands(Interview().take_thread(text))["product.weight"]
    assert (fact.said, fact.hedged, fact.approx) == ("yes, I think so", True, True)
    assert fact.span is not None
    assert text[fact.span[0] : fact.span[1]] == fact.said


OFFERS = [
    "Is it about 30 lb?",
    "12 ft up, right?",
    "So 45 a minute?",
    "is the ceiling 16 ft?",
    "and 400 V?",
    "is it a tote?",
]
NOT_YES = [
    "no",
    "nope",
    "not sure",
    "hm",
    "let me check",
    "why do you ask?",
    "ok thanks",
    "don't know",
    "no, not really",
    "maybe",
]


@pytest.mark.parametrize("offer", OFFERS)
@pytest.mark.parametrize("reply", NOT_YES)
def test_what_the_staff_offers_is_no_fact_without_a_yes(offer: str, reply: str) -> None:
    thread = dialogue("hello, we'd like a quote", offer, reply)
    assert not {
        "product.weight",
        "rise.height",
        "rate.normal",
        "rate.peak",
        "space.ceiling",
        "site.voltage",
        "product.type",
    } & set(stands(thread))


@pytest.mark.parametrize(
    "offer", ["30 lb or 40 lb?", "is it say 30 lb?", "So 16x12x10 in, 30 lb, 45 a minute and 12 ft up?"]
)
def test_a_yes_to_several_values_says_none_of_them(offer: str) -> None:
    assert not {"product.weight", "rate.normal", "rise.height"} & set(
        stands(dialogue("we need to lift cases", offer, "yes"))
    )


figures = st.sampled_from(
    ["33 lb", "77 a minute", "21 ft of ceiling", "14 ft up", "9 x 8 x 7 in", "480 V", "26 weeks", "5 C"]
)
staff_lines = st.sampled_from(
    [
        "Most people tell us {}.",
        "Our standard machine does {}.",
        "I noted {} from your colleague.",
        "How about {}?",
        "It takes {}.",
        "Is it {}?",
        "The last one had {}; what do you have?",
        "Size: {}",
        "to sum up: {}",
    ]
)


@given(
    lines=st.lists(st.tuples(staff_lines, figures), min_size=1, max_size=4),
    replies=st.lists(
        st.sampled_from(["hm", "I see", "no", "interesting, thanks", "not sure", "let me ask"]), min_size=4, max_size=4
    ),
)
@settings(max_examples=60, deadline=None)
def test_no_figure_of_the_staff_becomes_a_fact(lines: list[tuple[str, str]], replies: list[str]) -> None:
    text = "Visitor: hello, we need a lift\n"
    for (line, figure), reply in zip(lines, replies, strict=False):
        text += f"Agent: {line.format(figure)}\nVisitor: {reply}\n"
    thread = Interview().take_thread(text)
    assert not any(fact.is_number for fact in thread.facts), thread.facts


def test_a_number_without_a_unit_answers_nothing_where_two_figures_were_asked_for() -> None:
    thread = dialogue("we need to lift cases", "How many a minute? And how many hours a day do you run?", "12")
    assert not {"rate.normal", "site.hours"} & set(stands(thread))
    assert thread.unread == ("12",)


def test_numbered_answers_go_to_the_questions_of_their_number() -> None:
    text = (
        "Agent: 1. How heavy is one? 2. How many a minute? 3. What's the ceiling?\nVisitor: 1. 12 kg\n2. 20\n3. 5 m\n"
    )
    facts = stands(Interview().take_thread(text))
    said = {"product.weight": "12 kg", "rate.normal": "20", "space.ceiling": "5 m"}
    assert {name: fact.said for name, fact in facts.items()} == said


def test_a_bare_how_high_is_of_what_the_sentence_speaks_of() -> None:
    facts = stands(dialogue("hi", "How wide is the door and how high?", "2.4 m and 3 m"))
    assert (facts["space.opening_width"].high, facts["space.opening_height"].high) == (2.4, 3.0)


def test_a_yes_to_a_figure_with_its_product_takes_both() -> None:
    facts = stands(dialogue("hi there", "So the cases are 16 x 12 x 10 in?", "yes"))
    assert {"product.length", "product.width", "product.height", "product.type"} == set(facts)


def test_a_unit_told_later_completes_the_figures_where_they_stand() -> None:
    text = "Visitor: 12x10x8 boxes\nAgent: is that inches?\nVisitor: yes\n"
    talk = Interview()
    facts = stands(talk.take_thread(text))
    assert [facts[f"product.{side}"].said for side in ("length", "width", "height")] == ["12", "10", "8"]
    assert talk.undo()
    assert ("product.length", 1) not in talk.case.facts


def test_figures_that_answer_a_question_without_a_field_are_no_fact() -> None:
    thread = dialogue("we need to lift cases", "And what may the slab be loaded with?", "500 kg")
    assert "product.weight" not in stands(thread)
    assert thread.unread == ("500 kg",)


def test_what_is_asked_stays_asked_over_two_lines_of_the_visitor() -> None:
    text = "Agent: How big is one, and what does it weigh?\nVisitor: one moment\nVisitor: 16x12x10 in\nVisitor: 30 lb\n"
    assert {"product.length", "product.weight"} <= set(stands(Interview().take_thread(text)))


def test_i_dont_know_and_i_will_check_are_noted() -> None:
    talk = Interview()
    talk.take_thread(
        "Visitor: cases\nAgent: what's the ceiling?\nVisitor: no idea\nAgent: what voltage?\nVisitor: I'll check\n"
    )
    assert "space.ceiling" in talk.case.unknown
    assert "site.voltage" in talk.case.later


def test_hostile_signs_are_gone_from_the_case_and_places_hold_in_the_text() -> None:
    text = "Visitor: cases\x1b[31m of\u202e 12\u200b kg\r\nAgent: how high?\r\nVisitor: 3\u00a0m, cafe\u0301 level\r\n"
    talk = Interview()
    thread = talk.take_thread(text)
    facts = stands(thread)
    assert facts["product.weight"].high == pytest.approx(12)
    assert facts["rise.height"].high == pytest.approx(3)
    for fact in thread.facts:
        assert fact.span is not None
        assert text[fact.span[0] : fact.span[1]] == fact.said
    assert not any(sign in words for words, _ in talk.case.messages.values() for sign in "\x1b\u202e\u200b\r")


@given(st.text(st.sampled_from("Ann: Visitor:\nAgent 12kg?'\"x\x1b\u0301é\r>-[10:3]"), max_size=200))
@settings(max_examples=120, deadline=None)
def test_any_text_can_be_taken_in_and_every_place_holds(text: str) -> None:
    thread = Interview().take_thread(text)
    shown: dict[str, Any] = thread.to_json()
    for fact in shown["facts"]:
        start, end = fact["span"]
        assert text[start:end] == fact["said"]


def test_a_message_longer_than_one_may_be_is_taken_in_whole() -> None:
    text = "Visitor: " + "hello there, how are you. " * 2000 + "Our cases weigh 14 kg.\nAgent: thanks!\n"
    fact = stands(Interview().take_thread(text))["product.weight"]
    assert fact.high == pytest.approx(14)
    assert fact.span is not None
    assert text[fact.span[0] : fact.span[1]] == fact.said
