"""Knowing more never takes back what was certain: out stays out, and fits stays fits as far as is plausible.

A completion adds facts that are not yet there and agree with those that are. Plausible: inside the ranges or words
that the result's own assumptions list.
"""

from collections import Counter
from collections.abc import Callable, Mapping
from math import atan, degrees
from random import Random
from typing import Any

import pytest
from hypothesis import strategies as st

from intake.sizing import size, verdicts
from intake.spec.flat import Spec
from intake.spec.vocabulary import vocabulary

Json = dict[str, Any]
SEEDS = st.integers(0, 2**32)

SAME_MATTER = (
    {"product.diameter", "product.length"},
    {"product.diameter", "product.width"},
    {"rate.pieces", "rate.normal"},
    {"rate.pieces", "rate.peak"},
    {"product.pieces", "rate.normal"},
    {"product.pieces", "rate.peak"},
    {"cleaning.pressure", "cleaning.method"},
    {"temperature.room", "temperature.zone"},
    {"handling.squeeze_limit", "test.squeeze_mark"},
    {"product.centre_height", "test.tip_angle"},
)
"""Two ways to say the same: the second would be no new fact, but another word on the first."""

PARTS = (
    ("product.base", "product.length", "product.diameter"),
    ("product.base_width", "product.width", "product.diameter"),
    ("product.centre_height", "product.height"),
)
"""Lengths that are never larger than those behind them."""

EASY_FIGURES = (0.1, 0.3, 1.0, 3.0, 20.0, 60.0, 1000.0)
BASICS = (
    "product.type", "product.length", "product.width", "product.height", "product.diameter", "product.weight",
    "rise.infeed_height", "rise.discharge_height", "space.length", "space.width", "space.ceiling",
)  # fmt: skip


def is_new(spec: Json, field: str) -> bool:
    """True when nothing of the matter has been said, of any size."""
    said = {name.partition("@")[0] for name in spec}
    return field not in said and not any(field in pair and pair & said for pair in SAME_MATTER)


def some_value(rng: Random, field: str, whole: Json, easiest: Json) -> Any:
    """The easiest that could be true, what the whole job says, or anything else."""
    known = vocabulary()[field]
    if field in easiest and rng.random() < 0.6:
        return easiest[field]
    if field in whole and rng.random() < 0.5:
        return whole[field]
    if known.kind == "yes_no":
        return rng.random() < 0.5
    if not known.is_number:
        return rng.choice(known.choices)
    if field == "rise.turn":
        return rng.choice([0.0, 90.0, 180.0, 270.0])
    if known.kind == "count":
        return rng.choice([1, 2, 5])
    if known.unit == "deg":
        return rng.uniform(1.0, 89.0)
    return rng.choice(EASY_FIGURES) if rng.random() < 0.5 else round(10.0 ** rng.uniform(-2.0, 3.0), 4)


def completed(rng: Random, spec: Json, whole: Json, easiest: Json) -> Json:
    """The spec with one, some or all of the open facts said, none of them against another."""
    out = dict(spec)
    fields = [name for name, known in vocabulary().items() if known.kind != "text"]
    rng.shuffle(fields)
    for field in fields[: rng.choice([5, 20, len(fields)])]:
        if is_new(out, field):
            out[field] = some_value(rng, field, whole, easiest)
            if any(field in chain and not _nested(out, chain) for chain in PARTS):
                del out[field]
    return out


def _nested(spec: Json, chain: tuple[str, ...]) -> bool:
    sizes = [spec[name] for name in chain if isinstance(spec.get(name), float)]
    return chain[0] not in spec or all(sizes[0] <= larger for larger in sizes[1:])


def test_what_is_out_on_part_of_a_spec_is_out_however_it_is_completed(jobs: Any, for_all: Any) -> None:
    count: Counter[str] = Counter()

    def law(pair: tuple[Json, Json], seed: int) -> None:
        part, whole = pair
        more = completed(Random(seed), part, whole, jobs.easiest)
        before, after = verdicts(Spec.from_flat(part)), verdicts(Spec.from_flat(more))
        back = [name for name, verdict in before.items() if verdict == "out" and after[name] != "out"]
        count["out"] += sum(verdict == "out" for verdict in before.values())
        assert not back or size(more).conflicts, (back, {k: v for k, v in more.items() if k not in part})

    for_all(law, jobs.part, SEEDS, tries=100)
    assert count["out"] > 200


