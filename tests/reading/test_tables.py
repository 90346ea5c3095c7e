"""Tables pasted from a spreadsheet: a size a row, a size a column, a property a row."""

from collections.abc import Callable
from typing import Any

import pytest

Facts = Callable[..., dict[str, Any]]
SIZES = {
    "product.length": 0.4, "product.width": 0.3, "product.height": 0.2, "product.weight": 8.0,
    "product.length@2": 0.6, "product.width@2": 0.4, "product.height@2": 0.3, "product.weight@2": 15.0,
}  # fmt: skip


@pytest.mark.parametrize(
    "text",
    [
        "SKU\tL (mm)\tW (mm)\tH (mm)\tWeight (kg)\nA12\t400\t300\t200\t8\nB7\t600\t400\t300\t15",
        "| item | length cm | width cm | height cm | kg |\n|---|---|---|---|---|\n| a | 40 | 30 | 20 | 8,0 |\n"
        "| b | 60 | 40 | 30 | 15,0 |",
        "Size (LxWxH mm)   Weight\n400 x 300 x 200   8 kg\n600 x 400 x 300   15 kg",
        "\tsmall\tlarge\nlength mm\t400\t600\nwidth mm\t300\t400\nheight mm\t200\t300\nweight kg\t8\t15",
        "name;L;W;H;kg\nsmall;400;300;200;8\nlarge;600;400;300;15",
    ],
)
def test_a_size_a_row_or_a_column(facts: Facts, text: str) -> None:
    got = facts(text)
    assert {name: got.get(name) for name in SIZES} == pytest.approx(SIZES)


@pytest.mark.parametrize(
    "text",
    [
        "Weight\t12 kg\nRate\t20 per min\nInfeed height\t800 mm\nDischarge height\t4.2 m",
        "Weight      12      kg\nRate        20      /min\nInfeed height   800   mm\nDischarge height   4.2  m",
        "| Weight | 12 kg |\n| Rate | 20 per min |\n| Infeed height | 800 mm |\n| Discharge height | 4200 mm |",
    ],
)
def test_a_property_a_row(facts: Facts, text: str) -> None:
    want = {"product.weight": 12.0, "rate.normal": 20.0, "rise.infeed_height": 0.8, "rise.discharge_height": 4.2}
    assert facts(text) == pytest.approx(want)


def test_cells_beside_each_other_are_not_one_number(facts: Facts) -> None:
    got = facts("L\tW\tH\n12\t400\t300\n10\t300\t200\nall in mm")
    assert got["product.length"] == pytest.approx(0.012)
    assert got["product.width"] == pytest.approx(0.4)
