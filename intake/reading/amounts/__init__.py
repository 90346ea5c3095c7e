"""Figures with units, ranges and bounds, and figures that stand together; nothing of what they are figures of."""