def test_an_assumption_alone_puts_nothing_out(jobs: Any, for_all: Any) -> None:
    count: Counter[str] = Counter()

    def law(whole: Json, seed: int) -> None:
        rng = Random(seed)
        slick = {"product.wet": rng.random() < 0.5, "handling.squeeze": True}
        part = {name: said for name, said in (whole | slick).items() if name in BASICS or rng.random() < 0.5}
        open_facts = {name: said for name, said in jobs.easiest.items() if is_new(part, name)}
        open_facts.pop("test.squeeze_mark", None)  # the limit is said by handling.squeeze_limit
        more = {**part, **open_facts}
        before, after = verdicts(Spec.from_flat(part)), verdicts(Spec.from_flat(more))
        count["out"] += sum(verdict == "out" for verdict in before.values())
        assert [name for name in before if before[name] == "out" and after[name] != "out"] == []

    for_all(law, jobs.exact_whole, SEEDS, tries=100)
    assert count["out"] > 100


@pytest.fixture(scope="module")
def plausible_completions(for_all: Any, jobs: Any) -> Callable[..., None]:
    """Holds that families which fit on part of a spec fit for completions that `complete` makes of its assumptions."""

    def hold(complete: Callable[[Random, Json, Json], tuple[Json, tuple[str, ...]]], tries: int) -> None:
        count: Counter[str] = Counter()

        def law(whole: Json, seed: int) -> None:
            rng = Random(seed)
            optional = [name for name in whole if name not in BASICS and "@" not in name]
            left_out = rng.sample(optional, rng.choice([1, 3, 6, 10]))
            part = {name: said for name, said in whole.items() if name not in left_out}
            before = size(part)
            fits = [name for name, family in before.families.items() if family.verdict == "fits"]
            if not fits or before.conflicts:
                return
            more, concerned = complete(rng, part, before.to_json())
            after = verdicts(Spec.from_flat(more))
            lost = [name for name in fits if name in concerned and after[name] != "fits"]
            count["fits"] += len([name for name in fits if name in concerned])
            assert not lost or size(more).conflicts, (lost, {k: v for k, v in more.items() if k not in part})

        for_all(law, jobs.whole, SEEDS, tries=tries)
        assert count["fits"] > tries / 10

    return hold


def test_what_fits_on_part_of_a_spec_fits_for_all_that_its_assumptions_list(plausible_completions: Any) -> None:
    def complete(rng: Random, part: Json, result: Json) -> tuple[Json, tuple[str, ...]]:
        more = dict(part)
        for one in result["assumptions"]:
            about = one["about"][0]
            if rng.random() < 0.7 and is_new(more, about) and (one["values"] or one["unit"] != "1"):
                value = _plausible(rng, one)
                more |= {} if value is None else {about: value}
        return more, tuple(result["families"])

    plausible_completions(complete, 45)


def _plausible(rng: Random, one: Mapping[str, Any]) -> Any:
    """A word or figure that an assumption lists; the ends of its range as often as anything between."""
    if one["values"] is not None:
        return rng.choice(one["values"])
    if one["low"] is None:
        return None
    figure = rng.choice([one["low"], one["typical"], one["high"], rng.uniform(one["low"], one["high"])])
    return int(figure) if vocabulary()[one["about"][0]].kind == "count" else figure


RIDES_THE_BELT = ("spiral", "washdown_spiral", "incline")
RIDES_ON_RUBBER = ("cover_belt",)


def test_what_fits_by_an_assumed_friction_fits_when_a_test_finds_it(plausible_completions: Any) -> None:
    def complete(rng: Random, part: Json, result: Json) -> tuple[Json, tuple[str, ...]]:
        assumed = [one for one in result["assumptions"] if one["test"] == "test.slip_angle"]
        if not assumed or not is_new(part, "test.slip_angle"):
            return part, ()
        one = rng.choice(assumed)
        friction = rng.choice([one["low"], one["high"], rng.uniform(one["low"], one["high"])])
        concerned = RIDES_ON_RUBBER if one["id"].startswith("high_friction") else RIDES_THE_BELT
        return {**part, "test.slip_angle": degrees(atan(friction))}, concerned

    plausible_completions(complete, 45)
