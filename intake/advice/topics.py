"""Answers that are worked out from a case, by the name under which a card speaks of them."""

from collections.abc import Callable
from dataclasses import replace

from intake.advice.brief import Answer, Brief
from intake.advice.delivery import delivery
from intake.advice.largest import how_fast, how_high
from intake.advice.room import shipping, way_in
from intake.advice.still import to_find_out
from intake.advice.trials import trials

NAMES = ("how_high", "how_fast", "way_in", "shipping", "delivery", "tests", "to_find_out")
"""What a card may name as {topic.NAME}."""

_MOST_LINES = 4
"""So many lines of an answer go into a card: the rest is told when asked for."""


def _in_short(answer: Callable[[Brief], Answer]) -> Callable[[Brief], Answer]:
    def short(brief: Brief) -> Answer:
        whole = answer(brief)
        return replace(whole, lines=whole.lines[:_MOST_LINES])

    return short


TOPICS: dict[str, Callable[[Brief], Answer]] = {
    "how_high": _in_short(how_high),
    "how_fast": _in_short(how_fast),
    "way_in": _in_short(way_in),
    "shipping": _in_short(shipping),
    "delivery": _in_short(delivery),
    "tests": _in_short(trials),
    "to_find_out": _in_short(to_find_out),
}
"""By name. An answer with nothing worked out has no value for a card, which then says its next template."""
