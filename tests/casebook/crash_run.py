"""Kills a program that keeps a talk, many times at random moments, and looks at what is left of the book each time.

Run by `test_crash.py` as a program of its own: it forks, so it must have no threads. Arguments: folder, how many kills,
seed. Prints one line of counts, or what was lost and exits 1.
"""

import os
import random
import signal
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from intake.casebook import Book, IndexRow, file_mark
from intake.desk.keeping import Keeper, index_of
from intake.interview import history
from intake.spec import Event
from intake.talk import Interview

CASE, PLAN = "jars", b"a floor plan " * 2000

Step = Callable[[Interview], object]
SCRIPT: tuple[Step, ...] = (
    lambda t: t.hear("16x12x10 inch taped cases, 30 lb, 25 a minute, from 30 inches to 14 feet. Mira Oldcastle"),
    lambda t: t.ask(),
    lambda t: t.hear("corrugated, and they may be squeezed"),
    lambda t: t.know("space.length", 9.0),
    lambda t: t.note("call back after four"),
    lambda t: t.undo(),
    lambda t: t.redo(),
    lambda t: t.life.promise("send the layout", "us", "2026-03-06"),
    lambda t: t.hear("about 28 a minute at peak, " + "and a long story besides, " * 60),
    lambda t: t.life.ask_back("which pallet?"),
    lambda t: t.life.attached("floor.pdf", file_mark(PLAN), len(PLAN)),
    lambda t: t.life.done(next(m.seq for m in t.case.waiting if m.kind == "question")),
    lambda t: t.rename("cases to the gallery"),
    lambda t: t.life.move("samples_asked"),
    lambda t: t.record("handed_over", {"revision": "A", "spec": t.spec(), "data": {}}),
)


def play(talk: Interview, book: Path, say: Callable[[str], object]) -> None:
    """The whole talk, each step kept before the next. `say` is told what begins and what is safe on disk."""
    os.environ["INTAKE_BOOK"] = str(book)
    keeper = Keeper(CASE)
    keeper.book.append("other", [Event(seq=1, at="", kind="opened", body={"title": "kept before"})])
    say("other")
    for number, step in enumerate(SCRIPT):
        say("begin")
        keeper.book.keep_draft(CASE, f"half-typed {number}")
        say(f"draft {number}")
        step(talk)
        files = {file_mark(PLAN): PLAN} if talk.case.files else None
        say("begin")
        trouble = keeper.keep(talk) if files is None else _keep_with_file(keeper, talk, files)
        say(f"trouble {trouble}" if trouble else f"kept {len(talk.events)}")
        if number % 3 == 2:
            say("begin")
            trouble = keeper.index(talk)
            say(f"trouble {trouble}" if trouble else f"index {len(talk.events)}")
    say("end")


def _keep_with_file(keeper: Keeper, talk: Interview, files: dict[str, bytes]) -> None:
    """The desk attaches in one call: event and content together."""
    keeper.book.append(CASE, talk.events, files=files)


class Witness:
    """Knows the whole talk: its events, and the line of the index after each of them."""

    def __init__(self, folder: Path) -> None:
        self.talk = Interview()
        play(self.talk, folder / "whole.sqlite3", lambda word: None)
        self.events = self.talk.events
        self._rows: dict[int, IndexRow] = {}
        self.lasts_s = sorted(self._whole(folder / f"timed{turn}.sqlite3") for turn in range(5))[2]

    def _whole(self, book: Path) -> float:
        """How long a child plays that nobody kills [s], from the moment that it is made."""
        started = time.perf_counter()
        said = kill_one(self, book, None)
        assert said[-1] == "end", said[-1]
        return time.perf_counter() - started

    def fresh(self) -> Interview:
        """A new talk that remembers what was sized before, so that the kills fall on keeping and not on sizing."""
        talk = Interview()
        talk._results = self.talk._results
        return talk

    def index(self, case_id: str, events: list[Event]) -> IndexRow:
        """The line of the index after so many events."""
        if case_id != CASE:
            return IndexRow(title="kept before")
        if len(events) not in self._rows:
            talk = Interview.from_events(self.events[: len(events)])
            talk._results = self.talk._results
            self._rows[len(events)] = index_of(talk)
        return self._rows[len(events)]


