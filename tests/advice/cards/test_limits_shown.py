"""Limits of the range as cards show them: the figures of the files, in the visitor's units."""

import tomllib
from typing import Any

import pytest

from intake.advice.brief import Brief
from intake.advice.cards.blanks import Blanks
from intake.sizing.result import FAMILIES
from intake.spec.flat import Spec
from intake.spec.folder import shipped_folder


def value(name: str, system: Any = "si") -> str | None:
    """One blank, with no case."""
    return Blanks(brief=Brief(spec=Spec({}), system=system)).value(name)


def files() -> dict[str, dict[str, Any]]:
    """The range files as they are written."""
    folder = shipped_folder() / "range"
    return {name: tomllib.loads((folder / f"{name}.toml").read_text(encoding="utf-8")) for name in FAMILIES}


@pytest.mark.parametrize(
    ("name", "si", "us"),
    [("limit.spiral.weight_most", "15 kg", "33.1 lb"), ("limit.spiral.rise_most", "7.6 m", "24 ft 11 in"),
     ("limit.common.headroom_people", "2.1 m", "6 ft 11 in"), ("limit.common.hot_product_from", "60 °C", "140 °F"),
     ("limit.index_lift.rate_most", "31/min", "31/min"), ("limit.spiral.slope_most", "12°", "12°"),
     ("limit.cleated_incline.slopes", "45° to 60°", "45° to 60°"),
     ("limit.index_lift.washing", "dry, wipe and low pressure", "dry, wipe and low pressure")],
)  # fmt: skip
def test_a_limit_is_shown_in_either_system(name: str, si: str, us: str) -> None:
    assert value(name, "si") in (si, si.replace("45° to", "45 to"))
    assert value(name, "us") in (us, us.replace("45° to", "45 to"))


@pytest.mark.parametrize("key", ["weight_most", "rise_most", "weeks_typical", "room_coldest"])
def test_the_most_and_the_least_are_those_of_the_files(key: str) -> None:
    figures = {name: rows[key]["is"] for name, rows in files().items() if key in rows}
    most, least = max(figures.values()), min(figures.values())
    assert (value(f"most.{key}") or "").startswith(f"{most:g}")
    assert (value(f"least.{key}") or "").startswith(f"{least:g}")
    assert all(value(f"most.{key}.family") for _ in figures)


def test_long_lengths_are_rounded_to_whole_inches_on_the_safe_side() -> None:
    assert value("limit.continuous_lift.rise_most", "us") == "82 ft"
    assert value("limit.common.headroom_forklift", "us") == "9 ft 1 in"


def test_who_has_a_word_in_its_list() -> None:
    assert value("having.washing.clean_in_place") == "the washdown spiral conveyor"
    assert value("having.washing.no_such_word") is None


def test_the_limit_of_the_leading_family_needs_one() -> None:
    assert value("limit.best.weight_most") is None
