"""How a family that stands is scored: open, weighted reasons from 0 (poor) to 1 (good)."""

from collections.abc import Mapping
from functools import cache

from intake.sizing.check_row import FIRM_MARGIN
from intake.sizing.family import Family
from intake.sizing.job import Num, View
from intake.sizing.range_data import Limits, RangeData

_GRIPPED_KINDS = ("bottle", "jar", "can", "canister")
_HELIX = ("spiral", "washdown_spiral")
WORDS_SCORED = ("rigidity", "fragile", "type", "method", "surface", "wet", "fill")
"""The words of a job that a score looks at."""
_RIDES = (*_HELIX, "incline", "cover_belt")


def reasons(family: Family, view: View, firm: float, d: Limits, data: RangeData) -> dict[str, float]:
    """The reasons for and against a family whose layout is filled in, at the design point.

    firm: the tightest margin of the checks on the machine itself, FIRM_MARGIN at most.
    """
    hi, lo = view.sizes[0]
    name, scale = family.name, data.scale
    handling, tests = _by_words(name, scored_words(view), *traits(hi, lo, data), data)
    offered = lo.lx * lo.ly if lo.lx < 100.0 and lo.ly < 100.0 else scale["floor_when_unknown_m2"]
    power = 1.0 - abs(hi.shaft_each) * hi.drives / scale["large_motors_w"]
    return {
        "floor": 1.0 - hi.fl * hi.fw / max(offered, 1e-6),
        "firmness": firm / FIRM_MARGIN,
        "handling": handling,
        "simplicity": data.simplicity[name],
        "power": max(0.0, power) - (scale["compressed_air"] if name == "index_lift" else 0.0),
        "tests": tests,
        "lead_time": lo.weeks / d.weeks_most,
    }


def scored_words(view: View) -> tuple[object, ...]:
    """The words that a score looks at, the first of each where several are looked at."""
    options = view.options
    return tuple([options[key][0] for key in WORDS_SCORED])


@cache
def _by_words(
    name: str, words: tuple[object, ...], slow_heavy: bool, tall: bool, data: RangeData
) -> tuple[float, float]:  # fmt: skip
    """What words alone say of handling and of tests, the same for every layout."""
    said = dict(zip(WORDS_SCORED, words, strict=True))
    tests = 1.0 - data.scale["each_test"] * _tests(name, said, tall)
    return _handling(name, said, slow_heavy, data), tests


def best_possible(name: str, words: tuple[object, ...], slow_heavy: bool, tall: bool, data: RangeData) -> float:
    """The most that a family can score with these words: floor, firmness, power and delivery at their best.

    slow_heavy, tall: as `traits` has it.
    """
    best = dict.fromkeys(data.weights, 1.0)
    best["handling"], best["tests"] = _by_words(name, words, slow_heavy, tall, data)
    best["simplicity"] = data.simplicity[name]
    best["power"] -= data.scale["compressed_air"] if name == "index_lift" else 0.0
    return total(best, data)


def traits(hi: Num, lo: Num, data: RangeData) -> tuple[bool, bool]:
    """A few heavy loads a minute, what a platform is for; and tall for its base, so that a tip test is asked for."""
    scale = data.scale
    slow_heavy = hi.m > scale["heavy_load_kg"] and scale["slow_rate_per_min"] > hi.R * 60.0
    return slow_heavy, data.common.tippy_ratio * min(lo.b, lo.bw) < hi.H


def firmness(family: Family, view: View, d: Limits) -> float:
    """The tightest margin of the checks on the machine itself, FIRM_MARGIN at most; room counts once, as floor."""
    hi, lo = view.sizes[0]
    least = FIRM_MARGIN
    for row in family.all_rows:
        if row.measures and (row.applies is None or row.applies(hi)):
            value, limit = row.body(hi, lo, d)
            if limit > 0.0 and value == value and abs(value) < 1e12:
                margin = (limit - value) / limit
                least = min(least, margin if row.at_most else -margin)
    return least


def _handling(name: str, words: Mapping[str, object], slow_heavy: bool, data: RangeData) -> float:
    shift = data.handling_shift
    value = data.handling[name]
    soft, fragile = words["rigidity"] == "soft", words["fragile"] is True
    if soft:
        value += {"cleated_incline": shift["cleated_soft"], "incline": shift["incline_soft"]}.get(name, 0.0)
        value += shift["helix_soft"] if name in _HELIX else 0.0
    if fragile:
        gentle = {"side_grip": "gripped_fragile", "cover_belt": "covered_fragile", "cleated_incline": "cleated_fragile"}
        value += shift[gentle[name]] if name in gentle else 0.0
    if name == "side_grip" and words["type"] in _GRIPPED_KINDS:
        value += shift["small_round_gripped"]
    if name == "reciprocating_lift" and slow_heavy:
        value += shift["slow_heavy_platform"]
    if name == "washdown_spiral" and words["method"] in ("high_pressure", "clean_in_place"):
        value += shift["washdown_needed"]
    return min(1.0, max(0.0, value))


def _tests(name: str, words: Mapping[str, object], tall: bool) -> float:
    """How many kinds of test the family asks for with this product."""
    count = 0.0
    if name in _RIDES and (words["surface"] in ("film", "glass") or words["wet"] is True):
        count += 1.0
    if name in (*_HELIX, "incline") and tall:
        count += 1.0
    if name == "side_grip" and words["rigidity"] != "rigid":
        count += 1.0
    if name == "side_grip" and words["fill"] != "full":
        count += 1.0
    return count


def total(found: Mapping[str, float], data: RangeData) -> float:
    """The weighted mean of the reasons, 0 to 1."""
    weights, score = data.weights, 0.0
    for name, value in found.items():
        if value >= 1.0:
            score += weights[name]
        elif value > 0.0:
            score += weights[name] * value
    return score / data.weights_together


def penalty(open_facts: int, likely_out: bool, data: RangeData) -> float:
    """What a verdict of depends costs."""
    cost = min(data.penalty["open_most"], data.penalty["open_fact"] * open_facts)
    return cost + (data.penalty["likely_out"] if likely_out else 0.0)
