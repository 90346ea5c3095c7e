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
        self.told: asyncio.Future[int] = asyncio.get_running_loop().create_future()
        """Why it has to end, once somebody says so."""
        self.over = asyncio.Event()

    async def end(self, why: int) -> None:
        """Have it end. Returns when its process is gone."""
        if not self.told.done():
            self.told.set_result(why)
        await self.over.wait()

    async def run(self, words: Sequence[str], size: tuple[int, int], on_key: Callable[[], None]) -> int:
        """Carry keys and screen until one of the two ends, or `end` is called. Returns why; the process is gone."""
        process = DeskProcess(words, self.socket.send_bytes)
        try:
            await process.start(*fit_size(*size))
            reading = asyncio.ensure_future(self._read(process, on_key))
            ways_out: list[asyncio.Future[Any]] = [reading, asyncio.ensure_future(process.ended()), self.told]
            try:
                await asyncio.wait(ways_out, return_when=asyncio.FIRST_COMPLETED)
                return self.told.result() if self.told.done() else reading.result() if reading.done() else LEFT
            finally:
                for way in ways_out[:2]:
                    way.cancel()
                await asyncio.wait(ways_out[:2])
        finally:
            await asyncio.shield(process.stop())

    async def _read(self, process: DeskProcess, on_key: Callable[[], None]) -> int:
        async for message in self.socket:
            if message.type is WSMsgType.TEXT:
                on_key()
                if not await obey(process, message.data, self.socket.send_str):
                    return GARBLED
        return LEFT


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

    async def hold(
        self, sitting: str, socket: web.WebSocketResponse, size: tuple[int, int], on_key: Callable[[], None]
    ) -> None:
        """Run a desk on an open socket until either ends. A desk that the sitting has elsewhere ends before."""
        before, desk = self._by_sitting.get(sitting), Desk(socket)
        self._by_sitting[sitting] = desk
        why = LEFT
        try:
            if before is not None:
                await before.end(TAKEN_OVER)
            why = desk.told.result() if desk.told.done() else await desk.run(self._words(sitting), size, on_key)
        finally:
            if self._by_sitting.get(sitting) is desk:
                del self._by_sitting[sitting]
            desk.over.set()
            await socket.close(code=why)

    async def end(self, sitting: str, why: int) -> None:
        """End the desk of a sitting, if it has one."""
        desk = self._by_sitting.get(sitting)
        if desk is not None:
            await desk.end(why)

    async def end_all(self) -> None:
        """The server stops."""
        await asyncio.gather(*(desk.end(STOPPING) for desk in list(self._by_sitting.values())))


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
