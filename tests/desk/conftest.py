"""Sits a person down at a desk; and what the tests of the desk without its screen share: a book of their own, and
sizing without its samples."""

from collections.abc import AsyncIterator, Callable, Iterator
from contextlib import asynccontextmanager
from pathlib import Path

import pytest
from hands import AtDesk, Hands

from intake import sizing
from intake.desk.app import Desk
from intake.desk.keeping import Keeper, opened
from intake.desk.steps import Steps
from intake.desk.work import Work
from intake.sizing import size
from intake.sizing.result import Result
from intake.spec.flat import Spec
from intake.talk import Interview


@pytest.fixture
def at_desk(monkeypatch: pytest.MonkeyPatch) -> AtDesk:
    """Sits down at a desk: `async with at_desk(talk, size=(80, 24)) as hands`. The colours are the same everywhere."""
    for name in ("NO_COLOR", "TMUX", "TERM_PROGRAM", "TEXTUAL_THEME"):
        monkeypatch.delenv(name, raising=False)

    @asynccontextmanager
    async def sit(
        talk: Interview | None = None, *, size: tuple[int, int] = (80, 24), keeper: Keeper | None = None
    ) -> AsyncIterator[Hands]:
        app = Desk(talk or Interview(), keeper)
        async with app.run_test(size=size) as pilot:
            hands = Hands(app, pilot)
            await hands.settle()
            yield hands

    return sit


@pytest.fixture
def first_message() -> str:
    """A visitor's first message with enough in it to be sized."""
    return "16x12x10 inch taped cases, 30 lb, 25 a minute, from 30 inches to 14 feet, forklifts drive underneath"


@pytest.fixture(scope="module")
def bare() -> Iterator[None]:
    """The real sizing without its 256 samples, which take most of the time; verdicts are the same."""

    def without(spec: Spec, *, questions: Path, worth: bool = False) -> Result:
        return size(spec, questions=questions)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(sizing, "size", without)
        yield


@pytest.fixture(scope="module")
def own_book(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """A book that only these tests know."""
    place = tmp_path_factory.mktemp("book") / "cases.sqlite3"
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("INTAKE_BOOK", str(place))
        yield place


@pytest.fixture
def work(bare: None, own_book: Path) -> Iterator[Work]:
    """A new case that is not kept."""
    made = Work(Interview(), units="si")
    yield made
    made.close()


@pytest.fixture
def steps(work: Work) -> Steps:
    """The steps of that case."""
    return Steps(work)


@pytest.fixture
def kept(bare: None, own_book: Path) -> Iterator[Callable[[str], Steps]]:
    """Opens a case of the book under a name, as a desk does; called twice for one name it is two desks."""
    made: list[Work] = []

    def open_it(name: str) -> Steps:
        talk, keeper = opened(name)
        made.append(Work(talk, keeper, units="si"))
        return Steps(made[-1])

    yield open_it
    for one in made:
        one.close()
