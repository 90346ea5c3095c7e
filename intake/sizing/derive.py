"""What follows from the facts, and which facts cannot all hold. Never written into the case."""

from dataclasses import dataclass, field

from intake.sizing.range_data import RangeData
from intake.sizing.result import Conflict, Derived
from intake.spec.flat import Spec, Value

_NEAR_M = 0.02


@dataclass(slots=True)
class Found:
    """The spec with the worked-out values put in, and the lists for the result."""

    spec: Spec
    derived: list[Derived] = field(default_factory=list)
    conflicts: list[Conflict] = field(default_factory=list)
    round_sizes: set[int] = field(default_factory=set)

    def put(self, name: str, value: Value, unit: str, of: tuple[str, ...], size: int = 1) -> None:
        """Add one derived value."""
        self.spec = self.spec.put(name, value, size)
        shown = value.value if not value.is_number else value.largest if value.low is None else value.low
        high = value.high if value.is_number and value.high != value.low else None
        key = name if size == 1 else f"{name}@{size}"
        self.derived.append(Derived(field=key, value=shown, unit=unit, of=of, high=high))

    def clash(self, fields: tuple[str, ...], why: str, taken: object) -> None:
        """Add one conflict; `why` is the id of its sentence."""
        self.conflicts.append(Conflict(fields=fields, why=why, taken=taken))


def derive(spec: Spec, data: RangeData) -> Found:
    """Work out what follows: plan size of round products, rate from pieces, rise and levels, zone, washing."""
    found = Found(spec)
    for size in spec.sizes:
        _round(found, size)
    _rate(found)
    _rise(found)
    _zone(found, data)
    _washing(found, data)
    _space(found)
    return found


def _round(found: Found, size: int) -> None:
    """A diameter stands for length and width, unless they are said."""
    own = found.spec.get(("product.diameter", size))
    length = found.spec.get(("product.length", size))
    width = found.spec.get(("product.width", size))
    if own is None:
        return
    if length is None and width is None:
        found.round_sizes.add(size)
        found.put("product.length", own, "m", ("product.diameter",), size)
        found.put("product.width", own, "m", ("product.diameter",), size)


def _rate(found: Found) -> None:
    spec = found.spec
    pieces, each = spec.of("rate.pieces"), spec.of("product.pieces")
    if pieces and each and not spec.knows("rate.normal") and not spec.knows("rate.peak"):
        count = each.largest or 1.0
        low = None if pieces.low is None else pieces.low / count
        high = None if pieces.high is None else pieces.high / count
        found.put("rate.normal", Value(low=low, high=high), "1/min", ("rate.pieces", "product.pieces"))
    normal, peak = spec.of("rate.normal"), spec.of("rate.peak")
    if normal and peak and peak.high is not None and normal.low is not None and peak.high < normal.low * (1 - 1e-9):
        found.clash(("rate.peak", "rate.normal"), "peak_below_normal", normal.largest)
        found.spec = found.spec.put("rate.peak", normal)


def _rise(found: Found) -> None:
    spec = found.spec
    infeed, discharge = spec.of("rise.infeed_height"), spec.of("rise.discharge_height")
    heights = ("rise.infeed_height", "rise.discharge_height")
    stated, word = spec.of("rise.height"), spec.word("rise.direction")
    if infeed and discharge:
        rise, way = _between(infeed, discharge)
        if rise is not None:
            if stated is not None and not _agree(stated, rise):
                found.clash(("rise.height", *heights), "rise_against_heights", rise.largest)
            found.put("rise.height", rise, "m", heights)  # two heights outrank a stated rise
        if word is None and way is not None:
            found.put("rise.direction", Value(value=way), "", heights)
        elif word in ("up", "down") and way is not None and word != way:
            found.clash(("rise.direction", *heights), "direction_against_heights", word)
        return
    direction = found.spec.word("rise.direction")
    rise_value = found.spec.of("rise.height")
    if direction not in ("up", "down") or rise_value is None:
        return
    up = 1.0 if direction == "up" else -1.0
    if infeed and not discharge:
        found.put("rise.discharge_height", _shift(infeed, rise_value, up), "m", ("rise.infeed_height", "rise.height"))
    elif discharge and not infeed:
        found.put(
            "rise.infeed_height", _shift(discharge, rise_value, -up), "m", ("rise.discharge_height", "rise.height")
        )


