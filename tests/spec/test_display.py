"""Figures as people see them, each conversion held against pint."""

import re
import tomllib
from importlib.resources import files
from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.spec import Fact, Value, vocabulary
from intake.spec.display import System, label, show, show_range, show_value, system_of
from intake.spec.labels import labels
from intake.spec.lengths import show_length
from intake.spec.shown_units import TABLE

UNITS: pint.UnitRegistry[float] = pint.UnitRegistry()
PINT_OF_CANONICAL = {
    "1/min": "1/minute",
    "1/s": "1/second",
    "deg": "degree",
    "rad": "radian",
    "week": "week",
    "V": "volt",
    "Hz": "hertz",
    "h/day": "hour/day",
    "s": "second",
    "1": "dimensionless",
    "": "dimensionless",
    "kg": "kilogram",
    "kg/m": "kilogram/meter",
    "kg/min": "kilogram/minute",
    "kg/m3": "kilogram/meter**3",
    "m2": "meter**2",
    "m3/min": "meter**3/minute",
    "m/s": "meter/second",
    "m/s2": "meter/second**2",
    "N": "newton",
    "N/m": "newton/meter",
    "Pa": "pascal",
    "W": "watt",
    "degC": "degC",
    "K": "kelvin",
}
PINT_OF_MARK = {
    "/min": "1/minute",
    "/h": "1/hour",
    "°": "degree",
    "weeks": "week",
    "V": "volt",
    "Hz": "hertz",
    "h/day": "hour/day",
    "s": "second",
    "": "dimensionless",
    "kg": "kilogram",
    "g": "gram",
    "kg/m": "kilogram/meter",
    "kg/min": "kilogram/minute",
    "kg/m³": "kilogram/meter**3",
    "m²": "meter**2",
    "m³/min": "meter**3/minute",
    "L/min": "liter/minute",
    "m/s": "meter/second",
    "m/s²": "meter/second**2",
    "kN": "kilonewton",
    "N": "newton",
    "N/m": "newton/meter",
    "bar": "bar",
    "kPa": "kilopascal",
    "kW": "kilowatt",
    "W": "watt",
    "°C": "degC",
    "lb": "pound",
    "oz": "ounce",
    "lb/ft": "pound/foot",
    "lb/min": "pound/minute",
    "lb/ft³": "pound/foot**3",
    "sq ft": "foot**2",
    "scfm": "foot**3/minute",
    "ft/min": "foot/minute",
    "ft/s²": "foot/second**2",
    "lbf": "force_pound",
    "lbf/ft": "force_pound/foot",
    "psi": "psi",
    "hp": "horsepower",
    "°F": "degF",
}
ROWS = [
    pytest.param(unit, row, id=f"{system} {unit or 'bare'} as {row.mark.strip() or 'bare'}")
    for system in TABLE
    for unit, rows in TABLE[system].items()
    for row in rows
]


@pytest.mark.parametrize(("unit", "row"), ROWS)
@pytest.mark.parametrize("value", [0.37, 19.0])
def test_every_shown_unit_agrees_with_pint(unit: str, row: Any, value: float) -> None:
    # pint, a general-purpose unit library (its default registry): the outside check of every factor here.
    quantity = UNITS.Quantity(value, PINT_OF_CANONICAL[unit]).to(PINT_OF_MARK[row.mark.strip()])
    assert value * row.factor + row.offset == pytest.approx(quantity.magnitude, rel=1e-9)


def test_every_unit_of_fields_and_figures_has_a_shown_form() -> None:
    figures = tomllib.loads(files("intake.sizing").joinpath("figures.toml").read_text(encoding="utf-8"))
    units = {f.unit for f in vocabulary().values()} | {figure["unit"] for figure in figures.values()}
    for system in TABLE:
        assert units - {"m"} <= set(TABLE[system])


