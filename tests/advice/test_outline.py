"""The outline of a machine: its extents are the figures, its path is the job's, and nothing is made up."""

from collections.abc import Iterator
from itertools import pairwise
from math import atan2, degrees, hypot, pi, radians, tan
from random import Random
from typing import Any

import pytest
from whole_jobs import varied, whole_jobs

from intake.advice import Brief
from intake.advice.outline import Box, Circle, Level, Line, Outline, Part, Point, outline
from intake.sizing.result import FAMILIES, FamilyResult
from intake.spec.flat import Spec

FlatSpec = dict[str, Any]
MM = 1e-3
TRIES = 3


def _jobs() -> Iterator[tuple[str, FlatSpec]]:
    """Whole jobs as they are and with other figures; some with another heading, some under a low ceiling."""
    rng = Random("outline")
    for name, job in whole_jobs().items():
        yield name, job
        for place in range(TRIES):
            other = varied(job, rng)
            if place == 0:
                top = max(other["rise.infeed_height"], other["rise.discharge_height"]) + other["product.height"]
                other["space.ceiling"] = top + rng.uniform(0.02, 0.4)
            yield f"{name} {place}", other


def _outlines() -> list[tuple[str, Brief, FamilyResult, Outline]]:
    """Every family of every job that has a layout, whatever its verdict."""
    found = []
    for name, job in _jobs():
        brief = Brief(spec=Spec.from_flat(job), system="si")
        for family in FAMILIES:
            drawn = outline(brief, family)
            if drawn is not None:
                found.append((f"{name} {family}", brief, brief.result.families[family], drawn))
    return found


@pytest.fixture(scope="module")
def outlines() -> list[tuple[str, Brief, FamilyResult, Outline]]:
    return _outlines()


def _points(part: Part) -> tuple[Point, ...]:
    if isinstance(part, Line):
        return part.points
    if isinstance(part, Box):
        return (part.left, part.bottom), (part.right, part.top)
    if isinstance(part, Circle):
        (x, y), r = part.centre, part.radius
        return (x - r, y - r), (x + r, y + r)
    return ()


def _of(drawn: list[tuple[str, Brief, FamilyResult, Outline]], *families: str) -> Iterator[Any]:
    rows = [row for row in drawn if row[2].family in families]
    assert len(rows) > 10
    return iter(rows)


def test_all_families_are_drawn_often_enough_for_these_tests_to_say_something(outlines: Any) -> None:
    count = {family: sum(found.family == family for _, _, found, _ in outlines) for family in FAMILIES}
    assert min(count.values()) >= 20, count
    assert {found.variant for _, _, found, _ in outlines} >= {"s_path", "c_path", "switchback_2_runs"}


def test_the_extents_are_the_figures_within_a_millimetre(outlines: Any) -> None:
    for name, _, found, drawn in outlines:
        length, width, height = (
            found.figures[key].value for key in ("floor_length", "floor_width", "overall_height")
        )  # fmt: skip
        assert drawn.plan.envelope.width == pytest.approx(length, abs=MM), name
        assert drawn.plan.envelope.height == pytest.approx(width, abs=MM), name
        assert drawn.elevation.envelope.width == pytest.approx(length, abs=MM), name
        assert drawn.elevation.envelope.height == pytest.approx(height, abs=MM), name


def test_nothing_of_machine_path_or_product_lies_outside_of_the_extents(outlines: Any) -> None:
    for name, _, found, drawn in outlines:
        roles = ("machine", "path") if found.verdict == "out" else ("machine", "path", "product")
        for view in (drawn.elevation, drawn.plan):
            box = view.envelope
            for role in roles:  # a product too wide for every belt reaches past the machine that is out for it
                for part in view.of(role):
                    for x, y in _points(part):
                        assert box.left - MM <= x <= box.right + MM, (name, part)
                        assert box.bottom - MM <= y <= box.top + MM, (name, part)


