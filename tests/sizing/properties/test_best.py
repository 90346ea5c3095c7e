"""Which family leads: the highest score among those that stand, and a word when nothing does."""

from typing import Any

from intake.sizing import size, verdicts
from intake.spec.flat import Spec

Json = dict[str, Any]


def test_the_best_family_has_the_highest_score_of_those_that_stand(jobs: Any, for_all: Any) -> None:
    def law(pair: tuple[Json, Json]) -> None:
        for spec in pair:
            result = size(spec).to_json()
            standing = {name: f for name, f in result["families"].items() if f["verdict"] != "out"}
            if result["best"] is None:
                continue
            likely = {name: f for name, f in standing.items() if not f["likely_out"]} or standing
            assert result["best"] in likely
            assert likely[result["best"]]["score"] == max(f["score"] for f in likely.values())
            if result["second"] is not None:
                assert result["second"] in standing
                assert result["second"] != result["best"]

    for_all(law, jobs.part, tries=15)


def test_no_family_leads_only_when_all_are_out_or_the_basics_are_not_known(jobs: Any, for_all: Any) -> None:
    def law(pair: tuple[Json, Json]) -> None:
        for spec in pair:
            result = size(spec).to_json()
            all_out = all(f["verdict"] == "out" for f in result["families"].values())
            assert (result["best"] is None) == (all_out or not knows_the_basics(spec))

    for_all(law, jobs.part, tries=15)


def knows_the_basics(spec: Json) -> bool:
    """True once type or size, rate and rise are known."""
    footprint = {"product.length", "product.width"} <= set(spec) or "product.diameter" in spec
    size_or_type = "product.type" in spec or (footprint and "product.height" in spec)
    rate = bool({"rate.normal", "rate.peak"} & set(spec)) or {"rate.pieces", "product.pieces"} <= set(spec)
    rise = "rise.height" in spec or {"rise.infeed_height", "rise.discharge_height"} <= set(spec)
    return size_or_type and rate and rise


def test_a_job_is_referred_out_exactly_when_all_families_are_out(jobs: Any, for_all: Any) -> None:
    def law(spec: Json) -> None:
        result = size(spec).to_json()
        all_out = all(f["verdict"] == "out" for f in result["families"].values())
        assert (result["refer_out"] is not None) == all_out
        assert result["refer_out"] != ""

    for_all(law, jobs.whole, tries=30)


def test_verdicts_asked_for_alone_are_those_of_the_whole_result(jobs: Any, for_all: Any) -> None:
    def law(pair: tuple[Json, Json]) -> None:
        for spec in pair:
            whole = {name: family.verdict for name, family in size(spec).families.items()}
            assert verdicts(Spec.from_flat(spec)) == whole
            assert verdicts(Spec.from_flat(spec), families=("incline",)) == {"incline": whole["incline"]}

    for_all(law, jobs.part, tries=10)
