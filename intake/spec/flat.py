"""The flat spec: what is known of one job, as plain frozen values. All that sizing ever sees."""

from collections.abc import Iterator, Mapping
from functools import cache
from typing import Any

from intake.spec.entry import SPREAD_FIELDS, value_of
from intake.spec.value import SpecError, Value
from intake.spec.vocabulary import nearest, vocabulary

__all__ = ["SPREAD_FIELDS", "Key", "Spec", "SpecError", "Value", "flatten", "split_key", "value_of"]

Key = tuple[str, int]
"""A field id and the product size it speaks of (1 for all but further sizes)."""


class Spec(Mapping[Key, Value]):
    """An immutable mapping (field id, product size) -> Value, kept in the order of the vocabulary."""

    __slots__ = ("_values",)

    def __init__(self, values: Mapping[Key, Value]) -> None:
        order = _order()
        self._values = dict(sorted(values.items(), key=lambda item: (item[0][1], order[item[0][0]])))

    def __getitem__(self, key: Key) -> Value:
        return self._values[key]

    def __iter__(self) -> Iterator[Key]:
        return iter(self._values)

    def __len__(self) -> int:
        return len(self._values)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Spec) and self._values == other._values

    def __hash__(self) -> int:
        return hash(tuple(self._values.items()))

    def of(self, field: str, size: int = 1) -> Value | None:
        """What is known of a field. A further size that leaves a product fact out has it like the first."""
        found = self._values.get((field, size))
        if found is None and size > 1:
            return self._values.get((field, 1))
        return found

    def knows(self, field: str) -> bool:
        """True when the field of the first size is known."""
        return (field, 1) in self._values

    def word(self, field: str, size: int = 1) -> str | None:
        """A choice or text, None when unknown."""
        found = self.of(field, size)
        return found.value if found is not None and isinstance(found.value, str) else None

    def yes(self, field: str, size: int = 1) -> bool | None:
        """A yes or no, None when unknown."""
        found = self.of(field, size)
        return found.value if found is not None and isinstance(found.value, bool) else None

    @property
    def sizes(self) -> tuple[int, ...]:
        """The product sizes that are described, always from 1."""
        return tuple(sorted({1} | {size for _, size in self._values}))

    def put(self, field: str, value: Value | None, size: int = 1) -> "Spec":
        """A new spec with one field set, or taken out with None."""
        changed = dict(self._values)
        if value is None:
            changed.pop((field, size), None)
        else:
            changed[(field, size)] = value
        return Spec(changed)

    def to_flat(self) -> dict[str, Any]:
        """The JSON shape: {"product.length": 0.4, "product.length@2": 0.3, ...}."""
        return {name if size == 1 else f"{name}@{size}": v.to_json() for (name, size), v in self._values.items()}

    @classmethod
    def from_flat(cls, flat: Mapping[str, Any]) -> "Spec":
        """Read the JSON shape. Raises SpecError for the first key that cannot be taken."""
        values: dict[Key, Value] = {}
        for key, given in flatten(flat):
            at = split_key(key)
            if given is None:
                continue
            if at in values:
                raise SpecError(key, "it is given twice", "Keep one of the two.")
            values[at] = value_of(key, at[0], given)
        return cls(values)


@cache
def _order() -> Mapping[str, int]:
    return {name: place for place, name in enumerate(vocabulary())}


def flatten(flat: Mapping[str, Any]) -> Iterator[tuple[str, Any]]:
    """Key by key, tables by branch ({"product": {"length": 0.4}}, as TOML writes them) made flat."""
    if not isinstance(flat, Mapping):
        raise SpecError("spec", "it is not a table of facts", 'Write {"product.length": 0.4, ...}.')
    branches = {name.split(".", 1)[0] for name in vocabulary()}
    for key, given in flat.items():
        if key in branches and isinstance(given, Mapping):
            yield from ((f"{key}.{inner}", value) for inner, value in given.items())
        else:
            yield str(key), given


def split_key(key: str) -> Key:
    """ "product.length@2" -> ("product.length", 2). Raises SpecError for a key that names no field."""
    name, _, number = key.partition("@")
    if name not in vocabulary():
        close = nearest(name)
        hint = f'Did you mean "{close}"?' if close else "The fields are listed in fields.toml (intake proof --fields)."
        raise SpecError(key, "there is no such field", hint)
    if not number:
        return name, 1
    if not number.isascii() or not number.isdigit() or not 1 <= int(number) <= 99 or not name.startswith("product."):
        raise SpecError(key, "only product facts have further sizes, numbered @2 to @99", "Write product.length@2.")
    return name, int(number)
