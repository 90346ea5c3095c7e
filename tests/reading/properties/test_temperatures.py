"""A temperature written in any of the accepted styles reads back to itself in degrees Celsius."""

from typing import Any

from hypothesis import strategies as st

CELSIUS = [
    " °C", "°C", " ° C", " C", "C", " deg C", " deg. C", "degC", " degrees C", " degrees Celsius", " degrees celsius",
    " Celsius",
    " celsius", " degrees centigrade", " centigrade", " º C", "ºC", "˚C", " degree C", " °c", "℃", " ℃", " DEG C",
    "° Celsius",
]  # fmt: skip
FAHRENHEIT = [
    " °F", "°F", " ° F", " F", "F", " deg F", " deg. F", "degF", " degrees F", " degrees Fahrenheit",
    " degrees fahrenheit",
    " Fahrenheit", " fahrenheit", "ºF", "˚F", " degree F", "℉", " ℉", " DEG F", "° Fahrenheit", "f",
]  # fmt: skip
SIGNED = ["{t}", "({t})", "It is {t}.", "it is {t}, I think", "room: {t}", "Is it {t}?", "temp = {t}"]
MINUS = ["-{t}", "−{t}", "–{t}", "minus {t}", "Minus {t}", "negative {t}", "{t} below zero", "{t} below"]
FIGURES = st.integers(1, 99) | st.decimals(min_value="0.5", max_value="99.5", places=1)


def _in_celsius(figure: float, unit: str) -> float:
    return figure if unit in CELSIUS else (figure - 32.0) / 1.8


def test_a_temperature_reads_back_in_both_scales(for_all: Any, misread: Any) -> None:
    def law(figure: Any) -> None:
        for typed in (str(figure), str(figure).replace(".", ",")):
            texts = [(style.format(t=typed + unit), unit) for unit in CELSIUS + FAHRENHEIT for style in SIGNED]
            assert misread((text, "temperature", _in_celsius(float(figure), unit)) for text, unit in texts) == []

    for_all(law, FIGURES, tries=10)


def test_a_temperature_below_zero_reads_back(for_all: Any, misread: Any) -> None:
    def law(figure: Any) -> None:
        texts = [(style.format(t=f"{figure}{unit}"), unit) for unit in CELSIUS + FAHRENHEIT for style in MINUS]
        assert misread((text, "temperature", _in_celsius(-float(figure), unit)) for text, unit in texts) == []

    for_all(law, FIGURES, tries=10)


def test_temperatures_in_words_read_back(for_all: Any, misread: Any, in_words: Any) -> None:
    def law(n: int) -> None:
        spoken = in_words(n)
        texts = {
            f"{spoken} degrees C": n, f"{spoken} degrees Celsius": n, f"minus {spoken} degrees C": -n,
            f"minus {spoken} Celsius": -n,
            f"{spoken} degrees C below zero": -n, f"{spoken} degrees centigrade": n,
            f"{spoken} degrees F": (n - 32) / 1.8, f"{spoken} degrees Fahrenheit": (n - 32) / 1.8,
            f"minus {spoken} Fahrenheit": (-n - 32) / 1.8,
        }  # fmt: skip
        assert misread((text, "temperature", float(value)) for text, value in texts.items()) == []

    for_all(law, st.integers(1, 99), tries=20)


def test_degrees_below_zero_without_a_scale_are_asked_back_or_in_one_of_both(for_all: Any, figures_read: Any) -> None:
    def law(n: int) -> None:
        for text in (f"{n} below zero", f"minus {n}", f"-{n}", f"{n} degrees below zero", f"minus {n} degrees"):
            got = figures_read(text, "temperature.room")
            for low, _ in got.values():
                assert low is not None
                assert min(abs(low + n), abs(low - (-n - 32) / 1.8)) < 1e-6, text

    for_all(law, st.integers(1, 40), tries=20)
