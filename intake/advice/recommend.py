"""The recommendation: which family, why, with which figures, on which assumptions, and what is ruled out."""

from intake.advice.cautions import caution_lines
from intake.advice.families import family_name, verdict_line
from intake.advice.figures import figure_lines
from intake.interview.matters import missing_basics
from intake.interview.reasons import few, open_matters, percent, shown
from intake.interview.wording import Sentences, fill, in_force, joined, sentence
from intake.sizing.result import FAMILIES, Assumption, FamilyResult, Result
from intake.spec.display import System, label, show, show_range
from intake.spec.flat import Spec
from intake.spec.vocabulary import vocabulary

_MOST_ASSUMPTIONS = 8


def recommendation(result: Result, spec: Spec, system: System, sentences: Sentences | None = None) -> list[str]:
    """Lines that can be read out or sent. They always end with the cautions."""
    said = sentences or in_force()
    best = result.families.get(result.best) if result.best else None
    if best is not None:
        lines = _for(best, result, system, said)
    elif result.refer_out:
        lines = [said.say("advice.refer_out", reason=sentence(result.refer_out))]
    else:
        missing = [said.find(f"basic.{name}") or label(name) for name in missing_basics(spec)]
        lines = [said.say("advice.too_early", missing=joined(list(dict.fromkeys(missing))))]
    return [*lines, *_ruled_out(result, system, said), *caution_lines(result, said)]


def _for(best: FamilyResult, result: Result, system: System, said: Sentences) -> list[str]:
    matters = few(open_matters(best, result))
    how = "fits" if best.verdict == "fits" else "likely_out" if best.likely_out else "depends"
    lines = [
        said.say(f"advice.best_{how}", family=family_name(best.family, said), matters=matters or "what is still open")
    ]
    if best.variant:
        lines.append(
            said.say(
                "advice.best_variant", variant=said.find(f"variant.{best.variant}") or shown(best.variant, "", system)
            )
        )
    lines += [sentence(best.fed)] if best.fed else []
    lines += [said.say("advice.why", reason=sentence(result.why_best))] if result.why_best else []
    lines += figure_lines(best, system, said)
    lines += [said.say("advice.direction_both")] if result.direction == "both" else []
    weeks = best.figures.get("lead_time")
    if weeks is not None and weeks.value is not None:
        lines.append(said.say("advice.lead_time", weeks=shown(weeks.value, weeks.unit, system)))
    lines += _assumed(best, result, system, said)
    second = result.families.get(result.second) if result.second else None
    if second is not None:
        reason = verdict_line(second, result, system, said)
        lines.append(said.say("advice.second", family=family_name(second.family, said), reason=reason))
    if result.share is not None:
        lines.append(said.say("advice.decided" if result.decided else "advice.certain", share=percent(result.share)))
    return lines


def _assumed(best: FamilyResult, result: Result, system: System, said: Sentences) -> list[str]:
    """What this family leans on that nobody said: first what its verdict hangs on."""
    hangs = set(best.depends_on)
    leaned_on = {id for check in best.checks for id in check.assumes} | hangs
    used = [one for one in result.assumptions if one.id in leaned_on or hangs & {*one.about, one.test}]
    used.sort(key=lambda one: not hangs & {one.id, *one.about, one.test})
    parts = list(dict.fromkeys(assumption_line(one, system, said) for one in used))
    more = (
        [said.say("advice.more", count=str(len(parts) - _MOST_ASSUMPTIONS))] if len(parts) > _MOST_ASSUMPTIONS else []
    )
    named = "; ".join([*parts[:_MOST_ASSUMPTIONS], *more])
    return [said.say("advice.assumed", assumptions=named)] if parts else []


def assumption_line(one: Assumption, system: System, sentences: Sentences | None = None) -> str:
    """What stands in for a fact that nobody gave: "friction 0.35 (0.2 to 0.5)"."""
    said = sentences or in_force()
    value = _typical(one, system)
    own = said.find(f"assumed.{one.id}")
    if own is not None:
        return fill(own, value=value)
    names = [label(name) if name in vocabulary() else name.replace("_", " ") for name in one.about]
    return said.say("advice.assumed_one", name=joined(names) or one.id.replace("_", " "), value=value)


def _typical(one: Assumption, system: System) -> str:
    if one.low is None or one.high is None or not isinstance(one.typical, int | float):
        return shown(one.typical, one.unit, system)
    if one.unit == "1":
        low, typical, high = (shown(end, "1", system) for end in (one.low, one.typical, one.high))
        return typical if low == high else f"{typical} ({low} to {high})"
    typical, spread = show(one.typical, one.unit, system), show_range(one.low, one.high, one.unit, system)
    return typical if spread == typical else f"{typical} ({spread})"


def _ruled_out(result: Result, system: System, said: Sentences) -> list[str]:
    """What is out and why, families with the same reason in one line; one reason for all has been said already."""
    gone = [name for name in FAMILIES if name in result.families and result.families[name].verdict == "out"]
    by_reason: dict[str, list[str]] = {}
    for name in gone:
        reason = verdict_line(result.families[name], result, system, said).removeprefix("out: ")
        by_reason.setdefault(reason, []).append(family_name(name, said))
    if result.refer_out and len(by_reason) == 1:
        return []
    return [said.say("advice.ruled_out", family=joined(names), reason=reason) for reason, names in by_reason.items()]
