"""The page of advice: the recommendation, how settled it is, how high and fast, the room, tests, what to find out."""

from collections.abc import Callable

from intake.advice import (
    Answer,
    Brief,
    delivery,
    how_fast,
    how_high,
    recommendation,
    settled,
    shipping,
    to_find_out,
    trials,
    way_in,
)
from intake.desk.sketch import sketch_lines
from intake.desk.work import Work

_PARTS: tuple[tuple[str, Callable[[Brief], Answer]], ...] = (
    ("HOW SETTLED", settled),
    ("HOW HIGH", how_high),
    ("HOW FAST", how_fast),
    ("THE ROOM", way_in),
    ("THE ROAD", shipping),
    ("DELIVERY", delivery),
    ("TESTS AND SAMPLES", trials),
)
"""What is said below the recommendation while a machine leads, in this order."""


_SKETCH = (76, 22)
"""Columns and rows: it has to stand whole on the narrowest screen."""


def advice_page(work: Work) -> str:
    """All of it as text that can be selected and sent. Sizes anew, so it belongs off the screen's own thread."""
    brief = work.brief
    lines = ["RECOMMENDATION", *recommendation(brief.result, brief.spec, brief.system, brief.sentences)]
    lines += ["", "SKETCH", *sketch_lines(brief, *_SKETCH)] if brief.best is not None else []
    for head, answer in _PARTS if brief.best is not None else ():
        lines += ["", head, *answer(brief).lines]
    return "\n".join([*lines, "", "TO FIND OUT", *to_find_out(brief, work.talk.case).lines])
