"""What must hold of the priors in `assumptions.toml`: what products of each kind are like, for sampling."""

from collections.abc import Mapping
from math import isfinite
from typing import Any

from intake.interview.complaints import complain, named
from intake.interview.hints import did_you_mean
from intake.interview.model_slips import shown
from intake.interview.toml_file import TomlFile
from intake.spec.problem import Problem
from intake.spec.vocabulary import vocabulary

PRIOR = ("length", "width", "height", "density", "rate", "rise")
"""The ranges of one kind of product: length in m, width and height as shares of it, density in kg/m3, per minute, m."""
SPACE = ("length_per_rise", "width", "headroom")
"""The ranges of the room: floor length as a share of the rise, floor width and headroom in m."""


def prior_problems(file: TomlFile) -> list[Problem]:
    """Everything wrong in [prior] and [prior_space]."""
    kinds = ("any", *vocabulary()["product.type"].choices)
    table = file.data.get("prior")
    if not isinstance(table, Mapping):
        return [complain("prior_table", file.name, table="[prior]", keys="any and every product type")]
    problems = [
        complain("prior_missing", file.name, file.line_of("[prior]"), table="[prior]", key=named(kind))
        for kind in kinds
        if kind not in table
    ]
    for kind, entry in table.items():
        line = file.line_of_table_key("prior", kind)
        if kind not in kinds:
            hint = did_you_mean(kind, kinds)
            problems.append(complain("prior_odd", file.name, line, table="[prior]", key=named(kind), hint=hint))
        else:
            problems += _ranges(file, line, f"the prior of {named(kind)}", entry, PRIOR)
    space = file.data.get("prior_space")
    return problems + _ranges(file, file.line_of("[prior_space]"), "[prior_space]", space, SPACE)


def _ranges(file: TomlFile, line: int | None, owner: str, entry: Any, keys: tuple[str, ...]) -> list[Problem]:
    if not isinstance(entry, Mapping):
        return [complain("prior_table", file.name, line, table=owner, keys=", ".join(keys))]
    problems = []
    for key in keys:
        if key not in entry:
            problems.append(complain("prior_missing", file.name, line, table=owner, key=named(key)))
        elif not _is_range(entry[key]):
            problems.append(
                complain("prior_range", file.name, line, table=owner, key=named(key), given=shown(entry[key]))
            )
    for key in entry:
        if key not in keys:
            hint = did_you_mean(key, keys)
            problems.append(complain("prior_odd", file.name, line, table=owner, key=named(key), hint=hint))
    return problems


def _is_range(given: Any) -> bool:
    """True for two figures above zero that do not fall."""
    if not isinstance(given, list) or len(given) != 2:
        return False
    if any(isinstance(end, bool) or not isinstance(end, int | float) or not isfinite(end) for end in given):
        return False
    return bool(0.0 < given[0] <= given[1])
