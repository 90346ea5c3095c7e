"""Which facts a family looks at."""

from intake.sizing.all_families import ALL
from intake.sizing.resolve import CHOICES


def fields_read(family: str) -> frozenset[str]:
    """Every field that a check of the family may read, directly or through the layout."""
    found: set[str] = {"rise.turn", "handling.turn_flat"}
    whole = ALL[family]
    names: set[str] = {name for row in whole.all_rows for name in row.reads}
    names |= {name for gate in whole.gates for name in gate.reads}
    names |= {name for variant in whole.variants for gate in variant.gates for name in gate.reads}
    names |= {"hours", "direction", "L", "W", "H", "m", "R", "rise"}
    for name in names:
        found |= fields_behind(name)
    return frozenset(found)


def fields_behind(name: str) -> frozenset[str]:
    """The fields that a figure or word of the job comes from."""
    if name in CHOICES:
        field = CHOICES[name][0]
        return frozenset({field, *_TELL_THE_WORD.get(field, ())})
    return _FIELDS.get(name, frozenset())


_TELL_THE_WORD = {
    "temperature.zone": ("temperature.room",),
    "cleaning.method": ("cleaning.pressure",),
    "rise.direction": ("rise.infeed_height", "rise.discharge_height"),
}
"""Facts that a word is derived from."""


_FIELDS: dict[str, frozenset[str]] = {
    "L": frozenset({"product.length", "product.diameter"}),
    "W": frozenset({"product.width", "product.diameter"}),
    "H": frozenset({"product.height"}),
    "m": frozenset({"product.weight"}),
    "b": frozenset({"product.base"}),
    "bw": frozenset({"product.base_width"}),
    "rnd": frozenset({"product.type", "product.diameter"}),
    "h": frozenset({"product.centre_height", "test.tip_angle"}),
    "hx": frozenset({"product.centre_height", "test.tip_angle"}),
    "mu": frozenset({"product.surface", "product.wet", "test.slip_angle"}),
    "mu_high": frozenset({"product.surface", "product.wet", "test.slip_angle"}),
    "mu_grip": frozenset({"product.surface", "product.wet", "test.grip_slip"}),
    "R": frozenset({"rate.normal", "rate.peak", "rate.pieces", "product.pieces"}),
    "rise": frozenset({"rise.height", "rise.infeed_height", "rise.discharge_height", "rise.direction"}),
    "ztop": frozenset({"rise.infeed_height", "rise.discharge_height", "rise.height", "rise.direction"}),
    "lx": frozenset({"space.length"}),
    "ly": frozenset({"space.width"}),
    "ceil": frozenset({"space.ceiling"}),
    "ow": frozenset({"space.opening_width"}),
    "oh": frozenset({"space.opening_height"}),
    "troom": frozenset({"temperature.room", "temperature.zone"}),
    "tprod": frozenset({"temperature.product"}),
    "pwash": frozenset({"cleaning.pressure"}),
    "tilt": frozenset({"handling.tilt", "product.closed", "product.fill", "handling.invert"}),
    "pair": frozenset({"site.air_pressure"}),
    "hours": frozenset({"site.hours"}),
    "weeks": frozenset({"project.weeks"}),
    "stainless": frozenset({"cleaning.frame"}),
    "levels": frozenset({"rise.levels"}),
    "tried": frozenset({"test.transfers"}),
    "squeeze_limit": frozenset({"handling.squeeze_limit", "test.squeeze_mark"}),
}
