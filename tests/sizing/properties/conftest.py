"""Random jobs for the laws of sizing: whole ones, parts of them, and wild ones with every fact that a spec may hold.

The default run is small and the same each time. `pytest --hypothesis-profile=deep tests/sizing/properties` goes
through a thousand new jobs for each law. Jobs of trade come from a seed, so that their figures spread evenly; what is
done to them is drawn by hypothesis, so that it shrinks.
"""

import tomllib
from collections.abc import Callable
from pathlib import Path
from random import Random
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from intake.spec.vocabulary import Field, vocabulary

settings.register_profile("deep", max_examples=1000)
_UNCHECKED = [HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much]

FlatSpec = dict[str, Any]

DATA = tomllib.loads(Path(__file__).with_name("jobs.toml").read_text(encoding="utf-8"))
KINDS, USUAL, RARE, EASY = (DATA[name] for name in ("kinds", "usual", "rare", "easy"))
ROUND = ("bottle", "can", "keg")


def _one_of(rng: Random, options: list[Any]) -> Any:
    if len(options) == 2 and isinstance(options[0], float):
        return round(rng.uniform(*options), 4)
    word = rng.choice(options)
    return word if isinstance(word, str | bool) else float(word)


def whole_job(rng: Random, exact: bool) -> FlatSpec:
    """A job of which everything that matters is said. `exact`: figures only, no ranges, hedges or further sizes."""
    kind = rng.choice([*sorted(KINDS), *["case"] * 5])
    shortest, longest, light, dense, slow, fast = KINDS[kind]
    length = rng.uniform(shortest, longest)
    width, height = length * rng.uniform(0.5, 1.0), length * rng.uniform(0.3, 2.2 if kind in ROUND else 0.9)
    weight = max(0.03, length * width * height * rng.uniform(light, dense))
    normal, level, rise = rng.uniform(slow, fast), rng.uniform(0.3, 1.2), rng.uniform(0.4, rng.choice([2.0, 4.0, 9.0]))
    way = rng.choice(["up", "up", "up", "down"])
    first, last = (level, level + rise) if way == "up" else (level + rise, level)
    spec: FlatSpec = {
        "product.type": kind,
        "product.length": length,
        "product.width": width,
        "product.height": height,
        "product.weight": weight,
        "rate.normal": normal,
        "rate.peak": normal * rng.uniform(1.0, 1.6),
        "rise.direction": rng.choice([way] * 9 + ["both"]),
        "rise.infeed_height": first,
        "rise.discharge_height": last,
        "space.ceiling": level + rise + height + rng.uniform(0.02, 4.0),
    }
    spec = {name: round(v, 4) if isinstance(v, float) else v for name, v in spec.items()}
    spec |= {name: _one_of(rng, options) for name, options in USUAL.items()}
    if rng.random() < 0.5:
        spec |= {**EASY, "space.ceiling": round(level + rise + height + 3.0, 4)}
    if kind in ROUND and rng.random() < 0.5:
        spec["product.diameter"] = spec.pop("product.length")
        del spec["product.width"]
    spec |= {name: _one_of(rng, RARE[name]) for name in rng.sample(sorted(RARE), rng.choice([0, 0, 1, 2]))}
    if rng.random() < 0.25:
        spec |= _measured(rng, length, width, height, weight)
    return spec if exact else spec | _further_size(rng, spec) | _ranges(rng, spec)


def _measured(rng: Random, length: float, width: float, height: float, weight: float) -> FlatSpec:
    """A few facts that go with the product's own size and weight."""
    all_of: FlatSpec = {
        "product.base": length * rng.uniform(0.4, 1.0),
        "product.base_width": width * rng.uniform(0.4, 1.0),
        "product.centre_height": height * rng.uniform(0.2, 0.8),
        "test.tip_angle": rng.uniform(5.0, 60.0),
        "test.squeeze_mark": rng.uniform(10.0, 500.0),
        "test.grip_slip": weight * 9.80665 / (2.0 * rng.uniform(0.15, 1.2)),
    }
    return {name: round(all_of[name], 4) for name in rng.sample(sorted(all_of), rng.choice([1, 2]))}


def _further_size(rng: Random, spec: FlatSpec) -> FlatSpec:
    """Sometimes a second, smaller or larger size."""
    if rng.random() > 0.15:
        return {}
    names = [n for n in spec if n in ("product.length", "product.width", "product.height", "product.weight")]
    return {f"{name}@2": round(spec[name] * rng.uniform(0.5, 1.2), 4) for name in names}


def _ranges(rng: Random, spec: FlatSpec) -> FlatSpec:
    """Sometimes a few figures as ranges, open ends or hedged words."""
    if rng.random() > 0.3:
        return {}
    out: FlatSpec = {}
    for name in rng.sample(sorted(spec), rng.choice([1, 2, 3])):
        said, known = spec[name], vocabulary()[name]
        if not known.is_number:
            out[name] = {"value": said, "hedged": True}
        elif name != "rise.turn" and known.kind != "count":
            low, high = sorted((said, round(said * rng.uniform(0.7, 1.3), 4)))
            doubt = {"low": low, "high": high, "spread": rng.random() < 0.5}
            out[name] = rng.choice([[low, high], [low, high], doubt, doubt, [low, None], [None, high]])
    return out


