"""What would make a machine fit that is out: the smallest single changes, and feeding it the other side first."""

from intake.advice.brief import Answer, Brief
from intake.advice.families import family_name, verdict_line
from intake.advice.inward import shown_enough
from intake.interview.reasons import shown, verdict_reason
from intake.interview.wording import joined
from intake.sizing import Change, smallest_changes
from intake.spec.display import System, label

_MOST = 3
_TURNED = "handling.turn_flat"


def would_fit(brief: Brief, family: str) -> Answer:
    """The smallest change of each single fact that lets a family stand, the nearest first.

    At the value told the family is no longer out, and 1 % less of a change leaves it out. Changes that would make
    another product of it are in the data and not in the lines. Raises KeyError for a family that there is not.
    """
    said, found = brief.sentences, brief.result.families[family]
    name = family_name(family, said)
    reason = verdict_reason(found, brief.result, said, brief.system)
    if found.verdict != "out":
        line = verdict_line(found, brief.result, brief.system, said)
        nothing: list[dict[str, object]] = []
        lines = (said.say("fit.stands", family=name, reason=line),)
        return Answer(topic="would_fit", lines=lines, data={"family": family, "changes": nothing})
    changes = smallest_changes(brief.spec, family, questions=brief.folder)
    worth_saying = [change for change in changes if not _is_another_product(change)][:_MOST]
    data = {"family": family, "changes": [change.to_json() for change in changes]}
    if not worth_saying:
        return Answer(topic="would_fit", lines=(said.say("fit.none", family=name, reason=reason),), data=data)
    parts = joined([_change(change, brief) for change in worth_saying], "or")
    return Answer(topic="would_fit", lines=(said.say("fit.changes", family=name, changes=parts),), data=data)


def _change(change: Change, brief: Brief) -> str:
    said, system = brief.sentences, brief.system
    ending = "" if change.verdict == "fits" else "_open"
    if change.field == _TURNED and change.to is True:
        return said.say(f"fit.turned{ending}")
    now = "what is not known" if change.now is None else shown(change.now, change.unit, system)
    value = _value(change, system)
    kind = "word" if isinstance(change.to, str | bool) else "change"
    return said.say(f"fit.{kind}{ending}", fact=label(change.field, change.size), value=value, now=now)


def _value(change: Change, system: System) -> str:
    """A figure rounded so that the family stands at what is told, a word as it is."""
    if isinstance(change.to, str | bool) or not isinstance(change.now, float):
        return shown(change.to, change.unit, system)
    return shown_enough(change.to, change.unit, system, upwards=change.to > change.now)


def _is_another_product(change: Change) -> bool:
    """Half the size or twice the weight is no change of this product."""
    return change.field.startswith("product.") and change.share is not None and not -0.3 < change.share < 0.5
