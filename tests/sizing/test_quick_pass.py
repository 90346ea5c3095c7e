"""The quick pass finds the leader that a full look would, and the search of layouts says what stopped it."""

from collections.abc import Callable
from random import Random
from typing import Any

from intake.sizing import load_range, size
from intake.sizing.all_families import ALL
from intake.sizing.engine import attempt
from intake.sizing.quick import NOBODY, QuickPass
from intake.sizing.resolve import resolve
from intake.sizing.sampling import Sampler
from intake.spec.flat import Spec


def test_the_leader_is_the_family_with_the_highest_score_and_nothing_settled_is_lost(
    whole: Callable[[Random], dict[str, Any]], part: Callable[..., dict[str, Any]]
) -> None:
    rng = Random(4)
    leaders = set()
    for _ in range(12):
        job = resolve(Spec.from_flat(part(whole(rng), rng, 0.5)), load_range())
        sampler = Sampler(job, 32)
        quick = QuickPass(job, ALL, sampler.view(0))
        for index in range(32):
            scores = quick.scores(sampler.view(index))
            leader = quick.leader(sampler.view(index))
            leaders.add(leader)
            assert leader == (max(scores, key=lambda name: scores[name]) if scores else NOBODY)
            seen = sampler.view(index)
            passing = {name for name, family in ALL.items() if attempt(family, seen, job.data.families[name]).passes}
            assert passing == set(scores)
    assert len(leaders) > 3


def test_a_search_that_finds_nothing_says_what_stopped_how_many(case_up: dict[str, Any]) -> None:
    found = size(case_up | {"space.width": 1.0}).families["spiral"]
    assert found.verdict == "out"
    stopped = found.to_json()["layouts_stopped_by"]
    assert stopped["room_width"] > 10
    assert found.because[-1].startswith(f"no layout of the {sum(stopped.values())} looked at passes")


def test_the_smallest_layout_that_passes_says_what_stopped_the_smaller_ones(case_up: dict[str, Any]) -> None:
    found = size(case_up | {"test.slip_angle": 30.0, "rate.backs_up": False}).families["washdown_spiral"]
    assert found.verdict == "fits"
    assert "others looked at before it are stopped by width" in found.searched
    assert found.because[-1] == found.searched
