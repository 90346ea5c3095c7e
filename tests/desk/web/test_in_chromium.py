"""The whole way in a real browser: sign in, paste a message of several lines, copy the question, reload."""

import asyncio
import contextlib
import os
import re
import sys
from collections.abc import AsyncIterator
from pathlib import Path
from urllib.parse import urlsplit

import pytest

pytest.importorskip("textual_serve", reason="the desk in a browser is an extra: pip install rise-intake[web]")

from aiohttp.test_utils import TestServer

from intake.cli.serve import desk_words
from intake.desk.web.passphrase import Passphrase
from intake.desk.web.server import Server, Settings

from .chromium import ALT, CTRL, FOUND, Page, chromium
from .conftest import WORDS

pytestmark = [pytest.mark.browser, pytest.mark.skipif(FOUND is None, reason="no Chromium on this computer")]

MESSAGE = """Hello,
we fill 16x12x10 inch taped cases, 30 lb, 25 a minute,
from 30 inches to 14 feet,
forklifts drive underneath"""

PUT_ON_CLIPBOARD = """(words) => {
  const line = document.createElement("textarea");
  line.value = words; document.body.append(line); line.select();
  const copied = document.execCommand("copy");
  line.remove(); document.querySelector(".xterm-helper-textarea").focus();
  return copied;
}"""


@pytest.fixture
async def url(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> AsyncIterator[str]:
    """The real server with real desks."""
    monkeypatch.setenv("INTAKE_BOOK", str(tmp_path / "data" / "cases.sqlite3"))
    monkeypatch.setenv("PYTHONPATH", os.pathsep.join([str(Path(__file__).parents[3]), *sys.path]))
    server = TestServer(Server(Settings(passphrase=Passphrase(WORDS), words=desk_words)).app())
    await server.start_server()
    yield f"http://127.0.0.1:{server.port}"
    await server.close()


async def sign_in(page: Page) -> None:
    await page.until("document.readyState === 'complete' && document.activeElement.type === 'password'")
    await page.type(WORDS)
    await page.until(f"document.activeElement.value === {WORDS!r}")
    await page.press("Enter")
    await page.until("!!document.querySelector('#terminal.-connected')")


async def at_rest(page: Page) -> None:
    """Wait until the desk has done its work."""
    async with asyncio.timeout(60):
        shown = "working ..."
        while "working ..." in shown:
            await asyncio.sleep(0.2)
            with contextlib.suppress(AssertionError, KeyError):  # the terminal was just drawn anew
                shown = await page.screen()


async def send_sample(page: Page) -> None:
    """The desk's own sample message, taken in."""
    await page.press("Tab")
    await page.see("oat drink")
    await page.press("Enter")
    await page.see("weight of one product: 9 kg")
    await page.see("Ask: ")
    await at_rest(page)


async def paste(page: Page, words: str) -> None:
    """As a person does: on the clipboard first, then the browser's own way of pasting."""
    assert await page.run(f"({PUT_ON_CLIPBOARD})({words!r})", by_hand=True)
    await page.press("v", CTRL, ("paste",))


async def test_sign_in_paste_copy_and_reload(url: str, tmp_path: Path) -> None:
    async with chromium(tmp_path / "profile") as browser, browser.page(url) as page:
        await sign_in(page)
        await page.see("Paste the visitor's message")

        await page.type("typed without a click")
        await page.see("typed without a click")
        for _ in "typed without a click":
            await page.press("Backspace")
        async with asyncio.timeout(60):
            while "typed" in (await page.screen()).rpartition("─")[2]:  # nothing but the answer line stands below it
                await asyncio.sleep(0.2)

        await paste(page, MESSAGE)
        shown = await page.see("forklifts drive underneath")
        assert all(line in shown for line in MESSAGE.splitlines())
        assert "Understood" not in shown  # the line ends of a paste send nothing
        await page.press("Enter")
        await page.see("Understood: product length 16 in")
        await page.see("weight of one product: 30 lb")
        await at_rest(page)
        shown = await page.see("Ask: ")

        await page.press("y", CTRL)
        await page.until("document.querySelector('#told').textContent === 'Copied.'")
        await page.run("addEventListener('paste', (e) => { got = e.clipboardData.getData('text/plain') }, true)")
        await page.press("v", CTRL, ("paste",))
        await page.until("typeof got === 'string'")
        copied = await page.run("got")
        assert copied[:40] == shown.partition("Ask: ")[2][:40]

        await page.do("Page.reload")
        await page.see("weight of one product: 30 lb")
        await page.see("Ask: ")

        assert {urlsplit(one).netloc for one in page.requests} == {urlsplit(url).netloc}
        assert any(one.startswith("ws://") for one in page.requests)
        assert not [one for one in page.complaints if "Content Security Policy" in one or "Uncaught" in one]


async def test_a_reload_finds_all_open_cases_with_the_same_one_in_front(url: str, tmp_path: Path) -> None:
    async with chromium(tmp_path / "profile") as browser, browser.page(url) as page:
        await sign_in(page)
        await page.see("Paste the visitor's message")
        await send_sample(page)
        first = re.search(r"kept as (\S+)", await page.screen())
        assert first is not None
        await page.press("o", CTRL)
        await page.see("begin a new case")
        await page.press("Enter")
        second = re.search(r"will be kept as (\S+)", await page.see("will be kept as"))
        assert second is not None
        await page.do("Page.reload")
        await page.see("will be kept as " + second[1])
        assert f"[{second[1]}]" in await page.see(first[1])  # its tab, behind
        await page.press("l", CTRL)
        await page.see("weight of one product: 9 kg")
        await page.see(f"[{first[1]}]")
        await page.do("Page.reload")
        await page.see(f"[{first[1]}]")
        await page.see("weight of one product: 9 kg")


async def test_codes_in_a_paste_stay_words_and_press_no_keys(url: str, tmp_path: Path) -> None:
    async with chromium(tmp_path / "profile") as browser, browser.page(url) as page:
        await sign_in(page)
        await page.see("Paste the visitor's message")
        await paste(page, "a\x1b[201~\x11\x1b[15~b https://evil.example/x\rc")
        shown = await page.see("https://evil.example/x")
        assert "ab https" in shown
        assert "Leave the desk?" not in shown
        assert "Advice" not in shown
        await page.press("n", ALT)  # stands for Ctrl+N, which the browser keeps for itself
        await at_rest(page)
        await page.until("document.activeElement.className === 'xterm-helper-textarea'")
        assert "https://evil.example/x" in await page.see("Noted")
        assert await page.run("window.open('https://evil.example/')") is None


async def test_where_the_browser_refuses_to_copy_the_text_stands_ready_to_select(url: str, tmp_path: Path) -> None:
    async with chromium(tmp_path / "profile") as browser, browser.page(url) as page:
        refuse = (
            "Clipboard.prototype.writeText = async () => { throw new Error('no') }; document.execCommand = () => false"
        )
        await page.do("Page.addScriptToEvaluateOnNewDocument", source=refuse)
        await sign_in(page)
        await page.see("Paste the visitor's message")
        await send_sample(page)
        await page.press("y", CTRL)
        await page.until("!document.querySelector('#refused').hidden")
        words = await page.run("document.querySelector('#words').value")
        assert words
        assert await page.run("getSelection().toString()") == words
        await page.run("document.querySelector('#done').click()")
        await page.until("document.activeElement.className === 'xterm-helper-textarea'")
        await page.press("y", CTRL)
        assert words[:40] in await page.see("select it here")  # and the desk shows it too
