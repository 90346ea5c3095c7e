"""Laws of belt tension, and the closed form held against a general solver of differential equations."""

from itertools import pairwise
from math import cos, e, inf, nan, pi, sin, sqrt, tau

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from intake.sizing.physics.helix import curvature, helix_length, slope_of
from intake.sizing.physics.power import lift_power, shaft_power
from intake.sizing.physics.tension import (
    LoopPull,
    Strand,
    capstan,
    carry_gain,
    guide_rate,
    loop_tensions,
    strand_end,
    strand_start_for_end,
)

RATES_A = st.floats(-300.0, 300.0)
RATES_B = st.one_of(st.just(0.0), st.floats(1e-12, 0.5))
LENGTHS = st.floats(0.0, 40.0)
TENSIONS = st.floats(0.0, 3000.0)
STRANDS = st.builds(Strand, RATES_A, RATES_B, LENGTHS)


def solved(start: float, a: float, b: float, length: float) -> float:
    """The same strand by stepping along it."""
    run = solve_ivp(lambda _, t: a + b * t, (0.0, length), [start], rtol=1e-10, atol=1e-9)
    return float(run.y[0, -1])


@pytest.mark.parametrize("start", [0.0, 150.0, 900.0])
@pytest.mark.parametrize("rate_a", [-80.0, 0.0, 45.0])
@pytest.mark.parametrize("rate_b", [0.0, 1e-9, 1e-4, 0.05, 0.4])
def test_a_strand_ends_where_a_general_solver_ends(start: float, rate_a: float, rate_b: float) -> None:
    assert strand_end(start, rate_a, rate_b, 11.0) == pytest.approx(
        solved(start, rate_a, rate_b, 11.0), rel=1e-7, abs=1e-6
    )


@pytest.mark.parametrize("climbs", [True, False])
def test_a_helical_strand_ends_where_its_forces_on_a_path_in_space_say(climbs: bool) -> None:
    # Forces on each short piece, from first principles: weight, normal force of the bed, the guide's push
    # T x curvature, and friction of both against the motion.
    diameter, rise, turns, q, mu_bed, mu_guide = 1.6, 0.55, 4.25, 160.0, 0.18, 0.12
    slope = slope_of(diameter, rise)
    length = helix_length(diameter, rise, turns)
    r, c = diameter / 2, rise / tau

    def growth(_: float, t: float) -> float:
        weight_along = q * c / sqrt(r * r + c * c) * (1 if climbs else -1)
        bed = q * r / sqrt(r * r + c * c)
        guide = t * r / (r * r + c * c)
        return weight_along + mu_bed * bed + mu_guide * guide

    run = solve_ivp(growth, (0.0, length), [120.0], rtol=1e-10, atol=1e-9)
    ours = strand_end(120.0, carry_gain(q, slope, mu_bed, climbs), guide_rate(mu_guide, slope, r), length)
    assert ours == pytest.approx(float(run.y[0, -1]), rel=1e-7)


@given(TENSIONS, STRANDS)
def test_going_back_along_a_strand_finds_its_beginning(start: float, strand: Strand) -> None:
    end = strand_end(start, *strand)
    # Rounding at the far end, seen from the near end, is divided by the same growth.
    assert strand_start_for_end(end, *strand) == pytest.approx(start, rel=1e-7, abs=1e-7)


def test_the_start_for_an_end_found_by_root_search_is_the_closed_form() -> None:
    strand = Strand(40.0, 0.2, 12.0)
    found = brentq(lambda start: strand_end(start, *strand) - 2500.0, -1e4, 1e4, xtol=1e-9)
    assert strand_start_for_end(2500.0, *strand) == pytest.approx(found, rel=1e-9)


@given(TENSIONS, RATES_A, RATES_B, st.floats(0.0, 20.0), st.floats(0.0, 20.0))
def test_a_strand_cut_in_two_ends_where_the_whole_one_ends(
    start: float, rate_a: float, rate_b: float, first: float, second: float
) -> None:
    whole = strand_end(start, rate_a, rate_b, first + second)
    in_two = strand_end(strand_end(start, rate_a, rate_b, first), rate_a, rate_b, second)
    assert in_two == pytest.approx(whole, rel=1e-7, abs=1e-5)


