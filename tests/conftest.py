"""Small sizing results built by hand, for tests of what is said and asked about a result."""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from intake.sizing.result import FAMILIES, Check, FamilyResult, Result


@pytest.fixture
def sized() -> Callable[..., Result]:
    """Makes a result: every family fits but those given as keyword `families` (name -> FamilyResult parts)."""

    def make(families: dict[str, dict[str, Any]] | None = None, **parts: Any) -> Result:
        given = families or {}
        found = {name: replace(_fits(name), **given.get(name, {})) for name in FAMILIES}
        empty: dict[str, Any] = {
            "best": None,
            "second": None,
            "refer_out": None,
            "direction": None,
            "flags": (),
            "follow_ups": (),
            "assumptions": (),
            "derived": (),
            "conflicts": (),
            "cautions": (),
            "decided": None,
            "share": None,
            "data": {},
        }
        return Result(families=found, **(empty | parts))

    return make


@pytest.fixture
def fails() -> Callable[..., Check]:
    """Makes a check that fails even in the best case."""

    def make(id: str, value: Any, limit: Any, unit: str = "", sense: Any = "at_most") -> Check:
        return Check(id=id, sense=sense, value=value, limit=limit, unit=unit, passes=False)

    return make


def _fits(name: str) -> FamilyResult:
    return FamilyResult(
        family=name,
        verdict="fits",
        likely_out=False,
        because=(),
        depends_on=(),
        score=0.5,
        variant=None,
        checks=(),
        figures={},
    )
