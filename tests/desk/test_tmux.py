"""The desk in a real terminal: typed, pasted and copied for real, resized, stopped, killed, opened again."""

import os
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

import pytest

pytestmark = pytest.mark.skipif(shutil.which("tmux") is None, reason="tmux is not installed")

PATIENCE_S = 60.0
"""A loaded machine may take long; a test that passes waits for nothing but the word."""

TRAYS = "shrink-wrapped trays 400 x 300 x 200 mm, 9 kg, 25 a minute, up from 0.8 m to 4.2 m"


class Tmux:
    """A tmux server of its own with one window, in which a shell runs."""

    def __init__(self, folder: Path, env: dict[str, str]) -> None:
        self._command = ["tmux", "-S", str(folder / "tmux"), "-f", "/dev/null"]
        self._env = env
        self.do("new-session", "-d", "-x", "80", "-y", "24", "sh")
        self.do("set", "-g", "set-clipboard", "on")
        self.do("set", "-g", "status", "off")
        self.do("set", "-g", "window-size", "manual")
        self.do("set", "-g", "escape-time", "20")
        self.line("PS1='$ '; clear")
        self.until(lambda rows: rows[:1] == ["$"], "the shell")

    def do(self, *words: str, given: str | None = None) -> str:
        """A tmux command; what it printed."""
        run = subprocess.run(
            [*self._command, *words], input=given, capture_output=True, text=True, env=self._env, timeout=PATIENCE_S
        )
        assert run.returncode == 0, f"tmux {' '.join(words)}: {run.stderr}"
        return run.stdout

    def line(self, words: str) -> None:
        """Type words and press Enter."""
        self.type(words)
        self.press("Enter")

    def type(self, words: str) -> None:
        """Type words as they are."""
        self.do("send-keys", "-l", "--", words)

    def press(self, *keys: str) -> None:
        """Press keys by their tmux names."""
        self.do("send-keys", *keys)

    def paste(self, words: str) -> None:
        """Paste as a terminal does for a program that asked for brackets."""
        self.do("load-buffer", "-b", "given", "-", given=words)
        self.do("paste-buffer", "-p", "-b", "given")

    def rows(self) -> list[str]:
        """What is on the screen."""
        return [row.rstrip() for row in self.do("capture-pane", "-p").split("\n")]

    def shows(self, *words: str) -> str:
        """Wait until all these words are on the screen; gives the screen as one text with single spaces."""

        def there(rows: list[str]) -> bool:
            text = _flat(rows)
            return all(word in text for word in words)

        return _flat(self.until(there, " and ".join(words)))

    def hides(self, word: str) -> None:
        """Wait until a word has gone from the screen."""
        self.until(lambda rows: word not in _flat(rows), f"no {word}")

    def until(self, fits: Callable[[list[str]], bool], what: str) -> list[str]:
        """Look at the screen again and again until it fits."""
        limit = time.monotonic() + PATIENCE_S
        while True:
            rows = self.rows()
            if fits(rows):
                return rows
            if time.monotonic() > limit:
                raise AssertionError("\n".join([f"waited for {what}; there is:", *rows]))
            time.sleep(0.05)

    def resize(self, width: int, height: int) -> None:
        """Another size of the window."""
        self.do("resize-window", "-x", str(width), "-y", str(height))

    def flag(self, name: str) -> str:
        """A state of the terminal, as #{alternate_on} or #{cursor_flag}."""
        return self.do("display-message", "-p", f"#{{{name}}}").strip()

    def process(self, words: str) -> int | None:
        """The process id of the program that was started with these words, None when it is gone."""
        shell = self.do("display-message", "-p", "#{pane_pid}").strip()
        listed = subprocess.run(["ps", "-o", "pid=,args=", "--ppid", shell], capture_output=True, text=True).stdout
        return next((int(line.split()[0]) for line in listed.splitlines() if words in line), None)

    def stop(self, words: str, how: signal.Signals) -> None:
        """Send a signal to the program that was started with these words."""
        process = self.process(words)
        assert process is not None
        os.kill(process, how)


def _flat(rows: Sequence[str]) -> str:
    return " ".join(" ".join(rows).split())


@pytest.fixture
def env(tmp_path: Path) -> dict[str, str]:
    kept = {name: os.environ[name] for name in ("PATH", "PYTHONPATH", "HOME") if name in os.environ}
    own = {"INTAKE_BOOK": str(tmp_path / "book.db"), "LANG": "C.UTF-8", "TERM": "xterm-256color"}
    root = str(Path(__file__).parents[2])
    path = os.pathsep.join([root, kept["PYTHONPATH"]]) if "PYTHONPATH" in kept else root
    return {**kept, **own, "PYTHONPATH": path}


@pytest.fixture
def tmux(tmp_path: Path, env: dict[str, str]) -> Iterator[Tmux]:
    window = Tmux(tmp_path, env)
    yield window
    window.do("kill-server")


DESK = f"{sys.executable} -m intake desk tea"


def opened(tmux: Tmux, command: str = DESK) -> None:
    """Start the desk and wait until its case is loaded: before that it shows no machines."""
    tmux.line(command)
    tmux.shows("Enter takes it, Tab", "kept as tea")


