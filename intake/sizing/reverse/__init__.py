"""Sizing asked backwards: how high, how fast, and what would have to change for a family to stand."""
