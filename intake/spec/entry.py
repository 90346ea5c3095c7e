"""One entry of a flat spec, as people and programs write it, read into a `Value`."""

import json
from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from intake.spec.value import SpecError, Value
from intake.spec.vocabulary import Field, nearest, vocabulary

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


def value_of(key: str, name: str, given: Any) -> Value:
    """One entry of a flat spec as a Value. Raises SpecError when it is no such thing."""
    if isinstance(given, Mapping):
        return _from_table(key, name, given)
    known = vocabulary()[name]
    if known.is_number:
        return _number(key, name, given)
    if known.kind == "yes_no":
        if not isinstance(given, bool):
            raise SpecError(key, f"{_brief(given)} is not true or false", "Write true or false.")
        return Value(value=given)
    if not isinstance(given, str):
        raise SpecError(key, f"{_brief(given)} is not a word", _accepted_words(known))
    if known.kind == "choice" and given not in known.choices:
        close = nearest(given, known.choices)
        hint = f'Did you mean "{close}"? ' if close else ""
        raise SpecError(key, f"{_brief(given)} is not one of its choices", hint + _accepted_words(known))
    return Value(value=given)


def _from_table(key: str, name: str, table: Mapping[str, Any]) -> Value:
    """{"low", "high", "spread", "hedged"} or {"value", "hedged"}, where a plain figure or word does not say enough."""
    odd = sorted(str(part) for part in set(table) - {"low", "high", "spread", "value", "hedged"})
    if odd:
        raise SpecError(key, f"unknown part {_brief(odd[0])}", "A table has low, high, spread, value, hedged.")
    spread, hedged = table.get("spread", name in SPREAD_FIELDS), table.get("hedged", False)
    if not isinstance(spread, bool) or not isinstance(hedged, bool):
        raise SpecError(key, "spread and hedged are true or false", 'Write {"value": true, "hedged": true}.')
    if "value" not in table and vocabulary()[name].is_number:
        return replace(_range(key, name, table.get("low"), table.get("high"), spread), hedged=hedged)
    if set(table) - {"value", "hedged"} or isinstance(table.get("value"), Mapping):
        raise SpecError(key, "a value has no low, high or spread beside it", 'Write {"value": ..., "hedged": true}.')
    return replace(value_of(key, name, table.get("value")), hedged=hedged)


def _accepted_words(known: Field) -> str:
    return f"Accepted: {', '.join(known.choices)}." if known.choices else "Write text in quotes."


def _brief(given: Any) -> str:
    """What was given as JSON writes it, cut to a length that fits a line."""
    try:
        text = json.dumps(given, ensure_ascii=False, default=str)
    except (ValueError, RecursionError):
        text = "this"
    return text if len(text) <= 40 else text[:40] + "..."


def _number(key: str, name: str, given: Any) -> Value:
    if not isinstance(given, list | tuple):
        return _range(key, name, given, given, spread=False)
    if len(given) != 2:
        raise SpecError(key, "a range has two ends", "Write [low, high]; null for an open end.")
    return _range(key, name, given[0], given[1], spread=name in SPREAD_FIELDS)


def _range(key: str, name: str, low: Any, high: Any, spread: bool) -> Value:
    ends = [end for end in (low, high) if end is not None]
    if not ends:
        raise SpecError(key, "both ends are open", f"Give at least one figure{_in_unit(name)}, or leave the key out.")
    for end in ends:
        _check_figure(key, name, end)
    if low is not None and high is not None and low > high:
        raise SpecError(key, f"the low end {low} is above the high end {high}", "Write [low, high].")
    two_ends = low is not None and high is not None and low != high
    # Adding 0.0 turns -0.0 into 0.0: the same spec gives the same bytes.
    return Value(
        low=None if low is None else float(low) + 0.0,
        high=None if high is None else float(high) + 0.0,
        spread=spread and two_ends,
    )


def _in_unit(name: str) -> str:
    unit = vocabulary()[name].unit
    return "" if unit == "1" else f" in {unit}"


def is_above_zero(name: str) -> bool:
    """True for a field whose figure cannot be zero: a size, a weight."""
    return name in _ABOVE_ZERO


def _check_figure(key: str, name: str, end: Any) -> None:
    known = vocabulary()[name]
    accepted = f"Write a plain {'whole ' if known.kind == 'count' else ''}number{_in_unit(name)}, or [low, high]."
    if isinstance(end, bool) or not isinstance(end, int | float):
        raise SpecError(key, f"{_brief(end)} is not a number", accepted)
    if not abs(end) <= _LARGEST:  # also refuses nan, and a whole number too long for a float
        raise SpecError(key, "it is not a finite figure within reason", accepted)
    if known.unit == "degC" and end < _ABSOLUTE_ZERO_DEGC:
        raise SpecError(key, f"{end} degC is below absolute zero", accepted)
    if end < 0 and name not in _MAY_BE_NEGATIVE:
        raise SpecError(key, f"{end} is negative", accepted)
    if end == 0 and name in _ABOVE_ZERO:
        raise SpecError(key, "it cannot be zero", accepted)
    if known.kind == "count" and end != int(end):
        raise SpecError(key, f"{end} is not a whole number", accepted)
