"""The record of a result: values follow from their formulas, figures stand within their range, blanks say why."""

import math
from collections import Counter
from typing import Any

import pytest

from intake.sizing import size

NEAR = 1e-6
FUNCTIONS = {n: getattr(math, n) for n in ("sqrt", "sin", "cos", "tan", "asin", "acos", "atan", "exp", "pi")}
FUNCTIONS |= {"abs": abs, "min": min, "max": max}
Json = dict[str, Any]


def test_each_value_follows_from_its_formula_and_inputs_even_in_wild_jobs(jobs: Any, for_all: Any) -> None:
    count: Counter[str] = Counter()

    def law(spec: Json) -> None:
        for name, family in size(spec).to_json()["families"].items():
            for check in family["checks"]:
                value = recomputed(check)
                if value is not None:
                    count["value"] += 1
                    assert value == pytest.approx(check["value"], rel=NEAR, abs=1e-9), (name, check["id"])

    for_all(law, jobs.wild, tries=20)
    assert count["value"] > 1000


def recomputed(check: Json) -> float | None:
    """The value of a check by its formula, None where it has none or an input is not known."""
    inputs = {symbol: use["value"] for symbol, use in check["uses"].items()}
    if not check["formula"] or check["value"] is None or None in inputs.values():
        return None
    try:  # our own formulas out of our own code, with no names but those of mathematics
        return float(eval(check["formula"].replace("^", "**"), {"__builtins__": {}}, {**FUNCTIONS, **inputs}))
    except OverflowError:
        return math.inf


def test_values_stand_within_their_own_range_and_blanks_say_what_they_need(jobs: Any, for_all: Any) -> None:
    def law(spec: Json) -> None:
        for name, family in size(spec).to_json()["families"].items():
            for key, figure in family["figures"].items():
                if "low" in figure:
                    assert figure["low"] <= figure["value"] <= figure["high"], (name, key, figure)
                if figure["value"] is None and family["verdict"] != "out":
                    assert figure["needs"], (name, key)

    for_all(law, jobs.wild, tries=20)
