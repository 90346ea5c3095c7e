"""The quick pass: which family leads in one completion of a job. What is settled is looked at once, beforehand."""

from collections.abc import Iterable
from typing import NamedTuple

from intake.sizing.all_families import ALL
from intake.sizing.check_row import Gate, Row, walk
from intake.sizing.engine import Settled, attempt
from intake.sizing.family import Family
from intake.sizing.job import Job, View
from intake.sizing.range_data import Limits
from intake.sizing.sampling import is_drawn
from intake.sizing.score import reasons, total
from intake.sizing.unknowns import LIKELY

NOBODY = "none"
"""The leader where no family passes."""


class _Open(NamedTuple):
    family: Family
    d: Limits
    settled: Settled


class QuickPass:
    """The families that may lead in completions of a job, each with what is still open about it."""

    def __init__(self, job: Job, names: Iterable[str], sample: View) -> None:
        """`sample`: any completion; what is settled is the same in all of them."""
        self._data = job.data
        self._families: list[_Open] = []
        for name in names:
            family, d = ALL[name], job.data.families[name]
            settled = _settle(job, family, d, sample)
            if settled is not None:
                self._families.append(_Open(family, d, settled))

    def scores(self, seen: View) -> dict[str, float]:
        """The score of each family that passes in one completion."""
        found: dict[str, float] = {}
        for family, d, settled in self._families:
            trial = attempt(family, seen, d, settled=settled)
            if trial.passes:
                found[family.name] = total(reasons(family, seen, trial.firmness, d, self._data), self._data)
        return found

    def leader(self, seen: View) -> str:
        """The family with the highest score in one completion."""
        scores = self.scores(seen)
        return max(scores, key=lambda name: scores[name]) if scores else NOBODY


def _settle(job: Job, family: Family, d: Limits, sample: View) -> Settled | None:
    """What is still open about a family; None where something settled fails already."""
    gates: list[Gate] = []
    for gate in family.gates:
        if any(len(job.choices[name].options(LIKELY)) > 1 for name in gate.reads):
            gates.append(gate)
        elif not gate.passes(sample):
            return None
    settled: list[Row] = []
    before: list[Row] = []
    for row in family.blocking.before:
        (before if any(_is_open(job, name) for name in row.reads) else settled).append(row)
    count, firmness = walk(settled, sample, d)
    return Settled(tuple(gates), tuple(before), firmness) if count == len(settled) else None


def _is_open(job: Job, name: str) -> bool:
    if name in job.choices:
        return len(job.choices[name].options(LIKELY)) > 1
    return any(is_drawn(figures[name]) for figures in job.sizes if name in figures)
