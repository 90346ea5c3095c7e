"""What stands in for facts that nobody gave: rules from data, looked up for a spec; and known values as corners."""

from typing import Any

from intake.sizing.contradictions import find_contradictions
from intake.sizing.derive import Found, derive
from intake.sizing.range_data import AssumptionRule, RangeData
from intake.sizing.result import Assumption
from intake.sizing.unknowns import Choice, Var, combine, doubt, exact, spread
from intake.spec.flat import Spec, Value
from intake.spec.vocabulary import vocabulary

SMALLEST, LARGEST = 1e-3, 1e4


class Assuming:
    """A spec with its derived values, and the rules that fill its holes. Collects the assumptions made on the way."""

    def __init__(self, spec: Spec, data: RangeData) -> None:
        self.data = data
        self.found: Found = derive(spec, data)
        find_contradictions(self.found, data)
        self.spec = self.found.spec
        self.choices: dict[str, Choice] = {}
        self.assumptions: dict[str, Assumption] = {}

    def _figure(
        self, field: str, size: int = 1, *, factor: float = 1.0, offset: float = 0.0, prior: str = "",
        prior_of: Var | None = None, prior_range: tuple[float, float] | None = None, asks: tuple[str, ...] = (),
        when_wide: bool = False,
    ) -> Var:  # fmt: skip
        known = self.spec.of(field, size)
        if known is not None:
            own = (field, size) in self.spec
            return from_value(known, field if own or size == 1 else f"{field}@1", factor, offset)
        rule = self._rule_for(field=field)
        if rule is not None:
            return self._assumed(rule, field, factor, offset, when_wide)
        low, high = prior_range or self._prior(prior, prior_of)
        return doubt(
            (SMALLEST, LARGEST), None, (low + high) / 2, field, likely=(low, high), asks=asks or (field,)
        )  # fmt: skip

    def _assumed(self, rule: AssumptionRule, field: str, factor: float, offset: float, wide: bool) -> Var:
        self._note(rule, field, low=rule.low, typical=rule.typical, high=rule.high)
        possible = (-100.0, 200.0) if wide else rule.possible
        low, high = possible[0] * factor + offset, possible[1] * factor + offset
        plausible = (rule.low * factor + offset, rule.high * factor + offset)
        typical = rule.typical * factor + offset
        return doubt((low, high), plausible, typical, rule.id, asks=(field,), assumption=rule.id)

    def _prior(self, name: str, of: Var | None) -> tuple[float, float]:
        kind = self.spec.word("product.type") or "any"
        prior = self.data.priors[kind]
        if name == "mass":
            (l0, l1), (w0, w1), (h0, h1), (d0, d1) = (prior[k] for k in ("length", "width", "height", "density"))
            low, high = d0 * l0**3 * w0 * h0, d1 * l1**3 * w1 * h1
            return min(low, high), (low * high) ** 0.5 * 2
        low, high = prior[name]
        if of is not None:
            return low * of.typical, high * of.typical
        return low, high

    def _share(self, field: str, size: int, whole: Var) -> Var:
        """A figure that is a share of another unless said: base of length, centre of height of the height."""
        known = self.spec.of(field, size)
        if known is not None:
            return from_value(known, field)
        rule = self._rule_for(field=field)
        if rule is None:
            return whole
        if whole.missing:  # a share of what nobody knows yet
            self._note(rule, field)
        else:
            self._note(
                rule,
                field,
                low=rule.low * whole.lo[2],
                typical=rule.typical * whole.typical,
                high=rule.high * whole.hi[2],
            )
        share_hi = (rule.possible[0], rule.low, rule.typical, rule.high)
        share_lo = (rule.possible[1], rule.high, rule.typical, rule.low)
        return Var(
            hi=tuple(s * x for s, x in zip(share_hi, whole.hi, strict=True)),  # type: ignore[arg-type]  # four modes
            lo=tuple(s * x for s, x in zip(share_lo, whole.lo, strict=True)),  # type: ignore[arg-type]  # four modes
            origin=rule.id,
            asks=(rule.test or field, *whole.asks),
            assumption=rule.id,
            missing=whole.missing,
        )

    def _rule_for(self, *, field: str | None = None, friction: str | None = None) -> AssumptionRule | None:
        for rule in self.data.rules:
            if (
                rule.field == field
                and rule.friction == friction
                and all(self._holds(k, v) for k, v in rule.when.items())
            ):
                return rule
        return None

    def _holds(self, field: str, words: tuple[str | bool, ...]) -> bool:
        """True when the field is surely one of the words, as far as plausible."""
        known = self.spec.of(field)
        if known is not None:
            return known.value in words
        rule = self._rule_for(field=field)
        return rule is not None and rule.values is not None and all(word in words for word in rule.values)

    def _note(
        self, rule: AssumptionRule, about: str, *, low: float | None = None, typical: Any = None,
        high: float | None = None, values: tuple[Any, ...] | None = None, unit: str | None = None,
    ) -> None:  # fmt: skip
        if rule.id in self.assumptions:  # a field without a number speaks of the first size
            return
        self.assumptions[rule.id] = Assumption(
            id=rule.id,
            about=(about,),
            test=rule.test,
            low=low,
            typical=values[0] if values is not None else typical,
            high=high,
            unit=vocabulary()[about].unit if unit is None else unit,
            values=values,
            basis=rule.basis,
        )


def from_value(
    known: Value, origin: str, factor: float = 1.0, offset: float = 0.0, *, high_is_typical: bool = False
) -> Var:
    """A known value of a spec in SI: settled, spread, or a doubt with perhaps an open end."""
    scale = factor if factor else 1.0
    low, high = known.low, known.high
    if low is None or high is None:
        said = (low if low is not None else high or 0.0) * scale + offset
        possible = (min(SMALLEST, said), said) if low is None else (said, max(LARGEST, said))
        return doubt(possible, (said, said), said, origin, asks=(origin.partition("@")[0],))
    a, b = low * scale + offset, high * scale + offset
    if a == b:
        return exact(a, origin)
    if known.spread:
        return spread(a, b, origin)
    typical = b if high_is_typical or origin == "product.weight" else (a + b) / 2
    return doubt((a, b), (a, b), typical, origin, asks=(origin.partition("@")[0],))


def sum_of(a: Var, b: Var) -> Var:
    return combine((a, b), lambda k: a.hi[k] + b.hi[k], lambda k: a.lo[k] + b.lo[k], a.origin)


def heading(degrees: float) -> float:
    """A heading from 0 to below 360 degrees, to a tenth of a degree."""
    return round(degrees % 360.0, 1) % 360.0
