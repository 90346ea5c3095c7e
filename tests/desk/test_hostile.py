"""Whatever is typed, pasted or kept shows as text: on every screen, in every file and on standard output."""

import base64
import csv
import json
import os
import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
from hands import AtDesk, Hands
from hostile_texts import HOSTILE, check_frame, unsafe
from terminal import Terminal
from textual import events
from textual.widgets import Input, OptionList

from intake.desk.app import Desk
from intake.desk.keeping import Keeper, opened
from intake.desk.line_page import LinePage
from intake.desk.list_page import ListPage

ROOT = str(Path(__file__).parents[2])
TRAYS = "trays 400 x 300 x 200 mm, 9 kg, 25 a minute, up from 0.8 m to 4.2 m"
PAGES = ("f1", "f2", "f3", "f4", "f5", "ctrl+r", "ctrl+o")
COMMANDS = (
    "/note {}", "/promise {} by tomorrow", "/asked-back {}", "/title {}", "/staff {}", "/fact weight {}",
    "/test slip angle 22 deg by {} on 2026-03-02 with {}", "/draft {}", "/ask {}", "/check {}", "/cases {}", "/open {}",
    "/new {}", "/read {}", "/mend {}", "/answer {}", "/{}", "/done {}", "/help {}", "/sketch {}",
)  # fmt: skip


EACH = 6
"""Three texts at a time go into every sixth command, beginning elsewhere each time: each command gets three of them."""


def threes() -> list[str]:
    """The texts, three in one."""
    texts = list(HOSTILE.values())
    return [" and ".join(texts[place : place + 3]) for place in range(0, len(texts), 3)]


@pytest.fixture(autouse=True)
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("INTAKE_BOOK", str(tmp_path / "book.db"))


async def look_everywhere(hands: Hands) -> None:
    """Every page, and what stands behind its first line."""
    for key in PAGES:
        await hands.press(key)
        for _ in range(100):
            if not hands.on_the_talk():
                break
            await hands.pilot.pause(0.02)
        assert not hands.on_the_talk(), key
        check_frame(hands)
        await hands.press("escape")
        check_frame(hands)


async def hostile_talk(hands: Hands) -> None:
    """A case into which all of it went as messages, answers, notes and titles."""
    await hands.send(TRAYS)
    texts = list(HOSTILE.values())
    for text in threes():
        await hands.send(text)
        check_frame(hands)
    for place in range(0, len(texts), 6):
        flat = " and ".join(texts[place : place + 6]).replace("\n", " ")
        for command in ("/note", "/promise", "/asked-back", "/title"):
            await hands.send(f"{command} {flat}")


async def test_messages_and_answers_are_words_on_every_screen_and_when_they_are_opened_again(at_desk: AtDesk) -> None:
    async with at_desk(size=(160, 30), keeper=Keeper("tea")) as hands:  # with the panels, and later without
        await hostile_talk(hands)
        said = hands.said()
        assert not unsafe(said)
        for piece in ("[@click=app.quit]press[/]", "12 [in] x 10 [in]", "<script>alert(1)</script>", "=HYPERLINK("):
            assert piece in said
        await look_everywhere(hands)
    talk, keeper = opened("tea")
    async with at_desk(talk, size=(80, 24), keeper=keeper) as hands:
        check_frame(hands)
        await look_everywhere(hands)


async def test_typed_in_a_command_it_is_words(at_desk: AtDesk) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.send(TRAYS)
        for place, text in enumerate(threes()):
            for command in COMMANDS[place % EACH :: EACH]:
                await hands.send(command.replace("{}", text.replace("\n", " ")))
                check_frame(hands)
                if not hands.on_the_talk():
                    await hands.press("escape")
        assert not unsafe(hands.said())


