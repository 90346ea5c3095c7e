"""What sampling adds: how sure the leading family is, and which answers would change it."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from intake.sizing.job import Job
from intake.sizing.quick import QuickPass
from intake.sizing.ranking import enough_known
from intake.sizing.result import FAMILIES, FamilyResult
from intake.sizing.sampling import Sampler

SAMPLES = 256
ENOUGH = 250
"""Of 256: then the leading family is best in at least 95 % of all completions, held with confidence."""

_GROUPS = 4
_NOISE = 0.02


@dataclass(frozen=True, slots=True)
class Worth:
    """decided, the share of samples led by the shown best, and by field how often its answer changes the best."""

    decided: bool
    share: float | None
    changes: Mapping[str, float]
    led: Mapping[str, int]


def worth_of(job: Job, families: Mapping[str, FamilyResult], best: str | None) -> Worth:
    """Sample what is open and see who leads."""
    left = [name for name in FAMILIES if families[name].verdict != "out"]
    if not left:
        return Worth(True, 1.0, {}, {})
    sampler = Sampler(job, SAMPLES)
    if not sampler.columns:
        return Worth(best is not None, 1.0 if best is not None else None, {}, {})
    quick = QuickPass(job, left, sampler.view(0))
    leaders = [quick.leader(sampler.view(index)) for index in range(SAMPLES)]
    led = Counter(leaders)
    reference = best if best is not None else led.most_common(1)[0][0]
    changes = {ask: _change(column, leaders, reference) for ask, column in sampler.columns.items()}
    if best is None or not enough_known(job):
        return Worth(False, None, changes, led)
    count = led.get(best, 0)
    return Worth(count >= ENOUGH, count / SAMPLES, changes, led)


def _change(column: list[float], leaders: list[str], reference: str) -> float:
    """How much more often one is right about the best family for knowing this answer, less the noise."""
    groups: list[list[str]] = [[] for _ in range(_GROUPS)]
    for share, leader in zip(column, leaders, strict=True):
        groups[min(_GROUPS - 1, int(share * _GROUPS))].append(leader)
    gain = 0.0
    for group in groups:
        if group:
            count = Counter(group)
            gain += count.most_common(1)[0][1] - count.get(reference, 0)
    return round(max(0.0, gain / len(leaders) - _NOISE), 4)
