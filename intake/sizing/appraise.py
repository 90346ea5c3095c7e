"""One family's result: the verdict by its bounds, the layout to show, checks, figures and the reasons in words."""

from dataclasses import dataclass, replace

from intake.sizing.engine import Trial, attempt
from intake.sizing.family import Family, Layout, Variant
from intake.sizing.figures import figures
from intake.sizing.job import Job, View, view
from intake.sizing.range_data import Limits
from intake.sizing.record import Views, checks
from intake.sizing.result import Check, FamilyResult, Verdict
from intake.sizing.score import penalty, reasons, total
from intake.sizing.sentences import Words
from intake.sizing.unknowns import BEST, LIKELY, TYPICAL, WORST


@dataclass(frozen=True, slots=True)
class Standing:
    """A verdict before anything is written down about it."""

    verdict: Verdict
    likely_out: bool
    layout: Layout | None
    variant: Variant | None
    swapped: bool


def standing(job: Job, family: Family) -> Standing:
    """The verdict of a family by bounds, and the layout that shows it best.

    When lowering, a load both drives and rubs, so that more of it may pull less: the corners of the bounds are not the
    ends of everything. So a family is out only when the design point and the best plausible case fail too, and fits
    only when the design point passes too.
    """
    d = job.data.families[family.name]
    best = attempt(family, view(job, BEST), d)
    if best.passes and not job.missing_basics:
        worst = _worst(job, family, d)
        if worst is not None:
            return Standing("fits", False, worst.layout, worst.variant, worst.swapped)
    if not best.passes and (not job.is_open or best.layout is None):
        return Standing("out", True, best.layout, best.variant, best.swapped)
    typical = attempt(family, view(job, TYPICAL), d)
    likely = typical if typical.passes else attempt(family, view(job, LIKELY), d)
    if not (best.passes or typical.passes or likely.passes):
        return Standing("out", True, best.layout, best.variant, best.swapped)
    shown = next((trial for trial in (typical, likely, best) if trial.passes), best)
    return Standing("depends", not likely.passes, shown.layout, shown.variant, shown.swapped)


def _worst(job: Job, family: Family, d: Limits) -> Trial | None:
    """The layout for the usual heading when every plausible heading has one, else None."""
    seen = view(job, WORST)
    headings = seen.options["turn"]
    first: Trial | None = None
    for heading in headings:
        one = View(mode=WORST, sizes=seen.sizes, options={**seen.options, "turn": (heading,)}, missing=seen.missing)
        trial = attempt(family, one, d)
        if not trial.passes:
            return None
        first = first or trial
    return first if attempt(family, view(job, TYPICAL), d).passes else None


def verdict_of(job: Job, family: Family) -> Verdict:
    """The verdict alone: the quick pass by bounds."""
    return standing(job, family).verdict


def appraise(job: Job, family: Family, words: Words) -> FamilyResult:
    """The whole result of one family."""
    d = job.data.families[family.name]
    found = standing(job, family)
    layout, variant = found.layout, found.variant
    if layout is None:
        layout, variant = _any_layout(job, family, d, variant)
    views = Views(job, family, layout, found.swapped)
    all_checks = checks(job, family, variant, layout, views)
    shown = figures(job, family, layout, views, found.swapped)
    open_asks = _open(job, found, all_checks)
    shown = {
        name: replace(one, needs=open_asks) if one.value is None and not one.needs else one
        for name, one in shown.items()
    }
    why = reasons(family, views[TYPICAL], d, job.data) if layout is not None else {}
    score = 0.0
    if found.verdict != "out" and why:
        score = max(0.0, total(why, job.data) - penalty(len(open_asks), found.likely_out, job.data))
    return FamilyResult(
        family=family.name,
        verdict=found.verdict,
        likely_out=found.likely_out and found.verdict != "out",
        because=because(found, all_checks, open_asks, words),
        depends_on=open_asks if found.verdict == "depends" else (),
        score=round(score, 4),
        variant=family.name_of(layout) if layout is not None and not job.missing_basics else None,
        checks=all_checks,
        figures=shown,
        reasons={name: round(value, 4) for name, value in why.items()},
    )


def _any_layout(job: Job, family: Family, d: Limits, variant: Variant | None) -> tuple[Layout | None, Variant | None]:
    """A layout to compute figures with although a gate has ruled the family out."""
    seen = view(job, TYPICAL)
    for candidate in (variant, *family.variants):
        if candidate is not None:
            layout = next(candidate.layouts(seen, d), None)
            if layout is not None:
                return layout, candidate
    return None, variant or family.variants[0]


def _open(job: Job, found: Standing, all_checks: tuple[Check, ...]) -> tuple[str, ...]:
    if found.verdict == "fits":
        return ()
    asks: list[str] = list(job.missing_basics)
    for check in all_checks:
        if check.passes is None and not check.warns:
            asks.extend(check.depends_on)
    if not asks:  # no single layout does for all that is plausible: what shapes the layout is open
        asks.extend(
            ask for choice in job.choices.values() if choice.is_open for ask in choice.asks if ask == "rise.turn"
        )
        asks.extend(ask for figures in job.sizes for var in figures.values() if var.is_open for ask in var.asks)
    return tuple(dict.fromkeys(asks))


def because(
    found: Standing, all_checks: tuple[Check, ...], open_asks: tuple[str, ...], words: Words
) -> tuple[str, ...]:
    """The reasons of a verdict in sentences, the weightiest first."""
    if found.verdict == "out":
        failing = [check for check in all_checks if check.passes is False and not check.warns]
        if failing and any(check.sense == "must_be" for check in failing):
            failing.sort(key=lambda check: check.sense != "must_be")
        return tuple(dict.fromkeys(words.failing(check) for check in failing))
    if found.verdict == "depends":
        likely = [check for check in all_checks if check.likely_fails and check.passes is None and not check.warns]
        if found.likely_out and likely:
            return tuple(words.say("depends", "likely_out", why=words.failing(check)) for check in likely)
        return (
            words.say("depends", "verdict", what=", ".join(open_asks))
            if open_asks
            else words.say("depends", "nothing"),
        )
    tightest = min(
        (check for check in all_checks if check.margin is not None and not check.warns), key=lambda c: c.margin or 0.0,
        default=None,
    )  # fmt: skip
    if tightest is None or tightest.margin is None:
        return (words.say("fits", "plain"),)
    return (
        words.say("fits", "verdict", check=tightest.id.replace("_", " "), margin=f"{max(0.0, tightest.margin):.0%}"),
    )
