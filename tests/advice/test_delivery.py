"""When it could be there: the weeks of the range beside those in which it is wanted."""

from collections.abc import Mapping
from typing import Any

import pytest

from intake.advice import Brief, delivery
from intake.sizing import load_range
from intake.spec.flat import Spec


def brief(job: dict[str, Any], weeks: Any) -> Brief:
    rest = {name: value for name, value in job.items() if name != "project.weeks"}
    return Brief(spec=Spec.from_flat(rest | ({"project.weeks": weeks} if weeks is not None else {})), system="si")


def test_the_usual_weeks_are_those_of_the_result_and_of_the_range(whole_briefs: Mapping[str, Brief]) -> None:
    for one in whole_briefs.values():
        for family in one.result.standing:
            answer, figure = delivery(one, family), one.result.families[family].figures["lead_time"]
            assert (answer.data["weeks"], answer.data["low"], answer.data["high"]) == (
                figure.value, figure.low, figure.high
            )  # fmt: skip
            assert f": {figure.value:.0f} weeks from order" in answer.lines[0]
            assert figure.high == load_range().families[family].weeks_most


@pytest.mark.parametrize(
    ("weeks", "said"),
    [
        (12, "It is wanted in 12 weeks: that leaves 3 weeks."),
        (9, "It is wanted in 9 weeks: that leaves 0 weeks."),
        (3, "It is wanted in 3 weeks: that is 6 weeks short of what is usual. Please ask before counting on it."),
        ([8, 20], "It is wanted in 8 to 20 weeks: that is 1 week short of what is usual."),
        (None, "When is it wanted?"),
    ],
)
def test_in_time_late_and_unknown_are_told_apart(
    weeks: Any, said: str, whole_jobs: Mapping[str, dict[str, Any]]
) -> None:
    one = brief(whole_jobs["cases"], weeks)
    assert one.result.best == "spiral"
    assert delivery(one).lines[1].startswith(said)


def test_no_delivery_is_promised(whole_jobs: Mapping[str, dict[str, Any]]) -> None:
    for weeks in (12, 3, None):
        assert "not a promise" in delivery(brief(whole_jobs["cases"], weeks)).lines[-1]


def test_while_none_leads_it_is_said_why() -> None:
    early = delivery(Brief(spec=Spec.from_flat({"product.type": "case", "project.weeks": 8})))
    assert "how many a minute" in early.lines[0]
    assert dict(early.data) == {}
