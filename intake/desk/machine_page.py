"""One family in full: verdict, checks with formula, inputs and source, figures. Plain text."""

from collections.abc import Iterable, Iterator

from intake.advice import (
    Brief,
    family_name,
    figure_lines,
    how_fast,
    how_high,
    verdict_line,
    why_not,
    would_fit,
)
from intake.desk.sketch import sketch_lines
from intake.desk.snapshot import SIGNS, WORDS
from intake.interview.wording import sentence
from intake.sizing.result import Check
from intake.spec.display import System, show

_OUTCOME = {True: "+ holds", False: "- fails", None: "? open"}


_SKETCH = (76, 22)
"""Columns and rows: it has to stand whole on the narrowest screen."""


def machine_page(name: str, brief: Brief) -> str:
    """The page of one family. Sizes anew, so it belongs off the screen's own thread."""
    result, system = brief.result, brief.system
    found = result.families[name]
    lines = [
        f"{family_name(name).upper()}: {SIGNS[found.verdict]} {WORDS[found.verdict]}",
        verdict_line(found, result, system),
    ]
    lines += why_not(result, name, system) if name != result.best else []
    if found.verdict == "out":
        lines += would_fit(brief, name).lines
    elif result.best is not None:
        lines += [how_high(brief, name).lines[0], how_fast(brief, name).lines[0]]
    lines += [sentence(found.fed)] if found.fed else []
    lines += [sentence(found.searched)] if found.searched else []
    lines += ["", *sketch_lines(brief, *_SKETCH, family=name)]
    lines += ["", "FIGURES", *figure_lines(found, system), "", "CHECKS", *check_lines(found.checks, system)]
    return "\n".join(lines)


def check_lines(checks: Iterable[Check], system: System, word: str = "") -> list[str]:
    """Checks with value, limit, formula, inputs and source; with a word, those whose name begins with it."""
    start = word.casefold().replace(" ", "_")
    return [line for check in checks if check.id.startswith(start) for line in _check_lines(check, system)]


def _check_lines(check: Check, system: System) -> Iterator[str]:
    sense = {"at_most": "at most", "at_least": "at least", "must_be": "must be"}[check.sense]
    no_share = check.margin is None or check.unit == "K"  # a share of kelvins says nothing to people
    margin = "" if no_share else f", {_spare(check.margin or 0.0, check.sense)}"
    size = "" if check.size is None else f" (size {check.size})"
    value, limit = _figure(check.value, check.unit, system), _figure(check.limit, check.unit, system)
    yield f"{_OUTCOME[check.passes]}  {check.id.replace('_', ' ')}{size}: {value}, {sense} {limit}{margin}"
    for formula, uses in ((check.formula, check.uses), (check.limit_formula, check.limit_uses)):
        if uses:
            inputs = ", ".join(
                f"{symbol} = {_plain(use.value)} {use.unit} [{use.origin}]" for symbol, use in uses.items()
            )
            yield f"     {'limit: ' if uses is check.limit_uses else ''}{formula}"
            yield f"     {inputs}"
    if check.assumes:
        yield f"     assumes: {', '.join(id.replace('_', ' ') for id in check.assumes)}"
    if check.source:
        yield f"     source: {check.source}"


def _spare(margin: float, sense: str) -> str:
    """The margin as people read it; beyond twice the limit its figure says nothing any more."""
    if margin > 2.0:
        return "ample"
    if margin >= 0.0:
        return f"{margin:.0%} to spare"
    return f"{-margin:.0%} {'over it' if sense == 'at_most' else 'short of it'}"


def _figure(value: object, unit: str, system: System) -> str:
    if value is None:
        return "not known"
    if isinstance(value, float | int) and not isinstance(value, bool):
        return f"{value:.3g}" if unit == "1" else show(float(value), unit, system)
    return str(value).replace("_", " ")


def _plain(value: object) -> str:
    return "?" if value is None else f"{value:.4g}" if isinstance(value, float) else str(value)
