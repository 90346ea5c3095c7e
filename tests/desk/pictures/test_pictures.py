"""Pictures of the desk: each scene in three sizes, in dark, light and no colour, kept as text beside this file.

`python -m pytest tests/desk/pictures --draw` writes them anew; the diff shows what has changed on the screens.
"""

import difflib
from pathlib import Path

import pytest
from drawn import Row, contrast, drawn, is_text, style_lines, text_rows
from hands import AtDesk, Hands
from rich.cells import cell_len
from scenes import SCENES, FullDisk

from intake.desk.keeping import Keeper
from intake.desk.keys import foot_rows

SIZES = ((80, 24), (120, 36), (200, 60))
WITH_LOOKS = SIZES[:2]
"""Of the largest only the words are kept: its looks are those of the others, and many."""

COLOURS = ("dark", "light", "none")
ENOUGH = 4.5
"""Contrast of text: WCAG 2.2, success criterion 1.4.3 (see drawn.contrast)."""

HERE = Path(__file__).parent


Frames = dict[str, list[Row]]
"""A frame in each of the COLOURS."""


@pytest.fixture(params=SCENES)
async def pictured(
    request: pytest.FixtureRequest, at_desk: AtDesk, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> dict[str, Frames]:
    """A scene, played once with colours and once without, in every size: frames by the name of the picture."""
    name = request.param
    frames: dict[str, Frames] = {f"{name}-{width}x{height}": {} for width, height in SIZES}
    for colours in (True, False):
        monkeypatch.setenv("INTAKE_BOOK", str(tmp_path / f"{colours}.db"))
        if not colours:
            monkeypatch.setenv("NO_COLOR", "1")
        keeper = FullDisk("tea") if name == "not_saved" else Keeper("tea")
        async with at_desk(size=SIZES[0], keeper=keeper) as hands:
            await SCENES[name](hands)
            for (width, height), shown in zip(SIZES, frames.values(), strict=True):
                await hands.pilot.resize_terminal(width, height)
                if colours:
                    shown["light"] = await _in_theme(hands, "textual-light")
                    shown["dark"] = await _in_theme(hands, "textual-dark")
                else:
                    shown["none"] = await _at_rest(hands)
    return frames


async def _in_theme(hands: Hands, theme: str) -> list[Row]:
    hands.app.theme = theme
    return await _at_rest(hands)


async def _at_rest(hands: Hands) -> list[Row]:
    """The frame once it has stopped changing: bars of scrolling move after what they scroll."""
    before: list[Row] = []
    for _ in range(50):
        await hands.settle()
        now = drawn(hands.app)
        if now == before:
            return now
        before = now
    raise AssertionError("the frame does not come to rest")


def as_text(name: str, frames: dict[str, list[Row]]) -> str:
    """The file of a picture: the words once, then how they look in each of the COLOURS."""
    lines = text_rows(frames["dark"])
    if any(name.endswith(f"{width}x{height}") for width, height in WITH_LOOKS):
        for colours in COLOURS:
            lines += [f"== {colours}", *style_lines(frames[colours])]
    return "\n".join([*lines, ""])


async def test_the_desk_looks_as_pictured_and_keeps_the_laws_of_every_screen(
    pictured: dict[str, Frames], draws: bool
) -> None:
    for name, frames in pictured.items():
        file = HERE / f"{name}.txt"
        now = as_text(name, frames)
        if draws:
            file.write_text(now, encoding="utf-8")
        for law in LAWS:
            law(name, frames)
        before = file.read_text(encoding="utf-8") if file.exists() else ""
        diff = difflib.unified_diff(before.splitlines(), now.splitlines(), f"kept {name}", "now", lineterm="", n=2)
        assert before == now, "\n".join([f"{name} looks different now (--draw keeps that):", *diff])


def no_row_is_wider_than_the_screen(name: str, frames: dict[str, list[Row]]) -> None:
    """Every row fills the screen and no more, whatever stands in it."""
    width, height = map(int, name.rpartition("-")[2].split("x"))
    for rows in frames.values():
        assert len(rows) == height
        assert {sum(cell_len(run.text) for run in row) for row in rows} == {width}


def keys_at_the_foot_are_whole(name: str, frames: dict[str, list[Row]]) -> None:
    """On the talk both rows of keys; on a page its one row, cut nowhere."""
    rows = text_rows(frames["dark"])
    if rows[-2:] != list(foot_rows()):
        assert "Esc close" in rows[-1], rows[-1]
        assert "…" not in rows[-1]


def colour_adds_no_words(name: str, frames: dict[str, list[Row]]) -> None:
    """What is to be known stands there in words and signs: the text is the same without any colour."""
    assert text_rows(frames["dark"]) == text_rows(frames["light"]) == text_rows(frames["none"])


def lit_words_are_marked(name: str, frames: dict[str, list[Row]]) -> None:
    """Understood words are underlined, doubts reversed, what is not used and questions slanted, with colour or not."""
    if not name.startswith("typed"):
        return
    for rows in frames.values():
        marks = {run.text.strip(): run.look.marks for row in rows for run in row}
        assert "u" in marks["1.200/h"]
        assert "r" in marks["35#"]
        assert "i" in marks["15 kg"]
        assert {"b", "i"} <= set(marks["Can it go in a freezer"])


def text_can_be_read(name: str, frames: dict[str, list[Row]]) -> None:
    """Every text stands out from its ground, in dark and in light; what is muted too."""
    for colours in ("dark", "light"):
        faint = [
            f"{contrast(run.look):.2f} {run.look} {run.text.strip()[:40]!r} in {colours}, row {place}"
            for place, row in enumerate(frames[colours])
            for run in row
            if is_text(run) and contrast(run.look) < ENOUGH
        ]
        assert not faint, "\n".join(faint)


LAWS = (
    no_row_is_wider_than_the_screen,
    keys_at_the_foot_are_whole,
    colour_adds_no_words,
    lit_words_are_marked,
    text_can_be_read,
)
