"""A length written in any of the accepted styles reads back to itself, alone and whole."""

from fractions import Fraction
from typing import Any

from hypothesis import strategies as st

INCH, FOOT = 0.0254, 0.3048
VULGAR = {
    "½": (1, 2), "¼": (1, 4), "¾": (3, 4), "⅓": (1, 3), "⅔": (2, 3), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8),
    "⅞": (7, 8), "⅙": (1, 6), "⅚": (5, 6), "⅕": (1, 5),
}  # fmt: skip

FEET_AND_INCHES = [
    "{f}'{i}\"", "{f}' {i}\"", "{f}'-{i}\"", "{f}' - {i}\"", "{f}’{i}”", "{f}′{i}″", "{f}′-{i}″", "{f}' {i}''",
    "{f}'{i}''", "{f}´{i}´´", "{f}'{i}", "{f}' {i}", "{f} ft {i} in", "{f}ft {i}in", "{f}ft{i}in", "{f} ft. {i} in.",
    "{f} FT {i} IN", "{f} ft {i}", "{f}ft {i}", "{f} ft, {i} in", "{f} ft-{i} in", "{f} ft - {i} in", "{f} ft & {i} in",
    "{f} feet {i} inches", "{f} feet, {i} inches", "{f} feet and {i} inches", "{f} Feet {i} Inches", "{f} foot {i}",
    "{f} feet {i}", "{f} foot {i} inch", "{f} foot {i} inches", "{f}-foot {i}-inch", "{f} ft {i}\"", "{f}' {i} in",
    "{f}' {i} inches", "{f}' and {i}\"", "({f}'{i}\")", "it is {f}'-{i}\", I think", "{f} ft {i} in.", "{f}'{i}\" high",
]  # fmt: skip
FEET_AND_PARTS = [
    "{f}'-{i} {n}/{d}\"", "{f}' {i} {n}/{d}\"", "{f}' {i}-{n}/{d}\"", "{f}'-{i}-{n}/{d}\"", "{f}'{i} {n}/{d}\"",
    "{f} ft {i} {n}/{d} in", "{f} ft {i}-{n}/{d} in", "{f} feet {i} {n}/{d} inches", "{f}’ {i} {n}/{d}”",
    "{f}′ {i} {n}⁄{d}″", "{f} feet {i} and {n}/{d} inches", "{f}'-{i} {n}/{d}''",
]  # fmt: skip
FEET_AND_VULGAR = [
    "{f}'{i}{v}\"",
    "{f}' {i}{v}\"",
    "{f}'-{i}{v}\"",
    "{f} ft {i}{v} in",
    "{f}′{i} {v}″",
    "{f}' {i} {v}\"",
]
INCHES_AND_PARTS = [
    "{w} {n}/{d} in", "{w}-{n}/{d} in", "{w} {n}/{d}\"", "{w}-{n}/{d}\"", "{w} {n}/{d}”", "{w} {n}/{d} inches",
    "{w}-{n}/{d}-inch", "{w} and {n}/{d} inches", "{w} and {n}/{d}\"", "{w} {n}⁄{d} in", "{w} {n}/{d} in.",
    "{w}  {n}/{d}''",
]  # fmt: skip
INCHES_AND_VULGAR = ['{w}{v}"', '{w} {v}"', "{w}{v} in", "{w}{v}in", "{w} {v} inches", "{w}{v}”", "{w}-{v} in"]
DECIMALS = [
    "{x} {u}", "{x}{u}", "({x} {u})", "it is {x} {u}, I think", "It is {x} {u}.", "Is it {x} {u}?", "= {x} {u}",
    "{x} ({u})",
    "{x} [{u}]", "\t{x} {u}\n", "height: {x} {u}", "- {x} {u}", "{x}\u00a0{u}",
]  # fmt: skip
UNITS = {
    "mm": 1e-3, "MM": 1e-3, "millimeters": 1e-3, "millimetres": 1e-3, "cm": 0.01, "CM": 0.01, "centimeters": 0.01,
    "centimetres": 0.01, "m": 1.0, "meters": 1.0, "metres": 1.0, "in": INCH, "inch": INCH, "inches": INCH, "ft": FOOT,
    "feet": FOOT, "yards": 3 * FOOT,
}  # fmt: skip
MARKS = {
    '"': INCH,
    "''": INCH,
    "”": INCH,
    "″": INCH,
    "'": FOOT,
    "’": FOOT,
    "′": FOOT,
    "-inch": INCH,
    "-ft": FOOT,
    "-mm": 1e-3,
}

FEET, INCHES = st.integers(2, 60), st.integers(0, 11)
PARTS = st.sampled_from([(n, d) for d in (2, 4, 8, 16) for n in range(1, d, 2)])
FIGURES = st.decimals(min_value="0.1", max_value="999.9", places=1) | st.decimals("0.01", "99.99", places=2)


def test_feet_and_inches_read_back(for_all: Any, misread: Any) -> None:
    def law(f: int, i: int) -> None:
        assert misread((style.format(f=f, i=i), "length", (12 * f + i) * INCH) for style in FEET_AND_INCHES) == []

    for_all(law, FEET, INCHES, tries=25)


def test_feet_and_inches_with_a_fraction_read_back(for_all: Any, misread: Any) -> None:
    def law(f: int, i: int, part: tuple[int, int]) -> None:
        metres = float(12 * f + i + Fraction(*part)) * INCH
        texts = [style.format(f=f, i=i, n=part[0], d=part[1]) for style in FEET_AND_PARTS]
        assert misread((text, "length", metres) for text in texts) == []

    for_all(law, FEET, st.integers(1, 11), PARTS, tries=25)


