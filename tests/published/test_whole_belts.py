"""Whole results of `size`, reckoned again: straight belts, covers, and what friction has to hold on any of them."""

from math import cos, pi, sin
from typing import Any

import numpy as np
import pytest

G = 9.80665  # m/s2, standard gravity: NIST SP 811, Appendix B


def test_inclines_pull_what_iso_5048_says_for_a_bed_without_rollers(machine: Any, spec: dict[str, Any]) -> None:
    # ISO 5048:1989, clause 5 (formula from memory): f L g (2 qB + qG) cos + qG g H, on the slope and on level ends.
    m = machine(spec, "incline")
    _, u = m.used("pull")
    load, slope = u["q"] - u["qb"], u["th"]
    pull = u["mus"] * u["s"] * G * (2 * u["qb"] + load) * cos(slope) + u["way"] * load * G * u["s"] * sin(slope)
    pull += u["mus"] * G * (2 * u["qb"] + load) * u["le"]
    per_run = m.figure("shaft_power") / m.figure("runs")
    assert per_run == pytest.approx(pull * m.figure("belt_speed"), rel=1e-9)


def test_a_covered_slope_pulls_what_is_pressed_on_the_bed_besides(machine: Any, job: dict[str, Any]) -> None:
    # The cover presses product and belt on the bed (friction mus) and is dragged along (share of what it presses):
    # energy over one pitch, lift and rubbing, as in OpenStax, University Physics vol. 1, sec. 7.4.
    m = machine(job, "cover_belt")
    _, u = m.used("pull")
    pressed = m.figure("cover_force") / m.figure("pitch")
    load, slope = u["q"] - u["qb"], u["th"]
    rubbed = u["mus"] * G * (2 * u["qb"] + load) * (cos(slope) * u["s"] + u["le"])
    covered = (u["mus"] + m.limits.cover_drag) * pressed * u["s"]
    lifted = u["way"] * load * G * u["s"] * sin(slope)
    assert covered > 0.1 * (rubbed + lifted)
    assert m.figure("shaft_power") == pytest.approx((rubbed + covered + lifted) * m.figure("belt_speed"), rel=1e-9)


def held_on(slope: float, accel: float, lateral: float) -> tuple[float, float]:
    """Force in the plane of the belt and square to it that a kilogram needs, from vectors in level axes [N]."""
    along, off = np.array([cos(slope), 0.0, sin(slope)]), np.array([-sin(slope), 0.0, cos(slope)])
    force = np.array([0.0, lateral, G]) + accel * along
    normal = float(force @ off)
    return float(np.linalg.norm(force - normal * off)), normal


@pytest.mark.parametrize("name", ["spiral", "washdown_spiral", "incline"])
def test_slip_and_curve_are_what_the_vectors_ask_of_friction(machine: Any, spec: dict[str, Any], name: str) -> None:
    m = machine(spec, name)
    for id in ("slip", "curve"):
        check = m.family.check(id)
        if check is None:  # a straight incline has no curve
            continue
        _, u = m.used(id)
        thrust = u["v"] ** 2 / u["r"] if id == "curve" else 0.0
        plane, normal = held_on(u.get("th_curve", u.get("th", 0.0)), max(u["a1"], u["a2"], u["a3"]), thrust)
        assert check.value == pytest.approx(u["SF"] * plane / normal, rel=1e-9)


def test_a_cover_holds_what_the_balance_of_forces_asks(machine: Any, job: dict[str, Any]) -> None:
    m = machine(job, "cover_belt")
    check, u = m.used("slip")
    along, off = np.array([cos(u["th"]), sin(u["th"])]), np.array([-sin(u["th"]), cos(u["th"])])
    loads = np.array([0.0, -u["m"] * G]) - u["nc"] * off - u["cr"] * u["nc"] * along
    loads -= u["m"] * max(u["a1"], u["a2"], u["a3"]) * along
    friction, normal = np.linalg.solve(np.column_stack([along, off]), -loads)
    assert check.value == pytest.approx(u["SF"] * friction / normal, rel=1e-9)
    d = m.limits
    cover = d.cover_mass_per_m2 * m.figure("belt_width") * G * m.figure("pitch")
    assert u["nc"] == pytest.approx(cover * cos(u["th"]) + d.hold_down, rel=1e-9)


def test_tipping_is_what_moments_about_the_worst_edge_say(machine: Any, spec: dict[str, Any]) -> None:
    # OpenStax UP1 12.1, Baker and Haynes 9.2. Round and square on a spiral: a start, a slope and a curve at once.
    can = {name: said for name, said in spec.items() if name not in ("product.length", "product.width")}
    can |= {"product.type": "can", "product.diameter": spec["product.width"]}
    for is_round, shape in ((0.0, spec), (1.0, can)):
        m = machine(shape, "spiral")
        check, u = m.used("tip")
        accel, thrust = max(u["a1"], u["a2"], u["a3"]), u["v"] ** 2 / u["r"]
        along = G * sin(u["th"]) + accel
        angles = np.linspace(0.0, 2 * pi, 3601) if u["rnd"] else np.array([0.0, pi / 2])
        arms = np.full_like(angles, min(u["b"], u["bw"]) / 2) if u["rnd"] else np.array([u["b"], u["bw"]]) / 2
        over = (along * np.cos(angles) + thrust * np.sin(angles)) * u["h"]
        assert check.value == pytest.approx(float((over / (G * cos(u["th"]) * arms)).max()), rel=1e-6)
        assert u["rnd"] == is_round


def test_the_allowed_pull_of_a_hot_room_and_long_hours_is_the_rating_by_hand(machine: Any, job: dict[str, Any]) -> None:
    # Own arithmetic on the range: 50 degC is 10 K above where derating begins; 20 hours count as long.
    cool, hot = (machine(job | said, "spiral") for said in ({}, {"temperature.room": 50.0, "site.hours": 20.0}))
    d = cool.limits
    assert d.temperature_derating_from == pytest.approx(313.15)
    rated = dict(zip(d.belt_widths, d.allowed_pull_by_width, strict=True))
    assert cool.figure("pull_allowed") == pytest.approx(rated[cool.figure("belt_width")])
    by_hand = (1.0 - 10.0 * d.temperature_derating_per_k) / d.service_factor_long
    assert hot.figure("pull_allowed") == pytest.approx(rated[hot.figure("belt_width")] * by_hand)


def test_an_incline_takes_the_room_of_its_triangle(machine: Any, job: dict[str, Any]) -> None:
    # Pythagoras and the plumb line: run, rise and sloping length of one line of belts.
    m = machine(job | {"space.length": 30.0, "rise.discharge_height": 1.9}, "incline")
    _, u = m.used("pull")
    runs, rise = m.figure("runs"), 1.9 - 0.75
    assert runs * m.figure("run_length") == pytest.approx(((runs * u["s"]) ** 2 - rise**2) ** 0.5)
    assert m.figure("floor_length") >= runs * m.figure("run_length") + 2 * job["product.length"]
    assert m.figure("overall_height") >= 1.9 + job["product.height"]
