"""Flags: what has to be tested, warned of or referred out, whatever the figures say."""

from collections.abc import Mapping

from intake.sizing.job import Job
from intake.sizing.range_data import Limits
from intake.sizing.result import FamilyResult

_RIDES = ("spiral", "washdown_spiral", "incline", "cover_belt", "cleated_incline")
_HELIX = ("spiral", "washdown_spiral")
_CARRIERS = ("index_lift", "continuous_lift", "reciprocating_lift")
ORDER = (
    "freezer_refer_out", "hazardous_refer_out", "heavy_refer", "space_conflict", "ceiling_conflict", "rate_too_high",
    "slip_test", "tip_test", "squeeze_test", "empties_test", "inversion", "multi_size_changeover",
    "transfer_small_product",
    "too_tall_consult", "tall_guarding", "ship_split", "lead_time_risk", "washdown_pressure", "exposed_food",
    "hot_product",
)  # fmt: skip


def flags(
    job: Job, best: str | None, families: Mapping[str, FamilyResult], blocked: tuple[str, ...]
) -> tuple[str, ...]:
    """All flags of a result in their fixed order. `blocked`: conflicts found by leaving room or rate out."""
    raised: set[str] = set(blocked)
    common = job.data.common
    raised |= _site(job, common)
    if families and all(f.verdict == "out" for f in families.values()):
        heavy = [f for f in families.values() if (c := f.check("weight")) is not None and c.passes is False]
        if len(heavy) == len(families):
            raised.add("heavy_refer")
    for name in _leading(best, families):
        raised |= _best(job, name, families[name], common)
    return tuple(flag for flag in ORDER if flag in raised)


_CLOSE_BEHIND = 0.06


def _leading(best: str | None, families: Mapping[str, FamilyResult]) -> list[str]:
    """The best family and those close behind it, which the talk may still turn to."""
    if best is None:
        return []
    least = families[best].score - _CLOSE_BEHIND
    return [name for name, f in families.items() if f.verdict != "out" and f.score >= least]


def _site(job: Job, common: Limits) -> set[str]:
    raised: set[str] = set()
    choices, size = job.choices, job.sizes[0]
    if choices["zone"].typical == "freezer":
        raised.add("freezer_refer_out")
    if choices["hazard"].typical is True:
        raised.add("hazardous_refer_out")
    if choices["method"].typical in ("high_pressure", "clean_in_place"):
        raised.add("washdown_pressure")
    if choices["food"].typical is True:
        raised.add("exposed_food")
    if size["tprod"].hi[2] >= common.hot_product_from:
        raised.add("hot_product")
    small = [min(f["L"].lo[2], f["W"].lo[2]) for f in job.sizes if not f["L"].missing and not f["W"].missing]
    if small and min(small) <= common.small_plan_dimension + 1e-9:
        raised.add("transfer_small_product")
    return raised


def _best(job: Job, best: str, result: FamilyResult, common: Limits) -> set[str]:
    raised: set[str] = set()
    words = {name: choice.typical for name, choice in job.choices.items()}
    known = {name for name, choice in job.choices.items() if not choice.missing}
    rides = best in _RIDES and best != "cleated_incline"
    if rides and _slip_wanted(job, words, known):
        raised.add("slip_test")
    if best in (*_HELIX, "incline", "cover_belt", "cleated_incline") and _is_tippy(job, common):
        raised.add("tip_test")
    if best == "side_grip":
        raised |= _gripped(job, words, known, result)
    if (best in ("side_grip",) and len(job.sizes) > 1) or (best == "side_grip" and _several(job)):
        raised.add("multi_size_changeover")
    if words["invert"] is True and best == "side_grip" and result.variant == "c_path":
        raised.add("inversion")
    rise = job.sizes[0]["rise"]
    if not rise.missing and rise.typical > common.tall_above and best in (*_HELIX, "side_grip"):
        raised.add("too_tall_consult")
    pull = result.check("pull")
    if best in (*_HELIX, "side_grip") and pull is not None and pull.margin is not None and 0.0 <= pull.margin < 0.05:
        raised.add("too_tall_consult")
    if not rise.missing and rise.typical > common.guarding_above and best in _CARRIERS:
        raised.add("tall_guarding")
    for check_id, flag in (("doorway", "ship_split"), ("ship", "ship_split"), ("lead_time", "lead_time_risk")):
        check = result.check(check_id)
        if check is not None and check.fails_at_design and _is_said(job, check_id):
            raised.add(flag)
    return raised


def _is_said(job: Job, check_id: str) -> bool:
    """Warnings speak of what was said, not of what is assumed."""
    if check_id == "doorway":
        return job.spec.knows("space.opening_width") or job.spec.knows("space.opening_height")
    return check_id == "ship" or job.spec.knows("project.weeks")


def _slip_wanted(job: Job, words: Mapping[str, object], known: set[str]) -> bool:
    """Slick, wet or soft underneath, or held by nothing but an assumption."""
    if words["wet"] is True or "surface" not in known:
        return True
    return not job.spec.knows("test.slip_angle")


def _is_tippy(job: Job, common: Limits) -> bool:
    for size in job.sizes:
        if size["H"].missing or size["L"].missing:
            continue
        base = min(size["b"].lo[2], size["bw"].lo[2])
        if size["H"].hi[2] > common.tippy_ratio * base:
            return True
    return False


def _gripped(job: Job, words: Mapping[str, object], known: set[str], result: FamilyResult) -> set[str]:
    raised: set[str] = set()
    hard = words["surface"] in ("glass", "metal") and "surface" in known
    limited = job.spec.knows("handling.squeeze_limit") or job.spec.knows("test.squeeze_mark")
    if (words["rigidity"] != "rigid" or not hard or not limited) and not job.spec.knows("test.squeeze_mark"):
        raised.add("squeeze_test")
    if words["fill"] in ("empty", "both"):
        raised.add("empties_test")
    if result.variant == "c_path":
        raised.add("inversion")
    return raised


def _several(job: Job) -> bool:
    sizes = job.spec.of("product.sizes")
    return sizes is not None and sizes.largest is not None and sizes.largest > 1
