"""From a spec to the job: facts as they are, assumptions where nobody said anything, corners for what is open."""

from collections.abc import Mapping
from math import radians, tan
from typing import Any

from intake.sizing.derive import Found, derive
from intake.sizing.job import Job
from intake.sizing.range_data import AssumptionRule, RangeData
from intake.sizing.result import Assumption
from intake.sizing.unknowns import Choice, Var, combine, doubt, exact, spread
from intake.spec.flat import Spec, Value
from intake.spec.vocabulary import vocabulary

_G = 9.80665
_SMALLEST, _LARGEST = 1e-3, 1e4
_YES_NO = (True, False)

CHOICES: dict[str, tuple[str, tuple[Any, ...] | None]] = {
    "type": ("product.type", None),
    "fill": ("product.fill", None),
    "closed": ("product.closed", _YES_NO),
    "rigidity": ("product.rigidity", None),
    "surface": ("product.surface", None),
    "wet": ("product.wet", _YES_NO),
    "mix": ("product.mix", None),
    "backs_up": ("rate.backs_up", _YES_NO),
    "direction": ("rise.direction", None),
    "passage": ("space.passage", None),
    "squeeze": ("handling.squeeze", _YES_NO),
    "invert": ("handling.invert", _YES_NO),
    "fragile": ("handling.fragile", _YES_NO),
    "press_top": ("handling.press_top", _YES_NO),
    "zone": ("temperature.zone", None),
    "method": ("cleaning.method", None),
    "chemicals": ("cleaning.chemicals", None),
    "food": ("cleaning.exposed_food", _YES_NO),
    "hazard": ("site.hazardous_area", _YES_NO),
    "air": ("site.air", _YES_NO),
}
"""Words of the job: its name in checks, its field, and what it may be (None: the choices of the field)."""


