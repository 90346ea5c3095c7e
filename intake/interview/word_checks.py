"""What must hold of the words that people use for a choice: each belongs to one choice, and the choice exists."""

from collections.abc import Sequence
from typing import Any

from intake.interview.branch_file import Branch
from intake.interview.complaints import complain, named
from intake.interview.hints import KINDS, did_you_mean
from intake.interview.model_slips import SAMPLES, shown
from intake.interview.toml_file import TomlFile
from intake.spec.problem import Problem
from intake.spec.vocabulary import Field, vocabulary

YES_NO = ("yes", "no")
"""How the two answers of a yes or no are called where they get words."""


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
    if field.kind not in ("choice", "yes_no"):
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
    accepted = field.choices if field.kind == "choice" else YES_NO
    line = file.line_of_table_key(f'words."{field.id}"', choice)
    if choice not in accepted:
        hint = did_you_mean(choice, accepted)
        return [complain("words_choice", file.name, line, word=named(choice), field=named(field.id), hint=hint)]
    if not isinstance(words, list) or not all(isinstance(word, str) for word in words):
        owner = f"the words of {named(field.id)}"
        sample = 'a list of words: ["box", "carton box"]'
        return [complain("wrong_value", file.name, line, owner=owner, key=choice, given=shown(words), sample=sample)]
    problems = []
    for word in words:
        plain = " ".join(word.casefold().replace("_", " ").replace("-", " ").split())
        if not plain:
            problems.append(complain("words_empty", file.name, line, choice=named(choice), field=named(field.id)))
            continue
        own = {name.replace("_", " "): name for name in accepted}
        other = own.get(plain, taken.setdefault((field.id, plain), choice))
        if other != choice:
            problems.append(
                complain(
                    "words_clash",
                    file.name,
                    line,
                    word=named(word),
                    first=named(other),
                    second=named(choice),
                    field=named(field.id),
                )
            )
    return problems