def test_a_belt_on_plan_reaches_from_one_end_of_the_floor_to_the_other(outlines: Any) -> None:
    for name, _, found, drawn in _of(outlines, "incline", "cover_belt", "cleated_incline"):
        points = [point for part in (*drawn.plan.of("path"),) for point in _points(part)]
        assert min(x for x, _ in points) == pytest.approx(0.0, abs=MM), name
        reach = drawn.plan.envelope.right
        if found.variant != "switchback_2_runs":
            assert max(x for x, _ in points) == pytest.approx(reach, abs=MM), name


def test_infeed_and_discharge_stand_at_the_heights_of_the_job(outlines: Any) -> None:
    for name, brief, _, drawn in outlines:
        infeed, discharge = (brief.spec.of(f"rise.{end}_height").largest for end in ("infeed", "discharge"))
        assert drawn.infeed.height == pytest.approx(infeed, abs=MM), name
        assert drawn.discharge.height == pytest.approx(discharge, abs=MM), name
        levels = {part.key: part.height for part in drawn.elevation.parts if isinstance(part, Level)}
        assert levels["infeed"] == drawn.infeed.height
        assert levels["discharge"] == drawn.discharge.height


def test_the_path_leads_from_infeed_to_discharge_without_a_gap_and_without_turning_back_in_height(
    outlines: Any,
) -> None:
    for name, brief, found, drawn in outlines:
        heights = [z for _, _, z in drawn.path]
        lift = brief.spec.of("product.height").largest / 2.0 if found.family == "side_grip" else 0.0
        assert heights[0] == pytest.approx(drawn.infeed.height + lift, abs=MM), name
        assert heights[-1] == pytest.approx(drawn.discharge.height + lift, abs=MM), name
        assert drawn.path[0][:2] == drawn.infeed.at
        assert drawn.path[-1][:2] == drawn.discharge.at
        way = 1.0 if heights[-1] > heights[0] else -1.0
        assert all((b - a) * way >= -1e-9 for a, b in pairwise(heights)), name


def test_product_comes_on_along_x_and_leaves_with_the_heading_of_the_layout(outlines: Any) -> None:
    for name, _, found, drawn in outlines:
        (x0, y0, _), (x1, y1, _) = drawn.path[0], drawn.path[1]
        assert (round(y1 - y0, 9), x1 > x0) == (0.0, True), name
        (x0, y0, _), (x1, y1, _) = drawn.path[-2], drawn.path[-1]
        assert hypot(x1 - x0, y1 - y0) > MM, name
        clockwise = -degrees(atan2(y1 - y0, x1 - x0)) % 360.0
        assert abs((clockwise - drawn.discharge.heading + 180.0) % 360.0 - 180.0) < 0.01, name
        turn = found.figures.get("discharge_turn")
        assert turn is None or turn.value == drawn.discharge.heading


def test_the_heading_is_the_one_asked_for_unless_that_is_said(outlines: Any) -> None:
    for name, brief, found, drawn in outlines:
        asked = brief.spec.of("rise.turn").largest % 360.0
        differs = abs(drawn.discharge.heading - asked) > 0.05
        assert differs == any(note.key == "other_heading" for note in drawn.notes), name
        if found.verdict != "out":
            assert not differs, name


def test_a_helix_is_a_ring_within_its_floor_that_rises_by_its_figures(outlines: Any) -> None:
    for name, _, found, drawn in _of(outlines, "spiral", "washdown_spiral"):
        value = {key: found.figures[key].value for key in found.figures if found.figures[key].value is not None}
        outer = max(part.radius for part in drawn.plan.of("machine") if isinstance(part, Circle))
        assert 2.0 * outer == pytest.approx(value["outside_diameter"], abs=MM), name
        assert 2.0 * outer <= value["floor_width"] + MM, name
        helix = drawn.path[1:-1]
        middle = (value["floor_length"] / 2.0, value["floor_width"] / 2.0)
        for x, y, _ in helix:
            assert hypot(x - middle[0], y - middle[1]) == pytest.approx(value["path_diameter"] / 2.0, abs=MM), name
        turned = 0.0
        for (xa, ya, _), (xb, yb, _) in pairwise(helix):
            angle = atan2(yb - middle[1], xb - middle[0]) - atan2(ya - middle[1], xa - middle[0])
            turned += (angle + pi) % (2.0 * pi) - pi
        assert abs(turned) / (2.0 * pi) == pytest.approx(value["turns"], abs=1e-6), name
        assert (turned < 0.0) == (found.variant or "").endswith("_clockwise"), name
        # OpenStax, Calculus vol. 3, sec. 3.3 (helix): rise over the length of the turns on plan is the tangent
        on_plan = abs(turned) * value["path_diameter"] / 2.0
        rise = abs(helix[-1][2] - helix[0][2])
        assert rise / on_plan == pytest.approx(tan(radians(value["slope"])), rel=1e-6), name


