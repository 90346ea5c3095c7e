"""Figures of a result agree with each other, with the facts and with physics, whatever the job."""

import math
from collections import Counter
from collections.abc import Iterator
from typing import Any

import pytest

from intake.sizing import load_range, size

G = 9.80665  # standard gravity, NIST SP 811
NEAR = 1e-6
Json = dict[str, Any]


def largest(said: Any) -> float:
    """The high end of a figure as it was said; the low one where the high end is open."""
    if isinstance(said, dict):
        said = [said["low"], said["high"]] if "low" in said else said["value"]
    if isinstance(said, list):
        return float(said[0] if said[1] is None else said[1])
    return float(said)


def is_settled(said: Any) -> bool:
    """True for a figure, not a range."""
    return isinstance(said, int | float)


def rate_sized_for(spec: Json, result: Json) -> float:
    """Products per minute: the peak; the normal rate while no peak is known."""
    derived = {one["field"]: one.get("high") or one["value"] for one in result["derived"]}
    said = spec.get("rate.peak") or spec.get("rate.normal") or derived.get("rate.normal")
    return largest(said)


def said_of_sizes(spec: Json, field: str) -> list[Any]:
    """What was said of a product fact, for each size; a diameter stands for length and width."""
    found = [said for name, said in spec.items() if name.partition("@")[0] == field]
    return found or [said for name, said in spec.items() if name.partition("@")[0] == "product.diameter"]


def test_speed_pitch_gap_and_load_follow_from_each_other(jobs: Any, for_all: Any) -> None:
    count: Counter[str] = Counter()

    def law(pair: tuple[Json, Json]) -> None:
        for spec in pair:
            result = size(spec).to_json()
            for name, f in _figures(result):
                for what, got, wanted in flow_identities(spec, result, f):
                    count[what] += 1
                    assert got == pytest.approx(wanted, rel=NEAR, abs=1e-9), (name, what)

    for_all(law, jobs.part, tries=15)
    assert len(count) == 5
    assert min(count.values()) > 5


def flow_identities(spec: Json, result: Json, f: Json) -> Iterator[tuple[str, float, float]]:
    """Pairs of figures that are the same thing: (what, as reported, as it follows)."""
    if "pitch" in f:
        yield "speed = rate x pitch", f["belt_speed"], rate_sized_for(spec, result) / 60.0 * f["pitch"]
        yield "aboard = path / pitch", f["products_on"], f["path_length"] / f["pitch"]
        yield "transit = path / speed", f["transit_time"], f["path_length"] / f["belt_speed"]
    sides = ("product.length",) if spec.get("handling.turn_flat") is False else ("product.length", "product.width")
    along = [said_of_sizes(spec, side) for side in sides]
    if "gap" in f and all(is_settled(said) for each in along for said in each):
        length = min((max(each) for each in along if each), key=lambda side: abs(f["pitch"] - f["gap"] - side))
        yield "pitch = length + gap", f["pitch"], length + f["gap"]
    weights = [largest(said) for said in said_of_sizes(spec, "product.weight")]
    yield "load = aboard x weight", f["load_mass"], f["products_on"] * max(weights)


def test_drives_bear_at_least_what_physics_asks_of_them(jobs: Any, for_all: Any) -> None:
    efficiency = {name: d.efficiency for name, d in load_range().families.items()}
    count: Counter[str] = Counter()

    def law(pair: tuple[Json, Json]) -> None:
        for spec in pair:
            result = size(spec).to_json()
            for name, f in _figures(result):
                for what, got, least in power_bounds(spec, result, f, efficiency[name]):
                    count[what] += 1
                    assert got >= least * (1 - NEAR) - 1e-9, (name, what, got, least)

    for_all(law, jobs.part, tries=15)
    assert len(count) == 3
    assert min(count.values()) > 10


