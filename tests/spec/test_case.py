"""The case as a fold over its events: correcting, undoing, quarrels, and what stays open."""

import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.spec import Case, Doubt, Event, Fact, fold
from intake.spec.bodies import doubt_to_body, fact_to_body
from intake.spec.case import renumbered, standing
from intake.spec.events import KINDS

AT = "2026-03-02T09:00:00+00:00"


class Talk:
    """Appends events, as the one who runs a talk does."""

    def __init__(self) -> None:
        self.events: list[Event] = []

    def add(self, kind: str, **body: Any) -> int:
        seq = len(self.events) + 1
        # Through JSON, since that is what a kept case has been through.
        self.events.append(Event(seq=seq, at=AT, kind=kind, body=json.loads(json.dumps(body))))
        return seq

    def hear(self, text: str, *facts: Fact, doubts: Sequence[Doubt] = (), **more: Any) -> int:
        message = self.add("message", text=text, who="visitor")
        bodies = [fact_to_body(renumbered(fact, message=message, who=fact.who, at=AT)) for fact in facts]
        return self.add("heard", message=message, facts=bodies, doubts=[doubt_to_body(d) for d in doubts], **more)

    @property
    def case(self) -> Case:
        return fold(self.events)


@pytest.fixture
def talk() -> Talk:
    return Talk()


def weight(low: float | None, high: float | None, **more: Any) -> Fact:
    return Fact(field="product.weight", low=low, high=high, **more)


def standing_weight(case: Case) -> tuple[float | None, float | None]:
    fact = case.facts[("product.weight", 1)]
    return fact.low, fact.high


def test_a_fact_comes_back_with_its_words_speaker_and_message(talk: Talk) -> None:
    fact = weight(8.0, 14.0, spread=True, hedged=True, said="8-14 kg", span=(0, 7), who="staff")
    heard = talk.hear("8-14 kg maybe", fact)
    assert talk.case.facts[("product.weight", 1)] == renumbered(fact, message=heard - 1, who="staff", at=AT)


def test_sizes_are_kept_apart(talk: Talk) -> None:
    talk.hear("10 kg and 12 kg", weight(10.0, 10.0), weight(12.0, 12.0, size=2))
    assert set(talk.case.facts) == {("product.weight", 1), ("product.weight", 2)}
    assert not talk.case.quarrels


def test_a_correction_appends_and_leaves_what_was_said_before(talk: Talk) -> None:
    talk.hear("10 kg", weight(10.0, 10.0))
    talk.hear("sorry, 12 kg", weight(12.0, 12.0), corrects=True)
    assert standing_weight(talk.case) == (12.0, 12.0)
    assert [f.low for f in talk.case.earlier[("product.weight", 1)]] == [10.0]
    assert not talk.case.quarrels


def test_two_different_values_quarrel_until_one_is_chosen(talk: Talk) -> None:
    talk.hear("10 kg", weight(10.0, 10.0))
    talk.hear("20 kg", weight(20.0, 20.0))
    first, second = talk.case.quarrels[("product.weight", 1)]
    assert (first.low, second.low) == (10.0, 20.0)
    talk.hear("10 it is", weight(10.0, 10.0), asked=["product.weight"])
    assert standing_weight(talk.case) == (10.0, 10.0)
    assert not talk.case.quarrels


def test_a_quarrel_settled_on_what_stands_is_settled(talk: Talk) -> None:
    talk.hear("10 kg", weight(10.0, 10.0))
    talk.hear("20 kg", weight(20.0, 20.0))
    talk.hear("20", weight(20.0, 20.0), settles=["product.weight"])
    assert not talk.case.quarrels
    assert standing_weight(talk.case) == (20.0, 20.0)


def test_saying_one_side_again_does_not_end_a_quarrel(talk: Talk) -> None:
    talk.hear("10 kg", weight(10.0, 10.0))
    talk.hear("20 to 30 kg", weight(20.0, 30.0))
    talk.hear("25 kg", weight(25.0, 25.0))
    first, second = talk.case.quarrels[("product.weight", 1)]
    assert (first.low, second.low) == (10.0, 25.0)


