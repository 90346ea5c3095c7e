"""A questions folder to spoil: a copy of the shipped one, and what the proof says after one edit."""

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from intake.interview.proof import prove
from intake.spec.folder import questions_folder

QUESTION = """\
[[question]]
id = "extra"
fields = []
say = "How is it?"
why = "To know."
unknown_ok = "No problem."
settle = "a photo"
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A copy of the shipped folder."""
    copy = tmp_path / "questions"
    shutil.copytree(questions_folder(), copy)
    return copy


@pytest.fixture(scope="session")
def told_before() -> frozenset[str]:
    """What the proof says of the shipped folder itself: nothing, or its own test fails and only that one."""
    return frozenset(str(problem) for problem in prove(questions_folder()).problems)


@pytest.fixture
def extra() -> Callable[..., str]:
    """Writes a question to put on top of a file; its id stands on line 2, `more` begins on line 8."""

    def write(fields: str, more: str = "") -> str:
        return QUESTION.replace("[]", fields) + more + "\n"

    return write


@pytest.fixture
def told(folder: Path, told_before: frozenset[str]) -> Callable[..., list[str]]:
    """Edits one file of the copy and gives what the proof says beyond what it said before.

    `top` goes on top of the file, `new` takes the first place of `old`, and `words` all that follows the words mark.
    """

    def make(file: str, top: str = "", *, old: str = "", new: str = "", words: str | None = None) -> list[str]:
        path = folder / file
        text = path.read_text(encoding="utf-8")
        assert old in text
        text = text.replace(old, new, 1)
        if words is not None:
            text = text.split("# --- words ---")[0] + words
        path.write_text(top + text, encoding="utf-8")
        return [sentence for sentence in map(str, prove(folder).problems) if sentence not in told_before]

    return make
