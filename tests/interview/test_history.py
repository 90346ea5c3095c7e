"""Two desks on one case: what each said is there in the end, and whatever points at an event still points at it."""

from collections.abc import Sequence
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from intake.interview.history import History
from intake.spec import Event, fold
from intake.spec.case import standing

ACTIONS = ("note", "promise", "know", "done", "undo", "redo", "ask", "undo_answer", "hear", "rehear", "withdraw")


def act(history: History, action: str, tag: str) -> None:
    """One thing that a person does at a desk; `tag` makes its words unlike all others."""
    if action == "note":
        history.append("noted", message=history.append("message", text=tag, who="staff").seq)
    elif action == "promise":
        history.append("promised", message=history.append("message", text=tag, who="staff").seq, who="us", by=None)
    elif action == "know":
        message = history.append("message", text=tag, who="staff").seq
        fact = {"field": "contact.name", "value": None, "said": None, "span": [0, len(tag)], "message": message}
        history.append("known", fact=fact, message=message)
    elif action == "hear":
        message = history.append("message", text=tag, who="visitor").seq
        option = {"field": "site.before", "value": tag, "said": tag, "message": message}
        doubt = {"field": "site.before", "said": tag, "why": "w", "ask": "a", "span": [0, 1], "options": [option]}
        history.append("heard", message=message, asked=[], to="q", facts=[], doubts=[doubt], unread=[])
    elif action == "rehear":
        last = history.last_heard()
        if last is not None:
            history.append("undone", seq=last.seq, whole=True)
            message = history.append("message", text=tag, who="visitor").seq
            history.append("heard", message=message, asked=[], to="q", facts=[], doubts=[], instead=last.seq)
    elif action == "done":
        waiting = history.case.waiting
        if waiting:
            history.append("done", of=waiting[0].seq)
    elif action == "ask":
        history.append("asked", question=tag, fields=[])
    elif action == "withdraw":
        history.append("withdrawn", field="contact.name", size=1)
    else:
        getattr(history, action)()


def told(events: Sequence[Event]) -> list[tuple[str, Any]]:
    """Events with the events that they point at in place of numbers: what they mean, wherever they stand."""
    return [(event.kind, _meant(events, dict(event.body))) for event in events]


def _meant(events: Sequence[Event], part: Any) -> Any:
    if isinstance(part, dict):
        return {key: _meant(events, _pointed(events, key, value)) for key, value in part.items()}
    return [_meant(events, one) for one in part] if isinstance(part, list) else part


def _pointed(events: Sequence[Event], key: str, value: Any) -> Any:
    points = key in ("message", "seq", "of", "instead") and isinstance(value, int)
    return [events[value - 1].kind, dict(events[value - 1].body)] if points else value


STEPS = st.lists(st.sampled_from(ACTIONS), max_size=8)


def three(common: list[str], theirs: list[str], ours: list[str]) -> tuple[History, History, History]:
    """The case as both desks knew it, and as each went on."""
    base = History()
    for number, action in enumerate(common):
        act(base, action, f"common {number}")
    sides = History(base.events), History(base.events)
    for side, (name, actions) in zip(sides, (("theirs", theirs), ("ours", ours)), strict=True):
        for number, action in enumerate(actions):
            act(side, action, f"{name} {number}")
    return base, *sides


@given(common=STEPS, theirs=STEPS, ours=STEPS)
def test_nothing_said_on_either_side_is_lost_and_all_still_means_the_same(
    common: list[str], theirs: list[str], ours: list[str]
) -> None:
    base, there, here = three(common, theirs, ours)
    own = len(base.events)
    merged = History(here.events)
    merged.take_in(there.events, own)
    assert [event.seq for event in merged.events] == list(range(1, len(merged.events) + 1))
    assert merged.events[: len(there.events)] == there.events
    assert told(merged.events) == [*told(there.events), *told(here.events)[own:]]


def places(side: History, event: Event, *, ours: bool, own: int) -> set[tuple[str, int]]:
    """An event and the message that it was read from, by whose they are and their number there."""
    numbers = [event.seq, event.body.get("message")]
    return {("ours" if ours and number > own else "theirs", number) for number in numbers if number is not None}


@given(common=STEPS, theirs=STEPS, ours=STEPS)
def test_what_counts_in_the_end_is_what_counts_when_one_desk_does_it_all(
    common: list[str], theirs: list[str], ours: list[str]
) -> None:
    base, there, here = three(common, theirs, ours)
    own = len(base.events)
    merged = History(here.events)
    merged.take_in(there.events, own)
    # The same by identity in place of numbers: who takes what back, one event after the other.
    ways = [*((there, event) for event in there.events), *((here, event) for event in here.events[own:])]
    off: set[tuple[str, int]] = set()
    keys = []
    for side, event in ways:
        key = ("ours" if side is here and event.seq > own else "theirs", event.seq)
        keys.append((key, event.kind))
        if event.kind not in ("undone", "redone"):
            continue
        target = side.events[int(event.body["seq"]) - 1]
        gone = places(side, target, ours=side is here, own=own)
        stands_for = None if event.body.get("whole") else target.body.get("instead")
        back = places(side, side.events[stands_for - 1], ours=side is here, own=own) if stands_for else set()
        off = (off | gone) - back if event.kind == "undone" else (off | back) - gone
    expected = [
        place for place, (key, kind) in enumerate(keys, 1) if key not in off and kind not in ("undone", "redone")
    ]
    assert [event.seq for event in standing(merged.events)] == expected
    assert merged.case == fold(merged.events)


@given(common=STEPS, theirs=STEPS, ours=STEPS, after=STEPS)
def test_the_talk_goes_on_after_two_desks_came_together(
    common: list[str], theirs: list[str], ours: list[str], after: list[str]
) -> None:
    base, there, here = three(common, theirs, ours)
    here.take_in(there.events, len(base.events))
    for number, action in enumerate(after):
        act(here, action, f"after {number}")
    assert [event.seq for event in here.events] == list(range(1, len(here.events) + 1))


def test_something_done_again_here_while_another_desk_goes_on_there_can_be_taken_in() -> None:
    base, there, here = three(["note", "undo"], ["note"], ["redo"])
    here.take_in(there.events, len(base.events))
    assert not here.redo()
    assert here.case.notes == ["common 0", "theirs 0"]


def test_a_promise_kept_here_is_kept_when_the_other_desk_went_on() -> None:
    base, there, here = three(["promise"], ["note", "promise"], ["promise", "done"])
    here.take_in(there.events, len(base.events))
    assert [(matter.what, bool(matter.done)) for matter in here.case.matters.values()] == [
        ("common 0", True),
        ("theirs 1", False),
        ("ours 0", False),
    ]
