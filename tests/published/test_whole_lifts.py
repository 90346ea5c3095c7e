"""Whole results of `size`, reckoned again from the figures that they show: lifts, cylinders, motors, delivery."""

from collections.abc import Callable
from math import ceil, pi
from typing import Any

import pytest
from scipy import constants

G = 9.80665  # m/s2, standard gravity: NIST SP 811, Appendix B
HP = 745.6999  # W, NIST SP 811, table B.9
ISO_BORES_MM = [32, 40, 50, 63, 80, 100, 125, 160, 200, 250, 320]  # ISO 15552: range read, list from memory
# US 10 CFR 431.446(a) and 431.25(a), hp.
US_HP = [1 / 4, 1 / 3, 1 / 2, 3 / 4, 1, 1.5, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 75, 100, 125, 150, 200]
# IEC 60072-1, kW: from memory; 0.37 to 55 also read in an open list.
IEC = [0.06, 0.09, 0.12, 0.18, 0.25, 0.37, 0.55, 0.75, 1.1, 1.5, 2.2, 3, 4, 5.5, 7.5, 11, 15, 18.5, 22, 30, 37, 45, 55]
FAMILIES = ["spiral", "washdown_spiral", "side_grip", "incline", "cover_belt", "cleated_incline"]
LIFTS = ["index_lift", "continuous_lift", "reciprocating_lift"]


def slow_and_up(spec: dict[str, Any]) -> dict[str, Any]:
    """The same products at a rate that any lift can follow, going up."""
    low, high = sorted((spec["rise.infeed_height"], spec["rise.discharge_height"]))
    heights = {"rise.direction": "up", "rise.infeed_height": low, "rise.discharge_height": high}
    return spec | heights | {"rate.normal": 3.0, "rate.peak": 4.0}


def test_an_index_lift_s_cycle_is_one_pitch_by_quadrature_and_the_longer_wait(
    machine: Any, spec: dict[str, Any], move_time: Callable[..., float]
) -> None:
    big = {"product.length": 0.7, "product.width": 0.6, "product.height": 0.5}
    cycles = []
    for said in ({}, big):
        m = machine(slow_and_up(spec) | said, "index_lift")
        d = m.limits
        travel = move_time(m.figure("carrier_pitch"), d.speed_most, d.accel, d.accel)
        assert m.figure("travel_time") == pytest.approx(travel, rel=1e-5)
        push = max(d.push_time_least, d.push_time_per_m * m.figure("cylinder_stroke")) + d.push_settle
        cycles.append(max(travel + max(d.load_time, push), 1 / d.rate_most))
        assert m.figure("cycle_time") == pytest.approx(cycles[-1], rel=1e-5)
        rate, _ = m.used("rate")
        assert rate.limit == pytest.approx(60.0 / m.figure("cycle_time"))
        assert m.figure("products_on") == ceil(m.figure("path_length") / m.figure("carrier_pitch") - 1e-9)
    assert cycles[1] > 1.1 / d.rate_most  # there it is the move and the wait that count, not the top of the range


def test_its_cylinder_is_the_smallest_of_the_series_that_pushes_hard_enough(machine: Any, spec: dict[str, Any]) -> None:
    # OpenStax College Physics 2e 11.3: force = pressure x area. ISO 15552 for the bores.
    m = machine(slow_and_up(spec) | {"site.air_pressure": 4.0e5, "product.weight": 20.0}, "index_lift")
    force = m.limits.push_safety * m.limits.push_friction * 20.0 * G
    assert m.figure("push_force") == pytest.approx(force)
    strong = [mm for mm in ISO_BORES_MM if 4.0e5 * pi / 4 * (mm / 1e3) ** 2 >= force]
    assert m.figure("cylinder_bore") * 1e3 == pytest.approx(strong[0])


