"""Our reader of quantities."""

import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

from serving import serve

sys.path.insert(0, str(Path(__file__).parents[3]))


def load() -> Callable[[str], Any]:
    from intake.reading import quantities

    return quantities


def convert(text: str, found: Any) -> list[dict[str, Any]]:
    return [{"kind": one.kind, "low": one.low, "high": one.high} for one in found]


serve(load, convert)
