"""Facts that need no asking once something else is known."""

from typing import Any

import pytest

from intake.interview.needless import why_needless
from intake.spec.flat import Spec
from intake.spec.folder import questions_folder


@pytest.mark.parametrize(
    ("field", "flat"),
    [
        ("product.diameter", {"product.length": 0.4, "product.width": 0.3}),
        ("product.mix", {"product.sizes": 1}),
        ("handling.squeeze_limit", {"handling.squeeze": False}),
        ("cleaning.pressure", {"cleaning.method": "dry"}),
        ("rate.pieces", {"rate.peak": 40}),
        ("rise.height", {"rise.infeed_height": 0.8, "rise.discharge_height": 3.6}),
        ("temperature.zone", {"temperature.room": 20}),
    ],
)
def test_a_fact_is_needless_once_others_make_it_so(field: str, flat: dict[str, Any]) -> None:
    folder = questions_folder()
    assert why_needless(field, Spec.from_flat({}), folder) is None
    assert why_needless(field, Spec.from_flat(flat), folder) is not None


def test_several_sizes_make_their_mix_worth_asking() -> None:
    assert why_needless("product.mix", Spec.from_flat({"product.sizes": 3}), questions_folder()) is None


def test_pieces_are_asked_for_only_where_the_rate_counts_pieces() -> None:
    folder = questions_folder()
    assert why_needless("product.pieces", Spec.from_flat({}), folder)
    assert why_needless("product.pieces", Spec.from_flat({"rate.pieces": 240}), folder) is None