def test_the_tiers_of_a_helix_in_front_and_behind_make_up_the_whole_of_it(outlines: Any) -> None:
    for name, _, _, drawn in _of(outlines, "spiral", "washdown_spiral"):
        tiers = [part for part in drawn.elevation.of("path") if isinstance(part, Line) and part.tier is not None]
        assert tiers[0].points[0][1] == pytest.approx(drawn.infeed.height), name
        assert tiers[-1].points[-1][1] == pytest.approx(drawn.discharge.height), name
        for one, other in pairwise(tiers):
            assert one.points[-1] == other.points[0], name
            assert one.hidden != other.hidden, name


def test_straight_runs_have_their_slope_and_their_number(outlines: Any) -> None:
    for name, _, found, drawn in _of(outlines, "incline", "cover_belt", "cleated_incline"):
        slopes = []
        for (xa, ya, za), (xb, yb, zb) in pairwise(drawn.path):
            if abs(zb - za) > MM:
                slopes.append(degrees(atan2(abs(zb - za), hypot(xb - xa, yb - ya))))
        assert len(slopes) == found.figures["runs"].value, name
        assert slopes == pytest.approx([found.figures["slope"].value] * len(slopes), abs=0.01), name


def test_the_carriers_of_a_lift_stand_at_their_pitch(outlines: Any) -> None:
    for name, _, found, drawn in _of(outlines, "index_lift", "continuous_lift"):
        heights = [part.points[0][1] for part in drawn.elevation.of("machine") if isinstance(part, Line)]
        pitch = found.figures["carrier_pitch"].value
        assert all(b - a == pytest.approx(pitch, abs=MM) for a, b in pairwise(heights)), name
        low = min(drawn.infeed.height, drawn.discharge.height)
        high = max(drawn.infeed.height, drawn.discharge.height)
        assert heights[0] == pytest.approx(low, abs=MM), name
        assert high - pitch - MM <= heights[-1] <= high + MM, name


def test_an_s_path_goes_on_and_a_c_path_goes_back_with_the_product_beside_the_way(outlines: Any) -> None:
    for name, _, found, drawn in _of(outlines, "side_grip"):
        upright = [(a, b) for a, b in pairwise(drawn.path) if abs(b[0] - a[0]) < 1e-9 and abs(b[2] - a[2]) > MM]
        if abs(drawn.discharge.height - drawn.infeed.height) > 1.0:
            assert len(upright) == 1, name
        assert drawn.path[-1][0] == pytest.approx(0.0 if found.variant == "c_path" else drawn.plan.envelope.right)


def test_one_product_is_drawn_to_scale_at_each_end(outlines: Any) -> None:
    for name, brief, found, drawn in outlines:
        boxes = [part for part in drawn.elevation.of("product") if isinstance(part, Box)]
        tall = brief.spec.of("product.height").largest
        assert [box.height for box in boxes] == pytest.approx([tall, tall]), name
        assert [box.bottom for box in boxes] == pytest.approx([drawn.infeed.height, drawn.discharge.height]), name
        across = brief.spec.of("product.diameter") or brief.spec.of("product.length")
        if not found.turned:
            assert boxes[0].width == pytest.approx(across.largest), name
        if found.family.endswith("_lift"):  # pushed out to any side as it stands
            assert boxes[1].width == boxes[0].width, name


