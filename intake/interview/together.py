"""What is asked in one breath, from `together.toml` of the questions folder."""

import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

from intake.interview.question import Question
from intake.spec.folder import shipped_folder

FILE = "together.toml"


@dataclass(frozen=True, slots=True, kw_only=True)
class Together:
    """Questions of the tree that become one message, the first of them lends its id."""

    questions: tuple[str, ...]
    say: str
    why: str


@cache
def together_rows(folder: Path) -> tuple[Together, ...]:
    """The rows of a folder; a folder without the file has the shipped ones."""
    own = folder / FILE
    path = own if own.is_file() else shipped_folder() / FILE
    rows = tomllib.loads(path.read_text(encoding="utf-8")).get("together", [])
    return tuple(Together(questions=tuple(row["questions"]), say=row["say"], why=row["why"]) for row in rows)


def joined_questions(wanted: Sequence[Question], whole: Mapping[str, bool], folder: Path) -> list[Question]:
    """The questions in their order, with those that go together as one, where the first of them stood.

    Args:
        wanted: questions to ask, in order.
        whole: by id, whether nothing is known yet of what a question asks for.
    """
    left = {question.id: question for question in wanted}
    asked: list[Question] = []
    for question in wanted:
        if question.id not in left:
            continue
        row = next((row for row in together_rows(folder) if _holds(row, question.id, left, whole)), None)
        members = [left.pop(id) for id in row.questions] if row is not None else [left.pop(question.id)]
        asked.append(_one(row, question, members) if row is not None else question)
    return asked


def _holds(row: Together, id: str, left: Mapping[str, Question], whole: Mapping[str, bool]) -> bool:
    return id in row.questions and all(one in left and whole[one] for one in row.questions)


def _one(row: Together, lead: Question, members: Sequence[Question]) -> Question:
    """One question for all of them, under the id and with the purpose of the one that stood first."""
    fields = tuple(name for one in members for name in one.fields)
    return replace(lead, fields=fields, say=row.say, why=row.why)
