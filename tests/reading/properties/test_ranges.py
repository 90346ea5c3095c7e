"""Two figures that make a range, and a figure that is an open end or a guess, read back as that."""

from typing import Any

import pytest
from hypothesis import strategies as st

from intake.reading import read

RANGES = [
    "{a}-{b}{u}", "{a} - {b}{u}", "{a}–{b}{u}", "{a} – {b}{u}", "{a}—{b}{u}", "{a} to {b}{u}", "{a}{u} to {b}{u}",
    "{a}{u}-{b}{u}",
    "{a}{u} - {b}{u}", "{a}{u} – {b}{u}", "between {a} and {b}{u}", "between {a}{u} and {b}{u}", "from {a} to {b}{u}",
    "from {a}{u} to {b}{u}", "Between {a} and {b}{u}", "anywhere from {a} to {b}{u}", "anywhere between {a} and {b}{u}",
    "{a} through {b}{u}", "{a} thru {b}{u}", "{a}~{b}{u}", "{a} ~ {b}{u}", "{a} TO {b}{u}", "({a}-{b}{u})",
    "{a} till {b}{u}",
    "{a} up to {b}{u}", "{a}...{b}{u}", "{a}..{b}{u}", "somewhere between {a} and {b}{u}", "about {a} to {b}{u}",
    "It is {a}-{b}{u}.", "between {a} & {b}{u}",
    "from {a} up to {b}{u}", "ranging from {a} to {b}{u}", "{a} to about {b}{u}", "{a} to maybe {b}{u}",
]  # fmt: skip
GLUED = "{a}{u}-{b}{u}"
"""Its hyphen stands close on both sides: 8kg-14kg."""
NOT_CLOSE = frozenset({" °C", "°C", " V", " N"})
UNITS = {
    " kg": ("mass", 1.0), " lb": ("mass", 0.45359237), "kg": ("mass", 1.0), " lbs": ("mass", 0.45359237),
    " pounds": ("mass", 0.45359237),
    " °C": ("temperature", 1.0), "°C": ("temperature", 1.0), " bar": ("pressure", 1e5), " V": ("voltage", 1.0),
    " per minute": ("rate", 1.0), "/min": ("rate", 1.0), " a minute": ("rate", 1.0), " cases per minute": ("rate", 1.0),
    " per hour": ("rate", 1 / 60), " weeks": ("duration", 604800.0), " hours": ("duration", 3600.0),
    " degrees": ("angle", 1.0),
    " N": ("force", 1.0), " cpm": ("rate", 1.0),
}  # fmt: skip
LENGTHS = {
    " in": 0.0254,
    '"': 0.0254,
    " inches": 0.0254,
    " mm": 1e-3,
    " cm": 0.01,
    " ft": 0.3048,
    "'": 0.3048,
    " m": 1.0,
}
LEAST = [
    "at least {q}", "At least {q}", "a minimum of {q}", "minimum {q}", "min. {q}", "min {q}", "no less than {q}",
    "not less than {q}",
    "more than {q}", "over {q}", "above {q}", "upwards of {q}", "in excess of {q}", "it must be > {q}", ">= {q}",
    "≥ {q}", "must be >{q}",
    "≥{q}",
    "{q} or more", "{q} minimum", "{q} min", "{q} and up", "{q} at least", "{q} or better", "{q} at the least",
    "exceeding {q}",
    "greater than {q}", "{q} or over", "no fewer than {q}", "{q} and above", "{q} plus", "{q} or above",
    "never less than {q}",
]  # fmt: skip
MOST = [
    "at most {q}", "At most {q}", "a maximum of {q}", "maximum {q}", "max. {q}", "max {q}", "no more than {q}",
    "not more than {q}",
    "up to {q}", "under {q}", "below {q}", "less than {q}", "< {q}", "<= {q}", "≤ {q}", "<{q}", "≤{q}",
    "not to exceed {q}",
    "{q} max", "{q} max.", "{q} maximum", "{q} at most", "{q} or less", "{q} tops", "{q} at the most", "not over {q}",
    "Max: {q}",
    "{q} or under", "{q} and under", "as much as {q}", "not above {q}", "never more than {q}", "not exceeding {q}",
    "nothing over {q}",
]  # fmt: skip
ABOUT = [
    "about {q}", "About {q}", "around {q}", "approx {q}", "approx. {q}", "approximately {q}", "roughly {q}",
    "circa {q}", "ca. {q}",
    "~{q}", "~ {q}", "≈ {q}", "maybe {q}", "call it {q}", "nearly {q}", "almost {q}", "close to {q}", "{q} or so",
    "{q} roughly",
    "{q} approx.", "{q} give or take", "{q} more or less", "{q} or thereabouts", "say {q}", "give or take {q}",
    "in the region of {q}", "somewhere around {q}", "just about {q}", "{q}, roughly", "something like {q}", "± {q}",
    "+/- {q}",
]  # fmt: skip
BOUNDED = {k: UNITS[k] for k in (" kg", " lb", "kg", " per minute", "/min", " weeks", " bar")}
PAIRS = st.tuples(st.integers(2, 60), st.integers(1, 60)).map(lambda pair: (pair[0], pair[0] + pair[1]))