@given(TENSIONS, STRANDS, st.floats(1e-3, 100.0))
def test_more_tension_at_the_start_is_at_least_as_much_more_at_the_end(
    start: float, strand: Strand, more: float
) -> None:
    gained = strand_end(start + more, *strand) - strand_end(start, *strand)
    assert gained >= more - 1e-6 * abs(strand_end(start, *strand)) - 1e-6


@pytest.mark.parametrize("rate_b", [5e-324, 1e-300, 1e-15, 0.9e-8, 1.1e-8, 1e-7])
def test_a_guide_that_hardly_rubs_differs_hardly_from_none(rate_b: float) -> None:
    straight = strand_end(100.0, 20.0, 0.0, 10.0)
    assert strand_end(100.0, 20.0, rate_b, 10.0) == pytest.approx(straight * (1 + 10 * rate_b), rel=1e-6)
    assert strand_start_for_end(straight, 20.0, rate_b, 10.0) == pytest.approx(100.0, rel=1e-4)


@pytest.mark.parametrize("length", [0.9999e-7, 1.0001e-7])
def test_the_two_ways_of_reckoning_meet_without_a_step(length: float) -> None:
    # B = 0.1: the product B x length passes 1e-8 between these two lengths.
    gained = strand_end(0.0, 20.0, 0.1, length)
    assert gained / length == pytest.approx(20.0 * (1 + 0.1 * length / 2), rel=1e-12)
    assert -strand_start_for_end(0.0, 20.0, 0.1, length) / length == pytest.approx(
        20.0 * (1 - 0.1 * length / 2), rel=1e-12
    )


def test_a_tension_beyond_the_largest_float_is_infinite_and_no_error() -> None:
    assert strand_end(10.0, 5.0, 3.0, 1000.0) == inf
    assert strand_end(inf, 5.0, 0.1, 10.0) == inf
    assert strand_end(1e308, 0.0, 1e10, 1e308) == inf
    assert strand_end(0.0, -5.0, 3.0, 1000.0) == -inf
    assert strand_start_for_end(inf, 5.0, 3.0, 1000.0) == inf
    assert capstan(10.0, 50.0, 50.0) == inf
    assert loop_tensions([Strand(5.0, 3.0, 1000.0)], 0, 10.0) == LoopPull(inf, 10.0, inf)


@pytest.mark.parametrize("exponent", [699.0, 701.0, 709.0, 710.0, 720.0, 799.0])
def test_the_end_of_the_largest_float_is_passed_without_an_error(exponent: float) -> None:
    assert strand_end(10.0, 5.0, 1.0, exponent) > 1e300
    assert capstan(10.0, 1.0, exponent) > 1e300


@given(
    st.floats(-1e300, 1e300),
    st.floats(-1e300, 1e300),
    st.floats(0.0, 1e300),
    st.floats(0.0, 1e300),
)
def test_no_finite_input_makes_a_tension_that_is_not_a_number(
    start: float, rate_a: float, rate_b: float, length: float
) -> None:
    assert strand_end(start, rate_a, rate_b, length) is not nan
    assert strand_end(start, rate_a, rate_b, length) == strand_end(start, rate_a, rate_b, length)


def test_where_weight_and_rubbing_balance_the_tension_stays() -> None:
    assert strand_end(200.0, -20.0, 0.1, 1e6) == 200.0


def test_a_strand_without_length_changes_nothing() -> None:
    assert strand_end(123.0, 50.0, 0.3, 0.0) == 123.0
    assert strand_start_for_end(123.0, 50.0, 0.3, 0.0) == 123.0
    assert strand_end(1e300, 50.0, 1e10, 0.0) == 1e300


@given(st.floats(1.0, 1e4), st.floats(0.01, 0.6), st.floats(0.05, 5.0), st.floats(0.01, 7.0))
def test_a_weightless_level_curve_is_the_rope_formula(tension: float, mu: float, radius: float, angle: float) -> None:
    curve = strand_end(tension, 0.0, guide_rate(mu, 0.0, radius), radius * angle)
    assert curve == pytest.approx(capstan(tension, mu, angle), rel=1e-9)
    assert curve == pytest.approx(tension * e ** (mu * angle), rel=1e-9)


