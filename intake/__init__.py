"""Guided intake and first sizing for vertical conveying equipment.

Names load lazily, so that ``import intake.sizing`` alone brings in neither the
screen library nor the model and unit libraries.
"""

from importlib import import_module
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from intake.reading import read
    from intake.sizing import size
    from intake.talk import Interview

__all__ = ["Interview", "read", "size"]
__version__ = "0.1.0"

_HOME = {"Interview": "intake.talk", "read": "intake.reading", "size": "intake.sizing"}


def __getattr__(name: str) -> Any:
    if name in _HOME:
        return getattr(import_module(_HOME[name]), name)
    raise AttributeError(f"module 'intake' has no attribute {name!r}")
