"""Quantities in the styles that people type, each with its value in the canonical unit."""

import pytest

from intake.reading import quantities

STYLES = [  # text, kind, low, high
    ("12'6\"", "length", 3.81, 3.81),
    ("12'-6\"", "length", 3.81, 3.81),
    ("12' 6", "length", 3.81, 3.81),
    ("12 ft 6 in", "length", 3.81, 3.81),
    ("12 feet, 6 inches", "length", 3.81, 3.81),
    ("12’ 6 1/2”", "length", 3.8227, 3.8227),
    ("12′-6½″", "length", 3.8227, 3.8227),
    ('5 1/2"', "length", 0.1397, 0.1397),
    ("5-1/2 in", "length", 0.1397, 0.1397),
    ("5½ in", "length", 0.1397, 0.1397),
    ("five and a half inches", "length", 0.1397, 0.1397),
    ("3,2 m", "length", 3.2, 3.2),
    ("3-4 ft", "length", 0.9144, 1.2192),
    ("between 10 and 12 ft", "length", 3.048, 3.6576),
    ("35#", "mass", 15.8757, 15.8757),
    ("2.5 kilos", "mass", 2.5, 2.5),
    ("2,5 kg", "mass", 2.5, 2.5),
    ("1,250 lb", "mass", 566.99, 566.99),
    ("6 lb 5 oz", "mass", 2.8633, 2.8633),
    ("half a pound", "mass", 0.226796, 0.226796),
    ("at least 20 kg", "mass", 20.0, None),
    ("no more than 20 kg", "mass", None, 20.0),
    ("thirty-five lb", "mass", 15.8757, 15.8757),
    ("40 cases per minute", "rate", 40.0, 40.0),
    ("40 a minute", "rate", 40.0, 40.0),
    ("40 cpm", "rate", 40.0, 40.0),
    ("30 ppm", "rate", 30.0, 30.0),
    ("1,200/hr", "rate", 20.0, 20.0),
    ("1'200 pcs/h", "rate", 20.0, 20.0),
    ("12.000 per hour", "rate", 200.0, 200.0),
    ("one every 2 seconds", "rate", 30.0, 30.0),
    ("a couple hundred an hour", "rate", 3.33333, 3.33333),
    ("18~22pcs/min", "rate", 18.0, 22.0),
    ("9,600 per 16 h day", "rate", 10.0, 10.0),
    ("-10F", "temperature", -23.3333, -23.3333),
    ("minus 20 °C", "temperature", -20.0, -20.0),
    ("10 degrees F below zero", "temperature", -23.3333, -23.3333),
    ("2-4 °C", "temperature", 2.0, 4.0),
    ("900 psi", "pressure", 6205281.6, 6205281.6),
    ("70 bar", "pressure", 7e6, 7e6),
    ("8 lbf", "force", 35.5858, 35.5858),
    ("480V", "voltage", 480.0, 480.0),
    ("65 fpm", "speed", 0.3302, 0.3302),
    ("90 degrees", "angle", 90.0, 90.0),
    ("3 hp", "power", 2237.1, 2237.1),
    ("12 fl oz", "volume", 0.000354882, 0.000354882),
    ("an hour and a half", "duration", 5400.0, 5400.0),
    ("12 ± 0.5 kg", "mass", 11.5, 12.5),
    ("12 kg ±0.5", "mass", 11.5, 12.5),
    ("300 mm +/- 5", "length", 0.295, 0.305),
    ("2 m ± 5 mm", "length", 1.995, 2.005),
    ("20 kg give or take 10 %", "mass", 18.0, 22.0),
    ("4 °C plus or minus 1", "temperature", 3.0, 5.0),
    ("40 °F ± 2 °C", "temperature", 2.44444, 6.44444),
    ("30 ± 2 cases a minute", "rate", 28.0, 32.0),
    ("30/min ± 2", "rate", 28.0, 32.0),
    ("no more than 20 ± 0.5 kg", "mass", None, 20.5),
    ("8.5 lb ±", "mass", 3.85554, 3.85554),
    ("an eighth of an inch", "length", 0.003175, 0.003175),
]


@pytest.mark.parametrize(("text", "kind", "low", "high"), STYLES, ids=[row[0] for row in STYLES])
def test_a_quantity_is_read_in_any_style(text: str, kind: str, low: float | None, high: float | None) -> None:
    found = quantities(text)
    assert [q.kind for q in found] == [kind]
    for got, want in ((found[0].low, low), (found[0].high, high)):
        assert got == (want if want is None else pytest.approx(want, rel=5e-4))


@pytest.mark.parametrize(
    ("text", "kinds"),
    [
        ("10x8x6 in", ["number", "number", "length"]),
        ("45 and 50 mg", ["mass", "mass"]),
        ("3 x 4 oz", ["number", "mass"]),
        ("12 ft 8 per minute", ["length", "rate"]),
    ],
)
def test_figures_side_by_side_stay_apart(text: str, kinds: list[str]) -> None:
    assert [q.kind for q in quantities(text)] == kinds


@pytest.mark.parametrize(
    "text",
    [
        "$45,000", "12 in a case", "call 414-555-0199", "at 2:30 pm", "on 6/12/2024", "part P-2209", "the 90s",
        "25 % margin", "line 4", "#10 cans", "rev 3", "five years old", "section 4.2.1", "PO 45-88120", "the 14th",
    ],
)  # fmt: skip
def test_what_is_no_measure_gives_none(text: str) -> None:
    assert [q for q in quantities(text) if q.kind != "number"] == []


def test_json_has_the_promised_shape() -> None:
    assert quantities("up 5 m")[0].to_json() == {
        "low": 5.0, "high": 5.0, "unit": "m", "kind": "length", "said": "5 m", "span": [3, 6],
    }  # fmt: skip
