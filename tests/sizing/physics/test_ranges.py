"""Every physics function refuses what lies outside of its range, nan first of all, and says which argument it was."""

import inspect
import pkgutil
from collections.abc import Callable
from importlib import import_module
from math import inf, isfinite, nan, pi
from typing import Any

import pytest

from intake.sizing import physics
from intake.sizing.physics import (
    cleats,
    cover,
    envelope,
    flow,
    friction,
    grip,
    helix,
    lift,
    motion,
    pneumatics,
    power,
    tension,
    tipping,
    transfer,
)

POSITIVE = (0.0, -1.0, inf)
NOT_NEGATIVE = (-1e-9, inf)
SLOPE = (-1e-9, pi / 2, 2.0, inf)
FINITE = (inf, -inf)
TENSION = (-inf,)  # +inf is what a belt far out of reach comes to, and must pass through
SAFETY = (0.99, 0.0, -1.0, inf)
RATING = (-1e-9,)

# function: {argument: (a good value, values out of range)}
FUNCTIONS: dict[Callable[..., Any], dict[str, tuple[Any, tuple[float, ...]]]] = {
    friction.friction_needed: {
        "slope": (0.2, SLOPE),
        "accel": (0.5, NOT_NEGATIVE),
        "lateral": (0.5, NOT_NEGATIVE),
    },
    friction.steepest_slope: {
        "grip": (0.5, NOT_NEGATIVE),
        "accel": (0.5, NOT_NEGATIVE),
        "lateral": (0.5, NOT_NEGATIVE),
    },
    friction.slip_slope: {"mu": (0.3, NOT_NEGATIVE)},
    friction.friction_from_slope: {"angle": (0.3, SLOPE)},
    tipping.tipping_share: {
        "slope": (0.2, SLOPE),
        "accel": (0.5, NOT_NEGATIVE),
        "height": (0.2, NOT_NEGATIVE),
        "base": (0.2, POSITIVE),
    },
    tipping.tipping_share_lateral: {
        "slope": (0.2, SLOPE),
        "lateral": (0.5, NOT_NEGATIVE),
        "height": (0.2, NOT_NEGATIVE),
        "base_width": (0.2, POSITIVE),
    },
    tipping.tipping_share_round: {
        "slope": (0.2, SLOPE),
        "accel": (0.5, NOT_NEGATIVE),
        "lateral": (0.5, NOT_NEGATIVE),
        "height": (0.2, NOT_NEGATIVE),
        "diameter": (0.2, POSITIVE),
    },
    tipping.tip_slope: {"height": (0.2, POSITIVE), "base": (0.2, POSITIVE)},
    flow.pitch_straight: {"length": (0.3, POSITIVE), "floor": (0.1, NOT_NEGATIVE)},
    flow.pitch_curved: {
        "length": (0.3, POSITIVE),
        "floor": (0.1, NOT_NEGATIVE),
        "least": (0.02, NOT_NEGATIVE),
        "r_centre": (0.6, (0.39, 0.0, inf)),
        "r_inside": (0.4, (0.0, -0.4, 0.61)),
    },
    flow.belt_speed: {"rate_per_s": (0.5, NOT_NEGATIVE), "pitch": (0.5, POSITIVE)},
    flow.lateral_accel: {"speed": (0.5, NOT_NEGATIVE), "radius": (0.5, POSITIVE)},
    helix.slope_of: {"path_diameter": (1.2, POSITIVE), "rise_per_turn": (0.5, NOT_NEGATIVE)},
    helix.rise_per_turn: {"path_diameter": (1.2, POSITIVE), "slope": (0.15, SLOPE)},
    helix.helix_length: {
        "path_diameter": (1.2, POSITIVE),
        "rise_per_turn": (0.5, NOT_NEGATIVE),
        "turns": (3.0, NOT_NEGATIVE),
    },
    helix.curvature: {"path_diameter": (1.2, POSITIVE), "slope": (0.15, SLOPE)},
    helix.least_inside_radius: {
        "width": (0.3, POSITIVE),
        "length": (0.4, NOT_NEGATIVE),
        "lane": (0.4, FINITE),
    },
    helix.width_in_curve: {
        "r_inside": (0.5, NOT_NEGATIVE),
        "width": (0.3, POSITIVE),
        "length": (0.4, NOT_NEGATIVE),
    },
    tension.strand_end: {
        "start": (100.0, TENSION),
        "rate_a": (20.0, FINITE),
        "rate_b": (0.1, NOT_NEGATIVE),
        "length": (5.0, NOT_NEGATIVE),
    },
    tension.strand_start_for_end: {
        "end": (100.0, TENSION),
        "rate_a": (20.0, FINITE),
        "rate_b": (0.1, NOT_NEGATIVE),
        "length": (5.0, NOT_NEGATIVE),
    },
    tension.carry_gain: {
        "load_n_per_m": (150.0, NOT_NEGATIVE),
        "slope": (0.1, SLOPE),
        "friction": (0.2, NOT_NEGATIVE),
        "climbs": (True, ()),
    },
    tension.runaway_pull: {
        "load_n_per_m": (100.0, NOT_NEGATIVE),
        "back_n_per_m": (20.0, NOT_NEGATIVE),
        "slope": (0.2, SLOPE),
        "friction": (0.2, NOT_NEGATIVE),
        "length": (5.0, NOT_NEGATIVE),
        "level": (1.0, NOT_NEGATIVE),
    },
    tension.guide_rate: {"friction": (0.15, NOT_NEGATIVE), "slope": (0.1, SLOPE), "radius": (0.6, POSITIVE)},
    tension.capstan: {
        "tension": (100.0, RATING),
        "mu": (0.25, NOT_NEGATIVE),
        "angle": (pi, NOT_NEGATIVE),
    },
    tension.loop_tensions: {
        "strands": ([tension.Strand(10.0, 0.0, 5.0)], ()),
        "drive_after": (0, (-1, 1, 7)),
        "least": (50.0, NOT_NEGATIVE),
    },
    power.shaft_power: {"tight": (800.0, TENSION), "slack": (180.0, FINITE), "speed": (0.5, NOT_NEGATIVE)},
    power.motor_power_needed: {"shaft": (900.0, ()), "efficiency": (0.9, (0.0, -0.5, 1.01, inf))},
    power.lift_power: {"mass_flow_kg_s": (2.0, NOT_NEGATIVE), "rise": (5.0, FINITE)},
    power.next_motor: {"needed_w": (560.0, RATING), "series": (power.IEC_KW, ())},
    grip.grip_needed: {
        "mass": (2.0, POSITIVE),
        "mu": (0.5, POSITIVE),
        "safety": (2.0, SAFETY),
        "accel": (0.2, NOT_NEGATIVE),
        "bend_accel": (0.2, NOT_NEGATIVE),
    },
    grip.bend_accel: {"speed": (0.5, NOT_NEGATIVE), "radius": (0.5, POSITIVE)},
    cover.cover_force: {
        "weight_per_m": (20.0, NOT_NEGATIVE),
        "pitch": (0.5, POSITIVE),
        "slope": (0.7, SLOPE),
        "hold_down": (5.0, NOT_NEGATIVE),
    },
    cover.cover_needed_ratio: {
        "mass": (10.0, POSITIVE),
        "slope": (0.7, SLOPE),
        "accel": (0.3, NOT_NEGATIVE),
        "cover_force": (12.0, NOT_NEGATIVE),
        "drag": (0.05, NOT_NEGATIVE),
        "safety": (1.3, SAFETY),
    },
    motion.trapezoid_peak: {
        "distance": (2.0, NOT_NEGATIVE),
        "speed": (1.0, POSITIVE),
        "accel": (0.5, POSITIVE),
        "decel": (0.5, POSITIVE),
    },
    motion.trapezoid_time: {
        "distance": (2.0, NOT_NEGATIVE),
        "speed": (1.0, POSITIVE),
        "accel": (0.5, POSITIVE),
        "decel": (0.5, POSITIVE),
    },
    motion.peak_speed_for_time: {
        "distance": (2.0, NOT_NEGATIVE),
        "time": (6.0, POSITIVE),
        "accel": (0.5, POSITIVE),
        "decel": (0.5, POSITIVE),
    },
    pneumatics.thrust: {
        "bore": (0.063, POSITIVE),
        "pressure_gauge": (6e5, NOT_NEGATIVE),
        "rod": (0.02, (-0.001, 0.063, 0.1)),
    },
    pneumatics.bore_needed: {"force": (1000.0, NOT_NEGATIVE), "pressure_gauge": (6e5, POSITIVE)},
    pneumatics.next_bore: {"needed": (0.05, RATING)},
    pneumatics.free_air_per_cycle: {
        "bore": (0.05, POSITIVE),
        "rod": (0.02, (-0.001, 0.05, 0.1)),
        "stroke": (0.4, POSITIVE),
        "pressure_gauge": (6e5, NOT_NEGATIVE),
        "temperature_k": (293.15, POSITIVE),
    },
    lift.carrier_speed: {"rate_per_s": (0.5, NOT_NEGATIVE), "pitch": (0.8, POSITIVE)},
    lift.feed_speed_needed: {
        "length": (0.4, POSITIVE),
        "carrier_speed": (0.3, NOT_NEGATIVE),
        "window": (0.2, FINITE),
    },
    lift.reciprocating_cycle: {
        "travel": (4.0, NOT_NEGATIVE),
        "speed": (1.0, POSITIVE),
        "accel": (0.5, POSITIVE),
        "load_s": (3.0, NOT_NEGATIVE),
        "unload_s": (3.0, NOT_NEGATIVE),
    },
    lift.index_cycle: {
        "pitch": (0.5, NOT_NEGATIVE),
        "speed": (1.0, POSITIVE),
        "accel": (2.0, POSITIVE),
        "dwell_s": (1.5, NOT_NEGATIVE),
    },
    transfer.sag: {"length": (0.4, NOT_NEGATIVE), "radius": (2.0, POSITIVE)},
    transfer.rollers_under: {"base": (0.3, NOT_NEGATIVE), "roller_pitch": (0.075, POSITIVE)},
    transfer.bridges_gap: {"base": (0.2, POSITIVE), "gap": (0.05, NOT_NEGATIVE)},
    cleats.leans_over: {"slope": (0.7, SLOPE), "height": (0.05, NOT_NEGATIVE), "base": (0.2, POSITIVE)},
    cleats.cleat_height_needed: {"height": (0.2, POSITIVE), "share": (0.5, POSITIVE)},
    envelope.run_plan_length: {"rise": (3.0, NOT_NEGATIVE), "slope": (0.4, (0.0, -0.1, pi / 2, inf))},
}