def test_its_air_is_the_amount_that_the_gas_law_counts(machine: Any, spec: dict[str, Any]) -> None:
    # p V = n R T, gas constant of CODATA (scipy.constants); free air at 1 bar and 20 degC. Rod of 12 mm from memory.
    m = machine(slow_and_up(spec) | {"site.air_pressure": 6.0e5}, "index_lift")
    bore, stroke = m.figure("cylinder_bore"), m.figure("cylinder_stroke")
    assert bore == pytest.approx(0.032)
    filled = pi / 4 * (2 * bore**2 - 0.012**2) * stroke
    moles = (6.0e5 + constants.atm) * filled / (constants.R * 293.15)
    free = moles * constants.R * 293.15 / constants.bar
    assert m.figure("air_use") == pytest.approx(free * 4.0, rel=1e-9)


def test_a_platform_s_moves_are_its_rise_by_quadrature(
    machine: Any, spec: dict[str, Any], move_time: Callable[..., float]
) -> None:
    m = machine(slow_and_up(spec), "reciprocating_lift")
    d, rise = m.limits, m.figure("path_length")
    travel = move_time(rise, d.speed_most, d.accel, d.accel)
    assert m.figure("travel_time") == pytest.approx(travel, rel=1e-5)
    handling = d.load_time_fixed + spec["product.length"] / d.transfer_speed
    assert m.figure("cycle_time") == pytest.approx(2 * travel + 2 * handling, rel=1e-5)


def test_a_product_is_on_its_carrier_before_the_way_has_closed(machine: Any, spec: dict[str, Any]) -> None:
    # Equal times: while the tail comes in at the feed speed, the chain may rise by what a carrier leaves open.
    m = machine(spec, "continuous_lift")
    feed, u = m.used("feed_speed")
    closing = m.figure("carrier_pitch") - spec["product.height"] - u["c"]
    seconds = spec["product.length"] / float(feed.value)
    assert m.figure("belt_speed") * seconds == pytest.approx(closing)
    assert m.figure("belt_speed") == pytest.approx(spec["rate.peak"] / 60.0 * m.figure("carrier_pitch"))


@pytest.mark.parametrize("name", [*FAMILIES, *LIFTS])
def test_no_drive_gives_less_than_the_textbook_s_power_to_lift(machine: Any, spec: dict[str, Any], name: str) -> None:
    # OpenStax UP1 7.4: P = m g h / t; College Physics 2e 7.7 Problem 42: friction comes on top.
    up = slow_and_up(spec) if name == "reciprocating_lift" else spec
    m = machine(up, name)
    rise = up["rise.discharge_height"] - up["rise.infeed_height"]
    if rise < 0:  # lowering gives that power back, less friction
        assert m.figure("shaft_power") >= up["product.weight"] * up["rate.peak"] / 60.0 * G * rise
        return
    lift = up["product.weight"] * up["rate.peak"] / 60.0 * G * rise
    assert m.figure("shaft_power") >= lift
    assert m.figure("motor_power") >= m.figure("shaft_power")


@pytest.mark.parametrize(("hertz", "series"), [(60.0, [hp * HP for hp in US_HP]), (50.0, [kw * 1e3 for kw in IEC])])
@pytest.mark.parametrize("name", [*FAMILIES, *LIFTS])
def test_each_motor_is_the_next_of_the_published_series(
    machine: Any, job: dict[str, Any], name: str, hertz: float, series: list[float]
) -> None:
    m = machine(job | {"site.frequency": hertz}, name)
    power, _ = m.used("power")
    each = m.figure("motor_power") / m.figure("motors")
    assert each == pytest.approx(next(w for w in series if w >= float(power.value)), rel=1e-6)


def test_what_is_wider_than_the_law_s_102_inches_does_not_ride_whole(machine: Any, job: dict[str, Any]) -> None:
    # 23 CFR 658.15(a): 102 in.
    widths = {}
    for width in (0.2, 0.3, 0.4, 0.45):
        wide = {"product.width": width, "product.length": 0.6, "handling.turn_flat": False}
        ship, _ = machine(job | wide, "spiral").used("ship")
        widths[width] = ship.value
        assert (ship.passes is False) == (float(ship.value) > 102 * 0.0254)
    assert min(widths.values()) < 102 * 0.0254 < max(widths.values())