def test_a_quarrel_passed_over_keeps_what_stands(talk: Talk) -> None:
    talk.hear("10 kg", weight(10.0, 10.0))
    talk.hear("20 kg", weight(20.0, 20.0))
    talk.add("passed", question="conflict.product.weight", fields=["product.weight"], stood="20")
    assert not talk.case.quarrels
    assert standing_weight(talk.case) == (20.0, 20.0)
    assert talk.case.passed == {"conflict.product.weight": "20"}


def test_words_that_differ_quarrel_too(talk: Talk) -> None:
    talk.hear("up", Fact(field="rise.direction", value="up"))
    talk.hear("down", Fact(field="rise.direction", value="down"))
    assert ("rise.direction", 1) in talk.case.quarrels


def test_a_text_said_anew_is_no_quarrel(talk: Talk) -> None:
    talk.hear("after the sealer", Fact(field="site.before", value="sealer"))
    talk.hear("after the taper", Fact(field="site.before", value="taper"))
    assert not talk.case.quarrels
    assert talk.case.facts[("site.before", 1)].value == "taper"


NARROWER = [
    pytest.param(weight(8.0, 14.0), weight(12.0, 12.0), id="a figure inside a doubt"),
    pytest.param(weight(8.0, 14.0), weight(9.0, 12.0), id="a range inside a doubt"),
    pytest.param(weight(8.0, None), weight(12.0, None), id="at least more"),
    pytest.param(weight(None, 14.0), weight(12.0, 12.0), id="a figure below at most"),
    pytest.param(weight(10.0, 10.0, approx=True), weight(10.5, 10.5), id="a figure near about"),
    pytest.param(weight(8.0, 14.0, spread=True), weight(8.0, 14.0), id="the same ends"),
    pytest.param(weight(10.0, 10.0, hedged=True), weight(10.0, 10.0), id="the same, surer"),
]


@pytest.mark.parametrize(("before", "after"), NARROWER)
def test_narrowing_is_no_quarrel_and_the_narrower_stands(talk: Talk, before: Fact, after: Fact) -> None:
    talk.hear("first", before)
    talk.hear("then", after)
    assert not talk.case.quarrels
    assert standing_weight(talk.case) == (after.low, after.high)
    assert not talk.case.facts[("product.weight", 1)].hedged


DIFFERENT = [
    pytest.param(weight(8.0, 14.0), weight(12.0, 16.0), id="a range that leaves the doubt"),
    pytest.param(weight(8.0, 14.0), weight(12.0, None), id="an open end past the doubt"),
    pytest.param(weight(10.0, 10.0, approx=True), weight(12.0, 12.0), id="a figure far from about"),
    pytest.param(weight(8.0, 14.0, spread=True), weight(12.0, 12.0), id="a part of a spread is a changed need"),
    pytest.param(weight(10.0, 10.0), weight(10.5, 10.5), id="two exact figures"),
]


@pytest.mark.parametrize(("before", "after"), DIFFERENT)
def test_what_cannot_both_hold_is_a_quarrel(talk: Talk, before: Fact, after: Fact) -> None:
    talk.hear("first", before)
    talk.hear("then", after)
    assert ("product.weight", 1) in talk.case.quarrels


SAID_AGAIN = [
    pytest.param(weight(10.0, 10.0, said="10 kg"), weight(10.0, 10.0, said="ten"), id="the same"),
    pytest.param(weight(10.0, 10.0, said="10 kg"), weight(10.0, 10.0, hedged=True, said="10?"), id="less sure"),
    pytest.param(weight(10.0, 10.0, said="10 kg"), weight(10.4, 10.4, approx=True, said="about"), id="vaguer"),
]


@pytest.mark.parametrize(("before", "after"), SAID_AGAIN)
def test_what_is_said_again_no_better_leaves_the_first_words(talk: Talk, before: Fact, after: Fact) -> None:
    talk.hear("first", before)
    talk.hear("then", after)
    assert not talk.case.quarrels
    assert talk.case.facts[("product.weight", 1)].said == "10 kg"


def test_what_the_works_measured_outranks_what_was_said(talk: Talk) -> None:
    talk.hear("slides at 20", Fact(field="test.slip_angle", low=20.0, high=20.0))
    talk.hear("measured 17", Fact(field="test.slip_angle", low=17.0, high=17.0, who="works"))
    assert not talk.case.quarrels
    assert talk.case.facts[("test.slip_angle", 1)].low == 17.0


