"""The values as a CSV for spreadsheets: one row a fact or assumption, words that no spreadsheet runs."""

import csv
import io

from intake.handoff.escape import csv_cell
from intake.handoff.package import Package
from intake.spec.display import label

_HEAD = ("kind", "id", "what", "low", "high", "value", "unit", "who", "words or basis")


def values_csv(package: Package) -> str:
    """Facts first, then assumptions. Figures are plain numbers in the unit of their row."""
    out = io.StringIO()
    rows = csv.writer(out, lineterminator="\n")
    rows.writerow(_HEAD)
    for fact in package.facts:
        low, high, value = _ends(fact.value)
        name = fact.field if fact.size == 1 else f"{fact.field}@{fact.size}"
        what = csv_cell(label(fact.field, fact.size))
        rows.writerow(("said", name, what, low, high, _cell(value), fact.unit, fact.who, csv_cell(fact.said)))
    for entry in package.assumptions:
        about = csv_cell(", ".join(label(name) for name in entry["about"]))
        typical, basis = _cell(entry["typical"]), csv_cell(entry["basis"])
        rows.writerow(
            (
                "assumed",
                entry["id"],
                about,
                _cell(entry["low"]),
                _cell(entry["high"]),
                typical,
                entry["unit"],
                "",
                basis,
            )
        )
    return out.getvalue()


def _ends(value: object) -> tuple[object, object, object]:
    """Low, high and value of a flat spec's entry."""
    if isinstance(value, dict) and "value" not in value:
        return value.get("low"), value.get("high"), ""
    if isinstance(value, dict):
        value = value["value"]
    if isinstance(value, int | float) and not isinstance(value, bool):
        return value, value, ""
    return "", "", value


def _cell(value: object) -> object:
    """Words made safe; numbers stay numbers, true and false become yes and no."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        return float(f"{value:.12g}")  # 23.4 and not 23.400000000000002
    return csv_cell(value) if isinstance(value, str) else value
