"""Air cylinders, against textbooks and the published series of bores."""

from collections.abc import Callable
from math import pi
from typing import Any

import pytest
from scipy import constants

from intake.sizing.physics.pneumatics import (
    ISO_15552_BORES,
    ISO_15552_RODS,
    bore_needed,
    free_air_per_cycle,
    next_bore,
    thrust,
)

IN = 0.0254
FT3 = 0.3048**3
PSI = 6894.757  # NIST SP 811
LBF = 4.448222  # NIST SP 811

THRUSTS = [  # bore [m], gauge pressure [Pa], rod [m], newtons per unit of the print, printed force
    pytest.param(2 * IN, 60 * PSI, 0.0, LBF, "188", id="FIRST Robotics pneumatics manual: 2 in at 60 psi, lb"),
    pytest.param(1 * IN, 60 * PSI, 0.0, LBF, "47", id="FIRST Robotics pneumatics manual: 1 in at 60 psi, lb"),
    pytest.param(0.150, 6.90e6, 0.0, 1.0, "1.22e5", id="OpenStax College Physics 2e 11.3 Ex 11.2: disk, N"),
    pytest.param(
        0.0250, 500.0 / (pi / 4 * 0.00500**2), 0.0, 1.0, "1.25e4", id="OpenStax College Physics 2e 11.5 Ex 11.6, N"
    ),
    pytest.param(
        2.5 * IN,
        100 * PSI,
        1.0 * IN,
        LBF,
        "412.3",
        id="Wentzell, Machine Design Ex 10.1: rod side, lb (inputs only, recomputed)",
    ),
    pytest.param(0.063, 6e5, 0.0, 1.0, "1870", id="63 mm at 6 bar, out, N (own arithmetic)"),
    pytest.param(0.063, 6e5, 0.020, 1.0, "1682", id="63 mm at 6 bar, back, rod from memory, N (own arithmetic)"),
]


@pytest.mark.parametrize(("bore", "pressure", "rod", "unit", "printed"), THRUSTS)
def test_a_cylinder_pushes_with_the_printed_force(
    bore: float, pressure: float, rod: float, unit: float, printed: str, as_printed: Callable[..., Any]
) -> None:
    assert thrust(bore, pressure, rod) / unit == as_printed(printed, share=0.0)


def test_a_force_needs_the_printed_bore(as_printed: Callable[..., Any]) -> None:
    # Wentzell, Machine Design Ex 10.1 (inputs only, recomputed): 450 lb at 100 psi.
    assert bore_needed(450 * LBF, 100 * PSI) / IN == as_printed("2.394", share=0.0)


# The books refer free air to one atmosphere, we to 1 bar: this many of our cubic metres are one of theirs.
OUR_AIR_IN_A_BOOKS = 1.0e5 / 101325.0
BOOK_SHARE = 1e-3  # 14.7 psi is itself rounded


def one_filling(bore: float, stroke: float, pressure: float, kelvin: float = 293.15) -> float:
    """Free air of one stroke, at the reference of the books: half a cycle of a cylinder without a rod."""
    return free_air_per_cycle(bore, 0.0, stroke, pressure, kelvin) / 2 * OUR_AIR_IN_A_BOOKS


def test_one_filling_a_cycle_uses_the_printed_free_air(as_printed: Callable[..., Any]) -> None:
    # Esposito, Fluid Power Ex 13-12 (inputs only, recomputed): 1.75 in, 6 in, 30 cycles/min, 100 psig at 80 F.
    kelvin = (80.0 + 459.67) / 1.8
    per_minute = 30 * one_filling(1.75 * IN, 6 * IN, 100 * PSI, kelvin)
    assert per_minute / FT3 == as_printed("1.91", share=BOOK_SHARE)


