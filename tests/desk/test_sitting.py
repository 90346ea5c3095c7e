"""What a sitting remembers, and that whatever is wrong with its file costs no more than the memory."""

import json
import os
import stat
import time
from pathlib import Path

import pytest
from hands import Hands

from intake.cli import main
from intake.desk.app import Desk
from intake.desk.keeping import Keeper
from intake.desk.sitting import KEPT_DAYS, Remembered, Sitting, new_sitting_id
from intake.talk import Interview

NAME = "0123456789abcdef" * 2


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder of the sittings, next to a book of its own."""
    monkeypatch.setenv("INTAKE_BOOK", str(tmp_path / "data" / "cases.sqlite3"))
    return tmp_path / "data" / "sittings"


def test_it_remembers_which_cases_are_open_and_which_is_in_front(folder: Path) -> None:
    assert Sitting(NAME).recall() == Remembered()
    Sitting(NAME).remember(["0302-bkt", "tea_cartons"], "tea_cartons")
    assert Sitting(NAME).recall() == Remembered(("0302-bkt", "tea_cartons"), "tea_cartons")
    assert Sitting(new_sitting_id()).recall() == Remembered()
    Sitting(NAME).remember(["0302-bkt"], "0302-bkt")
    assert Sitting(NAME).recall().front == "0302-bkt"
    assert [file.name for file in folder.iterdir()] == [f"{NAME}.json"]


@pytest.mark.skipif(os.name != "posix", reason="rights of files")
def test_only_its_owner_may_read_it(folder: Path) -> None:
    Sitting(NAME).remember(["a"], "a")
    assert stat.S_IMODE((folder / f"{NAME}.json").stat().st_mode) == 0o600
    assert stat.S_IMODE(folder.stat().st_mode) == 0o700


@pytest.mark.parametrize(
    "id", ["", "..", "../" + NAME, NAME + "/", NAME[:-1], NAME + "0", NAME.upper(), NAME + "\n", "$(id)", "٠" * 32]
)
def test_an_id_that_is_none_names_no_file(id: str, folder: Path) -> None:
    with pytest.raises(ValueError, match="hexadecimal"):
        Sitting(id)
    assert main(["desk", "--sitting", id]) == 2
    assert not folder.exists()


@pytest.mark.parametrize(
    "text",
    [
        "",
        "{",
        "null",
        "[]",
        '"a"',
        '{"open": "a"}',
        '{"front": "a"}',
        '{"open": {}, "front": 1}',
        "[" * 100_000,
        "\ud800",
    ],
)
def test_a_damaged_file_counts_as_none(text: str, folder: Path) -> None:
    folder.mkdir(parents=True)
    (folder / f"{NAME}.json").write_bytes(text.encode("utf-8", "surrogatepass"))
    assert Sitting(NAME).recall() == Remembered()
    Sitting(NAME).remember(["a"], "a")
    assert Sitting(NAME).recall() == Remembered(("a",), "a")


def test_names_that_no_case_may_have_are_passed_over(folder: Path) -> None:
    folder.mkdir(parents=True)
    kept = {"open": ["../../etc", "good", 7, None, "", "a/b", "good", "\x1b[31m"], "front": "../../etc"}
    (folder / f"{NAME}.json").write_text(json.dumps(kept))
    assert Sitting(NAME).recall() == Remembered(("good",), "good")


def test_what_nobody_sat_at_for_a_month_is_removed_and_nothing_else(folder: Path) -> None:
    folder.mkdir(parents=True)
    old, young, strange = (folder / name for name in (f"{'a' * 32}.json", f"{'b' * 32}.json", "notes.json"))
    for file in (old, young, strange):
        file.write_text("{}")
    long_ago = time.time() - (KEPT_DAYS + 1) * 86_400
    for file in (old, strange):
        os.utime(file, (long_ago, long_ago))
    Sitting(NAME).remember(["a"], "a")
    assert (old.exists(), young.exists(), strange.exists()) == (False, True, True)


def test_a_folder_that_cannot_be_had_costs_only_the_memory(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "file").write_text("")
    monkeypatch.setenv("INTAKE_BOOK", str(tmp_path / "file" / "cases.sqlite3"))
    Sitting(NAME).remember(["a"], "a")
    assert Sitting(NAME).recall() == Remembered()


async def test_the_desk_goes_on_with_all_cases_of_a_sitting_and_remembers_what_is_opened() -> None:
    for name, words in (("tea", "cases of 12 kg"), ("jars", "jars of 1 kg")):
        talk = Interview()
        talk.hear(words)
        assert Keeper(name).keep(talk) is None
    Sitting(NAME).remember(["new", "tea", "jars"], "new")
    app = Desk(sitting=NAME)
    async with app.run_test(size=(100, 30)) as pilot:
        hands = Hands(app, pilot)
        for _ in range(500):
            await pilot.pause(0.02)
            if app.cases and app.screen is app.front:
                break
        await hands.settle()
        assert all(name in hands.line("#top") for name in ("[new]", "tea", "jars"))
        await hands.press("ctrl+l")
        assert hands.talk.spec()["product.weight"] == 1.0
        assert Sitting(NAME).recall() == Remembered(("jars", "new", "tea"), "jars")
        await hands.send("/new belts")
        assert Sitting(NAME).recall().front == app.front.steps.work.name
        assert len(Sitting(NAME).recall().open_cases) == 4
