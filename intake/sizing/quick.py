"""The quick pass: which family leads in one completion of a job. What is settled is looked at once, beforehand."""

from collections import Counter
from collections.abc import Iterable
from typing import NamedTuple

from intake.sizing.all_families import ALL
from intake.sizing.check_row import Gate, Row, Rows, walk
from intake.sizing.engine import feed, feeds, heading_passes
from intake.sizing.family import Family, Variant
from intake.sizing.job import Job, View
from intake.sizing.range_data import Limits
from intake.sizing.sampling import is_drawn
from intake.sizing.score import best_possible, reasons, scored_words, total, traits

NOBODY = "none"
"""The leader where no family passes."""


class Settled(NamedTuple):
    """What of a family need not be looked at again: only these gates and rows are open, the rest passes firmly so."""

    gates: tuple[Gate, ...]
    before: Rows
    firmness: float


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
        self._promises: dict[tuple[bool, bool, tuple[object, ...]], list[tuple[float, int, _Open]]] = {}
        for name in names:
            family, d = ALL[name], job.data.families[name]
            settled = _settle(job, family, d, sample)
            if settled is not None:
                self._families.append(_Open(family, d, settled))

    def scores(self, seen: View) -> dict[str, float]:
        """The score of each family that passes in one completion."""
        found = {one.family.name: self._score(one, seen) for one in self._families}
        return {name: score for name, score in found.items() if score >= 0.0}

    def leader(self, seen: View) -> str:
        """The family with the highest score in one completion; a family that cannot beat it is not tried."""
        leader, highest, place = NOBODY, -1.0, -1
        weeks, late = seen.sizes[0][1].weeks, self._data.weights["lead_time"] / self._data.weights_together
        for most, at, one in self._by_promise(seen):
            if most < highest:
                break
            if weeks < one.d.weeks_most and most - late * (1.0 - weeks / one.d.weeks_most) < highest:
                continue
            score = self._score(one, seen)
            if score > highest or (score == highest and at < place):
                leader, highest, place = one.family.name, score, at
        return leader

    def _score(self, one: _Open, seen: View) -> float:
        family, d, settled = one
        firm = firmness_of_first(family, seen, d, settled)
        return -1.0 if firm is None else total(reasons(family, seen, firm, d, self._data), self._data)

    def _by_promise(self, seen: View) -> list[tuple[float, int, _Open]]:
        """The families with the most that each can score with the words of a completion, the highest first."""
        hi, lo = seen.sizes[0]
        slow_heavy, tall = traits(hi, lo, self._data)
        words = scored_words(seen)
        found = self._promises.get((slow_heavy, tall, words))
        if found is None:
            made = [
                (best_possible(one.family.name, words, slow_heavy, tall, self._data), at, one)
                for at, one in enumerate(self._families)
            ]
            found = self._promises[slow_heavy, tall, words] = sorted(made, key=lambda entry: (-entry[0], entry[1]))
        return found


def _settle(job: Job, family: Family, d: Limits, sample: View) -> Settled | None:
    """What is still open about a family; None where something settled fails already."""
    gates: list[Gate] = []
    for gate in family.gates:
        if any(len(job.choices[name].drawn) > 1 for name in gate.reads):
            gates.append(gate)
        elif not gate.passes(sample):
            return None
    settled: list[Row] = []
    before: list[Row] = []
    for row in family.blocking.before:
        (before if any(_is_open(job, name) for name in row.reads) else settled).append(row)
    count, firmness = walk(Rows(settled), sample, d)
    return Settled(tuple(gates), Rows(before), firmness) if count == len(settled) else None


def _is_open(job: Job, name: str) -> bool:
    if name in job.choices:
        return len(job.choices[name].drawn) > 1
    return any(is_drawn(figures[name]) for figures in job.sizes if name in figures)


def firmness_of_first(family: Family, view: View, d: Limits, settled: Settled) -> float | None:
    """Whether a family passes in one completion of a job: what `attempt` finds, without keeping what stopped the rest.

    In a completion every word is settled, the heading among them: the floor is not turned.

    Returns: the tightest margin of the first layout that passes, which is left in the view; None where none does.
    """
    for gate in settled.gates:
        if not gate.passes(view):
            return None
    for turned in feeds(view):
        feed(view, turned)
        depth, before = walk(settled.before, view, d)
        if depth < len(settled.before):
            continue
        for variant in family.variants:
            if heading_passes(variant, view) and not any([not gate.passes(view) for gate in variant.gates]):
                least = _first_layout(family, variant, view, d)
                if least is not None:
                    feed(view, False)
                    return min(before, settled.firmness, least)
    feed(view, False)
    return None


def _first_layout(family: Family, variant: Variant, view: View, d: Limits) -> float | None:
    shape, load = family.blocking.shape, family.blocking.load
    hopeless: object = None
    for layout in variant.layouts(view, d, Counter()):
        if hopeless is not None and family.drive_group(layout) == hopeless:
            continue
        family.fill(view, layout, d)
        depth, least = walk(shape, view, d)
        if depth < len(shape):
            continue
        if not load:
            return least
        family.load(view, layout, d)
        further, driven = walk(load, view, d)
        if further == len(load):
            return min(least, driven)
        hopeless = family.drive_group(layout)
    return None
