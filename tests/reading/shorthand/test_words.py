"""One way of typing at a time: guards, words that mean two things, what is still to be asked."""

from typing import Any

import pytest

from intake.reading import read


def _facts(text: str, asked: str | None = None) -> dict[str, Any]:
    return {fact.field: fact.low if fact.is_number else fact.value for fact in read(text, asked, shorthand=True).facts}


def test_in_is_inches_behind_a_figure_and_infeed_before_a_height() -> None:
    assert _facts("cs 16x12x10 in 30#")["product.length"] == pytest.approx(16 * 0.0254)
    assert _facts("cs 16x12x10 in 30#").get("rise.infeed_height") is None
    assert _facts("in 30\" out 14'")["rise.infeed_height"] == pytest.approx(30 * 0.0254)
    both = _facts("pk 32 in 30\" out 14'")
    assert both["rate.peak"] == 32
    assert both["rise.infeed_height"] == pytest.approx(30 * 0.0254)


def test_in_before_weeks_is_no_height() -> None:
    assert _facts("trk in 6 wks") == {"project.weeks": 6}


def test_m_is_a_minute_behind_a_stroke_and_a_metre_behind_a_figure() -> None:
    assert _facts("cs 25/m up 4m") == {
        "product.type": "case", "rate.normal": 25, "rise.direction": "up", "rise.height": 4
    }  # fmt: skip


def test_h_is_hours_a_day_or_a_height() -> None:
    assert _facts("480V 3ph 16h/d")["site.hours"] == 16
    assert _facts('btl 3" dia 9" h')["product.height"] == pytest.approx(9 * 0.0254)


def test_l_is_left_behind_ninety_and_a_length_beside_others() -> None:
    assert _facts("90L strt?")["rise.turn"] == 270
    assert _facts('16" L 12" W 10" H')["product.length"] == pytest.approx(16 * 0.0254)
    assert _facts('L 16" W 12" H 10"')["product.length"] == pytest.approx(16 * 0.0254)
    assert "rise.turn" not in _facts("drums 90 l 20kg")


def test_c_is_celsius_behind_a_figure() -> None:
    assert _facts("rm 4C")["temperature.room"] == 4


def test_crt_is_a_crate_unless_a_kind_of_product_was_said() -> None:
    assert _facts("crt 600x400x300mm")["product.type"] == "crate"
    assert _facts("cs 16x12x10 crt")["product.surface"] == "corrugated"
    assert _facts("cs 16x12x10 crt")["product.type"] == "case"


def test_fl_is_full_and_a_floor_beside_its_figures() -> None:
    assert _facts("kegs fl 160#")["product.fill"] == "full"
    assert "product.fill" not in _facts("fl 20x10' mezz")
    assert "product.fill" not in _facts("cs to 2nd fl")
    assert "product.fill" not in _facts("cs fl->mezz")


def test_pm_behind_a_small_figure_is_the_afternoon() -> None:
    assert _facts("cs 20 pm")["rate.normal"] == 20
    assert "rate.normal" not in _facts("cs 3 pm")


def test_an_arrow_goes_up_or_down_by_which_is_higher() -> None:
    up, down = _facts('36" > 12\'6"'), _facts("9' -> 36\"")
    assert (up["rise.direction"], down["rise.direction"]) == ("up", "down")
    assert up["rise.infeed_height"] == pytest.approx(36 * 0.0254)
    assert down["rise.discharge_height"] == pytest.approx(36 * 0.0254)


def test_an_arrow_between_other_figures_is_left_to_the_reader() -> None:
    for text in ("30# > 40#", "12 > 14", "cs > 12/m"):
        assert read(text, shorthand=True) == read(text)


def test_a_bare_peak_is_per_minute_unless_the_line_counts_per_hour() -> None:
    assert _facts("pk 32") == {"rate.peak": 32}
    assert _facts("1200/h pk 1500/h")["rate.peak"] == 25
    assert _facts("1200/h pk 1500").get("rate.peak") != 1500


@pytest.mark.parametrize(
    ("typed", "field", "value"),
    [
        ("no sq", "handling.squeeze", False), ("sq n", "handling.squeeze", False), ("sq: n", "handling.squeeze", False),
        ("sq y", "handling.squeeze", True), ("sq ok", "handling.squeeze", True), ("w/o lid", "product.closed", False),
        ("lid y", "product.closed", True), ("air y", "site.air", True), ("no air", "site.air", False),
        ("food n", "cleaning.exposed_food", False), ("haz y", "site.hazardous_area", True),
        ("NO INV", "handling.invert", False), ("bks up y", "rate.backs_up", True), ("smpl n", "project.samples", False),
        ("press top y", "handling.press_top", True), ("turn flat n", "handling.turn_flat", False),
    ],
)  # fmt: skip
def test_no_x_x_n_x_y_and_x_ok(typed: str, field: str, value: bool) -> None:
    assert _facts(typed) == {field: value}


def test_a_no_belongs_to_the_label_behind_it_where_the_word_before_stands_alone() -> None:
    assert _facts("clsd no sq") == {"product.closed": True, "handling.squeeze": False}
    assert _facts("no sq no inv") == {"handling.squeeze": False, "handling.invert": False}
    assert _facts("sq no inv no") == {"handling.squeeze": False, "handling.invert": False}


@pytest.mark.parametrize(
    "typed", ["sq?", "no sq?", "air?", "food y?", "frag?", "amb?", "wpdn?", "fl?", "mt?", "clsd?", "hp wash?"]
)
def test_what_stands_with_a_question_mark_is_still_to_be_asked(typed: str) -> None:
    assert _facts(f"cs {typed} 25/m") == {"product.type": "case", "rate.normal": 25}


def test_an_ambiguous_figure_is_asked_back() -> None:
    heard = read("flr 20x10", shorthand=True)
    assert {doubt.field for doubt in heard.doubts} == {"space.length"}
    assert not heard.facts


def test_a_line_as_typed_on_the_phone() -> None:
    text = "cs 16x12x10 30# crt 25/m pk 32 in 30\" out 14' amb wpdn flr 20x10 clg 18 no sq clsd taped ppl under"
    assert _facts(text).keys() >= {
        "product.type", "product.surface", "rate.peak", "rise.infeed_height", "rise.discharge_height",
        "temperature.zone", "cleaning.method", "handling.squeeze", "product.closed", "space.passage",
    }  # fmt: skip
    plain = {fact.field for fact in read(text).facts}
    assert "rate.peak" not in plain  # what visitors write is never read as shorthand
