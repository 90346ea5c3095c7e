"""Answers that are worked out from a case, by the name under which a card speaks of them."""

from collections.abc import Callable

from intake.advice.brief import Answer, Brief

NAMES = ("how_high", "how_fast", "way_in", "shipping", "delivery", "tests", "to_find_out")
"""What a card may name as {topic.NAME}."""

TOPICS: dict[str, Callable[[Brief], Answer]] = {}
"""By name. A name that is missing here has no lines, and a card then says its next template."""
