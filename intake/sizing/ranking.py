"""Which family leads, which comes next, and why in a sentence."""

from collections.abc import Mapping

from intake.sizing.job import Job
from intake.sizing.result import FAMILIES, FamilyResult
from intake.sizing.sentences import Words

_CLOSE = 0.01


def enough_known(job: Job) -> bool:
    """True once type or size, rate and rise are known: before that no family is named best."""
    size = job.sizes[0]
    has_size = not (size["L"].missing or size["W"].missing or size["H"].missing)
    has_type = not job.choices["type"].missing
    return (has_size or has_type) and not size["R"].missing and not size["rise"].missing


def rank(job: Job, families: Mapping[str, FamilyResult]) -> tuple[str | None, str | None]:
    """The family with the highest score among those not out, and the next one."""
    if not enough_known(job):
        return None, None
    left = [found for found in families.values() if found.verdict != "out"]
    left.sort(key=lambda found: (found.likely_out, -found.score, FAMILIES.index(found.family)))
    names = [found.family for found in left]
    return (names[0] if names else None), (names[1] if len(names) > 1 else None)


def why_best(best: str | None, second: str | None, families: Mapping[str, FamilyResult], words: Words) -> str:
    """Why the leading family beats the runner-up, by the reasons that count most; "" when none leads."""
    if best is None:
        return ""
    if second is None:
        return words.say(
            "beats", "sentence", best=_name(best, words), second="all others", reasons=words.say("beats", "only")
        )
    lead, next_one = families[best].reasons, families[second].reasons
    ahead = sorted(
        ((name, lead[name] - next_one.get(name, 0.0)) for name in lead), key=lambda pair: (-pair[1], pair[0])
    )
    said = [words.say("beats", name) for name, by in ahead[:2] if by > _CLOSE]
    if not said:
        return words.say("beats", "close", best=_name(best, words), second=_name(second, words))
    return words.say(
        "beats", "sentence", best=_name(best, words), second=_name(second, words), reasons=" and ".join(said)
    )


def _name(family: str, words: Words) -> str:
    return words.family(family)
