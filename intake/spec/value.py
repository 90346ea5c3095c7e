"""What is known of one field, and the error for what cannot be taken."""

from dataclasses import dataclass
from typing import Any

from intake.spec.clean import one_line


class SpecError(ValueError):
    """One key of a spec that cannot be taken: which field, what is wrong, how to mend it. Safe to show as it is."""

    def __init__(self, field: str, what: str, mend: str) -> None:
        self.field, self.what, self.mend = one_line(field, 80), one_line(what), one_line(mend)
        super().__init__(f"{self.field}: {self.what}. {self.mend}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Value:
    """What is known of one field.

    Numbers have `low` and `high` in the canonical unit (None: that end is open); all else has `value`.
    `spread`: every value between the ends occurs. Otherwise one is true and we do not know which.
    """

    low: float | None = None
    high: float | None = None
    value: str | bool | None = None
    spread: bool = False
    hedged: bool = False

    @property
    def is_number(self) -> bool:
        """True where low and high speak, not `value`."""
        return self.value is None

    @property
    def single(self) -> float | None:
        """The number when both ends agree, else None."""
        return self.low if self.low is not None and self.low == self.high else None

    @property
    def largest(self) -> float | None:
        """The high end, or the low one where the high end is open."""
        return self.high if self.high is not None else self.low

    def to_json(self) -> Any:
        """The shortest form that a flat spec takes for it."""
        if not self.is_number:
            return {"value": self.value, "hedged": True} if self.hedged else self.value
        if self.single is not None:
            return {"low": self.low, "high": self.high, "hedged": True} if self.hedged else self.low
        return {"low": self.low, "high": self.high, "spread": self.spread} | ({"hedged": True} if self.hedged else {})
