"""Where a case is in its life, read off its events alone, through the whole of it."""

import pytest

from intake.spec.case import Case, fold
from intake.spec.events import Event
from intake.spec.matters import Matter
from intake.spec.standing import STANDINGS, overdue, standing_of, waits_of

LATER = ("later", {"question": "rate", "fields": ["rate.normal"]})
SAID = ("message", {"text": "12 kg", "who": "visitor"})


def case_of(*happened: tuple[str, dict[str, object]]) -> Case:
    """The fold of these events, a day between each and the next from 1 March on."""
    return fold(
        Event(seq=seq, at=f"2026-03-{seq:02}T09:00:00+00:00", kind=kind, body=body)
        for seq, (kind, body) in enumerate(happened, 1)
    )


def promised(who: str, by: str | None = None) -> tuple[tuple[str, dict[str, object]], ...]:
    """A promise, whose words are the message before it: for use as the first two events."""
    return ("message", {"text": "do it", "who": "staff"}), ("promised", {"message": 1, "who": who, "by": by})


def test_a_life_from_the_first_word_to_the_end() -> None:
    steps: list[tuple[str, dict[str, object]]] = [SAID]
    expected = ["talking"]
    for event, standing in (
        (LATER, "waiting for the visitor"),
        (("moved", {"to": "samples_asked"}), "samples asked for"),
        (("moved", {"to": "in_test"}), "in test"),
        (("moved", {"to": "open"}), "waiting for the visitor"),
        (("handed_over", {"revision": "B", "spec": {}}), "handed over, revision B"),
        (("moved", {"to": "closed"}), "closed"),
        (("moved", {"to": "open"}), "waiting for the visitor"),
    ):
        steps.append(event)
        expected.append(standing)
    assert [standing_of(case_of(*steps[:count]), decided=False) for count in range(1, len(steps) + 1)] == expected
    assert {name.partition(",")[0] for name in expected} <= set(STANDINGS)


def test_a_choice_that_is_settled_is_decided_unless_the_visitor_is_waited_for() -> None:
    assert standing_of(case_of(SAID), decided=True) == "decided"
    assert standing_of(case_of(SAID, LATER), decided=True) == "waiting for the visitor"
    assert standing_of(case_of(*promised("visitor")), decided=True) == "waiting for the visitor"
    assert standing_of(case_of(*promised("us")), decided=True) == "decided"


def test_nobody_waits_in_a_case_without_promises() -> None:
    assert waits_of(case_of(SAID)) == []


@pytest.mark.parametrize("who", ["us", "visitor", "works"])
def test_who_promised_something_is_waited_for_since_then(who: str) -> None:
    (waiting,) = waits_of(case_of(*promised(who, "2026-03-09")))
    assert (waiting.who, waiting.since[:10], waiting.due) == (who, "2026-03-02", "2026-03-09")


def test_each_is_waited_for_once_since_the_first_time_and_until_the_first_day() -> None:
    case = case_of(
        *promised("visitor", "2026-03-20"),
        ("promised", {"message": 1, "who": "visitor", "by": "2026-03-10"}),
        LATER,
        ("promised", {"message": 1, "who": "us", "by": None}),
    )
    first, second = waits_of(case)
    assert (first.who, first.since[:10], first.due) == ("visitor", "2026-03-02", "2026-03-10")
    assert (second.who, second.due) == ("us", "")


def test_samples_that_were_asked_for_wait_for_the_visitor_and_tests_for_the_works() -> None:
    assert [waiting.who for waiting in waits_of(case_of(("moved", {"to": "samples_asked"})))] == ["visitor"]
    assert [waiting.who for waiting in waits_of(case_of(("moved", {"to": "in_test"})))] == ["works"]


def test_what_the_visitor_answered_is_waited_for_no_longer() -> None:
    fact = {"field": "rate.normal", "low": 25.0, "high": 25.0, "said": "25"}
    assert waits_of(case_of(SAID, LATER, ("known", {"fact": fact}))) == []


@pytest.mark.parametrize(
    ("by", "done", "late"),
    [("2026-03-01", "", True), ("2026-03-02", "", False), ("", "", False), ("2026-03-01", "x", False)],
)
def test_overdue_is_what_should_have_been_done_before_today(by: str, done: str, late: bool) -> None:
    assert overdue(Matter(seq=1, kind="promise", what="x", who="us", by=by, done=done), "2026-03-02") is late