def test_a_talk_in_a_real_terminal_is_typed_pasted_undone_and_copied(tmux: Tmux) -> None:
    opened(tmux)
    tmux.type(TRAYS)
    tmux.shows("weight of one product 9 kg", "product length 400 mm")  # the line that says what is lit
    tmux.press("Enter")
    tmux.shows("Understood: ", "Best so far", "Ask: How will it be cleaned?")
    tmux.hides("working ...")
    tmux.press("C-y")
    tmux.shows("Copied, if tmux lets it through")
    assert tmux.do("show-buffer").startswith("How will it be cleaned?")
    tmux.paste("it is wiped down once a day\nand the room is normal,\nnothing explosive there")
    tmux.until(lambda rows: "it is wiped down once a day" in [r.strip() for r in rows], "three pasted lines")
    assert "Understood: cleaning" not in _flat(tmux.rows())  # the line ends of a paste send nothing
    tmux.press("Enter")
    tmux.shows("Understood: cleaning method wipe", "Ask: How many a minute at the busiest")
    tmux.hides("working ...")
    tmux.press("F6")
    tmux.shows("does not know")
    tmux.hides("working ...")
    tmux.press("F9")
    tmux.shows("Taken back")
    tmux.press("F12")
    tmux.shows("Put back")


def test_two_cases_are_gone_between_with_keys(tmux: Tmux) -> None:
    opened(tmux)
    tmux.line(TRAYS)
    tmux.shows("Ask: ", "Best so far")
    tmux.hides("working ...")
    tmux.press("C-o")
    tmux.shows("Kept cases", "begin a new case")
    tmux.press("Enter")
    tmux.shows("New talk")
    tmux.type("half a word")
    tmux.shows("half a word")
    tmux.press("C-l")
    tmux.shows("[tea]", "Ask: ")
    tmux.press("C-l")
    tmux.shows("half a word", "New talk")


@pytest.mark.parametrize(("width", "height"), [(60, 20), (160, 50)])
def test_another_size_breaks_nothing(tmux: Tmux, width: int, height: int) -> None:
    opened(tmux)
    tmux.line(TRAYS)
    tmux.shows("Ask: ", "Best so far")
    tmux.resize(width, height)
    tmux.until(lambda rows: any(len(row) > min(width, 100) - 10 for row in rows), "the new size")
    tmux.type("wiped down daily")
    text = tmux.shows("wiped down daily", "F1 help")
    assert ("SKETCH" in text) is (width == 160)
    assert all(len(row) <= width for row in tmux.rows())
    tmux.press("Enter")
    tmux.shows("cleaning method wipe")
    tmux.resize(80, 24)
    tmux.shows("F1 help F2 facts F3 machines F4 to ask F5 advice F6 don't know F7 later F8 back", "Ask: ")


def test_told_to_stop_it_leaves_the_terminal_as_it_was(tmux: Tmux) -> None:
    tmux.line("before=$(stty -a); echo ready")
    tmux.shows("ready")
    opened(tmux)
    assert tmux.flag("alternate_on") == "1"
    tmux.stop("intake desk", signal.SIGTERM)
    tmux.until(lambda rows: tmux.flag("alternate_on") == "0", "the screen of the shell")
    tmux.line('test "$(stty -a)" = "$before" && echo the-same')
    tmux.until(lambda rows: any(row in ("the-same", "$ the-same") for row in rows), "the same terminal")
    assert tmux.flag("cursor_flag") == "1"
    assert tmux.flag("mouse_any_flag") == "0"
    assert tmux.flag("bracket_paste_flag") in ("0", "")  # older ones do not tell


def test_killed_without_warning_it_goes_on_with_all_that_was_confirmed(tmux: Tmux) -> None:
    opened(tmux)
    tmux.line(TRAYS)
    tmux.shows("Ask: How will it be cleaned?")
    tmux.line("wiped down once a day")
    tmux.shows("Understood: cleaning method wipe")
    tmux.stop("intake desk", signal.SIGKILL)
    tmux.until(lambda rows: tmux.process("intake desk") is None, "the end")
    tmux.type("stty sane; tput rmcup; clear; echo clean")
    tmux.press("C-j")  # killed, it could not put the terminal right, and Enter is no line end there yet
    tmux.until(lambda rows: "clean" in rows, "the shell")
    opened(tmux)
    tmux.shows(TRAYS.partition(",")[0], "wiped down once a day", "Ask: ")
    tmux.press("F2")
    tmux.shows("weight of one product: 9 kg", "cleaning method: wipe")


def test_without_colour_it_is_the_same_talk(tmux: Tmux) -> None:
    opened(tmux, f"NO_COLOR=1 {DESK}")
    tmux.line(TRAYS)
    text = tmux.shows("Ask: ", "? depends: ", "- out: ", "Best so far: ")
    assert "Understood: " in text
    painted = tmux.do("capture-pane", "-p", "-e")
    assert "\x1b[1m" in painted or "\x1b[1;" in painted  # weight is left


@pytest.mark.parametrize("command", [f"TERM=dumb {DESK}", f"{DESK} < /dev/null", f"{DESK} | cat"])
def test_where_it_cannot_draw_it_says_so_in_one_line(tmux: Tmux, command: str) -> None:
    tmux.resize(200, 24)
    tmux.line(f"{command}; echo over")
    rows = [row for row in tmux.until(lambda rows: "over" in rows, "the end") if row and not row.startswith("$")]
    assert rows[1:] == ["over"]
    assert "the desk needs a terminal that can draw" in rows[0]
    assert "intake ask" in rows[0]
