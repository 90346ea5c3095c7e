"""Writes any number of invented jobs, one a line, for `intake size --lines`: python tests/bench/many_specs.py 1000."""

import json
import sys
from random import Random


def job(rng: Random) -> dict[str, object]:
    """A whole job of an everyday kind."""
    length, rise = rng.uniform(0.1, 0.6), rng.uniform(1.0, 7.0)
    width, height = length * rng.uniform(0.5, 1.0), length * rng.uniform(0.3, 1.2)
    return {
        "product.type": rng.choice(["case", "carton", "tray", "tote", "bottle", "bag"]),
        "product.length": length, "product.width": width, "product.height": height,
        "product.weight": length * width * height * rng.uniform(100.0, 900.0),
        "product.surface": rng.choice(["corrugated", "paperboard", "plastic", "film"]),
        "rate.peak": rng.uniform(3.0, 120.0), "rise.direction": rng.choice(["up", "down"]),
        "rise.height": rise, "rise.infeed_height": rng.uniform(0.6, 1.0), "rise.turn": rng.choice([0.0, 90.0, 180.0]),
        "space.length": rng.uniform(2.0, 14.0), "space.width": rng.uniform(1.0, 5.0), "space.ceiling": rise + 3.0,
        "handling.squeeze": rng.random() < 0.6, "temperature.zone": "ambient",
        "cleaning.method": rng.choice(["dry", "wipe", "low_pressure", "high_pressure"]),
    }  # fmt: skip


if __name__ == "__main__":
    seeded = Random(2)
    for number in range(int(sys.argv[1])):
        print(json.dumps({"id": number, "spec": job(seeded)}))