def kill_one(witness: Witness, book: Path, after_s: float | None) -> list[str]:
    """Play in a child, kill it after that time (None: let it end), and tell what it had said by then."""
    reading, writing = os.pipe()
    talk = witness.fresh()
    child = os.fork()
    if child == 0:
        os.close(reading)
        try:
            play(talk, book, lambda word: os.write(writing, f"{word}\n".encode()))
        finally:
            os._exit(0)
    os.close(writing)
    if after_s is not None:
        time.sleep(after_s)
        os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    said = b""
    while piece := os.read(reading, 65536):
        said += piece
    os.close(reading)
    return said.decode().splitlines()


def last(said: list[str], kind: str) -> int:
    """The last number that was confirmed of a kind, -1 for none."""
    return max((int(word.split()[1]) for word in said if word.startswith(f"{kind} ")), default=-1)


def losses(witness: Witness, path: Path, said: list[str]) -> Iterator[str]:
    """What should be in the book and is not."""
    yield from (word for word in said if word.startswith("trouble"))
    with Book(path) as book:
        yield from book.check()
        events = book.events(CASE)
        if events != witness.events[: len(events)] or len(events) < last(said, "kept"):
            yield f"{last(said, 'kept')} events were confirmed, {len(events)} are there"
        if "other" in said and len(book.events("other")) != 1:
            yield "the other case is gone"
        draft, confirmed = book.draft(CASE), last(said, "draft")
        if draft not in (
            {f"half-typed {confirmed}", f"half-typed {confirmed + 1}"} if confirmed >= 0 else {"", "half-typed 0"}
        ):
            yield f"draft {confirmed} was confirmed, {draft!r} is there"
        if any(event.kind == "attached" for event in events) and book.attachment(CASE, file_mark(PLAN)) != PLAN:
            yield "the file is not the one attached"
        before = {entry.id: entry for entry in book.cases(archived=True)}
        found = [entry.id for entry in book.cases("corrugated")]
        if CASE in before:
            made_of = range(max(0, last(said, "index")), len(events) + 1)
            if before[CASE].index not in [IndexRow(), *(witness.index(CASE, events[:n]) for n in made_of)]:
                yield f"the index tells of another talk: {before[CASE].index}"
            if last(said, "index") > 0 and before[CASE].index == IndexRow():
                yield "the confirmed index is gone"
            book.append(CASE, [], witness.index(CASE, events))
        if "other" in before:
            book.append("other", [], witness.index("other", []))
        kept = book.cases(archived=True)
        book.rebuild(witness.index)
        if book.cases(archived=True) != kept or [entry.id for entry in book.cases("corrugated")] != found:
            yield "the kept index is not the rebuilt one"


@contextmanager
def one_time() -> Iterator[None]:
    """All talks happen in the same moment, so that they can be compared word for word."""
    now, history.now = history.now, lambda: "2026-03-02T09:00:00+00:00"
    try:
        yield
    finally:
        history.now = now


def main(folder: Path, kills: int, seed: int) -> int:
    """Kill so many times; 0 when nothing was lost."""
    rng = random.Random(seed)
    inside = ended = none = 0
    import intake.interview.life as life
    import intake.talk as talk_module

    life.now = talk_module.now = lambda: "2026-03-02T09:00:00+00:00"  # type: ignore[assignment]
    with one_time():
        witness = Witness(folder)
        for number in range(kills):
            book = folder / f"{number}" / "cases.sqlite3"
            said = kill_one(witness, book, rng.uniform(0.0, witness.lasts_s * 1.1))
            found = list(losses(witness, book, said))
            if found:
                sys.stdout.write(f"kill {number}: {'; '.join(found)}; said: {said[-4:]}\n")
                return 1
            inside += bool(said) and said[-1] == "begin"
            ended += "end" in said
            none += not said
    sys.stdout.write(
        f"{kills} kills over {witness.lasts_s * 1e3:.0f} ms: {inside} inside a write, {none} before the first, "
        f"{ended} after the end; nothing lost\n"
    )
    return 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3])))
