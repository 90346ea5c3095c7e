"""A served desk on a free loopback port, with stand-ins for the desk processes, which are counted."""

import asyncio
import contextlib
import json
import os
import sys
from collections.abc import AsyncIterator, Callable
from pathlib import Path
from typing import Any

import pytest

pytest.importorskip("textual_serve", reason="the desk in a browser is an extra: pip install rise-intake[web]")

from aiohttp import ClientSession, ClientWebSocketResponse, CookieJar
from aiohttp.test_utils import TestServer

from intake.desk.web import desk_process
from intake.desk.web.origin import public
from intake.desk.web.passphrase import Passphrase
from intake.desk.web.server import Server, Settings

WORDS = "three small brown jars"
_STAND_IN = Path(__file__).with_name("stand_in.py")


class Clock:
    """Time that stands until it is moved."""

    def __init__(self) -> None:
        self.now = 1000.0

    def __call__(self) -> float:
        return self.now


class Served:
    """A server, how to reach it, and what it started."""

    def __init__(self, server: Server, test_server: TestServer, clock: Clock, folder: Path) -> None:
        self.server, self.clock, self.folder = server, clock, folder
        self._test_server = test_server
        self.url = f"http://127.0.0.1:{test_server.port}"
        self.port = test_server.port

    def started(self) -> list[dict[str, Any]]:
        """What each desk process told of itself, the first one first."""
        files = sorted(self.folder.glob("*.json"), key=lambda file: file.stat().st_mtime_ns)
        return [json.loads(file.read_text()) for file in files]

    async def sign_in(self, session: ClientSession, words: str = WORDS, **headers: str) -> Any:
        """Send the form; returns the answer, not followed."""
        sent = {"Origin": self.url} | headers
        return await session.post(
            f"{self.url}/sign-in", data={"passphrase": words}, headers=sent, allow_redirects=False
        )

    async def socket(self, session: ClientSession, query: str = "", **headers: str) -> ClientWebSocketResponse:
        """The socket as our page opens it."""
        return await session.ws_connect(f"{self.url}/ws{query}", headers={"Origin": self.url} | headers)

    async def stop(self) -> None:
        """Stop the server as Ctrl+C does."""
        await self._test_server.close()


async def hear(socket: ClientWebSocketResponse, words: str) -> str:
    """Read until words come. Returns all that came."""
    said = ""
    async with asyncio.timeout(10):
        while words not in said:
            message = await socket.receive()
            assert isinstance(message.data, bytes), (said, message)
            said += message.data.decode()
    return said


async def close_code(socket: ClientWebSocketResponse) -> int | None:
    """Read until the other end closes. Returns why."""
    async with asyncio.timeout(10):
        async for _ in socket:
            pass
    return socket.close_code


def is_running(pid: int) -> bool:
    """True while that process works; one that ended and waits to be counted does not."""
    try:
        return Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[0] != "Z"
    except FileNotFoundError:
        if os.path.isdir("/proc/self"):
            return False
    with contextlib.suppress(ProcessLookupError):
        os.kill(pid, 0)
        return True
    return False


async def gone(pid: int) -> bool:
    """Wait for a process to end."""
    for _ in range(100):
        if not is_running(pid):
            return True
        await asyncio.sleep(0.1)
    return False


@pytest.fixture
async def serve(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> AsyncIterator[Callable[..., Any]]:
    """Starts servers: manner of the desks, `most` at once, public address."""
    monkeypatch.setattr(desk_process, "PATIENCE", 0.3)
    running = []

    async def start(manner: str = "polite", most: int = 8, public_url: str | None = None) -> Served:
        folder = tmp_path / f"started_{len(running)}"
        folder.mkdir()
        clock = Clock()
        settings = Settings(
            passphrase=Passphrase(WORDS),
            words=lambda sitting: (sys.executable, "-I", str(_STAND_IN), str(folder), manner, sitting),
            public=public(public_url) if public_url else None,
            most=most,
            clock=clock,
        )
        server = Server(settings)
        test_server = TestServer(server.app())
        await test_server.start_server()
        running.append(test_server)
        return Served(server, test_server, clock, folder)

    yield start
    for one in running:
        await one.close()


@pytest.fixture
async def someone() -> AsyncIterator[Callable[[], ClientSession]]:
    """Makes browsers: each with cookies of its own."""
    sessions: list[ClientSession] = []

    def make() -> ClientSession:
        sessions.append(ClientSession(cookie_jar=CookieJar(unsafe=True)))
        return sessions[-1]

    yield make
    for session in sessions:
        await session.close()
