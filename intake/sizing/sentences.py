"""The sentences of a sizing: templates from data, filled with figures in both unit systems."""

from typing import Any

from intake.sizing.range_data import RangeData
from intake.sizing.result import Check
from intake.spec.display import show
from intake.spec.labels import label


class Words:
    """The sentences of one questions folder."""

    def __init__(self, data: RangeData) -> None:
        self._table = data.sentences

    def say(self, group: str, id: str, **parts: Any) -> str:
        """One sentence with its parts filled in; the group's `other` when there is none of that id."""
        sentences = self._table.get(group, {})
        template = sentences.get(id) or sentences.get("other") or id.replace("_", " ")
        return template.format(**parts) if parts else template

    def has(self, group: str, id: str) -> bool:
        """True when there is a sentence of that id."""
        return id in self._table.get(group, {})

    def family(self, name: str) -> str:
        """What people call a family."""
        return self._table.get("family", {}).get(name, name.replace("_", " "))

    def label(self, field: str) -> str:
        """What people call a field, or a test."""
        return label(field)

    def failing(self, check: Check) -> str:
        """Why a check stands in the way, with its figures."""
        value, limit = figure(check.value, check.unit), figure(check.limit, check.unit)
        group = "fail" if check.value is not None or check.sense == "must_be" else "fail_open"
        said = self.say(group, check.id, value=value, limit=limit, check=check.id.replace("_", " "))
        return said if check.size is None else self.say("size", "named", said=said, size=check.size)


def figure(value: Any, unit: str) -> str:
    """A figure in SI with US units behind it, a word as it is, "unknown" for None."""
    if value is None:
        return "unknown"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str):
        return value.replace("_", " ")
    if unit == "K":
        value, unit = value - 273.15, "degC"
    if unit == "1":
        return f"{value:.2f}"
    metric, american = show(value, unit, "si"), show(value, unit, "us")
    return metric if metric == american else f"{metric} ({american})"
