"""Whole jobs and variations of them, for tests of asking: from whole_jobs.toml, or from a file of one's own.

CASES_FILE in the environment names JSON lines of {"id", "spec"}.
"""

import json
import os
import tomllib
from math import exp
from pathlib import Path
from random import Random
from typing import Any

FlatSpec = dict[str, Any]

_SIZES = ("product.length", "product.width", "product.height", "product.diameter")


def whole_jobs() -> dict[str, FlatSpec]:
    """Each job by its name."""
    path = os.environ.get("CASES_FILE")
    if path:
        rows = [json.loads(line) for line in Path(path).read_text(encoding="utf-8").splitlines() if line.strip()]
        return {row["id"]: row["spec"] for row in rows}
    return tomllib.loads(Path(__file__).with_name("whole_jobs.toml").read_text(encoding="utf-8"))


def varied(job: FlatSpec, rng: Random) -> FlatSpec:
    """The job with other figures of the same kind: size, weight, rate, rise, room."""
    new, size, rate = dict(job), exp(rng.gauss(0.0, 0.12)), exp(rng.gauss(0.0, 0.3))
    for name in _SIZES:
        if name in new:
            new[name] *= size
    new["product.weight"] *= size**3 * exp(rng.gauss(0.0, 0.15))
    for name in ("rate.normal", "rate.peak"):
        new[name] *= rate
    low, high = sorted((new["rise.infeed_height"], new["rise.discharge_height"]))
    top = low + (high - low) * exp(rng.gauss(0.0, 0.2))
    new["rise.discharge_height" if new["rise.discharge_height"] == high else "rise.infeed_height"] = top
    new["space.ceiling"] = max(new["space.ceiling"] + top - high, top + new["product.height"] + 0.1)
    for name in ("space.length", "space.width"):
        new[name] *= exp(rng.gauss(0.0, 0.2))
    if rng.random() < 0.3:
        new["rise.turn"] = rng.choice([0, 90, 180, 270])
    return new
