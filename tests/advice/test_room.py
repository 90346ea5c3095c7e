"""Ceiling, floor, passage, door and road: the figures in the lines are those of the result."""

import re
from collections.abc import Mapping
from typing import Any

import pytest

from intake.advice import Answer, Brief, shipping, way_in
from intake.spec.flat import Spec

TRAILER = 102 * 0.0254
"""102 inches: the width that states may not forbid on the National Network without a permit (23 CFR 658.15)."""


def brief(job: dict[str, Any], **more: Any) -> Brief:
    return Brief(spec=Spec.from_flat(job | more), system="si")


def line(answer: Answer, lead: str) -> str:
    (found,) = [one for one in answer.lines if one.startswith(lead)]
    return found


def lengths(text: str) -> list[float]:
    """Every length in a line, in metres."""
    return [float(one) * (1e-3 if unit == "mm" else 1.0) for one, unit in re.findall(r"([\d.]+) (mm|m)\b", text)]


def test_the_figures_in_the_lines_are_those_of_the_result(whole_briefs: Mapping[str, Brief]) -> None:
    for name, one in whole_briefs.items():
        for family in one.result.standing:
            found, answer = one.result.families[family], way_in(one, family)
            height, length, width = (
                found.figures[figure].value for figure in ("overall_height", "floor_length", "floor_width")
            )
            assert lengths(line(answer, "Overhead"))[0] == pytest.approx(height, abs=0.0051), (name, family)
            assert lengths(line(answer, "Floor"))[:2] == pytest.approx([length, width], abs=0.0051), (name, family)
            smallest = sorted(value for value in (height, length, width) if value is not None)[:2]
            assert lengths(line(answer, "Way in"))[2:4] == pytest.approx(smallest, abs=0.0051), (name, family)
            assert answer.data["family"] == family


def test_the_margin_told_of_the_floor_is_that_of_the_tighter_side(whole_briefs: Mapping[str, Brief]) -> None:
    for one in whole_briefs.values():
        found = one.best
        assert found is not None
        margins = [found.check(id).margin for id in ("room_length", "room_width")]  # type: ignore[union-attr]
        least = min(margin for margin in margins if margin is not None)
        assert f"{least * 100:.0f} % to spare" in line(way_in(one), "Floor")


@pytest.mark.parametrize(
    ("door", "outcome"),
    [
        ((3.0, 3.0), "it goes in whole"),
        ((1.0, 2.1), "it goes in as parts of 900 mm by 1.4 m at the most and is joined on the spot"),
        ((0.5, 0.5), "even in parts of 900 mm by 1.4 m it does not pass"),
    ],
)
def test_a_door_lets_it_in_whole_or_in_parts_or_not_at_all(
    door: tuple[float, float], outcome: str, whole_jobs: Mapping[str, dict[str, Any]]
) -> None:
    one = brief(whole_jobs["cases"], **{"space.opening_width": door[0], "space.opening_height": door[1]})
    assert outcome in line(way_in(one, "spiral"), "Way in")
    found = one.result.families["spiral"]
    stuck = [check.id for check in found.failed if check.id == "doorway_split"]
    assert bool(stuck) == outcome.startswith("even")


def test_what_nobody_said_is_asked_for(cases: dict[str, Any]) -> None:
    bare = {name: value for name, value in cases.items() if not name.startswith("space.")}
    answer = way_in(brief(bare))
    assert line(answer, "Overhead").endswith("How high is it to the lowest thing there: ceiling, beam, pipe or lamp?")
    assert line(answer, "Floor").endswith("How much is there?")
    assert line(answer, "Way in").endswith("What is the smallest door on the way?")


def test_too_little_room_is_said_to_be_too_little(cases: dict[str, Any]) -> None:
    answer = way_in(brief(cases, **{"space.ceiling": 4.2}), "continuous_lift")
    assert line(answer, "Overhead").endswith("and there is 4.2 m; it does not fit.")


def test_a_passage_underneath_is_spoken_of_only_where_there_is_one(whole_jobs: Mapping[str, dict[str, Any]]) -> None:
    assert not [one for one in way_in(brief(whole_jobs["mail totes"])).lines if one.startswith("Underneath")]
    people = brief(whole_jobs["mail totes"], **{"space.passage": "people"})
    check = people.best.check("passage") if people.best is not None else None
    assert check is not None
    assert lengths(line(way_in(people), "Underneath")) == pytest.approx([check.value, check.limit], abs=0.0051)
    assert check.limit == pytest.approx(2.1)


def test_a_machine_ships_whole_up_to_the_width_of_a_trailer_and_in_parts_beyond(
    whole_briefs: Mapping[str, Brief],
) -> None:
    seen = set()
    for one in whole_briefs.values():
        for family in one.result.standing:
            answer = shipping(one, family)
            width = answer.data["width"]
            assert answer.data["limit"] == pytest.approx(TRAILER, abs=0.002)
            assert answer.data["whole"] == (width <= answer.data["limit"])
            assert ("goes in parts" in answer.lines[0]) == (not answer.data["whole"])
            assert lengths(answer.lines[0])[0] == pytest.approx(width, abs=0.0051)
            assert "confirms" in answer.lines[1]
            seen.add(answer.data["whole"])
    assert seen == {True, False}


@pytest.mark.parametrize("ask", [way_in, shipping])
def test_while_none_leads_it_is_said_why_and_a_family_that_there_is_not_is_an_error(ask: Any) -> None:
    early = Brief(spec=Spec.from_flat({"product.type": "case"}))
    assert "how many a minute" in ask(early).lines[0]
    assert dict(ask(early).data) == {}
    with pytest.raises(KeyError):
        ask(early, "escalator")
