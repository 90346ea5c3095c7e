"""A spec with one fact changed, and what hangs on that fact changed with it."""

from intake.spec.flat import Key, Spec
from intake.spec.value import Value

RATE = "rate"
"""The rate sized for: the peak, else the normal rate."""

_LEVELS = ("rise.infeed_height", "rise.discharge_height")


def with_figure(spec: Spec, key: Key, value: float, *, upwards: bool) -> Spec:
    """A figure set to a value; of a spread only the end that is in the way moves (upwards: the low one).

    Rates move together (a normal rate is never above the peak), a rise moves its upper level, a room temperature
    takes the word for the room with it.
    """
    field, size = key
    if field in (RATE, "rate.peak", "rate.normal", "rate.pieces"):
        return with_rate(spec, value)
    if field == "rise.height":
        return with_rise(spec, value)
    known = spec.get(key)
    spread = known is not None and known.spread and known.low is not None and known.high is not None
    if known is not None and spread:
        low, high = known.low or 0.0, known.high or 0.0
        ends = (value, max(high, value)) if upwards else (min(low, value), value)
        return spec.put(field, Value(low=ends[0], high=ends[1], spread=ends[0] < ends[1]), size)
    changed = spec.put(field, Value(low=value, high=value), size)
    return changed.put("temperature.zone", None) if field == "temperature.room" else changed


def with_rate(spec: Spec, per_minute: float) -> Spec:
    """Sized for another rate [1/min]: the peak, and a normal rate of at most that."""
    normal = spec.of("rate.normal")
    changed = spec.put("rate.peak", Value(low=per_minute, high=per_minute)).put("rate.pieces", None)
    if normal is None:
        return changed
    low, high = (min(end, per_minute) if end is not None else None for end in (normal.low, normal.high))
    return changed.put("rate.normal", Value(low=low, high=high))


def with_rise(spec: Spec, rise: float) -> Spec:
    """Another change of height [m]: the lower level stays where it is, the upper one moves."""
    lowers = spec.word("rise.direction") == "down"
    lower, upper = reversed(_LEVELS) if lowers else _LEVELS
    foot = _one(spec.of(lower))
    stated, top = _one(spec.of("rise.height")), _one(spec.of(upper))
    if foot is None and top is not None and stated is not None:
        foot = top - stated
    elif foot is not None and top is not None:
        foot = min(foot, top)
    changed = spec.put("rise.height", Value(low=rise, high=rise)).put(upper, None)
    return changed if foot is None else changed.put(lower, Value(low=foot, high=foot))


def with_word(spec: Spec, key: Key, word: str | bool) -> Spec:
    """A choice or yes/no set to a word; the temperature of a room goes with the word for it."""
    changed = spec.put(key[0], Value(value=word), key[1])
    return changed.put("temperature.room", None) if key[0] == "temperature.zone" else changed


def _one(value: Value | None) -> float | None:
    if value is None or not value.is_number:
        return None
    if value.low is None or value.high is None:
        return value.largest
    return (value.low + value.high) / 2.0
