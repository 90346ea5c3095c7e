"""What asking for one open fact would do, and what is known of that without trying anything."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from intake.interview.tree import is_settled
from intake.sizing.result import Result
from intake.spec.flat import Spec

Part = Literal["basics", "best", "engineering", "aside", "skip"]
"""What asking for a fact would do, in the order of asking; "skip": nothing at all."""

ORDER: Mapping[Part, int] = {"basics": 0, "best": 1, "engineering": 2, "aside": 3, "skip": 4}


@dataclass(frozen=True, slots=True, kw_only=True)
class Matter:
    """What one open fact matters. `worth`: how often its answer would change the best family, 0 to 1.

    `tells`: what the answer, with all that is asked in the same breath, tells about the best family.
    """

    field: str
    part: Part
    worth: float = 0.0
    tells: float = 0.0
    reason: str = ""
    blanks: tuple[tuple[str, str], ...] = ()
    """What fills the reason's blanks; the topic is the question's."""


def hinges_of(result: Result) -> dict[str, frozenset[str]]:
    """Which standing families wait for a field: named in depends_on, or by an assumption that is."""
    about = {assumption.id: assumption.about for assumption in result.assumptions}
    found: dict[str, set[str]] = {}
    for family in result.standing:
        for id in result.families[family].depends_on:
            for name in about.get(id, (id,)):
                found.setdefault(name, set()).add(family)
    return {name: frozenset(families) for name, families in found.items()}


def worth_of_asking(field: str, result: Result, hinges: Mapping[str, frozenset[str]]) -> float:
    """How often the answer changes the best family.

    Where nothing was sampled: the share of standing families whose verdict hangs on it, the best one double.
    """
    if result.samples is not None:
        return result.samples.changes((field,))
    hanging = hinges.get(field, frozenset())
    return (len(hanging) + (result.best in hanging)) / (len(result.standing) + 1) if hanging else 0.0


def missing_basics(spec: Spec) -> tuple[str, ...]:
    """What is not known of all that no family can be chosen without: product, size, weight, rate, rise and its way."""
    rate, rise = ("rate.normal", "rate.peak"), ("rise.height", "rise.infeed_height", "rise.discharge_height")
    wanted = ["product.type", "product.length", "product.width", "product.height", "product.weight"]
    wanted += [] if any(is_settled(name, spec) for name in rate) else rate
    wanted += [] if is_settled("rise.height", spec) else rise
    return tuple(name for name in (*wanted, "rise.direction") if not is_settled(name, spec))
