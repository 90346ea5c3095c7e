"""Power: what a drive gives or holds back, and the next standard motor."""

from collections.abc import Sequence
from math import inf

from intake.sizing.physics.friction import STANDARD_GRAVITY

WATTS_PER_HP = 745.69987  # 550 ft lbf/s (NIST SP 811, table B.9, prints 745.6999)

# Preferred outputs of IEC 60072-1, kept in watts. From memory; 0.37 to 55 kW also read in an open list.
IEC_KW: tuple[float, ...] = (
    *(60.0, 90.0, 120.0, 180.0, 250.0, 370.0, 550.0, 750.0),
    *(1100.0, 1500.0, 2200.0, 3000.0, 4000.0, 5500.0, 7500.0),
    *(11000.0, 15000.0, 18500.0, 22000.0, 30000.0, 37000.0, 45000.0, 55000.0, 75000.0),
)

# Motor horsepower of US 10 CFR 431.446(a) below 1 hp and of 431.25(a) from 1 hp up, kept in watts.
NEMA_HP: tuple[float, ...] = tuple(
    hp * WATTS_PER_HP
    for hp in (
        *(1 / 4, 1 / 3, 1 / 2, 3 / 4, 1.0, 1.5, 2.0, 3.0, 5.0, 7.5, 10.0, 15.0, 20.0),
        *(25.0, 30.0, 40.0, 50.0, 60.0, 75.0, 100.0, 125.0, 150.0, 200.0),
    )
)

_ROUNDING = 1.0 - 1e-9  # a need of exactly one rating, come out a bit above it by rounding, takes that rating


def shaft_power(tight: float, slack: float, speed: float) -> float:
    """Power at the drive shaft of a belt.

        P = (tight - slack) speed

    Args:
        tight: tension where the belt runs onto the drive [N], inf allowed.
        slack: tension where it leaves the drive [N], finite.
        speed: of the belt [m/s], 0 or more.

    Returns: power [W]; negative when the load drives the machine.
    Valid for: steady running; bearing and gear losses are in the efficiency, see `motor_power_needed`.
    Source: McLean, Schaum's Engineering Mechanics, Problem 17.11 (belt power from two tensions).

    >>> shaft_power(800.0, 180.0, 2.0)
    1240.0
    """
    if not -inf < tight <= inf:
        raise ValueError(f"tight must be a number of N, got {tight!r}")
    if not -inf < slack < inf:
        raise ValueError(f"slack must be a finite number of N, got {slack!r}")
    if not 0.0 <= speed < inf:
        raise ValueError(f"speed must be 0 or more m/s, got {speed!r}")
    return (tight - slack) * speed if speed else 0.0


def motor_power_needed(shaft: float, efficiency: float) -> float:
    """Power that the motor must give or, braking, take up.

        shaft / efficiency when driving,  |shaft| efficiency when the load drives

    Args:
        shaft: power at the drive shaft [W], any sign, inf allowed.
        efficiency: of the gearing between motor and shaft [-], more than 0, at most 1.

    Returns: power at the motor [W], 0 or more. A driven load (shaft below 0) needs a brake besides.
    Valid for: the same efficiency both ways. A worm gear of poor efficiency may lock instead.
    Source: OpenStax, University Physics vol. 1, sec. 7.4 (power with efficiency); braking: losses help.

    >>> motor_power_needed(900.0, 0.9), motor_power_needed(-900.0, 0.9)
    (1000.0, 810.0)
    """
    if not -inf <= shaft <= inf:
        raise ValueError(f"shaft must be a number of W, got {shaft!r}")
    if not 0.0 < efficiency <= 1.0:
        raise ValueError(f"efficiency must be more than 0 and at most 1, got {efficiency!r}")
    return shaft / efficiency if shaft >= 0.0 else -shaft * efficiency


def lift_power(mass_flow_kg_s: float, rise: float) -> float:
    """Power that raising a flow of goods takes, friction apart.

        P = mass_flow g rise

    Args:
        mass_flow_kg_s: goods per second [kg/s], 0 or more.
        rise: height gained [m], below 0 when lowering.

    Returns: power [W].
    Valid for: any lift: the least that its drive must give.
    Source: OpenStax, University Physics vol. 1, sec. 7.4.

    >>> round(lift_power(2.0, 5.0), 2)
    98.07
    """
    if not 0.0 <= mass_flow_kg_s < inf:
        raise ValueError(f"mass_flow_kg_s must be 0 or more kg/s, got {mass_flow_kg_s!r}")
    if not -inf < rise < inf:
        raise ValueError(f"rise must be a finite number of m, got {rise!r}")
    return mass_flow_kg_s * STANDARD_GRAVITY * rise


def next_motor(needed_w: float, series: Sequence[float]) -> float | None:
    """The smallest rating of a series that gives the power.

    Args:
        needed_w: power at the motor [W], 0 or more, inf allowed.
        series: ratings, ascending [W], such as IEC_KW or NEMA_HP.

    Returns: rating [W], at or above the need; None past the end of the series.
    Valid for: steady duty; it never rounds down.
    Source: IEC 60072-1 (preferred outputs), US 10 CFR 431.25(a).

    >>> next_motor(560.0, IEC_KW)
    750.0
    >>> next_motor(80000.0, IEC_KW) is None
    True
    """
    if not 0.0 <= needed_w <= inf:
        raise ValueError(f"needed_w must be 0 or more W, got {needed_w!r}")
    least = needed_w * _ROUNDING
    for rating in series:
        if rating >= least:
            return rating
    return None
