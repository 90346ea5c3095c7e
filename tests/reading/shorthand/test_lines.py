"""Lines of shorthand in the manner of several people, labelled by hand before anything read them.

`aside.txt` was written with `open.txt` and scored once, when all was done; nobody tunes by it. The floors lie a little
below what was measured.
"""

import pytest
from shorthand_lines import lines, tally


@pytest.mark.parametrize(("name", "precision", "recall"), [("open", 0.97, 0.97), ("aside", 0.9, 0.9)])
def test_lines_are_read_as_a_careful_colleague_reads_them(name: str, precision: float, recall: float) -> None:
    total = tally(name)
    assert total.right >= precision * total.said, total
    assert total.right >= recall * total.wanted, total


def test_a_third_of_at_least_120_lines_is_kept_aside() -> None:
    kept, shown = len(list(lines("aside"))), len(list(lines("open")))
    assert kept + shown >= 120
    assert kept >= (kept + shown) // 3
