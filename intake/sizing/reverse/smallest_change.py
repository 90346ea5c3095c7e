"""What would make it fit: for each single fact, the smallest change of it that lets a family stand that is out."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from intake.sizing.all_families import ALL
from intake.sizing.appraise import verdict_of
from intake.sizing.bracket import first_holding
from intake.sizing.engine import attempt
from intake.sizing.fields_read import fields_behind, fields_read
from intake.sizing.job import Job, view
from intake.sizing.range_data import RangeData, load_range
from intake.sizing.resolve import CHOICES, resolve
from intake.sizing.result import Verdict
from intake.sizing.reverse.changed import RATE, with_figure, with_word
from intake.sizing.unknowns import BEST, TYPICAL
from intake.spec.flat import Key, Spec
from intake.spec.vocabulary import vocabulary

_NOT_TO_CHANGE = frozenset({"product.type", "rise.direction", "site.hazardous_area", "product.sizes", "project.weeks"})
"""What the job is, and what nobody can change by wishing."""
_REPLACED = {"rate.peak": RATE, "rate.normal": RATE, "rate.pieces": RATE, "product.pieces": RATE}
_FOLLOWS = frozenset({"rise.infeed_height", "rise.discharge_height"})
_SHAPES = frozenset({"rise.turn", "handling.turn_flat"}).union(
    *map(fields_behind, ("L", "W", "H", "m", "b", "mu", "R", "rise", "lx", "ly", "ceil"))
)
"""Facts that shape a layout or its load, whatever check stops it."""
_TELLS = {"temperature.zone": ("temperature.room",), "cleaning.method": ("cleaning.pressure",)}
"""Figures that say what a word says."""
_HEADINGS = (0.0, 90.0, 180.0, 270.0)
_LINEAR = {"degC": 1.0}
"""Units that count from no true zero: step by step, not by share."""
_FACTORS = (0.05, 20.0)
_DEGREES = 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One fact changed by as little as lets the family stand, all else as it is.

    `to`: the value nearest to what it is, a figure in the canonical unit or a word. `verdict` is what the family then
    is; `fits_at`: where that is *depends*, the nearest value at which it fits for certain, None when there is none.
    `size`: the product size that it speaks of.
    """

    family: str
    field: str
    size: int
    now: float | str | bool | None
    to: float | str | bool
    unit: str
    verdict: Verdict
    fits_at: float | None = None

    @property
    def share(self) -> float | None:
        """The change as a share of what it is now; None for words."""
        if isinstance(self.to, str | bool) or not isinstance(self.now, float) or not self.now:
            return None
        return self.to / self.now - 1.0

    def to_json(self) -> dict[str, Any]:
        """The shape for scripts."""
        return {
            "family": self.family, "field": self.field, "size": self.size, "now": self.now, "to": self.to,
            "unit": self.unit, "verdict": self.verdict, "fits_at": self.fits_at,
        }  # fmt: skip


def smallest_changes(spec: Mapping[str, Any] | Spec, family: str, *, questions: Any = None) -> tuple[Change, ...]:
    """Every single fact whose change alone turns a family that is out into one that stands.

    Figures come first, the smallest share of change ahead, then words. Nothing for a family that is not out, and
    nothing where no single fact does it.

    Args:
        spec: as `size` takes it.
        family: one of FAMILIES.

    Raises SpecError for a spec that cannot be taken, KeyError for a family that there is not.
    """
    flat = spec if isinstance(spec, Spec) else Spec.from_flat(spec)
    search = _Search(flat, family, load_range(questions))
    if search.verdict(flat) != "out":
        return ()
    found = [*search.figures(), *search.words()]
    return tuple(sorted(found, key=lambda change: (change.share is None, abs(change.share or 0.0), change.field)))


