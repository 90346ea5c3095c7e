"""What would change the best family: the answers after which another one leads, and no others."""

from collections.abc import Callable, Sequence
from random import Random
from typing import Any

import pytest

from intake.sizing import size, would_change
from intake.sizing.samples import Column, Samples
from intake.spec.vocabulary import vocabulary

COUNT = 256


@pytest.fixture
def shares() -> list[float]:
    """One draw in each stratum, shuffled."""
    draws = [(n + 0.5) / COUNT for n in range(COUNT)]
    Random(7).shuffle(draws)
    return draws


def figures(shares: Sequence[float], ends: tuple[float, float] | None = (0.0, 10.0)) -> Column:
    return Column(groups=[int(share * 4) for share in shares], count=4, shares=shares, ends=ends)


def words(shares: Sequence[float], said: tuple[Any, ...]) -> Column:
    return Column(groups=[int(s * len(said)) for s in shares], count=len(said), shares=shares, words=said)


def test_a_figure_is_cut_where_the_leader_changes(shares: list[float]) -> None:
    leaders = ["lift" if share < 0.75 else "spiral" for share in shares]
    (turn,) = would_change(Samples(leaders=leaders, columns={"rise.height": figures(shares)}, asks={}), "lift")
    assert (turn.to, turn.above, turn.word) == ("spiral", True, None)
    assert turn.value == pytest.approx(7.5)
    assert turn.share == pytest.approx(0.25)


def test_each_word_after_which_another_leads_is_a_turn(shares: list[float]) -> None:
    column = words(shares, ("dry", "wipe", "low_pressure", "high_pressure"))
    leaders = ["belt" if group < 2 else "spiral" if group == 2 else "none" for group in column.groups]
    turns = would_change(Samples(leaders=leaders, columns={"cleaning.method": column}, asks={}), "belt")
    assert {(turn.word, turn.to, turn.share) for turn in turns} == {
        ("low_pressure", "spiral", 0.25), ("high_pressure", "none", 0.25)
    }  # fmt: skip


def test_a_fact_that_tells_nothing_makes_no_turn(shares: list[float]) -> None:
    leaders = Random(2).choices(["lift", "spiral"], k=COUNT)
    columns = {"rise.height": figures(shares), "site.air": words(shares, (True, False))}
    assert would_change(Samples(leaders=leaders, columns=columns, asks={}), "lift") == ()


def test_a_fact_after_every_answer_to_which_the_same_family_leads_makes_no_turn(shares: list[float]) -> None:
    """Where the shown best leads nowhere, hours "above 16" and "below 16" would both change it: neither does."""
    leaders = ["side_grip" if share < 0.45 or n % 4 else "spiral" for n, share in enumerate(shares)]
    columns = {"site.hours": figures(shares), "site.air": words(shares, (True, False))}
    samples = Samples(leaders=leaders, columns=columns, asks={})
    assert samples.tells(("site.hours",)) > 0.0
    assert would_change(samples, "incline") == ()


def test_a_fact_without_a_figure_of_its_own_tells_the_side_alone(shares: list[float]) -> None:
    leaders = ["lift" if share < 0.5 else "spiral" for share in shares]
    samples = Samples(leaders=leaders, columns={"test.slip_angle": figures(shares, None)}, asks={})
    (turn,) = would_change(samples, "lift")
    assert (turn.value, turn.above) == (None, True)
    assert set(turn.to_json()) == {"about", "to", "share", "word", "above", "value"}


def test_the_likeliest_answer_comes_first(shares: list[float]) -> None:
    leaders = ["lift" if share < 0.625 else "spiral" if share < 0.875 else "none" for share in shares]
    column = Column(
        groups=[0 if s < 0.625 else 1 if s < 0.875 else 2 for s in shares],
        count=3,
        shares=shares,
        words=("a", "b", "c"),
    )
    turns = would_change(Samples(leaders=leaders, columns={"product.rigidity": column}, asks={}), "lift")
    assert [turn.word for turn in turns] == ["b", "c"]


def test_of_whole_jobs_with_something_open_each_turn_really_changes_the_leader(
    whole: Callable[[Random], dict[str, Any]], part: Callable[..., dict[str, Any]]
) -> None:
    """Sized again with the word, or a figure half-way from the cut to the end: most completions then go to it."""
    rng, looked = Random(44), 0
    for _ in range(24):
        spec = part(whole(rng), rng, 0.7)
        result = size(spec, worth=True)
        if result.samples is None or result.best is None:
            continue
        for turn in would_change(result.samples, result.best)[:6]:
            ends = result.samples.columns[turn.about].ends
            if turn.word is None and (turn.value is None or ends is None):
                continue
            answer = turn.word if turn.word is not None else _beyond(turn.above, turn.value, ends)
            then = size({**_without(spec, turn.about), turn.about: answer}, worth=True)
            leader = then.samples.leader if then.samples is not None else then.best or "none"
            assert leader == turn.to, (spec, turn, then.samples.led if then.samples else None)
            looked += 1
    assert looked > 10


def _beyond(above: bool | None, value: float | None, ends: tuple[float, float] | None) -> float:
    assert ends is not None
    assert value is not None
    return (value + (ends[1] if above else ends[0])) / 2.0


def _without(spec: dict[str, Any], about: str) -> dict[str, Any]:
    gone = "temperature.room" if about == "temperature.zone" else ""
    assert about in vocabulary()
    return {name: value for name, value in spec.items() if name != gone}
