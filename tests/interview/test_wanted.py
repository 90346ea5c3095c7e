"""What is asked for, and why: what tells of the best family, then what engineering needs."""

from collections.abc import Callable, Sequence
from typing import Any

import pytest

from intake import sizing
from intake.interview.wanted import Wanted
from intake.sizing.result import Result
from intake.sizing.samples import Column, Samples
from intake.spec.flat import Spec
from intake.spec.folder import questions_folder

BASICS = {
    "product.type": "case", "product.length": 0.4, "product.width": 0.3, "product.height": 0.25, "product.weight": 12,
    "rate.normal": 20, "rise.height": 3, "rise.direction": "up",
}  # fmt: skip
SQUEEZE = {"side_grip": {"verdict": "depends", "depends_on": ("handling.squeeze",)}}


@pytest.fixture
def wanted(sized: Callable[..., Result]) -> Callable[..., Wanted]:
    """What is wanted of a result put together by hand."""

    def make(families: dict[str, dict[str, Any]] | None = None, needs: Sequence[str] = (), **parts: Any) -> Wanted:
        parts.setdefault("best", "incline")
        return Wanted(Spec.from_flat(BASICS), sized(families, **parts), needs, questions_folder())

    return make


def samples(**groups: Sequence[int]) -> Samples:
    """128 completions; the first column given decides who leads: side grip in its group 0, incline in the others."""
    first = next(iter(groups.values()))
    leaders = ["side_grip" if group == 0 else "incline" for group in first]
    columns = {
        name.replace("__", "."): Column(groups=list(group), count=max(group) + 1, shares=[0.5] * len(group))
        for name, group in groups.items()
    }
    return Samples(leaders=leaders, columns=columns, asks={})


HALF = [0, 1] * 64
OTHER = [0, 0, 1, 1] * 32


def purposes(found: Wanted, *fields: str) -> dict[str, str]:
    return {matter.field: matter.part for matter in found.together(fields)}


def test_what_tells_who_is_best_is_asked_and_what_tells_nothing_is_not(wanted: Callable[..., Wanted]) -> None:
    found = wanted(samples=samples(handling__squeeze=HALF, cleaning__method=OTHER), decided=False)
    assert purposes(found, "handling.squeeze") == {"handling.squeeze": "best"}
    assert purposes(found, "cleaning.method") == {}


def test_the_facts_of_one_breath_are_asked_together_where_one_of_them_tells(wanted: Callable[..., Wanted]) -> None:
    found = wanted(samples=samples(space__length=HALF, space__width=OTHER), decided=False)
    assert purposes(found, "space.length", "space.width") == {"space.length": "best", "space.width": "best"}


def test_once_decided_only_what_engineering_needs_is_asked(wanted: Callable[..., Wanted]) -> None:
    found = wanted(needs=("site.voltage",), samples=samples(handling__squeeze=HALF), decided=True)
    assert purposes(found, "handling.squeeze", "site.voltage") == {"site.voltage": "engineering"}


def test_without_samples_what_a_verdict_hangs_on_is_asked(wanted: Callable[..., Wanted]) -> None:
    assert purposes(wanted(SQUEEZE), "handling.squeeze", "handling.invert") == {"handling.squeeze": "best"}


def test_measured_values_are_not_asked_of_a_visitor(wanted: Callable[..., Wanted]) -> None:
    found = wanted(samples=samples(test__slip_angle=HALF), decided=False)
    assert purposes(found, "test.slip_angle") == {}


def test_before_there_is_a_best_family_the_basics_are_asked_and_a_diameter_with_length_and_width(
    sized: Callable[..., Result],
) -> None:
    spec = Spec.from_flat({"product.type": "jar"})
    found = Wanted(spec, sized(best=None), (), questions_folder())
    fields = ("product.length", "product.width", "product.height", "product.diameter", "product.weight")
    assert purposes(found, *fields) == dict.fromkeys(fields, "basics")


def test_a_leader_that_leads_in_no_sample_is_stuck_and_what_brings_it_back_alone_comes_first(
    wanted: Callable[..., Wanted], monkeypatch: pytest.MonkeyPatch
) -> None:
    def looks_out(spec: Spec, family: str, *, questions: object = None) -> bool:
        closed = spec.of("product.closed")
        return closed is None or closed.value is not True

    monkeypatch.setattr(sizing, "looks_out", looks_out)
    waits = {"side_grip": {"verdict": "depends", "depends_on": ("product.closed", "handling.squeeze_limit")}}
    found = wanted(waits, best="side_grip", samples=samples(space__length=[1] * 128), decided=False)
    assert found.is_stuck
    matters = found.bringing_back(("product.closed", "handling.squeeze_limit", "cleaning.method"))
    assert {matter.field: matter.tells for matter in matters} == {"product.closed": 1.0, "handling.squeeze_limit": 0.5}


def test_a_leader_that_leads_in_most_samples_is_not_stuck(wanted: Callable[..., Wanted]) -> None:
    assert not wanted(samples=samples(space__length=[1] * 128), decided=False).is_stuck


def test_when_nothing_stands_nothing_is_wanted(wanted: Callable[..., Wanted]) -> None:
    from intake.sizing.result import FAMILIES

    everywhere = {name: {"verdict": "out"} for name in FAMILIES}
    assert purposes(wanted(everywhere, needs=("site.voltage",), best=None), "site.voltage") == {}
