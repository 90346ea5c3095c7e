"""Thousands read back however they are set apart: comma, point, apostrophe, space, or a k."""

from typing import Any

from hypothesis import strategies as st

SPACES = [" ", "\u00a0", "\u202f", "\u2009"]
APART = [",", "'", "’", *SPACES]
PER_HOUR = ["{n} per hour", "{n}/h", "{n} cases per hour", "{n} an hour", "We do {n} bottles an hour.", "{n} pcs/h"]
UNITS = {
    " kg": ("mass", 1.0),
    " lb": ("mass", 0.45359237),
    " mm": ("length", 1e-3),
    "mm": ("length", 1e-3),
    " g": ("mass", 1e-3),
}


def apart(number: int, sign: str) -> str:
    return f"{number:,}".replace(",", sign)


def test_a_rate_with_thousands_set_apart_reads_back(for_all: Any, misread: Any) -> None:
    def law(count: int) -> None:
        texts = [style.format(n=apart(count, sign)) for style in PER_HOUR for sign in [*APART, ".", ""]]
        assert misread((text, "rate", count / 60) for text in texts) == []

    for_all(law, st.integers(1000, 99_999), tries=20)


def test_a_measure_with_thousands_set_apart_reads_back(for_all: Any, misread: Any) -> None:
    def law(count: int) -> None:
        for unit, (kind, worth) in UNITS.items():
            signs = [*APART, "", *([] if unit in (" kg", " lb") else ["."])]
            assert misread((apart(count, sign) + unit, kind, count * worth) for sign in signs) == []

    for_all(law, st.integers(1000, 99_999), tries=20)


def test_thousands_with_decimals_read_back(for_all: Any, misread: Any) -> None:
    def law(count: int, tenths: int) -> None:
        meant = count + tenths / 10
        texts = [
            apart(count, sign) + mark + str(tenths)
            for sign, mark in ((",", "."), (".", ","), ("'", "."), ("’", "."), (" ", ","))
        ]
        assert misread((f"{text} {unit}", kind, meant * worth) for text in texts for unit, kind, worth in (
            ("kg", "mass", 1.0), ("mm", "length", 1e-3), ("lb", "mass", 0.45359237),
            ("psi", "pressure", 6894.757293168361)
        )) == []  # fmt: skip

    for_all(law, st.integers(1000, 99_999), st.integers(1, 9), tries=20)


def test_millions_read_back(for_all: Any, misread: Any) -> None:
    def law(count: int) -> None:
        texts = [apart(count, sign) + " per year" for sign in [*APART, ".", ""]]
        assert misread((text, "rate", count / 525960) for text in texts) == []

    for_all(law, st.integers(1_000_000, 99_999_999), tries=20)


def test_a_k_for_thousand_reads_back(for_all: Any, misread: Any) -> None:
    def law(count: int) -> None:
        texts = [
            f"{count}k per hour",
            f"{count}K per hour",
            f"{count}k/h",
            f"{count}k an hour",
            f"{count}k bottles per hour",
        ]
        texts += [
            f"{count} thousand per hour",
            f"{count} thousand bottles an hour",
            f"{count}.0k per hour",
            f"{count}k/hr",
        ]
        assert misread((text, "rate", count * 1000 / 60) for text in texts) == []

    for_all(law, st.integers(2, 99), tries=15)
