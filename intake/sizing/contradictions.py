"""Two facts about the same thing that do not agree: which one sizing goes on with, and that it has to be cleared up."""

from math import degrees, inf, radians, tan

from intake.sizing.derive import Found
from intake.sizing.range_data import RangeData
from intake.spec.value import Value

_NEAR = 0.05
"""Figures within a twentieth of each other say the same."""
_MILD = ("dry", "wipe", "low_pressure")


def find_contradictions(found: Found, data: RangeData) -> None:
    """Add a conflict for each pair of facts that cannot both hold."""
    for size in found.spec.sizes:
        _diameter(found, size)
        _centre(found, size)
    _pieces(found)
    _pressure(found, data)
    _squeeze(found)


def _diameter(found: Found, size: int) -> None:
    """Length and width outrank a diameter."""
    own = found.spec.get(("product.diameter", size))
    if own is None or size in found.round_sizes:
        return
    for name in ("product.length", "product.width"):
        side = found.spec.of(name, size)
        if side is not None and _apart(side, own):
            found.clash((name, "product.diameter"), "size_against_diameter", side.largest)
            return


def _pieces(found: Found) -> None:
    """A stated rate outranks one counted in pieces."""
    pieces, each = found.spec.of("rate.pieces"), found.spec.of("product.pieces")
    normal, peak = found.spec.of("rate.normal"), found.spec.of("rate.peak")
    if pieces is None or each is None or each.largest is None or any(d.field == "rate.normal" for d in found.derived):
        return
    count = each.largest or 1.0
    counted = Value(
        low=None if pieces.low is None else pieces.low / count,
        high=None if pieces.high is None else pieces.high / count,
    )
    if all(_apart(rate, counted) for rate in (normal, peak) if rate is not None):
        rate = normal if normal is not None else peak
        taken = None if rate is None else rate.largest
        name = "rate.normal" if normal is not None else "rate.peak"
        found.clash((name, "rate.pieces", "product.pieces"), "rate_against_pieces", taken)


def _pressure(found: Found, data: RangeData) -> None:
    """The way of washing outranks its pressure."""
    pressure, method = found.spec.of("cleaning.pressure"), found.spec.word("cleaning.method")
    if pressure is None or pressure.low is None or method not in _MILD:
        return
    if pressure.low >= data.common.high_pressure_from:
        found.clash(("cleaning.method", "cleaning.pressure"), "method_against_pressure", method)


def _squeeze(found: Found) -> None:
    """Of a limit that was said and a mark that was seen, the lower force counts."""
    limit, mark = found.spec.of("handling.squeeze_limit"), found.spec.of("test.squeeze_mark")
    if limit is not None and mark is not None and _apart(limit, mark):
        taken = min(limit.largest or inf, mark.largest or inf)
        found.clash(("handling.squeeze_limit", "test.squeeze_mark"), "limit_against_mark", taken)


def _centre(found: Found, size: int) -> None:
    """Of a centre of gravity that was said and one that a tilting test showed, the higher counts."""
    centre, tip = found.spec.of("product.centre_height", size), found.spec.of("test.tip_angle", size)
    base = found.spec.of("product.base", size) or found.spec.of("product.length", size)
    if centre is None or tip is None or base is None or not (centre.largest and tip.low and base.largest):
        return
    if not 0.0 < tip.low < degrees(1.55):
        return
    shown = base.largest / (2.0 * tan(radians(tip.low)))
    if abs(shown - centre.largest) > _NEAR * max(shown, centre.largest):
        taken = max(shown, centre.largest)
        found.clash(("product.centre_height", "test.tip_angle"), "centre_against_test", taken)


def _apart(one: Value, other: Value) -> bool:
    """True where two ranges, each widened a little, have nothing in common."""
    low = max(one.low or 0.0, other.low or 0.0)
    high = min(end if end is not None else inf for end in (one.high, other.high))
    return low > high * (1.0 + _NEAR)