def test_down_is_drawn_down(outlines: Any) -> None:
    lowered = 0
    for name, brief, _, drawn in outlines:
        if brief.spec.word("rise.direction") == "down":
            lowered += 1
            assert drawn.path[0][2] > drawn.path[-1][2], name
    assert lowered > 10


def test_what_does_not_fit_is_told_exactly_where_the_check_fails(outlines: Any) -> None:
    told = {"through_ceiling": 0, "too_long": 0, "too_wide": 0}
    checks = {"through_ceiling": "ceiling", "too_long": "room_length", "too_wide": "room_width"}
    for name, _, found, drawn in outlines:
        if any(check is None for check in map(found.check, checks.values())):
            continue
        for key, id in checks.items():
            fails = found.check(id).fails_at_design
            assert fails == any(note.key == key for note in drawn.notes), (name, key)
            told[key] += fails
    assert min(told.values()) > 3, told


@pytest.mark.parametrize(
    ("field", "note"),
    [
        ("space.ceiling", "no_ceiling"), ("space.length", "no_space_length"), ("space.width", "no_space_width"),
        ("rise.turn", "heading_open"),
    ],
)  # fmt: skip
def test_what_is_not_known_is_left_out_and_said(field: str, note: str) -> None:
    job = dict(whole_jobs()["tea_cases_to_the_loft"])
    whole = outline(Brief(spec=Spec.from_flat(job)), "index_lift")
    del job[field]
    part = outline(Brief(spec=Spec.from_flat(job)), "index_lift")
    assert whole is not None
    assert part is not None
    assert note in {one.key for one in part.notes} - {one.key for one in whole.notes}
    if field == "space.ceiling":
        assert not part.elevation.of("ceiling")


def test_without_any_space_told_none_is_drawn() -> None:
    job = {key: value for key, value in whole_jobs()["tea_cases_to_the_loft"].items() if not key.startswith("space.")}
    drawn = outline(Brief(spec=Spec.from_flat(job)), "index_lift")
    assert drawn is not None
    assert not drawn.plan.of("space")
    assert not drawn.elevation.of("space")


def test_levels_that_nobody_told_are_drawn_as_assumed_and_that_is_said() -> None:
    told = ("rise.infeed_height", "rise.discharge_height")
    job = {key: value for key, value in whole_jobs()["tea_cases_to_the_loft"].items() if key not in told}
    drawn = outline(Brief(spec=Spec.from_flat(job | {"rise.height": 3.0})), "index_lift")
    assert drawn is not None
    assert drawn.discharge.height - drawn.infeed.height == pytest.approx(3.0)
    assert "levels_assumed" in {note.key for note in drawn.notes}


def test_the_passage_is_told_with_what_it_needs() -> None:
    job = whole_jobs()["flour_bags_up_a_floor"] | {"space.passage": "people", "space.ceiling": 9.0}
    for top, key in ((2.9, "passage"), (2.2, "passage_low")):
        drawn = outline(Brief(spec=Spec.from_flat(job | {"rise.discharge_height": top})), "incline")
        assert drawn is not None
        note = next(note for note in drawn.notes if note.key.startswith("passage"))
        assert note.key == key
        assert dict(note.lengths)["under"] == pytest.approx(top - 0.3, abs=MM)


def test_there_is_no_outline_where_nothing_rises() -> None:
    job = whole_jobs()["tea_cases_to_the_loft"] | {"rise.infeed_height": 0.75, "rise.discharge_height": 0.75}
    brief = Brief(spec=Spec.from_flat(job))
    assert all(outline(brief, family) is None for family in FAMILIES)


def test_there_is_no_outline_while_nothing_leads_and_none_of_an_unknown_family() -> None:
    assert outline(Brief(spec=Spec.from_flat({}))) is None
    assert outline(Brief(spec=Spec.from_flat({})), "spiral") is None
    with pytest.raises(KeyError):
        outline(Brief(spec=Spec.from_flat({})), "paternoster")
