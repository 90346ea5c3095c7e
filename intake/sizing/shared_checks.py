"""Checks that every family has: weight, rise, temperature, washing, hazard, floor, ceiling, doors, delivery."""

from math import degrees

from intake.sizing.check_row import Gate, Row
from intake.sizing.job import Num
from intake.sizing.range_data import Limits

CP = "common practice, no source"


def hazard() -> Gate:
    """No family of the range is built for a classified area."""
    return Gate(
        id="hazard",
        reads=("hazard",),
        accept=lambda hazard: hazard is False,
        limit="not a classified area",
        source="EN 619:2022, 1.3 leaves explosive atmospheres to a risk assessment of their own; NFPA 70, Article 500",
    )


def not_freezer(allowed: tuple[str, ...] = ("chilled", "ambient", "hot")) -> Gate:
    """Freezer rooms are referred out."""
    return Gate(
        id="temperature_zone",
        reads=("zone",),
        accept=lambda zone: zone in allowed,
        limit=" or ".join(allowed),
        source=CP,
    )


def washing(allowed: tuple[str, ...]) -> Gate:
    """The cleaning that the build bears."""
    return Gate(
        id="washing",
        reads=("method",),
        accept=lambda method: method in allowed,
        limit=" or ".join(allowed),
        source="range data",
    )


def no_castors() -> Gate:
    """What stands on castors rolls down a slope."""
    return Gate(
        id="underside", reads=("underside",), accept=lambda under: under != "castors", limit="no castors", source=CP
    )  # fmt: skip


def kinds(allowed: tuple[str, ...], id: str = "product_kind") -> Gate:
    """The kinds of product that the family carries."""
    return Gate(id=id, reads=("type",), accept=lambda kind: kind in allowed, limit=" or ".join(allowed), source=CP)


def before_layout(*, least_rise_reads: tuple[str, ...] = ("rise",)) -> tuple[Row, ...]:
    """The checks that need no layout, the cheap ones first."""
    return (
        Row(
            id="rise", limit="least_rise",
            sense="at_least", unit="m", body=lambda hi, lo, d: (lo.rise, d.least_rise), formula="rise",
            reads=least_rise_reads, low=frozenset({"rise"}), source=CP,
        ),
        Row(
            id="rise_most", limit="rise_most",
            sense="at_most", unit="m", body=lambda hi, lo, d: (hi.rise, d.rise_most), formula="rise",
            reads=("rise",), source="range data",
        ),
        Row(
            id="weight", limit="weight_most",
            sense="at_most", unit="kg", body=lambda hi, lo, d: (hi.m, d.weight_most), formula="m",
            reads=("m",), source="range data", each_size=True,
        ),
        Row(
            id="weight_least", limit="weight_least",
            sense="at_least", unit="kg", body=lambda hi, lo, d: (lo.m, d.weight_least), formula="m",
            reads=("m",), low=frozenset({"m"}), source="range data", each_size=True,
        ),
        Row(
            id="temperature", limit="room_coldest",
            sense="at_least", unit="K", body=lambda hi, lo, d: (lo.troom, d.room_coldest),
            formula="troom", reads=("troom", "zone"), low=frozenset({"troom"}), source="range data",
        ),
        Row(
            id="temperature_warmest", limit="room_warmest",
            sense="at_most", unit="K", body=lambda hi, lo, d: (hi.troom, d.room_warmest),
            formula="troom", reads=("troom", "zone"), source="range data",
        ),
        Row(
            id="temperature_product", limit="product_warmest",
            sense="at_most", unit="K", body=lambda hi, lo, d: (hi.tprod, d.product_warmest),
            formula="tprod", reads=("tprod",), source="range data",
        ),
        Row(
            id="levels", limit="levels_most",
            sense="at_most", unit="1", body=lambda hi, lo, d: (hi.levels, d.levels_most),
            formula="levels", reads=("levels",), source="range data",
        ),
        Row(
            id="lead_time", sense="at_least", unit="week", body=_lead_time,
            formula="weeks", reads=("weeks", "stainless"), low=frozenset({"weeks"}), source="range data", warns=True,
        ),
    )  # fmt: skip


def _lead_time(hi: Num, lo: Num, d: Limits) -> tuple[float, float]:
    late = d.very_tall_weeks if hi.rise > d.tall_above else 0.0
    return lo.weeks, d.weeks_typical + late + hi.stainless * d.stainless_weeks