NOT_A_NUMBER = frozenset({"climbs", "strands", "series"})
SPELLED_OTHERWISE = {
    ("strand_end", "start"): "tension",
    ("strand_start_for_end", "end"): "tension",
    ("pitch_curved", "r_centre"): "radii",
    ("pitch_curved", "r_inside"): "radii",
    ("reciprocating_cycle", "travel"): "distance",
    ("index_cycle", "pitch"): "distance",
}

CASES = [
    pytest.param(function, name, wrong, id=f"{function.__name__}-{name}-{wrong:g}")
    for function, arguments in FUNCTIONS.items()
    for name, (_, out_of_range) in arguments.items()
    if name not in NOT_A_NUMBER
    for wrong in (nan, *out_of_range)
]


def good_call(function: Callable[..., Any]) -> dict[str, Any]:
    return {name: good for name, (good, _) in FUNCTIONS[function].items()}


@pytest.mark.parametrize(("function", "name", "wrong"), CASES)
def test_a_value_out_of_range_is_refused_by_the_name_of_its_argument(
    function: Callable[..., Any], name: str, wrong: float
) -> None:
    word = SPELLED_OTHERWISE.get((function.__name__, name), name)
    with pytest.raises(ValueError, match=f"^{word} "):
        function(**good_call(function) | {name: wrong})


