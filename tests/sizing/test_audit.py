"""Rules that hold for every result, whatever the job. Kept on random whole and partial specs with fixed seeds.

1. A reader can recompute each figure of a check from its formula and inputs.
2. A check that is settled agrees with its own figures; verdicts agree with their checks.
3. Figures agree with each other and with physics.
4. Knowing more never takes back what was certain.
5. The same spec gives the same bytes, whatever the order of its keys; no figure is NaN or infinite.
"""

import json
import math
from collections.abc import Callable, Iterator
from random import Random
from typing import Any

import pytest

from intake.sizing import size

G = 9.80665
WARNINGS = ("ship", "doorway", "transfer", "lead_time")
FUNCTIONS = {name: getattr(math, name) for name in ("sqrt", "sin", "cos", "tan", "asin", "acos", "atan", "exp", "pi")}
FUNCTIONS |= {"abs": abs, "min": min, "max": max}
Maker = Callable[[Random], dict[str, Any]]
Cutter = Callable[[dict[str, Any], Random, float], dict[str, Any]]


@pytest.fixture(scope="module")
def sized(whole: Maker, part: Cutter) -> list[tuple[dict[str, Any], dict[str, Any]]]:
    """Specs and their results, whole and in part."""
    rng = Random(20_406)
    found = []
    for _ in range(40):
        spec = whole(rng)
        cut = part(spec, rng, rng.choice([0.4, 0.6, 0.8, 0.95]))
        found += [(spec, size(spec).to_json()), (cut, size(cut).to_json())]
    return found


def families(
    sized: list[tuple[dict[str, Any], dict[str, Any]]],
) -> Iterator[tuple[dict[str, Any], str, dict[str, Any]]]:
    for spec, result in sized:
        for name, family in result["families"].items():
            yield spec, name, family


def test_every_value_can_be_recomputed_from_its_formula_and_inputs(sized: Any) -> None:
    count = 0
    for _, name, family in families(sized):
        for check in family["checks"]:
            inputs = {symbol: use["value"] for symbol, use in check["uses"].items()}
            if not check["formula"] or check["value"] is None or None in inputs.values():
                continue
            # Our own formulas out of our own code, with no names but those of mathematics.
            value = eval(check["formula"].replace("^", "**"), {"__builtins__": {}}, {**FUNCTIONS, **inputs})
            assert value == pytest.approx(check["value"], rel=1e-6, abs=1e-9), (name, check["id"])
            count += 1
    assert count > 5000


def test_every_limit_can_be_recomputed_from_its_formula_and_inputs(sized: Any) -> None:
    count = 0
    without: set[str] = set()
    for _, name, family in families(sized):
        for check in family["checks"]:
            inputs = {symbol: use["value"] for symbol, use in check["limit_uses"].items()}
            if check["formula"] and not check["limit_formula"]:
                without.add(check["id"])
            if not check["limit_formula"] or check["limit"] is None or None in inputs.values():
                continue
            limit = eval(check["limit_formula"].replace("^", "**"), {"__builtins__": {}}, {**FUNCTIONS, **inputs})
            assert limit == pytest.approx(check["limit"], rel=1e-6, abs=1e-9), (name, check["id"])
            count += 1
    assert count > 5000
    assert without <= {"lead_time", "lean", "slope"}  # usual weeks by height and build; may lean or not; a list


def test_a_settled_check_agrees_with_its_own_figures(sized: Any) -> None:
    for _, name, family in families(sized):
        for check in family["checks"]:
            value, limit = check["value"], check["limit"]
            if check["passes"] is None or not isinstance(value, float) or not isinstance(limit, float):
                continue
            slack = 1e-6 * abs(limit) + 1e-9
            holds = value <= limit + slack if check["sense"] == "at_most" else value >= limit - slack
            assert holds == check["passes"], (name, check["id"], value, limit)


def test_verdicts_agree_with_their_checks_and_say_why(sized: Any) -> None:
    for _, name, family in families(sized):
        blocking = [check["passes"] for check in family["checks"] if check["id"] not in WARNINGS]
        assert family["because"], name
        if family["verdict"] == "out":
            assert False in blocking, name
        else:
            assert False not in blocking, name
        if family["verdict"] == "fits":
            assert all(passes is True for passes in blocking), name
        if family["verdict"] == "depends":
            assert family["depends_on"], name