@pytest.mark.parametrize("unit", UNITS)
def test_a_range_reads_back_in_every_style(unit: str, for_all: Any, misread: Any) -> None:
    kind, worth = UNITS[unit]

    def law(pair: tuple[int, int]) -> None:
        a, b = pair
        texts = [style.format(a=a, b=b, u=unit) for style in RANGES if style != GLUED or unit not in NOT_CLOSE]
        assert misread((text, kind, a * worth, b * worth) for text in texts) == []

    for_all(law, PAIRS, tries=6)


def test_a_range_of_lengths_reads_back(for_all: Any, misread: Any) -> None:
    def law(pair: tuple[int, int]) -> None:
        a, b = pair
        texts = [
            (style.format(a=a, b=b, u=unit), worth)
            for style in RANGES
            if "from" not in style and "up to" not in style
            for unit, worth in LENGTHS.items()
        ]
        assert misread((text, "length", a * worth, b * worth) for text, worth in texts) == []

    for_all(law, PAIRS, tries=6)


def test_a_range_with_decimals_and_fractions_reads_back(for_all: Any, misread: Any) -> None:
    def law(pair: tuple[int, int]) -> None:
        a, b = pair
        assert misread((text, "mass", a + 0.5, b + 0.25) for text in (
            f"{a}.5 – {b}.25 kg", f"{a},5 - {b},25 kg", f"{a}.5 to {b}.25 kg", f"between {a}½ and {b}¼ kg",
            f"{a} 1/2 to {b} 1/4 kg", f"{a}.5 kg to {b}.25 kg", f"{a}½-{b}¼ kg", f"{a}½ – {b}¼ kg", f"{a}.5kg–{b}.25kg",
        )) == []  # fmt: skip
        inch = 0.0254
        assert misread((text, "length", (a + 0.5) * inch, (b + 0.25) * inch) for text in (
            f'{a} 1/2" to {b} 1/4"', f"{a}-1/2 to {b}-1/4 in", f'{a}½"-{b}¼"', f'{a}½" – {b}¼"',
            f"{a} 1/2 in to {b} 1/4 in",
            f"between {a} 1/2 and {b} 1/4 inches",
        )) == []  # fmt: skip

    for_all(law, PAIRS, tries=15)


def test_a_range_across_zero_and_below_it_reads_back(for_all: Any, misread: Any) -> None:
    def law(pair: tuple[int, int]) -> None:
        a, b = pair
        across = [
            "-{a} to {b} °C",
            "-{a} °C to {b} °C",
            "minus {a} to {b} °C",
            "-{a} to +{b} °C",
            "between -{a} and {b} °C",
        ]
        across += [
            "minus {a} to plus {b} °C",
            "from -{a} to {b} °C",
            "-{a}°C to +{b}°C",
            "between minus {a} and plus {b} °C",
        ]
        below = [
            "-{b} to -{a} °C",
            "minus {b} to minus {a} °C",
            "-{b} °C to -{a} °C",
            "between -{b} and -{a} °C",
            "-{a} to -{b} °C",
        ]
        assert misread((style.format(a=a, b=b), "temperature", -float(a), float(b)) for style in across) == []
        assert misread((style.format(a=a, b=b), "temperature", -float(b), -float(a)) for style in below) == []

    for_all(law, PAIRS, tries=15)


def test_a_range_in_words_reads_back(for_all: Any, misread: Any, in_words: Any) -> None:
    def law(pair: tuple[int, int]) -> None:
        a, b = pair
        texts = [f"{in_words(a)} to {in_words(b)} kilos", f"between {in_words(a)} and {in_words(b)} kilos"]
        texts += [f"from {in_words(a)} to {in_words(b)} kilos", f"{in_words(a)} kilos to {in_words(b)} kilos"]
        assert misread((text, "mass", float(a), float(b)) for text in texts) == []

    for_all(law, PAIRS, tries=15)


@pytest.mark.parametrize("unit", BOUNDED)
def test_an_open_end_reads_back_in_many_words(unit: str, for_all: Any, misread: Any) -> None:
    kind, worth = BOUNDED[unit]

    def law(figure: int) -> None:
        quantity = f"{figure}{unit}"
        assert misread((style.format(q=quantity), kind, figure * worth, None) for style in LEAST) == []
        assert misread((style.format(q=quantity), kind, None, figure * worth) for style in MOST) == []

    for_all(law, st.integers(2, 99), tries=8)


@pytest.mark.parametrize("unit", [" kg", " lb", "kg"])
def test_a_guess_reads_back_as_a_guess(unit: str, for_all: Any, misread: Any) -> None:
    kind, worth = BOUNDED[unit]

    def law(figure: int) -> None:
        texts = [style.format(q=f"{figure}{unit}") for style in ABOUT]
        assert misread((text, kind, figure * worth) for text in texts) == []
        assert [text for text in texts if not read(text, "product.weight").facts[0].approx] == []

    for_all(law, st.integers(2, 99), tries=8)
