"""Crests, hollows, rollers, gaps and the room on plan: against railway practice, statics and brute geometry."""

from collections.abc import Callable
from math import atan, hypot, radians, sin
from typing import Any

import numpy as np
import pytest
from scipy.optimize import brentq, minimize_scalar

from intake.sizing.physics.envelope import run_plan_length
from intake.sizing.physics.friction import STANDARD_GRAVITY
from intake.sizing.physics.transfer import bridges_gap, rollers_under, sag

G = STANDARD_GRAVITY
FT, IN = 0.3048, 0.0254

# Degree of a railway curve and its radius [ft]: Vose, Handbook of Railroad Construction, table (an open copy).
RAILWAY_CURVES = [(1, 5730.0), (2, 2865.0), (3, 1910.0), (4, 1433.0), (5, 1146.0), (6, 955.4), (8, 716.8), (10, 573.7)]


@pytest.mark.parametrize(("degree", "radius"), RAILWAY_CURVES)
def test_an_inch_of_sag_under_a_62_foot_string_is_a_degree_of_curve(degree: int, radius: float) -> None:
    # US Army TM 5-628, alinement with a 62-foot stringline: an inch at its middle is about one degree of curvature.
    assert sag(62 * FT, radius * FT) / IN == pytest.approx(degree, rel=0.01)


@pytest.mark.parametrize("share", [0.02, 0.1, 0.2, 0.4])
def test_the_sag_is_the_greatest_distance_of_an_arc_from_its_chord(share: float) -> None:
    radius = 2.0
    length = share * radius
    half = length / 2.0

    def height(x: float) -> float:
        return float(np.sqrt(radius * radius - x * x) - np.sqrt(radius * radius - half * half))

    highest = minimize_scalar(lambda x: -height(x), bounds=(-half, half), method="bounded", options={"xatol": 1e-10})
    assert sag(length, radius) == pytest.approx(-highest.fun, rel=0.011)
    assert sag(length, radius) <= -highest.fun + 1e-12


def least_rollers(base: float, pitch: float) -> int:
    """The fewest rollers that are ever under a base while it runs over a bed of them."""
    rollers = np.arange(-5, 60) * pitch
    tails = np.linspace(0.0, pitch, 2001)[:-1] + 1e-9 * pitch
    under = [(rollers >= tail) & (rollers <= tail + base) for tail in tails]
    return min(int(found.sum()) for found in under)


@pytest.mark.parametrize("base", [0.149, 0.151, 0.20, 0.25, 0.31])
def test_three_pitches_always_leave_three_rollers_under_a_base_and_fewer_do_not(base: float) -> None:
    # That three are enough is common practice, no source; how many there are is counted here.
    pitch = 0.05
    assert (rollers_under(base, pitch) >= 3.0) == (least_rollers(base, pitch) >= 3)
    assert int(rollers_under(base, pitch)) == least_rollers(base, pitch)


@pytest.mark.parametrize("gap", [0.02, 0.08, 0.0999, 0.1001, 0.15])
def test_a_base_crosses_a_gap_only_while_something_bears_it_on_both_sides_of_its_plumb_line(gap: float) -> None:
    # OpenStax UP1 12.1: a body stands while the plumb line from its centre of gravity falls inside its support.
    base = 0.20
    stands = True
    for nose in np.linspace(0.0, gap + base, 4001):
        tail, centre = nose - base, nose - base / 2.0
        borne = [(max(tail, -base), min(nose, 0.0)), (max(tail, gap), nose)]
        borne = [(start, end) for start, end in borne if start <= end]
        stands &= bool(borne) and min(s for s, _ in borne) <= centre <= max(e for _, e in borne)
    assert stands == (bridges_gap(base, gap) < 1.0)


def test_a_ramp_of_the_printed_work_has_the_plan_length_of_its_slope(as_printed: Callable[..., Any]) -> None:
    # OpenStax College Physics 2e 7.1 Problem 5: 85.0 kg and a push of 500 N, 4.00 m along 20.0 degrees: 3.14e3 J.
    slope = radians(20.0)
    rise = float(brentq(lambda h: hypot(h, run_plan_length(h, slope)) - 4.00, 0.1, 4.0))
    assert 500.0 * 4.00 + 85.0 * G * rise == as_printed("3.14e3")
    assert rise == pytest.approx(4.00 * sin(slope))


@pytest.mark.parametrize(
    ("slope", "rise", "printed"),
    [
        pytest.param(radians(3.0), 0.0524, "1.000", id="3 degrees is a fall of 52.4 mm in a metre (own arithmetic)"),
        pytest.param(atan(0.15), 15.0, "100", id="OpenStax UP1 7.4 Ex 7.12: a 15 % grade, 15 m up in 100 m on plan"),
        pytest.param(atan(1 / 20), 1.0, "20.0", id="Khurmi and Gupta, Theory of Machines Ex 3.4: 1 in 20"),
    ],
)
def test_a_grade_has_the_plan_length_that_its_name_says(
    slope: float, rise: float, printed: str, as_printed: Callable[..., Any]
) -> None:
    assert run_plan_length(rise, slope) == as_printed(printed, share=0.0)