def test_a_supply_of_air_makes_the_printed_number_of_cycles(as_printed: Callable[..., Any]) -> None:
    # Esposito, Fluid Power Ex 13-13 (inputs only, recomputed): 44.5 mm, 152 mm, 687 kPa at 27 C, 0.0555 m3/min.
    cycles = 0.0555 / one_filling(0.0445, 0.152, 687e3, 300.15)
    assert cycles == as_printed("30.8", share=0.325 / 101.0)  # an atmosphere of 101 kPa there, 101.325 here


def test_forty_strokes_a_minute_use_the_printed_free_air(as_printed: Callable[..., Any]) -> None:
    # Sullivan, Fluid Power Ex 11.5 (inputs only, recomputed): 2 in, 10 in, 80 psig, no temperature.
    assert 40 * one_filling(2 * IN, 10 * IN, 80 * PSI) / FT3 == as_printed("4.68", share=BOOK_SHARE)


@pytest.mark.parametrize(("psig", "unrounded"), [(100.0, "1.596"), (20.0, "0.4828")])
def test_the_rod_side_uses_the_free_air_that_follows_from_the_data(
    psig: float, unrounded: str, as_printed: Callable[..., Any]
) -> None:
    # Instructor problem, Hennepin Technical College: 2 in, rod 1 in, 10 in, 15 cycles/min. Printed 1.56 and 0.47
    # scfm come of rounding 0.2045 cfm to 0.20 first: the physics is followed.
    both = free_air_per_cycle(2 * IN, 1 * IN, 10 * IN, psig * PSI) * OUR_AIR_IN_A_BOOKS
    rod_side = both - one_filling(2 * IN, 10 * IN, psig * PSI)
    assert 15 * rod_side / FT3 == as_printed(unrounded, share=BOOK_SHARE)


def test_the_bores_span_the_range_of_the_standard() -> None:
    # ISO 15552:2018, title and abstract: bores from 32 mm to 320 mm.
    assert (ISO_15552_BORES[0], ISO_15552_BORES[-1]) == (0.032, 0.320)


def test_every_bore_is_one_of_the_recommended_series() -> None:
    # Second hand: open pneumatics e-book on the ISO series of bores (ISO 3320 by its title).
    series = {8, 10, 12, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 140, 160, 200, 250, 320}
    ours = {round(bore * 1e3, 6) for bore in ISO_15552_BORES}
    assert ours <= series
    assert {size for size in series if size >= 32} - ours == {140}


def test_the_rods_are_those_of_the_standard_from_memory() -> None:
    # ISO 15552, dimension table: from memory, look it up before it decides anything.
    listed = "32/12 40/16 50/20 63/20 80/25 100/25 125/32 160/40 200/40 250/50 320/63"
    pairs = {tuple(int(size) for size in pair.split("/")) for pair in listed.split()}
    assert {(round(bore * 1e3), round(rod * 1e3)) for bore, rod in ISO_15552_RODS.items()} == pairs


def test_the_bore_of_a_worked_example_goes_up_to_the_next_in_the_series() -> None:
    # 2.394 in is 60.8 mm: Wentzell, Machine Design Ex 10.1 (inputs only, recomputed).
    assert next_bore(bore_needed(450 * LBF, 100 * PSI)) == 0.063


@pytest.mark.parametrize(("bore", "rod", "stroke", "gauge"), [(0.032, 0.012, 0.4, 6e5), (0.1, 0.025, 0.7, 4.5e5)])
def test_a_cycle_uses_the_amount_of_air_that_the_gas_law_counts(
    bore: float, rod: float, stroke: float, gauge: float
) -> None:
    # p V = n R T with the gas constant of CODATA (scipy.constants): moles in both filled sides, and the room that
    # they take at 1 bar and 20 degC.
    kelvin, outside = 303.15, constants.atm
    room = pi / 4 * bore**2 * stroke + pi / 4 * (bore**2 - rod**2) * stroke
    moles = (gauge + outside) * room / (constants.R * kelvin)
    free = moles * constants.R * 293.15 / constants.bar
    assert free_air_per_cycle(bore, rod, stroke, gauge, kelvin) == pytest.approx(free, rel=1e-12)
