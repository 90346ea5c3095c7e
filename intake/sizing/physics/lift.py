"""Lifts with carriers or a platform: speeds and cycle times."""

from math import inf

from intake.sizing.physics.motion import trapezoid_time


def carrier_speed(rate_per_s: float, pitch: float) -> float:
    """Chain speed of a lift that never stops, one product to a carrier.

        v = rate pitch

    Args:
        rate_per_s: products per second [1/s], 0 or more.
        pitch: from carrier to carrier [m], more than 0.

    Returns: speed [m/s].
    Valid for: every carrier used.
    Source: definition.

    >>> carrier_speed(0.5, 0.8)
    0.4
    """
    if not 0.0 <= rate_per_s < inf:
        raise ValueError(f"rate_per_s must be 0 or more, got {rate_per_s!r}")
    if not 0.0 < pitch < inf:
        raise ValueError(f"pitch must be more than 0 m, got {pitch!r}")
    return rate_per_s * pitch


def feed_speed_needed(length: float, carrier_speed: float, window: float) -> float:
    """Speed with which a product must run onto a carrier that does not stop.

        v_feed = length carrier_speed / window

    Args:
        length: product length along the feed [m], more than 0.
        carrier_speed: of the chain [m/s], 0 or more.
        window: height over which the way is open: pitch less product height and clearances [m].

    Returns: speed [m/s]; inf where the window is 0 or below, as no feed is fast enough then.
    Valid for: a feed at steady speed, square to the chain.
    Source: equal times, window / v = length / v_feed.

    >>> round(feed_speed_needed(0.4, 0.3, window=0.2), 3)
    0.6
    """
    if not 0.0 < length < inf:
        raise ValueError(f"length must be more than 0 m, got {length!r}")
    if not 0.0 <= carrier_speed < inf:
        raise ValueError(f"carrier_speed must be 0 or more m/s, got {carrier_speed!r}")
    if not -inf < window < inf:
        raise ValueError(f"window must be a finite number of m, got {window!r}")
    return length * carrier_speed / window if window > 0.0 else inf


def reciprocating_cycle(travel: float, speed: float, accel: float, load_s: float, unload_s: float) -> float:
    """Time from load to load of a platform that goes up full and comes back empty.

        2 trapezoid(travel) + load + unload

    Args:
        travel: of the platform [m], 0 or more.
        speed: greatest speed [m/s], more than 0.
        accel: rate of speeding up and of slowing down [m/s2], more than 0.
        load_s: for loading [s], 0 or more.
        unload_s: for unloading [s], 0 or more.

    Returns: time [s].
    Valid for: the same speed both ways.
    Source: `trapezoid_time`, twice.

    >>> reciprocating_cycle(4.0, 1.0, 0.5, load_s=3.0, unload_s=3.0)
    18.0
    """
    if not 0.0 <= load_s < inf:
        raise ValueError(f"load_s must be 0 or more s, got {load_s!r}")
    if not 0.0 <= unload_s < inf:
        raise ValueError(f"unload_s must be 0 or more s, got {unload_s!r}")
    return 2.0 * trapezoid_time(travel, speed, accel, accel) + load_s + unload_s


def index_cycle(pitch: float, speed: float, accel: float, dwell_s: float) -> float:
    """Time from stop to stop of a chain that moves on by one pitch and waits.

        trapezoid(pitch) + dwell

    Args:
        pitch: from carrier to carrier [m], 0 or more.
        speed: greatest speed [m/s], more than 0.
        accel: rate of speeding up and of slowing down [m/s2], more than 0.
        dwell_s: standing still, for the longer of loading and pushing off [s], 0 or more.

    Returns: time [s]; the rate is its inverse.
    Valid for: one product a cycle.
    Source: `trapezoid_time`.

    >>> index_cycle(0.5, 1.0, 2.0, dwell_s=1.5)
    2.5
    """
    if not 0.0 <= dwell_s < inf:
        raise ValueError(f"dwell_s must be 0 or more s, got {dwell_s!r}")
    return trapezoid_time(pitch, speed, accel, accel) + dwell_s
