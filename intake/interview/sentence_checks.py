"""Checks on the sentences of a questions folder: ids that are looked up, and blanks that are filled."""

import re

from intake.interview.complaints import complain, named
from intake.interview.hints import did_you_mean
from intake.interview.model_slips import shown
from intake.interview.toml_file import TomlFile
from intake.interview.wording import Sentences
from intake.spec.folder import shipped_folder
from intake.spec.problem import Problem

_BLANK = re.compile(r"\{([^{}]*)\}")
_BY_ID = frozenset(
    {
        "family",
        "family_short",
        "fail",
        "fail_open",
        "check_name",
        "conflict",
        "conflict_ask",
        "conflict_why",
        "flag",
        "caution",
        "variant",
        "refer",
        "test",
    }
)
"""Tables whose keys are ids of sizing and of fields: any may be added."""
_FILLED = {"fail": {"check", "value", "limit"}, "fail_open": {"check", "limit"}, "assumed": {"value"}}


def sentence_problems(file: TomlFile) -> list[Problem]:
    """Everything wrong in one file of sentences."""
    shipped = Sentences(shipped_folder())
    problems = []
    for table, rows in file.data.items():
        group = shipped.group(table)
        if not isinstance(rows, dict) or (not group and table not in _BY_ID):
            hint = did_you_mean(table, sorted({*shipped.tables(), *_BY_ID}))
            problems.append(
                complain("sentence_table", file.name, file.line_of(f"[{table}]"), table=named(table), hint=hint)
            )
            continue
        for key, said in rows.items():
            problems += _sentence(file, table, key, said, group)
    return problems


def _sentence(file: TomlFile, table: str, key: str, said: object, group: dict[str, str]) -> list[Problem]:
    id, line = f"{table}.{key}", file.line_of(f"{key} = ") or file.line_of(f'"{key}" = ')
    if not isinstance(said, str):
        return [complain("sentence_text", file.name, line, id=named(id), given=shown(said))]
    if key not in group and table not in _BY_ID:
        return [complain("sentence_odd", file.name, line, id=named(id), hint=did_you_mean(key, sorted(group)))]
    filled = _FILLED.get(table) or set(_BLANK.findall(group.get(key, said)))
    return [
        complain(
            "sentence_blank", file.name, line, id=named(id), blank=blank, blanks=", ".join(sorted(filled)) or "none"
        )
        for blank in dict.fromkeys(_BLANK.findall(said))
        if blank not in filled
    ]
