"""unit-parse (BSD-3-Clause), general-purpose."""

import logging
from collections.abc import Callable, Iterator
from typing import Any

from serving import serve


def load() -> Callable[[str], Any]:
    import unit_parse

    unit_parse.logger.setLevel(logging.CRITICAL)
    return unit_parse.parser


def convert(text: str, found: Any) -> list[dict[str, Any]]:
    from through_pint import in_our_kinds

    out = []
    for one in flat(found):
        ends = [float(end) for end in getattr(one.magnitude, "flat", [one.magnitude])]
        out += in_our_kinds(min(ends), max(ends), one.units)
    return out


def flat(found: Any) -> Iterator[Any]:
    """The quantities in nested lists of quantities, words and nothings."""
    if isinstance(found, list | tuple):
        for one in found:
            yield from flat(one)
    elif hasattr(found, "magnitude"):
        yield found


serve(load, convert)
