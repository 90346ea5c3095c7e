"""The revision letter of a hand-off and what changed since the one before, from the case's events."""

from collections.abc import Iterable, Mapping
from typing import Any

from intake.spec import Event, Spec
from intake.spec.case import standing
from intake.spec.display import System, label, show_value


def last_handed_over(events: Iterable[Event]) -> Mapping[str, Any] | None:
    """What the last hand-off wrote into the case: its revision letter, spec and data; None before the first."""
    handed = [event.body for event in standing(events) if event.kind == "handed_over"]
    return handed[-1] if handed else None


def letter_after(letter: str) -> str:
    """The next revision letter: A, B ... Z, AA, AB ...

    >>> letter_after(""), letter_after("A"), letter_after("Z"), letter_after("AZ")
    ('A', 'B', 'AA', 'BA')
    """
    kept = letter
    tail = ""
    while kept.endswith("Z"):
        kept, tail = kept[:-1], tail + "A"
    if not kept:
        return "A" + tail
    return kept[:-1] + chr(ord(kept[-1]) + 1) + tail


def revision_of(events: Iterable[Event], spec: Spec, data: Mapping[str, str]) -> str:
    """The letter for this spec: the last one again while neither the spec nor the data changed, else the next."""
    last = last_handed_over(events)
    if last is None:
        return "A"
    same = last.get("spec") == spec.to_flat() and last.get("data") == dict(data)
    letter = str(last["revision"])
    return letter if same else letter_after(letter)


def changes(events: Iterable[Event], spec: Spec, data: Mapping[str, str], system: System) -> list[str]:
    """What is different from the last hand-off, one line each; empty before the first and where nothing is."""
    last = last_handed_over(events)
    if last is None:
        return []
    before = Spec.from_flat(last.get("spec", {}))
    lines = []
    for key in dict.fromkeys([*before, *spec]):
        old, new = before.get(key), spec.get(key)
        if old == new:
            continue
        was = "not known" if old is None else show_value(key[0], old, system)
        now = "not known any more" if new is None else show_value(key[0], new, system)
        lines.append(f"{label(*key)}: was {was}, now {now}")
    if last.get("data") != dict(data):
        lines.append("the questions and limits folder changed: every figure was computed anew")
    return lines
