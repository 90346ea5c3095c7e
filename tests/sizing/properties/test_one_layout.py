"""One layout held fixed: what more friction, weight or height of the centre does to each check by itself."""

from collections import Counter
from collections.abc import Iterator
from itertools import islice
from typing import Any

from hypothesis import strategies as st

from intake.sizing import load_range
from intake.sizing.all_families import ALL
from intake.sizing.family import Family
from intake.sizing.job import view
from intake.sizing.resolve import resolve
from intake.sizing.unknowns import TYPICAL
from intake.spec.flat import Spec

Json = dict[str, Any]
GRIPPY = ("slip", "curve")
PULLS = ("pull", "pull_backed_up")
RIDES = ("spiral", "washdown_spiral", "incline", "cover_belt")
FACTOR = st.integers(101, 300).map(lambda n: n / 100.0)


def both_ways(family: Family, before: Json, after: Json) -> Iterator[tuple[str, float, float, float, float]]:
    """Each numeric check of the family on the layouts of `before`, value and limit before and after.

    The layouts stay those of the job before; only the figures of the product move.
    """
    data = load_range()
    d = data.families[family.name]
    seen = [view(resolve(Spec.from_flat(spec), data), TYPICAL) for spec in (before, after)]
    for variant in family.variants:
        for layout in list(islice(variant.layouts(seen[0], d, Counter()), 3)):
            for one in seen:
                family.fill_all(one, layout, d)
            for row in family.all_rows:
                (value, limit), (value_after, limit_after) = (row.body(*one.sizes[0], d) for one in seen)
                yield row.id, value, limit, value_after, limit_after


def test_more_friction_never_makes_slip_worse(jobs: Any, for_all: Any) -> None:
    def law(spec: Json, angle: float, factor: float) -> None:
        more = min(89.0, angle * factor)
        for name in RIDES:
            slick, grippy = {**spec, "test.slip_angle": angle}, {**spec, "test.slip_angle": more}
            for check, value, limit, value_after, limit_after in both_ways(ALL[name], slick, grippy):
                if check in GRIPPY:
                    assert limit_after - value_after >= limit - value - 1e-9, (name, check)
                    assert limit_after > limit, (name, check)

    for_all(law, jobs.exact_whole, st.integers(1, 60).map(float), FACTOR, tries=25)


def test_more_weight_never_lowers_the_pull_going_up(jobs: Any, for_all: Any) -> None:
    def law(spec: Json, factor: float) -> None:
        light = {**spec, "rise.direction": "up"} | _levels_upwards(spec)
        heavy = {**light, "product.weight": light["product.weight"] * factor}
        for name, family in ALL.items():
            for check, value, limit, value_after, limit_after in both_ways(family, light, heavy):
                if check in PULLS:
                    assert value_after >= value * (1 - 1e-9), (name, check)
                    assert limit_after <= limit * (1 + 1e-9), (name, check)

    for_all(law, jobs.exact_whole, FACTOR, tries=25)


def _levels_upwards(spec: Json) -> Json:
    low, high = sorted((spec["rise.infeed_height"], spec["rise.discharge_height"]))
    return {"rise.infeed_height": low, "rise.discharge_height": high}


def test_a_higher_centre_never_steadies_a_product(jobs: Any, for_all: Any) -> None:
    def law(spec: Json, factor: float) -> None:
        plain = {name: said for name, said in spec.items() if name != "test.tip_angle"}
        low = {**plain, "product.centre_height": 0.3 * spec["product.height"]}
        high = {**plain, "product.centre_height": 0.3 * spec["product.height"] * factor}
        for name in RIDES:
            for check, value, _, value_after, _ in both_ways(ALL[name], low, high):
                assert check != "tip" or value_after > value, name

    for_all(law, jobs.exact_whole, FACTOR, tries=25)


def test_a_faster_rate_never_slows_the_belt_or_calms_a_curve(jobs: Any, for_all: Any) -> None:
    def law(spec: Json, factor: float) -> None:
        fast = {**spec, "rate.normal": spec["rate.normal"] * factor, "rate.peak": spec["rate.peak"] * factor}
        for name, family in ALL.items():
            for check, value, limit, value_after, limit_after in both_ways(family, spec, fast):
                if check in ("speed", "feed_speed", "curve", "rate"):
                    assert limit_after - value_after <= limit - value + 1e-9, (name, check)

    for_all(law, jobs.exact_whole, FACTOR, tries=25)