def test_figures_agree_with_each_other(sized: Any) -> None:
    for spec, name, family in families(sized):
        f = {key: figure["value"] for key, figure in family["figures"].items()}
        if family["verdict"] == "out" or f.get("belt_speed") is None:
            continue
        weights = [w[1] if isinstance(w, list) else w for key, w in spec.items() if key.startswith("product.weight")]
        rate = spec.get("rate.peak") or spec["rate.normal"]
        if "pitch" in f:
            assert f["belt_speed"] == pytest.approx(rate / 60 * f["pitch"]), name
            assert f["products_on"] == pytest.approx(f["path_length"] / f["pitch"]), name
        if "gap" in f:
            longest = max(length for key, length in spec.items() if key.startswith("product.length"))
            assert f["pitch"] == pytest.approx(longest + f["gap"]), name
        assert f["load_mass"] == pytest.approx(f["products_on"] * max(weights)), name
        if f["motor_power"] is not None:
            assert f["motor_power"] >= f["shaft_power"], name
        if spec.get("rise.direction") == "up" and {"rise.infeed_height", "rise.discharge_height"} <= set(spec):
            rise = spec["rise.discharge_height"] - spec["rise.infeed_height"]
            assert f["shaft_power"] >= max(weights) * G * rate / 60 * rise * (1 - 1e-6), name
            assert f["overall_height"] >= max(spec["rise.infeed_height"], spec["rise.discharge_height"])
        if "turns" in f:
            climb = math.pi * f["path_diameter"] * math.tan(math.radians(f["slope"]))
            assert f["rise_per_turn"] == pytest.approx(climb), name
        if "cycle_time" in f and f["rate_capacity"] is not None:
            assert f["rate_capacity"] <= 60 / f["cycle_time"] * (1 + 1e-6), name


def test_figures_stand_within_their_range_and_an_unknown_one_says_what_it_needs(sized: Any) -> None:
    for _, name, family in families(sized):
        for key, figure in family["figures"].items():
            if figure["value"] is None and family["verdict"] != "out":
                assert figure["needs"], (name, key)
            if "low" in figure:
                assert figure["low"] - 1e-9 <= figure["value"] <= figure["high"] + 1e-9, (name, key)


def test_what_is_out_on_part_of_a_spec_is_out_on_the_whole(whole: Maker, part: Cutter) -> None:
    rng, count = Random(77), 0
    for _ in range(40):
        spec = whole(rng)
        cut, full = size(part(spec, rng, 0.7)), size(spec)
        if full.conflicts:
            continue
        for name, family in cut.families.items():
            if family.verdict == "out":
                count += 1
                assert full.families[name].verdict == "out", (name, family.because)
    assert count > 100


def test_what_fits_on_part_of_a_spec_fits_for_every_plausible_completion(whole: Maker, part: Cutter) -> None:
    rng, count = Random(5), 0
    for _ in range(60):
        spec = whole(rng)
        cut = part(spec, rng, 0.95)
        before = size(cut)
        plausible = {key: value for key, value in spec.items() if key not in cut and _is_plausible(before, key, value)}
        after = size({**cut, **plausible})
        if after.conflicts:
            continue
        for name, family in before.families.items():
            if family.verdict == "fits":
                count += 1
                assert after.families[name].verdict == "fits", (name, after.families[name].because, plausible)
    assert count > 5


def _is_plausible(result: Any, key: str, value: Any) -> bool:
    for assumption in result.assumptions:
        if key in assumption.about:
            if assumption.values is not None:
                return value in assumption.values
            if assumption.low is not None and not isinstance(value, list | str):
                return bool(assumption.low <= value <= assumption.high)
    return False


def test_the_same_spec_gives_the_same_bytes_in_any_order_of_keys(whole: Maker) -> None:
    rng = Random(9)
    for _ in range(5):
        spec = whole(rng)
        keys = list(spec)
        rng.shuffle(keys)
        shuffled = json.dumps(size({key: spec[key] for key in keys}).to_json(), allow_nan=False)
        assert shuffled == json.dumps(size(spec).to_json(), allow_nan=False)
