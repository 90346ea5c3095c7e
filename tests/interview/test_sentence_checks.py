"""Sentences of a company's own folder: looked-up ids only, filled blanks only."""

from collections.abc import Callable
from pathlib import Path

from intake.interview.proof import prove
from intake.spec.folder import questions_folder

Told = Callable[..., list[str]]


def test_the_shipped_sentences_are_sound() -> None:
    files = {path.name for path in (questions_folder() / "sentences").glob("*.toml")}
    assert [str(problem) for problem in prove(questions_folder()).problems if problem.file in files] == []


def test_a_sentence_that_is_never_said_names_the_nearest(told: Told) -> None:
    said = told("sentences/advice.toml", old="too_early =", new="to_early =")
    assert any('no sentence "advice.to_early" is ever said. Did you mean "too_early"?' in line for line in said)


def test_a_blank_that_nothing_fills_is_named_with_those_that_are(told: Told) -> None:
    said = told("sentences/advice.toml", old="{missing}.", new="{misssing}.")
    assert any("has the blank misssing, which nothing fills. Its blanks are: missing" in line for line in said)


def test_a_sentence_for_a_new_check_is_welcome(told: Told) -> None:
    assert told("sentences/sizing.toml", old="[fail]\n", new='[fail]\nsway = "it would sway by {value}"\n') == []


def test_a_sentence_must_be_text(told: Told, folder: Path) -> None:
    said = told("sentences/talk.toml", old='untitled = "new case"', new="untitled = 3")
    assert len([line for line in said if "talk.untitled" in line]) == 1
