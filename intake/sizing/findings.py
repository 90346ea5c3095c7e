"""What is found about the checks of a family, before anything is written down: which hold, and what may change them."""

from collections.abc import Iterable
from typing import NamedTuple

from intake.sizing.check_row import Gate, Row
from intake.sizing.engine import heading_passes
from intake.sizing.family import Family, Layout, Variant
from intake.sizing.job import Job, View, words_in
from intake.sizing.record import Seen, Stands, gate_check, row_check, turn_check
from intake.sizing.result import Check
from intake.sizing.unknowns import BEST, LIKELY, TYPICAL, WORST
from intake.sizing.views import Views


class Finding(NamedTuple):
    """How one check stands: the fields are those of `Check`, which is written of `matter` when somebody reads it."""

    id: str
    passes: bool | None
    likely_fails: bool
    depends_on: tuple[str, ...]
    matter: Row | Gate | Variant
    seen: Seen
    warns: bool = False

    @property
    def fails(self) -> bool:
        """True where it puts the family out."""
        return self.passes is False and not self.warns

    def check(self) -> Check:
        """The whole record."""
        matter, seen, stands = self.matter, self.seen, Stands(self.passes, self.likely_fails, self.depends_on)
        if isinstance(matter, Row):
            return row_check(seen, matter, stands)
        return (
            gate_check(seen.job, matter, stands) if isinstance(matter, Gate) else turn_check(seen.job, matter, stands)
        )

    @property
    def of_words(self) -> bool:
        """True where words are held against words, not figures against limits."""
        return not isinstance(self.matter, Row)


class Said(NamedTuple):
    """The words of a job in the best possible case, the best plausible and the worst plausible one."""

    best: View
    likely: View
    worst: View


def findings(
    job: Job, family: Family, variant: Variant | None, layout: Layout | None, views: Views, may_turn: bool = False
) -> list[Finding]:
    """All checks of a family, the gates first. `may_turn`: what fails as described may pass fed the other way."""
    d = job.data.families[family.name]
    words = Said(*(words_in(job, mode) for mode in (BEST, LIKELY, WORST)))
    gates = [*family.gates, *(variant.gates if variant is not None else ())]
    seen = Seen(job, views[TYPICAL], d)
    found = [_gate(seen, gate, words) for gate in gates]
    if variant is not None:
        found.append(_turn(seen, variant, words))
    rows = family.all_rows if layout is not None else family.before
    first = seen.typical.sizes[0][0]
    for row in rows:
        if row.applies is not None and not row.applies(first):
            continue
        one = _row(seen, row, views)
        if one.passes is False and may_turn:
            one = one._replace(passes=None, depends_on=job.choices["turn_flat"].asks)
        found.append(one)
    return found


def mark_what_stops(found: list[Finding], stopped_by: tuple[str, ...]) -> list[Finding]:
    """The checks of a family that is out, though each by itself might pass: what stopped the best case fails."""
    if any(one.fails for one in found):
        return found
    return [
        one._replace(passes=False, depends_on=()) if one.id in stopped_by and not one.warns else one for one in found
    ]


def checks_of(found: Iterable[Finding]) -> tuple[Check, ...]:
    """The whole records."""
    return tuple(one.check() for one in found)


def _gate(seen: Seen, gate: Gate, words: Said) -> Finding:
    choices = seen.job.choices
    passes = False if not gate.passes(words.best) else True if gate.passes(words.worst) else None
    asks: list[str] = []
    if passes is None:
        asks = [ask for name in gate.reads if choices[name].is_open for ask in choices[name].asks]
    return Finding(
        id=gate.id, passes=passes, likely_fails=not gate.passes(words.likely), depends_on=tuple(dict.fromkeys(asks)),
        matter=gate, seen=seen,
    )  # fmt: skip


def _turn(seen: Seen, variant: Variant, words: Said) -> Finding:
    fails, holds = not heading_passes(variant, words.best), heading_passes(variant, words.worst)
    passes = False if fails else True if holds else None
    asks = seen.job.choices["turn"].asks if passes is None else ()
    return Finding(
        id="turn", passes=passes, likely_fails=False, depends_on=asks,
        matter=variant, seen=seen,
    )  # fmt: skip


def _row(seen: Seen, row: Row, views: Views) -> Finding:
    d = seen.limits
    at_design, at_best_plausible = row.passes(seen.typical, d), row.passes(views[LIKELY], d)
    passes: bool | None = None
    if at_design and views.has(WORST) and row.passes(views[WORST], d):
        passes = True
    elif not (at_design or at_best_plausible or row.passes(views[BEST], d)):
        passes = False
    return Finding(
        id=row.id, passes=passes, likely_fails=not at_best_plausible,
        depends_on=() if passes is not None else _asks(seen.job, row), matter=row, seen=seen, warns=row.warns,
    )  # fmt: skip


def _asks(job: Job, row: Row) -> tuple[str, ...]:
    """The fields and tests that would settle a check that is open."""
    found: list[str] = []
    for name in row.reads:
        if name in job.choices:
            choice = job.choices[name]
            if choice.is_open:
                found.extend(choice.asks)
            continue
        for figures in job.sizes:
            var = figures.get(name)
            if var is not None and var.is_open:
                found.extend(var.asks)
    if not found:
        found.extend(job.missing_basics)
    return tuple(dict.fromkeys(found))
