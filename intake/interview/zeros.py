"""A figure of zero where there can be none: asked back, since nothing could be sized with it."""

from dataclasses import replace

from intake.interview.hearing import Taken
from intake.spec.display import label
from intake.spec.entry import is_above_zero
from intake.spec.facts import Doubt, Fact


def without_zeros(taken: Taken) -> Taken:
    """What was taken in, with a doubt in place of each fact that says zero of a size, a weight and the like."""
    zeros = [fact for fact in taken.heard.facts if is_above_zero(fact.field) and 0.0 in (fact.low, fact.high)]
    if not zeros:
        return taken
    facts = tuple(fact for fact in taken.heard.facts if fact not in zeros)
    doubts = (*taken.heard.doubts, *(_doubt(fact) for fact in zeros))
    return replace(taken, heard=replace(taken.heard, facts=facts, doubts=doubts))


def _doubt(fact: Fact) -> Doubt:
    name = label(fact.field)
    ask = f"You wrote {fact.said} for the {name}. It cannot be zero; what is it?"
    return Doubt(field=fact.field, said=fact.said, why=f"the {name} cannot be zero", ask=ask, span=fact.span)
