"""Whatever a spec may legally hold, sizing answers: plain figures, in the same bytes, and no error but SpecError."""

import json
from random import Random
from typing import Any

from hypothesis import strategies as st

from intake.sizing import size
from intake.spec.flat import SpecError

Json = dict[str, Any]


def test_no_result_holds_nan_or_infinity_and_nothing_but_a_spec_error_is_raised(jobs: Any, for_all: Any) -> None:
    def law(spec: Json) -> None:
        try:
            result = size(spec)
        except SpecError:
            return
        assert json.dumps(result.to_json(), allow_nan=False)

    for_all(law, jobs.wild, tries=60)


def test_each_extreme_figure_alone_is_answered_or_refused_with_its_field_named(jobs: Any) -> None:
    everyday = {
        "product.type": "case", "product.length": 0.4, "product.width": 0.3, "product.height": 0.3,
        "product.weight": 8.0, "rate.normal": 20.0, "rise.height": 3.0, "rise.direction": "up",
    }  # fmt: skip
    for field in jobs.figures:
        for figure in (0.0, 1e4):
            refused = None
            try:
                json.dumps(size({**everyday, field: figure}).to_json(), allow_nan=False)
            except SpecError as error:
                refused = error.field
            assert refused in (None, field)


def test_the_same_facts_in_any_order_give_the_same_bytes(jobs: Any, for_all: Any) -> None:
    def law(spec: Json, seed: int) -> None:
        names = list(spec)
        Random(seed).shuffle(names)
        try:
            straight = json.dumps(size(spec).to_json())
        except SpecError:
            return
        assert json.dumps(size({name: spec[name] for name in names}).to_json()) == straight

    for_all(law, jobs.wild, st.integers(0, 2**32), tries=18)
