"""The hand-off: the package of files that engineering receives."""

from intake.handoff.package import HandoffError, Package, read_package
from intake.handoff.write import FILES, write

__all__ = ["FILES", "HandoffError", "Package", "read_package", "write"]
