"""What must hold across the questions of a tree: every field asked once, wordings that can be said, sound ranges."""

from collections.abc import Sequence
from dataclasses import dataclass

from intake.interview.branch_file import BRANCHES, Asked, Branch
from intake.interview.complaints import complain, named
from intake.interview.entry import Condition, Wording
from intake.interview.hints import KINDS, did_you_mean, unit_of
from intake.spec.flat import SpecError, value_of
from intake.spec.problem import Problem
from intake.spec.vocabulary import vocabulary

HOME = {"handling": "squeezability", "test": "tests"}
"""The branch file of fields whose name does not give it."""


def tree_problems(branches: Sequence[Branch]) -> list[Problem]:
    """Everything wrong between the entries of these branches."""
    return [
        *_ids(branches),
        *_fields(branches),
        *_never_asked(branches),
        *(problem for branch in branches for asked in branch.questions for problem in _wordings(branch, asked)),
        *_ranges(branches),
    ]


def _ids(branches: Sequence[Branch]) -> list[Problem]:
    first: dict[str, str] = {}
    problems = []
    for branch in branches:
        for asked in branch.questions:
            place = _place(branch, asked)
            if asked.name in first:
                problems.append(
                    complain("double_id", branch.file.name, asked.line, id=named(asked.name), place=first[asked.name])
                )
            elif asked.name:
                first[asked.name] = place
    return problems


def _fields(branches: Sequence[Branch]) -> list[Problem]:
    first: dict[str, tuple[str, str]] = {}
    problems = []
    for branch in branches:
        for asked in branch.questions:
            file, line, owner = branch.file.name, asked.line, asked.owner
            for n, name in enumerate(asked.fields):
                field = named(name)
                if name not in vocabulary():
                    problems.append(
                        complain("unknown_field", file, line, owner=owner, field=field, hint=did_you_mean(name))
                    )
                elif name in asked.fields[:n]:
                    problems.append(complain("twice_in_question", file, line, owner=owner, field=field))
                elif name in first:
                    other, place = first[name]
                    problems.append(
                        complain("asked_twice", file, line, owner=owner, field=field, other=other, place=place)
                    )
                else:
                    first[name] = named(asked.name), _place(branch, asked)
    return problems


def _never_asked(branches: Sequence[Branch]) -> list[Problem]:
    """Only when all files could be read: the one that could not may hold the question."""
    if {branch.name for branch in branches} != set(BRANCHES):
        return []
    asked = {name for branch in branches for one in branch.questions for name in one.fields}
    return [
        complain("never_asked", f"{HOME.get(field.branch, field.branch)}.toml", field=named(name))
        for name, field in vocabulary().items()
        if name not in asked
    ]


def _place(branch: Branch, asked: Asked) -> str:
    return branch.file.name if asked.line is None else f"{branch.file.name}:{asked.line}"


def _wordings(branch: Branch, asked: Asked) -> list[Problem]:
    problems = []
    for n, (number, wording) in enumerate(asked.wordings):
        said = _Said(branch=branch, asked=asked, number=number)
        if not wording.when and not wording.asks:
            problems.append(said.complain("wording_bare"))
        for name in wording.asks:
            if name not in asked.fields:
                hint = did_you_mean(name, asked.fields)
                problems.append(said.complain("asks_foreign", f'"{name}"', field=named(name), hint=hint))
        for condition in wording.when:
            problems += _condition(said, condition)
        problems += _exclusive(said, wording)
        earlier = next((other for other, one in asked.wordings[:n] if _covers(one, wording)), None)
        if earlier is not None:
            problems.append(said.complain("wording_shadowed", earlier=earlier))
    return problems


@dataclass(frozen=True, slots=True, kw_only=True)
class _Said:
    """One wording at its place."""

    branch: Branch
    asked: Asked
    number: int

    def complain(self, id: str, needle: str = "say =", **words: object) -> Problem:
        """A problem on the line of `needle` in this wording."""
        file = self.branch.file
        line = file.line_in_part("question", self.asked.at, "wordings", self.number - 1, needle)
        return complain(id, file.name, line, owner=f"wording {self.number} of {self.asked.owner}", **words)


def _condition(said: _Said, condition: Condition) -> list[Problem]:
    name = condition.field
    shown, field = f'"{name}"', vocabulary().get(name)
    if field is None:
        return [said.complain("condition_field", shown, field=shown, hint=did_you_mean(name))]
    if field.kind not in ("choice", "yes_no"):
        return [said.complain("condition_kind", shown, field=shown, kind=KINDS[field.kind])]
    if said.asked.fields == (name,):
        return [said.complain("condition_settled", shown, field=shown)]
    problems = []
    accepted = field.choices if field.kind == "choice" else ("true", "false")
    for word in condition.any_of:
        if word in field.choices if field.kind == "choice" else isinstance(word, bool):
            continue
        written = str(word).lower() if isinstance(word, bool) else named(word)
        hint = did_you_mean(str(word), accepted)
        problems.append(said.complain("condition_choice", written, field=shown, word=written, hint=hint))
    return problems


def _exclusive(said: _Said, wording: Wording) -> list[Problem]:
    """Two conditions on one field that no word can meet both."""
    left: dict[str, set[str | bool]] = {}
    problems = []
    for condition in wording.when:
        left[condition.field] = left.get(condition.field, set(condition.any_of)) & set(condition.any_of)
        if not left[condition.field]:
            problems.append(said.complain("condition_never", field=named(condition.field)))
    return problems


def _covers(earlier: Wording, later: Wording) -> bool:
    """True when the earlier wording suits whenever the later one does."""
    conditions = all(
        any(mine.field == theirs.field and set(theirs.any_of) <= set(mine.any_of) for theirs in later.when)
        for mine in earlier.when
    )
    asks = not earlier.asks or (bool(later.asks) and set(later.asks) <= set(earlier.asks))
    return conditions and asks


def _ranges(branches: Sequence[Branch]) -> list[Problem]:
    seen: dict[str, str] = {}
    problems = []
    for branch in branches:
        for name, (low, high) in branch.plausible.items():
            line = branch.file.line_of(f'[plausible."{name}"]')
            if name in seen:
                problems.append(
                    complain("plausible_twice", branch.file.name, line, field=named(name), place=seen[name])
                )
            seen[name] = branch.file.name
            problems += _range(branch.file.name, line, name, low, high)
    if {branch.name for branch in branches} == set(BRANCHES):
        tried = seen.keys() | {name for branch in branches for name in branch.file.data.get("plausible", ())}
        problems += [
            complain(
                "plausible_missing",
                f"{HOME.get(field.branch, field.branch)}.toml",
                field=named(name),
                bare=name,
                unit=unit_of(field),
            )
            for name, field in vocabulary().items()
            if field.is_number and name not in tried
        ]
    return problems


def _range(file: str, line: int | None, name: str, low: float, high: float) -> list[Problem]:
    field = vocabulary().get(name)
    if field is None:
        return [complain("plausible_field", file, line, field=named(name), hint=did_you_mean(name))]
    if not field.is_number:
        return [complain("plausible_kind", file, line, field=named(name), kind=KINDS[field.kind])]
    if low >= high:
        return [complain("plausible_order", file, line, field=named(name), low=f"{low:g}", high=f"{high:g}")]
    try:
        value_of(name, name, [low, high])
    except SpecError as error:
        return [complain("plausible_figure", file, line, field=named(name), why=error.what, unit=unit_of(field))]
    return []
