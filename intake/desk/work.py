"""One case being worked on: its talk, where it is kept, and how it is shown. Knows no screen."""

from dataclasses import dataclass, field

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

    `served`: the person sits at a browser, so that files of this computer are not theirs to read or write.
    `by_ear`: what is typed is heard, on the telephone or face to face, and staff's shorthand is understood.
    `beside`: the names of all cases open in this program, one list that they share.
    """

    talk: Interview
    keeper: Keeper | None = None
    question: Question | None = None
    changing: tuple[str, int] | None = None
    by_ear: bool = False
    units: System | None = None
    served: bool = False
    beside: list[str] = field(default_factory=list)
    _book: Book | None = field(default=None, repr=False)

    @property
    def name(self) -> str:
        """The name of the case, "" while it has none."""
        return self.keeper.name if self.keeper is not None else ""

    @property
    def system(self) -> System:
        """The units to show: those asked for, else those that the visitor uses."""
        return self.units or self.talk.system

    @property
    def said(self) -> list[str]:
        """What the visitor said, oldest first."""
        return [text for text, who in self.talk.case.messages.values() if who == "visitor"]

    @property
    def brief(self) -> Brief:
        """What advice is given on, in the units shown."""
        brief = self.talk.brief
        return Brief(spec=brief.spec, system=self.system, folder=brief.folder, sized=brief.sized)

    @property
    def book(self) -> Book:
        """The book that the case is kept in, or would be."""
        if self.keeper is not None:
            return self.keeper.book
        if self._book is None:
            self._book = Book()
        return self._book

    @property
    def kept_as(self) -> str:
        """The name that the book has the case under. Raises Slip for a talk of which nothing is kept."""
        if self.keeper is None or not self.talk.events:
            raise Slip("Nothing of this talk is kept yet, so there is nothing to do that with. /new NAME begins one.")
        return self.keeper.name

    def close(self) -> None:
        """Let go of the book's file; it is opened again when it is needed."""
        self.book.close()
