"""Which facts still matter, and why the others do not: static reads, what verdicts hinge on, and trials."""

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from intake import sizing
from intake.interview.needless import why_needless
from intake.interview.reasons import family_name, out_reason
from intake.interview.tree import is_settled
from intake.interview.wording import Sentences, joined
from intake.sizing.result import FAMILIES, Result, Verdict
from intake.spec.display import System
from intake.spec.flat import Spec, Value
from intake.spec.vocabulary import vocabulary

Part = Literal["basics", "best", "engineering", "aside", "skip"]
"""What asking for a fact would do, in the order of asking; "skip": nothing at all."""

NOISE = 0.02
"""Share of samples below which a change of the best family is chance (4 of 256, with room)."""

Trial = Callable[[Spec], Mapping[str, Verdict]]


@dataclass(frozen=True, slots=True, kw_only=True)
class Matter:
    """What one open fact matters. `worth`: how often its answer would change the best family, 0 to 1."""

    field: str
    part: Part
    worth: float = 0.0
    reason: str = ""
    blanks: tuple[tuple[str, str], ...] = ()
    """What fills the reason's blanks; the topic is the question's."""


class Judge:
    """Judges every fact against one state of a case."""

    def __init__(
        self, spec: Spec, result: Result, needs: Collection[str], folder: Path, sentences: Sentences, system: System
    ) -> None:
        self._spec, self._result, self._folder = spec, result, folder
        self._sentences, self._system = sentences, system
        self._standing = result.standing
        self._needs = frozenset(needs)
        self._readers = {name: sizing.fields_read(name) for name in FAMILIES}
        self._hinges = _hinges(result)
        self._sampled = _sampled(result)
        self._basics = frozenset(missing_basics(spec) if result.best is None else ())

    def wanted(self, field: str) -> Matter | None:
        """Why to ask for this field now; None when neither the choice of a family nor engineering wants it."""
        if not self._standing or why_needless(field, self._spec, self._folder) is not None:
            return None
        if field in self._basics:
            return Matter(field=field, part="basics", worth=1.0)
        worth = 0.0 if field.startswith("test.") else self._worth(field)
        if worth >= NOISE and not self._result.decided:
            return Matter(field=field, part="best", worth=worth)
        return Matter(field=field, part="engineering", worth=worth) if field in self._needs else None

    def left_out(self, field: str) -> Matter:
        """Why an unwanted field is not asked for: it hardly matters, or it is proved that nothing hangs on it."""
        needless = why_needless(field, self._spec, self._folder)
        if needless is not None:
            return Matter(field=field, part="skip", reason="needless", blanks=(("why", needless),))
        if not self._standing:
            return Matter(field=field, part="skip", reason="nothing_fits")
        if field.startswith("test."):
            return Matter(field=field, part="aside", reason="test_needed")
        known = vocabulary()[field]
        if known.kind == "text":
            return Matter(field=field, part="aside", reason="never_sized")
        readers = [family for family in self._standing if field in self._readers[family]]
        if not readers and field not in self._hinges:
            return self._unread(field)
        if field in self._hinges or known.is_number or self._changes(field, readers):
            reason = "decided" if self._worth(field) >= NOISE else "hardly"
            return Matter(field=field, part="aside", worth=self._worth(field), reason=reason)
        return Matter(field=field, part="skip", reason="same_anyway")

    def _unread(self, field: str) -> Matter:
        gone = [family for family in FAMILIES if field in self._readers[family]]
        if not gone:
            return Matter(field=field, part="skip", reason="nothing_hangs")
        reasons = {family: out_reason(self._result.families[family], self._sentences, self._system) for family in gone}
        names = joined([family_name(family, self._sentences) for family in gone], "or")
        blanks = (("families", names), ("reason", "; ".join(dict.fromkeys(reasons.values()))))
        return Matter(
            field=field, part="skip", reason="family_gone" if len(gone) <= 2 else "families_gone", blanks=blanks
        )

    def _worth(self, field: str) -> float:
        """Sampled where it is; else the share of standing families whose verdict hangs on it, the best one double."""
        sampled = self._sampled.get(field)
        if sampled is not None:
            return sampled
        hanging = self._hinges.get(field, frozenset())
        return (len(hanging) + (self._result.best in hanging)) / (len(self._standing) + 1) if hanging else 0.0

    def _changes(self, field: str, readers: list[str]) -> bool:
        """For a choice or a yes and no: whether some answer would change the verdict of a standing family."""
        kind = vocabulary()[field].kind
        answers: tuple[str | bool, ...] = (True, False) if kind == "yes_no" else vocabulary()[field].choices
        now = {family: self._result.families[family].verdict for family in readers}
        trials = (
            sizing.verdicts(self._spec.put(field, Value(value=word)), questions=self._folder, families=readers)
            for word in answers
        )
        return any(found[family] != verdict for found in trials for family, verdict in now.items())


def _sampled(result: Result) -> dict[str, float]:
    """How often an answer changes the best family, by field.

    Nothing where that tells nothing: there is no best family yet, or it is open which one is best and no single
    answer is seen to tell. Then what the verdicts of the leading two hang on is asked.
    """
    found = {f.field: f.changes_best for f in result.follow_ups if f.field and f.changes_best is not None}
    if result.best is None:
        return {}
    if result.decided is False and max(found.values(), default=0.0) < NOISE:
        leading = {*result.families[result.best].depends_on}
        leading |= {*result.families[result.second].depends_on} if result.second else set()
        return {name: worth for name, worth in found.items() if name not in leading}
    return found


def _hinges(result: Result) -> dict[str, frozenset[str]]:
    """Which standing families wait for a field: named in depends_on, or by an assumption that is."""
    about = {assumption.id: assumption.about for assumption in result.assumptions}
    found: dict[str, set[str]] = {}
    for family in result.standing:
        for id in result.families[family].depends_on:
            for name in about.get(id, (id,)):
                found.setdefault(name, set()).add(family)
    return {name: frozenset(families) for name, families in found.items()}


def missing_basics(spec: Spec) -> tuple[str, ...]:
    """What is not known of all that no family can be chosen without: product, size, weight, rate, rise and its way."""
    rate, rise = ("rate.normal", "rate.peak"), ("rise.height", "rise.infeed_height", "rise.discharge_height")
    wanted = ["product.type", "product.length", "product.width", "product.height", "product.weight"]
    wanted += [] if any(is_settled(name, spec) for name in rate) else rate
    wanted += [] if is_settled("rise.height", spec) else rise
    return tuple(name for name in (*wanted, "rise.direction") if not is_settled(name, spec))
