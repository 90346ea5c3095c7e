"""The inputs of a check's formulas: each symbol with its value at the design point, its unit and its origin."""

from math import isfinite

from intake.sizing.check_row import Row
from intake.sizing.job import Job, Num
from intake.sizing.layout_symbols import origins
from intake.sizing.physics.friction import STANDARD_GRAVITY
from intake.sizing.range_data import Limits
from intake.sizing.result import Plain, Use

_JOB_UNITS = {
    "L": "m", "W": "m", "H": "m", "m": "kg", "b": "m", "bw": "m", "h": "m", "hx": "m", "rnd": "1", "mu": "1",
    "mu_high": "1",
    "mu_grip": "1", "R": "1/s", "rise": "m", "zlow": "m", "ztop": "m", "lx": "m", "ly": "m", "ceil": "m", "ow": "m",
    "oh": "m", "troom": "K", "tprod": "K", "tilt": "rad", "pair": "Pa", "weeks": "week", "squeeze_limit": "N",
    "v": "m/s",
    "p": "m", "fl": "m", "fw": "m", "top": "m", "under": "m", "piece_a": "m", "piece_b": "m", "tilt_used": "rad",
    "s": "m",
    "r": "m", "open_most": "m", "open_least": "m", "cp": "m", "shaft": "W", "need": "m",
    "rated": "N", "derate": "1", "cycle": "s", "N_need": "N", "cleat": "m", "Wb": "m",
}  # fmt: skip


def value_uses(job: Job, row: Row, hi: Num, lo: Num, d: Limits, index: int) -> dict[str, Use]:
    """What the formula of the value is made of."""
    uses: dict[str, Use] = {}
    for symbol in row.symbols:
        if symbol == "g":
            uses[symbol] = Use(value=STANDARD_GRAVITY, unit="m/s2", origin="standard gravity, NIST SP 811")
        elif symbol in row.constants:
            uses[symbol] = _limit_use(d, row.constants[symbol])
        else:
            uses[symbol] = _figure_use(job, row, lo if symbol in row.low else hi, symbol, d, index)
    return uses


def limit_uses(job: Job, row: Row, hi: Num, lo: Num, d: Limits, index: int) -> dict[str, Use]:
    """What the formula of the limit is made of."""
    uses: dict[str, Use] = {}
    for symbol in row.limit_symbols:
        if symbol in d.keys and symbol not in job.sizes[index]:
            uses[symbol] = _limit_use(d, symbol)
        else:
            worse = symbol in row.limit_high or row.sense == "at_least"
            uses[symbol] = _figure_use(job, row, hi if worse else lo, symbol, d, index)
    return uses


def _limit_use(d: Limits, key: str) -> Use:
    return Use(value=float(d[key]), unit=d.units[key], origin=d.origin(key))


def _figure_use(job: Job, row: Row, num: Num, symbol: str, d: Limits, index: int) -> Use:
    """A figure of the job, or one that the layout gives."""
    var = job.sizes[index].get(symbol)
    origin = var.origin if var is not None else origins(d.family).get(symbol, "layout")
    unit = row.units.get(symbol) or _JOB_UNITS.get(symbol, "1")
    unknown = var is not None and var.missing
    return Use(value=None if unknown else plain(getattr(num, symbol)), unit=unit, origin=origin)


def plain(value: float) -> Plain:
    """A figure as it is told: None where it is not a number, or without end."""
    return value if isfinite(value) else None
