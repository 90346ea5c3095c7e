"""The recommendation in lines: what it names, in which units, and that the cautions always close it."""

from collections.abc import Callable
from typing import Any

import pytest

from intake.advice import caution_lines, family_name, recommendation
from intake.advice.cautions import ALWAYS
from intake.interview.wording import in_force
from intake.sizing.result import FAMILIES, Assumption, Check, Figure, Result
from intake.spec.flat import Spec

SPEC = Spec.from_flat({"product.type": "case", "rate.normal": 20, "rise.height": 3})
GRIP = Assumption(
    id="belt_friction_board", about=("product.surface",), test="test.slip_angle", low=0.4, typical=0.5, high=0.6,
    unit="1", values=None, basis="common practice, no source",
)  # fmt: skip
PEAK = Assumption(
    id="peak_of_our_own", about=("rate.peak",), test=None, low=20.0, typical=26.0, high=32.0, unit="1/min", values=None,
    basis="common practice, no source",
)  # fmt: skip


@pytest.fixture
def usual(sized: Callable[..., Result], fails: Callable[..., Check]) -> Result:
    best: dict[str, Any] = {
        "verdict": "depends",
        "depends_on": ("peak_of_our_own", "space.ceiling"),
        "variant": "two_runs",
        "reasons": {"floor": 0.9, "simplicity": 1.0},
        "figures": {
            "floor_length": Figure(value=6.0, unit="m", low=5.5, high=6.5),
            "belt_speed": Figure(value=0.3, unit="m/s"),
            "motor_power": Figure(value=750.0, unit="W"),
            "pass_under": Figure(value=None, unit="m", needs=("space.passage",)),
            "lead_time": Figure(value=8.0, unit="week", low=6.0, high=10.0),
        },
        "checks": (Check(id="slip", sense="at_most", value=0.4, limit=0.5, unit="1", passes=True, assumes=(GRIP.id,)),),
    }
    out = {"verdict": "out", "checks": (fails("rate", 140.0, 31.0, "1/min"),)}
    spiral = {"reasons": {"floor": 0.5, "simplicity": 0.98}}
    return sized(
        {"incline": best, "index_lift": out, "spiral": spiral},
        best="incline",
        second="spiral",
        flags=("slip_test",),
        assumptions=(GRIP, PEAK),
        share=0.97,
        decided=True,
        why_best="spiral needs more floor",
    )


def line_with(words: str, lines: list[str]) -> str:
    found = [line for line in lines if words in line]
    assert len(found) == 1, (words, lines)
    return found[0]


def test_it_opens_with_the_best_family_and_what_it_depends_on(usual: Result) -> None:
    first = recommendation(usual, SPEC, "si")[0]
    assert family_name("incline") in first
    assert "peak rate and clear height overhead" in first


def test_figures_come_in_the_visitors_units_and_unknown_ones_not_at_all(usual: Result) -> None:
    si, us = recommendation(usual, SPEC, "si"), recommendation(usual, SPEC, "us")
    assert "floor length 6 m (5.5 to 6.5 m)" in line_with("floor length", si)
    assert "19 ft 8.2 in" in line_with("floor length", us)
    assert "0.3 m/s" in line_with("belt speed", si)
    assert "59.1 ft/min" in line_with("belt speed", us)
    assert not [line for line in si if "pass under" in line]


def test_it_says_why_in_the_words_of_the_sizing(usual: Result) -> None:
    assert "Why: Spiral needs more floor." in recommendation(usual, SPEC, "si")


def test_it_names_what_it_assumes_with_the_range(usual: Result) -> None:
    assumed = line_with("Assumed", recommendation(usual, SPEC, "si"))
    assert "peak rate 26/min (20 to 32/min)" in assumed
    assert "a friction of 0.5 (0.4 to 0.6) between board and belt" in assumed


def test_what_is_ruled_out_is_said_with_its_figures(usual: Result) -> None:
    out = line_with("Ruled out", recommendation(usual, SPEC, "si"))
    assert out == "Ruled out: indexing chain lift: 140/min is over its rate of 31/min."


def test_families_that_are_out_for_the_same_reason_share_a_line(
    sized: Callable[..., Result], fails: Callable[..., Check]
) -> None:
    cold = {"verdict": "out", "checks": (fails("temperature_zone", "freezer", "ambient"),)}
    some = recommendation(sized({"spiral": cold, "incline": cold}, best="side_grip"), SPEC, "si")
    assert "spiral conveyor and inclined belt conveyor" in line_with("Ruled out", some)
    everywhere = sized({name: cold for name in FAMILIES}, refer_out="The room is a freezer.")
    assert not [line for line in recommendation(everywhere, SPEC, "si") if line.startswith("Ruled out")]


def test_the_share_of_cases_in_which_it_stays_best_is_said(usual: Result) -> None:
    assert "97 %" in line_with("stays best", recommendation(usual, SPEC, "si"))


@pytest.mark.parametrize(
    "parts", [{}, {"best": "incline"}, {"refer_out": "freezer"}, {"best": "spiral", "second": "incline"}]
)
def test_every_recommendation_ends_with_the_cautions(sized: Callable[..., Result], parts: dict[str, Any]) -> None:
    always = [in_force().find(f"caution.{name}") for name in ALWAYS]
    lines = recommendation(sized(None, **parts), SPEC, "us")
    assert lines[-len(always) :] == always
    assert len(lines) > len(always)


def test_nothing_fits_is_said_first_with_the_reason(sized: Callable[..., Result], fails: Callable[..., Check]) -> None:
    out = {"verdict": "out", "checks": (fails("hazard", "yes", "not a classified area"),)}
    result = sized(
        {name: out for name in FAMILIES}, refer_out="The area is classified.", flags=("hazardous_refer_out",)
    )
    first = recommendation(result, SPEC, "si")[0]
    assert "refer it out" in first
    assert first.endswith("The area is classified.")


def test_too_early_says_what_is_missing(sized: Callable[..., Result]) -> None:
    first = recommendation(sized(), Spec.from_flat({"product.type": "case"}), "si")[0]
    assert "its size" in first
    assert "how many a minute" in first
    assert "what travels" not in first


def test_every_flag_of_the_contract_has_its_sentence(sized: Callable[..., Result]) -> None:
    flags = str.split(
        "slip_test tip_test squeeze_test empties_test inversion multi_size_changeover transfer_small_product "
        "too_tall_consult tall_guarding ship_split lead_time_risk washdown_pressure exposed_food hot_product "
        "ceiling_conflict space_conflict rate_too_high freezer_refer_out hazardous_refer_out heavy_refer"
    )
    lines = caution_lines(sized(flags=tuple(flags)))
    assert len(lines) == len(set(lines)) == len(flags) + len(ALWAYS)


def test_every_family_has_a_name_of_the_trade() -> None:
    names = [family_name(family) for family in FAMILIES]
    assert len(set(names)) == len(FAMILIES)
    assert not [name for name in names if "_" in name]
