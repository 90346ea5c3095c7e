"""A fact: what somebody said about the need, in which words, and how sure they were."""

from dataclasses import dataclass
from math import ceil, floor
from typing import Any, Literal

from intake.spec.flat import Value
from intake.spec.vocabulary import field as field_of

Who = Literal["visitor", "staff", "works"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """One field's value with its origin.

    Numbers: `low`, `high` in the field's canonical unit, None for an open end. Choices, yes/no and text: `value`.
    `said` are the words, `span` their half-open place in code points of message number `message` (None: not from a
    message). `size` counts product sizes from 1.
    """

    field: str
    low: float | None = None
    high: float | None = None
    value: str | bool | None = None
    approx: bool = False
    hedged: bool = False
    spread: bool = False
    said: str = ""
    span: tuple[int, int] | None = None
    size: int = 1
    who: Who = "visitor"
    at: str = ""
    message: int | None = None

    @property
    def unit(self) -> str:
        """Canonical unit of the field, "" where it has none."""
        return field_of(self.field).unit

    @property
    def is_number(self) -> bool:
        """True where low and high speak, not `value`."""
        return self.value is None

    def same_as(self, other: "Fact") -> bool:
        """True when both say the same of the same thing, whatever the words."""
        mine = (self.field, self.size, self.low, self.high, self.value, self.approx, self.spread)
        return mine == (other.field, other.size, other.low, other.high, other.value, other.approx, other.spread)

    def as_value(self, approx_share: float = 0.0) -> Value:
        """The fact as sizing sees it. An approximate single figure becomes a range of doubt around it."""
        if not self.is_number:
            return Value(value=self.value, hedged=self.hedged)
        low, high, spread = self.low, self.high, self.spread
        if self.approx:
            spread = False
            if low is not None and low == high:
                reach = abs(low) * approx_share
                low, high = low - reach, low + reach
                if field_of(self.field).kind == "count":
                    low, high = float(floor(low)), float(ceil(high))
        two_ends = low is not None and high is not None and low != high
        return Value(low=low, high=high, spread=spread and two_ends, hedged=self.hedged)

    def to_json(self) -> dict[str, Any]:
        """The shape promised to scripts."""
        out: dict[str, Any] = {"field": self.field}
        if self.is_number:
            out |= {"low": self.low, "high": self.high, "approx": self.approx, "unit": self.unit}
            out |= {"spread": True} if self.spread else {}
        else:
            out["value"] = self.value
        out |= {"hedged": True} if self.hedged else {}
        out |= {"said": self.said, "span": list(self.span) if self.span else None, "size": self.size}
        return out


@dataclass(frozen=True, slots=True, kw_only=True)
class Doubt:
    """A reading that needs a question back; never silently taken."""

    field: str
    said: str
    why: str
    ask: str
    span: tuple[int, int] | None = None
    options: tuple[Fact, ...] = ()
    """What the words may mean, when there are ready readings to choose from."""

    def to_json(self) -> dict[str, Any]:
        """The shape promised to scripts."""
        return {"field": self.field, "said": self.said, "why": self.why, "ask": self.ask}


@dataclass(frozen=True, slots=True, kw_only=True)
class Heard:
    """What one message gave: facts, doubts, and pieces with a figure or a known word that no fact used."""

    facts: tuple[Fact, ...] = ()
    doubts: tuple[Doubt, ...] = ()
    unread: tuple[str, ...] = ()
    corrects: bool = False
    """The message takes back something said in it or before: "sorry", "I meant"."""

    def to_json(self) -> dict[str, Any]:
        """The shape promised to scripts."""
        return {
            "facts": [fact.to_json() for fact in self.facts],
            "doubts": [doubt.to_json() for doubt in self.doubts],
            "unread": list(self.unread),
        }
