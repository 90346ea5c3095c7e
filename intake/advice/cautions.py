"""Cautions: what every recommendation says, and what the flags of this one mean."""

from intake.interview.wording import Sentences, in_force
from intake.sizing.result import Result

ALWAYS = ("first_sizing", "safety", "structure", "no_price")


def caution_lines(result: Result, sentences: Sentences | None = None) -> list[str]:
    """Flags first, then what is always said, each once. A caution of sizing without a sentence stands as it is."""
    said = sentences or in_force()
    lines = [said.find(f"caution.{flag}") for flag in result.flags]
    lines += [said.find(f"caution.{caution}") or caution for caution in result.cautions]
    lines += [said.say(f"caution.{caution}") for caution in ALWAYS]
    return list(dict.fromkeys(line for line in lines if line))
