"""Records of checks: value, limit, formula and inputs at the design point, and what may still change them."""

from collections.abc import Iterable
from dataclasses import replace
from math import isfinite
from typing import Any

from intake.sizing.check_row import Gate, Row
from intake.sizing.engine import feed, heading_passes, lay
from intake.sizing.family import Family, Layout, Variant
from intake.sizing.job import Job, Num, View, view
from intake.sizing.layout_symbols import origins
from intake.sizing.physics.friction import STANDARD_GRAVITY
from intake.sizing.range_data import Limits
from intake.sizing.result import Check, Plain, Use
from intake.sizing.unknowns import BEST, LIKELY, TYPICAL, WORST, Choice, Var

_JOB_UNITS = {
    "L": "m", "W": "m", "H": "m", "m": "kg", "b": "m", "bw": "m", "h": "m", "hx": "m", "rnd": "1", "mu": "1",
    "mu_high": "1",
    "mu_grip": "1", "R": "1/s", "rise": "m", "zlow": "m", "ztop": "m", "lx": "m", "ly": "m", "ceil": "m", "ow": "m",
    "oh": "m", "troom": "K", "tprod": "K", "tilt": "rad", "pair": "Pa", "weeks": "week", "squeeze_limit": "N",
    "v": "m/s",
    "p": "m", "fl": "m", "fw": "m", "top": "m", "under": "m", "piece_a": "m", "piece_b": "m", "tilt_used": "rad",
    "s": "m",
    "r": "m", "open_most": "m", "open_least": "m", "cp": "m", "shaft": "W", "need": "m",
    "rated": "N", "derate": "1", "cycle": "s", "N_need": "N", "cleat": "m", "Wb": "m",
}  # fmt: skip


class Views:
    """The views of one job with one layout filled in, by mode."""

    def __init__(
        self, job: Job, family: Family, layout: Layout | None, swapped: bool = False, turned: bool = False
    ) -> None:  # fmt: skip
        d = job.data.families[family.name]
        self.turned = turned
        self.by_mode: dict[int, View] = {}
        modes = (BEST, LIKELY, TYPICAL) if job.missing_basics else (BEST, LIKELY, TYPICAL, WORST)
        for mode in modes:
            seen = view(job, mode)
            lay(seen, swapped)
            feed(seen, turned)
            if layout is not None:
                family.fill_all(seen, layout, d)
            self.by_mode[mode] = seen

    def __getitem__(self, mode: int) -> View:
        return self.by_mode[mode]

    def has(self, mode: int) -> bool:
        """True when the job can be looked at in that mode."""
        return mode in self.by_mode


def checks(
    job: Job, family: Family, variant: Variant | None, layout: Layout | None, views: Views, may_turn: bool = False
) -> tuple[Check, ...]:
    """All checks of a family, the gates first. `may_turn`: what fails as described may pass fed the other way."""
    d = job.data.families[family.name]
    worst_gates = views[WORST] if views.has(WORST) else view(job, WORST)
    gates = [*family.gates, *(variant.gates if variant is not None else ())]
    found = [_gate(job, gate, views[BEST], views[LIKELY], worst_gates) for gate in gates]
    if variant is not None:
        found.append(_turn(job, variant, views, worst_gates))
    rows = family.all_rows if layout is not None else family.before
    for row in rows:
        if row.applies is not None and not row.applies(views[TYPICAL].sizes[0][0]):
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


def _gate(job: Job, gate: Gate, best: View, likely: View, worst: View) -> Check:
    choices = [job.choices[name] for name in gate.reads]
    passes = False if not gate.passes(best) else True if gate.passes(worst) else None
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
        likely_fails=not gate.passes(likely),
    )


def _turn(job: Job, variant: Variant, views: Views, worst: View) -> Check:
    choice = job.choices["turn"]
    passes = False if not heading_passes(variant, views[BEST]) else True if heading_passes(variant, worst) else None
    headings = "any" if variant.headings is None else " or ".join(f"{h:g} deg" for h in sorted(variant.headings))
    said = "not known" if choice.is_open else f"{choice.typical:g} deg"
    return Check(
        id="turn", sense="must_be", value=said, limit=headings, unit="", passes=passes,
        uses={"turn": Use(value=None if choice.is_open else choice.typical, unit="deg", origin=choice.origin)},
        assumes=(choice.assumption,) if choice.assumption else (), depends_on=() if passes is not None else choice.asks,
        source="geometry of the family",
    )  # fmt: skip


