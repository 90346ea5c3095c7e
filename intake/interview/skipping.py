"""Which facts still matter, and why the others do not: static reads, what verdicts hinge on, and trials."""

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from intake import sizing
from intake.interview.needless import is_same_matter, why_needless
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
    """What one open fact matters. `worth`: how often its answer would change the best family, 0 to 1.

    `tells`: what the answer, with all that is asked in the same breath, tells about the best family.
    """

    field: str
    part: Part
    worth: float = 0.0
    tells: float = 0.0
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
        self._basics = frozenset(missing_basics(spec) if result.best is None else ())

    def wanted(self, field: str) -> Matter | None:
        """Why to ask for this field now; None when neither the choice of a family nor engineering wants it."""
        if not self._standing or why_needless(field, self._spec, self._folder) is not None:
            return None
        if field in self._basics or (field == "product.diameter" and "product.length" in self._basics):
            return Matter(field=field, part="basics", worth=1.0)
        return Matter(field=field, part="engineering") if field in self._needs else None

    def tells(self, fields: Collection[str]) -> float:
        """What the answer to these fields together tells about the best family; 0 where that is chance, or decided."""
        samples = self._result.samples
        if samples is None or self._result.decided:
            return 0.0
        alone = max((samples.tells((field,)) for field in fields), default=0.0)
        return max(alone, samples.tells(fields)) if len(fields) > 1 else alone

    def wanted_together(self, fields: Collection[str]) -> list[Matter]:
        """Why to ask for these fields in one breath; none of them when neither choice nor engineering wants them.

        Two figures may tell together what neither tells alone, as length and width of a floor do.
        """
        found = {field: self.wanted(field) for field in fields}
        sampled = [field for field in fields if self._is_sampled(field)]
        tells = self.tells(sampled)
        if tells > 0.0:
            for field in sampled:
                matter = found[field]
                if matter is None or matter.part != "basics":
                    found[field] = Matter(field=field, part="best", worth=self._worth(field), tells=tells)
        return [matter for matter in found.values() if matter is not None]

    def brings_back(self, fields: Collection[str]) -> list[Matter]:
        """Those of these fields whose answer may bring the shown best family back, where no answer tells anything.

        A family that fails over all that is plausible leads in no sample, and yet nothing better may stand: then what
        its verdict hangs on is asked, first what alone brings it back.
        """
        best = self._result.best
        hinges = [field for field in fields if best in self._hinges.get(field, frozenset()) and self._may_ask(field)]
        return [Matter(field=field, part="best", tells=self._brings_back(field, best or "")) for field in hinges]

    def _brings_back(self, field: str, family: str) -> float:
        answers = (self._spec.put(field, Value(value=word)) for word in _words(field))
        return 1.0 if any(not sizing.looks_out(spec, family, questions=self._folder) for spec in answers) else 0.5

    def _may_ask(self, field: str) -> bool:
        return not field.startswith("test.") and why_needless(field, self._spec, self._folder) is None

    @property
    def is_stuck(self) -> bool:
        """True while the shown best family leads in few samples or none, and is not decided."""
        samples, best = self._result.samples, self._result.best
        if samples is None or best is None or self._result.decided:
            return False
        return samples.leader != best

    def _is_sampled(self, field: str) -> bool:
        samples = self._result.samples
        return samples is not None and samples.column_of(field) is not None and self._may_ask(field)

    def left_out(self, field: str) -> Matter:
        """Why an unwanted field is not asked for: it hardly matters, or it is proved that nothing hangs on it."""
        needless = why_needless(field, self._spec, self._folder)
        if needless is not None and is_same_matter(field, self._spec, self._folder):
            return Matter(field=field, part="skip", reason="needless", blanks=(("why", needless),))
        if not self._standing:
            return Matter(field=field, part="skip", reason="nothing_fits")
        if field.startswith("test."):
            return Matter(field=field, part="aside", reason="test_needed")
        if vocabulary()[field].kind == "text":
            return Matter(field=field, part="aside", reason="never_sized")
        readers = [family for family in self._standing if field in self._readers[family]]
        if needless is not None:
            part: Part = "aside" if readers else "skip"
            return Matter(field=field, part=part, reason="needless", blanks=(("why", needless),))
        if not readers and field not in self._hinges:
            return self._unread(field)
        if field in self._hinges or self._changes(field, readers):
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
        """How often the answer changes the best family; where nothing was sampled, whether a verdict hangs on it."""
        samples = self._result.samples
        if samples is not None:
            return samples.changes((field,))
        hanging = self._hinges.get(field, frozenset())
        return (len(hanging) + (self._result.best in hanging)) / (len(self._standing) + 1) if hanging else 0.0

    def _changes(self, field: str, readers: list[str]) -> bool:
        """Whether some answer might change the verdict of a standing family: each word is tried, a figure by bounds."""
        now = {family: self._result.families[family].verdict for family in readers}
        answers = [Value(value=word) for word in _words(field)]
        if not answers:
            if field == "rise.turn" or any(verdict != "fits" for verdict in now.values()):
                return True
            answers = [_anything(field)]
        trials = (
            sizing.verdicts(self._spec.put(field, said), questions=self._folder, families=readers) for said in answers
        )
        return any(found[family] != verdict for found in trials for family, verdict in now.items())


def _anything(field: str) -> Value:
    """A figure of which nothing is known, as one doubt: what fits over all of it fits wherever it lies."""
    unit = vocabulary()[field].unit
    low = -270.0 if unit == "degC" else 1e-3 if unit in ("m", "kg") else 0.0
    return Value(low=low, high=1e6)


def _words(field: str) -> tuple[str | bool, ...]:
    """Every possible answer to a yes and no or a choice; none for a figure."""
    known = vocabulary()[field]
    return (True, False) if known.kind == "yes_no" else known.choices


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
