"""The checks of one family on the sheet: value against limit, and for each the formula, inputs and source."""

from intake.advice import family_name
from intake.handoff.escape import md, md_code, table
from intake.sizing.result import Check, FamilyResult, Plain, Use
from intake.spec.display import System, show

_SENSE = {"at_most": "at most", "at_least": "at least", "must_be": "must be"}


def checks_part(best: FamilyResult) -> list[str]:
    """Two tables: verdicts of the checks in both unit systems, then how each value was computed."""
    if not best.checks:
        return []
    rows = [
        (
            md_code(check.id),
            f"{_plain(check.value, check.unit, 'us')} / {_plain(check.value, check.unit, 'si')}",
            f"{_SENSE[check.sense]} {_plain(check.limit, check.unit, 'us')} / {_plain(check.limit, check.unit, 'si')}",
            "" if check.margin is None else md(f"{check.margin:.0%}"),
            _outcome(check),
        )
        for check in best.checks
    ]
    how = [
        (
            md_code(check.id),
            md_code(check.formula),
            "; ".join(_use(symbol, use) for symbol, use in check.uses.items()),
            md(check.source),
        )
        for check in best.checks
    ]
    return [
        f"## Checks: {md(family_name(best.family))}",
        "",
        *table(("check", "value (US / SI)", "limit (US / SI)", "margin", "holds"), rows),
        "",
        "How each value was computed (inputs in SI and radians; `formula` gives the value in the check's own unit):",
        "",
        *table(("check", "formula", "inputs and where each comes from", "source"), how),
    ]


def _outcome(check: Check) -> str:
    words = {True: "yes", False: "no", None: "depends"}[check.passes]
    if check.warns and check.passes is False:
        words = "warning"
    if check.assumes:
        words += ", leaning on " + ", ".join(md_code(name) for name in check.assumes)
    return words


def _plain(value: Plain, unit: str, system: System) -> str:
    if value is None:
        return "not known"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return md(value.replace("_", " "))
    return md(show(value, unit, system))


def _use(symbol: str, use: Use) -> str:
    """`mu` = 0.5 (from slip_friction). Inputs keep their full figure, so that a reader can compute again."""
    value = f"{use.value:.6g}" if isinstance(use.value, float) else str(use.value)
    unit = "" if use.unit in ("", "1") else f" {use.unit}"
    return f"{md_code(symbol)} = {md(value + unit)} (from {md_code(use.origin)})"
