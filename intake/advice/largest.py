"""How high and how fast: the largest rise and rate of a machine for this case, and what stops it there."""

from collections.abc import Callable

from intake.advice.brief import Answer, Brief
from intake.advice.families import family_name
from intake.advice.inward import shown_inward
from intake.advice.missing import nothing_leads
from intake.interview.reasons import failing_reason, percent, shown
from intake.interview.wording import joined
from intake.sizing import Largest, largest_rate, largest_rise
from intake.spec.display import label

Search = Callable[..., Largest]


def how_high(brief: Brief, family: str | None = None) -> Answer:
    """The largest rise [m] at this product, rate and room, of one family or of the leading one.

    Every check passes at the value told, and 1 % beyond it some fail. Raises KeyError for a family that there is not.
    """
    return _largest("how_high", "rise", largest_rise, brief, family)


def how_fast(brief: Brief, family: str | None = None) -> Answer:
    """The highest rate [1/min] at this product, rise and room, of one family or of the leading one. As `how_high`."""
    return _largest("how_fast", "rate", largest_rate, brief, family)


def _largest(topic: str, kind: str, search: Search, brief: Brief, family: str | None) -> Answer:
    said = brief.sentences
    found = brief.family(family)
    if found is None:
        return Answer(topic=topic, lines=(nothing_leads(brief),))
    one = search(brief.spec, found.family, questions=brief.folder)
    name = family_name(found.family, said)
    why = failing_reason(one.checks[0], said, brief.system) if one.checks else ""
    if one.value is None:
        lines = [said.say(f"largest.{kind}_none", family=name, why=why)]
    else:
        value = shown_inward(one.value, one.unit, brief.system)
        lines = [
            said.say(f"largest.{kind}" if why else f"largest.{kind}_without_end", family=name, value=value, why=why)
        ]
        lines += _against_now(one, one.value, brief)
    if one.room_open:
        names = joined([label(name) for name in one.room_open])
        lines.append(said.say("largest.room_open", facts=names))
    return Answer(topic=topic, lines=tuple(lines), data=one.to_json())


def _against_now(one: Largest, value: float, brief: Brief) -> list[str]:
    """What was asked for beside it, and how much of it is certain."""
    said, lines = brief.sentences, []
    if one.now is not None:
        now, room = shown(one.now, one.unit, brief.system), percent(max(0.0, 1.0 - one.now / value))
        lines.append(said.say("largest.asked" if one.now <= value else "largest.asked_over", now=now, room=room))
    if one.fits_to is None:
        lines.append(said.say("largest.certain_none"))
    elif one.fits_to < value * (1.0 - 1e-3):
        lines.append(said.say("largest.certain", value=shown_inward(one.fits_to, one.unit, brief.system)))
    return lines
