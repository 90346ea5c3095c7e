"""Sketches with text: within the room, to scale, with a word for what does not fit; and pictures that people looked at.

The pictures stand in sketches/. After a change that is meant: SKETCHES=write pytest tests/desk/test_sketch.py, and look
at every one of them before it is kept.
"""

import os
import subprocess
import sys
from pathlib import Path
from random import Random
from typing import Any

import pytest
from whole_jobs import varied, whole_jobs

from intake.advice import Brief
from intake.advice.outline import Outline, outline
from intake.desk.sketch import sketch_lines
from intake.desk.sketch.above import plan_picture
from intake.desk.sketch.picture import Picture
from intake.desk.sketch.side import side_picture
from intake.desk.sketch.signs import BOXES, PLAIN
from intake.desk.sketch.words import Words
from intake.sizing.result import FAMILIES
from intake.spec.flat import Spec
from intake.talk import Interview

FlatSpec = dict[str, Any]
JOBS = whole_jobs()
PICTURES = Path(__file__).with_name("sketches")

COVERED: FlatSpec = {
    "product.type": "carton", "product.surface": "paperboard", "product.length": 0.3, "product.width": 0.25,
    "product.height": 0.1, "product.weight": 9.0, "product.closed": True, "product.rigidity": "rigid",
    "product.underside": "flat", "product.fill": "full", "product.wet": False, "rate.peak": 70.0,
    "rise.direction": "up", "rise.infeed_height": 0.75, "rise.discharge_height": 3.2, "rise.turn": 0.0,
    "space.length": 5.5, "space.width": 0.8, "space.ceiling": 4.0, "handling.squeeze": False, "handling.tilt": 42.0,
    "handling.press_top": True, "handling.fragile": False, "handling.turn_flat": False, "temperature.room": 21.0,
    "cleaning.method": "dry", "cleaning.exposed_food": False, "site.hazardous_area": False, "site.air": False,
    "test.slip_angle": 26.0, "test.tip_angle": 60.0,
}  # fmt: skip
"""Flat cartons that may tilt 42 degrees, in a corridor too narrow for a spiral."""

TALL = JOBS["tea_cases_to_the_loft"] | {"rise.discharge_height": 12.0, "space.ceiling": 14.0, "rate.peak": 45}

# name of the picture: job, columns, rows, family, ASCII, units
GOLDEN: dict[str, tuple[FlatSpec, int, int, str | None, bool, str]] = {
    "spiral_down": (JOBS["oat_trays_down"], 80, 24, None, False, "si"),
    "spiral_away": (JOBS["yogurt_cartons_chilled"], 100, 30, None, False, "si"),
    "washdown_spiral": (JOBS["cheese_crates_washed_down"], 100, 40, None, False, "us"),
    "side_grip_s_path": (JOBS["candle_jars_up"], 80, 24, None, False, "us"),
    "side_grip_c_path": (
        JOBS["candle_jars_up"] | {"rise.turn": 180, "handling.invert": True}, 60, 34, "side_grip", True, "si"
    ),
    "incline": (JOBS["flour_bags_up_a_floor"], 100, 30, None, False, "si"),
    "switchback_too_long": (JOBS["oat_trays_down"], 76, 40, "incline", False, "si"),
    "cover_belt": (COVERED, 100, 30, None, False, "si"),
    "cleated_incline": (JOBS["soap_pouches_up"], 60, 36, None, True, "us"),
    "index_lift": (JOBS["tea_cases_to_the_loft"], 80, 24, None, False, "us"),
    "continuous_lift": (TALL, 80, 30, "continuous_lift", False, "si"),
    "reciprocating_lift": (JOBS["pallets_to_the_gallery"], 80, 24, None, True, "us"),
    "through_the_ceiling": (
        JOBS["tea_cases_to_the_loft"] | {"space.ceiling": 5.0, "space.width": 0.7}, 80, 26, "index_lift", False, "si"
    ),
    "panel_on_a_desk": (JOBS["candle_jars_up"], 30, 10, None, False, "si"),
    "panel_on_a_desk_plain": (JOBS["soap_pouches_up"], 34, 12, None, True, "us"),
    "little_known": (
        {k: v for k, v in JOBS["tea_cases_to_the_loft"].items() if not k.startswith(("space.", "rise.turn"))},
        80, 24, "index_lift", False, "si",
    ),
}  # fmt: skip


