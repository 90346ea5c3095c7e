"""What a sizing gives back: verdicts, checks, figures, assumptions. Figures only, no layout of screens."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Literal

from intake.sizing.deferred import DeferredRow
from intake.sizing.samples import Samples

Verdict = Literal["fits", "depends", "out"]
Sense = Literal["at_most", "at_least", "must_be"]
Plain = float | str | bool | None

FAMILIES = (
    "spiral",
    "washdown_spiral",
    "side_grip",
    "incline",
    "cover_belt",
    "index_lift",
    "continuous_lift",
    "reciprocating_lift",
    "cleated_incline",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """One input of a formula: its value in SI and radians, and where it comes from."""

    value: Plain
    unit: str
    origin: str

    def to_json(self) -> dict[str, Any]:
        """The shape promised to scripts."""
        return {"value": self.value, "unit": self.unit, "from": self.origin}


@dataclass(frozen=True, slots=True, kw_only=True)
class Check:
    """One figure held against one limit, at the design point.

    `passes`: True holds for every plausible value of what is open, False fails for every possible one, None
    cannot be told yet. Words stand in value and limit of a gate (unit "", no margin).
    `size`: the product size that hurts, where there are several.
    """

    id: str
    sense: Sense
    value: Plain
    limit: Plain
    unit: str
    passes: bool | None
    formula: str = ""
    uses: Mapping[str, Use] = field(default_factory=dict)
    limit_formula: str = ""
    limit_uses: Mapping[str, Use] = field(default_factory=dict)
    assumes: tuple[str, ...] = ()
    depends_on: tuple[str, ...] = ()
    source: str = ""
    size: int | None = None
    likely_fails: bool = False
    warns: bool = False

    @property
    def margin(self) -> float | None:
        """Room left as a share of the limit: 0.2 is 20 % to spare, below 0 fails. None where there is no share."""
        if isinstance(self.value, bool | str) or isinstance(self.limit, bool | str):
            return None
        if self.value is None or self.limit is None or self.limit <= 0.0:
            return None
        share = (self.limit - self.value) / self.limit
        return share if self.sense == "at_most" else -share

    @property
    def shows_room(self) -> bool:
        """True where the margin says something to people: kelvins and counts do not."""
        return self.margin is not None and not self.warns and self.unit != "K" and self.id != "levels"

    @property
    def fails_at_design(self) -> bool:
        """True when the value at the design point does not keep its limit."""
        value, limit = self.value, self.limit
        if not isinstance(value, float | int) or not isinstance(limit, float | int) or self.sense == "must_be":
            return False
        slack = 1e-9 * abs(limit)
        return value > limit + slack if self.sense == "at_most" else value < limit - slack

    def to_json(self) -> dict[str, Any]:
        """The shape promised to scripts."""
        out: dict[str, Any] = {
            "id": self.id,
            "sense": self.sense,
            "value": self.value,
            "limit": self.limit,
            "unit": self.unit,
            "margin": self.margin,
            "passes": self.passes,
            "formula": self.formula,
            "uses": {name: use.to_json() for name, use in self.uses.items()},
            "limit_formula": self.limit_formula,
            "limit_uses": {name: use.to_json() for name, use in self.limit_uses.items()},
            "assumes": list(self.assumes),
            "source": self.source,
        }
        if self.size is not None:
            out["size"] = self.size
        return out


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """One reported figure in the unit of `figures.toml`. value None: cannot be known yet, `needs` says why."""

    value: float | None
    unit: str
    low: float | None = None
    high: float | None = None
    needs: tuple[str, ...] = ()
    direction: str | None = None

    def to_json(self) -> dict[str, Any]:
        """The shape promised to scripts."""
        out: dict[str, Any] = {"value": self.value, "unit": self.unit}
        if self.low is not None and self.high is not None:
            out |= {"low": self.low, "high": self.high}
        if self.needs:
            out["needs"] = list(self.needs)
        if self.direction is not None:
            out["direction"] = self.direction
        return out


@dataclass(frozen=True, slots=True, kw_only=True)
class FamilyResult:
    """One family's verdict with all that stands behind it.

    `stopped`: how many layouts each check stopped, until one passed or none was left, `searched` the same in a
    sentence. `turned`: the layout shown has the other side of the product leading. `fed`: which side has to lead for it
    to stand, in a sentence; "" where it stands as described, or not at all. `fails`: the ids of `failed`, known before
    any check is written down. `shape`: the lengths that a drawing of the layout needs, see `shape.py`; not in the JSON.
    """

    family: str
    verdict: Verdict
    likely_out: bool
    because: Sequence[str]
    depends_on: tuple[str, ...]
    score: float
    variant: str | None
    checks: Sequence[Check]
    figures: Mapping[str, Figure]
    reasons: Mapping[str, float] = field(default_factory=dict)
    stopped: Mapping[str, int] = field(default_factory=dict)
    turned: bool = False
    fed: str = ""
    searched: str = ""
    fails: tuple[str, ...] = ()
    shape: Mapping[str, float] = field(default_factory=dict, compare=False, repr=False)

    @property
    def failed(self) -> tuple[Check, ...]:
        """The checks that fail even in the best possible case."""
        return tuple(check for check in self.checks if check.passes is False and not check.warns)

    def check(self, id: str) -> Check | None:
        """The check of that id, None where the family has no such matter."""
        if isinstance(self.checks, DeferredRow):
            return self.checks.named(id)
        return next((check for check in self.checks if check.id == id), None)

    @property
    def tightest(self) -> Check | None:
        """The check with the least margin, None where no check has one."""
        with_margin = [check for check in self.checks if check.shows_room]
        return min(with_margin, key=lambda check: check.margin or 0.0, default=None)

    def to_json(self) -> dict[str, Any]:
        """The shape promised to scripts."""
        return {
            "verdict": self.verdict,
            "likely_out": self.likely_out,
            "because": list(self.because),
            "depends_on": list(self.depends_on),
            "score": self.score,
            "variant": self.variant,
            "reasons": dict(self.reasons),
            "layouts_stopped_by": dict(self.stopped),
            "fed_other_side_first": self.turned,
            "checks": [check.to_json() for check in self.checks],
            "figures": {name: figure.to_json() for name, figure in self.figures.items()},
        }


@dataclass(frozen=True, slots=True, kw_only=True)
class FollowUp:
    """One thing to find out: a field to ask or a test to make, and how often it would change the best family."""

    field: str | None
    test: str | None
    why: str
    changes_best: float | None = None

    def to_json(self) -> dict[str, Any]:
        """The shape promised to scripts."""
        return {"field": self.field, "test": self.test, "why": self.why, "changes_best": self.changes_best}


@dataclass(frozen=True, slots=True, kw_only=True)
class Assumption:
    """What stands in for a fact that nobody gave. Numbers: low, typical, high are the plausible range."""

    id: str
    about: tuple[str, ...]
    test: str | None
    low: float | None
    typical: Plain
    high: float | None
    unit: str
    values: tuple[str | bool, ...] | None
    basis: str

    def to_json(self) -> dict[str, Any]:
        """The shape promised to scripts."""
        return {
            "id": self.id,
            "about": list(self.about),
            "test": self.test,
            "low": self.low,
            "typical": self.typical,
            "high": self.high,
            "unit": self.unit,
            "values": None if self.values is None else list(self.values),
            "basis": self.basis,
        }


@dataclass(frozen=True, slots=True, kw_only=True)
class Derived:
    """A value worked out from facts, never itself a fact."""

    field: str
    value: Plain
    unit: str
    of: tuple[str, ...]
    high: float | None = None

    def to_json(self) -> dict[str, Any]:
        """The shape promised to scripts."""
        out = {"field": self.field, "value": self.value, "unit": self.unit, "from": list(self.of)}
        return out | ({"high": self.high} if self.high is not None else {})


@dataclass(frozen=True, slots=True, kw_only=True)
class Conflict:
    """Facts that cannot all hold, and which value sizing went on with."""

    fields: tuple[str, ...]
    why: str
    taken: Any

    def to_json(self) -> dict[str, Any]:
        """The shape promised to scripts."""
        return {"fields": list(self.fields), "why": self.why, "taken": self.taken}


@dataclass(frozen=True, slots=True, kw_only=True)
class Result:
    """The whole sizing of one spec."""

    best: str | None
    second: str | None
    refer_out: str | None
    direction: str | None
    families: Mapping[str, FamilyResult]
    flags: tuple[str, ...]
    follow_ups: tuple[FollowUp, ...]
    assumptions: tuple[Assumption, ...]
    derived: tuple[Derived, ...]
    conflicts: tuple[Conflict, ...]
    cautions: tuple[str, ...]
    decided: bool | None
    share: float | None
    data: Mapping[str, str]
    why_best: str = ""
    samples: Samples | None = field(default=None, compare=False, repr=False)
    """The completions behind `decided` and `share`; they stay out of the JSON."""

    @property
    def standing(self) -> tuple[str, ...]:
        """The families that are not out, best score first."""
        left = [f for f in self.families.values() if f.verdict != "out"]
        return tuple(f.family for f in sorted(left, key=lambda f: (-f.score, FAMILIES.index(f.family))))

    def to_json(self) -> dict[str, Any]:
        """The shape promised to scripts (an `id` is put in front by the command that has one)."""
        return {
            "best": self.best,
            "second": self.second,
            "why_best": self.why_best,
            "refer_out": self.refer_out,
            "direction": self.direction,
            "families": {name: found.to_json() for name, found in self.families.items()},
            "flags": list(self.flags),
            "follow_ups": [follow.to_json() for follow in self.follow_ups],
            "assumptions": [assumption.to_json() for assumption in self.assumptions],
            "derived": [derived.to_json() for derived in self.derived],
            "conflicts": [conflict.to_json() for conflict in self.conflicts],
            "cautions": list(self.cautions),
            "decided": self.decided,
            "share": self.share,
            "data": dict(self.data),
        }
