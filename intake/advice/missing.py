"""What is said while no machine leads: what is still needed, or that nothing fits."""

from intake.advice.brief import Brief
from intake.interview.matters import missing_basics
from intake.interview.wording import joined, sentence
from intake.spec.display import label


def still_needed(brief: Brief) -> str:
    """What travels, how many a minute, how far: those that are not known, each once; "" where all are."""
    names = [brief.sentences.find(f"basic.{name}") or label(name) for name in missing_basics(brief.spec)]
    return joined(list(dict.fromkeys(names)))


def nothing_leads(brief: Brief) -> str:
    """Why there is no machine to speak of: it is too early, or nothing in the range fits."""
    said, refer_out = brief.sentences, brief.result.refer_out
    if refer_out:
        return said.say("advice.refer_out", reason=sentence(refer_out))
    return said.say("advice.too_early", missing=still_needed(brief))
