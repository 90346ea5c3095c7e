"""Where the data folder `questions/` is found: a company's own, the wheel's copy or the checkout's."""

import os
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent.parent


class FolderError(Exception):
    """The questions folder that was asked for is not there or is not one. The message says how to mend it."""


def questions_folder(given: str | os.PathLike[str] | None = None) -> Path:
    """The folder of questions, limits and assumptions in force.

    Order: the folder given, the environment's INTAKE_QUESTIONS, the copy inside an installed
    wheel, the folder beside the package in a checkout.
    Raises FolderError with what was looked for when a named folder is not one.
    """
    named = given or os.environ.get("INTAKE_QUESTIONS")
    if named:
        folder = Path(named)
        if not (folder / "tree").is_dir() or not (folder / "range").is_dir():
            raise FolderError(
                f"{folder}: not a questions folder (it needs tree/ and range/ inside). "
                "Name another folder, or unset INTAKE_QUESTIONS to use the one that ships with the program."
            )
        return folder
    return shipped_folder()


def shipped_folder() -> Path:
    """The folder that ships with the program, whatever folder is in force."""
    return _shipped("_questions", "questions")


def demo_folder() -> Path:
    """The folder of worked conversations, from an installed wheel or a checkout."""
    return _shipped("_transcripts_demo", "transcripts_demo")


def _shipped(inside: str, beside: str) -> Path:
    in_wheel = _PACKAGE / inside
    return in_wheel if in_wheel.is_dir() else _PACKAGE.parent / beside
