"""One family in words: its name, its verdict in one line, why not this one."""

from intake.interview.reasons import failing_reason, few, open_matters, room_left, verdict_reason
from intake.interview.reasons import family_name as name_in
from intake.interview.reasons import short_family_name as short_name_in
from intake.interview.wording import Sentences, in_force, joined
from intake.sizing.result import FamilyResult, Result
from intake.spec.display import System


def family_name(family: str, sentences: Sentences | None = None) -> str:
    """What the trade calls a family: "side-grip elevator"."""
    return name_in(family, sentences or in_force())


def short_family_name(family: str, sentences: Sentences | None = None) -> str:
    """The same where room is short: "side grip"."""
    return short_name_in(family, sentences or in_force())


def verdict_line(found: FamilyResult, result: Result, system: System, sentences: Sentences | None = None) -> str:
    """Verdict and reason in one line: "out: 140/min is over its limit of 120/min"."""
    said = sentences or in_force()
    reason = verdict_reason(found, result, said, system)
    how = "likely_out" if found.likely_out and found.verdict == "depends" else found.verdict
    return said.say(f"verdict.{how}_line", reason=reason) if reason else said.say(f"verdict.{found.verdict}")


def margin_line(found: FamilyResult, sentences: Sentences | None = None) -> str:
    """The tightest margin of a family that stands, "" where no check tells of one."""
    return room_left(found, sentences or in_force())


def why_not(result: Result, family: str, system: System, sentences: Sentences | None = None) -> list[str]:
    """Why this family is not the one: every check that fails with its figures, or what it waits for, or who is better.

    Raises KeyError for a family that there is not.
    """
    said, found = sentences or in_force(), result.families[family]
    name = family_name(family, said)
    if found.verdict == "out":
        reasons = [failing_reason(check, said, system) for check in found.failed] or [
            verdict_reason(found, result, said, system)
        ]
        return [
            said.say("why_not.out", family=name, reason=reasons[0]),
            *(said.say("why_not.more", reason=reason) for reason in dict.fromkeys(reasons[1:])),
        ]
    if result.best == family:
        return [said.say("why_not.best", family=name)]
    if found.verdict == "depends":
        how = "likely_out" if found.likely_out else "depends"
        return [said.say(f"why_not.{how}", family=name, matters=few(open_matters(found, result)))]
    best = result.families.get(result.best or "")
    if best is None:
        return [f"{name}: {verdict_line(found, result, system, said)}"]
    reasons = better_on(best, found, said)
    return [
        said.say(
            "why_not.fits", family=name, best=family_name(best.family, said), reasons=joined(reasons) or "all in all"
        )
    ]


def better_on(one: FamilyResult, other: FamilyResult, sentences: Sentences, most: int = 3) -> list[str]:
    """On which counts one family scores clearly better than another, the greatest lead first."""
    leads = {
        name: score - other.reasons[name]
        for name, score in one.reasons.items()
        if name in other.reasons and score - other.reasons[name] > 0.05
    }
    ranked = sorted(leads, key=lambda name: (-leads[name], name))[:most]
    return [sentences.find(f"beats.{name}") or name.replace("_", " ") for name in ranked]
