"""The proof of a questions folder: everything that is wrong with it, in one run."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from intake.interview.assumption_checks import assumption_problems, needless_problems
from intake.interview.branch_file import BRANCHES, Branch, read_branches
from intake.interview.engineering import FILE as ENGINEERING
from intake.interview.engineering import needs_problems
from intake.interview.sentence_checks import sentence_problems
from intake.interview.shorthand_checks import shorthand_problems
from intake.interview.together import FILE as TOGETHER
from intake.interview.together_checks import together_problems
from intake.interview.toml_file import TomlFile, read_toml
from intake.interview.tree_checks import tree_problems
from intake.interview.word_checks import word_problems
from intake.reading.shorthand.rows import FILE as SHORTHAND
from intake.sizing import range_problems
from intake.spec.problem import Problem

_CHECKED: dict[str, Callable[[TomlFile], list[Problem]]] = {
    ENGINEERING: needs_problems,
    "assumptions.toml": assumption_problems,
    "needless.toml": needless_problems,
}
"""The files beside the tree whose content is checked here, each by its own check."""
_MAY_LACK = frozenset({"needless.toml"})
"""Files for which the shipped ones stand in."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Proof:
    """What a proof found. `questions` and `fields` count what is asked."""

    problems: tuple[Problem, ...]
    questions: int
    fields: int
    words: int

    @property
    def is_sound(self) -> bool:
        """True when nothing is wrong."""
        return not self.problems


def prove(folder: Path) -> Proof:
    """Check the tree, its words, what is asked together, assumptions, limits, and that all other files are TOML."""
    branches, problems = read_branches(folder)
    problems += tree_problems(branches)
    problems += word_problems(branches)
    for name, check in _CHECKED.items():
        path = folder / name
        if name in _MAY_LACK and not path.exists():
            continue
        file = read_toml(path)
        problems += [file] if isinstance(file, Problem) else check(file)
    problems += _together(folder, branches)
    problems += _shorthand(folder)
    problems += range_problems(folder)
    problems += _others(folder)
    asked = [one for branch in branches for one in branch.questions]
    return Proof(
        problems=_by_place(problems),
        questions=len(asked),
        fields=len({name for one in asked for name in one.fields}),
        words=sum(_words(branch) for branch in branches),
    )


def _together(folder: Path, branches: list[Branch]) -> list[Problem]:
    """What is asked in one breath; a folder without the file has the shipped rows."""
    path = folder / TOGETHER
    if not path.exists():
        return []
    file = read_toml(path)
    if isinstance(file, Problem):
        return [file]
    ids = {one.name for branch in branches for one in branch.questions}
    return together_problems(file, ids if len(branches) == len(BRANCHES) else None)


def _shorthand(folder: Path) -> list[Problem]:
    """The short words of staff; a folder without the file has the shipped ones."""
    path = folder / SHORTHAND
    if not path.exists():
        return []
    file = read_toml(path)
    return [file] if isinstance(file, Problem) else shorthand_problems(file)


def _by_place(problems: list[Problem]) -> tuple[Problem, ...]:
    """Each once: the branches in the order of a talk, then the other files, each down its lines."""
    known = [*(f"{branch}.toml" for branch in BRANCHES), *_CHECKED, TOGETHER, SHORTHAND]
    order = {name: n for n, name in enumerate(dict.fromkeys([*known, *(problem.file for problem in problems)]))}
    return tuple(sorted(dict.fromkeys(problems), key=lambda problem: (order[problem.file], problem.line or 0)))


def _others(folder: Path) -> list[Problem]:
    """Sentences, and files of later purposes (cards, visitors): at least readable TOML."""
    done = {folder / "tree", folder / "range"}
    problems = []
    for path in sorted(folder.rglob("*.toml")):
        if path.parent in done or path.name in (*_CHECKED, TOGETHER, SHORTHAND):
            continue
        file = read_toml(path)
        if isinstance(file, Problem):
            problems.append(file)
        elif path.parent == folder / "sentences":
            problems += sentence_problems(file)
    return problems


def _words(branch: Branch) -> int:
    tables = branch.words if isinstance(branch.words, dict) else {}
    lists = [words for table in tables.values() if isinstance(table, dict) for words in table.values()]
    return sum(len(words) for words in lists if isinstance(words, list))