class Resolver:
    """One spec being resolved. Collects the assumptions made on the way."""

    def __init__(self, spec: Spec, data: RangeData) -> None:
        self.data = data
        self.found: Found = derive(spec, data)
        self.spec = self.found.spec
        self.choices: dict[str, Choice] = {}
        self.assumptions: dict[str, Assumption] = {}

    def job(self) -> Job:
        """The whole job."""
        for name, (field, possible) in CHOICES.items():
            self.choices[name] = self._choice(field, possible or vocabulary()[field].choices)
        self.choices["turn"] = self._turn()
        common = self._common()
        sizes = tuple({**common, **self._size(size)} for size in self.spec.sizes)
        self._undescribed_sizes()
        return Job(
            spec=self.spec,
            data=self.data,
            sizes=sizes,
            choices=self.choices,
            assumptions=self.assumptions,
            derived=tuple(self.found.derived),
            conflicts=tuple(self.found.conflicts),
        )

    # ------------------------------------------------------------------ words

    def _choice(self, field: str, possible: tuple[Any, ...]) -> Choice:
        known = self.spec.of(field)
        if known is not None and known.value is not None:
            if known.hedged:
                return Choice(
                    possible=possible, plausible=(known.value,), typical=known.value, origin=field, asks=(field,)
                )
            return Choice(possible=(known.value,), plausible=(known.value,), typical=known.value, origin=field)
        rule = self._rule_for(field=field)
        if rule is None or rule.values is None:
            return Choice(possible=possible, plausible=None, typical=possible[0], origin=field, asks=(field,))
        self._note(rule, field, values=rule.values)
        return Choice(
            possible=possible,
            plausible=rule.values,
            typical=rule.values[0],
            origin=rule.id,
            asks=(field,),
            assumption=rule.id,
        )

    def _turn(self) -> Choice:
        known = self.spec.of("rise.turn")
        if known is not None and known.largest is not None:
            low = known.low if known.low is not None else known.largest
            ends = tuple(dict.fromkeys((_heading(low), _heading(known.largest))))
            return Choice(possible=ends, plausible=ends, typical=ends[-1], origin="rise.turn")
        rule = self._rule_for(field="rise.turn")
        values = rule.values if rule is not None and rule.values else (0.0,)
        if rule is not None:
            self._note(rule, "rise.turn", values=values)
        rule_id = rule.id if rule is not None else None
        return Choice(
            possible=values, plausible=values, typical=values[0], origin=rule_id or "rise.turn", asks=("rise.turn",),
            assumption=rule_id,
        )  # fmt: skip

    # ------------------------------------------------------------------ figures

    def _common(self) -> dict[str, Var]:
        rise = self._figure("rise.height", prior="rise", asks=("rise.height",))
        zlow, ztop = self._levels(rise)
        room = self._figure("temperature.room", offset=273.15, when_wide=self.choices["zone"].is_open)
        return {
            "R": self._rate(),
            "rise": rise,
            "zlow": zlow,
            "ztop": ztop,
            "lx": self._figure("space.length", prior_range=(2.0, 8.0)),
            "ly": self._figure("space.width", prior_range=(1.2, 4.0)),
            "ceil": self._ceiling(ztop),
            "ow": self._figure("space.opening_width"),
            "oh": self._figure("space.opening_height"),
            "troom": room,
            "tprod": self._figure("temperature.product", offset=273.15),
            "pwash": self._figure("cleaning.pressure"),
            "tilt": self._figure("handling.tilt", factor=radians(1.0)),
            "pair": self._figure("site.air_pressure"),
            "hours": self._figure("site.hours"),
            "weeks": self._figure("project.weeks"),
            "squeeze_limit": self._squeeze_limit(),
        }

    def _size(self, size: int) -> dict[str, Var]:
        is_round = size in self.found.round_sizes or (
            1 in self.found.round_sizes
            and (("product.length", size) not in self.spec and ("product.width", size) not in self.spec)
        )
        L = self._figure("product.length", size, prior="length")
        W = self._figure("product.width", size, prior="width", prior_of=L)
        H = self._figure("product.height", size, prior="height", prior_of=L)
        m = self._figure("product.weight", size, prior="mass")
        b, bw = self._share("product.base", size, L), self._share("product.base_width", size, W)
        h = self._share("product.centre_height", size, H)
        tip = self.spec.of("test.tip_angle", size)
        if tip is not None and tip.low is not None:
            angle = radians(tip.low)
            h = combine(
                (b,), lambda k: b.lo[k] / (2 * tan(angle)), lambda k: b.hi[k] / (2 * tan(angle)), "test.tip_angle"
            )
        is_round_flag = exact(1.0 if is_round else 0.0, "product.diameter")
        figures = {"L": L, "W": W, "H": H, "m": m, "b": b, "bw": bw, "h": h, "rnd": is_round_flag}
        figures["mu"] = self._friction("belt")
        figures["mu_high"] = self._friction("high_friction_belt")
        figures["mu_grip"] = self._grip_friction(m)
        return figures

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
            (_SMALLEST, _LARGEST), None, (low + high) / 2, field, likely=(low, high), asks=asks or (field,)
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
        if not whole.missing:
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

    def _rate(self) -> Var:
        peak, normal = self.spec.of("rate.peak"), self.spec.of("rate.normal")
        if peak is not None:
            return from_value(peak, "rate.peak", 1 / 60, high_is_typical=True)
        if normal is None:
            low, high = self._prior("rate", None)
            return doubt(
                (_SMALLEST, _LARGEST),
                None,
                (low + high) / 120,
                "rate.normal",
                likely=(low / 60, high / 60),
                asks=("rate.normal",),
            )
        own = from_value(normal, "rate.normal", 1 / 60, high_is_typical=True)
        rule = self._rule_for(field="rate.peak")
        if rule is None:
            return own
        low, high = own.hi[1], own.hi[3]
        self._note(
            rule,
            "rate.peak",
            low=rule.low * low * 60,
            typical=rule.typical * own.typical * 60,
            high=rule.high * high * 60,
        )
        return doubt(
            (own.hi[0] * rule.possible[0], own.lo[0] * rule.possible[1]),
            (low * rule.low, high * rule.high),
            own.typical,
            "rate.normal",
            asks=("rate.peak",),
            assumption=rule.id,
        )

    def _levels(self, rise: Var) -> tuple[Var, Var]:
        """Heights of the lower and the upper level."""
        infeed, discharge = self.spec.of("rise.infeed_height"), self.spec.of("rise.discharge_height")
        if infeed is not None and discharge is not None:
            a, b = from_value(infeed, "rise.infeed_height"), from_value(discharge, "rise.discharge_height")
            low, top = (a, b) if a.typical <= b.typical else (b, a)
            return low, top
        one = infeed if infeed is not None else discharge
        if one is None:
            rule = self._rule_for(field="rise.infeed_height")
            if rule is None:
                low = doubt(
                    (0.0, 30.0), None, 0.75, "rise.infeed_height", likely=(0.5, 1.0), asks=("rise.infeed_height",)
                )
            else:
                low = self._assumed(rule, "rise.infeed_height", 1.0, 0.0, False)
            return low, _sum(low, rise)
        field = "rise.infeed_height" if infeed is not None else "rise.discharge_height"
        level = from_value(one, field)
        below = (
            level.hi[0] - rise.lo[0], level.hi[1] - rise.lo[1], level.hi[2] - rise.hi[2], level.hi[3] - rise.lo[3]
        )  # fmt: skip
        lower = Var(hi=below, lo=below, origin=field, asks=rise.asks, missing=rise.missing)
        word = self.spec.word("rise.direction")
        if word is not None:
            is_low = (infeed is not None) == (word != "down")
            return (level, _sum(level, rise)) if is_low else (lower, level)
        upper = _sum(level, rise)  # the way is not known: the level said may be the lower or the upper one
        top = Var(
            hi=(level.hi[0], level.hi[1], upper.hi[2], upper.hi[3]),
            lo=(upper.lo[0], upper.lo[1], upper.lo[2], level.lo[3]),
            origin=field,
            asks=("rise.direction", *rise.asks),
            missing=rise.missing,
        )
        return level, top

    def _ceiling(self, ztop: Var) -> Var:
        if self.spec.knows("space.ceiling"):
            return self._figure("space.ceiling")
        low, high = self.data.prior_space["headroom"]
        top = ztop.typical
        return doubt(
            (_SMALLEST, _LARGEST), None, top + (low + high) / 2, "space.ceiling", likely=(top + low, top + high),
            asks=("space.ceiling",),
        )  # fmt: skip

    def _friction(self, on: str) -> Var:
        test = self.spec.of("test.slip_angle")
        if test is not None:
            angle = from_value(test, "test.slip_angle", radians(1.0))
            return combine((angle,), lambda k: tan(angle.hi[k]), lambda k: tan(angle.lo[k]), "test.slip_angle")
        rule = self._rule_for(friction=on)
        assert rule is not None  # proof sees to it that each friction has a last, unconditional rule
        about = "product.surface" if not self.spec.knows("product.surface") else rule.test or "product.surface"
        self._note(rule, "product.surface", low=rule.low, typical=rule.typical, high=rule.high, unit="1")
        asks = (
            (rule.test,)
            if about == rule.test and rule.test
            else ("product.surface", *((rule.test,) if rule.test else ()))
        )
        return doubt(rule.possible, (rule.low, rule.high), rule.typical, rule.id, asks=asks, assumption=rule.id)

    def _grip_friction(self, m: Var) -> Var:
        test = self.spec.of("test.grip_slip")
        if test is None:
            return self._friction("grip")
        force = from_value(test, "test.grip_slip")
        return combine(
            (force, m),
            lambda k: m.hi[k] * _G / (2 * max(force.lo[k], 1e-9)),
            lambda k: m.lo[k] * _G / (2 * max(force.hi[k], 1e-9)),
            "test.grip_slip",
        )

    def _squeeze_limit(self) -> Var:
        mark = self.spec.of("test.squeeze_mark")
        return from_value(mark, "test.squeeze_mark") if mark is not None else self._figure("handling.squeeze_limit")

    def _undescribed_sizes(self) -> None:
        said = self.spec.of("product.sizes")
        described = len(self.spec.sizes)
        if said is not None and said.largest is not None and said.largest > described:
            self.assumptions["other_sizes_are_no_harder"] = Assumption(
                id="other_sizes_are_no_harder", about=("product.sizes",), test=None, low=None, typical=None, high=None,
                unit="", values=None, basis="common practice, no source: the sizes described are taken as the extremes",
            )  # fmt: skip

    # ------------------------------------------------------------------ rules

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


