"""Random specs written down in shorthand read back, and nothing else with them."""

from math import isclose
from typing import Any

from hypothesis import HealthCheck, given, settings
from rendered import Piece, specs
from shorthand_lines import lines

from intake.interview.branch_file import read_branches
from intake.reading import read
from intake.spec.folder import shipped_folder
from intake.spec.vocabulary import vocabulary

_PLAIN = {"product.base", "product.base_width"}
"""Figures that the reader takes only where they are said of a base in full, in shorthand or not."""


def _facts(text: str) -> dict[str, Any]:
    heard = read(text, shorthand=True)
    return {
        fact.field if fact.size == 1 else f"{fact.field}@{fact.size}": fact.low if fact.is_number else fact.value
        for fact in heard.facts
    }


def _same(want: Any, got: Any) -> bool:
    return isclose(want, got, rel_tol=1e-9) if isinstance(want, float) and isinstance(got, float) else want == got


@settings(max_examples=150, derandomize=True, deadline=None, suppress_health_check=list(HealthCheck))
@given(specs())
def test_a_spec_in_shorthand_reads_back(piece: Piece) -> None:
    typed, want = piece
    got = _facts(typed)
    assert got.keys() == want.keys(), typed
    assert [name for name in want if not _same(want[name], got[name])] == [], typed


def test_every_field_that_a_caller_is_asked_about_is_read_from_a_labelled_line() -> None:
    branches, _ = read_branches(shipped_folder())
    asked = {name for branch in branches for question in branch.questions for name in question.fields}
    said = {name for line in lines("open") for name in line.facts}
    assert {name for name in asked - said - _PLAIN if vocabulary()[name].kind != "text"} == set()
