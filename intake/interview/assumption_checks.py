"""What must hold of `assumptions.toml` and `needless.toml`: a basis everywhere, figures in order, names that exist."""

from collections.abc import Mapping
from math import isfinite
from typing import Any

from intake.interview.complaints import complain, named
from intake.interview.hints import did_you_mean
from intake.interview.model_slips import SAMPLES, shown
from intake.interview.odds_checks import odds_problems
from intake.interview.prior_checks import prior_problems
from intake.interview.row_checks import accepted, entries, may_be, unknown_fields
from intake.interview.toml_file import TomlFile
from intake.interview.tree_model import AssumptionModel, NeedlessModel
from intake.spec.problem import Problem
from intake.spec.vocabulary import vocabulary

FRICTIONS = ("belt", "high_friction_belt", "grip")
"""The pairings for which sizing takes a friction; each needs one entry that holds whatever is known."""
_FIGURES = ("low", "typical", "high", "possible")


def assumption_problems(file: TomlFile) -> list[Problem]:
    """Everything wrong in the file: assumptions, approximate shares, rare words, priors."""
    problems: list[Problem] = []
    seen: set[str] = set()
    always: set[str] = set()
    for at, model in entries(file, "assumption", AssumptionModel, problems):
        owner, line = f"assumption {named(model.id)}", file.entry_line("assumption", at)
        if model.id in seen:
            problems.append(complain("double_assumption", file.name, line, id=named(model.id)))
        seen.add(model.id)
        about = [name for name in (model.field, model.of, model.test) if name is not None]
        problems += unknown_fields(file, "assumption", at, owner, about)
        problems += _conditions(file, "assumption", at, owner, model.when)
        problems += _figures(file, at, owner, model)
        if model.friction is not None and not model.when:
            always.add(model.friction)
    problems += [
        complain("friction_open", file.name, friction=named(friction))
        for friction in FRICTIONS
        if friction not in always
    ]
    return problems + _approx(file) + prior_problems(file) + odds_problems(file)


def needless_problems(file: TomlFile) -> list[Problem]:
    """Everything wrong in the rows that say what need not be asked."""
    problems: list[Problem] = []
    for at, row in entries(file, "needless", NeedlessModel, problems):
        owner = f"row {at + 1}"
        problems += unknown_fields(file, "needless", at, owner, [row.field, *row.known, *row.unless_known])
        problems += _conditions(file, "needless", at, owner, row.is_word)
    return problems


def _conditions(file: TomlFile, key: str, at: int, owner: str, when: Mapping[str, tuple[Any, ...]]) -> list[Problem]:
    problems = []
    for name, words in when.items():
        field = vocabulary().get(name)
        line = file.line_in_entry(key, at, f'"{name}"')
        if field is None:
            hint = did_you_mean(name)
            problems.append(complain("condition_field", file.name, line, owner=owner, field=named(name), hint=hint))
            continue
        problems += [
            complain(
                "condition_choice",
                file.name,
                line,
                owner=owner,
                field=named(name),
                word=shown(word),
                hint=accepted(field, word),
            )
            for word in words
            if not may_be(field, word)
        ]
    return problems


def _figures(file: TomlFile, at: int, owner: str, model: AssumptionModel) -> list[Problem]:
    line = file.entry_line("assumption", at)
    if (model.field is None) == (model.friction is None):
        return [complain("assumption_about", file.name, line, owner=owner)]
    given = [name for name in _FIGURES if getattr(model, name) is not None]
    if model.values is not None:
        field = vocabulary().get(model.field or "")
        if given:
            return [complain("assumption_both", file.name, line, owner=owner, key=given[0])]
        return [
            complain("assumption_value", file.name, line, owner=owner, word=shown(word), hint=accepted(field, word))
            for word in model.values
            if field is not None and not may_be(field, word)
        ]
    missing = [name for name in _FIGURES if name not in given]
    if missing:
        return [
            complain("missing_key", file.name, line, owner=owner, key=name, sample=SAMPLES[name]) for name in missing
        ]
    assert model.possible is not None
    ordered = (model.possible[0], model.low, model.typical, model.high, model.possible[1])
    figures = [figure for figure in ordered if figure is not None]
    if figures != sorted(figures) or not all(isfinite(figure) for figure in figures):
        return [
            complain("assumption_order", file.name, line, owner=owner, figures=", ".join(f"{f:g}" for f in figures))
        ]
    return []


def _approx(file: TomlFile) -> list[Problem]:
    """How far off "about" may be: shares by field, by unit, and for everything else."""
    table = file.data.get("approx")
    if not isinstance(table, dict) or "other" not in table:
        return [complain("approx_missing", file.name, file.line_of("[approx]"))]
    names = {field.unit for field in vocabulary().values() if field.unit} | set(vocabulary()) | {"other"}
    problems = []
    for name, share in table.items():
        line = file.line_of_table_key("approx", name)
        if name not in names:
            hint = did_you_mean(name, sorted(names))
            problems.append(complain("approx_name", file.name, line, name=named(name), hint=hint))
        elif isinstance(share, bool) or not isinstance(share, int | float) or not 0.0 < share < 1.0:
            problems.append(complain("approx_share", file.name, line, name=named(name), given=shown(share)))
    return problems