def test_a_slack_belt_stays_slack_round_a_bend() -> None:
    assert capstan(0.0, 1000.0, 1000.0) == 0.0


def test_the_guide_of_a_helix_rubs_with_its_curvature() -> None:
    assert guide_rate(1.0, 0.3, 0.75) == pytest.approx(curvature(1.5, 0.3), rel=1e-12)


@given(st.floats(0.0, 500.0), st.floats(0.0, 1.4), st.floats(0.0, 1.0))
def test_up_and_down_differ_by_twice_the_weight_along_the_slope(load: float, slope: float, friction: float) -> None:
    up, down = (carry_gain(load, slope, friction, climbs) for climbs in (True, False))
    assert up - down == pytest.approx(2 * load * sin(slope), rel=1e-9, abs=1e-9)
    assert up + down == pytest.approx(2 * load * friction * cos(slope), rel=1e-9, abs=1e-9)


# ---- the loop -------------------------------------------------------------------------------------------------


def climbing_loop(friction: float = 0.2, belt: float = 40.0, load: float = 90.0) -> list[Strand]:
    """Up loaded, down empty, 8 m each at 0.3 rad."""
    return [
        Strand(carry_gain(belt + load, 0.3, friction, climbs=True), 0.0, 8.0),
        Strand(carry_gain(belt, 0.3, friction, climbs=False), 0.0, 8.0),
    ]


# Mild enough that following the nodes once more in the test does not blow up its own rounding.
MILD = st.builds(Strand, RATES_A, st.one_of(st.just(0.0), st.floats(1e-12, 0.1)), st.floats(0.0, 20.0))
LOOPS = st.lists(MILD, min_size=1, max_size=6)


def nodes(strands: list[Strand], drive_after: int, pull: LoopPull) -> list[float]:
    """Tensions at the ends of the strands, from the drive on."""
    tensions = [pull.slack]
    for i in range(len(strands)):
        tensions.append(strand_end(tensions[-1], *strands[(drive_after + 1 + i) % len(strands)]))
    return tensions


@given(LOOPS, st.integers(0, 5), st.floats(0.0, 500.0))
def test_no_node_of_a_loop_is_below_the_least_and_one_is_at_it(loop: list[Strand], seat: int, least: float) -> None:
    drive_after = seat % len(loop)
    pull = loop_tensions(loop, drive_after, least)
    along = nodes(loop, drive_after, pull)
    room = 1e-6 * max(map(abs, along)) + 1e-6
    assert min(along) >= least - room
    # No higher than it must be: lowering the start by a bit brings some node below the least.
    lower = LoopPull(pull.tight, pull.slack - 10 * room, pull.greatest)
    assert min(nodes(loop, drive_after, lower)) < least
    assert pull.tight == pytest.approx(along[-1], rel=1e-6, abs=1e-6)
    assert pull.greatest == pytest.approx(max(along), rel=1e-6, abs=1e-6)


@given(LOOPS, st.integers(0, 5), st.integers(0, 5))
def test_it_does_not_matter_with_which_strand_the_list_of_a_loop_begins(
    loop: list[Strand], seat: int, turn: int
) -> None:
    n = len(loop)
    drive_after, turn = seat % n, turn % n
    turned = loop[turn:] + loop[:turn]
    assert loop_tensions(turned, (drive_after - turn) % n, 50.0) == loop_tensions(loop, drive_after, 50.0)


def test_without_rubbing_the_pull_is_the_sum_of_the_gains_wherever_the_drive_stands() -> None:
    loop = climbing_loop()
    expected = sum(strand.a * strand.length for strand in loop)
    for drive_after in (0, 1):
        for least in (0.0, 80.0, 400.0):
            assert loop_tensions(loop, drive_after, least).pull == pytest.approx(expected, rel=1e-12)


def test_the_power_at_the_drive_is_the_power_that_raises_the_goods_and_rubs() -> None:
    friction, belt, load, speed = 0.2, 40.0, 90.0, 0.5
    pull = loop_tensions(climbing_loop(friction, belt, load), 0, 60.0)
    rise = 8.0 * sin(0.3)
    raising = lift_power(load / 9.80665 * speed, rise)
    rubbing = friction * cos(0.3) * 8.0 * (2 * belt + load) * speed
    assert shaft_power(pull.tight, pull.slack, speed) == pytest.approx(raising + rubbing, rel=1e-12)


