"""A figure with its tolerance reads back as the two ends it allows, in every way that drawings and mails write it."""

from typing import Any

import pytest
from hypothesis import strategies as st

UNITS = {
    " kg": ("mass", 1.0), "kg": ("mass", 1.0), " lb": ("mass", 0.45359237), " pounds": ("mass", 0.45359237),
    " in": ("length", 0.0254), '"': ("length", 0.0254), " inches": ("length", 0.0254), " mm": ("length", 1e-3),
    "mm": ("length", 1e-3), " cm": ("length", 0.01), " ft": ("length", 0.3048), " m": ("length", 1.0),
    " °C": ("temperature", 1.0), "°C": ("temperature", 1.0), " bar": ("pressure", 1e5), " V": ("voltage", 1.0),
    " degrees": ("angle", 1.0), " weeks": ("duration", 604800.0), " hours": ("duration", 3600.0),
    " per minute": ("rate", 1.0), "/min": ("rate", 1.0), " a minute": ("rate", 1.0), " cases per minute": ("rate", 1.0),
    " per hour": ("rate", 1 / 60), " cpm": ("rate", 1.0), " N": ("force", 1.0),
}  # fmt: skip
STYLES = [
    "{a}{u} ± {b}{u}", "{a}{u} ± {b}", "{a} ± {b}{u}", "{a}±{b}{u}", "{a}{u} ±{b}{u}", "{a}{u} +/- {b}{u}",
    "{a} +/- {b}{u}", "{a}{u} +/-{b}", "{a}{u} plus or minus {b}", "{a}{u} give or take {b}{u}", "({a} ± {b}{u})",
    "It is {a} ± {b}{u}.", "{a}{u} plus/minus {b}", "about {a} ± {b}{u}",
]  # fmt: skip
PAIRS = st.tuples(st.integers(2, 60), st.integers(1, 40)).filter(lambda pair: pair[1] < pair[0])


@pytest.mark.parametrize("unit", UNITS)
def test_a_tolerance_reads_back_as_two_ends(unit: str, for_all: Any, misread: Any) -> None:
    kind, worth = UNITS[unit]

    def law(pair: tuple[int, int]) -> None:
        a, b = pair
        texts = [style.format(a=a, b=b, u=unit) for style in STYLES if kind != "rate" or style.count("{u}") == 1]
        assert misread((text, kind, (a - b) * worth, (a + b) * worth) for text in texts) == []

    for_all(law, PAIRS, tries=6)


def test_a_tolerance_in_percent_is_a_share_of_its_figure(for_all: Any, misread: Any) -> None:
    def law(pair: tuple[int, int]) -> None:
        a, b = pair
        ends = a * (1 - b / 100), a * (1 + b / 100)
        texts = [f"{a} kg ± {b}%", f"{a} kg ±{b} %", f"{a} kg +/- {b} percent", f"{a} kg give or take {b}%"]
        assert misread((text, "mass", *ends) for text in texts) == []

    for_all(law, PAIRS, tries=15)


def test_what_is_no_tolerance_changes_nothing(for_all: Any, misread: Any) -> None:
    def law(a: int) -> None:
        assert misread((text, "mass", float(a), float(a)) for text in (f"{a} kg ±", f"{a} kg +/-", f"± {a} kg")) == []

    for_all(law, st.integers(2, 99), tries=15)
