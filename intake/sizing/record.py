"""Records of checks: value, limit, formula and inputs at the design point, and what may still change them."""

from dataclasses import replace
from typing import Any, NamedTuple

from intake.sizing.check_row import Gate, Row, as_good_as
from intake.sizing.deferred import Deferred
from intake.sizing.engine import heading_passes
from intake.sizing.family import Family, Layout, Variant
from intake.sizing.inputs import limit_uses, plain, value_uses
from intake.sizing.job import Job, View, words_in
from intake.sizing.range_data import Limits
from intake.sizing.result import Check, Plain, Use
from intake.sizing.unknowns import BEST, LIKELY, TYPICAL, WORST, Choice
from intake.sizing.views import Views


class Said(NamedTuple):
    """The words of a job in the best possible case, the best plausible and the worst plausible one."""

    best: View
    likely: View
    worst: View


def checks(
    job: Job, family: Family, variant: Variant | None, layout: Layout | None, views: Views, may_turn: bool = False
) -> tuple[Check, ...]:
    """All checks of a family, the gates first. `may_turn`: what fails as described may pass fed the other way."""
    d = job.data.families[family.name]
    words = Said(*(words_in(job, mode) for mode in (BEST, LIKELY, WORST)))
    gates = [*family.gates, *(variant.gates if variant is not None else ())]
    found = [_gate(job, gate, words) for gate in gates]
    if variant is not None:
        found.append(_turn(job, variant, words))
    rows = family.all_rows if layout is not None else family.before
    first = views[TYPICAL].sizes[0][0]
    for row in rows:
        if row.applies is not None and not row.applies(first):
            continue
        check = _row(job, row, views, d)
        if check.passes is False and may_turn:
            check = replace(check, passes=None, depends_on=job.choices["turn_flat"].asks)
        found.append(check)
    return tuple(found)


def mark_what_stops(found: tuple[Check, ...], stopped_by: tuple[str, ...]) -> tuple[Check, ...]:
    """The checks of a family that is out, though each by itself might pass: what stopped the best case fails."""
    if any(check.passes is False and not check.warns for check in found):
        return found
    return tuple(
        replace(check, passes=False, depends_on=()) if check.id in stopped_by and not check.warns else check
        for check in found
    )


def _gate(job: Job, gate: Gate, words: Said) -> Check:
    choices = [job.choices[name] for name in gate.reads]
    passes = False if not gate.passes(words.best) else True if gate.passes(words.worst) else None
    return Check(
        id=gate.id,
        sense="must_be",
        value=_words(choices),
        limit=gate.limit,
        unit="",
        passes=passes,
        uses={n: Use(value=_word(c), unit="", origin=c.origin) for n, c in zip(gate.reads, choices, strict=True)},
        assumes=tuple(dict.fromkeys(c.assumption for c in choices if c.assumption)),
        depends_on=()
        if passes is not None
        else tuple(dict.fromkeys(ask for c in choices if c.is_open for ask in c.asks)),
        source=gate.source,
        likely_fails=not gate.passes(words.likely),
    )


def _turn(job: Job, variant: Variant, words: Said) -> Check:
    choice = job.choices["turn"]
    passes = (
        False if not heading_passes(variant, words.best) else True if heading_passes(variant, words.worst) else None
    )
    headings = "any" if variant.headings is None else " or ".join(f"{h:g} deg" for h in sorted(variant.headings))
    said = "not known" if choice.is_open else f"{choice.typical:g} deg"
    return Check(
        id="turn", sense="must_be", value=said, limit=headings, unit="", passes=passes,
        uses={"turn": Use(value=None if choice.is_open else choice.typical, unit="deg", origin=choice.origin)},
        assumes=(choice.assumption,) if choice.assumption else (), depends_on=() if passes is not None else choice.asks,
        source="geometry of the family",
    )  # fmt: skip


def _row(job: Job, row: Row, views: Views, d: Limits) -> Check:
    typical = views[TYPICAL]
    index = _size_that_hurts(row, typical, d)
    hi, lo = typical.sizes[index]
    value, limit = row.body(hi, lo, d)
    unknown = job.behind[index].missing.intersection(row.reads)
    at_design = as_good_as(value, limit, row.at_most) if len(job.sizes) == 1 else row.passes(typical, d)
    at_best_plausible = row.passes(views[LIKELY], d)
    passes: bool | None = None
    if at_design and views.has(WORST) and row.passes(views[WORST], d):
        passes = True
    elif not (at_design or at_best_plausible or row.passes(views[BEST], d)):
        passes = False
    return Check(
        id=row.id,
        sense=row.sense,
        value=None if unknown and _value_leans(job, row, unknown) else plain(value),
        limit=None if not unknown.isdisjoint(_LIMIT_ONLY) else plain(limit),
        unit=row.unit,
        passes=passes,
        formula=row.formula,
        uses=Deferred(lambda: value_uses(job, row, hi, lo, d, index)),
        limit_formula=row.limit,
        limit_uses=Deferred(lambda: limit_uses(job, row, hi, lo, d, index)),
        assumes=_assumes(job, row, index),
        depends_on=() if passes is not None else _asks(job, row),
        source=_source(job, row, index),
        size=index + 1 if row.each_size and len(job.sizes) > 1 else None,
        likely_fails=not at_best_plausible,
        warns=row.warns,
    )


def _size_that_hurts(row: Row, seen: View, d: Limits) -> int:
    if not row.each_size or len(seen.sizes) == 1:
        return 0
    room: list[float] = []
    for hi, lo in seen.sizes:
        value, limit = row.body(hi, lo, d)
        share = (limit - value) / abs(limit) if limit else limit - value
        room.append(share if row.sense == "at_most" else -share)
    return room.index(min(room))


_LIMIT_ONLY = frozenset({"lx", "ly", "ceil", "ow", "oh", "squeeze_limit", "mu", "mu_high"})


def _value_leans(job: Job, row: Row, unknown: frozenset[str]) -> bool:
    return (bool(job.missing_basics) and row.id not in ("temperature", "lead_time")) or not unknown <= _LIMIT_ONLY


def _assumes(job: Job, row: Row, index: int) -> tuple[str, ...]:
    assumptions = job.behind[index].assumptions
    return tuple(dict.fromkeys([assumptions[name] for name in row.reads if name in assumptions]))


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


def _source(job: Job, row: Row, index: int) -> str:
    """The source, with the test on samples that stands in place of an assumption."""
    behind = job.behind[index].tests
    tests = [behind[name] for name in row.reads if name in behind]
    return f"{row.source}; measured: {', '.join(dict.fromkeys(tests))}" if tests else row.source


def _word(choice: Choice) -> Plain:
    return None if choice.missing else choice.typical


def _words(choices: list[Choice]) -> Plain:
    words: list[Any] = [_word(choice) for choice in choices]
    if len(words) == 1:
        word = words[0]
        return {True: "yes", False: "no"}.get(word, word) if isinstance(word, bool) else word
    shown = ["unknown" if w is None else "yes" if w is True else "no" if w is False else str(w) for w in words]
    return ", ".join(shown)
