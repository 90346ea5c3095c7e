"""A real Chromium, driven over its DevTools protocol with the web library that the extra brings."""

import asyncio
import base64
import contextlib
import shutil
import subprocess
from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import aiohttp

NAMES = ("chromium", "chromium-browser", "google-chrome", "chrome")
FOUND = next((path for path in map(shutil.which, NAMES) if path), None)

CTRL, ALT, SHIFT = 2, 1, 8
_KEY_CODES = {"Enter": 13, "Tab": 9, "Backspace": 8, "Escape": 27, "Insert": 45} | {
    f"F{n}": 111 + n for n in range(1, 13)
}

# The terminal is nowhere to be had by name: look through all objects of the page for the one that holds it.
_FIND_TERMINAL = """function() {
  return this.find((one) => Object.prototype.hasOwnProperty.call(one, "websocket_url") && one.terminal);
}"""
_ROWS = """function() {
  const lines = this.terminal.buffer.active;
  return Array.from({length: this.terminal.rows}, (_, n) => lines.getLine(n).translateToString(true)).join("\\n");
}"""


class Page:
    """One tab."""

    def __init__(self, socket: aiohttp.ClientWebSocketResponse) -> None:
        self._socket, self._number = socket, 0
        self._waiting: dict[int, asyncio.Future[Any]] = {}
        self.requests: list[str] = []
        self.complaints: list[str] = []
        self._reading = asyncio.ensure_future(self._read())

    async def _read(self) -> None:
        async for message in self._socket:
            got = message.json()
            if "id" in got:
                self._waiting.pop(got["id"]).set_result(got)
            elif got["method"] == "Network.requestWillBeSent":
                self.requests.append(got["params"]["request"]["url"])
            elif got["method"] == "Network.webSocketCreated":
                self.requests.append(got["params"]["url"])
            elif got["method"] == "Log.entryAdded":
                self.complaints.append(got["params"]["entry"]["text"])
            elif got["method"] == "Runtime.exceptionThrown":
                self.complaints.append(str(got["params"]["exceptionDetails"]))

    async def do(self, method: str, **params: Any) -> Any:
        """One order of the protocol, and what came of it."""
        self._number += 1
        self._waiting[self._number] = done = asyncio.get_running_loop().create_future()
        await self._socket.send_json({"id": self._number, "method": method, "params": params})
        got = await asyncio.wait_for(done, 20)
        assert "error" not in got, (method, got["error"])
        return got["result"]

    async def run(self, script: str, by_hand: bool = False) -> Any:
        """A script in the page, and its value. `by_hand`: as if somebody had just pressed a key."""
        asked = {"expression": script, "awaitPromise": True, "returnByValue": True, "userGesture": by_hand}
        got = await self.do("Runtime.evaluate", **asked)
        assert "exceptionDetails" not in got, got
        return got["result"].get("value")

    async def until(self, script: str, seconds: float = 60) -> None:
        """Wait until a script in the page is true."""
        for _ in range(int(seconds * 10)):
            with contextlib.suppress(AssertionError):
                if await self.run(script):
                    return
            await asyncio.sleep(0.1)
        raise AssertionError(f"never true: {script}")

    async def screen(self) -> str:
        """The rows of the terminal as text; empty while there is none."""
        everything = await self.do("Runtime.evaluate", expression="Object.prototype")
        found = await self.do("Runtime.queryObjects", prototypeObjectId=everything["result"]["objectId"])
        terminal = await self.do(
            "Runtime.callFunctionOn", objectId=found["objects"]["objectId"], functionDeclaration=_FIND_TERMINAL
        )
        if "objectId" not in terminal["result"]:
            return ""
        rows = await self.do(
            "Runtime.callFunctionOn",
            objectId=terminal["result"]["objectId"],
            functionDeclaration=_ROWS,
            returnByValue=True,
        )
        return str(rows["result"].get("value", ""))

    async def see(self, words: str, seconds: float = 60) -> str:
        """Wait until words stand on the screen of the terminal. Returns the screen."""
        shown = ""
        for _ in range(int(seconds * 4)):
            with contextlib.suppress(AssertionError, KeyError):
                shown = await self.screen()
                if words in shown:
                    return shown
            await asyncio.sleep(0.25)
        raise AssertionError(f"never on the screen: {words!r}\n{shown}")

    async def press(self, key: str, held: int = 0, commands: tuple[str, ...] = ()) -> None:
        """A key with those held down; `commands` are what the browser's window makes of it, such as paste."""
        code = _KEY_CODES.get(key) or ord(key.upper())
        text = {"Enter": "\r"}.get(key, key if len(key) == 1 and not held & (CTRL | ALT) else "")
        common = {"key": key, "windowsVirtualKeyCode": code, "modifiers": held}
        down = {"type": "keyDown" if text else "rawKeyDown", "text": text, "commands": list(commands)}
        await self.do("Input.dispatchKeyEvent", **common, **down)
        await self.do("Input.dispatchKeyEvent", **common, type="keyUp")

    async def type(self, words: str) -> None:
        """Letters, one key each."""
        for letter in words:
            await self.do("Input.dispatchKeyEvent", type="keyDown", key=letter, text=letter)
            await self.do("Input.dispatchKeyEvent", type="keyUp", key=letter)

    async def picture(self, file: Path) -> None:
        """A picture of the page."""
        shot = await self.do("Page.captureScreenshot", format="png")
        file.write_bytes(base64.b64decode(shot["data"]))


@contextlib.asynccontextmanager
async def chromium(folder: Path, *more: str) -> AsyncIterator["Browser"]:
    """A Chromium with a profile of its own in `folder`, gone afterwards."""
    assert FOUND is not None
    words = [FOUND, "--headless=new", "--remote-debugging-port=0", f"--user-data-dir={folder}", "--no-first-run"]
    words += ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--window-size=1280,800", *more]
    process = subprocess.Popen(words, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    try:
        port = await _port_of(folder / "DevToolsActivePort")
        async with aiohttp.ClientSession() as session:
            yield Browser(session, port)
    finally:
        process.terminate()
        try:
            process.wait(10)
        except subprocess.TimeoutExpired:
            process.kill()
            process.wait()


async def _port_of(file: Path) -> int:
    for _ in range(200):
        with contextlib.suppress(OSError, ValueError, IndexError):
            return int(file.read_text().splitlines()[0])
        await asyncio.sleep(0.1)
    raise AssertionError("Chromium did not open its port")


class Browser:
    """Opens tabs."""

    def __init__(self, session: aiohttp.ClientSession, port: int) -> None:
        self._session, self._at = session, f"http://127.0.0.1:{port}"

    @contextlib.asynccontextmanager
    async def page(self, url: str) -> AsyncIterator[Page]:
        """A tab on that address."""
        async with self._session.put(f"{self._at}/json/new?about:blank") as answer:
            told = await answer.json(content_type=None)
        async with self._session.ws_connect(told["webSocketDebuggerUrl"], max_msg_size=0) as socket:
            page = Page(socket)
            for part in ("Page", "Runtime", "Network", "Log"):
                await page.do(f"{part}.enable")
            await page.do("Page.bringToFront")
            await page.do("Page.navigate", url=url)
            try:
                yield page
            finally:
                page._reading.cancel()
