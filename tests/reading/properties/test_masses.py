"""A mass written in any of the accepted styles reads back to itself in kilograms."""

from typing import Any

from hypothesis import strategies as st

POUND = 0.45359237
OUNCE = POUND / 16
UNITS = {
    " lb": POUND, "lb": POUND, " lbs": POUND, "lbs": POUND, " lb.": POUND, " lbs.": POUND, " LB": POUND, " LBS": POUND,
    " Lbs": POUND, "#": POUND, " #": POUND, " pounds": POUND, "-pound": POUND, "-lb": POUND, " kg": 1.0, "kg": 1.0,
    " KG": 1.0,
    " Kg": 1.0, " kgs": 1.0, "kgs": 1.0, " kg.": 1.0, " kilos": 1.0, " kilograms": 1.0, " kilogram": 1.0, "-kg": 1.0,
    " kilogrammes": 1.0, " g": 1e-3, "g": 1e-3, " gr": 1e-3, " grams": 1e-3, " gram": 1e-3, " oz": OUNCE, "oz": OUNCE,
    " oz.": OUNCE,
    " ounces": OUNCE, " OZ": OUNCE, " (kg)": 1.0, " (lbs)": POUND, " [kg]": 1.0, " tonnes": 1000.0, "\u00a0kg": 1.0,
}  # fmt: skip
AROUND = [
    "{m}", "({m})", "it is {m}, I think", "They are {m}.", "Is it {m}?", "weight: {m}", "{m} each", "{m} apiece",
    "wt. {m}",
]  # fmt: skip
POUNDS_AND_OUNCES = [
    "{p} lb {o} oz", "{p} lbs {o} oz", "{p}lb {o}oz", "{p}lb{o}oz", "{p} lb. {o} oz.", "{p} lb, {o} oz",
    "{p} lb and {o} oz",
    "{p} pounds {o} ounces", "{p} pounds, {o} ounces", "{p} pounds and {o} ounces", "{p} LB {o} OZ", "{p} lbs. {o} oz",
    "{p}# {o} oz", "{p} lb-{o} oz", "{p} lb - {o} oz", "{p} pound {o} ounce", "{p} lb & {o} oz", "{p}-lb {o}-oz",
]  # fmt: skip
POUNDS, OUNCES = st.integers(2, 99), st.integers(1, 15)
FIGURES = st.decimals(min_value="0.1", max_value="999.9", places=1) | st.decimals("0.01", "99.99", places=2)


def test_a_mass_reads_back_with_every_unit(for_all: Any, misread: Any) -> None:
    def law(figure: Any) -> None:
        for typed in (str(figure), str(figure).replace(".", ",")):
            texts = [
                (style.format(m=typed + unit), float(figure) * worth)
                for style in AROUND
                for unit, worth in UNITS.items()
            ]
            assert misread((text, "mass", kilograms) for text, kilograms in texts) == []

    for_all(law, FIGURES, tries=8)


def test_a_whole_mass_reads_back_with_every_unit(for_all: Any, misread: Any) -> None:
    def law(figure: int) -> None:
        texts = [
            (style.format(m=f"{figure}{unit}"), figure * worth) for style in AROUND for unit, worth in UNITS.items()
        ]
        assert misread((text, "mass", kilograms) for text, kilograms in texts) == []

    for_all(law, st.integers(1, 999), tries=10)


def test_pounds_and_ounces_read_back(for_all: Any, misread: Any) -> None:
    def law(p: int, o: int) -> None:
        assert misread((style.format(p=p, o=o), "mass", p * POUND + o * OUNCE) for style in POUNDS_AND_OUNCES) == []

    for_all(law, POUNDS, OUNCES, tries=25)


def test_fractions_of_a_mass_read_back(for_all: Any, misread: Any) -> None:
    def law(p: int) -> None:
        masses = {
            f"{p} 1/2 lb": (p + 0.5) * POUND, f"{p}-1/2 lbs": (p + 0.5) * POUND, f"{p}½ lb": (p + 0.5) * POUND,
            f"{p}½ kg": p + 0.5, f"{p} ½ kg": p + 0.5, f"{p}¼ lb": (p + 0.25) * POUND, f"{p} and a half kilos": p + 0.5,
            f"{p} and a half pounds": (p + 0.5) * POUND, f"{p} pounds and a half": (p + 0.5) * POUND,
            f"{p} kg {p} g": p * 1.001,
        }  # fmt: skip
        assert misread((text, "mass", kilograms) for text, kilograms in masses.items()) == []

    for_all(law, POUNDS, tries=25)


def test_masses_in_words_read_back(for_all: Any, misread: Any, in_words: Any) -> None:
    def law(n: int, o: int) -> None:
        spoken = in_words(n)
        masses = {
            f"{spoken} pounds": n * POUND, f"{spoken} lb": n * POUND, f"{spoken} kilos": n, f"{spoken} kg": n,
            f"{spoken} grams": n / 1000, f"{spoken} and a half kilos": n + 0.5, f"{spoken} kilos and a half": n + 0.5,
            f"{spoken} and a quarter pounds": (n + 0.25) * POUND, f"{spoken} point five kilos": n + 0.5,
            f"{spoken} pounds {in_words(o)} ounces": n * POUND + o * OUNCE,
            f"{spoken.capitalize()} kilos each.": n, f"{spoken.replace('-', ' ')} lbs": n * POUND,
        }  # fmt: skip
        assert misread((text, "mass", kilograms) for text, kilograms in masses.items()) == []

    for_all(law, st.integers(2, 99), OUNCES, tries=25)


def test_usual_turns_of_phrase_for_a_mass_read_back(misread: Any) -> None:
    kilograms = {
        "half a kilo": 0.5, "half a pound": POUND / 2, "a kilo and a half": 1.5, "a quarter pound": POUND / 4,
        "three quarters of a pound": 0.75 * POUND, "a pound and a half": 1.5 * POUND, "half a tonne": 500.0,
        "a hundred kilos": 100.0, "a hundred pounds": 100 * POUND, "a dozen pounds": 12 * POUND,
    }  # fmt: skip
    assert misread((text, "mass", value) for text, value in kilograms.items()) == []