def power_bounds(spec: Json, result: Json, f: Json, efficiency: float) -> Iterator[tuple[str, float, float]]:
    """Figures with the least that they may be: (what, as reported, least)."""
    if f["motor_power"] is not None:
        yield "motor not below shaft", f["motor_power"], f["shaft_power"]
        yield "motor brakes what drives it", f["motor_power"], -f["shaft_power"] * efficiency
    rise = rise_of(spec)
    if rise is not None and result["direction"] == "up":
        flow = max(largest(said) for said in said_of_sizes(spec, "product.weight")) * rate_sized_for(spec, result) / 60
        yield "shaft not below lifting", f["shaft_power"], flow * G * rise


def rise_of(spec: Json) -> float | None:
    """The change of height, where it was said plainly."""
    ends = [spec.get("rise.infeed_height"), spec.get("rise.discharge_height")]
    if None not in ends:
        return abs(ends[1] - ends[0]) if all(map(is_settled, ends)) else None
    return spec["rise.height"] if is_settled(spec.get("rise.height")) else None


def test_shapes_close_and_reach_the_levels_that_they_join(jobs: Any, for_all: Any) -> None:
    count: Counter[str] = Counter()

    def law(pair: tuple[Json, Json]) -> None:
        for spec in pair:
            result = size(spec).to_json()
            for name, f in _figures(result):
                count["helix"] += "turns" in f
                count["all"] += 1
                assert not list(shape_faults(spec, f)), name

    for_all(law, jobs.part, tries=15)
    assert count["helix"] > 10
    assert count["all"] > 20


def shape_faults(spec: Json, f: Json) -> Iterator[str]:
    """What does not close in the geometry of a family."""
    rise = rise_of(spec)
    if "turns" in f:
        climb = math.pi * f["path_diameter"] * math.tan(math.radians(f["slope"]))
        if f["rise_per_turn"] != pytest.approx(climb, rel=NEAR):
            yield "rise per turn against diameter and slope"
        if rise is not None and f["turns"] * f["rise_per_turn"] != pytest.approx(rise, rel=NEAR):
            yield "turns times rise per turn against rise"
        if f["outside_diameter"] < f["path_diameter"] + f["belt_width"] - 1e-9:
            yield "outside diameter against path and belt"
    levels = [spec.get("rise.infeed_height"), spec.get("rise.discharge_height")]
    known = [level for level in levels if is_settled(level)]
    if known and f["overall_height"] < max(known) - 1e-9:
        yield "lower than a level that it joins"
    if rise is not None and f["path_length"] < rise - 1e-9:
        yield "path shorter than the rise"
    if f["slope"] > 0 and f["largest_tilt"] != pytest.approx(f["slope"]):
        yield "tilt against slope"


def test_capacities_hold_what_was_asked_and_no_machine_outruns_its_mechanism(jobs: Any, for_all: Any) -> None:
    count: Counter[str] = Counter()

    def law(spec: Json) -> None:
        result = size(spec).to_json()
        for name, f in _figures(result):
            fits = result["families"][name]["verdict"] == "fits"
            count["fits"] += fits
            count["cycle"] += "cycle_time" in f
            if "cycle_time" in f and f["rate_capacity"] is not None:
                assert f["rate_capacity"] <= 60.0 / f["cycle_time"] * f["loads_per_trip"] * (1 + NEAR), name
            if fits:
                assert f["rate_capacity"] >= rate_sized_for(spec, result) * (1 - NEAR), name
            if fits and rise_of(spec) is not None:
                assert f["rise_capacity"] >= rise_of(spec) * (1 - NEAR), name

    for_all(law, jobs.whole, tries=40)
    assert min(count["fits"], count["cycle"]) > 3


def _figures(result: Json) -> Iterator[tuple[str, Json]]:
    """The figures of each family that is not out and whose machine is laid out, of jobs without a contradiction."""
    if result["conflicts"]:
        return
    for name, family in result["families"].items():
        f = {key: figure["value"] for key, figure in family["figures"].items()}
        if family["verdict"] != "out" and f.get("belt_speed") is not None:
            yield name, f
