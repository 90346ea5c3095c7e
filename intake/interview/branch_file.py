"""One branch of the question tree as its file has it, good entries and bad."""

from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import BaseModel, ValidationError

from intake.interview.complaints import complain, listed, named
from intake.interview.entry import Condition, QuestionEntry, Wording
from intake.interview.model_slips import SAMPLES, Place, shown, slips
from intake.interview.toml_file import TomlFile, read_toml
from intake.interview.tree_model import ConditionModel, PlausibleModel, QuestionModel, WordingModel
from intake.spec.problem import Problem
from intake.spec.vocabulary import nearest

BRANCHES = (
    "product",
    "rate",
    "rise",
    "space",
    "squeezability",
    "temperature",
    "cleaning",
    "site",
    "project",
    "contact",
    "tests",
)
"""The branches in the order of a talk; each is one file of `tree/`."""

KEYS = ("question", "plausible", "words")
"""What a branch file may hold at its top."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """One question as far as it could be read: `entry` is None where the model refused it."""

    name: str
    line: int | None
    fields: tuple[str, ...]
    wordings: tuple[tuple[int, Wording], ...]
    entry: QuestionEntry | None
    at: int

    @property
    def owner(self) -> str:
        """How sentences call it."""
        return f"question {named(self.name)}" if self.name else f"question number {self.at + 1}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Branch:
    """What one branch file holds. Wordings keep their number (from 1), as bad ones are left out."""

    name: str
    file: TomlFile
    questions: tuple[Asked, ...]
    plausible: dict[str, tuple[float, float]]
    words: Any


def read_branches(folder: Path) -> tuple[list[Branch], list[Problem]]:
    """Every branch that can be read, in the order of a talk, and what is wrong with files and shapes."""
    tree = folder / "tree"
    branches: list[Branch] = []
    problems: list[Problem] = []
    for path in sorted(tree.glob("*.toml")):
        if path.stem not in BRANCHES:
            close = nearest(path.stem, BRANCHES)
            hint = f"Did you mean {named(close)}?" if close else "Move its questions into one of them"
            problems.append(complain("odd_file", path.name, branches=listed(BRANCHES), hint=hint))
    for name in BRANCHES:
        path = tree / f"{name}.toml"
        if not path.exists():
            problems.append(complain("no_file", path.name, where="tree"))
            continue
        file = read_toml(path)
        if isinstance(file, Problem):
            problems.append(file)
            continue
        branch, wrong = _branch(name, file)
        branches.append(branch)
        problems.extend(wrong)
    return branches, problems


def _branch(name: str, file: TomlFile) -> tuple[Branch, list[Problem]]:
    problems = [_odd_top(file, key) for key in file.data if key not in KEYS]
    raw = file.data.get("question", [])
    if not isinstance(raw, list):
        problems.append(
            complain("no_list", file.name, None, key="question", given=shown(raw), sample=SAMPLES["question"])
        )
        raw = []
    questions = []
    for at, one in enumerate(raw):
        asked, wrong = _question(name, file, at, one)
        questions.append(asked)
        problems.extend(wrong)
    plausible, wrong = _plausible(file)
    words = file.data.get("words", {})
    branch = Branch(name=name, file=file, questions=tuple(questions), plausible=plausible, words=words)
    return branch, problems + wrong


def _odd_top(file: TomlFile, key: str) -> Problem:
    close = nearest(key, KEYS)
    hint = f"Did you mean {named(close)}?" if close else f"It may have {listed(KEYS)}"
    line = file.line_of(f"[{key}") or file.line_of(key)
    return complain("odd_key", file.name, line, owner="the file", key=named(key), hint=hint)


def _question(branch: str, file: TomlFile, at: int, raw: Any) -> tuple[Asked, list[Problem]]:
    """The question, as far as it goes, and what its model refused."""
    given = raw if isinstance(raw, dict) else {}
    name = given["id"] if isinstance(given.get("id"), str) else ""
    line = file.entry_line("question", at)
    fields = given.get("fields")
    asked = Asked(
        name=name,
        line=line,
        fields=tuple(f for f in fields if isinstance(f, str)) if isinstance(fields, list) else (),
        wordings=_sound_wordings(given.get("wordings")),
        entry=None,
        at=at,
    )
    try:
        model = QuestionModel.model_validate(raw)
    except ValidationError as error:
        return asked, slips(error, file.name, _places(asked, file))
    return Asked(
        name=name,
        line=line,
        fields=asked.fields,
        wordings=asked.wordings,
        entry=QuestionEntry(
            id=model.id,
            branch=branch,
            fields=model.fields,
            say=model.say,
            why=model.why,
            cost=model.cost,
            unknown_ok=model.unknown_ok,
            settle=model.settle,
            wordings=tuple(wording for _, wording in asked.wordings),
        ),
        at=at,
    ), []


def _sound_wordings(raw: Any) -> tuple[tuple[int, Wording], ...]:
    """The wordings that the model takes, each with its number; the others are complained of with their question."""
    sound = []
    for number, one in enumerate(raw if isinstance(raw, list) else (), 1):
        try:
            model = WordingModel.model_validate(one)
        except ValidationError:
            continue
        when = tuple(Condition(field=line.field, any_of=line.any_of) for line in model.when)
        sound.append((number, Wording(say=model.say, when=when, asks=model.asks)))
    return tuple(sound)


def _places(asked: Asked, file: TomlFile) -> Callable[[tuple[int | str, ...]], Place]:
    """Finds the entry, key and line that an error of a question's model speaks of."""

    def place_of(loc: tuple[int | str, ...]) -> Place:
        owner, rest = asked.owner, loc
        model: type[BaseModel] = QuestionModel
        if loc[:1] == ("wordings",) and len(loc) > 1:
            owner, model, rest = f"wording {int(loc[1]) + 1} of {owner}", WordingModel, loc[2:]
            if rest[:1] == ("when",) and len(rest) > 1:
                owner, model, rest = f"a condition in {owner}", ConditionModel, rest[2:]
        key = str(rest[0]) if rest else str(loc[-2]) if len(loc) > 1 else "question"
        line = file.line_of_key("question", asked.at, key) if loc else asked.line
        if loc[:1] == ("wordings",) and len(loc) > 1:
            line = file.line_in_part("question", asked.at, "wordings", int(loc[1]), f"{key} =")
        return Place(owner=owner, key=key, line=line, model=model)

    return place_of


def _plausible(file: TomlFile) -> tuple[dict[str, tuple[float, float]], list[Problem]]:
    """The ranges that can be read, and what is wrong with the shape of the others."""
    raw = file.data.get("plausible", {})
    if not isinstance(raw, dict):
        wrong = complain("no_list", file.name, key="plausible", given=shown(raw), sample=SAMPLES["plausible"])
        return {}, [wrong]
    found: dict[str, tuple[float, float]] = {}
    problems: list[Problem] = []
    for name, entry in raw.items():
        line = file.line_of(f'[plausible."{name}"]')
        try:
            model = PlausibleModel.model_validate(entry)
        except ValidationError as error:
            owner = f"the plausible range of {named(name)}"
            problems += slips(error, file.name, _plausible_place(owner, line))
            continue
        found[name] = (model.low, model.high)
    return found, problems


def _plausible_place(owner: str, line: int | None) -> Callable[[tuple[int | str, ...]], Place]:
    return lambda loc: Place(owner=owner, key=str(loc[0]) if loc else "plausible", line=line, model=PlausibleModel)
