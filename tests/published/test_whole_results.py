"""Whole results of `size`, reckoned again from the figures that they show: belts, helices and grips.

What a record says it used is taken; what it made of it is not. Integrals go to a general solver, forces are vectors,
roots are found by trial. The jobs are our own. Lifts are in test_whole_lifts.py.
"""

from collections.abc import Callable, Sequence
from math import atan2, cos, degrees, hypot, pi, sin, tau
from typing import Any

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

G = 9.80665  # m/s2, standard gravity: NIST SP 811, Appendix B
Strands = Sequence[tuple[float, float, float]]


def round_the_loop(strands: Strands, least: float, end_of: Callable[..., float]) -> list[float]:
    """Tensions at the nodes, with the slack found by trial so that the belt is nowhere slacker than `least` [N]."""

    def nodes(slack: float) -> list[float]:
        found = [slack]
        for strand in strands:
            found.append(end_of(found[-1], *strand))
        return found

    if min(nodes(least)) >= least:
        return nodes(least)
    return nodes(float(brentq(lambda slack: min(nodes(slack)) - least, least, 1e5, xtol=1e-8)))


def helix_strands(u: dict[str, float], load: float) -> Strands:
    """Empty and loaded strand of a spiral with one drive, each with its level ends, from the masses per length."""
    c, s, way = cos(u["th"]), sin(u["th"]), u.get("way", u.get("way_bu", 0.0))
    return [
        (u["qb"] * G * u["mus"], 0.0, u["le"]),
        (u["qb"] * G * (u["mus"] * c - way * s), 0.0, u["s"]),
        (load * G * (u["mus"] * c + way * s), u["B"], u["s"]),
        (load * G * u["mus"], 0.0, u["le"]),
    ]


@pytest.mark.parametrize(("id", "load"), [("pull", "q"), ("pull_backed_up", "q_bu")])
def test_a_spiral_pulls_what_a_general_solver_finds(
    machine: Any, spec: dict[str, Any], id: str, load: str, integrated: Callable[..., float]
) -> None:
    m = machine(spec, "spiral")
    check, u = m.used(id)
    least = m.limits.take_up_tension
    nodes = round_the_loop(helix_strands(u, u[load]), least, integrated)
    assert check.value == pytest.approx(max(nodes), rel=1e-7)
    assert u["Ts" if load == "q" else "Tb"] == pytest.approx(nodes[0], rel=1e-6)
    apart = m.figure("pitch") if load == "q" else spec["product.length"]
    assert u[load] == pytest.approx(u["qb"] + spec["product.weight"] / apart, rel=1e-9)


def rubbed_off(strand: tuple[float, float, float], start: float) -> float:
    """Work per length run that a guide takes along a strand: the integral of b T ds [N]."""
    a, b, length = strand
    run = solve_ivp(lambda _, t: [a + b * t[0], b * t[0]], (0.0, length), [start, 0.0], method="DOP853", rtol=1e-10)
    return float(run.y[1, -1])


@pytest.mark.parametrize("name", ["spiral", "washdown_spiral"])
def test_a_spiral_s_shafts_give_what_lifting_and_rubbing_take(
    machine: Any, spec: dict[str, Any], name: str, integrated: Callable[..., float]
) -> None:
    # Energy instead of tensions: lift of the flow (OpenStax UP1 7.4), sliding on the bed in both strands, rubbing on
    # the guide. The belt's own weight comes down again as far as it went up.
    m = machine(spec, name)
    _, u = m.used("pull")
    belt = m.limits.belt_mass_per_area * m.figure("belt_width")
    drives, least = m.figure("motors"), m.limits.take_up_tension
    climb = (u["q"] * G * (u["mus"] * cos(u["th"]) + u["way"] * sin(u["th"])), u["B"], u["s"] / drives)
    strands = helix_strands(u, u["q"]) if drives == 1 else [climb, (u["q"] * G * u["mus"], 0.0, u["le"] / drives)]
    nodes = round_the_loop(strands, least, integrated)
    guide = drives * rubbed_off(climb, nodes[2] if drives == 1 else nodes[0])
    bed = u["mus"] * G * (belt + u["q"]) * (cos(u["th"]) * u["s"] + u["le"])
    rise = abs(spec["rise.discharge_height"] - spec["rise.infeed_height"])
    lift = u["way"] * spec["product.weight"] * spec["rate.peak"] / 60.0 * G * rise
    assert m.figure("shaft_power") == pytest.approx(lift + (bed + guide) * m.figure("belt_speed"), rel=1e-7)


def test_a_spiral_s_path_is_as_long_as_its_points_and_as_steep(machine: Any, spec: dict[str, Any]) -> None:
    # OpenStax Calculus 3 3.3 (arc length of a helix), by adding up 20 000 chords.
    m = machine(spec, "spiral")
    _, u = m.used("pull")
    turns, diameter, rise = (m.figure(n) for n in ("turns", "path_diameter", "rise_per_turn"))
    turned = np.linspace(0.0, turns * tau, 20001)
    points = np.column_stack([diameter / 2 * np.cos(turned), diameter / 2 * np.sin(turned), rise * turned / tau])
    assert u["s"] == pytest.approx(float(np.linalg.norm(np.diff(points, axis=0), axis=1).sum()), rel=1e-6)
    climbed = points[1] - points[0]
    assert u["th"] == pytest.approx(atan2(climbed[2], hypot(climbed[0], climbed[1])), rel=1e-6)
    assert turns * rise == pytest.approx(abs(spec["rise.discharge_height"] - spec["rise.infeed_height"]))
    assert u["B"] == pytest.approx(m.limits.guide_friction * cos(u["th"]) ** 2 * 2 / diameter)


