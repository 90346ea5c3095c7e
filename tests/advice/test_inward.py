"""What is told lies on the side that holds: a largest value never above it, a needed one never short of it."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.advice.inward import shown_enough, shown_inward
from intake.spec.display import System

SYSTEMS = st.sampled_from(["us", "si"])
RISES = st.one_of(
    st.floats(0.3, 60.0), st.integers(30, 6000).map(lambda n: n / 100), st.integers(12, 2400).map(lambda n: n * 0.0254)
)
RATES = st.floats(0.011, 2000.0) | st.integers(1, 2000).map(float)
_NOISE = 1e-8


def figure(text: str) -> float:
    """What a text of ours says, in metres or a minute: "14 ft 1 1/2 in", "4.29 m", "65.4/min"."""
    found = re.fullmatch(r"([\d.]+) ?(m|mm|/min|/h)", text)
    if found is not None:
        return float(found[1]) * {"m": 1.0, "mm": 1e-3, "/min": 1.0, "/h": 1.0 / 60.0}[found[2]]
    inches = 0.0
    for amount, unit in re.findall(r"([\d./ ]+?) (ft|in)", text):
        parts = [float(part.split("/")[0]) / float((part + "/1").split("/")[1]) for part in amount.split()]
        inches += sum(parts) * (12.0 if unit == "ft" else 1.0)
    assert inches, text
    return inches * 0.0254


@given(RISES, SYSTEMS)
def test_a_largest_rise_is_told_a_little_low_never_high(rise: float, system: System) -> None:
    told = figure(shown_inward(rise, "m", system))
    assert told <= rise * (1.0 + _NOISE)
    assert told > rise - (0.0254 if system == "us" else 0.01) - _NOISE


@given(RATES, SYSTEMS)
def test_a_highest_rate_is_told_a_little_low_never_high(rate: float, system: System) -> None:
    told = figure(shown_inward(rate, "1/min", system))
    assert rate * 0.99 < told <= rate * (1.0 + _NOISE)


@given(st.floats(0.05, 60.0), SYSTEMS, st.booleans())
def test_a_length_that_is_needed_is_told_on_the_side_that_holds(value: float, system: System, upwards: bool) -> None:
    told = figure(shown_enough(value, "m", system, upwards=upwards))
    assert told >= value * (1.0 - _NOISE) if upwards else told <= value * (1.0 + _NOISE)
    assert abs(told - value) <= max(0.0026, 0.011 * value)


@given(RATES, SYSTEMS, st.booleans())
def test_a_rate_that_is_needed_is_told_on_the_side_that_holds(rate: float, system: System, upwards: bool) -> None:
    told = figure(shown_enough(rate, "1/min", system, upwards=upwards))
    assert told >= rate * (1.0 - _NOISE) if upwards else told <= rate * (1.0 + _NOISE)
    assert told == pytest.approx(rate, rel=0.011)


@pytest.mark.parametrize(
    ("value", "unit", "system", "upwards", "told"),
    [
        (1.0001, "degC", "si", True, "1.1 °C"), (-17.96, "degC", "us", False, "-0.4 °F"),
        (13.6999, "kg", "si", False, "13.6 kg"), (13.6999, "kg", "us", False, "30.2 lb"),
        (31.0, "1/min", "us", False, "31/min"), (137.42, "N", "si", True, "138 N"),
    ],
)  # fmt: skip
def test_other_units_are_told_on_the_side_that_holds_too(
    value: float, unit: str, system: System, upwards: bool, told: str
) -> None:
    assert shown_enough(value, unit, system, upwards=upwards) == told
