"""What must not be rounded outward: a largest rise is told a little low, a room that is needed a little large."""

from math import ceil, floor, log10

from intake.interview.reasons import shown
from intake.spec.display import System
from intake.spec.shown_units import INCH, shown_unit

_NOISE = 1e-9


def shown_inward(value: float, unit: str, system: System) -> str:
    """A largest value as people read it, rounded down: whole inches or centimetres, three digits of anything else.

    >>> shown_inward(4.2999, "m", "si"), shown_inward(4.2999, "m", "us"), shown_inward(65.48, "1/min", "si")
    ('4.29 m', '14 ft 1 in', '65.4/min')
    """
    return shown(_down(value, INCH if system == "us" else 0.01) if unit == "m" else _digits(value), unit, system)


def shown_enough(value: float, unit: str, system: System, *, upwards: bool) -> str:
    """A value that has to be reached, from below or above, as people read it: never short of it.

    >>> shown_enough(7.8704, "m", "si", upwards=True), shown_enough(13.6999, "kg", "si", upwards=False)
    ('7.88 m', '13.6 kg')
    """
    if unit == "m":
        factor, offset = 1.0, 0.0
        step = 0.1 * INCH if system == "us" else 0.001 if abs(value) < 0.999 else 0.01
    else:
        row = shown_unit(value, unit, system)
        factor, offset = row.factor, row.offset
        digits = 10.0 ** (floor(log10(abs(value * factor))) - 2) if value else 1.0
        step = digits if row.decimals is None else 10.0**-row.decimals
    steps = (value * factor + offset) / step
    whole = ceil(steps - _NOISE) if upwards else floor(steps + _NOISE)
    return shown((float(f"{whole * step:.12g}") - offset) / factor, unit, system)


def _down(value: float, step: float) -> float:
    return floor(value / step + _NOISE) * step


def _digits(value: float) -> float:
    if value <= 0.0:
        return value
    step = 10.0 ** (floor(log10(value)) - 2)
    return float(f"{_down(value, step):.6g}")
