"""What would make it fit, held by sizing anew: at the change told it stands, a hundredth less leaves it out."""

import re
from collections.abc import Mapping
from typing import Any

import pytest

from intake.advice import Answer, Brief, would_fit
from intake.sizing import size
from intake.sizing.result import FAMILIES
from intake.sizing.reverse.changed import with_figure
from intake.spec.flat import Spec

Offered = list[tuple[str, dict[str, Any]]]


@pytest.fixture(scope="module")
def answers(whole_briefs: Mapping[str, Brief]) -> list[tuple[str, Answer]]:
    """Job and answer, of every family that is out in a third of the jobs."""
    return [
        (name, would_fit(brief, family))
        for name, brief in list(whole_briefs.items())[::3]
        for family in FAMILIES
        if brief.result.families[family].verdict == "out"
    ]


@pytest.fixture(scope="module")
def figures(answers: list[tuple[str, Answer]]) -> Offered:
    """Job and change, of all changes of a figure."""
    return [
        (name, change)
        for name, answer in answers
        for change in answer.data["changes"]
        if isinstance(change["to"], float) and isinstance(change["now"], float) and change["field"] != "rise.turn"
    ]


def verdict_with(job: dict[str, Any], change: dict[str, Any], value: float) -> str:
    key = (change["field"], change["size"])
    spec = with_figure(Spec.from_flat(job), key, value, upwards=value > change["now"])
    return size(spec).families[change["family"]].verdict


def test_the_change_lets_it_stand_and_a_hundredth_less_does_not(
    figures: Offered, whole_jobs: Mapping[str, dict[str, Any]]
) -> None:
    for name, change in figures:
        job, to, now = whole_jobs[name], change["to"], change["now"]
        assert verdict_with(job, change, to) == change["verdict"] != "out", (name, change)
        assert verdict_with(job, change, to - 0.01 * (to - now)) == "out", (name, change)
    assert len(figures) > 12
    assert len({change["field"] for _, change in figures}) > 5


def test_the_figure_in_the_line_is_one_at_which_it_stands(cases: dict[str, Any]) -> None:
    answer = would_fit(Brief(spec=Spec.from_flat(cases), system="si"), "incline")
    told = re.findall(r"(rise|floor length at hand|floor width at hand) ([\d.]+) m instead", answer.lines[0])
    assert len(told) == 3
    fields = {"rise": "rise.height", "floor length at hand": "space.length", "floor width at hand": "space.width"}
    changes = {change["field"]: change for change in answer.data["changes"]}
    for label, value in told:
        assert verdict_with(cases, changes[fields[label]], float(value)) != "out", (label, value)


@pytest.mark.parametrize(("family", "field", "figure"), [
    ("spiral", "space.width", "floor_width"), ("washdown_spiral", "space.width", "floor_width"),
    ("continuous_lift", "space.length", "floor_length"), ("index_lift", "space.length", "floor_length"),
])  # fmt: skip
def test_of_layouts_in_steps_the_value_is_the_last_step_that_passes(
    family: str, field: str, figure: str, whole_jobs: Mapping[str, dict[str, Any]]
) -> None:
    """A helix has belts and radii in steps, a lift carriers in steps: the floor told is that of a layout there is."""
    job = whole_jobs["tea cartons"] | {field: 0.6}
    answer = would_fit(Brief(spec=Spec.from_flat(job), system="si"), family)
    change = next(one for one in answer.data["changes"] if one["field"] == field)
    found = size(job | {field: change["to"]}).families[family]
    assert found.verdict != "out"
    assert found.figures[figure].value == pytest.approx(change["to"], rel=2e-6)
    assert size(job | {field: change["to"] - 0.01 * (change["to"] - 0.6)}).families[family].verdict == "out"


def test_a_change_after_which_something_stays_open_says_so(cases: dict[str, Any]) -> None:
    brief = Brief(spec=Spec.from_flat(cases), system="si")
    open_after, certain = would_fit(brief, "side_grip"), would_fit(brief, "index_lift")
    assert [one["verdict"] for one in open_after.data["changes"]] == ["depends"]
    assert "(and then it depends on what is open)" in open_after.lines[0]
    assert certain.data["changes"][0]["verdict"] == "fits"
    assert "depends" not in certain.lines[0]


def test_feeding_the_other_side_first_is_offered_where_it_helps(whole_jobs: Mapping[str, dict[str, Any]]) -> None:
    job = whole_jobs["cases"] | {"product.length": 0.6, "product.width": 0.2, "rate.peak": 85.0, "rate.normal": 85.0}
    assert size(job).families["cover_belt"].verdict == "out"
    brief = Brief(spec=Spec.from_flat(job), system="si")
    helped = [
        family
        for family in brief.result.families
        if brief.result.families[family].verdict == "out"
        and size(job | {"handling.turn_flat": True}).families[family].verdict != "out"
    ]
    assert helped
    for family in helped:
        assert "the product fed with its other side leading" in would_fit(brief, family).lines[0]


def test_it_is_not_offered_where_it_does_not_help(whole_briefs: Mapping[str, Brief]) -> None:
    line = would_fit(whole_briefs["pallets of tiles"], "side_grip").lines[0]
    assert "other side leading" not in line


def test_nothing_is_offered_for_a_family_that_stands(whole_briefs: Mapping[str, Brief]) -> None:
    brief = whole_briefs["mail totes"]
    for family in brief.result.standing:
        (line,) = would_fit(brief, family).lines
        assert "nothing has to change" in line
        assert "instead of" not in line


def test_another_product_is_in_the_data_and_not_in_the_lines(whole_jobs: Mapping[str, dict[str, Any]]) -> None:
    heavy = Brief(spec=Spec.from_flat(whole_jobs["mail totes"] | {"product.weight": 60.0}), system="si")
    answer = would_fit(heavy, "index_lift")
    (change,) = [one for one in answer.data["changes"] if one["field"] == "product.weight"]
    assert change["to"] < 0.5 * 60.0
    assert "weight" not in answer.lines[0]
    lighter = Brief(spec=Spec.from_flat(whole_jobs["mail totes"] | {"product.weight": 26.0}), system="si")
    assert re.search(r"weight of one product [\d.]+ kg instead of 26 kg", would_fit(lighter, "index_lift").lines[0])


def test_where_nothing_helps_the_reason_is_said(whole_briefs: Mapping[str, Brief]) -> None:
    answer = would_fit(whole_briefs["pallets of tiles"], "side_grip")
    assert answer.lines[0].startswith("No single change lets the side-grip elevator stand: ")
    assert len(answer.lines[0]) > len("No single change lets the side-grip elevator stand: ") + 5
    with pytest.raises(KeyError):
        would_fit(whole_briefs["pallets of tiles"], "escalator")


def test_the_nearest_changes_come_first_and_at_most_three_are_told(answers: list[tuple[str, Answer]]) -> None:
    for _, answer in answers:
        figures = [one for one in answer.data["changes"] if isinstance(one["to"], float) and one["now"]]
        shares = [abs(one["to"] / one["now"] - 1.0) for one in figures if one["field"] != "rise.turn"]
        assert shares == sorted(shares)
        assert answer.lines[0].count(" instead of ") <= 3
