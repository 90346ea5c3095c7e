"""`intake serve` as people start it, with real desks behind it."""

import asyncio
import os
import re
import signal
import socket
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

pytest.importorskip("textual_serve", reason="the desk in a browser is an extra: pip install rise-intake[web]")

from intake.cli import main, serve
from intake.desk.web.passphrase import VARIABLE

from .conftest import WORDS, close_code, gone, is_running

Start = Callable[..., subprocess.Popen[str]]


def free_port() -> int:
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        return int(one.getsockname()[1])


@pytest.fixture
def start(tmp_path: Path) -> Iterator[Start]:
    """Starts `intake serve` and waits for its first line."""
    running: list[subprocess.Popen[str]] = []

    def go(*words: str, **environment: str) -> subprocess.Popen[str]:
        given = {name: value for name, value in os.environ.items() if name != VARIABLE}
        given |= {"INTAKE_BOOK": str(tmp_path / "cases.sqlite3")} | environment
        command = [sys.executable, "-m", "intake", "serve", *words]
        running.append(
            subprocess.Popen(command, env=given, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
        )
        return running[-1]

    yield go
    for one in running:
        one.kill()
        one.communicate()


def desks_of(server: int) -> list[int]:
    """The processes that a server started and that run."""
    found = subprocess.run(["ps", "-o", "pid=", "--ppid", str(server)], capture_output=True, text=True).stdout.split()
    return [int(pid) for pid in found if is_running(int(pid))]


@pytest.mark.skipif(not os.path.isdir("/proc/self"), reason="processes are looked up the Linux way")
@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM, signal.SIGHUP, signal.SIGKILL])
async def test_the_real_desk_draws_and_is_gone_with_its_server(start: Start, someone: Any, number: int) -> None:
    port = free_port()
    server = start("--port", str(port), **{VARIABLE: WORDS})
    assert server.stdout is not None
    assert f"http://127.0.0.1:{port}" in await asyncio.to_thread(server.stdout.readline)
    me, url = someone(), f"http://127.0.0.1:{port}"
    sent = {"Origin": url}
    async with me.post(f"{url}/sign-in", data={"passphrase": WORDS}, headers=sent) as answer:
        assert answer.status == 200
    line = await me.ws_connect(f"{url}/ws?width=100&height=30", headers=sent)
    drawn = ""
    async with asyncio.timeout(30):
        while "F1" not in drawn:
            message = await line.receive()
            assert isinstance(message.data, bytes), message
            drawn += message.data.decode("utf-8", "replace")
    (desk,) = desks_of(server.pid)
    shown = Path(f"/proc/{desk}/cmdline").read_bytes() + Path(f"/proc/{desk}/environ").read_bytes()
    assert WORDS.encode() not in shown
    server.send_signal(number)
    if number == signal.SIGKILL:
        await asyncio.to_thread(server.wait, 20)
    else:
        await close_code(line)
        said, _ = await asyncio.to_thread(server.communicate, timeout=20)
        assert said == "Stopped. What was said is kept.\n"
        assert server.returncode == 0
    assert await gone(desk)


def test_without_a_passphrase_one_is_made_and_told_once(start: Start) -> None:
    server = start("--port", str(free_port()))
    assert server.stdout is not None
    said = server.stdout.readline() + server.stdout.readline()
    server.terminate()
    rest, _ = server.communicate(timeout=20)
    made = re.findall(r"\b[a-z2-9]{4}(?:-[a-z2-9]{4}){4}\b", said)
    assert len(made) == 1
    assert made[0] not in rest


def test_a_port_in_use_is_one_line(start: Start) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        server = start("--port", str(taken.getsockname()[1]), **{VARIABLE: WORDS})
        said, _ = server.communicate(timeout=30)
    assert server.returncode == 2
    assert said.count("\n") == 1
    assert "cannot be had" in said


def test_without_the_extra_one_line_says_how_to_install_it() -> None:
    script = "import sys; sys.modules['aiohttp'] = None; from intake.cli import main; sys.exit(main(['serve']))"
    run = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True)
    assert (run.returncode, run.stdout) == (2, "")
    assert run.stderr.count("\n") == 1
    assert "pip install 'rise-intake[web]'" in run.stderr


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["--public-url", "desk.example"], "no public address"),
        (["--public-url", "https://desk.example/desk"], "no public address"),
        (["--public-url", "ftp://desk.example"], "no public address"),
        (["--public-url", "https://me@desk.example"], "no public address"),
        (["--port", "0"], "from 1 to 65535"),
        (["--port", "x"], "from 1 to 65535"),
        (["--desks", "0"], "from 1 to 200"),
        (["--passphrase-file", "nowhere.txt"], "cannot be read"),
        (["--passphrase", "three small brown jars"], "can be seen by others"),
    ],
)
def test_bad_input_is_one_line_and_nothing_is_served(
    words: list[str], told: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(serve, "keep_serving", lambda *_: pytest.fail("it serves"))
    assert main(["serve", *words]) == 2
    said = capsys.readouterr().err
    assert told in said
    assert "brown jars" not in said
    assert said.count("\n") == 1


@pytest.mark.parametrize(
    ("words", "cautions"),
    [
        ([], 0),
        (["--host", "::1"], 0),
        (["--public-url", "https://desk.example"], 0),
        (["--host", "0.0.0.0"], 2),
        (["--host", "192.0.2.7"], 2),
        (["--host", "0.0.0.0", "--public-url", "http://desk.example"], 2),
        (["--host", "0.0.0.0", "--public-url", "https://desk.example"], 1),
    ],
)
def test_who_lets_others_reach_it_is_cautioned(
    words: list[str], cautions: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    told: list[str] = []
    monkeypatch.setattr(serve, "keep_serving", lambda _, lines: told.extend(lines) or 0)
    assert main(["serve", *words]) == 0
    assert sum(line.startswith("Caution: ") for line in told) == cautions


def test_a_desk_is_started_with_nothing_but_the_id_of_its_sitting() -> None:
    assert serve.desk_words("0" * 32)[1:] == ("-m", "intake", "desk", "--sitting", "0" * 32)