def _brief(job: FlatSpec, units: Any = "si") -> Brief:
    return Brief(spec=Spec.from_flat(job), system=units)


@pytest.fixture(scope="module")
def briefs() -> list[Brief]:
    """Whole jobs, and one variation of each under a low ceiling."""
    rng, found = Random("sketch"), []
    for job in JOBS.values():
        other = varied(job, rng)
        top = max(other["rise.infeed_height"], other["rise.discharge_height"]) + other["product.height"]
        other["space.ceiling"] = top + rng.uniform(0.02, 0.6)
        found += [_brief(job, "us"), _brief(other)]
    return found


@pytest.fixture(scope="module")
def outlines(briefs: list[Brief]) -> list[tuple[Outline, Words]]:
    drawn = [(outline(brief, family), Words(brief)) for brief in briefs for family in FAMILIES]
    return [(one, words) for one, words in drawn if one is not None]


@pytest.mark.parametrize("name", GOLDEN)
def test_the_picture_is_the_one_that_was_looked_at(name: str) -> None:
    job, columns, rows, family, ascii, units = GOLDEN[name]
    text = "\n".join(sketch_lines(_brief(job, units), columns, rows, family=family, ascii=ascii)) + "\n"
    path = PICTURES / f"{name}.txt"
    if os.environ.get("SKETCHES") == "write":
        path.parent.mkdir(exist_ok=True)
        path.write_text(text, encoding="utf-8")
    assert text == path.read_text(encoding="utf-8")


def test_every_family_has_a_picture() -> None:
    drawn = {_brief(job).family(family).family for job, _, _, family, _, _ in GOLDEN.values()}  # type: ignore[union-attr]
    assert drawn == set(FAMILIES)


@pytest.mark.parametrize(("columns", "rows"), [(30, 10), (31, 17), (44, 14), (60, 25), (76, 12), (80, 24), (100, 40)])
def test_a_sketch_stays_within_the_room(briefs: list[Brief], columns: int, rows: int) -> None:
    rng = Random(columns)
    for brief in briefs:
        for family in rng.sample(FAMILIES, 3):
            for ascii in (False, True):
                lines = sketch_lines(brief, columns, rows, family=family, ascii=ascii)
                assert 0 < len(lines) <= rows
                assert max(map(len, lines)) <= columns
                assert all(line == line.rstrip() for line in lines)
                assert "for construction" in " ".join(lines) or "slender" in " ".join(lines)


def test_nearly_every_machine_can_be_drawn_in_the_smallest_room(briefs: list[Brief]) -> None:
    lines = [sketch_lines(brief, 30, 10, family=brief.result.best) for brief in briefs if brief.result.best]
    drawn = [rows for rows in lines if "construction" in rows[-1]]
    assert len(drawn) >= 0.9 * len(lines)


def test_the_other_set_of_signs_is_plain_ascii_and_draws_the_same(briefs: list[Brief]) -> None:
    for brief in briefs:
        for family in FAMILIES:
            boxes, plain = (sketch_lines(brief, 80, 30, family=family, ascii=ascii) for ascii in (False, True))
            assert "\n".join(plain).isascii()
            assert len(boxes) == len(plain)


def test_signs_of_one_set_say_different_things() -> None:
    for signs in (BOXES, PLAIN):
        parts = (signs.ceiling, signs.floor, signs.dash, signs.belt, signs.product, signs.misfit, signs.hidden)
        assert len({*parts, *signs.arrows, signs.towards, signs.away}) == len(parts) + 6
        every = "".join(
            (*parts, *signs.arrows, *signs.shallow, *signs.corners, *signs.ends, signs.rising, signs.falling)
        )  # fmt: skip
        assert all(len(sign) == 1 for sign in parts)
        assert every.isprintable()