def _row(job: Job, row: Row, views: Views, d: Limits) -> Check:
    best, typical = views[BEST], views[TYPICAL]
    worst = views[WORST] if views.has(WORST) else None
    index = _size_that_hurts(row, typical, d)
    hi, lo = typical.sizes[index]
    value, limit = row.body(hi, lo, d)
    unknown = [name for name in row.reads if _missing(job, name, index)]
    at_design, at_best_plausible = row.passes(typical, d), row.passes(views[LIKELY], d)
    ever = at_design or at_best_plausible or row.passes(best, d)
    always = worst is not None and at_design and row.passes(worst, d)
    passes = True if always else None if ever else False
    return Check(
        id=row.id,
        sense=row.sense,
        value=None if unknown and _value_leans(job, row, index) else _plain(value),
        limit=None if _limit_unknown(unknown) else _plain(limit),
        unit=row.unit,
        passes=passes,
        formula=row.formula,
        uses=_uses(job, row, hi, lo, d, index),
        limit_formula=row.limit,
        limit_uses=_limit_uses(job, row, hi, lo, d, index),
        assumes=_assumes(job, row, index),
        depends_on=() if passes is not None else _asks(job, row, views, d),
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


def _missing(job: Job, name: str, index: int) -> bool:
    if name in job.choices:
        return job.choices[name].missing
    var = job.sizes[index].get(name)
    return var is not None and var.missing


def _value_leans(job: Job, row: Row, index: int) -> bool:
    return (bool(job.missing_basics) and row.id not in ("temperature", "lead_time")) or any(
        _missing(job, name, index) and name not in _LIMIT_ONLY for name in row.reads
    )


def _limit_unknown(unknown: Iterable[str]) -> bool:
    return any(name in _LIMIT_ONLY for name in unknown)


def _uses(job: Job, row: Row, hi: Num, lo: Num, d: Limits, index: int) -> dict[str, Use]:
    uses: dict[str, Use] = {}
    for symbol in row.symbols:
        if symbol == "g":
            uses[symbol] = Use(value=STANDARD_GRAVITY, unit="m/s2", origin="standard gravity, NIST SP 811")
        elif symbol in row.constants:
            uses[symbol] = _limit_use(d, row.constants[symbol])
        else:
            uses[symbol] = _figure_use(job, row, lo if symbol in row.low else hi, symbol, d, index)
    return uses


def _limit_uses(job: Job, row: Row, hi: Num, lo: Num, d: Limits, index: int) -> dict[str, Use]:
    uses: dict[str, Use] = {}
    for symbol in row.limit_symbols:
        if symbol in d.keys and symbol not in job.sizes[index]:
            uses[symbol] = _limit_use(d, symbol)
        else:
            worse = symbol in row.limit_high or row.sense == "at_least"
            uses[symbol] = _figure_use(job, row, hi if worse else lo, symbol, d, index)
    return uses


def _limit_use(d: Limits, key: str) -> Use:
    return Use(value=float(d[key]), unit=d.units[key], origin=d.origin(key))


def _figure_use(job: Job, row: Row, num: Num, symbol: str, d: Limits, index: int) -> Use:
    """A figure of the job, or one that the layout gives."""
    var = job.sizes[index].get(symbol)
    origin = var.origin if var is not None else origins(d.family).get(symbol, "layout")
    unit = row.units.get(symbol) or _JOB_UNITS.get(symbol, "1")
    unknown = var is not None and var.missing
    return Use(value=None if unknown else _plain(getattr(num, symbol)), unit=unit, origin=origin)


def _assumes(job: Job, row: Row, index: int) -> tuple[str, ...]:
    found: list[str] = []
    for name in row.reads:
        open_one: Choice | Var | None = job.choices.get(name) or job.sizes[index].get(name)
        if open_one is not None and open_one.assumption:
            found.append(open_one.assumption)
    return tuple(dict.fromkeys(found))


def _asks(job: Job, row: Row, views: Views, d: Limits) -> tuple[str, ...]:
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
    tests = [
        job.sizes[index][name].origin
        for name in row.reads
        if name in job.sizes[index] and job.sizes[index][name].origin.startswith("test.")
    ]
    return f"{row.source}; measured: {', '.join(dict.fromkeys(tests))}" if tests else row.source


def _plain(value: float) -> Plain:
    return value if isfinite(value) else None


def _word(choice: Choice) -> Plain:
    return None if choice.missing else choice.typical


def _words(choices: list[Choice]) -> Plain:
    words: list[Any] = [_word(choice) for choice in choices]
    if len(words) == 1:
        word = words[0]
        return {True: "yes", False: "no"}.get(word, word) if isinstance(word, bool) else word
    shown = ["unknown" if w is None else "yes" if w is True else "no" if w is False else str(w) for w in words]
    return ", ".join(shown)
