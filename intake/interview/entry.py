"""One question of the tree: what it asks, how it is said, when another wording suits better."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from intake.spec.flat import Spec

STANDS_FOR: Mapping[str, tuple[tuple[str, ...], ...]] = MappingProxyType(
    {
        "product.length": (("product.diameter",),),
        "product.width": (("product.diameter",),),
        "product.diameter": (("product.length",), ("product.width",)),
        "rate.normal": (("rate.pieces", "product.pieces"),),
        "rise.height": (("rise.infeed_height", "rise.discharge_height"),),
        "rise.infeed_height": (("rise.discharge_height", "rise.height", "rise.direction"),),
        "rise.discharge_height": (("rise.infeed_height", "rise.height", "rise.direction"),),
        "rise.direction": (("rise.infeed_height", "rise.discharge_height"),),
        "temperature.zone": (("temperature.room",),),
    }
)
"""Other facts that make asking for this one needless: any of these sets, known whole, is enough."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Condition:
    """Holds when the field's known value is one of these words (or true, false)."""

    field: str
    any_of: tuple[str | bool, ...]

    def holds(self, spec: Spec) -> bool:
        """False too while the field is unknown."""
        found = spec.of(self.field)
        return found is not None and found.value is not None and found.value in self.any_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Wording:
    """Another way to say a question, for a product it suits or for the part of it that is still open."""

    say: str
    when: tuple[Condition, ...] = ()
    asks: tuple[str, ...] = ()

    def suits(self, spec: Spec, still_open: Collection[str]) -> bool:
        """True when all conditions hold and nothing is open that this wording leaves unasked."""
        return all(line.holds(spec) for line in self.when) and (not self.asks or set(still_open) <= set(self.asks))


@dataclass(frozen=True, slots=True, kw_only=True)
class QuestionEntry:
    """One question of the tree.

    `fields` are asked in one breath. `say` can be sent to the visitor as it is; `why` is for the staff.
    `cost` of an answer: 1 said at once, 2 must be looked up, 3 must be measured or tested. `unknown_ok` is said when
    the visitor does not know; `settle` names the photo, drawing or test that would give the answer.
    """

    id: str
    branch: str
    fields: tuple[str, ...]
    say: str
    why: str
    cost: int
    unknown_ok: str
    settle: str
    wordings: tuple[Wording, ...] = ()


def is_settled(field: str, spec: Spec) -> bool:
    """True when the field is known or other facts stand for it."""
    others = STANDS_FOR.get(field, ())
    return spec.knows(field) or any(all(spec.knows(other) for other in group) for group in others)
