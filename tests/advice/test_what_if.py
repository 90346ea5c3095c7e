"""What if: before and after agree with sizing both specs by themselves, and only what changes is told."""

from collections.abc import Mapping
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from intake.advice import Brief, what_if
from intake.sizing import size
from intake.sizing.result import FAMILIES
from intake.spec.flat import Spec, SpecError

CHANGES: dict[str, st.SearchStrategy[Any]] = {
    "product.weight": st.floats(0.5, 60.0), "product.height": st.floats(0.05, 0.9),
    "space.ceiling": st.floats(3.0, 12.0),
    "space.length": st.floats(0.8, 12.0), "space.width": st.floats(0.5, 4.0), "handling.squeeze": st.booleans(),
    "product.rigidity": st.sampled_from(["rigid", "semi_rigid", "soft"]), "site.hazardous_area": st.booleans(),
    "cleaning.method": st.sampled_from(["dry", "wipe", "low_pressure", "high_pressure", "clean_in_place"]),
}  # fmt: skip


@given(st.data())
@settings(max_examples=25, derandomize=True, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_before_and_after_agree_with_sizing_both_by_themselves(
    whole_jobs: Mapping[str, dict[str, Any]], whole_briefs: Mapping[str, Brief], data: st.DataObject
) -> None:
    name = data.draw(st.sampled_from(sorted(whole_jobs)))
    fields = data.draw(st.lists(st.sampled_from(sorted(CHANGES)), min_size=1, max_size=2, unique=True))
    facts = {field: data.draw(CHANGES[field]) for field in fields}
    if all(whole_jobs[name][field] == value for field, value in facts.items()):
        return
    answer = what_if(whole_briefs[name], facts)
    before, after = size(whole_jobs[name]), size(whole_jobs[name] | facts)
    if not answer.data["changed"]:
        return
    assert (answer.data["best_before"], answer.data["best_after"]) == (before.best, after.best)
    verdicts = {one: [before.families[one].verdict, after.families[one].verdict] for one in FAMILIES}
    assert answer.data["verdicts"] == verdicts
    assert answer.data["newly_out"] == [one for one in FAMILIES if verdicts[one][0] != "out" == verdicts[one][1]]
    assert answer.data["no_longer_out"] == [one for one in FAMILIES if verdicts[one][0] == "out" != verdicts[one][1]]


def test_the_rise_and_the_rate_are_changed_with_what_hangs_on_them(
    whole_jobs: Mapping[str, dict[str, Any]], whole_briefs: Mapping[str, Brief]
) -> None:
    job, brief = whole_jobs["tea cartons"], whole_briefs["tea cartons"]
    higher = what_if(brief, {"rise.height": 5.0})
    alone = size(job | {"rise.discharge_height": 5.75})
    assert higher.data["best_after"] == alone.best
    assert {one: pair[1] for one, pair in higher.data["verdicts"].items()} == {
        one: found.verdict for one, found in alone.families.items()
    }
    for field in ("rate.peak", "rate.normal"):
        faster = what_if(brief, {field: 20.0})
        slow = size(job | {"rate.peak": 20.0, "rate.normal": 20.0})
        assert faster.data["best_after"] == slow.best
        assert faster.lines[0] == "If peak rate 20/min instead of 28/min:"


def test_a_lower_peak_takes_the_normal_rate_along_and_a_higher_one_leaves_it(cases: dict[str, Any]) -> None:
    brief = Brief(spec=Spec.from_flat(cases | {"rate.normal": 35.0}), system="si")
    for peak, normal in ((25.0, 25.0), (60.0, 35.0)):
        alone = size(cases | {"rate.peak": peak, "rate.normal": normal})
        verdicts = {one: pair[1] for one, pair in what_if(brief, {"rate.peak": peak}).data["verdicts"].items()}
        assert verdicts == {one: found.verdict for one, found in alone.families.items()}


def test_figures_of_the_leader_are_told_before_and_after(cases: dict[str, Any]) -> None:
    brief = Brief(spec=Spec.from_flat(cases), system="si")
    answer = what_if(brief, {"rate.peak": 60.0})
    speeds = [size(cases | {"rate.peak": rate}).families["cover_belt"].figures["belt_speed"].value for rate in (40, 60)]
    assert f"belt speed {speeds[1]:.3g} m/s instead of {speeds[0]:.3g} m/s" in answer.lines[-1]
    assert "still leads" in answer.lines[1]


def test_what_is_newly_out_and_no_longer_out_is_told_with_the_reason(cases: dict[str, Any]) -> None:
    brief = Brief(spec=Spec.from_flat(cases), system="si")
    low = what_if(brief, {"space.ceiling": 4.6})
    assert any(line.startswith("Newly out: ") and "and there is 4.6 m" in line for line in low.lines)
    held = what_if(brief, {"handling.squeeze": True})
    assert held.data["no_longer_out"] == ["side_grip"]
    assert "No longer out: side-grip elevator." in held.lines


def test_nothing_left_standing_is_said_with_the_reason(cases: dict[str, Any]) -> None:
    answer = what_if(Brief(spec=Spec.from_flat(cases)), {"site.hazardous_area": True})
    assert answer.data["best_after"] is None
    assert answer.lines[1].startswith("Nothing in the range would stand.")


def test_a_word_for_the_room_takes_its_temperature_along(cases: dict[str, Any]) -> None:
    answer = what_if(Brief(spec=Spec.from_flat(cases)), {"temperature.zone": "freezer"})
    assert answer.data["best_after"] is None
    back = what_if(Brief(spec=Spec.from_flat(cases | {"temperature.room": -20.0})), {"temperature.room": 20.0})
    assert back.data["best_after"] is not None
    assert back.data["best_before"] is None


def test_what_is_so_already_is_said_to_be(cases: dict[str, Any]) -> None:
    answer = what_if(Brief(spec=Spec.from_flat(cases)), {"rate.peak": 40.0, "handling.squeeze": False})
    assert answer.lines == ("That is how it stands already.",)
    assert answer.data == {"changed": {}}


def test_a_first_leader_and_none_yet_are_told_apart() -> None:
    early = {"product.type": "case", "rise.height": 3.0}
    brief = Brief(spec=Spec.from_flat(early))
    assert "how many a minute" in " ".join(what_if(brief, {"product.type": "tote"}).lines)
    assert any("would lead" in line for line in what_if(brief, {"rate.peak": 20.0}).lines)


@pytest.mark.parametrize(
    ("facts", "named"),
    [
        ({"rate.paek": 40.0}, "rate.paek"),
        ({"product.type": "boxes"}, "product.type"),
        ({"rate.peak": -3.0}, "rate.peak"),
        ({"handling.squeeze": "maybe"}, "handling.squeeze"),
        ({"rise.height": 3.0, "space.width": "wide"}, "space.width"),
    ],
)
def test_what_cannot_be_is_refused_with_its_name(facts: dict[str, Any], named: str, cases: dict[str, Any]) -> None:
    with pytest.raises(SpecError) as refused:
        what_if(Brief(spec=Spec.from_flat(cases)), facts)
    assert named in str(refused.value)
