"""Which units people are shown for each canonical unit, in US and SI, with factors."""

from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

System = Literal["us", "si"]


@dataclass(frozen=True, slots=True)
class Shown:
    """One way to show a canonical unit: figure = value * factor + offset, written as figure + mark.

    `least`: used when the size of the figure, in this unit, is at least that. `decimals`: written to that many where
    the figure is no round one; None: three significant digits.
    """

    mark: str
    factor: float = 1.0
    offset: float = 0.0
    least: float = 0.0
    decimals: int | None = None


LB = 0.45359237  # kg, exact by the international yard and pound agreement of 1959
INCH = 0.0254  # m, exact, the same agreement
FOOT = 12 * INCH
LBF = LB * 9.80665  # N
PSI = LBF / INCH**2  # Pa
HP = 550 * FOOT * LBF  # W, mechanical
DEG = 57.29577951308232  # degrees in a radian

# Each row: the units to try in order; the first whose `least` is reached is taken, the last takes what is left.
# scfm: cubic feet of free air at 1 bar absolute and 20 degC, the reference of ISO 1217 (from memory).
_BOTH: dict[str, tuple[Shown, ...]] = {
    "1/min": (Shown("/min", least=1.0), Shown("/h", 60.0)),
    "1/s": (Shown("/min", 60.0, least=1.0), Shown("/h", 3600.0)),
    "deg": (Shown("°", decimals=1),),
    "rad": (Shown("°", DEG, decimals=1),),
    "week": (Shown(" weeks", decimals=1),),
    "V": (Shown(" V"),),
    "Hz": (Shown(" Hz"),),
    "h/day": (Shown(" h/day"),),
    "s": (Shown(" s"),),
    "1": (Shown(""),),
    "": (Shown(""),),
}
_SI: dict[str, tuple[Shown, ...]] = {
    "kg": (Shown(" kg", least=1.0), Shown(" g", 1000.0)),
    "kg/m": (Shown(" kg/m"),),
    "kg/min": (Shown(" kg/min"),),
    "kg/m3": (Shown(" kg/m³"),),
    "m2": (Shown(" m²"),),
    "m3/min": (Shown(" m³/min", least=1.0), Shown(" L/min", 1000.0)),
    "m/s": (Shown(" m/s"),),
    "m/s2": (Shown(" m/s²"),),
    "N": (Shown(" kN", 1e-3, least=10.0), Shown(" N")),
    "N/m": (Shown(" N/m"),),
    "Pa": (Shown(" bar", 1e-5, least=0.1), Shown(" kPa", 1e-3)),
    "W": (Shown(" kW", 1e-3, least=1.0), Shown(" W")),
    "degC": (Shown(" °C", decimals=1),),
    "K": (Shown(" °C", 1.0, -273.15, decimals=1),),
}
_US: dict[str, tuple[Shown, ...]] = {
    "kg": (Shown(" lb", 1 / LB, least=1.0), Shown(" oz", 16 / LB)),
    "kg/m": (Shown(" lb/ft", FOOT / LB),),
    "kg/min": (Shown(" lb/min", 1 / LB),),
    "kg/m3": (Shown(" lb/ft³", FOOT**3 / LB),),
    "m2": (Shown(" sq ft", 1 / FOOT**2),),
    "m3/min": (Shown(" scfm", 1 / FOOT**3),),
    "m/s": (Shown(" ft/min", 60 / FOOT),),
    "m/s2": (Shown(" ft/s²", 1 / FOOT),),
    "N": (Shown(" lbf", 1 / LBF),),
    "N/m": (Shown(" lbf/ft", FOOT / LBF),),
    "Pa": (Shown(" psi", 1 / PSI),),
    "W": (Shown(" hp", 1 / HP),),
    "degC": (Shown(" °F", 1.8, 32.0, decimals=1),),
    "K": (Shown(" °F", 1.8, 32.0 - 1.8 * 273.15, decimals=1),),
}

TABLE = MappingProxyType({"us": MappingProxyType(_BOTH | _US), "si": MappingProxyType(_BOTH | _SI)})
"""Shown units by system and canonical unit. Metres are not in it: feet, inches and fractions have their own rules."""


def shown_unit(value: float, unit: str, system: System) -> Shown:
    """The unit in which a figure of this size is shown. A unit that is not in the table is shown as it stands."""
    rows = TABLE[system].get(unit, (Shown(f" {unit}"),))
    if value == 0.0:
        return rows[0]
    return next((row for row in rows if abs(value * row.factor + row.offset) >= row.least - 1e-9), rows[-1])
