"""The recommendation: which family, why, with which figures, on which assumptions, and what is ruled out."""

from intake.advice.cautions import caution_lines
from intake.advice.families import family_name, verdict_line
from intake.advice.figures import figure_lines
from intake.interview.reasons import few, open_matters, percent, shown
from intake.interview.skipping import missing_basics
from intake.interview.wording import Sentences, in_force, joined, sentence
from intake.sizing.result import FAMILIES, Assumption, FamilyResult, Result
from intake.spec.display import System, label
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
                "advice.best_variant", variant=said.find(f"variant.{best.variant}") or best.variant.replace("_", " ")
            )
        )
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
    """What this family leans on that nobody said."""
    leaned_on = {id for check in best.checks for id in check.assumes} | set(best.depends_on)
    used = [assumption for assumption in result.assumptions if assumption.id in leaned_on][:_MOST_ASSUMPTIONS]
    parts = [said.say("advice.assumed_one", name=_about(one), value=_typical(one, system)) for one in used]
    return [said.say("advice.assumed", assumptions="; ".join(dict.fromkeys(parts)))] if parts else []


def _about(assumption: Assumption) -> str:
    names = [label(name) if name in vocabulary() else name.replace("_", " ") for name in assumption.about]
    if assumption.unit == "1" and assumption.about == ("product.surface",):
        return assumption.id.replace("_", " ")
    return joined(names) or assumption.id.replace("_", " ")


def _typical(assumption: Assumption, system: System) -> str:
    typical = shown(assumption.typical, assumption.unit, system)
    if assumption.low is None or assumption.high is None or assumption.low == assumption.high:
        return typical
    low, high = shown(assumption.low, assumption.unit, system), shown(assumption.high, assumption.unit, system)
    return typical if low == high else f"{typical} ({low} to {high})"


def _ruled_out(result: Result, system: System, said: Sentences) -> list[str]:
    """Every family that is out, with its reason; where all nine are out for one reason, that has been said."""
    gone = [name for name in FAMILIES if name in result.families and result.families[name].verdict == "out"]
    lines = []
    for name in gone:
        reason = verdict_line(result.families[name], result, system, said).removeprefix("out: ")
        lines.append(said.say("advice.ruled_out", family=family_name(name, said), reason=reason))
    return lines
