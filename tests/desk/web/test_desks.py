"""One desk process for each sitting, at most so many at once, none left over."""

import asyncio
import json
import os
from typing import Any

import pytest
from aiohttp import WSServerHandshakeError

from intake.desk.web.desks import GARBLED, LEFT, SIGNED_OUT, TAKEN_OVER
from intake.desk.web.sign_ins import IDLE_HOURS

from .conftest import close_code, gone, hear, is_running


async def nobody_left(served: Any, but: int) -> None:
    """Wait until so many desks are counted."""
    async with asyncio.timeout(10):
        while len(served.server.desks) != but:
            await asyncio.sleep(0.05)


async def test_keys_go_in_and_the_screen_comes_out(serve: Any, someone: Any) -> None:
    served, me = await serve(), someone()
    await served.sign_in(me)
    socket = await served.socket(me)
    await hear(socket, "hello 80x24")
    await socket.send_json(["stdin", "40 kg ½"])
    await hear(socket, "got D 40 kg ½")
    await socket.send_json(["resize", {"width": 120, "height": 40}])
    await hear(socket, '"width": 120')
    await socket.send_json(["focus"])
    await hear(socket, '"focus"')


async def test_a_desk_is_told_neither_passphrase_nor_token(
    serve: Any, someone: Any, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("INTAKE_PASSPHRASE", "three small brown jars")
    served, me = await serve(), someone()
    token = (await served.sign_in(me)).cookies["intake"].value
    await hear(await served.socket(me), "hello")
    told = served.started()[0]
    assert "INTAKE_PASSPHRASE" not in told["environment"]
    assert "three small brown jars" not in json.dumps(told)
    assert token not in json.dumps(told)


async def test_a_desk_ends_with_its_socket(serve: Any, someone: Any) -> None:
    served, me = await serve(), someone()
    await served.sign_in(me)
    socket = await served.socket(me)
    await hear(socket, "hello")
    pid = served.started()[0]["pid"]
    assert is_running(pid)
    await socket.close()
    assert await gone(pid)
    await nobody_left(served, 0)


async def test_a_desk_ends_when_the_line_is_cut(serve: Any, someone: Any) -> None:
    served, me = await serve(), someone()
    await served.sign_in(me)
    socket = await served.socket(me)
    await hear(socket, "hello")
    await me.close()  # no farewell
    assert await gone(served.started()[0]["pid"])


@pytest.mark.skipif(os.name != "posix", reason="process groups are signalled")
async def test_a_desk_that_will_not_leave_is_ended_with_all_that_it_started(serve: Any, someone: Any) -> None:
    served, me = await serve("stubborn"), someone()
    await served.sign_in(me)
    socket = await served.socket(me)
    await hear(socket, "hello")
    told = served.started()[0]
    await socket.close()
    assert await gone(told["pid"])
    assert await gone(told["child"])


async def test_all_desks_end_with_the_server(serve: Any, someone: Any) -> None:
    served = await serve()
    sockets = []
    for _ in range(3):
        me = someone()
        await served.sign_in(me)
        sockets.append(await served.socket(me))
        await hear(sockets[-1], "hello")
    stopping = asyncio.ensure_future(served.stop())
    await asyncio.gather(*map(close_code, sockets))
    await stopping
    assert len(served.started()) == 3
    for told in served.started():
        assert await gone(told["pid"])


async def test_beyond_the_limit_there_is_a_page_that_says_so_and_nothing_starts(serve: Any, someone: Any) -> None:
    served, third = await serve(most=2), someone()
    sockets = []
    for _ in range(2):
        me = someone()
        await served.sign_in(me)
        sockets.append(await served.socket(me))
        await hear(sockets[-1], "hello")
    await served.sign_in(third)
    async with third.get(served.url) as page:
        assert page.status == 503
        assert "All 2 desks are in use" in await page.text()
    with pytest.raises(WSServerHandshakeError, match="503"):
        await served.socket(third)
    assert len(served.started()) == 2
    async with me.get(served.url) as page:  # a reload of one who has a desk is no further desk
        assert page.status == 200
    await sockets[0].close()
    await nobody_left(served, 1)
    await hear(await served.socket(third), "hello")


async def test_many_sockets_at_the_limit_start_no_more_than_that(serve: Any, someone: Any) -> None:
    served, people = await serve(most=2), [someone() for _ in range(6)]
    for me in people:
        await served.sign_in(me)
    tried = await asyncio.gather(*(served.socket(me) for me in people), return_exceptions=True)
    open_ones = [one for one in tried if not isinstance(one, BaseException)]
    assert len(open_ones) == 2
    for socket in open_ones:
        await hear(socket, "hello")
    assert len(served.started()) == 2


async def test_a_second_window_takes_the_desk_over(serve: Any, someone: Any) -> None:
    served, me = await serve(), someone()
    await served.sign_in(me)
    first = await served.socket(me)
    await hear(first, "hello")
    second = await served.socket(me)
    assert await close_code(first) == TAKEN_OVER
    await hear(second, "hello")
    one, other = served.started()
    assert one["sitting"] == other["sitting"]
    assert not is_running(one["pid"])
    assert is_running(other["pid"])
    assert len(served.server.desks) == 1


async def test_a_storm_of_reloads_leaves_one_desk(serve: Any, someone: Any) -> None:
    served, me = await serve(), someone()
    await served.sign_in(me)
    sockets = [await served.socket(me) for _ in range(6)]
    await hear(sockets[-1], "hello")
    assert await asyncio.gather(*map(close_code, sockets[:-1])) == [TAKEN_OVER] * 5
    running = [told["pid"] for told in served.started() if is_running(told["pid"])]
    assert len(running) == 1


async def test_signing_out_ends_the_desk_and_the_cookie(serve: Any, someone: Any) -> None:
    served, me = await serve(), someone()
    await served.sign_in(me)
    cookie = {one.key: one.value for one in me.cookie_jar}
    socket = await served.socket(me)
    await hear(socket, "hello")
    leaving = asyncio.ensure_future(
        me.post(f"{served.url}/sign-out", headers={"Origin": served.url}, allow_redirects=False)
    )
    assert await close_code(socket) == SIGNED_OUT
    answer = await leaving
    assert (answer.status, answer.headers["Location"]) == (303, "/sign-in")
    assert await gone(served.started()[0]["pid"])
    stolen = someone()
    stolen.cookie_jar.update_cookies(cookie)
    async with stolen.get(f"{served.url}/static/page.js") as page:
        assert page.status == 401


async def test_half_a_day_without_a_key_ends_the_sign_in_and_its_desk(serve: Any, someone: Any) -> None:
    served, me = await serve(), someone()
    await served.sign_in(me)
    socket = await served.socket(me)
    await hear(socket, "hello")
    served.clock.now += (IDLE_HOURS - 1) * 3600
    await socket.send_json(["stdin", "still here"])
    await hear(socket, "still here")
    served.clock.now += (IDLE_HOURS - 1) * 3600
    await served.server.end_expired()
    assert is_running(served.started()[0]["pid"])
    served.clock.now += 2 * 3600
    ending = asyncio.ensure_future(served.server.end_expired())
    assert await close_code(socket) == SIGNED_OUT
    await ending
    async with me.get(f"{served.url}/static/page.js") as page:
        assert page.status == 401
    assert await gone(served.started()[0]["pid"])


@pytest.mark.parametrize(
    "message",
    ["", "{}", "[", "[]", '["stdin"]', '["stdin", 1]', '["stdin", {"a": 1}]', '["open", "x"]', "[" * 5000,
     '["resize", {"width": "9", "height": 1}]', '["resize", null]', '["ping", 1]', '[{"type": "quit"}]'],
)  # fmt: skip
async def test_a_message_that_our_page_would_not_send_ends_the_line(serve: Any, someone: Any, message: str) -> None:
    served, me = await serve(), someone()
    await served.sign_in(me)
    socket = await served.socket(me)
    await hear(socket, "hello")
    await socket.send_str(message)
    assert await close_code(socket) == GARBLED
    assert await gone(served.started()[0]["pid"])


@pytest.mark.parametrize(
    "query", ["?width=99999999&height=1", "?width=-1&height=x", "?width=%00&height=", "?width=1e9"]
)
async def test_a_screen_has_a_size_that_fits_in_memory(serve: Any, someone: Any, query: str) -> None:
    served, me = await serve(), someone()
    await served.sign_in(me)
    said = await hear(await served.socket(me, query), "hello")
    columns, rows = said.split()[1].split("x")
    assert 20 <= int(columns) <= 500
    assert 5 <= int(rows) <= 200


@pytest.mark.parametrize("manner", ["broken", "leaving"])
async def test_a_desk_that_ends_by_itself_closes_its_page(serve: Any, someone: Any, manner: str) -> None:
    served, me = await serve(manner), someone()
    await served.sign_in(me)
    socket = await served.socket(me)
    if manner == "leaving":
        await hear(socket, "hello")
        await socket.send_json(["stdin", "x"])
    assert await close_code(socket) == LEFT
    await nobody_left(served, 0)
