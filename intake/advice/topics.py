"""Answers that are worked out from a case, by the name under which a card speaks of them."""

from collections.abc import Callable

from intake.advice.brief import Answer, Brief
from intake.advice.delivery import delivery
from intake.advice.largest import how_fast, how_high
from intake.advice.room import shipping, way_in
from intake.advice.still import to_find_out
from intake.advice.trials import trials

NAMES = ("how_high", "how_fast", "way_in", "shipping", "delivery", "tests", "to_find_out")
"""What a card may name as {topic.NAME}."""

TOPICS: dict[str, Callable[[Brief], Answer]] = {
    "how_high": how_high,
    "how_fast": how_fast,
    "way_in": way_in,
    "shipping": shipping,
    "delivery": delivery,
    "tests": trials,
    "to_find_out": to_find_out,
}
"""By name. A name that is missing here has no lines, and a card then says its next template."""
