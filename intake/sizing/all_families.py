"""The nine families, in the order in which results name them."""

from collections.abc import Mapping
from types import MappingProxyType

from intake.sizing.families.cleated_incline import CLEATED_INCLINE
from intake.sizing.families.continuous_lift import CONTINUOUS_LIFT
from intake.sizing.families.cover_belt import COVER_BELT
from intake.sizing.families.helix import SPIRAL, WASHDOWN_SPIRAL
from intake.sizing.families.incline import INCLINE
from intake.sizing.families.index_lift import INDEX_LIFT
from intake.sizing.families.reciprocating_lift import RECIPROCATING_LIFT
from intake.sizing.families.side_grip import SIDE_GRIP
from intake.sizing.family import Family

ALL: Mapping[str, Family] = MappingProxyType(
    {
        family.name: family
        for family in (
            SPIRAL, WASHDOWN_SPIRAL, SIDE_GRIP, INCLINE, COVER_BELT, INDEX_LIFT, CONTINUOUS_LIFT, RECIPROCATING_LIFT,
            CLEATED_INCLINE,
        )
    }
)  # fmt: skip
