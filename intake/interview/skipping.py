"""Why a fact is not asked for: it hardly matters, or it is proved that no answer changes anything that stands."""

from collections.abc import Sequence
from pathlib import Path

from intake import sizing
from intake.interview.matters import Matter, Part, hinges_of, worth_of_asking
from intake.interview.needless import is_same_matter, why_needless
from intake.interview.reasons import family_name, out_reason
from intake.interview.wording import Sentences, joined
from intake.interview.words_of import words_of
from intake.sizing.result import FAMILIES, Result
from intake.sizing.samples import NOISE
from intake.spec.display import System
from intake.spec.flat import Spec, Value
from intake.spec.vocabulary import vocabulary


class LeavingOut:
    """Judges the facts that are not asked for in one state of a case."""

    def __init__(self, spec: Spec, result: Result, folder: Path, sentences: Sentences, system: System) -> None:
        self._spec, self._result, self._folder = spec, result, folder
        self._sentences, self._system = sentences, system
        self._standing = result.standing
        self._readers = {name: sizing.fields_read(name) for name in FAMILIES}
        self._hinges = hinges_of(result)

    def why(self, field: str) -> Matter:
        """Why this field is not asked for. "skip" is proved: no possible value of it changes a standing verdict."""
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
        if field in self._hinges or self._may_change(field, readers):
            worth = worth_of_asking(field, self._result, self._hinges)
            return Matter(field=field, part="aside", worth=worth, reason="decided" if worth >= NOISE else "hardly")
        return Matter(field=field, part="skip", reason="same_anyway")

    def _unread(self, field: str) -> Matter:
        """No family that stands looks at it."""
        gone = [family for family in FAMILIES if field in self._readers[family]]
        if not gone:
            return Matter(field=field, part="skip", reason="nothing_hangs")
        reasons = {family: out_reason(self._result.families[family], self._sentences, self._system) for family in gone}
        names = joined([family_name(family, self._sentences) for family in gone], "or")
        blanks = (("families", names), ("reason", "; ".join(dict.fromkeys(reasons.values()))))
        return Matter(
            field=field, part="skip", reason="family_gone" if len(gone) <= 2 else "families_gone", blanks=blanks
        )

    def _may_change(self, field: str, readers: Sequence[str]) -> bool:
        """Whether some answer may change the verdict of a standing family: each word is tried, a figure by bounds."""
        now = {family: self._result.families[family].verdict for family in readers}
        answers = [Value(value=word) for word in words_of(field)]
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