def room_rows(*, layout_reads: tuple[str, ...]) -> tuple[Row, ...]:
    """Floor, ceiling, what passes underneath, doors and the road. `fill` sets fl, fw, top, under and the pieces."""
    return (
        Row(
            id="room_length", limit="lx",
            sense="at_most", unit="m", body=lambda hi, lo, d: (hi.fl, lo.lx), formula="fl",
            reads=("lx", *layout_reads), source="geometry of the layout", is_room=True,
        ),
        Row(
            id="room_width", limit="ly",
            sense="at_most", unit="m", body=lambda hi, lo, d: (hi.fw, lo.ly), formula="fw",
            reads=("ly", *layout_reads), source="geometry of the layout", is_room=True,
        ),
        Row(
            id="ceiling", limit="ceil",
            sense="at_most", unit="m", body=lambda hi, lo, d: (hi.top, lo.ceil), formula="top",
            reads=("ceil", "ztop", "H"), source="geometry of the layout", is_room=True, each_size=True,
        ),
        Row(
            id="passage", limit="need",
            sense="at_least", unit="m", body=lambda hi, lo, d: (lo.under, hi.need), formula="under",
            reads=("ztop", "passage"), low=frozenset({"under"}),
            source="ISO 14122-2:2016 for people (from memory); " + CP,
            is_room=True,
        ),
        Row(
            id="doorway_split", limit="1",
            sense="at_most", unit="1", body=_split_through_door,
            formula="max(sw/min(ow, oh), sh/max(ow, oh))", reads=("ow", "oh"), low=frozenset({"ow", "oh"}),
            constants={"sw": "split_piece_width", "sh": "split_piece_height"}, source="range data", is_room=True,
        ),
        Row(
            id="doorway", limit="1",
            sense="at_most", unit="1", body=_whole_through_door,
            formula="max(piece_a/min(ow, oh), piece_b/max(ow, oh))", reads=("ow", "oh", *layout_reads),
            low=frozenset({"ow", "oh"}), source="geometry of the layout", warns=True, is_room=True,
        ),
        Row(
            id="ship", limit="trailer_width",
            sense="at_most", unit="m", body=lambda hi, lo, d: (hi.piece_a, d.trailer_width),
            formula="piece_a", reads=layout_reads, source="23 CFR 658.15: 102 in", warns=True,
        ),
    )  # fmt: skip


def _split_through_door(hi: Num, lo: Num, d: Limits) -> tuple[float, float]:
    wide, high = min(lo.ow, lo.oh), max(lo.ow, lo.oh)
    return max(d.split_piece_width / wide, d.split_piece_height / high), 1.0


def _whole_through_door(hi: Num, lo: Num, d: Limits) -> tuple[float, float]:
    return max(hi.piece_a / min(lo.ow, lo.oh), hi.piece_b / max(lo.ow, lo.oh)), 1.0


def transfer_rows() -> tuple[Row, Row]:
    """Small products catch where one machine hands over to the next: by size, or by what samples showed."""
    return (
        Row(
            id="transfer", limit="min(3*roller_pitch, 2*dead_plate_gap)", sense="at_least", unit="m",
            body=lambda hi, lo, d: (lo.b, min(3.0 * d.roller_pitch, 2.0 * d.dead_plate_gap)), formula="b",
            reads=("b",), low=frozenset({"b"}),
            source="common practice, no source: three rollers under it, or half of it over the gap", each_size=True,
            warns=True, applies=lambda hi: hi.tried == 0.0,
        ),
        Row(
            id="transfer", limit="1", sense="at_least", unit="1", body=lambda hi, lo, d: (hi.tried, 1.0),
            formula="tried", reads=("tried",), source="tried on samples", warns=True,
            applies=lambda hi: hi.tried != 0.0,
        ),
    )  # fmt: skip


def tilt_row() -> Row:
    """How far the product leaves level, in degrees."""
    return Row(
        id="tilt", limit="tilt*180/pi",
        sense="at_most", unit="deg", body=lambda hi, lo, d: (degrees(hi.tilt_used), degrees(lo.tilt)),
        formula="tilt_used*180/pi", reads=("tilt", "closed"), source=CP,
    )  # fmt: skip


def set_envelope(
    hi: Num, lo: Num, d: Limits, floor_length: tuple[float, float], floor_width: tuple[float, float]
) -> None:
    """Write floor, heights and the smallest two sizes of the whole machine into the figures of one size."""
    corners = ((hi, 0), (lo, 1)) if lo is not hi else ((hi, 0),)
    for num, end in corners:
        num.fl, num.fw = floor_length[end], floor_width[end]
        num.top, num.under = num.ztop + num.H + d.overhead, num.ztop - d.structure_below
        num.piece_a, num.piece_b, _ = sorted((num.fl, num.fw, num.top))