def _side(drawn: Outline, words: Words, columns: int, rows: int) -> Picture | None:
    return side_picture(drawn, words, columns, rows, BOXES, titled=True, measured=True)


def test_the_side_view_of_a_frame_is_to_scale_within_a_cell(outlines: list[tuple[Outline, Words]]) -> None:
    seen = 0
    for drawn, words in outlines:
        picture = _side(drawn, words, 90, 40)
        if picture is None or not drawn.elevation.caged:
            continue
        floor = next(place for place, row in enumerate(picture.lines) if "floor" in row or row.startswith("_"))
        for top, row in enumerate(picture.lines):
            if "┌" in row and "┐" in row and "■" not in row:
                cells = row.index("┐") - row.index("┌") + 1
                assert abs(cells * picture.per_column - drawn.elevation.envelope.width) <= picture.per_column + 1e-9
                tall = (floor - top + 1) * 2.0 * picture.per_column
                assert abs(tall - drawn.elevation.envelope.height) <= 2.0 * picture.per_column + 1e-9
                seen += 1
    assert seen > 60


def test_the_plan_of_a_frame_is_to_scale_within_a_cell(outlines: list[tuple[Outline, Words]]) -> None:
    seen = 0
    for drawn, words in outlines:
        picture = plan_picture(drawn, words, 70, 34, PLAIN)
        if picture is None:
            continue
        corners = [(place, row) for place, row in enumerate(picture.lines) if row.count("+") == 2]
        if len(corners) != 2 or "!" in "".join(picture.lines):
            continue
        (top, row), (bottom, _) = corners
        cells = row.rindex("+") - row.index("+") + 1
        assert abs(cells * picture.per_column - drawn.plan.envelope.width) <= picture.per_column + 1e-9
        tall = (bottom - top + 1) * 2.0 * picture.per_column
        assert abs(tall - drawn.plan.envelope.height) <= 2.0 * 2.0 * picture.per_column  # an edge may share its row
        seen += 1
    assert seen > 60


