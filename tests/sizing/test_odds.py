"""Rare and decisive words: sampling draws them at their share, verdicts never count them, and they keep a job open."""

from math import ceil, floor
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from intake.sizing import load_range, size
from intake.sizing.resolve import resolve
from intake.sizing.sampling import Sampler
from intake.sizing.unknowns import Choice
from intake.spec.flat import Spec

RARE = {"site.hazardous_area": True, "temperature.zone": "freezer"}

TESTED: dict[str, Any] = {
    "test.slip_angle": 26.0, "test.tip_angle": 30.0, "test.grip_slip": 90.0, "rate.backs_up": False, "site.hours": 16.0,
    "handling.press_top": True, "product.underside": "flat", "handling.turn_flat": False, "project.weeks": 30.0,
}  # fmt: skip


def choice(plausible: tuple[str, ...], *rare: tuple[str, float]) -> Choice:
    words = (*plausible, *(word for word, _ in rare))
    return Choice(possible=words, plausible=plausible, typical=plausible[0], origin="", rare=rare)


@given(
    st.integers(1, 4), st.lists(st.floats(0.01, 0.2), min_size=0, max_size=2), st.integers(0, 2**32)
)  # fmt: skip
@settings(max_examples=50, derandomize=True, deadline=None)
def test_of_256_draws_rare_words_get_their_share_and_the_others_the_rest_alike(
    usual: int, shares: list[float], seed: int
) -> None:
    one = choice(tuple("abcd"[:usual]), *((f"rare_{n}", share) for n, share in enumerate(shares)))
    draws = [(n + (seed % 97) / 97.0) / 256 for n in range(256)]
    groups = [one.group(draw) for draw in draws]
    for n, share in enumerate(shares):
        assert floor(256 * share) <= groups.count(usual + n) <= ceil(256 * share) + 1
    each = 256 * (1.0 - sum(shares)) / usual
    for n in range(usual):
        assert abs(groups.count(n) - each) <= 2.0
    assert one.drawn == (*"abcd"[:usual], *(f"rare_{n}" for n in range(len(shares))))


def test_without_rare_words_the_usual_ones_are_drawn_alike() -> None:
    one = choice(("a", "b", "c"))
    assert [one.group(share) for share in (0.0, 0.32, 0.34, 0.66, 0.67, 0.999, 1.0)] == [0, 0, 1, 1, 2, 2, 2]


def test_the_sampler_draws_the_words_of_the_data_at_their_share(case_up: dict[str, Any]) -> None:
    spec = {name: value for name, value in case_up.items() if name not in (*RARE, "temperature.room")}
    sampler = Sampler(resolve(Spec.from_flat(spec), load_range()), 256)
    for name, field in (("hazardous_area", "site.hazardous_area"), ("zone", "temperature.zone")):
        key = next(key for key, one in sampler.words.items() if field in one.asks)
        seen = [sampler.view(n).options[key][0] for n in range(256)]
        odds = dict(load_range().odds[field])
        word = RARE[field]
        assert abs(seen.count(word) - 256 * odds[word]) <= 1.0, (name, seen.count(word))


def test_verdicts_never_count_them(case_up: dict[str, Any]) -> None:
    open_job = {name: value for name, value in case_up.items() if name not in (*RARE, "temperature.room")}
    asked = open_job | {"site.hazardous_area": False, "temperature.room": 21.0}
    found, known = size(open_job), size(asked)
    for name, family in found.families.items():
        if known.families[name].verdict == "fits":
            assert not family.likely_out
            assert family.verdict != "out"
    assert found.best == known.best


@pytest.mark.parametrize("field", sorted(RARE))
def test_a_job_is_not_settled_while_they_are_open(field: str, case_up: dict[str, Any]) -> None:
    case_up = case_up | TESTED
    gone = {field, "temperature.room"} if field == "temperature.zone" else {field}
    before = size(case_up, worth=True)
    assert before.decided
    open_job = {name: value for name, value in case_up.items() if name not in gone}
    result = size(open_job, worth=True)
    assert not result.decided
    assert result.samples is not None
    assert result.samples.led["none"] >= 256 * 0.03 - 1.0
    assert result.samples.tells((field,)) > 0.0
