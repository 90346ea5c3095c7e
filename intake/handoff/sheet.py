"""The sheet for engineering in Markdown: every value with its origin, every figure with its formula and source."""

from intake.advice import family_name, recommendation, verdict_line
from intake.handoff.check_table import checks_part
from intake.handoff.escape import md, md_code, plain_words, table
from intake.handoff.package import Package
from intake.sizing.result import Assumption, FamilyResult, Figure, Result
from intake.spec import Spec, vocabulary
from intake.spec.display import System, label, show, show_range

_SIGN = {"fits": "+ fits", "depends": "? depends", "out": "- out"}
_OPEN = {
    "follow_up": "to find out",
    "doubt": "words in doubt",
    "conflict": "two things said",
    "not_known": "visitor does not know",
    "visitor_checks": "visitor will check",
    "visitor_asks": "visitor asks",
}
_WHO = {"visitor": "visitor", "staff": "staff", "works": "works (test)"}
_SYSTEMS: tuple[System, ...] = ("us", "si")
_FIRST_SIZING = "First sizing for discussion, not a quotation and not a final selection."


def sheet(package: Package, result: Result) -> str:
    """The whole sheet, ending with a newline. Words of people are escaped; nothing of theirs takes effect."""
    parts = [
        _head(package),
        _recommendation(package, result),
        _changes(package),
        _said(package),
        _assumed(result),
        _derived(result),
        _verdicts(package, result),
        *([_figures(result.families[result.best]), checks_part(result.families[result.best])] if result.best else []),
        _open(package),
        _notes(package),
        _cautions(package),
    ]
    return "\n\n".join("\n".join(part) for part in parts if part) + "\n"


def _head(package: Package) -> list[str]:
    return [
        f"# Vertical conveying: {md(package.title or package.case)}",
        "",
        f"Case {md(package.case)}, revision **{package.revision}**, written {md(package.written)}. "
        f"Data folder version {md(package.data.get('version', '?'))}, hash {md_code(package.data.get('hash', '?'))}.",
        "",
        f"**{_FIRST_SIZING}** Final selection, guarding and local codes belong to licensed practice and to the "
        "manufacturer's engineers; see the cautions at the end.",
    ]


def _recommendation(package: Package, result: Result) -> list[str]:
    """The recommendation in the words that the visitor is told, less what has a table of its own below."""
    own_tables = set(package.cautions)
    lines = recommendation(result, Spec.from_flat(package.spec), package.units)
    out = ["## Recommendation", "", *(f"- {md(line)}" for line in lines if line not in own_tables)]
    if result.flags:
        out.append("- Flags: " + ", ".join(md_code(flag) for flag in result.flags) + ".")
    return out


def _changes(package: Package) -> list[str]:
    if not package.changes:
        return []
    return ["## Changed since the last revision", "", *(f"- {md(line)}" for line in package.changes)]


def _said(package: Package) -> list[str]:
    rows = [
        (
            md(label(fact.field, fact.size)),
            md(fact.shown_us),
            md(fact.shown_si),
            _WHO[fact.who],
            f'"{md(fact.said)}"' if fact.said else "(set directly)",
            fact.sure + (", every value occurs" if fact.spread else ""),
        )
        for fact in package.facts
    ]
    if not rows:
        return ["## What was said", "", "Nothing yet."]
    return ["## What was said", "", *table(("what", "US", "SI", "who", "in which words", "how sure"), rows)]


def _assumed(result: Result) -> list[str]:
    """Every assumption, those that the recommended family leans on first."""
    if not result.assumptions:
        return []
    best = result.families.get(result.best or "")
    leaned_on = {name for check in best.checks for name in check.assumes} if best is not None else set()
    rows = [
        (
            md_code(a.id),
            _typical(a, "us"),
            _typical(a, "si"),
            "yes" if a.id in leaned_on else "",
            md(a.basis),
            md(", ".join([*(label(name) for name in a.about), *([label(a.test)] if a.test else [])])),
        )
        for a in sorted(result.assumptions, key=lambda a: a.id not in leaned_on)
    ]
    heads = ("assumption", "US", "SI", "recommendation leans on it", "basis", "settled by")
    return ["## Assumed, nobody said it", "", *table(heads, rows)]


def _typical(a: Assumption, system: System) -> str:
    """ "0.4 (0.3 to 0.5)", or the words that it may be."""
    if isinstance(a.typical, bool) or not isinstance(a.typical, int | float):
        among = [plain_words(value) for value in a.values or ()]
        typical = "open" if a.typical is None else plain_words(a.typical)
        return md(typical + (f" (of {', '.join(among)})" if len(among) > 1 else ""))
    text = show(a.typical, a.unit, system)
    if a.low is not None and a.high is not None and a.low != a.high:
        text += f" ({show_range(a.low, a.high, a.unit, system)})"
    return md(text)


def _derived(result: Result) -> list[str]:
    if not result.derived:
        return []
    rows = []
    for found in result.derived:
        if isinstance(found.value, bool) or not isinstance(found.value, int | float):
            us = si = md(plain_words(found.value))
        else:
            high = found.value if found.high is None else found.high
            us, si = (md(show_range(found.value, high, found.unit, system)) for system in _SYSTEMS)
        rows.append((md(label(found.field)), us, si, md(", ".join(label(name) for name in found.of))))
    return ["## Worked out from what was said", "", *table(("what", "US", "SI", "from"), rows)]


def _verdicts(package: Package, result: Result) -> list[str]:
    rows = [
        (
            md(family_name(found.family)),
            md(_SIGN[found.verdict]),
            f"{found.score:.2f}",
            md(verdict_line(found, result, package.units)),
        )
        for found in result.families.values()
    ]
    return ["## Verdicts", "", *table(("family", "verdict", "score", "why"), rows)]


def _name(name: str) -> str:
    """A field's label, or an assumption's id as it is."""
    return label(name) if name in vocabulary() else name.replace("_", " ")


def _figures(best: FamilyResult) -> list[str]:
    if not best.figures:
        return []
    rows = [
        (md(label(name)), _figure(figure, "us"), _figure(figure, "si"), _range(figure), md(figure.direction or ""))
        for name, figure in best.figures.items()
    ]
    heads = ("figure", "US", "SI", "may range over (SI)", "worse when going")
    return [f"## Figures: {md(family_name(best.family))}", "", *table(heads, rows)]


def _figure(figure: Figure, system: System) -> str:
    if figure.value is None:
        return md("not known yet; needs " + ", ".join(_name(name) for name in figure.needs)) if figure.needs else "n/a"
    return md(show(figure.value, figure.unit, system))


def _range(figure: Figure) -> str:
    if figure.low is None or figure.high is None:
        return ""
    return md(show_range(figure.low, figure.high, figure.unit, "si"))


def _open(package: Package) -> list[str]:
    if not package.open_points:
        return ["## Open points", "", "None."]
    rows = [
        (
            _OPEN[point.kind],
            md(_name(point.test or point.field or "")),
            md(point.why),
            md(point.settle),
            "" if point.changes_best is None else md(f"{point.changes_best:.0%}"),
        )
        for point in package.open_points
    ]
    return ["## Open points", "", *table(("kind", "about", "why", "settled by", "may change the best"), rows)]


def _notes(package: Package) -> list[str]:
    return ["## Notes of the staff", "", *(f"- {md(note)}" for note in package.notes)] if package.notes else []


def _cautions(package: Package) -> list[str]:
    return ["## Cautions", "", *(f"- {md(line)}" for line in package.cautions)]
