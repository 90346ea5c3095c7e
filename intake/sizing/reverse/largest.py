"""How high and how fast: the end of the range in which a family still stands, and what stops it there."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from intake.sizing.all_families import ALL
from intake.sizing.appraise import standing
from intake.sizing.bracket import scan
from intake.sizing.engine import attempt
from intake.sizing.findings import checks_of, findings
from intake.sizing.job import Job, view
from intake.sizing.range_data import RangeData, load_range
from intake.sizing.resolve import resolve
from intake.sizing.result import Check
from intake.sizing.reverse.changed import with_rate, with_rise
from intake.sizing.sentences import Words
from intake.sizing.unknowns import TYPICAL
from intake.sizing.views import Views
from intake.spec.flat import Spec

_BEYOND = 1.01
"""What stops a family is looked up 1 % beyond the largest that still passes."""
_RISE_LEAST, _RISE_MOST = 0.3, 60.0
_RATE_LEAST, _RATE_MOST = 0.01, 2000.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Largest:
    """The largest value of one figure for one family, all else as it is.

    `value`: at the design point (assumptions typical), None when no value does. `fits_to`: the largest at which the
    family fits for certain, None when it does at none. `now`: what was asked for, None when unknown. `stops`: ids of
    the checks that fail 1 % beyond, `why` the same in sentences, `checks` with their figures there; empty where the
    search itself ended.
    """

    family: str
    field: str
    unit: str
    value: float | None
    fits_to: float | None
    now: float | None
    stops: tuple[str, ...]
    why: tuple[str, ...]
    checks: tuple[Check, ...] = ()

    def to_json(self) -> dict[str, Any]:
        """The shape for scripts."""
        return {
            "family": self.family, "field": self.field, "unit": self.unit, "value": self.value,
            "fits_to": self.fits_to, "now": self.now, "stops": list(self.stops), "why": list(self.why),
        }  # fmt: skip


def largest_rise(spec: Mapping[str, Any] | Spec, family: str, *, questions: Any = None) -> Largest:
    """The greatest rise [m] of a family at this product, rate and room; the lower level stays where it is.

    Args:
        spec: as `size` takes it.
        family: one of FAMILIES.

    Raises SpecError for a spec that cannot be taken, KeyError for a family that there is not.
    """
    ask = _Asked(spec, family, questions)
    now = _known(ask.job, "rise")
    return ask.largest("rise.height", "m", with_rise, now, _RISE_LEAST, _RISE_MOST)


def largest_rate(spec: Mapping[str, Any] | Spec, family: str, *, questions: Any = None) -> Largest:
    """The highest rate [1/min] of a family at this product, rise and room. Arguments and errors as `largest_rise`."""
    ask = _Asked(spec, family, questions)
    now = _known(ask.job, "R")
    return ask.largest("rate.peak", "1/min", with_rate, now and now * 60.0, _RATE_LEAST, _RATE_MOST)


def _known(job: Job, name: str) -> float | None:
    var = job.sizes[0][name]
    return None if var.missing else var.typical


class _Asked:
    def __init__(self, spec: Mapping[str, Any] | Spec, family: str, questions: Any) -> None:
        self.spec = spec if isinstance(spec, Spec) else Spec.from_flat(spec)
        self.data: RangeData = load_range(questions)
        self.family = ALL[family]
        self.limits = self.data.families[family]
        self.job = resolve(self.spec, self.data)

    def largest(
        self, field: str, unit: str, change: Callable[[Spec, float], Spec], now: float | None, least: float, most: float
    ) -> Largest:
        def job_at(value: float) -> Job:
            return resolve(change(self.spec, value), self.data)

        def passes(value: float) -> bool:
            return attempt(self.family, view(job_at(value), TYPICAL), self.limits).passes

        def fits(value: float) -> bool:
            return standing(job_at(value), self.family).verdict == "fits"

        start = now if now is not None else least
        value = scan(passes, start, least, most)
        failing: tuple[Check, ...] = ()
        if value is None or value < most:
            failing = self._beyond(job_at(start if value is None else value * _BEYOND))
        words = Words(self.data)
        return Largest(
            family=self.family.name, field=field, unit=unit, value=value, now=now,
            stops=tuple(check.id for check in failing), why=tuple(words.failing(check) for check in failing),
            checks=failing,
            fits_to=scan(fits, value, least, value) if value is not None else None,
        )  # fmt: skip

    def _beyond(self, job: Job) -> tuple[Check, ...]:
        """The checks that fail at the design point of a job in which the family does not pass there."""
        trial = attempt(self.family, view(job, TYPICAL), self.limits)
        views = Views(job, self.family, trial.layout, trial.swapped, trial.turned)
        variant = trial.variant if trial.variant is not None else self.family.variants[0]
        found = checks_of(findings(job, self.family, variant, trial.layout, views))
        failing = tuple(c for c in found if (c.fails_at_design or c.id in trial.stopped_by) and not c.warns)
        return failing or tuple(c for c in found if c.passes is False and not c.warns)
