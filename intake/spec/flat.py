"""The flat spec: what is known of one job, as plain frozen values. All that sizing ever sees."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from math import isfinite
from typing import Any

from intake.spec.vocabulary import nearest, vocabulary

Key = tuple[str, int]
"""A field id and the product size it speaks of (1 for all but further sizes)."""

SPREAD_FIELDS = frozenset(
    {
        "product.length",
        "product.width",
        "product.height",
        "product.diameter",
        "product.base",
        "product.base_width",
        "product.centre_height",
        "product.weight",
        "temperature.room",
        "temperature.product",
    }
)
"""Fields on which a stated range means that every value in it occurs."""

_MAY_BE_NEGATIVE = frozenset({"temperature.room", "temperature.product", "rise.infeed_height", "rise.discharge_height"})
_ABOVE_ZERO = frozenset(
    {
        "product.length",
        "product.width",
        "product.height",
        "product.diameter",
        "product.base",
        "product.base_width",
        "product.centre_height",
        "product.weight",
        "product.sizes",
        "product.pieces",
        "rate.normal",
        "rate.peak",
        "rate.pieces",
        "rise.levels",
        "site.voltage",
        "site.phases",
        "site.frequency",
        "project.machines",
    }
)
_ABSOLUTE_ZERO_DEGC = -273.15
_LARGEST = 1e12


class SpecError(ValueError):
    """One key of a spec that cannot be taken: which field, what is wrong, how to mend it."""

    def __init__(self, field: str, what: str, mend: str) -> None:
        super().__init__(f"{field}: {what}. {mend}")
        self.field, self.what, self.mend = field, what, mend


@dataclass(frozen=True, slots=True, kw_only=True)
class Value:
    """What is known of one field.

    Numbers have `low` and `high` in the canonical unit (None: that end is open); all else has `value`.
    `spread`: every value between the ends occurs. Otherwise one is true and we do not know which.
    """

    low: float | None = None
    high: float | None = None
    value: str | bool | None = None
    spread: bool = False
    hedged: bool = False

    @property
    def is_number(self) -> bool:
        """True where low and high speak, not `value`."""
        return self.value is None

    @property
    def single(self) -> float | None:
        """The number when both ends agree, else None."""
        return self.low if self.low is not None and self.low == self.high else None

    @property
    def largest(self) -> float | None:
        """The high end, or the low one where the high end is open."""
        return self.high if self.high is not None else self.low

    def to_json(self) -> Any:
        """The shortest form that a flat spec takes for it."""
        if not self.is_number:
            return {"value": self.value, "hedged": True} if self.hedged else self.value
        if self.single is not None:
            return {"low": self.low, "high": self.high, "hedged": True} if self.hedged else self.low
        return {"low": self.low, "high": self.high, "spread": self.spread} | ({"hedged": True} if self.hedged else {})


class Spec(Mapping[Key, Value]):
    """An immutable mapping (field id, product size) -> Value, kept in the order of the vocabulary."""

    __slots__ = ("_values",)

    def __init__(self, values: Mapping[Key, Value]) -> None:
        order = {name: n for n, name in enumerate(vocabulary())}
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
        for key, given in flatten(flat).items():
            if given is None:
                continue
            key_name, size = split_key(key)
            values[(key_name, size)] = value_of(key, key_name, given)
        return cls(values)


def flatten(flat: Mapping[str, Any]) -> dict[str, Any]:
    """Tables by branch ({"product": {"length": 0.4}}, as TOML writes them) made flat."""
    branches = {name.split(".", 1)[0] for name in vocabulary()}
    out: dict[str, Any] = {}
    for key, given in flat.items():
        if key in branches and isinstance(given, Mapping):
            out.update({f"{key}.{inner}": value for inner, value in given.items()})
        else:
            out[key] = given
    return out


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


def value_of(key: str, name: str, given: Any) -> Value:
    """One entry of a flat spec as a Value. Raises SpecError when it is no such thing."""
    known = vocabulary()[name]
    hedged = False
    if isinstance(given, Mapping):
        odd = set(given) - {"low", "high", "spread", "value", "hedged"}
        if odd:
            raise SpecError(key, f"unknown part {sorted(odd)[0]!r}", "A table has low, high, spread, value, hedged.")
        hedged = given.get("hedged", False)
        if not isinstance(hedged, bool) or not isinstance(given.get("spread", False), bool):
            raise SpecError(key, "spread and hedged are true or false", 'Write {"value": true, "hedged": true}.')
        if "value" in given:
            return replace(value_of(key, name, given["value"]), hedged=hedged)
    if known.is_number:
        return replace(_number(key, name, given), hedged=hedged)
    if known.kind == "yes_no":
        if not isinstance(given, bool):
            raise SpecError(key, f"{given!r} is not true or false", "Write true or false.")
        return Value(value=given)
    if not isinstance(given, str):
        raise SpecError(key, f"{given!r} is not a word", "Write text in quotes.")
    if known.kind == "choice" and given not in known.choices:
        close = nearest(given, known.choices)
        hint = f'Did you mean "{close}"? ' if close else ""
        raise SpecError(key, f'"{given}" is not one of its choices', f"{hint}Accepted: {', '.join(known.choices)}.")
    return Value(value=given)


def _number(key: str, name: str, given: Any) -> Value:
    unit = vocabulary()[name].unit
    if isinstance(given, Mapping):
        low, high, spread = given.get("low"), given.get("high"), given.get("spread", name in SPREAD_FIELDS)
    elif isinstance(given, list | tuple):
        if len(given) != 2:
            raise SpecError(key, "a range has two ends", "Write [low, high]; null for an open end.")
        low, high, spread = given[0], given[1], name in SPREAD_FIELDS
    else:
        low, high, spread = given, given, False
    ends = [end for end in (low, high) if end is not None]
    if not ends:
        raise SpecError(key, "both ends are open", f"Give at least one figure in {unit}, or leave the key out.")
    for end in ends:
        _check_figure(key, name, unit, end)
    if low is not None and high is not None and low > high:
        raise SpecError(key, f"the low end {low} is above the high end {high}", "Write [low, high].")
    two_ends = low is not None and high is not None and low != high
    return Value(
        low=None if low is None else float(low),
        high=None if high is None else float(high),
        spread=bool(spread) and two_ends,
    )


def _check_figure(key: str, name: str, unit: str, end: Any) -> None:
    accepted = f"A plain number in {unit}, or [low, high]."
    if isinstance(end, bool) or not isinstance(end, int | float):
        raise SpecError(key, f"{end!r} is not a number", accepted)
    if not isfinite(end) or abs(end) > _LARGEST:
        raise SpecError(key, f"{end} is not a finite figure within reason", accepted)
    if unit == "degC" and end < _ABSOLUTE_ZERO_DEGC:
        raise SpecError(key, f"{end} degC is below absolute zero", accepted)
    if end < 0 and name not in _MAY_BE_NEGATIVE:
        raise SpecError(key, f"{end} is negative", accepted)
    if end == 0 and name in _ABOVE_ZERO:
        raise SpecError(key, "it cannot be zero", accepted)
    if vocabulary()[name].kind == "count" and end != int(end):
        raise SpecError(key, f"{end} is not a whole number", "Write a whole number.")
