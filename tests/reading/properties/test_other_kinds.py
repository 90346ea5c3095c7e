"""Pressures, forces, volts, hertz, times, angles, speeds and powers read back to themselves."""

from math import pi
from typing import Any

import pytest
from hypothesis import strategies as st

PSI, POUND_FORCE, GRAVITY = 6894.757293168361, 4.4482216152605, 9.80665
WRITTEN: dict[str, dict[str, float]] = {
    "pressure": {
        " psi": PSI, "psi": PSI, " PSI": PSI, " psig": PSI, " p.s.i.": PSI, " lbs per square inch": PSI,
        " pounds per square inch": PSI, " lb/in²": PSI, " bar": 1e5, "bar": 1e5, " bars": 1e5, " BAR": 1e5,
        " mbar": 100.0,
        " kPa": 1e3, "kPa": 1e3, " MPa": 1e6, " Pa": 1.0, " hPa": 100.0, " kgf/cm²": GRAVITY * 1e4, " N/mm²": 1e6,
        " atm": 101325.0, " bar g": 1e5, " kg/cm²": GRAVITY * 1e4, " kg/cm2": GRAVITY * 1e4,
    },
    "force": {
        " N": 1.0, "N": 1.0, " newtons": 1.0, " newton": 1.0, " Newtons": 1.0, " kN": 1e3, "kN": 1e3,
        " lbf": POUND_FORCE,
        "lbf": POUND_FORCE, " pounds of force": POUND_FORCE, " lbs of force": POUND_FORCE, " lb-f": POUND_FORCE,
        " pounds-force": POUND_FORCE, " pound force": POUND_FORCE, " kgf": GRAVITY, " kg of force": GRAVITY,
        " daN": 10.0,
        " lbs of squeeze": POUND_FORCE, " kg force": GRAVITY,
    },
    "voltage": {
        " V": 1.0, "V": 1.0, "v": 1.0, " volts": 1.0, " volt": 1.0, "-volt": 1.0, " VAC": 1.0, "VAC": 1.0, " Vac": 1.0,
        " V AC": 1.0, " VDC": 1.0, " Volts": 1.0, " V DC": 1.0, " volts AC": 1.0, " kV": 1e3,
    },
    "frequency": {" Hz": 1.0, "Hz": 1.0, " hz": 1.0, "hz": 1.0, " HZ": 1.0, " hertz": 1.0, " Hertz": 1.0,
    "-hertz": 1.0},
    "duration": {
        " weeks": 604800.0, " wks": 604800.0, "-week": 604800.0, " week": 604800.0, " wk": 604800.0, " Weeks": 604800.0,
        " days": 86400.0, "-day": 86400.0, " hours": 3600.0, " hrs": 3600.0, " hr": 3600.0, "h": 3600.0, " h": 3600.0,
        " minutes": 60.0, " min": 60.0, " mins": 60.0, " seconds": 1.0, " sec": 1.0, " s": 1.0, " years": 31557600.0,
        " months": 2629800.0, "-hour": 3600.0,
    },
    "angle": {
        "°": 1.0, " °": 1.0, " deg": 1.0, " degrees": 1.0, "-degree": 1.0, " degree": 1.0, " degs": 1.0, " deg.": 1.0,
        " rad": 180 / pi, " radians": 180 / pi, "º": 1.0, " Degrees": 1.0, "deg": 1.0,
    },
    "speed": {
        " fpm": 0.00508, "fpm": 0.00508, " FPM": 0.00508, " ft/min": 0.00508, " feet per minute": 0.00508,
        " ft per min": 0.00508,
        " feet a minute": 0.00508, " m/min": 1 / 60, " m/s": 1.0, " metres per second": 1.0,
        " meters per minute": 1 / 60,
        " metres a minute": 1 / 60, " mm/s": 1e-3, " km/h": 1 / 3.6, " mph": 0.44704, " in/s": 0.0254, " ft/s": 0.3048,
        " cm/s": 0.01, " feet/min": 0.00508, " ft./min": 0.00508,
    },
    "power": {" kW": 1e3, "kW": 1e3, " KW": 1e3, " kw": 1e3, " W": 1.0, " watts": 1.0, " kilowatts": 1e3,
    " hp": 745.69987158,
              " HP": 745.69987158, "hp": 745.69987158, "-hp": 745.69987158, " horsepower": 745.69987158},
}  # fmt: skip
AROUND = ["{q}", "({q})", "it is {q}, I think", "We have {q}.", "Is it {q}?", "value: {q}", "= {q}"]


@pytest.mark.parametrize("kind", WRITTEN)
def test_a_quantity_reads_back_with_every_unit_of_its_kind(kind: str, for_all: Any, misread: Any) -> None:
    def law(figure: Any) -> None:
        for typed in {str(figure), str(figure).replace(".", ",")}:
            texts = [
                (style.format(q=typed + unit), float(figure) * worth)
                for style in AROUND
                for unit, worth in WRITTEN[kind].items()
            ]
            assert misread((text, kind, value) for text, value in texts) == []

    for_all(law, st.integers(2, 999) | st.decimals(min_value="0.5", max_value="99.5", places=1), tries=10)


def test_times_of_two_units_read_back(for_all: Any, misread: Any) -> None:
    def law(h: int, m: int) -> None:
        seconds = 3600.0 * h + 60.0 * m
        texts = [
            f"{h} h {m} min",
            f"{h} hours {m} minutes",
            f"{h} hrs {m} mins",
            f"{h} hours and {m} minutes",
            f"{h}h{m:02}",
        ]
        texts += [f"{h}h {m}min", f"{h} hr, {m} min"]
        assert misread((text, "duration", seconds) for text in texts) == []
        halves = [
            f"{h} and a half hours",
            f"{h} hours and a half",
            f"{h}½ hours",
            f"{h} 1/2 hours",
            f"{h}.5 h",
            f"{h},5 h",
        ]
        assert misread((text, "duration", 3600.0 * h + 1800.0) for text in halves) == []

    for_all(law, st.integers(2, 23), st.integers(10, 59), tries=20)


def test_each_kind_in_words_reads_back(for_all: Any, misread: Any, in_words: Any) -> None:
    def law(n: int) -> None:
        spoken = in_words(n)
        texts = [
            (f"{spoken} psi", "pressure", n * PSI), (f"{spoken} bar", "pressure", n * 1e5),
            (f"{spoken} newtons", "force", float(n)),
            (f"{spoken} volts", "voltage", float(n)), (f"{spoken} hertz", "frequency", float(n)),
            (f"{spoken} weeks", "duration", n * 604800.0), (f"{spoken} hours", "duration", n * 3600.0),
            (f"{spoken} and a half hours", "duration", n * 3600.0 + 1800.0), (f"{spoken} degrees", "angle", float(n)),
            (f"{spoken} feet per minute", "speed", n * 0.00508), (f"{spoken} metres a minute", "speed", n / 60),
            (f"{spoken} pounds of force", "force", n * POUND_FORCE), (f"{spoken}-week", "duration", n * 604800.0),
        ]  # fmt: skip
        assert misread(texts) == []

    for_all(law, st.integers(2, 99), tries=25)
