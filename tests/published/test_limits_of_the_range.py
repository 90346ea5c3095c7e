"""Limits that the law, a standard or a published table sets, against the range data that ships.

Most figures of the range are an invented maker's. These are not his to choose.
"""

from types import SimpleNamespace
from typing import Any

import pytest

from intake import size
from intake.sizing import load_range
from intake.sizing.drives import derated

IN = 0.0254


def test_a_machine_goes_whole_on_a_road_no_wider_than_the_law_allows() -> None:
    # 23 CFR 658.15(a): 102 in on the US National Network. Read.
    limit = load_range().common.trailer_width
    assert limit <= 102 * IN
    assert limit == pytest.approx(102 * IN, abs=0.001)


@pytest.mark.parametrize(
    ("least", "source"),
    [
        (80 * IN, "29 CFR 1910.36(g)(1), below a projection; 2010 ADA Standards, 307.4"),
        (2.1, "ISO 14122-2:2016, headroom of walkways (from memory)"),
    ],
)
def test_people_pass_underneath_with_the_headroom_of_the_rules(least: float, source: str) -> None:
    assert load_range().common.headroom_people >= least, source


@pytest.mark.parametrize("height", [1.9, 2.2, 2.35, 2.45, 2.6, 3.0])
def test_nobody_is_led_under_a_machine_lower_than_the_rules_allow(height: float, job: dict[str, Any]) -> None:
    # 29 CFR 1910.36(g)(1): 80 in below a projection. What hangs below the belt is taken off the height of its end.
    found = size(job | {"rise.discharge_height": height, "space.passage": "people"})
    for name, family in found.families.items():
        clear, passage = family.figures["pass_under"].value, family.check("passage")
        assert clear is not None
        assert passage is not None
        assert clear == pytest.approx(height - load_range().families[name].structure_below)
        assert passage.passes is False or clear >= 80 * IN, name
        assert passage.passes is not False or clear < 2.1, name


def test_what_must_pass_higher_than_people_gets_more_than_people() -> None:
    # The figures for trucks are common practice, no source: 29 CFR 1910.176(a) names none.
    common = load_range().common
    assert common.headroom_people < common.headroom_pallet_truck < common.headroom_forklift


def test_the_washdown_build_bears_the_pressure_of_the_9k_water_test() -> None:
    # ISO 20653, 9K: 8000 to 10000 kPa (second hand). A build for the hose should not be weaker than that jet.
    assert load_range().families["washdown_spiral"].wash_pressure_most >= 10e6


def test_the_usual_air_is_within_what_the_cylinders_are_rated_for() -> None:
    # ISO 15552:2018, abstract: 1 000 kPa at most.
    assert load_range().families["index_lift"].air_pressure_usual <= 1e6


# Published static friction, dry, and the assumption of ours that has to hold it within its plausible range.
FRICTION = [
    ("belt_friction_board", 0.5, "cardboard on cardboard: European guidelines on cargo securing, 8.2.1"),
    ("belt_friction_board", 0.5, "cardboard on wooden pallet: CTU Code 2014, Annex 7, Appendix 2"),
    ("belt_friction_slick", 0.3, "shrink film on steel, and on shrink film: European guidelines, 8.2.1"),
    ("belt_friction_slick", 0.2, "smooth metal on smooth metal: CTU Code 2014, Annex 7, Appendix 2"),
    ("belt_friction_wood", 0.4, "sawn timber on steel: European guidelines, 8.2.1"),
    ("belt_friction_wood", 0.3, "wooden pallet on stainless sheet: CTU Code 2014, Annex 7, Appendix 2"),
    ("belt_friction_wood", 0.5, "wood on wood: OpenStax University Physics 1, Table 6.1"),
]


@pytest.mark.parametrize(("assumption", "published", "source"), FRICTION)
def test_an_assumed_friction_range_holds_the_published_coefficient(
    assumption: str, published: float, source: str
) -> None:
    rule = next(rule for rule in load_range().rules if rule.id == assumption)
    assert rule.low <= published <= rule.high, source


@pytest.mark.parametrize("surface", ["plastic", "wood", "metal"])
def test_what_published_tables_put_lower_still_is_possible_and_gets_a_test_on_samples(
    surface: str, job: dict[str, Any]
) -> None:
    # CTU Code 2014, Annex 7, Appendix 2: plastic pallet on stainless sheet 0.15, planed wood on stainless sheet 0.2.
    # OpenStax University Physics 1, Table 6.1: steel on steel, oiled, 0.05.
    # OpenStax University Physics 1, Table 6.1: steel on steel, oiled, 0.05. They are for sheet and planks, not for
    # belts, and lie below our plausible range for plastic and wood: so nobody may be spared the test.
    found = size(job | {"product.surface": surface})
    leaning = [a.id for a in found.assumptions if a.test == "test.slip_angle" and a.id.startswith("belt_friction")]
    assert leaning
    assert all(rule.possible[0] <= 0.05 for rule in load_range().rules if rule.id in leaning)
    assert "slip_test" in found.flags


LIMITS: Any = SimpleNamespace(
    temperature_derating_from=313.15,
    temperature_derating_per_k=0.006,
    speed_derating_from=0.6,
    speed_derating_per_m_s=0.25,
    service_hours_full=16.0,
    service_factor_long=1.15,
)

BY_HAND = [  # room [K], speed [m/s], hours a day, share by hand
    pytest.param(293.15, 0.3, 8.0, 1.0, id="cool, slow, one shift"),
    pytest.param(323.15, 0.3, 8.0, 1 - 10 * 0.006, id="10 K above: 6 % less"),
    pytest.param(293.15, 0.8, 8.0, 1 - 0.2 * 0.25, id="0.2 m/s above: 5 % less"),
    pytest.param(293.15, 0.3, 20.0, 1 / 1.15, id="20 hours: divided by 1.15"),
    pytest.param(293.15, 0.3, 16.0, 1.0, id="16 hours are still full"),
    pytest.param(323.15, 0.8, 20.0, 0.94 * 0.95 / 1.15, id="all three: 0.94 x 0.95 / 1.15 = 0.7765"),
    pytest.param(513.15, 0.3, 8.0, 0.05, id="far too hot: a twentieth is left, never less than nothing"),
]


@pytest.mark.parametrize(("room", "speed", "hours", "share"), BY_HAND)
def test_the_allowed_pull_is_derated_as_by_hand(room: float, speed: float, hours: float, share: float) -> None:
    # Own arithmetic: the figures are an invented maker's, the form (rating x temperature x speed / service factor) is
    # common practice, no source.
    assert derated(room, speed, hours, LIMITS) == pytest.approx(share, rel=1e-12)
