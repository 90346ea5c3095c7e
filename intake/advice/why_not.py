"""Why a machine is not the one: its failing checks with their figures, or what it waits for, or who comes before it."""

from intake.advice.brief import Answer, Brief
from intake.advice.families import why_not


def why_not_this(brief: Brief, family: str) -> Answer:
    """The reasons, the weightiest first. Raises KeyError for a family that there is not."""
    found = brief.result.families[family]
    lines = why_not(brief.result, family, brief.system, brief.sentences)
    data = {"family": family, "verdict": found.verdict, "failed": [check.to_json() for check in found.failed]}
    return Answer(topic="why_not", lines=tuple(lines), data=data)