@pytest.mark.parametrize(
    ("value", "unit", "us", "si"),
    [
        (3.81, "m", "12 ft 6 in", "3.81 m"),
        (3.6576, "m", "12 ft", "3.66 m"),
        (0.4064, "m", "16 in", "406 mm"),
        (0.3, "m", "11 13/16 in", "300 mm"),
        (1.205, "m", "47.4 in", "1.205 m"),
        (4.1234, "m", "13 ft 6.3 in", "4.12 m"),
        (3.6570, "m", "12 ft", "3.657 m"),
        (0.05969, "m", "2.35 in", "59.7 mm"),
        (-0.1524, "m", "-6 in", "-152 mm"),
        (-1e-6, "m", "0 in", "0 mm"),
        (0.9999, "m", "39.4 in", "1 m"),
        (13.60777, "kg", "30 lb", "13.6 kg"),
        (0.45359237 * 12.75, "kg", "12.75 lb", "5.78 kg"),
        (0.2, "kg", "7.05 oz", "200 g"),
        (1200.0, "kg", "2646 lb", "1200 kg"),
        (-18.0, "degC", "-0.4 °F", "-18 °C"),
        (-17.7777778, "degC", "0 °F", "-17.8 °C"),
        (276.15, "K", "37.4 °F", "3 °C"),
        (45.0, "1/min", "45/min", "45/min"),
        (0.5, "1/min", "30/h", "30/h"),
        (0.0, "1/min", "0/min", "0/min"),
        (1e5, "Pa", "14.5 psi", "1 bar"),
        (101325.0, "Pa", "14.7 psi", "1.01 bar"),
        (100.0, "N", "22.5 lbf", "100 N"),
        (0.508, "m/s", "100 ft/min", "0.508 m/s"),
        (745.69987158, "W", "1 hp", "746 W"),
        (1500.0, "W", "2.01 hp", "1.5 kW"),
        (0.25, "m3/min", "8.83 scfm", "250 L/min"),
        (1.0, "week", "1 week", "1 week"),
        (12.0, "week", "12 weeks", "12 weeks"),
        (90.0, "deg", "90°", "90°"),
        (480.0, "V", "480 V", "480 V"),
        (16.0, "h/day", "16 h/day", "16 h/day"),
        (3.14159, "s", "3.14 s", "3.14 s"),
        (4.0, "1", "4", "4"),
        (0.12345, "1", "0.123", "0.123"),
        (1.5, "m2/s", "1.5 m2/s", "1.5 m2/s"),
    ],
)
def test_a_figure_is_written_as_the_trade_writes_it(value: float, unit: str, us: str, si: str) -> None:
    assert (show(value, unit, "us"), show(value, unit, "si")) == (us, si)


@given(sixteenths=st.integers(min_value=0, max_value=16 * 12 * 100))
def test_a_length_in_sixteenths_is_shown_exactly(sixteenths: int) -> None:
    assert _metres_of(show_length(sixteenths / 16 * 0.0254, "us")) == pytest.approx(sixteenths / 16 * 0.0254, abs=1e-9)


@given(metres=st.floats(min_value=0.0, max_value=50.0))
def test_a_shown_length_is_off_by_no_more_than_the_rounding_says(metres: float) -> None:
    assert _metres_of(show_length(metres, "us")) == pytest.approx(metres, abs=0.05 * 0.0254 + 1e-9)
    number, unit = show_length(metres, "si").split()
    assert float(number) * {"m": 1.0, "mm": 0.001}[unit] == pytest.approx(metres, abs=0.005 + 1e-9)


@given(whole=st.integers(min_value=1, max_value=5000), unit=st.sampled_from(["kg", "N", "Pa", "W", "degC", "m/s"]))
def test_a_whole_us_figure_survives_being_kept_in_si(whole: int, unit: str) -> None:
    row = TABLE["us"][unit][0]
    assert show((whole - row.offset) / row.factor, unit, "us") == f"{whole}{row.mark}"


def _metres_of(shown: str) -> float:
    """Feet, inches and sixteenths back to metres, by a reader that shares nothing with the writer."""
    found = re.fullmatch(r"(?:(\d+) ft ?)?(?:(?:([\d.]+) )?(?:(\d+)/(\d+) )?in)?", shown)
    assert found, shown
    feet, whole, above, below = (float(part) if part else None for part in found.groups())
    return (feet or 0.0) * 0.3048 + ((whole or 0.0) + ((above or 0.0) / (below or 1.0))) * 0.0254


