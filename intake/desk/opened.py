"""Cases made ready for the screen: those that the desk opens with, and one that is called for later."""

from dataclasses import dataclass

from intake.casebook import BookError, new_id
from intake.desk.keeping import Keeper, opened, resume
from intake.desk.sitting import Remembered, Sitting
from intake.desk.steps import Steps
from intake.desk.talk_screen import TalkScreen
from intake.desk.work import Work
from intake.talk import Interview


@dataclass(frozen=True, slots=True)
class Opened:
    """Talks with what keeps them, the one in front first. `sitting`: of a browser, which remembers what is open."""

    cases: tuple[tuple[Interview, Keeper], ...]
    sitting: Sitting | None = None


def open_cases(case: str | None, sitting: str | None = None) -> Opened:
    """A kept case or a new one; for a sitting in a browser all that it had open. Raises BookError for trouble."""
    sat = Sitting(sitting) if sitting else None
    before = sat.recall() if sat else Remembered()
    front = case or before.front
    cases = [_case(front) if front else (Interview(), Keeper(new_id()))]
    for other in before.open_cases:
        if other != cases[0][1].name:
            try:
                cases.append(_case(other))
            except BookError:
                continue  # one that cannot be read is no reason not to open the rest
    return Opened(tuple(cases), sat)


def _case(name: str) -> tuple[Interview, Keeper]:
    talk, keeper = opened(name)
    return talk, keeper


def case_screen(talk: Interview, keeper: Keeper | None, *, served: bool = False) -> TalkScreen:
    """The screen of a case; `served`: in a browser."""
    return TalkScreen(Steps(Work(talk=talk, keeper=keeper, served=served), briefly=True))


def called_screen(name: str, keep: bool, *, served: bool = False) -> TalkScreen:
    """A screen for a case of the book, or a new one of that name. Raises BookError."""
    talk = (resume(name) if keep else None) or Interview()
    return case_screen(talk, Keeper(name, kept=len(talk.events)) if keep else None, served=served)
