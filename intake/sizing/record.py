"""Records of checks: value, limit, formula and inputs at the design point."""

from typing import Any, NamedTuple

from intake.sizing.check_row import Gate, Row
from intake.sizing.deferred import Deferred
from intake.sizing.family import Variant
from intake.sizing.inputs import limit_uses, plain, value_uses
from intake.sizing.job import Job, View
from intake.sizing.range_data import Limits
from intake.sizing.result import Check, Plain, Use
from intake.sizing.unknowns import Choice


class Seen(NamedTuple):
    """What the records of one family are written from: its layout at the design point."""

    job: Job
    typical: View
    limits: Limits


class Stands(NamedTuple):
    """How a check stands over all that is open; see `Check`."""

    passes: bool | None
    likely_fails: bool
    depends_on: tuple[str, ...]


def gate_check(job: Job, gate: Gate, stands: Stands) -> Check:
    """The record of a gate."""
    choices = [job.choices[name] for name in gate.reads]
    return Check(
        id=gate.id,
        sense="must_be",
        value=_words(choices),
        limit=gate.limit,
        unit="",
        passes=stands.passes,
        uses={n: Use(value=_word(c), unit="", origin=c.origin) for n, c in zip(gate.reads, choices, strict=True)},
        assumes=tuple(dict.fromkeys(c.assumption for c in choices if c.assumption)),
        depends_on=stands.depends_on,
        source=gate.source,
        likely_fails=stands.likely_fails,
    )


def turn_check(job: Job, variant: Variant, stands: Stands) -> Check:
    """The record of the heading."""
    choice = job.choices["turn"]
    headings = "any" if variant.headings is None else " or ".join(f"{h:g} deg" for h in sorted(variant.headings))
    said = "not known" if choice.is_open else f"{choice.typical:g} deg"
    return Check(
        id="turn", sense="must_be", value=said, limit=headings, unit="", passes=stands.passes,
        uses={"turn": Use(value=None if choice.is_open else choice.typical, unit="deg", origin=choice.origin)},
        assumes=(choice.assumption,) if choice.assumption else (), depends_on=stands.depends_on,
        source="geometry of the family", likely_fails=stands.likely_fails,
    )  # fmt: skip


def row_check(seen: Seen, row: Row, stands: Stands) -> Check:
    """The record of a figure held against a limit."""
    job, typical, d = seen
    index = _size_that_hurts(row, typical, d)
    hi, lo = typical.sizes[index]
    value, limit = row.body(hi, lo, d)
    unknown = job.behind[index].missing.intersection(row.reads)
    return Check(
        id=row.id,
        sense=row.sense,
        value=None if unknown and _value_leans(job, row, unknown) else plain(value),
        limit=None if not unknown.isdisjoint(_LIMIT_ONLY) else plain(limit),
        unit=row.unit,
        passes=stands.passes,
        formula=row.formula,
        uses=Deferred(value_uses, job, row, hi, lo, d, index),
        limit_formula=row.limit,
        limit_uses=Deferred(limit_uses, job, row, hi, lo, d, index),
        assumes=_assumes(job, row, index),
        depends_on=stands.depends_on,
        source=_source(job, row, index),
        size=index + 1 if row.each_size and len(job.sizes) > 1 else None,
        likely_fails=stands.likely_fails,
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
