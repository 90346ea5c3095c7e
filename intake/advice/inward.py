"""Figures that must not be rounded outward: a largest rise is told a little low, never high."""

from math import floor, log10

from intake.interview.reasons import shown
from intake.spec.display import System

_INCH = 0.0254


def shown_inward(value: float, unit: str, system: System) -> str:
    """A largest value as people read it, rounded down: whole inches or centimetres, three digits of anything else.

    >>> shown_inward(4.2999, "m", "si"), shown_inward(4.2999, "m", "us"), shown_inward(65.48, "1/min", "si")
    ('4.29 m', '14 ft 1 in', '65.4/min')
    """
    return shown(_down(value, _INCH if system == "us" else 0.01) if unit == "m" else _digits(value), unit, system)


def _down(value: float, step: float) -> float:
    return floor(value / step + 1e-6) * step


def _digits(value: float) -> float:
    if value <= 0.0:
        return value
    step = 10.0 ** (floor(log10(value)) - 2)
    return float(f"{_down(value, step):.6g}")
