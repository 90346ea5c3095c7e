"""The question tree: every question that may be asked, from the files of a questions folder."""

import os
from collections.abc import Collection, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from types import MappingProxyType

from intake.interview.branch_file import BRANCHES, read_branches
from intake.interview.complaints import TreeError
from intake.interview.engineering import engineering_needs, read_needs
from intake.interview.entry import STANDS_FOR, Condition, QuestionEntry, Wording, is_settled
from intake.interview.tree_checks import tree_problems
from intake.spec.flat import Spec

__all__ = [
    "BRANCHES",
    "STANDS_FOR",
    "Condition",
    "QuestionEntry",
    "Tree",
    "TreeError",
    "Wording",
    "engineering_needs",
    "is_settled",
    "load_tree",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Tree:
    """All questions in the order of a talk, what figures usually lie between, what engineering needs by family."""

    questions: tuple[QuestionEntry, ...]
    by_id: Mapping[str, QuestionEntry]
    plausible: Mapping[str, tuple[float, float]]
    engineering_needs: Mapping[str, tuple[str, ...]]
    _by_field: Mapping[str, QuestionEntry]

    def for_field(self, field: str) -> QuestionEntry | None:
        """The question that brings this fact, None for a field that the tree never asks for."""
        return self._by_field.get(field)

    def open_fields(self, question: QuestionEntry, spec: Spec) -> tuple[str, ...]:
        """The fields of a question that are neither known nor made needless by other facts."""
        return tuple(name for name in question.fields if not is_settled(name, spec))

    def wording(self, question: QuestionEntry, spec: Spec, still_open: Collection[str] | None = None) -> str:
        """What to send for a question now: the first wording that suits, else the common one.

        `still_open`: the fields that are really wanted, where the caller knows better than `open_fields`.
        """
        wanted = self.open_fields(question, spec) if still_open is None else still_open
        return next((other.say for other in question.wordings if other.suits(spec, wanted)), question.say)


def load_tree(folder: str | os.PathLike[str]) -> Tree:
    """The tree of a questions folder, read once. Raises TreeError with every wrong entry."""
    return _load(Path(folder).resolve())


@cache
def _load(folder: Path) -> Tree:
    branches, problems = read_branches(folder)
    problems += tree_problems(branches)
    needs, wrong = read_needs(folder)
    problems += wrong
    if problems:
        raise TreeError(tuple(problems))
    questions = tuple(asked.entry for branch in branches for asked in branch.questions if asked.entry is not None)
    return Tree(
        questions=questions,
        by_id=MappingProxyType({entry.id: entry for entry in questions}),
        plausible=MappingProxyType({name: pair for branch in branches for name, pair in branch.plausible.items()}),
        engineering_needs=needs,
        _by_field=MappingProxyType({name: entry for entry in questions for name in entry.fields}),
    )