def test_how_high_a_spiral_goes_is_where_the_solver_meets_the_allowed_pull(
    machine: Any, job: dict[str, Any], integrated: Callable[..., float]
) -> None:
    # Cases of 12 kg, so that it is the pull that stops it. More turns of the same rise: only the length grows.
    m = machine(job | {"product.weight": 12.0, "rate.backs_up": True}, "spiral")
    check, u = m.used("pull_backed_up")
    least = m.limits.take_up_tension

    def over(rise: float) -> float:
        taller = u | {"s": rise / sin(u["th"])}
        return max(round_the_loop(helix_strands(taller, u["q_bu"]), least, integrated)) - float(check.limit or 0.0)

    assert m.figure("rise_capacity") == pytest.approx(brentq(over, 0.5, 9.0), rel=1e-5)
    assert m.figure("rise_capacity") < m.limits.rise_most


def test_a_belt_driven_at_each_tier_pulls_one_tier_by_the_solver(
    machine: Any, spec: dict[str, Any], integrated: Callable[..., float]
) -> None:
    m = machine(spec, "washdown_spiral")
    check, u = m.used("pull")
    gain = u["q"] * G * (u["mus"] * cos(u["th"]) + u["way"] * sin(u["th"]))
    strands = [(gain, u["B"], u["s"] / u["tiers"]), (u["q"] * G * u["mus"], 0.0, u["le"] / u["tiers"])]
    least = m.limits.take_up_tension
    assert check.value == pytest.approx(max(round_the_loop(strands, least, integrated)), rel=1e-7)


def test_a_side_grip_pulls_what_two_bends_and_a_climb_add_up_to(
    machine: Any, spec: dict[str, Any], integrated: Callable[..., float]
) -> None:
    # Baker and Haynes, Engineering Statics 9.5: what rubs round a bend grows by its own share, here with the load on.
    m = machine(spec, "side_grip")
    check, u = m.used("pull")
    chain, half = u["qc"] * G, u["w"] * G / 2.0
    level = (u["mt"] * (u["nl"] + chain + half), 0.0, u["le"])
    gain = u["mt"] * u["nl"] + u["way"] * (half + chain)
    bend = (gain, u["mb"] / u["Rb"], u["Rb"] * pi / 2)
    strands = [(-u["way"] * chain, 0.0, u["rise"]), level, bend, (gain, 0.0, u["climb"]), bend, level]
    nodes = round_the_loop(strands, m.limits.take_up_tension, integrated)
    assert check.value == pytest.approx(max(nodes), rel=1e-7)
    assert u["Ts"] == pytest.approx(nodes[0], rel=1e-6)


def test_a_side_grip_squeezes_as_two_hands_hold_a_book(machine: Any, spec: dict[str, Any]) -> None:
    # Cutnell and Johnson, Physics, 10th ed., ch. 4, Problem 99: N = W/(2 mu); OpenStax UP1 Ex 6.3: W = m (g + a).
    m = machine(spec, "side_grip")
    check, u = m.used("squeeze_force")
    bend = m.figure("belt_speed") ** 2 / u["Rb"]
    heaviest = spec["product.weight"] * (G + max(u["a1"], u["a2"], u["a3"]) + bend)
    assert check.value == pytest.approx(u["SF"] * heaviest / 2.0 / u["mu_grip"], rel=1e-9)
    assert m.figure("grip_force") >= check.value


@pytest.mark.parametrize("turn", [0.0, 90.0, 180.0, 270.0])
def test_a_spiral_delivers_where_its_tangent_points(machine: Any, job: dict[str, Any], turn: float) -> None:
    # Two points near each end of the path, seen from above; headings are counted clockwise.
    m = machine(job | {"rise.turn": turn}, "spiral")
    turns, hand = m.figure("turns"), m.family.variant.rpartition("_")[2]
    way = {"clockwise": -1.0, "anticlockwise": 1.0}[hand]

    def heading(place: float) -> float:
        ends = [np.array([cos(way * tau * at), sin(way * tau * at)]) for at in (place - 1e-4, place + 1e-4)]
        return degrees(atan2(*(ends[1] - ends[0])[::-1]))

    clockwise = (heading(0.0) - heading(turns)) % 360.0
    assert min(abs(clockwise - turn), 360.0 - abs(clockwise - turn)) < 1e-6


@pytest.mark.parametrize("name", ["spiral", "washdown_spiral"])
def test_products_on_a_spiral_keep_their_least_gap_on_its_inside_edge(
    machine: Any, spec: dict[str, Any], name: str
) -> None:
    # Similar arcs (OpenStax UP1 10.1): what the middle of the belt runs, the inside edge runs in the share of radii.
    m = machine(spec, name)
    _, u = m.used("width")
    diameter, d = m.figure("path_diameter"), m.limits
    on_edge = m.figure("pitch") * u["ri"] / (diameter / 2) - spec["product.length"]
    assert on_edge >= d.least_gap * (1 - 1e-9)
    assert min(on_edge / d.least_gap, m.figure("gap") / d.gap) == pytest.approx(1.0)
    corner = hypot(u["ri"] + spec["product.width"], spec["product.length"] / 2)
    assert corner + u["c"] <= diameter / 2 + m.figure("belt_width") / 2 + 1e-9