def test_an_empty_loop_without_friction_balances() -> None:
    assert loop_tensions(climbing_loop(friction=0.0, load=0.0), 0, 60.0).pull == pytest.approx(0.0, abs=1e-9)


def test_a_load_going_down_with_little_friction_drives_the_machine() -> None:
    loop = [
        Strand(carry_gain(130.0, 0.4, 0.05, climbs=False), 0.0, 8.0),
        Strand(carry_gain(40.0, 0.4, 0.05, climbs=True), 0.0, 8.0),
    ]
    assert loop_tensions(loop, 0, 60.0).pull < 0.0


def test_a_tighter_take_up_costs_pull_where_a_guide_rubs_and_only_there() -> None:
    rubbing = [Strand(50.0, 0.1, 8.0), Strand(5.0, 0.0, 8.0)]
    pulls = [loop_tensions(rubbing, 0, least).pull for least in (20.0, 50.0, 100.0)]
    assert all(low < high for low, high in pairwise(pulls))
    straight = [Strand(50.0, 0.0, 8.0), Strand(5.0, 0.0, 8.0)]
    pulls = [loop_tensions(straight, 0, least).pull for least in (20.0, 50.0, 100.0)]
    assert pulls == pytest.approx([pulls[0]] * 3)


def test_a_helix_pulled_in_tiers_strains_the_belt_less_than_one_pulled_from_the_top() -> None:
    tier = Strand(carry_gain(150.0, 0.12, 0.2, climbs=True), guide_rate(0.2, 0.12, 0.6), 3.8)
    whole = loop_tensions([tier._replace(length=4 * 3.8)], 0, 80.0)
    one = loop_tensions([tier], 0, 80.0)
    assert one.greatest * 4 < whole.greatest


def test_a_loop_solved_by_root_search_on_the_start_tension_agrees() -> None:
    loop = [Strand(70.0, 0.15, 9.0), Strand(-12.0, 0.05, 6.0), Strand(4.0, 0.0, 3.0)]

    def shortfall(start: float) -> float:
        tension, lowest = start, start
        for strand in (loop[2], loop[0], loop[1]):
            tension = solved(tension, *strand)
            lowest = min(lowest, tension)
        return lowest - 75.0

    found = brentq(shortfall, 0.0, 2000.0, xtol=1e-8)
    assert loop_tensions(loop, 1, 75.0).slack == pytest.approx(found, rel=1e-6)


def test_a_loop_held_at_balance_by_a_long_rubbing_strand_keeps_its_digits() -> None:
    # The second strand ends at 0 only if it begins within a hair of the 2 N at which weight and rubbing balance;
    # followed forwards, rounding there would grow by exp(18.5).
    loop = [Strand(0.0, 0.5, 13.0), Strand(-1.0, 0.5, 37.0)]
    assert loop_tensions(loop, 1, 0.0).tight == 0.0
    assert loop_tensions(loop, 0, 0.0).slack == pytest.approx(2.0, rel=1e-7)


@pytest.mark.parametrize(
    "wrong", [Strand(nan, 0.1, 5.0), Strand(10.0, -0.1, 5.0), Strand(10.0, 0.1, -5.0), Strand(10.0, 0.1, inf)]
)
def test_a_loop_with_a_strand_out_of_range_is_refused(wrong: Strand) -> None:
    with pytest.raises(ValueError, match="strands"):
        loop_tensions([Strand(10.0, 0.0, 5.0), wrong], 0, 50.0)


def test_a_loop_without_strands_is_refused() -> None:
    with pytest.raises(ValueError, match="drive_after"):
        loop_tensions([], 0, 50.0)


def test_a_bend_put_in_as_a_strand_is_the_rope_formula() -> None:
    bend = Strand(0.0, guide_rate(0.25, 0.0, 0.4), 0.4 * pi)
    assert loop_tensions([bend], 0, 100.0).tight == pytest.approx(capstan(100.0, 0.25, pi), rel=1e-12)
