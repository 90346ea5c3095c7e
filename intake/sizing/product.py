"""What a product brings to the physics: its size and weight, how it stands, and what it grips with."""

from math import radians, tan

from intake.sizing.assume import SMALLEST, Assuming, from_value
from intake.sizing.physics.friction import STANDARD_GRAVITY, friction_from_slope
from intake.sizing.unknowns import BEST, MODES, Var, between, combine, doubt, exact

_ROUND_KINDS = ("bottle", "jar", "can", "canister", "keg", "drum", "pail")
_AS_GOOD_AS_ONE = 0.02
_ANGLES = (0.05, 89.0)
"""A tilting test cannot show less, or more [deg]."""


class ProductFigures(Assuming):
    """The figures of one product size after another."""

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
        across = h
        tip = self.spec.of("test.tip_angle", size)
        if tip is not None and tip.low is not None:
            said = h if self.spec.of("product.centre_height", size) is not None else None
            angle = radians(min(max(tip.low, _ANGLES[0]), _ANGLES[1]))
            across = self._centre_by_test(angle, b, said, False, across=True)
            h = self._centre_by_test(angle, b, said, L.is_open or W.is_open)
        rnd = exact(1.0, "product.diameter") if is_round else self._round_by_kind(L, W)
        figures = {"L": L, "W": W, "H": H, "m": m, "b": b, "bw": bw, "h": h, "hx": across, "rnd": rnd}
        figures["mu"] = self._friction("belt")
        figures["mu_high"] = self._friction("high_friction_belt")
        figures["mu_grip"] = self._grip_friction(m)
        return figures

    def _round_by_kind(self, length: Var, width: Var) -> Var:
        """Cans, kegs and their like with one figure for length and width are round though nobody gave a diameter."""
        kind = self.spec.word("product.type")
        if kind is not None and kind not in _ROUND_KINDS:
            return exact(0.0, "product.type")
        asks = tuple(dict.fromkeys((*length.asks, *width.asks)))
        if length.is_open or width.is_open:  # nobody knows yet whether the two are one
            return doubt((0.0, 1.0), (0.0, 1.0), float(kind is not None), "product.type", asks=asks)
        if abs(length.typical - width.typical) > _AS_GOOD_AS_ONE * length.typical:
            return exact(0.0, "product.type")
        if kind is None:
            return doubt((0.0, 1.0), (0.0, 1.0), 0.0, "product.type", asks=("product.type",))
        return exact(1.0, "product.type")

    def _centre_by_test(
        self, angle: float, base: Var, said: Var | None, may_turn: bool, across: bool = False
    ) -> Var:  # fmt: skip
        """The centre of gravity that a tilting test shows; of that and a stated one, the higher counts.

        Along the travel the test shows height over base, whatever the base is: the height goes with the base that
        counts. Across it, the height counts by itself, and goes with the base in the open.
        `may_turn`: which side led in the test is not known well enough to hold it against the other one.
        """
        hi = [(base.hi if across else base.lo)[mode] / (2.0 * tan(angle)) for mode in MODES]
        lo = [(base.lo if across else base.hi)[mode] / (2.0 * tan(angle)) for mode in MODES]
        if said is not None:
            hi, lo = (
                [max(*pair) for pair in zip(one, two, strict=True)] for one, two in ((hi, said.hi), (lo, said.lo))
            )
        if may_turn and True in self.choices["turn_flat"].possible:
            hi[BEST] = lo[BEST] = SMALLEST
        return combine((base,), hi.__getitem__, lo.__getitem__, "test.tip_angle")

    def _friction(self, on: str) -> Var:
        test = self.spec.of("test.slip_angle") if on != "grip" else None  # a belt tells nothing of a grip
        if test is not None:
            angle = between(from_value(test, "test.slip_angle", radians(1.0)), *map(radians, _ANGLES))
            return combine(
                (angle,), lambda k: friction_from_slope(angle.hi[k]), lambda k: friction_from_slope(angle.lo[k]),
                "test.slip_angle",
            )  # fmt: skip
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
            lambda k: m.hi[k] * STANDARD_GRAVITY / (2 * max(force.lo[k], 1e-9)),
            lambda k: m.lo[k] * STANDARD_GRAVITY / (2 * max(force.hi[k], 1e-9)),
            "test.grip_slip",
        )
