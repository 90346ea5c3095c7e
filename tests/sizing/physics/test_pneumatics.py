"""Laws of air cylinders."""

from itertools import pairwise
from math import inf, pi

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.sizing.physics.pneumatics import (
    ISO_15552_BORES,
    ISO_15552_RODS,
    REFERENCE_PRESSURE,
    STANDARD_ATMOSPHERE,
    bore_needed,
    free_air_per_cycle,
    next_bore,
    thrust,
)

FORCES = st.floats(1.0, 5e4)
PRESSURES = st.floats(1e5, 1e6)


@given(FORCES, PRESSURES)
def test_the_bore_needed_gives_the_force(force: float, pressure: float) -> None:
    assert thrust(bore_needed(force, pressure), pressure) == pytest.approx(force, rel=1e-9)


@given(st.floats(1.0, 4e4), st.floats(6e5, 1e6))
def test_the_next_bore_gives_the_force_and_the_one_below_does_not(force: float, pressure: float) -> None:
    bore = next_bore(bore_needed(force, pressure))
    assert bore is not None
    assert thrust(bore, pressure) >= force * (1 - 1e-8)
    assert all(thrust(smaller, pressure) < force for smaller in ISO_15552_BORES if smaller < bore)


@pytest.mark.parametrize("bore", ISO_15552_BORES)
def test_a_force_of_exactly_one_bore_takes_that_bore(bore: float) -> None:
    assert next_bore(bore_needed(thrust(bore, 6.3e5), 6.3e5)) == bore
    assert next_bore(bore * 1.001) != bore


def test_past_the_largest_bore_there_is_none() -> None:
    assert next_bore(0.3201) is None
    assert next_bore(inf) is None


def test_the_bores_ascend_and_every_rod_is_slimmer_than_its_bore() -> None:
    assert all(small < large for small, large in pairwise(ISO_15552_BORES))
    assert all(0.0 < ISO_15552_RODS[bore] < bore / 2 for bore in ISO_15552_BORES)


def test_the_table_of_rods_cannot_be_written_to() -> None:
    with pytest.raises(TypeError):
        ISO_15552_RODS[0.04] = 0.02  # type: ignore[index]  # that it cannot be is the point


@given(st.floats(0.01, 0.3), st.floats(0.05, 0.9), PRESSURES)
def test_the_backward_stroke_loses_just_the_area_of_the_rod(bore: float, slim: float, pressure: float) -> None:
    rod = bore * slim
    lost = thrust(bore, pressure) - thrust(bore, pressure, rod)
    assert lost == pytest.approx(pressure * pi / 4 * rod**2, rel=1e-6)


@given(st.floats(0.01, 0.3), st.floats(0.01, 2.0), PRESSURES)
def test_free_air_without_a_rod_is_twice_the_cylinder_at_its_pressure_ratio(
    bore: float, stroke: float, pressure: float
) -> None:
    swept = pi / 4 * bore**2 * stroke
    ratio = (pressure + STANDARD_ATMOSPHERE) / REFERENCE_PRESSURE
    assert free_air_per_cycle(bore, 0.0, stroke, pressure) == pytest.approx(2 * swept * ratio, rel=1e-9)


def test_cylinders_filled_with_warm_air_hold_less_free_air() -> None:
    cold, hot = (free_air_per_cycle(0.05, 0.02, 0.4, 6e5, kelvin) for kelvin in (293.15, 2 * 293.15))
    assert hot == pytest.approx(cold / 2, rel=1e-12)


def test_the_mass_of_air_is_the_same_in_the_cylinder_and_outside() -> None:
    # Amount of gas n = p V / (R T), inside at pressure, outside at the reference state.
    gas_constant, inside_k = 8.314462618, 310.0
    volume = pi / 4 * (2 * 0.063**2 - 0.02**2) * 0.5
    inside = (6e5 + STANDARD_ATMOSPHERE) * volume / (gas_constant * inside_k)
    outside = REFERENCE_PRESSURE * free_air_per_cycle(0.063, 0.02, 0.5, 6e5, inside_k) / (gas_constant * 293.15)
    assert outside == pytest.approx(inside, rel=1e-12)
