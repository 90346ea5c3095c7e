"""The sizing core: physics, families, verdicts, ranking. A library of its own: no screen, no files but its data."""

from intake.sizing.fields_read import fields_read
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
from intake.sizing.reverse.largest import Largest, largest_rate, largest_rise
from intake.sizing.reverse.smallest_change import Change, smallest_changes
from intake.sizing.size import looks_out, size, verdicts
from intake.sizing.would_change import Turn, would_change

__all__ = [
    "FAMILIES",
    "Assumption",
    "Change",
    "Check",
    "Conflict",
    "Derived",
    "FamilyResult",
    "Figure",
    "FollowUp",
    "Largest",
    "RangeError",
    "Result",
    "Turn",
    "Verdict",
    "fields_read",
    "largest_rate",
    "largest_rise",
    "load_range",
    "looks_out",
    "range_problems",
    "size",
    "smallest_changes",
    "verdicts",
    "would_change",
]
