"""How settled the choice is: decided exactly as the core says, and each change told turns the leader when sized."""

from collections.abc import Mapping
from typing import Any

import pytest

from intake.advice import Answer, Brief, settled
from intake.sizing import size
from intake.spec.flat import Spec

KNOWN = {
    "product.type", "product.length", "product.width", "product.height", "product.weight", "rate.normal",
    "rise.direction", "rise.infeed_height", "rise.discharge_height", "product.surface", "product.closed",
    "product.rigidity", "rise.turn", "temperature.room", "site.hazardous_area",
}  # fmt: skip
MORE = {
    "cleaning.method", "space.length", "space.width", "space.ceiling", "rate.peak", "handling.squeeze",
    "product.underside",
}  # fmt: skip


@pytest.fixture(scope="module")
def told(whole_jobs: Mapping[str, dict[str, Any]]) -> list[tuple[dict[str, Any], Answer]]:
    """Every other job with less and with more of it known, and what is said of how settled it is."""
    found = []
    for job in list(whole_jobs.values())[1::2]:
        for known in (KNOWN, KNOWN | MORE):
            part = {name: value for name, value in job.items() if name in known}
            found.append((part, settled(Brief(spec=Spec.from_flat(part), system="si"))))
    return found


def test_it_is_decided_exactly_when_the_core_says_so(told: list[tuple[dict[str, Any], Answer]]) -> None:
    seen = set()
    for part, answer in told:
        result = size(part, worth=True)
        assert (answer.data["decided"], answer.data["share"]) == (result.decided, result.share), part
        lead = answer.lines[0]
        assert lead.startswith("Settled: ") == bool(result.decided)
        if result.share is not None and result.share < 1.0:
            assert f"{result.share * 100:.0f} % of the cases tried" in lead
        seen.add(result.decided)
    assert seen == {True, False}


def test_each_word_told_really_changes_the_leader(told: list[tuple[dict[str, Any], Answer]]) -> None:
    looked = 0
    for part, answer in told:
        for turn in answer.data["turns"]:
            if turn["word"] is None:
                continue
            then = size(part | {turn["about"]: turn["word"]}, worth=True)
            leader = then.samples.leader if then.samples is not None else then.best or "none"
            assert leader == turn["to"] != answer.data["best"], (part, turn)
            looked += 1
    assert looked > 3


def test_a_change_is_told_with_the_family_that_then_leads(told: list[tuple[dict[str, Any], Answer]]) -> None:
    for _, answer in told:
        conditions = [line for line in answer.lines if line.startswith("Would change if ")]
        assert len(conditions) == min(4, len(answer.data["turns"]))
        for line, turn in zip(conditions, answer.data["turns"], strict=False):
            assert line.endswith("nothing in the range.") == (turn["to"] == "none"), (line, turn)


def test_where_no_single_answer_turns_it_the_facts_that_do_so_together_are_named(
    told: list[tuple[dict[str, Any], Answer]],
) -> None:
    together = [a for _, a in told if any(line.startswith("Only several answers together") for line in a.lines)]
    assert together
    assert all(not answer.data["turns"] and not answer.data["decided"] for answer in together)


def test_a_whole_job_has_nothing_open_that_could_change_it(whole_briefs: Mapping[str, Brief]) -> None:
    answer = settled(whole_briefs["cider kegs"])
    assert answer.lines == ("Settled: nothing is open that could change it; the platform lift is best.",)


def test_referred_out_is_settled_and_too_early_is_not(cases: dict[str, Any]) -> None:
    out = settled(Brief(spec=Spec.from_flat(cases | {"site.hazardous_area": True})))
    assert out.data["decided"] is True
    assert out.lines[0].startswith("Settled: nothing in the range fits")
    early = settled(Brief(spec=Spec.from_flat({"product.type": "case"})))
    assert "how many a minute" in early.lines[0]
    assert dict(early.data) == {}


def test_a_result_that_was_sampled_already_is_not_sampled_again(cases: dict[str, Any]) -> None:
    result = size(cases, worth=True)
    brief = Brief(spec=Spec.from_flat(cases), sized=result)
    assert brief.sampled is result
    assert settled(brief).data["share"] == result.share


def test_where_another_leads_more_often_over_what_is_open_that_is_told() -> None:
    part = {
        "product.type": "case", "product.length": 0.4, "product.width": 0.3, "product.height": 0.25,
        "product.weight": 13.0, "product.closed": True, "rate.normal": 25.0, "rise.direction": "up",
        "rise.infeed_height": 0.76, "rise.discharge_height": 4.27, "cleaning.method": "high_pressure",
    }  # fmt: skip
    result = size(part, worth=True)
    assert result.samples is not None
    assert result.samples.leader != result.best
    told_of_it = settled(Brief(spec=Spec.from_flat(part))).lines[1]
    share = result.samples.led[result.samples.leader] / len(result.samples.leaders)
    assert f"{share * 100:.0f} %" in told_of_it
    assert "of the cases tried" in told_of_it
