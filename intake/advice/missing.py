"""What is still needed before anything can be told, in words."""

from intake.advice.brief import Brief
from intake.interview.matters import missing_basics
from intake.interview.wording import joined
from intake.spec.display import label


def still_needed(brief: Brief) -> str:
    """What travels, how many a minute, how far: those that are not known, each once; "" where all are."""
    names = [brief.sentences.find(f"basic.{name}") or label(name) for name in missing_basics(brief.spec)]
    return joined(list(dict.fromkeys(names)))