async def test_tried_as_a_change_it_is_words_on_a_page(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        await hands.send(TRAYS)
        for text in threes():
            hands.app.post_message(events.Paste(text))
            await hands.settle()
            check_frame(hands)
            await hands.press("f10")
            check_frame(hands)
            await hands.press("escape")
            await hands.type("")


async def test_typed_to_find_a_line_of_a_list_it_is_words(at_desk: AtDesk) -> None:
    async with at_desk(keeper=Keeper("tea")) as hands:
        await hands.send(TRAYS)
        for key in ("f2", "ctrl+o"):
            await hands.press(key)
            page = hands.app.screen
            assert isinstance(page, ListPage)
            for sign in "".join(text[:60] for text in HOSTILE.values()):
                page.query_one(OptionList).post_message(events.Key("a", sign))
            await hands.settle()
            check_frame(hands)
            await hands.press("escape")


async def test_typed_on_a_line_of_its_own_it_comes_back_clean(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        for text in HOSTILE.values():
            taken: list[str | None] = []
            hands.app.push_screen(LinePage("What is it?"), taken.append)
            await hands.settle()
            hands.app.post_message(events.Paste(text))
            await hands.settle()
            assert hands.app.screen.query_one(Input).value
            check_frame(hands)
            await hands.press("enter")
            assert taken
            assert taken[0] is not None
            assert not unsafe(taken[0], "")


async def test_a_paste_of_a_million_characters_leaves_the_desk_at_work(at_desk: AtDesk) -> None:
    async with at_desk() as hands:
        for text in ("ab 12 kg [/]\x1b[31m\n" * 55_000,):
            hands.app.post_message(events.Paste(text))
            await hands.settle()
            check_frame(hands)
            await hands.press("escape")
            await hands.type("")
        await hands.send(TRAYS)
        assert hands.talk.facts


async def test_a_case_of_such_a_name_is_refused_in_words(at_desk: AtDesk) -> None:
    for text in HOSTILE.values():
        app = Desk(opening=text)
        async with app.run_test() as pilot:
            for _ in range(500):
                await pilot.pause(0.01)
                if app.trouble is not None or app.cases:
                    break
        assert app.trouble is not None, text
        assert not unsafe(str(app.trouble))


# ---------------------------------------------------------------------- beside the screen


def run(*words: str, given: str = "") -> str:
    """A command's standard output and error, as they are."""
    env = {**os.environ, "PYTHONPATH": ROOT, "PYTHONIOENCODING": "utf-8:surrogatepass"}
    given_bytes = given.encode("utf-8", "surrogatepass")
    done = subprocess.run([sys.executable, "-m", "intake", *words], input=given_bytes, capture_output=True, env=env)
    assert b"Traceback" not in done.stderr
    return (done.stdout + done.stderr).decode("utf-8")


def test_line_by_line_and_in_every_file_it_is_words(tmp_path: Path) -> None:
    lines = [TRAYS]
    for text in HOSTILE.values():
        flat = text.replace("\n", " ")
        lines += [f"{flat} 12 kg", f"/note {flat}", f"/promise {flat}", f"/title {flat}", f"/asked-back {flat}"]
    said = run("ask", "--case", "tea", given="\n".join([*lines, "/facts", "/waiting", "/left", "/cases", "/quit", ""]))
    for output in (said, run("cases"), run("cases", "--show", "tea"), run("cases", "--export", "tea")):
        assert output
        assert not unsafe(output)
    assert "tea" in run("handoff", "tea", "--to", str(tmp_path / "over"))
    files = [path for path in (tmp_path / "over").rglob("*") if path.is_file()]
    assert {"spec.md", "values.csv", "spec.json"} <= {path.name for path in files}
    for path in files:
        text = path.read_bytes().decode("utf-8")
        assert not unsafe(text, "\n\r\t"), path.name
        if path.suffix == ".json":
            assert not [words for words in strings(json.loads(text)) if unsafe(words, "\n\t")]
        if path.suffix in (".md", ".html"):
            assert not re.search(r"(?<!\\)<(?:script|img|/td)", text)
        if path.suffix == ".csv":
            cells = [cell for row in csv.reader(text.splitlines()) for cell in row]
            assert not [
                cell for cell in cells if cell.strip()[:1] in tuple("=+@|%") or re.match(r"\s*-(?![\d.]+$)", cell)
            ]


def strings(value: Any) -> list[str]:
    """Every string in something read from JSON, keys too."""
    if isinstance(value, dict):
        return [found for pair in value.items() for part in pair for found in strings(part)]
    if isinstance(value, list):
        return [found for part in value for found in strings(part)]
    return [value] if isinstance(value, str) else []


def test_a_terminal_gets_no_sequence_but_our_own_copy(tmp_path: Path) -> None:
    talk, keeper = opened("tea")
    talk.hear(TRAYS)
    for text in HOSTILE.values():
        talk.hear(f"{text} 12 kg")
    keeper.keep(talk)
    question = talk.ask()
    assert question is not None
    env = {**os.environ, "PYTHONPATH": ROOT, "TERM": "xterm-256color"}
    env.pop("TMUX", None)
    with Terminal([sys.executable, "-m", "intake", "desk", "tea"], env, size=(100, 40)) as terminal:
        terminal.until(b"Ask: ")
        for text in threes():
            pasted = text.replace("\x1b", "").encode("utf-8", "replace")  # what terminals let into a paste
            terminal.write(b"\x1b[200~" + pasted + b"\x1b[201~")
            terminal.quiet(0.3)
            terminal.write(b"\r")
            terminal.quiet(0.3)
        for key in (b"\x1bOQ", b"\x1bOS", b"\x12", b"\x0f"):  # F2, F4, Ctrl+R, Ctrl+O
            terminal.write(key)
            terminal.quiet(0.5)
            terminal.write(b"\x1b")
            terminal.quiet(0.5)
        assert terminal.runs(), bytes(terminal.bytes[-3000:]).decode()
        terminal.write(b"\x19")  # Ctrl+Y
        terminal.until(b"\x1b]52;")
        terminal.quiet()
        came = bytes(terminal.bytes)
    pointer = re.compile(rb"22;[a-z]+")  # the screen library sets the shape of the mouse's pointer
    commands = [one for one in re.findall(rb"\x1b\]([^\x07\x1b]*)", came) if not pointer.fullmatch(one)]
    assert len(commands) == 1, commands
    assert commands[0].startswith(b"52;c;")
    assert base64.b64decode(commands[0].removeprefix(b"52;c;")).decode().strip()
    assert not re.search(rb"\x1b[PX^_c]", came)
    words = came.decode("utf-8")
    assert not {sign for sign in words if unsafe(sign, "\n\r\x1b\x07\x0f")}