class _Search:
    def __init__(self, spec: Spec, family: str, data: RangeData) -> None:
        self.spec, self.family, self.data = spec, ALL[family], data
        may_help = self._fields_that_may_help(fields_read(family)) - _NOT_TO_CHANGE
        self.keys = [key for key in spec if key[0] in may_help]
        self.may_turn = "handling.turn_flat" in may_help and not spec.knows("handling.turn_flat")

    def _fields_that_may_help(self, read: frozenset[str]) -> frozenset[str]:
        """What stands behind the checks that stop it, and what shapes layouts; only its gates where those are shut."""
        job = resolve(self.spec, self.data)
        seen = view(job, BEST)
        read &= self._behind_what_stops(job)
        for gate in self.family.gates:
            if not gate.passes(seen):
                behind = {CHOICES[name][0] for name in gate.reads}
                read &= behind | {field for word in behind for field in _TELLS.get(word, ())}
        return read

    def _behind_what_stops(self, job: Job) -> frozenset[str]:
        limits = self.data.families[self.family.name]
        trials = [attempt(self.family, view(job, mode), limits) for mode in (BEST, TYPICAL)]
        stops = {id for trial in trials for id in (*trial.stopped_by, *(trial.stopped or ()))}
        gates = (*self.family.gates, *(gate for variant in self.family.variants for gate in variant.gates))
        names = {name for row in self.family.all_rows if row.id in stops for name in row.reads}
        names |= {name for gate in gates if gate.id in stops for name in gate.reads}
        behind = {field for name in names for field in fields_behind(name)}
        return frozenset(_SHAPES | behind | {field for word in behind for field in _TELLS.get(word, ())})

    def verdict(self, spec: Spec) -> Verdict:
        return verdict_of(resolve(spec, self.data), self.family)

    def figures(self) -> Iterator[Change]:
        for key, now in self._numbers():
            both = (self._numeric(key, now, upwards) for upwards in (False, True))
            yield from sorted((found for found in both if found), key=lambda found: abs(found.share or 0.0))[:1]

    def _numbers(self) -> Iterator[tuple[Key, float]]:
        """The figures that may change, one for all rates and one for both levels, with what they are now."""
        job = resolve(self.spec, self.data)
        seen: set[Key] = set()
        for key in self.keys:
            name = _REPLACED.get(key[0], "rise.height" if key[0] in _FOLLOWS else key[0])
            value = self.spec[key]
            if not value.is_number or value.largest is None or name == "rise.turn" or (name, key[1]) in seen:
                continue
            seen.add((name, key[1]))
            if name == RATE:
                yield (RATE, 1), job.sizes[0]["R"].typical * 60.0
            elif name == "rise.height":
                if not job.sizes[0]["rise"].missing:
                    yield ("rise.height", 1), job.sizes[0]["rise"].typical
            else:
                yield key, value.largest

    def _numeric(self, key: Key, now: float, upwards: bool) -> Change | None:
        step = _LINEAR.get(vocabulary()[_field(key)].unit)

        def at(value: float) -> Verdict:
            return self.verdict(with_figure(self.spec, key, value, upwards=upwards))

        end = now * _FACTORS[upwards] if step is None else now + _DEGREES * (1.0 if upwards else -1.0)
        to = first_holding(lambda value: at(value) != "out", now, end, step)
        if to is None:
            return None
        verdict = at(to)
        fits_at = None if verdict == "fits" else first_holding(lambda value: at(value) == "fits", to, end, step)
        field = _field(key)
        return Change(
            family=self.family.name, field=field, size=key[1], now=now, to=to, unit=vocabulary()[field].unit,
            verdict=verdict, fits_at=fits_at,
        )  # fmt: skip

    def words(self) -> Iterator[Change]:
        for key in self.keys:
            field, value = vocabulary()[key[0]], self.spec[key]
            if key[0] == "rise.turn" and value.largest is not None:
                yield from self._each(key, value.largest, [h for h in _HEADINGS if h != value.largest % 360.0])
            elif not value.is_number and field.kind in ("choice", "yes_no"):
                options: list[Any] = [True, False] if field.kind == "yes_no" else list(field.choices)
                yield from self._each(key, value.value, [word for word in options if word != value.value])
        if self.may_turn:
            yield from self._each(("handling.turn_flat", 1), None, [True])

    def _each(self, key: Key, now: Any, others: list[Any]) -> Iterator[Change]:
        for to in others:
            if key[0] == "rise.turn":
                verdict = self.verdict(with_figure(self.spec, key, to, upwards=True))
            else:
                verdict = self.verdict(with_word(self.spec, key, to))
            if verdict != "out":
                yield Change(
                    family=self.family.name, field=key[0], size=key[1], now=now, to=to,
                    unit=vocabulary()[key[0]].unit, verdict=verdict,
                )  # fmt: skip


def _field(key: Key) -> str:
    return "rate.peak" if key[0] == RATE else key[0]