def test_undo_takes_the_answer_and_its_message_back_and_redo_brings_both(talk: Talk) -> None:
    heard = talk.hear("10 kg", weight(10.0, 10.0))
    talk.add("undone", seq=heard)
    assert not talk.case.facts
    assert not talk.case.messages
    talk.add("redone", seq=heard)
    assert standing_weight(talk.case) == (10.0, 10.0)
    assert talk.case.messages == {heard - 1: ("10 kg", "visitor")}


def test_undoing_a_correction_brings_back_what_stood(talk: Talk) -> None:
    talk.hear("10 kg", weight(10.0, 10.0))
    before = talk.case
    talk.add("undone", seq=talk.hear("no, 12", weight(12.0, 12.0), corrects=True))
    assert talk.case == before


def test_undoing_one_side_ends_the_quarrel(talk: Talk) -> None:
    talk.hear("10 kg", weight(10.0, 10.0))
    talk.add("undone", seq=talk.hear("20 kg", weight(20.0, 20.0)))
    assert not talk.case.quarrels
    assert standing_weight(talk.case) == (10.0, 10.0)


@given(
    steps=st.lists(st.tuples(st.integers(1, 30), st.booleans()), max_size=8),
    back=st.integers(0, 8),
)
def test_undoing_the_last_answers_is_as_if_they_had_never_been_given(steps: list[tuple[int, bool]], back: int) -> None:
    talk, heard, cases = Talk(), [], [fold([])]
    for figure, corrects in steps:
        heard.append(talk.hear(str(figure), weight(float(figure), float(figure)), corrects=corrects))
        cases.append(talk.case)
    taken_back = heard[::-1][:back]
    for seq in taken_back:
        talk.add("undone", seq=seq)
    assert talk.case == cases[len(heard) - len(taken_back)]
    for seq in reversed(taken_back):
        talk.add("redone", seq=seq)
    assert talk.case == cases[-1]


def test_undo_itself_is_never_what_counts(talk: Talk) -> None:
    heard = talk.hear("10 kg", weight(10.0, 10.0))
    talk.add("undone", seq=heard)
    talk.add("redone", seq=heard)
    assert [e.kind for e in standing(talk.events)] == ["message", "heard"]


def test_a_doubt_waits_until_something_is_said_of_its_field(talk: Talk) -> None:
    options = (weight(5.44, 5.44, said="12"), weight(12.0, 12.0, said="12"))
    doubt = Doubt(field="product.weight", said="12", why="no unit", ask="12 lb or kg?", span=(3, 5), options=options)
    talk.hear("is 12", doubts=[doubt])
    assert talk.case.doubts == [doubt]
    talk.hear("cases", Fact(field="product.type", value="case"))
    assert talk.case.doubts == [doubt]
    talk.hear("12 kg", weight(12.0, 12.0))
    assert talk.case.doubts == []


def test_a_new_doubt_of_a_field_replaces_the_old_one(talk: Talk) -> None:
    talk.hear("12", doubts=[Doubt(field="product.weight", said="12", why="no unit", ask="12 lb or kg?")])
    talk.hear("14", doubts=[Doubt(field="product.weight", said="14", why="no unit", ask="14 lb or kg?")])
    assert [d.said for d in talk.case.doubts] == ["14"]


@pytest.mark.parametrize("kind", ["unknown", "later"])
def test_not_knowing_is_an_answer_until_the_fact_comes(talk: Talk, kind: str) -> None:
    doubt = Doubt(field="product.weight", said="12", why="no unit", ask="12 lb or kg?")
    talk.hear("12", doubts=[doubt])
    talk.add(kind, question="product_weight", fields=["product.weight"])
    assert getattr(talk.case, kind) == {"product.weight"}
    assert talk.case.doubts == []
    talk.hear("12 kg", weight(12.0, 12.0))
    assert getattr(talk.case, kind) == set()


def test_one_answer_may_tell_some_and_not_know_the_rest(talk: Talk) -> None:
    talk.hear("12 kg, no idea of the rate", weight(12.0, 12.0), unknown=["rate.peak"], later=["rate.normal"])
    assert (talk.case.unknown, talk.case.later) == ({"rate.peak"}, {"rate.normal"})


def test_a_value_set_directly_settles(talk: Talk) -> None:
    talk.hear("10 kg", weight(10.0, 10.0))
    talk.hear("20 kg", weight(20.0, 20.0))
    talk.add("known", fact=fact_to_body(weight(15.0, 15.0, who="staff")))
    assert not talk.case.quarrels
    assert standing_weight(talk.case) == (15.0, 15.0)