def test_the_scale_bar_is_as_long_as_it_says(outlines: list[tuple[Outline, Words]]) -> None:
    for drawn, words in outlines:
        for columns, rows in ((40, 20), (90, 40)):
            picture = _side(drawn, words, columns, rows)
            if picture is None:
                continue
            title = picture.lines[0]
            length, text = words.bar(picture.per_column, max(4, columns // 4))
            assert title.endswith(f" {text}")
            cells = title.count("─") + title.count("├") + title.count("┤")
            assert abs(cells * picture.per_column - length) <= picture.per_column


def test_the_ceiling_is_above_the_machine_exactly_when_it_clears(outlines: list[tuple[Outline, Words]]) -> None:
    clears = through = 0
    for drawn, words in outlines:
        picture = _side(drawn, words, 60, 26)
        if picture is None or not any(" ceiling" in row and "^" not in row for row in picture.lines):
            continue
        rows = picture.lines
        ceiling = next(place for place, row in enumerate(rows) if row.startswith(("═", "!")))
        gutter = rows[ceiling].index(" ceiling")
        drawn_above = any(row[:gutter].strip("┊ ") for row in rows[1:ceiling])
        if any(note.key == "through_ceiling" for note in drawn.notes):
            through += 1
            assert drawn_above
            assert "!" in rows[ceiling]
        else:
            clears += 1
            assert not drawn_above
            assert "!" not in rows[ceiling]
    assert clears > 40
    assert through > 20


@pytest.mark.parametrize("gap", [-0.05, -0.001, 0.0, 0.001, 0.05])
def test_a_millimetre_decides_on_which_side_of_the_ceiling_the_machine_is(gap: float) -> None:
    job = JOBS["tea_cases_to_the_loft"]
    top = _brief(job).result.families["index_lift"].figures["overall_height"].value
    assert top is not None
    lines = sketch_lines(_brief(job | {"space.ceiling": top + gap}), 80, 30, family="index_lift")
    ceiling = next(place for place, row in enumerate(lines) if row.startswith(("═", "!")))
    frame = next(place for place, row in enumerate(lines) if row.startswith(" ┌"))
    assert (ceiling < frame) == (gap >= 0.0)
    assert any("THROUGH THE CEILING" in row for row in lines) == (gap < 0.0)


def test_past_the_end_of_the_space_is_marked_with_a_sign_and_a_word() -> None:
    job = JOBS["flour_bags_up_a_floor"] | {"space.length": 3.0, "space.width": 0.5}
    text = "\n".join(sketch_lines(_brief(job), 100, 40, family="incline"))
    assert "! TOO LONG for the space by" in text
    assert "! TOO WIDE for the space by" in text
    assert "! does not fit" in text


def test_what_is_needed_is_asked_for_while_nothing_leads() -> None:
    text = " ".join(sketch_lines(_brief({}), 80, 24))
    assert "Too early" in text
    assert "its size" in text


def test_a_family_without_a_layout_is_told_by_name() -> None:
    text = " ".join(sketch_lines(_brief({"rise.height": 3.0}), 80, 24, family="spiral"))
    assert text.startswith("No sketch: no layout of the spiral conveyor")


@pytest.mark.parametrize(("columns", "rows"), [(29, 20), (50, 9), (5, 3), (1, 1), (0, 0), (-4, 2)])
def test_too_little_room_is_said_within_it(columns: int, rows: int) -> None:
    lines = sketch_lines(_brief(JOBS["tea_cases_to_the_loft"]), columns, rows)
    assert len(lines) <= max(0, rows)
    assert all(len(line) <= max(1, columns) for line in lines)
    if columns > 40:
        assert lines == ["A sketch needs 30 columns and 10 rows."]


def test_what_leads_is_drawn_for_a_talk_as_for_its_brief() -> None:
    talk = Interview()
    for name, value in JOBS["candle_jars_up"].items():
        talk.know(name, value)
    lines = sketch_lines(talk, 80, 24)
    assert lines == sketch_lines(talk.brief, 80, 24)
    assert lines[0] == "Side-grip elevator"


def test_words_of_visitors_do_not_come_into_a_sketch() -> None:
    hostile = "\x1b[31m[red]=HYPERLINK(1)[/red]\x9b2J<b>"
    job = JOBS["candle_jars_up"] | {"contact.name": hostile, "project.place": hostile, "site.before": hostile}
    clean = sketch_lines(_brief(JOBS["candle_jars_up"]), 80, 24)
    assert sketch_lines(_brief(job), 80, 24) == clean
    assert "\n".join(clean).replace("\n", "").isprintable()


def test_the_same_case_gives_the_same_sketch_in_another_process() -> None:
    code = (
        "import json, sys; from intake.advice import Brief; from intake.spec.flat import Spec;"
        "from intake.desk.sketch import sketch_lines;"
        "sys.stdout.reconfigure(encoding='utf-8');"
        "print('\\n'.join(sketch_lines(Brief(spec=Spec.from_flat(json.load(sys.stdin)), system='si'), 80, 24)));"
        "assert 'textual' not in sys.modules and 'rich' not in sys.modules"
    )
    job = JOBS["oat_trays_down"]
    given = str(job).replace("'", '"').replace("True", "true").replace("False", "false")
    run = subprocess.run(
        [sys.executable, "-c", code], input=given, capture_output=True, encoding="utf-8", check=True,
        env={**os.environ, "PYTHONHASHSEED": "7"},
    )  # fmt: skip
    assert run.stdout.splitlines() == sketch_lines(_brief(job), 80, 24)