def _between(infeed: Value, discharge: Value) -> tuple[Value | None, str | None]:
    """The change of height between two levels, and the way it goes."""
    ends = (infeed.low, infeed.high, discharge.low, discharge.high)
    if any(end is None for end in ends):
        a, b = infeed.largest, discharge.largest
        if a is None or b is None:
            return None, None
        low = high = b - a
    else:
        low = (discharge.low or 0.0) - (infeed.high or 0.0)
        high = (discharge.high or 0.0) - (infeed.low or 0.0)
    way = "up" if low > 0 else "down" if high < 0 else None
    if low <= 0 <= high:
        return Value(low=0.0, high=max(abs(low), abs(high))), way
    return Value(low=min(abs(low), abs(high)), high=max(abs(low), abs(high))), way


def _shift(level: Value, by: Value, sign: float) -> Value:
    """A level moved by a change of height; open ends are taken at the end that is known."""
    level_low = level.low if level.low is not None else level.high or 0.0
    level_high = level.high if level.high is not None else level_low
    by_low = by.low if by.low is not None else by.high or 0.0
    by_high = by.high if by.high is not None else by_low
    moves = (sign * by_low, sign * by_high)
    return Value(low=level_low + min(moves), high=level_high + max(moves))


def _agree(stated: Value, rise: Value) -> bool:
    low = stated.low if stated.low is not None else 0.0
    high = stated.high if stated.high is not None else float("inf")
    rise_low, rise_high = rise.low or 0.0, rise.high if rise.high is not None else float("inf")
    slack = max(_NEAR_M, 0.01 * rise_high)
    return low <= rise_high + slack and high >= rise_low - slack


def _zone(found: Found, data: RangeData) -> None:
    spec = found.spec
    room, zone = spec.of("temperature.room"), spec.word("temperature.zone")
    if room is None:
        return
    coldest = room.low if room.low is not None else room.high
    warmest = room.high if room.high is not None else room.low
    if coldest is None or warmest is None:
        return
    at = zone_at(coldest, data)
    implied = at if at in ("freezer", "chilled") else zone_at(warmest, data)
    if zone is None:
        found.put("temperature.zone", Value(value=implied), "", ("temperature.room",))
    elif zone != implied and zone not in (zone_at(coldest, data), zone_at(warmest, data)):
        found.clash(("temperature.zone", "temperature.room"), "zone_against_room", implied)
        found.spec = found.spec.put("temperature.zone", Value(value=implied))


def zone_at(degc: float, data: RangeData) -> str:
    """The zone of a room temperature in degC."""
    kelvin = degc + 273.15
    if kelvin < data.common.zone_freezer_below:
        return "freezer"
    if kelvin < data.common.zone_chilled_below:
        return "chilled"
    return "hot" if kelvin > data.common.zone_hot_above else "ambient"


def _washing(found: Found, data: RangeData) -> None:
    """A pressure tells the way of washing where nobody said it in words."""
    pressure = found.spec.of("cleaning.pressure")
    if pressure is None or found.spec.knows("cleaning.method"):
        return
    said = pressure.low if pressure.low is not None else pressure.high
    if said is not None and said > 0.0:
        strong = said >= data.common.high_pressure_from
        method = Value(value="high_pressure" if strong else "low_pressure")
        found.put("cleaning.method", method, "", ("cleaning.pressure",))


def _space(found: Found) -> None:
    spec = found.spec
    ceiling = spec.of("space.ceiling")
    tall = spec.of("product.height")
    levels = [v for v in (spec.of("rise.infeed_height"), spec.of("rise.discharge_height")) if v is not None]
    top = max((v.largest or 0.0 for v in levels), default=None)
    if ceiling is None or ceiling.high is None or top is None or not levels:
        return
    needed = top + (tall.largest or 0.0 if tall is not None else 0.0)
    if ceiling.high < needed - 1e-9:
        found.clash(("space.ceiling", "rise.discharge_height"), "ceiling_below_product", ceiling.high)
