"""How high and how fast the families that stand could go, and what would let the others stand, in lines."""

from collections.abc import Iterator
from typing import Any

from intake.advice.families import family_name
from intake.interview.reasons import failing_reason, shown
from intake.interview.wording import Sentences, in_force, joined
from intake.sizing import Change, Largest, largest_rate, largest_rise, smallest_changes
from intake.sizing.result import Result
from intake.spec.display import System, label
from intake.spec.flat import Spec

_MOST_CHANGES = 3


def reach(spec: Spec, result: Result) -> dict[str, Any]:
    """By family: the largest rise and rate of one that stands, the smallest changes that let one stand that is out."""
    found: dict[str, Any] = {}
    for name, family in result.families.items():
        if family.verdict == "out":
            found[name] = {"changes": smallest_changes(spec, name)}
        else:
            found[name] = {"rise": largest_rise(spec, name), "rate": largest_rate(spec, name)}
    return found


def reach_json(found: dict[str, Any]) -> dict[str, Any]:
    """The same as JSON takes it."""
    return {
        name: {
            key: [change.to_json() for change in one] if isinstance(one, tuple) else one.to_json()
            for key, one in parts.items()
        }
        for name, parts in found.items()
    }


def reach_lines(found: dict[str, Any], system: System, sentences: Sentences | None = None) -> Iterator[str]:
    """One line for each family and question."""
    said = sentences or in_force()
    for name, parts in found.items():
        family = family_name(name, said)
        if "changes" in parts:
            yield _changes(family, parts["changes"], system, said)
        else:
            yield _largest("rise", family, parts["rise"], system, said)
            yield _largest("rate", family, parts["rate"], system, said)


def _largest(kind: str, family: str, one: Largest, system: System, said: Sentences) -> str:
    why = failing_reason(one.checks[0], said, system) if one.checks else ""
    if one.value is None:
        return said.say(f"reach.no_{kind}", family=family, why=why)
    value = shown(one.value, one.unit, system)
    return said.say(f"reach.{kind}" if why else f"reach.{kind}_without_end", family=family, value=value, why=why)


def _changes(family: str, changes: tuple[Change, ...], system: System, said: Sentences) -> str:
    worth_saying = [change for change in changes if not _is_another_product(change)]
    if not worth_saying:
        return said.say("reach.no_change", family=family)
    parts = []
    for change in worth_saying[:_MOST_CHANGES]:
        kind = "word" if isinstance(change.to, str | bool) else "change"
        sentence = f"reach.{kind}" if change.verdict == "fits" else f"reach.{kind}_open"
        parts.append(said.say(sentence, fact=label(change.field), value=shown(change.to, change.unit, system)))
    return said.say("reach.changes", family=family, changes=joined(parts, "or"))


def _is_another_product(change: Change) -> bool:
    """Half the size or twice the weight is no change of this product."""
    return change.field.startswith("product.") and change.share is not None and not -0.3 < change.share < 0.5
