"""What advice speaks of: one spec with its sizing, in the visitor's units; and what an answer is."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path
from typing import Any

from intake import sizing
from intake.interview.wording import Sentences
from intake.sizing.result import FamilyResult, Result
from intake.spec.display import System
from intake.spec.flat import Spec
from intake.spec.folder import questions_folder


@dataclass(frozen=True, eq=False, kw_only=True)
class Brief:
    """One spec, as it stands. Sizing and sentences are those of one questions folder.

    `result` may be handed in where it is known already; else the spec is sized when something asks for it.
    """

    spec: Spec
    system: System = "us"
    folder: Path = field(default_factory=questions_folder)
    sized: Result | None = None

    @cached_property
    def result(self) -> Result:
        """The sizing of the spec. It need not be sampled."""
        return self.sized if self.sized is not None else sizing.size(self.spec, questions=self.folder)

    @cached_property
    def sampled(self) -> Result:
        """The same with what sampling gives."""
        if self.result.decided is not None:
            return self.result
        return sizing.size(self.spec, worth=True, questions=self.folder)

    @cached_property
    def sentences(self) -> Sentences:
        """The sentences of the folder."""
        return Sentences(self.folder)

    @property
    def best(self) -> FamilyResult | None:
        """The leading family, None while there is none."""
        return self.result.families[self.result.best] if self.result.best is not None else None

    def family(self, name: str | None) -> FamilyResult | None:
        """The family of that name, the leading one where none is named. Raises KeyError for one that there is not."""
        return self.best if name is None else self.result.families[name]

    def changed(self, spec: Spec) -> "Brief":
        """The same for another spec."""
        return Brief(spec=spec, system=self.system, folder=self.folder)


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """An answer computed from a case. `lines` can be sent to the visitor as they are; `data` is for scripts."""

    topic: str
    lines: tuple[str, ...]
    data: Mapping[str, Any] = field(default_factory=dict)

    def to_json(self) -> dict[str, Any]:
        """The shape for scripts."""
        return {"topic": self.topic, "lines": list(self.lines), **self.data}