def test_feet_and_inches_with_a_fraction_sign_read_back(for_all: Any, misread: Any) -> None:
    def law(f: int, i: int, v: str) -> None:
        metres = float(12 * f + i + Fraction(*VULGAR[v])) * INCH
        assert misread((style.format(f=f, i=i, v=v), "length", metres) for style in FEET_AND_VULGAR) == []

    for_all(law, FEET, st.integers(1, 11), st.sampled_from(sorted(VULGAR)), tries=25)


def test_mixed_fractions_of_an_inch_read_back(for_all: Any, misread: Any) -> None:
    def law(w: int, part: tuple[int, int], v: str) -> None:
        n, d = part
        asked = [
            (style.format(w=w, n=n, d=d), "length", float(w + Fraction(n, d)) * INCH) for style in INCHES_AND_PARTS
        ]
        asked += [
            (style.format(w=w, v=v), "length", float(w + Fraction(*VULGAR[v])) * INCH) for style in INCHES_AND_VULGAR
        ]
        asked += [(f"{n}/{d}{mark}", "length", n / d * INCH) for mark in (" in", '"', " inch", "-inch", " of an inch")]
        asked += [(f"{v}{mark}", "length", float(Fraction(*VULGAR[v])) * INCH) for mark in (" in", '"', " inch", "”")]
        assert misread(asked) == []

    for_all(law, st.integers(1, 90), PARTS, st.sampled_from(sorted(VULGAR)), tries=25)


def test_a_decimal_with_its_unit_reads_back_with_point_and_comma(for_all: Any, misread: Any) -> None:
    def law(figure: Any) -> None:
        for typed in (str(figure), str(figure).replace(".", ",")):
            spaced = [
                (style.format(x=typed, u=unit), "length", float(figure) * worth)
                for style in DECIMALS
                for unit, worth in UNITS.items()
            ]
            assert misread(spaced) == []
            assert misread((f"{typed}{mark}", "length", float(figure) * worth) for mark, worth in MARKS.items()) == []

    for_all(law, FIGURES, tries=8)


def test_a_decimal_without_a_nought_reads_back(for_all: Any, misread: Any) -> None:
    def law(digits: int) -> None:
        assert (
            misread((f".{digits}{unit}", "length", digits / 100 * INCH) for unit in (" in", '"', " inches", "in")) == []
        )

    for_all(law, st.integers(10, 99), tries=10)


def test_lengths_in_words_read_back(for_all: Any, misread: Any, in_words: Any) -> None:
    def law(f: int, i: int) -> None:
        F, I = in_words(f), in_words(i)  # noqa: E741
        inches = {
            f"{F} feet": 12 * f, f"{F} foot {I}": 12 * f + i, f"{F} feet {I} inches": 12 * f + i,
            f"{F} feet {I}": 12 * f + i,
            f"{F} feet and {I} inches": 12 * f + i, f"{F} foot {I} inches": 12 * f + i, f"{F} ft {I} in": 12 * f + i,
            f"{F} and a half feet": 12 * f + 6, f"{F} and a quarter feet": 12 * f + 3,
            f"{F} feet and a half": 12 * f + 6,
            f"{F} inches": f, f"{F} and a half inches": f + 0.5, f"{F} and three quarter inches": f + 0.75,
            f"{F} and three quarters inches": f + 0.75, f"{F} and three-quarter inches": f + 0.75,
            f"{F} point five inches": f + 0.5, f"{F}-inch": f, f"{F}-foot": 12 * f, f"{f} and a half inches": f + 0.5,
            f"{f} and a half feet": 12 * f + 6, f"{f} feet {I} inches": 12 * f + i, f"{F} foot {i}": 12 * f + i,
            f"{F.capitalize()} feet {I}.": 12 * f + i, f"{F.upper()} FEET": 12 * f, f"{f} foot {I}": 12 * f + i,
            f"{F} feet, {I} and a half inches": 12 * f + i + 0.5, f"{F} foot {I} and a half": 12 * f + i + 0.5,
        }  # fmt: skip
        assert misread((text, "length", value * INCH) for text, value in inches.items()) == []
        metres = {
            f"{F} metres": f, f"{F} meters": f, f"{F} and a half metres": f + 0.5, f"{F} metres and a half": f + 0.5,
            f"{F} point two metres": f + 0.2, f"{F} point two five metres": f + 0.25, f"{F} metre": f,
            f"{F} hundred millimetres": f / 10, f"{F} centimetres": f / 100, f"{F} millimeters": f / 1000,
        }  # fmt: skip
        assert misread((text, "length", value) for text, value in metres.items()) == []

    for_all(law, st.integers(2, 19) | st.sampled_from([20, 25, 36, 48]), st.integers(1, 11), tries=25)


def test_parts_of_one_unit_in_words_read_back(misread: Any) -> None:
    inches = {
        "half an inch": 0.5, "a half inch": 0.5, "half inch": 0.5, "a quarter inch": 0.25, "a quarter of an inch": 0.25,
        "three quarters of an inch": 0.75, "three-quarters of an inch": 0.75, "an inch and a half": 1.5,
        "half a foot": 6,
        "a foot and a half": 18, "one and a half inches": 1.5, "one and a half feet": 18, "one foot six": 18,
        "five eighths of an inch": 0.625, "three sixteenths of an inch": 0.1875,
    }  # fmt: skip
    assert misread((text, "length", value * INCH) for text, value in inches.items()) == []
