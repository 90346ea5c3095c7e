"""One case being worked on: its talk, where it is kept, and how it is shown. Knows no screen."""

from dataclasses import dataclass

from intake.advice import Brief
from intake.casebook import Book
from intake.desk.effect import Slip
from intake.desk.keeping import Keeper
from intake.interview.question import Question
from intake.spec.display import System
from intake.talk import Interview


@dataclass(eq=False)
class Work:
    """A talk and what goes with it. `question`: the one put last; `changing`: the fact that is typed anew.

    `by_ear`: what is typed is heard, on the telephone or face to face, and staff's shorthand is understood.
    """

    talk: Interview
    keeper: Keeper | None = None
    question: Question | None = None
    changing: tuple[str, int] | None = None
    by_ear: bool = False
    units: System | None = None

    @property
    def name(self) -> str:
        """The name of the case, "" while it has none."""
        return self.keeper.name if self.keeper is not None else ""

    @property
    def system(self) -> System:
        """The units to show: those asked for, else those that the visitor uses."""
        return self.units or self.talk.system

    @property
    def brief(self) -> Brief:
        """What advice is given on, in the units shown."""
        brief = self.talk.brief
        return Brief(spec=brief.spec, system=self.system, folder=brief.folder, sized=brief.sized)

    @property
    def book(self) -> Book:
        """The book that the case is kept in. Raises Slip for a talk that is not kept."""
        if self.keeper is None:
            raise Slip("This talk is not kept, so there is nothing to do that with. Open it under a name.")
        return self.keeper.book
