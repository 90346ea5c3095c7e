"""Which family leads, which comes next, and why in a sentence."""

from collections.abc import Mapping

from intake.sizing.job import Job
from intake.sizing.result import FAMILIES, FamilyResult
from intake.sizing.sentences import Words

_CLOSE = 0.005


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


def why_best(
    best: str | None, second: str | None, families: Mapping[str, FamilyResult], weights: Mapping[str, float],
    words: Words,
) -> str:  # fmt: skip
    """Why the leading family beats the runner-up, by the reasons that weigh most; "" when none leads."""
    if best is None:
        return ""
    if second is None:
        return words.say(
            "beats", "sentence", best=_name(best, words), second="all others", reasons=words.say("beats", "only")
        )
    lead, next_one = families[best], families[second]
    gained = {name: weights[name] * (lead.reasons[name] - next_one.reasons.get(name, 0.0)) for name in lead.reasons}
    gained["open"] = _paid(next_one, weights) - _paid(lead, weights)
    ahead = sorted(gained.items(), key=lambda pair: (-pair[1], pair[0]))
    said = [words.say("beats", name) for name, by in ahead[:2] if by > _CLOSE]
    if not said:
        return words.say("beats", "close", best=_name(best, words), second=_name(second, words))
    return words.say(
        "beats", "sentence", best=_name(best, words), second=_name(second, words), reasons=" and ".join(said)
    )


def _paid(found: FamilyResult, weights: Mapping[str, float]) -> float:
    """What a family's score has paid for what is still open, on the scale of weighted reasons."""
    together = sum(weights.values())
    return sum(weights[name] * value for name, value in found.reasons.items()) - together * found.score


def _name(family: str, words: Words) -> str:
    return words.family(family)