def resolve(spec: Spec, data: RangeData) -> Job:
    """A spec as a job for the physics."""
    return Resolver(spec, data).job()


def from_value(
    known: Value, origin: str, factor: float = 1.0, offset: float = 0.0, *, high_is_typical: bool = False
) -> Var:
    """A known value of a spec in SI: settled, spread, or a doubt with perhaps an open end."""
    scale = factor if factor else 1.0
    low, high = known.low, known.high
    if low is None or high is None:
        said = (low if low is not None else high or 0.0) * scale + offset
        possible = (min(_SMALLEST, said), said) if low is None else (said, max(_LARGEST, said))
        return doubt(possible, (said, said), said, origin, asks=(origin.partition("@")[0],))
    a, b = low * scale + offset, high * scale + offset
    if a == b:
        return exact(a, origin)
    if known.spread:
        return spread(a, b, origin)
    typical = b if high_is_typical or origin == "product.weight" else (a + b) / 2
    return doubt((a, b), (a, b), typical, origin, asks=(origin.partition("@")[0],))


def _sum(a: Var, b: Var) -> Var:
    return combine((a, b), lambda k: a.hi[k] + b.hi[k], lambda k: a.lo[k] + b.lo[k], a.origin)


def _heading(degrees: float) -> float:
    """A heading from 0 to below 360 degrees, to a tenth of a degree."""
    return round(degrees % 360.0, 1) % 360.0


def word_defaults(job: Job) -> Mapping[str, Any]:
    """The typical word of each choice."""
    return {name: choice.typical for name, choice in job.choices.items()}
