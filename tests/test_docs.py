"""What README and DEVELOPERS show is what the program does: every command in them is run."""

import io
import os
import re
import shlex
import subprocess
import sys
from collections.abc import Sequence
from importlib.util import find_spec
from pathlib import Path

import pytest

from intake.cli import COMMANDS, main

ROOT = Path(__file__).resolve().parent.parent
PAGES = {name: (ROOT / name).read_text(encoding="utf-8") for name in ("README.md", "DEVELOPERS.md")}


def shown_code() -> list[str]:
    """Every piece of code in the pages: lines of blocks, and code inside sentences and tables."""
    pieces: list[str] = []
    for page in PAGES.values():
        blocks = re.findall(r"^```sh\n(.*?)^```", page, flags=re.DOTALL | re.MULTILINE)
        pieces += [line.strip() for block in blocks for line in block.splitlines()]
        pieces += re.findall(r"`([^`\n]+)`", re.sub(r"^```.*?^```", "", page, flags=re.DOTALL | re.MULTILINE))
    return list(dict.fromkeys(pieces))


INTAKE = [piece for piece in shown_code() if re.match(r"intake( |$)", piece) and not piece.startswith("intake/")]
SETUP = [piece for piece in shown_code() if piece.startswith("sh .ci/setup")]


def test_the_pages_show_every_command() -> None:
    shown = {piece.split()[1] for piece in INTAKE if len(piece.split()) > 1}
    assert set(COMMANDS) <= shown


def _tell_only(settings: object, lines: Sequence[str]) -> int:
    """In place of serving until Ctrl+C; that is tried in tests/desk/web."""
    sys.stdout.write("\n".join(lines))
    return 0


REPLAY = "intake replay first_call"  # run by the test of the worked conversation


@pytest.mark.parametrize("piece", [piece for piece in INTAKE if piece != REPLAY])
def test_a_command_in_the_pages_does_what_it_says(
    piece: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv("INTAKE_BOOK", str(tmp_path / "cases.sqlite3"))
    monkeypatch.chdir(tmp_path)
    (tmp_path / "job.json").write_text('{"product.type": "case", "rate.peak": 40}')
    monkeypatch.setattr(sys, "stdin", io.StringIO("cases 12 kg, up 3 m\n/quit\n"))
    assert main(["ask", "--case", "tea_cartons"]) == 0
    monkeypatch.setattr(sys, "stdin", io.StringIO("cases 12 kg, up 3 m\n"))
    capsys.readouterr()
    words = [word for word in shlex.split(piece)[1:] if not word.startswith("[")]
    monkeypatch.setattr("intake.cli.serve.keep_serving", _tell_only)
    code, said = main(words), capsys.readouterr()
    if not words or words[0] == "desk":
        assert (code, "intake ask" in said.err) == (2, True)
    elif words[0] == "serve" and find_spec("textual_serve") is None:
        assert (code, "rise-intake[web]" in said.err) == (2, True)
    else:
        assert code == 0, said.err
        assert said.out


@pytest.fixture
def stubbed_checkout(tmp_path: Path) -> Path:
    """A checkout whose environment is set up already, with stand-ins that print how they were called."""
    (tmp_path / ".ci").mkdir()
    setup = tmp_path / ".ci" / "setup"
    setup.write_bytes((ROOT / ".ci" / "setup").read_bytes())
    (tmp_path / "pyproject.toml").write_text("")
    tools = tmp_path / ".venv" / "bin"
    tools.mkdir(parents=True)
    for name in ("intake", "python"):
        (tools / name).write_text(f'#!/bin/sh\necho {name} "$@"\n')
        (tools / name).chmod(0o755)
    sums = subprocess.run(["cksum"], input="", capture_output=True, text=True)
    for extras in ("test", "test,dev"):
        (tmp_path / ".venv" / f".installed-{extras}").write_text(f"{extras} {sums.stdout.strip()}")
    return tmp_path


@pytest.mark.parametrize("piece", SETUP)
def test_a_setup_command_in_the_pages_runs_what_it_says(piece: str, stubbed_checkout: Path) -> None:
    run = subprocess.run(shlex.split(piece), cwd=stubbed_checkout, capture_output=True, text=True)
    task, *rest = shlex.split(piece)[2:]
    called = {"run": ["intake", *rest], "test": ["python", "-m", "pytest", "-n", "auto", "--dist", "loadscope", *rest]}[
        task
    ]
    assert (run.returncode, run.stderr) == (0, "")
    assert run.stdout.split() == called


def test_setup_without_python_and_uv_is_one_clear_line(stubbed_checkout: Path, tmp_path: Path) -> None:
    (stubbed_checkout / ".venv" / ".installed-test").unlink()
    tools = tmp_path / "only_these"
    tools.mkdir()
    for name in ("sh", "dirname", "cksum", "cat"):
        found = next(d for d in os.environ["PATH"].split(os.pathsep) if os.access(os.path.join(d, name), os.X_OK))
        (tools / name).symlink_to(os.path.join(found, name))
    run = subprocess.run(
        [str(tools / "sh"), ".ci/setup", "run"],
        cwd=stubbed_checkout,
        env={"PATH": str(tools)},
        capture_output=True,
        text=True,
    )
    assert run.returncode == 2
    assert "python3-venv" in run.stderr
    assert "uv" in run.stderr


def test_the_worked_conversation_is_real_output(capsys: pytest.CaptureFixture[str]) -> None:
    marked = re.search(
        r"<!-- output of intake replay first_call: begin -->\n```text\n(.*?)```", PAGES["README.md"], flags=re.DOTALL
    )
    assert marked is not None
    assert main(shlex.split(REPLAY)[1:]) == 0
    real = capsys.readouterr().out.splitlines()
    shown = [line for line in marked[1].splitlines() if line.strip() not in ("", "...")]
    assert len(shown) >= 20
    places = [real.index(line) for line in shown]
    assert places == sorted(places)


def test_no_page_shows_a_path_of_one_machine() -> None:
    for page in PAGES.values():
        assert not re.search(r"(?<![\w.])/(home|root|work|tmp|Users)/", page)