def test_a_personal_value_stays_in_the_message_and_never_enters_an_event_body(talk: Talk) -> None:
    text = "I am Ann Example, reach me at ann@example.org"
    name = Fact(field="contact.name", value="Ann Example", said="Ann Example", span=(5, 16))
    email = Doubt(
        field="contact.email", said="ann@example.org", why="is it theirs", ask="Is this yours?", span=(30, 45)
    )
    talk.hear(text, name, doubts=[email])
    bodies = json.dumps([dict(e.body) for e in talk.events if e.kind != "message"])
    assert "Ann" not in bodies
    assert "example.org" not in bodies
    fact = talk.case.facts[("contact.name", 1)]
    assert (fact.value, fact.said) == ("Ann Example", "Ann Example")
    assert talk.case.doubts[0].said == "ann@example.org"


def test_blanking_a_message_forgets_the_personal_value(talk: Talk) -> None:
    talk.hear("I am Ann", Fact(field="contact.name", value="Ann", said="Ann", span=(5, 8)), weight(10.0, 10.0))
    first = talk.events[0]
    blanked = Event(seq=1, at=first.at, kind="message", body={**first.body, "text": "I am    "})
    case = fold([blanked, *talk.events[1:]])
    assert ("contact.name", 1) not in case.facts
    assert standing_weight(case) == (10.0, 10.0)


def test_sizing_sees_no_personal_value_and_about_as_a_range(talk: Talk, tmp_path: Path) -> None:
    (tmp_path / "assumptions.toml").write_text("[approx]\nkg = 0.2\nother = 0.1\n", encoding="utf-8")
    talk.hear("I am Ann", Fact(field="contact.name", value="Ann", said="Ann", span=(5, 8)))
    talk.hear("about 10 kg, 30/min or so", weight(10.0, 10.0, approx=True))
    talk.hear("30/min or so", Fact(field="rate.peak", low=30.0, high=30.0, approx=True))
    flat = talk.case.spec(tmp_path).to_flat()
    assert flat == {
        "product.weight": {"low": 8.0, "high": 12.0, "spread": False},
        "rate.peak": {"low": 27.0, "high": 33.0, "spread": False},
    }


def test_title_notes_asked_and_shelf_follow_the_events(talk: Talk) -> None:
    talk.add("opened", title="tea cartons")
    talk.add("asked", question="product_size", fields=["product.length"], branch="product")
    note = talk.add("message", text="calls back on Monday", who="staff")
    noted = talk.add("noted", message=note)
    talk.add("archived")
    case = talk.case
    assert (case.title, case.notes, case.asked, case.branch, case.archived) == (
        "tea cartons",
        ["calls back on Monday"],
        ["product_size"],
        "product",
        True,
    )
    talk.add("restored")
    talk.add("undone", seq=noted)
    assert (talk.case.archived, talk.case.notes) == (False, [])


def test_every_kind_of_event_can_be_folded() -> None:
    bodies: dict[str, dict[str, Any]] = {
        "message": {"text": "x"},
        "known": {"fact": fact_to_body(weight(1.0, 1.0))},
        "asked": {"question": "q"},
        "undone": {"seq": 99},
        "redone": {"seq": 99},
        "noted": {"message": 99},
        "withdrawn": {"field": "rate.peak"},
        "done": {"of": 99},
        "attached": {"message": 99, "file": "0" * 64},
        "moved": {"to": "closed"},
    }
    for kind in KINDS:
        fold([Event(seq=1, at=AT, kind=kind, body=bodies.get(kind, {}))])


def test_an_event_survives_being_kept() -> None:
    event = Event(seq=3, at=AT, kind="asked", body={"question": "q", "fields": ["rate.peak"]})
    assert Event.from_json(json.loads(json.dumps(event.to_json()))) == event


@pytest.mark.parametrize("row", [{"seq": 1, "at": AT, "kind": "sold"}, {"seq": "x", "at": AT, "kind": "opened"}])
def test_a_row_that_is_no_event_is_refused(row: dict[str, Any]) -> None:
    with pytest.raises(ValueError, match=r"unknown kind|invalid literal"):
        Event.from_json(row)
