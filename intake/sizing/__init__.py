"""The sizing core: physics, families, verdicts, ranking. A library of its own: no screen, no files but its data."""

from intake.sizing.range_checks import range_problems
from intake.sizing.range_data import RangeError, load_range
from intake.sizing.result import (
    FAMILIES,
    Assumption,
    Check,
    Conflict,
    Derived,
    FamilyResult,
    Figure,
    FollowUp,
    Result,
    Verdict,
)
from intake.sizing.size import fields_read, size, verdicts

__all__ = [
    "FAMILIES",
    "Assumption",
    "Check",
    "Conflict",
    "Derived",
    "FamilyResult",
    "Figure",
    "FollowUp",
    "RangeError",
    "Result",
    "Verdict",
    "fields_read",
    "load_range",
    "range_problems",
    "size",
    "verdicts",
]
