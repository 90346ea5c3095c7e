"""From a spec to the job: facts as they are, assumptions where nobody said anything, corners for what is open."""

from dataclasses import replace
from math import radians
from typing import Any

from intake.sizing.assume import LARGEST, SMALLEST, from_value, heading, sum_of
from intake.sizing.job import Job
from intake.sizing.product import ProductFigures
from intake.sizing.range_data import RangeData
from intake.sizing.result import Assumption
from intake.sizing.unknowns import Choice, Var, at_least, doubt, exact
from intake.spec.flat import Spec
from intake.spec.vocabulary import vocabulary

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
    "underside": ("product.underside", None),
    "turn_flat": ("handling.turn_flat", _YES_NO),
}
"""Words of the job: its name in checks, its field, and what it may be (None: the choices of the field)."""


class Resolver(ProductFigures):
    """One spec being resolved. Collects the assumptions made on the way."""

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
            rare=tuple((word, share) for word, share in self.data.odds.get(field, ()) if word not in rule.values),
        )

    def _turn(self) -> Choice:
        known = self.spec.of("rise.turn")
        if known is not None and known.largest is not None:
            low = known.low if known.low is not None else known.largest
            ends = tuple(dict.fromkeys((heading(low), heading(known.largest))))
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
            "ow": at_least(self._figure("space.opening_width"), SMALLEST),
            "oh": at_least(self._figure("space.opening_height"), SMALLEST),
            "troom": room,
            "tprod": self._figure("temperature.product", offset=273.15),
            "pwash": self._figure("cleaning.pressure"),
            "tilt": self._figure("handling.tilt", factor=radians(1.0)),
            "pair": at_least(self._figure("site.air_pressure"), 1.0),
            "hours": self._figure("site.hours"),
            "weeks": self._figure("project.weeks"),
            "levels": self._figure("rise.levels"),
            "stainless": self._stainless(),
            "tried": self._tried(),
            "squeeze_limit": self._squeeze_limit(),
        }

    def _rate(self) -> Var:
        peak, normal = self.spec.of("rate.peak"), self.spec.of("rate.normal")
        if peak is not None:
            return from_value(peak, "rate.peak", 1 / 60, high_is_typical=True)
        if normal is None:
            low, high = self._prior("rate", None)
            return doubt(
                (SMALLEST, LARGEST),
                None,
                (low + high) / 120,
                "rate.normal",
                likely=(low / 60, high / 60),
                asks=("rate.normal", "rate.peak"),
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
            top = sum_of(low, rise)
            if self.choices["direction"].is_open:  # a level alone does not say whether it is the lower or the upper one
                top = replace(top, asks=(*top.asks, *self.choices["direction"].asks))
            return low, top
        field = "rise.infeed_height" if infeed is not None else "rise.discharge_height"
        level = from_value(one, field)
        below = (
            level.hi[0] - rise.lo[0], level.hi[1] - rise.lo[1], level.hi[2] - rise.hi[2], level.hi[3] - rise.lo[3]
        )  # fmt: skip
        lower = Var(hi=below, lo=below, origin=field, asks=rise.asks, missing=rise.missing)
        word = self.spec.word("rise.direction")
        if word is not None:
            is_low = (infeed is not None) == (word != "down")
            return (level, sum_of(level, rise)) if is_low else (lower, level)
        upper = sum_of(level, rise)  # the way is not known: the level said may be the lower or the upper one
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
            (SMALLEST, LARGEST), None, top + (low + high) / 2, "space.ceiling", likely=(top + low, top + high),
            asks=("space.ceiling",),
        )  # fmt: skip

    def _stainless(self) -> Var:
        """1 where the frame is to be stainless: that takes longer where it is not the usual build."""
        word = self.spec.word("cleaning.frame")
        if word is not None:
            return exact(1.0 if word == "stainless" else 0.0, "cleaning.frame")
        return doubt((0.0, 1.0), (0.0, 1.0), 0.0, "cleaning.frame", asks=("cleaning.frame",))

    def _tried(self) -> Var:
        """What samples showed at the transfers: 1 passed, -1 did not, 0 not tried."""
        passed = self.spec.of("test.transfers")
        return exact(0.0 if passed is None else 1.0 if passed.value is True else -1.0, "test.transfers")

    def _squeeze_limit(self) -> Var:
        mark = self.spec.of("test.squeeze_mark")
        if mark is None:
            return self._figure("handling.squeeze_limit")
        shown = from_value(mark, "test.squeeze_mark")
        limit = self.spec.of("handling.squeeze_limit")
        if limit is None:
            return shown
        said = from_value(limit, "handling.squeeze_limit")
        return said if said.typical < shown.typical else shown

    def _undescribed_sizes(self) -> None:
        said = self.spec.of("product.sizes")
        described = len(self.spec.sizes)
        if said is not None and said.largest is not None and said.largest > described:
            self.assumptions["other_sizes_are_no_harder"] = Assumption(
                id="other_sizes_are_no_harder", about=("product.sizes",), test=None, low=None, typical=None, high=None,
                unit="", values=None, basis="common practice, no source: the sizes described are taken as the extremes",
            )  # fmt: skip


def resolve(spec: Spec, data: RangeData) -> Job:
    """A spec as a job for the physics."""
    return Resolver(spec, data).job()
