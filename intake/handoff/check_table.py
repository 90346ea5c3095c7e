"""The checks of one family on the sheet: value against limit, and for each the formula, inputs and source."""

from intake.advice import family_name
from intake.handoff.escape import md, md_code, plain_words, table
from intake.sizing.result import Check, FamilyResult, Plain, Use
from intake.spec.display import System, show

_SYSTEMS: tuple[System, ...] = ("us", "si")
_SENSE = {"at_most": "at most", "at_least": "at least", "must_be": "must be"}


def checks_part(best: FamilyResult) -> list[str]:
    """Two tables: verdicts of the checks in both unit systems, then how each value was computed."""
    if not best.checks:
        return []
    rows = [
        (
            md_code(check.id),
            _both(check.value, check.unit),
            f"{_SENSE[check.sense]} {_both(check.limit, check.unit)}",
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
            md_code(check.limit_formula) if check.limit_formula else "",
            "; ".join(_use(symbol, use) for symbol, use in check.limit_uses.items()),
            md(check.source),
        )
        for check in best.checks
    ]
    return [
        f"## Checks: {md(family_name(best.family))}",
        "",
        *table(("check", "value (US / SI)", "limit (US / SI)", "margin", "holds"), rows),
        "",
        "How each value and limit was computed (inputs in SI and radians; the formulas give the check's own unit):",
        "",
        *table(("check", "formula", "inputs and where each comes from", "limit", "inputs of the limit", "source"), how),
    ]


def _outcome(check: Check) -> str:
    words = {True: "yes", False: "no", None: "depends"}[check.passes]
    if check.warns and check.passes is False:
        words = "warning"
    if check.assumes:
        words += ", leaning on " + ", ".join(md_code(name) for name in check.assumes)
    return words


def _both(value: Plain, unit: str) -> str:
    """The value in both unit systems, once where they read the same."""
    us, si = (_plain(value, unit, system) for system in _SYSTEMS)
    return us if us == si else f"{us} / {si}"


def _plain(value: Plain, unit: str, system: System) -> str:
    if isinstance(value, bool | str) or value is None:
        return md(plain_words(value))
    return md(show(value, unit, system))


def _use(symbol: str, use: Use) -> str:
    """`mu` = 0.5 (from slip_friction). Inputs keep their full figure, so that a reader can compute again."""
    value = f"{use.value:.6g}" if isinstance(use.value, float) else plain_words(use.value)
    unit = "" if use.unit in ("", "1") or use.value is None else f" {use.unit}"
    return f"{md_code(symbol)} = {md(value + unit)} (from {md_code(use.origin)})"
