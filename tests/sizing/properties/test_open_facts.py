"""What a verdict depends on: real facts and tests, and answering all of them leaves next to nothing open."""

from collections import Counter
from random import Random
from typing import Any

from hypothesis import strategies as st

from intake.sizing import size
from intake.spec.vocabulary import vocabulary

Json = dict[str, Any]
ZONES = ((-2.0, "freezer"), (12.0, "chilled"), (45.0, "ambient"), (1e9, "hot"))  # degC; common practice, no source
TYPICAL = {
    "test.slip_angle": 24.0,
    "test.tip_angle": 30.0,
    "test.squeeze_mark": 120.0,
    "rise.levels": 1,
    "product.wet": False,
}


def test_a_verdict_depends_on_real_facts_tests_and_assumptions_only(jobs: Any, for_all: Any) -> None:
    def law(pair: tuple[Json, Json]) -> None:
        result = size(pair[0]).to_json()
        assumed = {one["id"] for one in result["assumptions"]}
        named = set(vocabulary()) | assumed
        for name, family in result["families"].items():
            assert set(family["depends_on"]) <= named, name
            assert not set(family["depends_on"]) & set(pair[0]) - {"product.sizes"}, name
            for check in family["checks"]:
                assert set(check["assumes"]) <= assumed, (name, check["id"])
            for figure in family["figures"].values():
                assert set(figure.get("needs", ())) <= named, name
        for follow in result["follow_ups"]:
            assert (follow["field"] or follow["test"]) in named

    for_all(law, jobs.exact_part, tries=25)


def test_a_verdict_says_on_what_it_depends_exactly_when_it_does(jobs: Any, for_all: Any) -> None:
    def law(pair: tuple[Json, Json]) -> None:
        for spec in pair:
            for name, family in size(spec).families.items():
                assert (family.verdict == "depends") == bool(family.depends_on), name

    for_all(law, jobs.part, tries=20)


def test_answering_all_that_a_verdict_depends_on_settles_it_in_nearly_all_cases(jobs: Any, for_all: Any) -> None:
    count: Counter[str] = Counter()

    def law(pair: tuple[Json, Json], seed: int) -> None:
        part, whole = ({n: v for n, v in spec.items() if n != "temperature.zone"} for spec in pair)
        result = size(part).to_json()
        for name, family in result["families"].items():
            if family["verdict"] != "depends":
                continue
            more = {**part, **answers(Random(seed), family["depends_on"], whole, result)}
            after = size(more)
            if not after.conflicts:
                count["answered"] += 1
                count["settled"] += after.families[name].verdict != "depends"

    for_all(law, jobs.exact_part, st.integers(0, 2**32), tries=20)
    assert count["answered"] > 30
    assert count["settled"] >= 0.97 * count["answered"]


def answers(rng: Random, asked: list[str], whole: Json, result: Json) -> Json:
    """What a visitor who knows the whole job would answer; a plausible value where even that says nothing."""
    listed = {one["about"][0]: one for one in result["assumptions"] if one["unit"] != "1" or one["values"]}
    out: Json = {}
    for field in asked:
        if field == "rise.height":
            out[field] = round(abs(whole["rise.infeed_height"] - whole["rise.discharge_height"]), 6)
        elif field == "temperature.zone":
            out[field] = next(zone for below, zone in ZONES if whole["temperature.room"] < below)
        elif field in ("product.length", "product.width") and "product.diameter" in whole:
            out[field] = whole["product.diameter"]
        elif field in whole:
            out[field] = whole[field]
        else:
            out[field] = _plausible(rng, field, listed, whole)
    return out


def _plausible(rng: Random, field: str, listed: Json, whole: Json) -> Any:
    one, known = listed.get(field), vocabulary()[field]
    if field == "test.grip_slip":
        return whole["product.weight"] * 9.80665 / (2.0 * 0.55)
    if field in TYPICAL:
        return TYPICAL[field]
    if one is not None and (one["values"] or one["low"] is not None):
        return rng.choice(one["values"]) if one["values"] else rng.uniform(one["low"], one["high"])
    if known.kind == "yes_no":
        return rng.random() < 0.5
    return rng.choice(known.choices) if known.choices else 1.0


NEARLY_ALL = {
    "product.type": "other", "product.length": 0.1747, "product.width": 0.1503, "product.height": 0.1466,
    "product.weight": 3.1926, "product.closed": True, "product.base": 0.1693, "rate.peak": 23.0968,
    "rate.backs_up": True, "rise.infeed_height": 0.7497, "rise.discharge_height": 7.9626, "rise.turn": 0.0,
    "rise.levels": 1, "space.length": 16.0, "space.width": 6.0, "space.ceiling": 11.1092, "space.opening_width": 3.0,
    "space.opening_height": 3.0, "temperature.product": 21.0, "temperature.room": 21.0, "handling.tilt": 180.0,
    "test.tip_angle": 85.0,
}  # fmt: skip


def test_hours_of_work_are_asked_for_where_the_pull_is_near_what_they_allow() -> None:
    family = size(NEARLY_ALL).families["cleated_incline"]
    assert family.verdict == "depends"
    assert "site.hours" in family.depends_on
