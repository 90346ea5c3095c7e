"""Side grip: a product carried between two belts by friction on its sides."""

from math import inf

from intake.sizing.physics.friction import STANDARD_GRAVITY


def grip_needed(mass: float, mu: float, safety: float, accel: float = 0.0, bend_accel: float = 0.0) -> float:
    """Force with which each side must be pressed.

        N = safety mass (g + accel + bend_accel) / (2 mu)

    Args:
        mass: of one product [kg], more than 0.
        mu: friction coefficient between grip and product side [-], more than 0.
        safety: factor on the load [-], 1 or more.
        accel: start or stop acceleration along the lift [m/s2], 0 or more.
        bend_accel: v^2/R in a bend of the path, see `bend_accel` [m/s2], 0 or more.

    Returns: force on each of the two sides [N].
    Valid for: two equal grips on rigid or firm sides; the three accelerations taken as if they pointed one way,
        which is the worst that a bend can do.
    Source: two-sided squeeze, N = W/(2 mu): Cutnell and Johnson, Physics, 10th ed., Ch. 4, Problem 99; load
        m (g + a): OpenStax, University Physics vol. 1, Ex. 6.3.

    >>> round(grip_needed(2.0, 0.5, 2.0, accel=0.2), 3)
    40.027
    """
    if not 0.0 < mass < inf:
        raise ValueError(f"mass must be more than 0 kg, got {mass!r}")
    if not 0.0 < mu < inf:
        raise ValueError(f"mu must be more than 0, got {mu!r}")
    if not 1.0 <= safety < inf:
        raise ValueError(f"safety must be 1 or more, got {safety!r}")
    if not 0.0 <= accel < inf:
        raise ValueError(f"accel must be 0 or more m/s2, got {accel!r}")
    if not 0.0 <= bend_accel < inf:
        raise ValueError(f"bend_accel must be 0 or more m/s2, got {bend_accel!r}")
    return safety * mass * (STANDARD_GRAVITY + accel + bend_accel) / (2.0 * mu)


def bend_accel(speed: float, radius: float) -> float:
    """Acceleration in a bend of the gripping path.

        a = speed^2 / radius

    Args:
        speed: along the path [m/s], 0 or more.
        radius: of the bend at the product's centre of gravity [m], more than 0.

    Returns: acceleration towards the centre of the bend [m/s2].
    Valid for: steady speed.
    Source: OpenStax, University Physics vol. 1, sec. 6.3.

    >>> bend_accel(0.5, 0.5)
    0.5
    """
    if not 0.0 <= speed < inf:
        raise ValueError(f"speed must be 0 or more m/s, got {speed!r}")
    if not 0.0 < radius < inf:
        raise ValueError(f"radius must be more than 0 m, got {radius!r}")
    return speed * speed / radius
