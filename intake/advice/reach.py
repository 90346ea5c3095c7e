"""How high and how fast every family that stands could go, and what would let the others stand."""

from collections.abc import Iterator, Mapping
from typing import Any

from intake.advice.brief import Answer, Brief
from intake.advice.largest import how_fast, how_high
from intake.advice.would_fit import would_fit

Reach = Mapping[str, Mapping[str, Answer]]
"""By family, then by "rise" and "rate" for one that stands, "changes" for one that is out."""


def reach(brief: Brief) -> Reach:
    """The answers for every family, each worked out by sizing anew: seconds, not milliseconds."""
    found: dict[str, Mapping[str, Answer]] = {}
    for name, family in brief.result.families.items():
        if family.verdict == "out":
            found[name] = {"changes": would_fit(brief, name)}
        else:
            found[name] = {"rise": how_high(brief, name), "rate": how_fast(brief, name)}
    return found


def reach_json(found: Reach) -> dict[str, Any]:
    """The same as JSON takes it."""
    return {
        name: {key: answer.data["changes"] if key == "changes" else dict(answer.data) for key, answer in parts.items()}
        for name, parts in found.items()
    }


def reach_lines(found: Reach) -> Iterator[str]:
    """One line for each family and question."""
    for parts in found.values():
        yield from (answer.lines[0] for answer in parts.values())
