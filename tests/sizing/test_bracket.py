"""Where a condition stops holding, against the root finder of scipy (Brent's method) as an independent solver."""

from math import exp, inf, nextafter, sin

import pytest
from scipy.optimize import brentq

from intake.sizing.bracket import first_holding, largest_factor, last_holding, scan

MARGINS = {
    "straight": lambda x: 7.5 - 2.0 * x,
    "exponential": lambda x: 40.0 - exp(1.1 * x),
    "cubic": lambda x: 30.0 - x**3,
    "flat at first": lambda x: min(0.2, 4.0 - x),
    "steep at last": lambda x: 1.0 - (x / 3.3) ** 40,
}


@pytest.mark.parametrize("name", MARGINS)
def test_the_last_that_holds_is_the_root_that_scipy_finds(name: str) -> None:
    margin = MARGINS[name]
    root = brentq(margin, 1.0, 8.0, xtol=1e-13, rtol=1e-14)
    found = last_holding(lambda x: [margin(x)], 1.0, [margin(1.0)], 8.0, [margin(8.0)])
    assert margin(found) >= 0.0
    assert found == pytest.approx(root, rel=2e-9)


@pytest.mark.parametrize("name", MARGINS)
def test_the_largest_factor_is_rounded_inward(name: str) -> None:
    margin = MARGINS[name]
    found = largest_factor(lambda x: [margin(x)])
    assert found is not None
    root = brentq(margin, 1.0, 8.0, xtol=1e-13, rtol=1e-14)
    assert root * (1.0 - 5e-9) < found <= nextafter(root, 0.0)


def test_few_looks_are_enough_where_the_margin_is_smooth() -> None:
    looks: list[float] = []

    def margin(x: float) -> float:
        looks.append(x)
        return 40.0 - exp(1.1 * x)

    last_holding(lambda x: [margin(x)], 1.0, [margin(1.0)], 8.0, [margin(8.0)])
    assert len(looks) < 20  # bisection alone takes 33 to come as near


def test_a_condition_that_just_holds_throughout_does_not_slow_the_search() -> None:
    looks: list[float] = []

    def rooms(x: float) -> list[float]:
        looks.append(x)
        return [0.0, 40.0 - exp(1.1 * x), 5.0, 9.0 - x]

    found = last_holding(rooms, 1.0, rooms(1.0), 16.0, rooms(16.0))
    assert found == pytest.approx(brentq(lambda x: 40.0 - exp(1.1 * x), 1.0, 8.0, xtol=1e-13), rel=2e-9)
    assert len(looks) < 25


def test_a_step_in_the_margin_is_found_where_it_is() -> None:
    def margin(x: float) -> float:
        return 1.0 if x < 2.75 else -5.0

    found = last_holding(lambda x: [margin(x)], 1.0, [1.0], 8.0, [-5.0])
    assert found < 2.75
    assert found == pytest.approx(2.75, rel=2e-9)


def test_a_factor_below_one_is_found_where_today_does_not_hold() -> None:
    found = largest_factor(lambda x: [0.3 - x])
    assert found == pytest.approx(0.3, rel=1e-8)
    assert found is not None
    assert found <= 0.3
    assert largest_factor(lambda x: [-1.0]) is None
    assert largest_factor(lambda x: [0.3 - x], smallest=0.5) is None


def test_a_margin_without_end_is_as_good_as_one() -> None:
    assert last_holding(lambda x: [inf if x < 3.0 else -inf], 1.0, [inf], 8.0, [-inf]) == pytest.approx(3.0, rel=2e-9)


def test_a_scan_ends_at_a_gap_and_steps_over_less_than_a_hundredth() -> None:
    def holds(x: float) -> bool:
        return x <= 3.0 or 3.2 <= x <= 9.0

    assert scan(holds, 1.0, 0.1, 60.0) == pytest.approx(3.0, rel=2e-6)
    assert scan(holds, 20.0, 0.1, 60.0) == pytest.approx(9.0, rel=2e-6)
    assert scan(lambda x: x <= 3.0 or 3.01 <= x <= 9.0, 1.0, 0.1, 60.0) == pytest.approx(9.0, rel=2e-6)


def test_what_a_scan_gives_back_holds_and_a_hundredth_more_does_not() -> None:
    for limit in (0.4, 1.0, 2.5, 17.0):
        for start in (0.2, 1.0, 40.0):
            found = scan(lambda x, limit=limit: x <= limit, start, 0.05, 60.0)
            assert found is not None
            assert found <= limit < found * 1.01
    assert scan(lambda x: True, 1.0, 0.1, 60.0) == 60.0
    assert scan(lambda x: False, 1.0, 0.1, 60.0) is None


def test_the_first_that_holds_is_the_root_that_scipy_finds_in_both_directions() -> None:
    root = brentq(lambda x: 40.0 - exp(1.1 * x), 1.0, 8.0, xtol=1e-13)
    upwards = first_holding(lambda x: exp(1.1 * x) >= 40.0, 1.0, 50.0)
    downwards = first_holding(lambda x: exp(1.1 * x) <= 40.0, 8.0, 0.1)
    assert upwards == pytest.approx(root, rel=2e-6)
    assert downwards == pytest.approx(root, rel=2e-6)
    assert upwards is not None
    assert downwards is not None
    assert downwards <= root <= upwards


def test_the_nearest_of_several_is_taken_and_nothing_where_there_is_none() -> None:
    assert first_holding(lambda x: 2.0 <= x <= 2.5 or x > 6.0, 1.0, 50.0) == pytest.approx(2.0, rel=2e-6)
    assert first_holding(lambda x: sin(x) > 2.0, 1.0, 50.0) is None
    assert first_holding(lambda x: x >= 12.0, -22.0, 38.0, 1.0) == pytest.approx(12.0, rel=2e-6)
    assert first_holding(lambda x: x <= -30.0, -22.0, -82.0, 1.0) == pytest.approx(-30.0, rel=2e-6)
