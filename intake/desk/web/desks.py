"""The desks that run: at most so many at once, and one for each sitting."""

import asyncio
import json
from collections.abc import Callable, Sequence
from typing import Any

from aiohttp import WSMsgType, web

from intake.desk.web.desk_process import DeskProcess

LEFT, TAKEN_OVER, SIGNED_OUT, STOPPING, GARBLED = 4000, 4001, 4002, 4003, 4004
"""Why the socket was closed; the page has a sentence for each."""

_MOST_COLUMNS, _MOST_ROWS = 500, 200
Words = Callable[[str], Sequence[str]]
"""From the id of a sitting to the command that opens its desk, word by word."""


class Desk:
    """One socket with the process behind it."""

    def __init__(self, socket: web.WebSocketResponse) -> None:
        self.socket = socket
        self.process: DeskProcess | None = None
        self.over = asyncio.Event()

    async def end(self, why: int) -> None:
        """Close socket and process. Returns when both are gone."""
        closing = asyncio.ensure_future(self.socket.close(code=why))
        if self.process is not None:
            await self.process.stop()
        await asyncio.wait([closing])


class Desks:
    """All desks of a server, by sitting."""

    def __init__(self, most: int, words: Words) -> None:
        self.most, self._words = most, words
        self._by_sitting: dict[str, Desk] = {}

    def __len__(self) -> int:
        return len(self._by_sitting)

    def is_full_for(self, sitting: str) -> bool:
        """True when a desk for that sitting would be one too many. Its own running one does not count."""
        return len(self._by_sitting.keys() - {sitting}) >= self.most

    def runs(self, sitting: str) -> bool:
        """True while that sitting has a desk."""
        return sitting in self._by_sitting

    async def hold(self, sitting: str, socket: web.WebSocketResponse, size: tuple[int, int], on_key: Any) -> None:
        """Run a desk on an open socket until either ends. A desk that the sitting has elsewhere ends before."""
        before, desk = self._by_sitting.get(sitting), Desk(socket)
        self._by_sitting[sitting] = desk
        try:
            if before is not None:
                await before.end(TAKEN_OVER)
                await before.over.wait()
            if self._by_sitting.get(sitting) is desk:
                await self._run(desk, self._words(sitting), size, on_key)
        finally:
            if desk.process is not None:
                await asyncio.shield(desk.process.stop())
            if self._by_sitting.get(sitting) is desk:
                del self._by_sitting[sitting]
            desk.over.set()

    async def end(self, sitting: str, why: int) -> None:
        """End the desk of a sitting, if it has one."""
        desk = self._by_sitting.get(sitting)
        if desk is not None:
            await desk.end(why)

    async def end_all(self) -> None:
        """The server stops."""
        await asyncio.gather(*(desk.end(STOPPING) for desk in list(self._by_sitting.values())))

    async def _run(self, desk: Desk, words: Sequence[str], size: tuple[int, int], on_key: Any) -> None:
        async def leave() -> None:
            await desk.socket.close(code=LEFT)

        desk.process = DeskProcess(words, desk.socket.send_bytes, leave)
        await desk.process.start(*fit_size(*size))
        process_ends = asyncio.ensure_future(_close_when_over(desk.process, leave))
        try:
            async for message in desk.socket:
                if message.type is not WSMsgType.TEXT:
                    continue
                on_key()
                if not await obey(desk.process, message.data, desk.socket.send_str):
                    await desk.socket.close(code=GARBLED)
        finally:
            process_ends.cancel()


async def _close_when_over(process: DeskProcess, leave: Callable[[], Any]) -> None:
    """A desk that ended without saying so leaves no dead page behind."""
    await process.ended()
    await leave()


async def obey(process: DeskProcess, text: str, answer: Callable[[str], Any]) -> bool:
    """Carry out one message of the page. False for one that our page would not send."""
    match _parsed(text):
        case ["stdin", str(keys)]:
            await process.send_bytes(keys.encode("utf-8", "replace"))
        case ["resize", {"width": int(columns), "height": int(rows)}]:
            await process.set_terminal_size(*fit_size(columns, rows))
        case ["ping", str(stamp)] if len(stamp) < 40:
            await answer(json.dumps(["pong", stamp]))
        case ["focus"]:
            await process.focus()
        case ["blur"]:
            await process.blur()
        case _:
            return False
    return True


def _parsed(text: str) -> Any:
    try:
        return json.loads(text)
    except (ValueError, RecursionError):
        return None


def fit_size(columns: int, rows: int) -> tuple[int, int]:
    """A size that a screen may have: what a page asks for decides how much memory a desk takes."""
    return min(max(columns, 20), _MOST_COLUMNS), min(max(rows, 5), _MOST_ROWS)
