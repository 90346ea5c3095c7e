"""Lines of shorthand in the manner of several people, labelled by hand before anything read them.

`aside.txt` was written with `open.txt` and scored once, when all was done; nobody tunes by it. The floors lie a little
below what was measured.
"""

import pytest
from shorthand_lines import lines, tally


@pytest.mark.parametrize(("name", "precision", "recall"), [("open", 0.97, 0.97), ("aside", 0.97, 0.93)])
def test_lines_are_read_as_a_careful_colleague_reads_them(name: str, precision: float, recall: float) -> None:
    total = tally(name)
    assert total.right >= precision * total.said, total
    assert total.right >= recall * total.wanted, total


def test_half_as_many_lines_as_are_open_are_kept_aside() -> None:
    shown = list(lines("open"))
    written_later = 13  # under the last heading of open.txt
    assert len(list(lines("aside"))) >= (len(shown) - written_later) / 2
    assert len(shown) >= 100
