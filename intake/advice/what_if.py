"""What if a fact were another: the case before and after, by sizing it anew."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from intake.advice.brief import Answer, Brief
from intake.advice.families import family_name, verdict_line
from intake.advice.missing import still_needed
from intake.advice.supposed import Supposed, supposing
from intake.interview.reasons import out_reason, shown
from intake.interview.wording import joined, sentence
from intake.sizing.result import FAMILIES, FamilyResult
from intake.spec.display import label, show_value
from intake.spec.entry import value_of
from intake.spec.flat import Spec

_COMPARED = (
    "floor_length", "floor_width", "overall_height", "belt_speed", "products_on", "motor_power", "rate_capacity",
    "rise_capacity", "lead_time",
)  # fmt: skip
_SAME = 0.01
"""Figures that move by less than this share count as unchanged."""


def what_if(brief: Brief, facts: Mapping[str, str | bool | float]) -> Answer:
    """The case with these facts changed, and what hangs on them: verdicts, leader and figures before and after.

    Args:
        facts: by field, a figure in its canonical unit, a choice word, True or False.

    Raises SpecError for a field or value that cannot be.
    """
    Spec.from_flat(dict(facts))  # says what is wrong with a field or a value
    supposed = Supposed(now=brief, then=brief.changed(supposing(brief.spec, facts)))
    said, after = brief.sentences, supposed.result
    changes = [change for name, given in facts.items() if (change := _change(name, given, brief))]
    if not changes:
        return Answer(topic="what_if", lines=(said.say("what_if.as_it_is"),), data={"changed": {}})
    lines = [said.say("what_if.lead", changes=joined(changes))]
    lines += _leader(supposed)
    gone, back = supposed.out, supposed.back
    lines += _gone(gone, supposed)
    if back:
        lines.append(said.say("what_if.back", family=joined([family_name(name, said) for name in back])))
    figures = list(_figures(supposed))
    if figures and supposed.same:
        lines.append(
            said.say("what_if.figures", family=family_name(supposed.same, said), figures=", ".join(figures))
        )  # fmt: skip
    if not (gone or back or figures) and supposed.same == brief.result.best:
        lines.append(said.say("what_if.unchanged"))
    data = {
        "changed": dict(facts), "best_before": brief.result.best, "best_after": after.best, "newly_out": gone,
        "no_longer_out": back,
        "verdicts": {name: [brief.result.families[name].verdict, after.families[name].verdict] for name in FAMILIES},
    }  # fmt: skip
    return Answer(topic="what_if", lines=tuple(lines), data=data)


def _change(name: str, given: str | bool | float, brief: Brief) -> str:
    """What is other than now, "" for a fact that is so already. The rate sized for is the peak, else the normal one."""
    rates = ("rate.peak", "rate.normal")
    names = rates if name in rates else (name,)
    now = next((known for one in names if (known := brief.spec.of(one)) is not None), None)
    value = show_value(name, value_of(name, name, given), brief.system)
    fact = label("rate.peak" if name in rates and brief.spec.knows("rate.peak") else name)
    if now is None:
        return brief.sentences.say("what_if.change_new", fact=fact, value=value)
    before = show_value(name, now, brief.system)
    return "" if before == value else brief.sentences.say("what_if.change", fact=fact, value=value, now=before)


def _gone(gone: Sequence[str], supposed: Supposed) -> Iterator[str]:
    """The families that would be out, those with the same reason in one line."""
    said, by_reason = supposed.now.sentences, dict[str, list[str]]()
    for name in gone:
        why = out_reason(supposed.result.families[name], said, supposed.now.system)
        by_reason.setdefault(why, []).append(family_name(name, said))
    for why, names in by_reason.items():
        yield said.say("what_if.gone", family=joined(names), reason=why)


def _leader(supposed: Supposed) -> list[str]:
    said, before, result = supposed.now.sentences, supposed.now.result.best, supposed.result
    if result.best is None:
        if result.refer_out:
            return [said.say("what_if.nothing", reason=sentence(result.refer_out))]
        return [said.say("what_if.no_best", missing=still_needed(supposed.then))]
    verdict = verdict_line(result.families[result.best], result, supposed.now.system, said)
    name = family_name(result.best, said)
    if before is None:
        return [said.say("what_if.first_best", family=name, verdict=verdict)]
    if before == result.best:
        return [said.say("what_if.same_best", family=name, verdict=verdict)]
    return [said.say("what_if.new_best", family=name, before=family_name(before, said), verdict=verdict)]


def _figures(supposed: Supposed) -> Iterator[str]:
    """The figures of the leading family that move, before and after."""
    best = supposed.same
    if best is None:
        return
    before, after = supposed.now.result.families[best], supposed.result.families[best]
    for name in _COMPARED:
        pair = _value(before, name), _value(after, name)
        if pair[0] is None or pair[1] is None or abs(pair[1] - pair[0]) <= _SAME * abs(pair[0]):
            continue
        unit = before.figures[name].unit
        old, new = (shown(value, unit, supposed.now.system) for value in pair)
        if old != new:
            yield supposed.now.sentences.say("what_if.figure", name=label(name), before=old, after=new)


def _value(found: FamilyResult, name: str) -> float | None:
    figure: Any = found.figures.get(name)
    return None if figure is None else figure.value
