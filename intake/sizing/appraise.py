"""One family's result: the verdict by its bounds, the layout to show, checks, figures and the reasons in words."""

from collections import Counter
from dataclasses import dataclass, replace

from intake.sizing.because import because, fed_turned, searched
from intake.sizing.deferred import Deferred, DeferredRow, DeferredTuple
from intake.sizing.engine import Trial, attempt
from intake.sizing.family import Family, Layout, Variant
from intake.sizing.figures import Figures
from intake.sizing.findings import Finding, findings, mark_what_stops
from intake.sizing.job import Job, view
from intake.sizing.range_data import Limits
from intake.sizing.result import FamilyResult, Verdict
from intake.sizing.score import firmness, penalty, reasons, total
from intake.sizing.sentences import Words
from intake.sizing.shape import shape_of
from intake.sizing.unknowns import BEST, LIKELY, TYPICAL, WORST
from intake.sizing.views import Views


@dataclass(frozen=True, slots=True)
class Standing:
    """A verdict before anything is written down about it."""

    verdict: Verdict
    likely_out: bool
    trial: Trial
    turned: bool = False
    """It stands only with the other side of the product leading."""


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
            return Standing("fits", False, worst, worst.turned)
    if not best.passes and (not job.is_open or best.layout is None):
        return Standing("out", True, best)
    typical = attempt(family, view(job, TYPICAL), d)
    likely = typical if typical.passes else attempt(family, view(job, LIKELY), d)
    if not (best.passes or typical.passes or likely.passes):
        return Standing("out", True, best)
    shown = next((trial for trial in (typical, likely, best) if trial.passes), best)
    if shown.turned and job.choices["turn_flat"].is_open:  # nobody said that it may be turned: show it as described
        shown = next((trial for trial in (typical, likely) if trial.layout is not None), likely)
    return Standing("depends", not likely.passes, shown, (likely if likely.passes else best).turned)


def _worst(job: Job, family: Family, d: Limits) -> Trial | None:
    """The layout for the usual heading when every plausible heading has one, else None."""
    seen = view(job, WORST)
    headings = seen.options["turn"]
    first: Trial | None = None
    for heading in headings:
        one = replace(seen, options={**seen.options, "turn": (heading,)})
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
    trial = found.trial
    layout, variant = trial.layout, trial.variant
    if layout is None:
        layout, variant = _any_layout(job, family, d, variant)
    views = Views(job, family, layout, trial.swapped, trial.turned)
    may_turn = found.turned and job.choices["turn_flat"].is_open
    checked = findings(job, family, variant, layout, views, may_turn)
    if found.verdict == "out":
        checked = mark_what_stops(checked, trial.stopped_by)
    open_asks = _open(job, family, found, checked)
    why = reasons(family, views[TYPICAL], firmness(family, views[TYPICAL], d), d, job.data) if layout else {}
    score = 0.0
    if found.verdict != "out" and why:
        score = max(0.0, total(why, job.data) - penalty(len(open_asks), found.likely_out, job.data))
    fed = fed_turned(job, found.verdict, words) if found.turned else ""
    search = _searched(found, words)

    def why_so() -> list[str]:
        said = because(found.verdict, found.likely_out, checked, open_asks, words)
        return [*([fed] if fed else []), *said, *([search] if search else [])]

    return FamilyResult(
        family=family.name,
        verdict=found.verdict,
        likely_out=found.likely_out and found.verdict != "out",
        because=DeferredTuple(why_so),
        depends_on=open_asks if found.verdict == "depends" else (),
        score=round(score, 4),
        variant=family.name_of(layout) if layout is not None and not job.missing_basics else None,
        checks=DeferredRow([one.id for one in checked], lambda place: checked[place].check()),
        figures=Figures(job, family, layout, views, open_asks),
        reasons={name: round(min(1.0, max(0.0, value)), 4) for name, value in why.items()},
        stopped=dict(sorted((trial.stopped or {}).items())),
        turned=trial.turned,
        fed=fed,
        searched=search,
        fails=tuple(one.id for one in checked if one.fails),
        shape=Deferred(shape_of, job, family, layout, views),
    )


def _searched(found: Standing, words: Words) -> str:
    trial = found.trial
    if found.verdict == "depends" and not trial.passes:
        return ""
    return searched(trial.stopped or {}, trial.passes, words) or ""


def _any_layout(job: Job, family: Family, d: Limits, variant: Variant | None) -> tuple[Layout | None, Variant | None]:
    """A layout to compute figures with although a gate has ruled the family out."""
    seen = view(job, TYPICAL)
    for candidate in (variant, *family.variants):
        if candidate is not None:
            layout = next(candidate.layouts(seen, d, Counter()), None)
            if layout is not None:
                return layout, candidate
    return None, variant or family.variants[0]


def _open(job: Job, family: Family, found: Standing, checked: list[Finding]) -> tuple[str, ...]:
    if found.verdict == "fits":
        return ()
    asks: list[str] = list(job.missing_basics)
    if found.turned and job.choices["turn_flat"].is_open:
        asks.extend(job.choices["turn_flat"].asks)
    for one in checked:
        if one.passes is None and not one.warns:
            asks.extend(one.depends_on)
    turn = job.choices["turn"]
    if asks and turn.is_open and len(found.trial.stopped or ()) > 1:  # another heading, another choice of layouts
        asks.extend(turn.asks)
    if not asks:  # no single layout does for all that is plausible: what shapes the layout is open
        asks.extend(
            ask for choice in job.choices.values() if choice.is_open for ask in choice.asks if ask == "rise.turn"
        )
        asks.extend(_open_figures(job, family))
    return tuple(dict.fromkeys(asks))


def _open_figures(job: Job, family: Family) -> list[str]:
    """What would settle the open figures that the family reads."""
    read = {name for row in family.all_rows if not row.warns for name in row.reads} | {"L", "W", "H", "m", "R", "rise"}
    named = [(name, var) for figures in job.sizes for name, var in figures.items()]
    return [ask for name, var in named if name in read and var.is_open for ask in var.asks]
