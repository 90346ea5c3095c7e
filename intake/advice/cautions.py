"""Cautions: what every recommendation says, and what the flags of this one mean."""

from intake.interview.wording import Sentences, in_force
from intake.sizing.result import Result

ALWAYS = ("general", "riding", "standards", "price")


def caution_lines(result: Result, sentences: Sentences | None = None) -> list[str]:
    """The cautions of sizing and the sentence of each flag, then what is always said, each once."""
    said = sentences or in_force()
    always = [said.find(f"caution.{id}") for id in ALWAYS]
    own = [caution for caution in result.cautions if caution not in always]
    flags = [said.find(f"flag.{flag}") for flag in result.flags]
    return list(dict.fromkeys(line for line in [*own, *flags, *always] if line))