def whole_jobs(*, exact: bool) -> st.SearchStrategy[FlatSpec]:
    """Whole jobs."""
    return st.integers(0, 2**32).map(lambda seed: whole_job(Random(seed), exact))


@st.composite
def part_jobs(draw: st.DrawFn, *, exact: bool) -> tuple[FlatSpec, FlatSpec]:
    """Some of the facts of a job, and the whole of it. Further sizes are never left out."""
    spec, rng = draw(whole_jobs(exact=exact)), Random(draw(st.integers(0, 2**32)))
    share = rng.choice([0.3, 0.5, 0.7, 0.85, 0.95])
    return {name: value for name, value in spec.items() if "@" in name or rng.random() < share}, spec


# ---------------------------------------------------------------- anything that a spec may hold

_SIGNED = ("temperature.room", "temperature.product", "rise.infeed_height", "rise.discharge_height")
_ZERO_TOO = ("handling.", "test.", "space.", "site.hours", "site.air_pressure", "cleaning.pressure", "project.weeks")
_EXTREME = st.sampled_from([1e-3, 0.01, 0.1, 0.5, 1.0, 5.0, 30.0, 100.0, 1e3, 1e4]) | st.floats(1e-3, 1e4)


def _possible_figure(known: Field) -> st.SearchStrategy[float]:
    if known.kind == "count":
        return st.sampled_from([1, 2, 3, 40, 10_000])
    usual = {**USUAL, **RARE}.get(known.id)
    figure = _EXTREME if usual is None else _EXTREME | st.sampled_from([float(x) for x in usual])
    if known.id.startswith(_ZERO_TOO):
        figure |= st.just(0.0)
    if known.unit == "deg":
        figure |= st.sampled_from([0.0, 45.0, 89.9999, 90.0, 90.5, 180.0, 359.96, 360.0, 720.0])
    return figure | figure.map(lambda x: -min(x, 273.0)) if known.id in _SIGNED else figure


def possible(name: str) -> st.SearchStrategy[Any]:
    """Any value that the input takes for a field, plain."""
    known = vocabulary()[name]
    if known.is_number:
        return _possible_figure(known)
    if known.kind == "yes_no":
        return st.booleans()
    return st.sampled_from(known.choices) if known.choices else st.text(max_size=6)


@st.composite
def _possible_entry(draw: st.DrawFn, name: str) -> Any:
    """The same as a range, an open end, hedged or plain."""
    shape, value = draw(st.integers(0, 9)), draw(possible(name))
    if shape < 6:
        return value
    if not vocabulary()[name].is_number:
        return {"value": value, "hedged": draw(st.booleans())}
    low, high = sorted((value, draw(possible(name))))
    forms = [[low, high], [low, None], [None, high], {"low": low, "high": high, "spread": draw(st.booleans())}]
    return draw(st.sampled_from(forms))


@st.composite
def wild_jobs(draw: st.DrawFn) -> FlatSpec:
    """Anything legal: a whole job, a part of one, or nothing, with extreme figures and odd facts written over it."""
    spec = dict(draw(st.just({}) | whole_jobs(exact=False) | part_jobs(exact=False).map(lambda pair: pair[0])))
    sized = [f"{name}@2" for name in vocabulary() if name.startswith("product.")]
    names = st.sampled_from([*vocabulary(), *sized])
    for name in draw(st.lists(names, max_size=12, unique=True)):
        spec[name] = draw(_possible_entry(name.partition("@")[0]))
    return spec


class Jobs:
    """The strategies: `whole`, `part` (with its whole), `wild`; `exact`: figures only, no ranges or further sizes.

    `figures`: every field that holds a figure with a unit. `easiest`: facts that make a job easiest.
    """

    whole = whole_jobs(exact=False)
    part = part_jobs(exact=False)
    exact_whole = whole_jobs(exact=True)
    exact_part = part_jobs(exact=True)
    wild = wild_jobs()
    possible = staticmethod(possible)
    easiest: FlatSpec = DATA["easiest"]
    figures = tuple(name for name, known in vocabulary().items() if known.kind == "quantity")


@pytest.fixture(scope="session")
def jobs() -> type[Jobs]:
    """Strategies for jobs."""
    return Jobs


@pytest.fixture(scope="session")
def for_all() -> Callable[..., None]:
    """Holds a law against what strategies draw: `tries` jobs, always the same; a thousand new ones when deep."""
    is_deep = settings.get_current_profile_name() == "deep"

    def hold(law: Callable[..., None], *drawn: st.SearchStrategy[Any], tries: int) -> None:
        count = settings.get_profile("deep").max_examples if is_deep else tries
        rules = settings(max_examples=count, derandomize=not is_deep, deadline=None, suppress_health_check=_UNCHECKED)
        rules(given(*drawn)(law))()

    return hold
