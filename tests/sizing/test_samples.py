"""What the completions tell of a fact: nothing by chance, what decides the leader, and what only two facts tell.

The information is held against scipy's likelihood-ratio test on the same table (G = 2 n I in nats; the G-test, Sokal
and Rohlf, Biometry, from memory), an outside reference.
"""

from collections.abc import Sequence
from math import log
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import chi2_contingency, entropy

from intake.sizing.samples import Column, Samples

COUNT = 256


def column(groups: Sequence[int], count: int) -> Column:
    return Column(groups=groups, count=count, shares=[(group + 0.5) / count for group in groups])


def drawn(rng: Random, count: int) -> list[int]:
    """As sampling draws: the same number in each group, shuffled."""
    groups = [n % count for n in range(COUNT)]
    rng.shuffle(groups)
    return groups


def samples(leaders: Sequence[str], **columns: Column) -> Samples:
    return Samples(leaders=leaders, columns=columns, asks={})


def leaders_of(rng: Random, families: int) -> list[str]:
    weights = [1.0 / (n + 1) for n in range(families)]
    return rng.choices([f"family_{n}" for n in range(families)], weights, k=COUNT)


def test_an_independent_fact_tells_nothing_in_nearly_all_draws() -> None:
    rng, above = Random(11), 0
    for _ in range(300):
        told = samples(leaders_of(rng, rng.choice([2, 3, 5])), fact=column(drawn(rng, rng.choice([2, 4])), 4))
        above += told.tells(("fact",)) > 0.0
    assert above <= 9  # 3 %


def test_two_independent_facts_tell_no_more_together() -> None:
    rng, above = Random(12), 0
    for _ in range(300):
        told = samples(leaders_of(rng, 3), one=column(drawn(rng, 4), 4), two=column(drawn(rng, 4), 4))
        above += told.tells(("one", "two")) > 0.0
    assert above <= 9


def test_a_fact_that_decides_the_leader_tells_nearly_all_there_is() -> None:
    groups = drawn(Random(1), 4)
    told = samples([f"family_{group}" for group in groups], fact=column(groups, 4))
    assert told.tells(("fact",)) == pytest.approx(log(4), abs=0.05)
    assert told.changes(("fact",)) == pytest.approx(0.75 - 0.02)


@given(st.integers(0, 2**32), st.floats(0.05, 0.45))
@settings(max_examples=25, derandomize=True, deadline=None)
def test_the_less_it_is_disturbed_the_more_it_tells(seed: int, noise: float) -> None:
    rng = Random(seed)
    groups = drawn(rng, 2)

    def disturbed(share: float) -> Samples:
        dice = Random(seed)
        leaders = [f"family_{group if dice.random() > share else 1 - group}" for group in groups]
        return samples(leaders, fact=column(groups, 2))

    assert disturbed(0.0).tells(("fact",)) > disturbed(noise).tells(("fact",)) - 1e-9
    assert disturbed(0.02).tells(("fact",)) > disturbed(0.5).tells(("fact",))


def test_two_facts_together_tell_what_neither_tells_alone() -> None:
    rng = Random(3)
    one, two = drawn(rng, 2), drawn(rng, 2)
    leaders = ["either" if a != b else "both" for a, b in zip(one, two, strict=True)]
    told = samples(leaders, one=column(one, 2), two=column(two, 2))
    assert told.tells(("one",)) == told.tells(("two",)) == 0.0
    assert told.tells(("one", "two")) > 0.6
    assert told.changes(("one",)) < 0.1 < 0.4 < told.changes(("one", "two"))


@given(st.integers(0, 2**32), st.integers(2, 4), st.integers(2, 5), st.floats(0.0, 1.0))
@settings(max_examples=40, derandomize=True, deadline=None)
def test_the_information_is_what_scipy_says_of_the_same_table(
    seed: int, groups: int, families: int, bond: float
) -> None:
    rng = Random(seed)
    column_of = drawn(rng, groups)
    pairs = zip(column_of, leaders_of(rng, families), strict=True)
    leaders = [f"family_{group % families}" if rng.random() < bond else name for group, name in pairs]
    names = sorted(set(leaders))
    if len(names) < 2:
        return
    table = [[sum(1 for g, name in zip(column_of, leaders, strict=True) if (g, name) == (at, one)) for one in names]
             for at in range(groups)]  # fmt: skip
    g = chi2_contingency(table, correction=False, lambda_="log-likelihood")
    chance = (g.dof + 3.0 * (2.0 * g.dof) ** 0.5) / (2.0 * COUNT)
    told = samples(leaders, fact=column(column_of, groups)).tells(("fact",))
    assert told == pytest.approx(max(0.0, g.statistic / (2.0 * COUNT) - chance), abs=1e-9)
    rows = [sum(row) for row in table]
    left = sum(total / COUNT * entropy(row) for total, row in zip(rows, table, strict=True))
    by_hand = entropy([sum(at) for at in zip(*table, strict=True)]) - left
    assert g.statistic == pytest.approx(2.0 * COUNT * by_hand, abs=1e-7)


@given(st.integers(0, 2**32))
@settings(max_examples=40, derandomize=True, deadline=None)
def test_a_share_of_changed_answers_lies_between_nothing_and_one(seed: int) -> None:
    rng = Random(seed)
    told = samples(leaders_of(rng, rng.choice([1, 2, 4])), one=column(drawn(rng, 4), 4), two=column(drawn(rng, 2), 2))
    for fields in (("one",), ("two",), ("one", "two"), ("two", "one", "nothing"), ()):
        assert 0.0 <= told.changes(fields) <= 1.0
    assert told.changes(()) == told.changes(("nothing",)) == told.tells(("nothing",)) == 0.0


def test_an_irrelevant_fact_changes_nothing() -> None:
    groups = drawn(Random(5), 4)
    leaders = ["lift"] * 200 + ["belt"] * 56
    assert samples(leaders, fact=column(sorted(groups), 1)).changes(("fact",)) == 0.0
    assert samples(["lift"] * COUNT, fact=column(groups, 4)).changes(("fact",)) == 0.0
    assert samples(["lift"] * COUNT, fact=column(groups, 4)).tells(("fact",)) == 0.0


def test_another_field_that_settles_the_same_has_its_column() -> None:
    groups = drawn(Random(6), 2)
    told = Samples(
        leaders=[f"family_{group}" for group in groups], columns={"rate.peak": column(groups, 2)},
        asks={"rate.pieces": "rate.peak"},
    )  # fmt: skip
    assert told.tells(("rate.pieces",)) == told.tells(("rate.peak",)) > 0.0
    assert told.tells(("rate.pieces", "rate.peak")) == told.tells(("rate.peak",))
    assert told.column_of("product.type") is None
