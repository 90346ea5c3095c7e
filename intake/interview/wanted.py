"""Which facts to ask for now, and why: what may change the best family, and what engineering needs to start."""

from collections.abc import Collection, Sequence
from functools import cached_property
from pathlib import Path

from intake import sizing
from intake.interview.matters import Matter, hinges_of, missing_basics, worth_of_asking
from intake.interview.needless import why_needless
from intake.interview.words_of import words_of
from intake.sizing.result import Result
from intake.spec.flat import Spec, Value


class Wanted:
    """What is wanted in one state of a case. `needs`: what engineering needs to start."""

    def __init__(self, spec: Spec, result: Result, needs: Collection[str], folder: Path) -> None:
        self._spec, self._result, self._needs, self._folder = spec, result, frozenset(needs), folder
        self._hinges = hinges_of(result)
        self._basics = frozenset(missing_basics(spec) if result.best is None else ())

    def together(self, fields: Sequence[str]) -> list[Matter]:
        """Why to ask for these fields in one breath; none of them where neither choice nor engineering wants them.

        Two figures may tell together what neither tells alone, as length and width of a floor do.
        """
        if not self._result.standing:
            return []
        open_fields = [field for field in fields if why_needless(field, self._spec, self._folder) is None]
        telling = [field for field in open_fields if self._is_weighed(field)]
        tells = self.tells(telling)
        found = []
        for field in open_fields:
            if self._is_basic(field):
                found.append(Matter(field=field, part="basics", worth=1.0))
            elif tells > 0.0 and field in telling:
                worth = worth_of_asking(field, self._result, self._hinges)
                found.append(Matter(field=field, part="best", worth=worth, tells=tells))
            elif field in self._needs:
                found.append(Matter(field=field, part="engineering"))
        return found

    def tells(self, fields: Collection[str]) -> float:
        """What the answer to these fields together tells about the best family; 0 where that is chance, or decided."""
        samples = self._result.samples
        if self._result.decided or not fields:
            return 0.0
        if samples is None:
            return max(worth_of_asking(field, self._result, self._hinges) for field in fields)
        alone = max(samples.tells((field,)) for field in fields)
        return max(alone, samples.tells(fields)) if len(fields) > 1 else alone

    @cached_property
    def is_stuck(self) -> bool:
        """True while the shown best family leads in few samples or none, and nothing is decided."""
        samples, best = self._result.samples, self._result.best
        if samples is None or best is None or self._result.decided:
            return False
        return samples.leader != best

    def bringing_back(self, fields: Sequence[str]) -> list[Matter]:
        """Those of these fields whose answer may bring the shown best family back, where no answer tells anything.

        A family that fails over all that is plausible leads in no sample, and yet nothing better may stand: then what
        its verdict hangs on is asked, first what alone brings it back.
        """
        best = self._result.best
        if best is None:
            return []
        hinges = [field for field in fields if best in self._hinges.get(field, frozenset()) and self._may_ask(field)]
        return [Matter(field=field, part="best", tells=self._brings_back(field, best)) for field in hinges]

    def _brings_back(self, field: str, family: str) -> float:
        answers = (self._spec.put(field, Value(value=word)) for word in words_of(field))
        return 1.0 if any(not sizing.looks_out(spec, family, questions=self._folder) for spec in answers) else 0.5

    def _is_basic(self, field: str) -> bool:
        """Also a diameter, which stands for length and width."""
        return field in self._basics or (field == "product.diameter" and "product.length" in self._basics)

    def _is_weighed(self, field: str) -> bool:
        """True where the samples say what the answer tells; without samples, where a verdict hangs on it."""
        samples = self._result.samples
        known = field in self._hinges if samples is None else samples.column_of(field) is not None
        return known and not field.startswith("test.")

    def _may_ask(self, field: str) -> bool:
        return not field.startswith("test.") and why_needless(field, self._spec, self._folder) is None
