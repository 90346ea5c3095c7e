"""How quick the desk is, in bytes that reach a terminal, against a bare app of one line and one log.

`pytest -m bench -s tests/bench/test_desk_speed.py`. Both run by turns on a pseudo-terminal of their own, 80x24, at the
same frame clock (TEXTUAL_FPS=120, which the desk sets for itself). A time runs from the key's byte going in until the
bytes that show what came of it are out. The figures are medians and ratios of one run on whatever machine this is.
"""

import os
import sys
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from statistics import median

import pytest
from terminal import Terminal

from intake.desk.commands.table import help_lines
from intake.desk.keeping import Keeper
from intake.desk.steps import Steps
from intake.desk.work import Work
from intake.talk import Interview

pytestmark = pytest.mark.bench

ROOT = Path(__file__).parents[2]
BARE = [sys.executable, str(Path(__file__).with_name("bare_app.py"))]
DESK = [sys.executable, "-m", "intake", "desk"]
TRAYS = "shrink-wrapped trays 400 x 300 x 200 mm, 9 kg, 25 a minute, up from 0.8 m to 4.2 m"
LONG = (
    "Hello, we pack oat drink into shrink-wrapped trays of 400 x 300 x 200 mm, about 9 kg each, 25 a minute and 32 at "
    "peak, and they have to go up from 0.8 m to 4.2 m onto a mezzanine in a normal room with 9 x 2.5 m of floor and "
    "6 m to the beams. It is wiped down once a shift. Can it go into a freezer later on? "
)

ROUNDS = 9
ANSWERS = 12


@pytest.fixture
def env(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> dict[str, str]:
    monkeypatch.setenv("INTAKE_BOOK", str(tmp_path / "book.db"))
    return {
        **os.environ,
        "TERM": "xterm-256color",
        "COLORTERM": "truecolor",
        "TEXTUAL_FPS": "120",
        "PYTHONPATH": str(ROOT),
    }


def kept(name: str, *messages: str) -> Interview:
    """A case in the book, and its talk."""
    talk = Interview()
    for message in messages:
        talk.hear(message)
    Keeper(name).keep(talk)
    return talk


def told(what: str, ours: list[float], bare: list[float], most: float) -> float:
    """Print medians in milliseconds and their ratio; give the ratio."""
    ratio = median(ours) / median(bare)
    print(f"{what}: {median(ours) * 1e3:.1f} ms, bare {median(bare) * 1e3:.1f} ms, x {ratio:.2f} (aim: {most})")
    return ratio


def first(command: list[str], env: dict[str, str], *tokens: bytes) -> float:
    """From the start of the process until all of the tokens are on the screen [s]."""
    with Terminal(command, env) as terminal:
        return terminal.until(*tokens) - terminal.began


def test_first_question_against_a_bare_apps_first_frame(env: dict[str, str]) -> None:
    talk = kept("tea", TRAYS)
    question = talk.ask()
    assert question is not None
    asks = f"Ask: {question.say[:20]}".encode()
    welcome = (b"aste the visitor's message", b"Enter takes it, Tab mends it")
    first(BARE, env, b"ARE-READY"), first(DESK, env, *welcome)  # the compiled files are there from here on
    bare, ours, loaded, again = [], [], [], []
    for _ in range(ROUNDS):
        bare.append(first(BARE, env, b"ARE-READY"))
        ours.append(first(DESK, env, *welcome))
        loaded.append(first(DESK, env, b"? depends: "))
        again.append(first([*DESK, "tea"], env, asks))
    print()
    told("answer line and the line that asks for the first message", ours, bare, 1.2)
    told("all verdicts of a new case stand", loaded, bare, 1.2)
    told("a kept case opened, to its question", again, bare, 1.2)


@dataclass(frozen=True, slots=True)
class Shown:
    """What an answer took: until its words stand in the conversation, until the next question stands [s]; bytes."""

    echo: float
    question: float
    bytes: int


def answers(terminal: Terminal, then: Sequence[bytes]) -> Iterator[Shown]:
    """Sends answers one by one; `then`: what shows that the desk is ready for the next one."""
    for number, ready in enumerate(then):
        word = f"zq{number:03d}x"
        terminal.write(f"no idea {word}".encode())
        terminal.quiet()
        before = len(terminal.bytes)
        at = terminal.write(b"\r")
        echoed = terminal.until(word.encode())
        came = terminal.until(ready) if ready else echoed
        terminal.quiet(0.3)
        yield Shown(echoed - at, came - at, len(terminal.bytes) - before)


def questions_to_come(count: int) -> list[bytes]:
    """What the desk asks after each of so many answers, as it begins on the screen."""
    steps = Steps(Work(talk=Interview()), briefly=True)
    shown = steps.say(TRAYS, None)
    found = []
    for number in range(count):
        assert shown.question is not None
        shown = steps.say(f"no idea zq{number:03d}x", shown.question.id)
        assert shown.question is not None
        found.append(f"Ask: {shown.question.say[:30]}".encode())
    return found


@pytest.mark.parametrize("lines", [20, 2000])
def test_an_answer_to_its_frame_and_to_the_next_question(env: dict[str, str], lines: int) -> None:
    ready = questions_to_come(ANSWERS)
    with Terminal([*BARE, "log", str(lines)], env) as bare, Terminal(DESK, env) as desk:
        bare.until(b"ARE-READY")
        desk.until(b"? depends: ")
        for _ in range(lines // len(list(help_lines()))):
            desk.write(b"/help\r")
            desk.quiet(0.4)
        desk.write(f"{TRAYS}\r".encode())
        desk.until(b"Ask: ")
        desk.quiet(1.0)
        pairs = list(zip(answers(bare, [b""] * ANSWERS), answers(desk, ready), strict=True))
    print(f"\nwith {lines} lines of conversation")
    told("an answer to its frame", [ours.echo for _, ours in pairs], [plain.echo for plain, _ in pairs], 1.3)
    told("... to the next question", [ours.question for _, ours in pairs], [plain.echo for plain, _ in pairs], 1.3)
    print(f"bytes: {median(ours.bytes for _, ours in pairs):.0f}, bare {median(one.bytes for one, _ in pairs):.0f}")


def key_times(terminal: Terminal, letters: str) -> Iterator[float]:
    """Types letters that stand nowhere yet, as a person does, not waiting for more than their echo [s]."""
    for letter in letters:
        at = terminal.write(letter.encode())
        yield terminal.until(letter.encode()) - at
        time.sleep(0.08)


def test_a_key_to_its_echo_in_a_long_message_with_lights(env: dict[str, str]) -> None:
    letters = "αβγδεζηθικλμνξοπρστυφχψω"
    with Terminal([*BARE, "area"], env) as bare, Terminal(DESK, env) as desk:
        bare.until(b"ARE-READY")
        desk.until(b"? depends: ")
        for terminal in (bare, desk):
            terminal.write(LONG.encode())
            terminal.quiet(1.0)
        times = list(zip(key_times(bare, letters), key_times(desk, letters), strict=True))
    print()
    told(f"a key behind {len(LONG)} characters", [ours for _, ours in times], [plain for plain, _ in times], 1.3)
    worst = [sorted(one)[int(0.9 * len(one))] * 1e3 for one in zip(*times, strict=True)]
    print(f"nine in ten: {worst[1]:.1f} ms, bare {worst[0]:.1f} ms")
