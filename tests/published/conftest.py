"""How a printed number is compared with ours.

What the test ids say about the source:
- nothing: the printed number was read at the place named;
- "inputs only, recomputed": inputs and method of a worked example were read, its printed answer was not; the
  expected value was reckoned from those inputs apart from this program;
- "from memory" or "second hand": nobody read the source itself for this check.
"""

from collections.abc import Callable
from decimal import Decimal
from typing import Any

import pytest
from scipy.integrate import solve_ivp

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
