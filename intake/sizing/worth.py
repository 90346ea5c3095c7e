"""What sampling adds: how sure the leading family is, and which answers would change it."""

from collections.abc import Mapping
from dataclasses import dataclass

from intake.sizing.drawn_ends import drawn_ends
from intake.sizing.job import Job
from intake.sizing.quick import QuickPass
from intake.sizing.ranking import enough_known
from intake.sizing.result import FAMILIES, FamilyResult
from intake.sizing.samples import Column, Samples
from intake.sizing.sampling import Sampler, is_drawn

SAMPLES = 256
ENOUGH = 250
"""Of 256: then the leading family is best in at least 95 % of all completions, held with confidence."""


@dataclass(frozen=True, slots=True)
class Worth:
    """decided, the share of samples led by the shown best, and the samples; None where nothing had to be tried."""

    decided: bool
    share: float | None
    samples: Samples | None = None

    def changes(self, ask: str) -> float:
        """How often the answer to one field or test changes the best family."""
        return 0.0 if self.samples is None else self.samples.changes((ask,))


def worth_of(job: Job, families: Mapping[str, FamilyResult], best: str | None) -> Worth:
    """Sample what is open and see who leads."""
    left = [name for name in FAMILIES if families[name].verdict != "out"]
    if not left:
        return Worth(True, 1.0)
    sampler = Sampler(job, SAMPLES)
    if not sampler.columns:
        return Worth(best is not None, 1.0 if best is not None else None)
    quick = QuickPass(job, left, sampler.view(0))
    leaders = [quick.leader(sampler.view(index)) for index in range(SAMPLES)]
    samples = Samples(leaders=leaders, columns=_columns(job, sampler), asks=_further_asks(job, sampler))
    if best is None or not enough_known(job):
        return Worth(False, None, samples)
    count = samples.led.get(best, 0)
    return Worth(count >= ENOUGH, count / SAMPLES, samples)


_GROUPS = 4
"""Groups of answers for a figure."""


def _columns(job: Job, sampler: Sampler) -> dict[str, Column]:
    """What is open as groups of answers: a word each, figures by quarters of their range."""
    words = {choice.asks[0] if choice.asks else name: choice for name, choice in sampler.words.items()}
    figures = {var.asks[0] for size in job.sizes for var in size.values() if var.asks and is_drawn(var)}
    columns: dict[str, Column] = {}
    for ask, shares in sampler.columns.items():
        choice = words.get(ask)
        if choice is not None and len(choice.drawn) > 1:
            groups = [choice.group(share) for share in shares]
            columns[ask] = Column(
                groups=groups, count=len(choice.drawn), shares=shares, words=choice.drawn, is_shared=ask in figures
            )
        else:
            groups = [int(share * _GROUPS) for share in shares]
            columns[ask] = Column(groups=groups, count=_GROUPS, shares=shares, ends=drawn_ends(job, ask))
    return columns


def _further_asks(job: Job, sampler: Sampler) -> dict[str, str]:
    """Other fields that would settle what a column holds."""
    found: dict[str, str] = {}
    all_asks = [choice.asks for choice in job.choices.values()]
    all_asks += [var.asks for figures in job.sizes for var in figures.values()]
    for first, *others in filter(None, all_asks):
        for ask in others:
            if first in sampler.columns:
                found.setdefault(ask, first)
    return found
