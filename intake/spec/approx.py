"""How wide "about" is, from `assumptions.toml`: the share by which an approximate figure may be off."""

import tomllib
from functools import cache
from pathlib import Path

from intake.spec.vocabulary import field


@cache
def approx_table(folder: Path) -> dict[str, float]:
    """Share by unit or field id, "" for all others. Raises OSError when the file is not there."""
    data = tomllib.loads((folder / "assumptions.toml").read_text(encoding="utf-8"))
    return {str(key): float(share) for key, share in data.get("approx", {}).items()}


def approx_share(folder: Path, name: str) -> float:
    """The share for one field: its own entry, its unit's, or the common one."""
    table = approx_table(folder)
    unit = field(name).unit
    return table.get(name, table.get(unit, table.get("other", 0.1)))
