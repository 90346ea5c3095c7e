"""Air cylinders: thrust, bore, and the free air that they use."""

from collections.abc import Mapping
from math import inf, pi, sqrt
from types import MappingProxyType

STANDARD_ATMOSPHERE = 101325.0  # Pa, what a gauge at sea level reads from (NIST SP 811)
REFERENCE_PRESSURE = 1.0e5  # Pa absolute, reference of free air (ISO 8778; pressure and temperature from memory)
REFERENCE_TEMPERATURE = 293.15  # K, 20 degC, the same reference

# Bore and rod [m] of ISO 15552 cylinders. The range 32 to 320 mm was read in the abstract of ISO 15552:2018;
# the bores between and the rods are from memory.
ISO_15552_RODS: Mapping[float, float] = MappingProxyType(
    {
        0.032: 0.012,
        0.040: 0.016,
        0.050: 0.020,
        0.063: 0.020,
        0.080: 0.025,
        0.100: 0.025,
        0.125: 0.032,
        0.160: 0.040,
        0.200: 0.040,
        0.250: 0.050,
        0.320: 0.063,
    }
)
ISO_15552_BORES: tuple[float, ...] = tuple(ISO_15552_RODS)

_ROUNDING = 1.0 - 1e-9  # a need of exactly one bore, come out a bit above it by rounding, takes that bore


def thrust(bore: float, pressure_gauge: float, rod: float = 0.0) -> float:
    """Force of an air cylinder.

        F = pressure_gauge (pi/4) (bore^2 - rod^2)

    Args:
        bore: of the cylinder [m], more than 0.
        pressure_gauge: of the air over the atmosphere [Pa], 0 or more.
        rod: of the side under pressure [m], 0 for the outward stroke, less than bore.

    Returns: force [N], at rest and without friction of the seals.
    Valid for: full pressure on one side, open air on the other.
    Source: OpenStax, College Physics 2e, sec. 11.3 (force = pressure x area).

    >>> round(thrust(0.063, 6e5), 0)
    1870.0
    >>> round(thrust(0.063, 6e5, rod=0.02), 0)
    1682.0
    """
    if not 0.0 < bore < inf:
        raise ValueError(f"bore must be more than 0 m, got {bore!r}")
    if not 0.0 <= pressure_gauge < inf:
        raise ValueError(f"pressure_gauge must be 0 or more Pa, got {pressure_gauge!r}")
    if not 0.0 <= rod < bore:
        raise ValueError(f"rod must be 0 or more and below the bore, got {rod!r}")
    return pressure_gauge * pi / 4.0 * (bore * bore - rod * rod)


def bore_needed(force: float, pressure_gauge: float) -> float:
    """Bore that gives a force on the outward stroke.

        bore = sqrt(4 force / (pi pressure_gauge))

    Args:
        force: [N], 0 or more.
        pressure_gauge: of the air over the atmosphere [Pa], more than 0.

    Returns: bore [m].
    Valid for: as `thrust`; put the share of thrust that may be used into the force.
    Source: inverse of `thrust`; used as in Wentzell, Machine Design, Ex. 10.1.

    >>> round(bore_needed(1000.0, 6e5), 4)
    0.0461
    """
    if not 0.0 <= force < inf:
        raise ValueError(f"force must be 0 or more N, got {force!r}")
    if not 0.0 < pressure_gauge < inf:
        raise ValueError(f"pressure_gauge must be more than 0 Pa, got {pressure_gauge!r}")
    return sqrt(4.0 * force / (pi * pressure_gauge))


def next_bore(needed: float) -> float | None:
    """The smallest standard bore at or above the one needed.

    Args:
        needed: bore [m], 0 or more, inf allowed.

    Returns: bore [m], a key of ISO_15552_RODS; None past the largest.
    Valid for: cylinders of the 10 bar series.
    Source: ISO 15552 (range read, list from memory).

    >>> next_bore(0.0461)
    0.05
    >>> next_bore(0.33) is None
    True
    """
    if not 0.0 <= needed <= inf:
        raise ValueError(f"needed must be 0 or more m, got {needed!r}")
    least = needed * _ROUNDING
    for bore in ISO_15552_BORES:
        if bore >= least:
            return bore
    return None


def free_air_per_cycle(
    bore: float, rod: float, stroke: float, pressure_gauge: float, temperature_k: float = REFERENCE_TEMPERATURE
) -> float:
    """Free air that one stroke out and one back use.

        V = (pi/4) (2 bore^2 - rod^2) stroke (pressure_gauge + p_atm) / p_ref (T_ref / temperature)

    Args:
        bore: of the cylinder [m], more than 0.
        rod: [m], 0 or more, less than bore.
        stroke: [m], more than 0.
        pressure_gauge: of the air over the atmosphere [Pa], 0 or more.
        temperature_k: of the air in the cylinder [K], more than 0.

    Returns: volume [m3] referred to 1 bar absolute and 20 degC.
    Valid for: both sides filled to full pressure in turn; dead volume and hoses are not in it.
    Source: gas law p V / T, as in Esposito, Fluid Power with Applications, Ex. 13-12; reference of ISO 8778.

    >>> round(free_air_per_cycle(0.05, 0.02, 0.4, 6e5) * 1000, 2)
    10.14
    """
    if not 0.0 < bore < inf:
        raise ValueError(f"bore must be more than 0 m, got {bore!r}")
    if not 0.0 <= rod < bore:
        raise ValueError(f"rod must be 0 or more and below the bore, got {rod!r}")
    if not 0.0 < stroke < inf:
        raise ValueError(f"stroke must be more than 0 m, got {stroke!r}")
    if not 0.0 <= pressure_gauge < inf:
        raise ValueError(f"pressure_gauge must be 0 or more Pa, got {pressure_gauge!r}")
    if not 0.0 < temperature_k < inf:
        raise ValueError(f"temperature_k must be more than 0 K, got {temperature_k!r}")
    filled = pi / 4.0 * (2.0 * bore * bore - rod * rod) * stroke
    ratio = (pressure_gauge + STANDARD_ATMOSPHERE) / REFERENCE_PRESSURE
    return filled * ratio * REFERENCE_TEMPERATURE / temperature_k
