"""Desks in programs of their own on one book: different cases, the same case, the first opening, all at once."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from intake.casebook import Book
from intake.spec import fold

NOTES, DESKS = 25, ("anna", "berta", "carla")


@pytest.fixture
def desks(place: Path) -> list[subprocess.Popen[str]]:
    """Three desks that begin on a new book in the same moment."""
    program = str(Path(__file__).with_name("desk_run.py"))
    paths = os.pathsep.join(path for path in sys.path if path)
    return [
        subprocess.Popen(
            [sys.executable, program, name, str(NOTES)],
            env={**os.environ, "INTAKE_BOOK": str(place), "PYTHONPATH": paths},
            stderr=subprocess.PIPE,
            text=True,
        )
        for name in DESKS
    ]


def test_desks_at_once_lose_nothing_of_each_other(desks: list[subprocess.Popen[str]], place: Path) -> None:
    for desk in desks:
        _, said = desk.communicate()
        assert (desk.returncode, said) == (0, "")
    with Book(place) as book:
        shared = fold(book.events("shared"))
        assert len(shared.notes) == NOTES * len(DESKS)
        for name in DESKS:
            own = [f"{name} {number}" for number in range(NOTES)]
            assert [note for note in shared.notes if note.startswith(name)] == own
            assert fold(book.events(f"of_{name}")).notes == own
            assert book.draft(f"of_{name}") == f"half-typed {NOTES - 1}"
            assert [entry.id for entry in book.cases(f"{name} {NOTES - 1} of")] == [f"of_{name}"]
        assert book.check() == []


def test_what_one_desk_keeps_is_followed_by_the_other(place: Path) -> None:
    with Book(place) as here, Book(place) as there:
        here.keep_draft("tea", "x")
        mark, _ = there.follow()
        here.import_('{"format": "intake case", "version": 1, "case": "tea"}\n{"seq": 1, "at": "", "kind": "opened"}')
        mark, changed = there.follow(mark)
        assert changed == ["tea"]
        here.keep_draft("tea", "y")
        assert there.follow(mark) == (mark, [])
        assert there.draft("tea") == "y"
