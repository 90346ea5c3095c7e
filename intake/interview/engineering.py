"""What engineering cannot start without, family by family, from `engineering.toml` of the questions folder."""

import os
from collections.abc import Mapping
from pathlib import Path
from types import MappingProxyType
from typing import Any

from intake.interview.complaints import TreeError, complain, named
from intake.interview.hints import did_you_mean
from intake.interview.model_slips import SAMPLES, shown
from intake.interview.toml_file import TomlFile, read_toml
from intake.sizing.result import FAMILIES
from intake.spec.problem import Problem
from intake.spec.vocabulary import vocabulary

FILE = "engineering.toml"
COMMON = "all"
"""The table that counts for every family."""


def engineering_needs(folder: str | os.PathLike[str]) -> Mapping[str, tuple[str, ...]]:
    """By family: the fields that engineering needs to start. Raises TreeError with every wrong entry."""
    needs, problems = read_needs(Path(folder))
    if problems:
        raise TreeError(tuple(problems))
    return needs


def read_needs(folder: Path) -> tuple[Mapping[str, tuple[str, ...]], list[Problem]]:
    """The fields by family and what is wrong with them; no family at all where something is."""
    file = read_toml(folder / FILE)
    problems = [file] if isinstance(file, Problem) else needs_problems(file)
    if isinstance(file, Problem) or problems:
        return MappingProxyType({}), problems
    common = tuple(file.data.get(COMMON, {}).get("fields", ()))
    return MappingProxyType(
        {family: tuple(dict.fromkeys((*common, *file.data[family]["fields"]))) for family in FAMILIES}
    ), []


def needs_problems(file: TomlFile) -> list[Problem]:
    """Everything wrong in the file."""
    problems = []
    for table, entry in file.data.items():
        line = file.line_of(f"[{table}]")
        if table not in (*FAMILIES, COMMON):
            hint = did_you_mean(table, FAMILIES)
            problems.append(complain("family_unknown", file.name, line, family=named(table), hint=hint))
            continue
        problems += _table(file, line, table, entry)
    problems += [
        complain("family_missing", file.name, family=named(family), bare=family)
        for family in FAMILIES
        if family not in file.data
    ]
    return problems


def _table(file: TomlFile, line: int | None, table: str, entry: Any) -> list[Problem]:
    owner = f"[{table}]"
    fields = entry.get("fields") if isinstance(entry, dict) else None
    if fields is None:
        return [complain("missing_key", file.name, line, owner=owner, key="fields", sample=SAMPLES["fields"])]
    if not isinstance(fields, list) or not all(isinstance(name, str) for name in fields):
        sample = SAMPLES["fields"]
        return [complain("wrong_value", file.name, line, owner=owner, key="fields", given=shown(fields), sample=sample)]
    problems = [
        complain("odd_key", file.name, line, owner=owner, key=named(key), hint="It may have fields only")
        for key in entry
        if key != "fields"
    ]
    for n, name in enumerate(fields):
        if name not in vocabulary():
            at = file.line_of(f'"{name}"') or line
            problems.append(
                complain("unknown_field", file.name, at, owner=owner, field=named(name), hint=did_you_mean(name))
            )
        elif name in fields[:n]:
            problems.append(complain("twice_in_question", file.name, line, owner=owner, field=named(name)))
    return problems