@pytest.mark.parametrize("value", [float("nan"), float("inf")])
def test_a_figure_without_bounds_is_refused(value: float) -> None:
    with pytest.raises(ValueError, match="finite"):
        show(value, "m", "us")


@pytest.mark.parametrize(
    ("low", "high", "unit", "system", "shown"),
    [
        (8.0, 14.0, "kg", "si", "8 to 14 kg"),
        (0.3, 0.4, "kg", "si", "300 to 400 g"),
        (0.5, 1.5, "kg", "si", "0.5 to 1.5 kg"),
        (0.3, 0.4, "m", "si", "300 to 400 mm"),
        (0.8, 1.2, "m", "si", "0.8 to 1.2 m"),
        (-0.2, 1.2, "m", "si", "-200 mm to 1.2 m"),
        (0.2286, 0.2667, "m", "us", "9 to 10 1/2 in"),
        (0.9144, 1.8288, "m", "us", "36 in to 6 ft"),
        (-20.0, 0.0, "degC", "us", "-4 to 32 °F"),
        (0.5, 2.0, "1/min", "us", "0.5 to 2/min"),
        (6.0, 8.0, "week", "us", "6 to 8 weeks"),
        (8.0, None, "kg", "si", "at least 8 kg"),
        (None, 14.0, "kg", "si", "at most 14 kg"),
        (None, None, "kg", "si", "open"),
        (2.0, 2.0, "1", "si", "2"),
        (3.000001, 3.000002, "s", "si", "3 s"),
    ],
)
def test_a_range_names_its_unit_once(
    low: float | None, high: float | None, unit: str, system: System, shown: str
) -> None:
    assert show_range(low, high, unit, system) == shown


@pytest.mark.parametrize(
    ("field_id", "known", "shown"),
    [
        ("product.weight", Value(low=8.0, high=14.0, spread=True), "8 to 14 kg"),
        ("product.weight", Fact(field="product.weight", low=8.0, high=8.0, approx=True), "about 8 kg"),
        ("product.weight", Fact(field="product.weight", low=None, high=8.0, approx=True), "at most 8 kg"),
        ("product.sizes", Value(low=4.0, high=4.0), "4"),
        ("cleaning.method", Value(value="clean_in_place"), "clean in place"),
        ("handling.squeeze", Value(value=True, hedged=True), "yes (not sure)"),
        ("handling.squeeze", Value(value=False), "no"),
        ("site.before", Value(value="case\x1b[2J sealer_2\n[b]"), "case sealer_2 [b]"),
    ],
)
def test_what_is_known_of_a_field_reads_as_words(field_id: str, known: Value | Fact, shown: str) -> None:
    assert show_value(field_id, known, "si") == shown


@pytest.mark.parametrize(
    ("texts", "system"),
    [
        (["16x12x10 in cases, 30 lb, about 25 a minute up to a mezzanine"], "us"),
        (["12'6\" up"], "us"),
        (["twelve feet"], "us"),
        (["kept at -10F"], "us"),
        (["400×300×250 mm, 14 kg"], "si"),
        (["rises 3.5m", "the room is at 4 °C"], "si"),
        (["two metres"], "si"),
        (["ceiling 12 ft", "cases 400x300 mm", "14 kg each"], "si"),
        (["we come in at the mezzanine and go C path"], "us"),
        ([], "us"),
    ],
)
def test_the_units_shown_follow_the_words_of_the_visitor(texts: list[str], system: str) -> None:
    assert system_of(texts) == system


def test_every_field_has_a_label_and_every_label_a_field() -> None:
    assert set(labels()) == set(vocabulary())


def test_labels_can_be_told_apart_and_read_as_plain_words() -> None:
    assert len(set(labels().values())) == len(labels())
    for said in labels().values():
        assert said == said.strip().lower()
        assert "_" not in said


def test_a_further_size_says_which() -> None:
    assert label("product.length") == "product length"
    assert label("product.length", 3) == "product length, size 3"


def test_a_field_that_does_not_exist_has_no_label() -> None:
    with pytest.raises(KeyError):
        label("product.heigth")
