"""How high and how fast, held by sizing anew: at the value every check passes, 1 % more fails."""

import re
from collections.abc import Callable, Mapping
from typing import Any

import pytest

from intake.advice import Answer, Brief, how_fast, how_high
from intake.sizing import size
from intake.sizing.result import FamilyResult
from intake.spec.flat import Spec

Jobs = Mapping[str, dict[str, Any]]
Told = list[tuple[str, str, Answer]]
ENDS = {"how_high": 60.0, "how_fast": 2000.0}
"""Where the search ends: what still stands there has no end."""


@pytest.fixture(scope="module")
def told(whole_briefs: Mapping[str, Brief]) -> Told:
    """Job, family, answer: of the first four families that stand in each of a dozen jobs."""
    return [
        (name, family, ask(brief, family))
        for name, brief in whole_briefs.items()
        for family in brief.result.standing[:4]
        for ask in (how_high, how_fast)
    ]


def at(job: dict[str, Any], answer: Answer, value: float) -> FamilyResult:
    """The family sized with another rise or rate, put in by hand."""
    if answer.topic == "how_fast":
        changed = job | {"rate.peak": value, "rate.normal": min(value, job["rate.normal"])}
    else:
        low, high = sorted(("rise.infeed_height", "rise.discharge_height"), key=lambda name: job[name])
        changed = job | {high: job[low] + value}
    return size(changed).families[answer.data["family"]]


def passes(found: FamilyResult) -> bool:
    return not any(check.fails_at_design or check.passes is False for check in found.checks if not check.warns)


def test_at_the_value_every_check_passes_and_a_hundredth_more_fails(told: Told, whole_jobs: Jobs) -> None:
    looked = 0
    for name, family, answer in told:
        value = answer.data["value"]
        assert value is not None, (name, family)
        if value >= ENDS[answer.topic]:
            continue
        looked += 1
        assert passes(at(whole_jobs[name], answer, value)), (name, family, answer)
        beyond = at(whole_jobs[name], answer, 1.01 * value)
        assert not passes(beyond), (name, family, answer)
        assert beyond.verdict == "out", (name, family, answer)
    assert looked > 50


def test_what_is_told_is_a_value_at_which_it_still_stands(told: Told, whole_jobs: Jobs) -> None:
    for name, family, answer in told[::4]:
        found = re.search(r"(?:rise|run at) ([\d.]+)( mm| m|/min|/h)", answer.lines[0])
        assert found is not None, answer.lines
        value = float(found[1]) * {" m": 1.0, " mm": 1e-3, "/min": 1.0, "/h": 1.0 / 60.0}[found[2]]
        assert value <= answer.data["value"] * (1.0 + 1e-9), (name, family, answer)
        assert passes(at(whole_jobs[name], answer, value)), (name, family, answer)


def test_in_feet_and_inches_too(whole_jobs: Jobs) -> None:
    brief = Brief(spec=Spec.from_flat(whole_jobs["tea cartons"]), system="us")
    for family in brief.result.standing[::3]:
        answer = how_high(brief, family)
        feet, inches = re.search(r"rise (\d+) ft(?: (\d+) in)?", answer.lines[0]).groups()  # type: ignore[union-attr]
        value = (12 * int(feet) + int(inches or 0)) * 0.0254
        assert answer.data["value"] - 0.0254 < value <= answer.data["value"]
        assert passes(at(whole_jobs["tea cartons"], answer, value))


def test_the_room_to_spare_is_the_share_of_the_largest_that_is_not_asked_for(told: Told) -> None:
    for name, family, answer in told:
        data = answer.data
        spare = re.search(r"leaves (\d+) % to spare", answer.lines[1])
        assert spare is not None, (name, family, answer)
        assert int(spare[1]) == pytest.approx(100.0 * (1.0 - data["now"] / data["value"]), abs=0.51)


def test_a_family_that_fits_is_certain_of_what_is_asked_for(told: Told) -> None:
    for name, family, answer in told:
        assert answer.data["fits_to"] >= answer.data["now"] * (1.0 - 1e-9), (name, family)


@pytest.mark.parametrize("ask", [how_high, how_fast])
def test_without_a_name_it_is_the_leading_family_and_a_named_one_is_itself(
    whole_briefs: Mapping[str, Brief], ask: Callable[..., Answer]
) -> None:
    brief = whole_briefs["mail totes"]
    assert ask(brief).data["family"] == brief.result.best
    assert ask(brief, "continuous_lift").data["family"] == "continuous_lift"
    with pytest.raises(KeyError):
        ask(brief, "escalator")


@pytest.mark.parametrize("ask", [how_high, how_fast])
def test_too_early_says_what_comes_first_and_referred_out_says_why(ask: Callable[..., Answer]) -> None:
    early = ask(Brief(spec=Spec.from_flat({"product.type": "case"})))
    assert "how many a minute" in early.lines[0]
    assert dict(early.data) == {}
    cold = Brief(spec=Spec.from_flat({"product.type": "case", "temperature.zone": "freezer", "rate.peak": 20}))
    assert "refer" in ask(cold).lines[0]
    assert dict(ask(cold).data) == {}


def test_a_gate_that_is_shut_leaves_no_rise_at_all_and_is_named(cases: dict[str, Any]) -> None:
    answer = how_high(Brief(spec=Spec.from_flat(cases), system="si"), "side_grip")
    assert answer.data["value"] is None
    assert answer.lines == (
        "At this product and rate the side-grip elevator stands at no rise: the product may not be held by its sides.",
    )


def test_more_than_it_can_is_said_to_be_beyond_it(cases: dict[str, Any]) -> None:
    answer = how_fast(Brief(spec=Spec.from_flat(cases), system="si"), "index_lift")
    assert "Asked for: 40/min, which is beyond it." in answer.lines
    assert answer.data["value"] == pytest.approx(31.0, rel=1e-5)


def test_what_is_open_leaves_less_that_is_certain(cases: dict[str, Any]) -> None:
    answer = how_high(Brief(spec=Spec.from_flat(cases), system="si"))
    assert answer.data["fits_to"] < answer.data["value"]
    assert answer.lines[-1].startswith("Counting everything that is still open at its worst, 4.4")
