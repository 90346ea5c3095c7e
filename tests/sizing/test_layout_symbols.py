"""Every input of every formula says where it is from: a field, an assumption, a limit, or how the layout gives it."""

from collections.abc import Callable
from random import Random
from typing import Any

from intake.sizing import size
from intake.spec.vocabulary import vocabulary


def test_no_input_of_a_formula_comes_from_nowhere(
    whole: Callable[[Random], dict[str, Any]], part: Callable[..., dict[str, Any]]
) -> None:
    rng = Random(11)
    looked = 0
    for _ in range(25):
        spec = whole(rng)
        for one in (spec, part(spec, rng, 0.7)):
            result = size(one)
            assumed = {assumption.id for assumption in result.assumptions}
            for found in result.families.values():
                for check in found.checks:
                    for symbol, use in (*check.uses.items(), *check.limit_uses.items()):
                        looked += 1
                        said = use.origin
                        named = said.partition("@")[0] in vocabulary() or said in assumed
                        named = named or said.startswith(("range ", "layout: ", "standard gravity"))
                        assert named, (found.family, check.id, symbol, said)
    assert looked > 5000


def test_limits_of_the_range_come_with_their_unit_in_si(case_up: dict[str, Any]) -> None:
    shown = {"weight": "kg", "temperature": "K", "rate": "m/s", "slope": "rad", "rise": "m"}
    for id, unit in shown.items():
        check = size(case_up).families["spiral"].check(id)
        assert check is not None
        assert next(iter(check.limit_uses.values())).unit == unit
