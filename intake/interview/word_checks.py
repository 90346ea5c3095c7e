"""What must hold of the words that people use for a choice: each belongs to one choice, and the choice exists."""

from collections.abc import Iterator, Sequence
from itertools import islice, product
from typing import Any

from intake.interview.branch_file import Branch
from intake.interview.complaints import complain, named
from intake.interview.hints import KINDS, did_you_mean, unit_of
from intake.interview.model_slips import SAMPLES, shown
from intake.interview.toml_file import TomlFile
from intake.spec.flat import SpecError, value_of
from intake.spec.problem import Problem
from intake.spec.vocabulary import Field, vocabulary

YES_NO = ("yes", "no")
"""How the two answers of a yes or no are called where they get words."""
_MOST_WAYS = 5000
"""Ways of saying one entry with alternatives ("is|are") that are compared; more is no entry but a slip."""


def word_problems(branches: Sequence[Branch]) -> list[Problem]:
    """Everything wrong with the choice words of these branches."""
    problems: list[Problem] = []
    taken: dict[tuple[str, str], str] = {}
    for branch in branches:
        file, tables = branch.file, branch.words
        if not isinstance(tables, dict):
            problems.append(complain("no_list", file.name, key="words", given=shown(tables), sample=SAMPLES["words"]))
            continue
        for name, table in tables.items():
            problems += _table(file, name, table, taken)
    return problems


def _table(file: TomlFile, name: str, table: Any, taken: dict[tuple[str, str], str]) -> list[Problem]:
    line = file.line_of(f'[words."{name}"]')
    field = vocabulary().get(name)
    if field is None:
        return [complain("words_field", file.name, line, field=named(name), hint=did_you_mean(name))]
    if field.kind == "text":
        return [complain("words_kind", file.name, line, field=named(name), kind=KINDS[field.kind])]
    if not isinstance(table, dict):
        sample = 'lists of words by choice: case = ["box"]'
        owner = f"the words of {named(name)}"
        return [complain("wrong_value", file.name, line, owner=owner, key="table", given=shown(table), sample=sample)]
    problems: list[Problem] = []
    for choice, words in table.items():
        problems += _choice(file, field, choice, words, taken)
    return problems


def _choice(file: TomlFile, field: Field, choice: str, words: Any, taken: dict[tuple[str, str], str]) -> list[Problem]:
    line = file.line_of_table_key(f'words."{field.id}"', choice)
    accepted = YES_NO if field.kind == "yes_no" else field.choices
    if not (_is_figure(field, choice) if field.is_number else choice in accepted):
        hint = f"Write a figure in {unit_of(field)}" if field.is_number else did_you_mean(choice, accepted)
        return [complain("words_choice", file.name, line, word=named(choice), field=named(field.id), hint=hint)]
    if not isinstance(words, list) or not all(isinstance(word, str) for word in words):
        owner = f"the words of {named(field.id)}"
        sample = 'a list of words: ["box", "carton box"]'
        return [complain("wrong_value", file.name, line, owner=owner, key=choice, given=shown(words), sample=sample)]
    for name in accepted:
        taken.setdefault((field.id, name.replace("_", " ")), name)
    problems = []
    for word in words:
        ways = list(islice(_ways(word), _MOST_WAYS))
        if not ways:
            problems.append(complain("words_empty", file.name, line, choice=named(choice), field=named(field.id)))
        others = (taken.setdefault((field.id, way), choice) for way in ways)
        other = next((other for other in others if other != choice), None)
        if other is not None:
            names = {"first": named(other), "second": named(choice), "field": named(field.id)}
            problems.append(complain("words_clash", file.name, line, word=named(word), **names))
    return problems


def _is_figure(field: Field, choice: str) -> bool:
    """True for a figure that the field can have: "three phase" stands for 3."""
    try:
        value_of(field.id, field.id, float(choice))
    except (ValueError, SpecError):
        return False
    return True


def _ways(entry: str) -> Iterator[str]:
    """Every way of saying an entry, as it is compared: "is|are dry" is "is dry" and "are dry".

    >>> list(_ways("=Is|are  bone-dry"))
    ['is bone dry', 'are bone dry']
    """
    plain = entry.removeprefix("=").casefold().replace("_", " ").replace("-", " ").split()
    return (" ".join(way) for way in product(*(word.split("|") for word in plain)) if way)