@pytest.mark.parametrize("function", FUNCTIONS, ids=lambda function: function.__name__)
def test_the_good_values_of_the_table_are_accepted_and_give_a_finite_answer(function: Callable[..., Any]) -> None:
    answer = function(**good_call(function))
    assert all(isfinite(number) for number in (answer if isinstance(answer, tuple) else (answer,)))


def test_no_function_of_the_package_is_missing_from_the_table() -> None:
    public = {
        function
        for module in pkgutil.iter_modules(physics.__path__, physics.__name__ + ".")
        for name, function in inspect.getmembers(import_module(module.name), inspect.isfunction)
        if not name.startswith("_") and function.__module__.startswith(physics.__name__)
    }
    assert public == set(FUNCTIONS)


@pytest.mark.parametrize("function", FUNCTIONS, ids=lambda function: function.__name__)
def test_every_argument_of_a_function_is_in_the_table(function: Callable[..., Any]) -> None:
    assert list(inspect.signature(function).parameters) == list(FUNCTIONS[function])


@pytest.mark.parametrize("function", FUNCTIONS, ids=lambda function: function.__name__)
def test_every_function_states_its_units_range_and_source(function: Callable[..., Any]) -> None:
    text = function.__doc__ or ""
    for heading in ("Args:", "Returns:", "Valid for:", "Source:", ">>>"):
        assert heading in text, heading
    for name in inspect.signature(function).parameters:
        assert f"        {name}: " in text, name
