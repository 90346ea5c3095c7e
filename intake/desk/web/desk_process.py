"""One desk behind one socket: a process started without a shell, and ended for certain."""

import asyncio
import contextlib
import os
import shlex
import signal
from asyncio.subprocess import PIPE, Process
from collections.abc import Awaitable, Callable, Sequence

from textual_serve.app_service import AppService
from textual_serve.download_manager import DownloadManager

from intake.desk.web.passphrase import VARIABLE

_READY = b"__GANGLION__\n"
_PRELUDE_LINES = 20
_LONGEST_PACKET = 16_000_000
PATIENCE = 3.0
"""Seconds for each step of leaving: asked by the protocol, told by a signal, ended."""

SendBytes = Callable[[bytes], Awaitable[None]]


class DeskProcess(AppService):
    """Carries keys in and the screen out. What else a program may ask of the browser, pages and files, goes nowhere."""

    def __init__(self, words: Sequence[str], write_bytes: SendBytes) -> None:
        super().__init__(
            shlex.join(words),
            write_bytes=write_bytes,
            write_str=_nowhere,
            close=_nowhere,
            download_manager=DownloadManager(),
        )
        self._words = tuple(words)
        self._gone = False

    def _build_environment(self, width: int = 80, height: int = 24) -> dict[str, str]:
        environment = super()._build_environment(width, height)
        for name in (VARIABLE, "TMUX", "STY", "NO_COLOR"):  # the last three speak of the terminal of the server
            environment.pop(name, None)
        environment["TERM"] = "xterm-256color"
        environment["TEXTUAL_FPS"] = "120"  # answers appear in half the time
        return environment

    async def _open_app_process(self, width: int = 80, height: int = 24) -> Process:
        """Without a shell, and in a session of its own: Ctrl+C at the server ends the server, which ends this."""
        self._process = await asyncio.create_subprocess_exec(
            *self._words,
            stdin=PIPE,
            stdout=PIPE,
            stderr=asyncio.subprocess.DEVNULL,  # a fault in it may quote what visitors wrote
            env=self._build_environment(width, height),
            start_new_session=True,
        )
        assert self._process.stdin is not None
        self._stdin = self._process.stdin
        return self._process

    async def run(self) -> None:
        """Pass on what the process draws until it ends. Reads on when nobody looks any more, so that it can end."""
        assert self._process is not None
        assert self._process.stdout is not None
        out = self._process.stdout
        with contextlib.suppress(asyncio.IncompleteReadError, ConnectionError, ValueError):
            if not await _is_ready(out):
                return
            while True:
                kind, size = await out.readexactly(1), int.from_bytes(await out.readexactly(4), "big")
                if size > _LONGEST_PACKET:
                    return
                await self._pass_on(kind, await out.readexactly(size))

    async def _pass_on(self, kind: bytes, payload: bytes) -> None:
        if self._gone:
            return
        try:
            if kind == b"D":
                await self.on_data(payload)
        except (ConnectionError, RuntimeError):
            self._gone = True

    async def ended(self) -> None:
        """Returns when nothing more comes from the process."""
        if self._task is not None:
            await asyncio.wait([self._task])

    async def stop(self) -> None:
        """End the process: ask, tell, make. Returns when it is gone; may be called again."""
        process = self._process
        if process is None:
            return
        self._gone = True
        if process.returncode is None:
            with contextlib.suppress(ConnectionError, RuntimeError, OSError):
                await asyncio.wait_for(self.send_meta({"type": "quit"}), PATIENCE)
        for number in (None, signal.SIGTERM, signal.SIGKILL):
            if number is not None:
                _signal_group(process, number)
            with contextlib.suppress(TimeoutError):
                await asyncio.wait_for(process.wait(), PATIENCE)
                break
        if self._task is not None:
            self._task.cancel()
            with contextlib.suppress(asyncio.CancelledError):
                await self._task
        if process.stdin is not None:
            process.stdin.close()


async def _is_ready(out: asyncio.StreamReader) -> bool:
    """Lines before the first frame are passed over."""
    for _ in range(_PRELUDE_LINES):
        line = await out.readline()
        if line == _READY:
            return True
        if not line:
            break
    return False


def _signal_group(process: Process, number: int) -> None:
    """To the process and all that it started."""
    with contextlib.suppress(ProcessLookupError, PermissionError):
        if hasattr(os, "killpg"):
            os.killpg(process.pid, number)
        else:
            process.kill()


async def _nowhere(*_: str) -> None:
    """What the library would call for leaving, for pages and for files; the end of the process says it all."""
