"""How a printed number is compared with ours.

What the test ids say about the source:
- nothing: the printed number was read at the place named;
- "inputs only, recomputed": inputs and method of a worked example were read, its printed answer was not; the
  expected value was reckoned from those inputs apart from this program;
- "from memory" or "second hand": nobody read the source itself for this check.
"""

from collections.abc import Callable
from decimal import Decimal
from math import sqrt
from typing import Any

import pytest
from scipy.integrate import quad, solve_ivp

from intake import size
from intake.sizing import Check, load_range

BOOK_GRAVITY_SHARE = 1e-3  # books take g as 9.80, 9.81, 9.8 or 32.2 ft/s2, we take 9.80665 m/s2


@pytest.fixture(scope="session")
def as_printed() -> Callable[..., Any]:
    """`as_printed("1.57")`: the number, give or take half of its last printed digit and a share of it.

    Write two significant digits of 440 as "4.4e2". The share is for constants that books round, g above all; give
    `share=0.0` where none plays a part.
    """

    def expected(text: str, share: float = BOOK_GRAVITY_SHARE) -> Any:
        number = Decimal(text)
        exponent = number.as_tuple().exponent
        assert isinstance(exponent, int), text
        half_digit = 0.5000001 * 10.0**exponent
        return pytest.approx(float(number), abs=half_digit + share * abs(float(number)), rel=0.0)

    return expected


@pytest.fixture
def job() -> dict[str, Any]:
    """A job of our own, said in full: taped cases up to a mezzanine. Tests write over what they are about."""
    return {
        "product.type": "case", "product.length": 0.4, "product.width": 0.3, "product.height": 0.25,
        "product.weight": 8.0, "product.fill": "full", "product.closed": True, "product.rigidity": "rigid",
        "product.surface": "corrugated", "rate.normal": 20.0, "rate.peak": 25.0, "rise.direction": "up",
        "rise.infeed_height": 0.75, "rise.discharge_height": 4.0, "rise.turn": 0.0, "space.length": 14.0,
        "space.width": 4.0, "space.ceiling": 7.0, "space.passage": "none", "handling.squeeze": True,
        "handling.squeeze_limit": 400.0, "handling.invert": True, "handling.press_top": True, "temperature.room": 21.0,
        "cleaning.method": "dry", "site.hazardous_area": False, "site.air": True,
    }  # fmt: skip


JOBS: dict[str, dict[str, Any]] = {
    "cases up": {},
    "cases down": {"rise.direction": "down", "rise.infeed_height": 4.0, "rise.discharge_height": 0.75},
    "heavy trays up, backed up": {"product.type": "tray", "product.weight": 13.0, "rate.backs_up": True},
    "small cartons up": {
        "product.type": "carton", "product.length": 0.18, "product.width": 0.12, "product.height": 0.08,
        "product.weight": 0.9, "rate.peak": 80.0, "rise.discharge_height": 5.25,
    },
}  # fmt: skip


@pytest.fixture(params=JOBS.values(), ids=list(JOBS))
def spec(request: pytest.FixtureRequest, job: dict[str, Any]) -> dict[str, Any]:
    """That job and three made from it: lowered, heavy and backed up, small and fast."""
    return {**job, **request.param}


class Machine:
    """One family of a whole result, with the limits of its range, for a test that reckons it again."""

    def __init__(self, spec: dict[str, Any], name: str) -> None:
        self.family = size(spec).families[name]
        self.limits = load_range().families[name]

    def figure(self, name: str) -> float:
        """A figure of the result, in the unit of figures.toml."""
        value = self.family.figures[name].value
        assert value is not None, name
        return value

    def used(self, id: str) -> tuple[Check, dict[str, float]]:
        """A check, and what it says it used: symbol -> plain number in SI."""
        check = self.family.check(id)
        assert check is not None, id
        return check, {name: float(use.value) for name, use in check.uses.items() if use.value is not None}


@pytest.fixture(scope="session")
def machine() -> type[Machine]:
    """`machine(spec, "spiral")` sizes a job and holds the family."""
    return Machine


@pytest.fixture(scope="session")
def integrated() -> Callable[[float, float, float, float], float]:
    """`integrated(start, a, b, length)`: tension at the end of a strand along which dT/ds = a + b T.

    A general solver of differential equations walks along the strand: no closed form is used.
    """

    def end(start: float, a: float, b: float, length: float) -> float:
        if length == 0.0:
            return start
        run = solve_ivp(lambda _, t: a + b * t, (0.0, length), [start], method="DOP853", rtol=1e-11, atol=1e-9)
        assert run.success, run.message
        return float(run.y[0, -1])

    return end


@pytest.fixture(scope="session")
def move_time() -> Callable[[float, float, float, float], float]:
    """`move_time(distance, speed, accel, decel)` from rest to rest: the integral of 1/v over the way, by quadrature.

    At every point v is held by the speed allowed, by what was gained so far and by what can still be braked off.
    """

    def by_quadrature(distance: float, speed: float, accel: float, decel: float) -> float:
        def slowness(x: float) -> float:
            return 1.0 / min(speed, sqrt(2.0 * accel * x), sqrt(2.0 * decel * (distance - x)))

        corners = [speed**2 / 2 / accel, distance - speed**2 / 2 / decel, distance * decel / (accel + decel)]
        # Near rest 1/v has no limit, but its integral has: 1e-12 of the way is left out at each end.
        tiny = 1e-12 * distance
        inner = [x for x in corners if tiny < x < distance - tiny]
        found, _ = quad(slowness, tiny, distance - tiny, points=inner, limit=500, epsrel=1e-10)
        return float(found)

    return by_quadrature
