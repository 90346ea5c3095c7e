"""An easier job never puts out a family that stood: more grip, more room, less to carry, more that is allowed.

Nor does one that fits become one that depends.
"""

from collections import Counter
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import strategies as st

from intake.sizing import load_range, verdicts
from intake.spec.flat import Spec

Json = dict[str, Any]
Ease = Callable[[Json, float], Json]
WORTH = {"out": 0, "depends": 1, "fits": 2}
FACTOR = st.integers(101, 400).map(lambda n: n / 100.0)

MORE_IS_EASIER = {  # with a figure to start from where the job says none
    "test.slip_angle": 14.0,
    "test.tip_angle": 20.0,
    "test.squeeze_mark": 60.0,
    "handling.tilt": 12.0,
    "handling.squeeze_limit": 60.0,
    "space.ceiling": 5.0,
    "space.length": 3.0,
    "space.width": 1.5,
    "space.opening_width": 1.0,
    "space.opening_height": 1.0,
    "site.air_pressure": 2e5,
}
LESS_IS_EASIER = {"test.grip_slip": 60.0, "site.hours": 20.0}
EASIER_WORDS = {
    "handling.squeeze": True,
    "handling.invert": True,
    "handling.fragile": False,
    "handling.turn_flat": True,
    "handling.press_top": True,
    "product.closed": True,
    "product.rigidity": "rigid",
    "product.fill": "empty",
    "product.mix": "one_size",
    "product.wet": False,
    "rate.backs_up": False,
    "site.air": True,
    "site.hazardous_area": False,
    "space.passage": "none",
    "cleaning.method": "dry",
    "cleaning.exposed_food": False,
}


def scaled(spec: Json, factor: float, *fields: str) -> Json:
    """The spec with the figures of some fields, of all sizes, multiplied. Angles stay below a right one."""
    out = dict(spec)
    for name, said in spec.items():
        if name.partition("@")[0] in fields:
            most = 89.0 if name.startswith("test.") and name.endswith("_angle") else 1e9
            out[name] = _times(said, factor, most)
    return out


def _times(said: Any, factor: float, most: float) -> Any:
    if isinstance(said, list):
        return [None if end is None else min(most, end * factor) for end in said]
    if isinstance(said, dict):
        return {key: min(most, part * factor) if key in ("low", "high") else part for key, part in said.items()}
    return min(most, said * factor)


@pytest.fixture(scope="module")
def never_puts_out(for_all: Any, jobs: Any) -> Callable[..., None]:
    """Holds that no verdict falls: from a job to start from, by an easement of it by a factor from 1 to 4."""

    def hold(start: Callable[[Json], Json], ease: Ease, tries: int) -> None:
        count: Counter[str] = Counter()

        def law(pair: tuple[Json, Json], factor: float) -> None:
            for spec in pair:
                before = start(spec)
                was, now = verdicts(Spec.from_flat(before)), verdicts(Spec.from_flat(ease(before, factor)))
                count["standing"] += sum(verdict != "out" for verdict in was.values())
                assert [name for name in was if WORTH[now[name]] < WORTH[was[name]]] == []

        for_all(law, jobs.part, FACTOR, tries=tries)
        assert count["standing"] > tries

    return hold


@pytest.mark.parametrize("field", MORE_IS_EASIER)
def test_more_room_grip_or_allowance_never_puts_a_family_out(field: str, never_puts_out: Any) -> None:
    never_puts_out(lambda spec: {field: MORE_IS_EASIER[field], **spec}, lambda spec, by: scaled(spec, by, field), 18)


@pytest.mark.parametrize("field", LESS_IS_EASIER)
def test_less_that_has_to_be_borne_never_puts_a_family_out(field: str, never_puts_out: Any) -> None:
    never_puts_out(
        lambda spec: {field: LESS_IS_EASIER[field], **spec}, lambda spec, by: scaled(spec, 1 / by, field), 25
    )


@pytest.mark.parametrize("field", EASIER_WORDS)
def test_an_easier_word_never_puts_a_family_out(field: str, never_puts_out: Any) -> None:
    never_puts_out(dict, lambda spec, by: {**spec, field: EASIER_WORDS[field]} if field in spec else spec, 10)


def test_a_slower_rate_never_puts_a_family_out(never_puts_out: Any) -> None:
    never_puts_out(dict, lambda spec, by: scaled(spec, 1 / by, "rate.normal", "rate.peak"), 35)


def test_a_lower_peak_alone_never_puts_a_family_out(never_puts_out: Any) -> None:
    def ease(spec: Json, by: float) -> Json:
        normal, peak = spec.get("rate.normal"), spec.get("rate.peak")
        settled = isinstance(normal, float) and isinstance(peak, float)
        return {**spec, "rate.peak": max(normal, peak / by)} if settled else spec

    never_puts_out(dict, ease, 35)


def test_a_lighter_product_never_puts_a_family_out_going_up(never_puts_out: Any) -> None:
    least = max(d.weight_least for d in load_range().families.values())

    def upwards(spec: Json) -> Json:
        levels = [spec.get("rise.infeed_height"), spec.get("rise.discharge_height")]
        if not all(isinstance(level, float) for level in levels):
            return {**spec, "rise.direction": "up"}
        low, high = sorted(levels)
        return {**spec, "rise.direction": "up", "rise.infeed_height": low, "rise.discharge_height": high}

    def ease(spec: Json, by: float) -> Json:
        weights = [said for name, said in spec.items() if name.startswith("product.weight")]
        plain = all(isinstance(weight, float) and weight / by >= least for weight in weights)
        return scaled(spec, 1 / by, "product.weight") if plain else spec

    never_puts_out(upwards, ease, 35)
