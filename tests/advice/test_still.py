"""What is still to find out: one breath once, the weightiest first, the visitor's own questions last."""

from collections.abc import Mapping
from typing import Any

from intake.advice import Brief, to_find_out
from intake.interview.tree import load_tree
from intake.sizing import size
from intake.spec.case import Case
from intake.spec.flat import Spec
from intake.spec.folder import questions_folder
from intake.spec.inquiry import Inquiry

EARLY: dict[str, Any] = {
    "product.type": "case", "product.length": 0.4, "product.width": 0.3, "product.height": 0.25, "product.weight": 8.0,
    "rate.normal": 20.0, "rise.height": 3.0, "rise.direction": "up",
}  # fmt: skip


def brief(job: dict[str, Any]) -> Brief:
    return Brief(spec=Spec.from_flat(job), system="si")


def test_what_is_asked_in_one_breath_is_one_line() -> None:
    answer = to_find_out(brief(EARLY))
    tree = load_tree(questions_folder())
    entries = [tree.for_field(point["field"] or point["test"]) for point in answer.data["points"]]
    told = {entry.id for entry in entries if entry is not None}
    assert len(entries) > len(told)  # some breaths ask for several facts
    shown = [line for line in answer.lines[1:] if not line.startswith("And ")]
    assert len(shown) == len(set(shown)) == min(12, len(told))
    assert (len(told) > 12) == answer.lines[-1].startswith("And ")


def test_the_floor_is_asked_for_once_with_both_its_sides() -> None:
    answer = to_find_out(brief(EARLY))
    fields = [point["field"] for point in answer.data["points"]]
    assert {"space.length", "space.width"} <= set(fields)
    assert len([line for line in answer.lines if "Length the way they come in" in line]) == 1


def test_the_weights_are_those_of_the_sizing_and_the_weightiest_come_first() -> None:
    points = to_find_out(brief(EARLY)).data["points"]
    follow = {one.field or one.test: one.changes_best for one in size(EARLY, worth=True).follow_ups}
    for point in points:
        assert point["changes_best"] == follow[point["field"] or point["test"]]
    weights = [point["changes_best"] or 0.0 for point in points]
    assert weights == sorted(weights, reverse=True)


def test_a_weight_worth_telling_is_told_and_a_small_one_is_not() -> None:
    answer = to_find_out(brief(EARLY))
    heaviest = max(point["changes_best"] for point in answer.data["points"])
    assert heaviest >= 0.02
    assert f"It may change the choice ({heaviest * 100:.0f} %)." in answer.lines[1]
    assert sum("may change the choice" in line for line in answer.lines) < len(answer.lines) - 1


def test_each_line_says_what_would_settle_it() -> None:
    shown = [line for line in to_find_out(brief(EARLY)).lines[1:] if not line.startswith("And ")]
    assert all(" What would settle it: " in line for line in shown)


def test_questions_of_the_visitors_own_without_an_answer_come_last() -> None:
    inquiries = [
        Inquiry(text="Can you paint it our green?", message=1, span=(0, 27), card=None),
        Inquiry(text="How tall can it go?", message=1, span=(28, 47), card="how_tall"),
    ]
    answer = to_find_out(brief(EARLY), Case(inquiries=inquiries))
    assert answer.data["points"][-1]["state"] == "asked"
    assert "our green" in answer.data["points"][-1]["say"]
    assert not any("How tall" in point["say"] for point in answer.data["points"])


def test_what_the_visitor_checks_comes_before_what_is_only_assumed() -> None:
    plain = to_find_out(brief(EARLY)).data["points"]
    weightless = [point["field"] for point in plain if not point["changes_best"] and point["field"]]
    case = Case(later={weightless[-1]}, unknown={weightless[-2]})
    states = [p["state"] for p in to_find_out(brief(EARLY), case).data["points"] if not p["changes_best"]]
    assert states[:2] == ["later", "unknown"]
    assert set(states[2:]) == {"open"}


def test_nothing_left_is_said_to_be_nothing(whole_jobs: Mapping[str, dict[str, Any]]) -> None:
    answer = to_find_out(brief(whole_jobs["cider kegs"]))
    assert answer.lines == ("Nothing is left to find out.",)
    assert answer.data == {"points": []}
