"""Nothing is shown and nothing starts for those who have not signed in, for foreign pages, under foreign names."""

import asyncio
import re
from typing import Any

import pytest
from aiohttp import ClientSession, WSServerHandshakeError

from .conftest import WORDS, Served, hear

UPGRADE = {
    "Connection": "Upgrade",
    "Upgrade": "websocket",
    "Sec-WebSocket-Version": "13",
    "Sec-WebSocket-Key": "dGhlIHNhbXBsZSBub25jZQ==",
}
CLOSED_PATHS = (
    "/",
    "/ws",
    "/ws?width=80&height=24",
    "/static/page.js",
    "/static/page.css",
    "/static/terminal.js",
    "/static/terminal.css",
    "/static/",
    "/download/0123",
    "/sign-out",
    "/nothing",
    "/sign-in/",
    "/sign-in/../ws",
    "/sign-in/%2e%2e/ws",
    "//ws",
    "/%77s",
    "/ws/",
)


async def ask(served: Served, path: str, *, method: str = "GET", **headers: str) -> tuple[int, dict[str, str], str]:
    """One request byte by byte, so that no library tidies path or headers. Returns status, headers, body."""
    sent = {"Host": f"127.0.0.1:{served.port}", "Connection": "close"} | headers
    lines = [f"{method} {path} HTTP/1.1", *(f"{name}: {value}" for name, value in sent.items() if value), "", ""]
    reader, writer = await asyncio.open_connection("127.0.0.1", served.port)
    try:
        writer.write("\r\n".join(lines).encode())
        async with asyncio.timeout(10):
            head = (await reader.readuntil(b"\r\n\r\n")).decode()
            first, *rest = head.strip().split("\r\n")
            got = dict(line.split(": ", 1) for line in rest)
            size = 0 if method == "HEAD" else int(got.get("Content-Length", 0))
            body = (await reader.readexactly(size)).decode()
    finally:
        writer.close()
    return int(first.split()[1]), got, body


async def cookie_of(served: Served, session: ClientSession) -> str:
    answer = await served.sign_in(session)
    assert answer.status == 303
    return "; ".join(f"{name}={morsel.value}" for name, morsel in answer.cookies.items())


@pytest.mark.parametrize("upgrade", [{}, UPGRADE], ids=["page", "socket"])
@pytest.mark.parametrize("method", ["GET", "HEAD", "POST"])
async def test_without_a_sign_in_no_path_shows_or_starts_anything(
    serve: Any, method: str, upgrade: dict[str, str]
) -> None:
    served = await serve()
    for path in CLOSED_PATHS:
        status, headers, body = await ask(served, path, method=method, Origin=served.url, **upgrade)
        assert status in (303, 400, 401, 404), path
        assert status != 303 or headers["Location"] == "/sign-in", path
        assert len(body) < 100, path
    await asyncio.sleep(0.3)
    assert served.started() == []
    assert len(served.server.desks) == 0


@pytest.mark.parametrize("made_up", ["", "0" * 64, "x" * 9000, "' or 1=1", "../../etc"])
async def test_a_made_up_cookie_is_none(serve: Any, made_up: str) -> None:
    served = await serve()
    for path in ("/", "/ws", "/static/page.js"):
        status, *_ = await ask(served, path, Cookie=f"intake={made_up}", Origin=served.url, **UPGRADE)
        assert status in (303, 400, 401)
    assert served.started() == []


async def test_the_name_of_a_sitting_is_no_sign_in(serve: Any, someone: Any) -> None:
    served = await serve()
    cookies = await cookie_of(served, someone())
    sitting = re.search(r"intake_sitting=(\w+)", cookies)
    assert sitting is not None
    status, *_ = await ask(served, "/ws", Cookie=f"intake={sitting[1]}; {sitting[0]}", Origin=served.url, **UPGRADE)
    assert status == 401


async def test_with_the_passphrase_the_page_and_a_desk_are_there(serve: Any, someone: Any) -> None:
    served, me = await serve(), someone()
    assert (await served.sign_in(me, f"  {WORDS}\n")).status == 303
    async with me.get(served.url) as page:
        assert page.status == 200
        assert 'class="textual-terminal"' in await page.text()
    socket = await served.socket(me, "?width=100&height=30")
    await hear(socket, "hello 100x30")
    assert len(served.started()) == 1


async def test_wrong_passphrases_are_refused_and_slowed_down_the_right_one_too(serve: Any, someone: Any) -> None:
    served, me = await serve(), someone()
    for wrong in ("", WORDS.upper(), WORDS + "x"):
        answer = await served.sign_in(me, wrong)
        assert (answer.status, dict(answer.cookies)) == (403, {})
        assert "not the passphrase" in await answer.text()
    slowed = await served.sign_in(me, WORDS)
    assert (slowed.status, dict(slowed.cookies)) == (429, {})
    assert int(slowed.headers["Retry-After"]) >= 1
    served.clock.now += 1.1
    assert (await served.sign_in(me, "wrong again")).status == 403
    served.clock.now += 1.1
    assert (await served.sign_in(me, WORDS)).status == 429
    served.clock.now += 1.1
    assert (await served.sign_in(me, WORDS)).status == 303


async def test_many_tries_at_once_are_tries_one_after_another(serve: Any, someone: Any) -> None:
    served, me = await serve(), someone()
    answers = await asyncio.gather(*(served.sign_in(me, f"a wrong passphrase {n}") for n in range(30)))
    assert sorted(answer.status for answer in answers) == [403] * 3 + [429] * 27


@pytest.mark.parametrize(
    "origin",
    [
        "http://evil.example",
        "null",
        "",
        "http://127.0.0.1:1",
        "https://127.0.0.1:{port}",
        "http://127.0.0.1:{port}.evil.example",
        "http://localhost:{port}",
        "http://127.0.0.1:{port}/",
        "file://",
    ],
)
async def test_a_page_from_elsewhere_gets_no_socket_and_no_form_through_even_with_the_cookie(
    serve: Any, someone: Any, origin: str
) -> None:
    served = await serve()
    cookies = await cookie_of(served, someone())
    foreign = origin.format(port=served.port)
    for path, method, more in (("/ws", "GET", UPGRADE), ("/sign-out", "POST", {}), ("/sign-in", "POST", {})):
        status, *_ = await ask(served, path, method=method, Cookie=cookies, Origin=foreign, **more)
        assert status == 403, path
    assert served.started() == []


@pytest.mark.parametrize(
    "host",
    [
        "evil.example",
        "evil.example:{port}",
        "localhost.evil.example:{port}",
        "127.0.0.1:{port}@evil.example",
        "127.0.0.1",
        "127.0.0.1:1",
        "a b:{port}",
        "0.0.0.0:{port}",
        "127.0.0.1:{port}, evil.example",
    ],
)
async def test_under_a_foreign_name_there_is_nothing_not_even_the_sign_in(serve: Any, someone: Any, host: str) -> None:
    served = await serve()
    cookies = await cookie_of(served, someone())
    named = host.format(port=served.port)
    for path in ("/", "/sign-in", "/ws", "/static/page.js"):
        status, _, body = await ask(served, path, Host=named, Cookie=cookies, Origin=f"http://{named}", **UPGRADE)
        assert status in (400, 421), path
        assert "evil" not in body
    assert served.started() == []


@pytest.mark.parametrize("host", ["localhost:{port}", "LOCALHOST:{port}", "127.0.0.1:{port}"])
async def test_under_its_own_names_it_answers(serve: Any, host: str) -> None:
    served = await serve()
    status, _, body = await ask(served, "/sign-in", Host=host.format(port=served.port))
    assert status == 200
    assert "Passphrase" in body


async def test_behind_a_proxy_the_public_name_and_its_origin_count(serve: Any, someone: Any) -> None:
    served, me = await serve(public_url="https://desk.example"), someone()
    behind = {"Host": "desk.example", "Origin": "https://desk.example"}
    answer = await served.sign_in(me, **behind)
    assert answer.status == 303
    set_cookie = answer.headers.getall("Set-Cookie")
    assert set_cookie[0].startswith("__Host-intake=")
    assert all("Secure" in one and "HttpOnly" in one and "SameSite=Strict" in one for one in set_cookie)
    cookies = "; ".join(one.partition(";")[0] for one in set_cookie)
    assert (await ask(served, "/ws", Cookie=cookies, **behind | UPGRADE))[0] == 101
    page = await ask(served, "/", Cookie=cookies, Host="desk.example")
    assert "wss://desk.example" in page[1]["Content-Security-Policy"]
    for wrong in ("http://desk.example", "https://desk.example:8443", "https://desk.example.evil.example"):
        assert (await ask(served, "/ws", Cookie=cookies, **behind | UPGRADE | {"Origin": wrong}))[0] == 403


async def test_the_cookie_is_out_of_reach_of_scripts_and_other_sites(serve: Any, someone: Any) -> None:
    served = await serve()
    answer = await served.sign_in(someone())
    token, sitting = answer.headers.getall("Set-Cookie")
    assert re.fullmatch(r"intake=[0-9a-f]{64}; HttpOnly; Path=/; SameSite=Strict", token)
    assert re.fullmatch(r"intake_sitting=[0-9a-f]{32}; HttpOnly; Max-Age=\d+; Path=/; SameSite=Strict", sitting)
    again = await served.sign_in(someone())
    assert again.headers.getall("Set-Cookie")[0] != token


@pytest.mark.parametrize("kept", ["../../../etc/passwd", "$(touch x)", "A" * 32, "0" * 31, "0" * 33, "--help"])
async def test_a_sitting_from_the_browser_is_hexadecimal_or_a_new_one(serve: Any, someone: Any, kept: str) -> None:
    served, me = await serve(), someone()
    await served.sign_in(me, Cookie=f"intake_sitting={kept}")
    await hear(await served.socket(me), "hello")
    sitting = served.started()[0]["sitting"]
    assert re.fullmatch("[0-9a-f]{32}", sitting)
    assert sitting != kept


async def test_who_signs_in_again_sits_where_they_sat(serve: Any, someone: Any) -> None:
    served, me = await serve(), someone()
    first = (await served.sign_in(me)).cookies
    second = (await served.sign_in(me)).cookies
    assert second["intake_sitting"].value == first["intake_sitting"].value
    assert second["intake"].value != first["intake"].value
    status, *_ = await ask(served, "/static/page.js", Cookie=f"intake={first['intake'].value}")
    assert status == 401  # the earlier sign-in of that browser is over


async def test_every_answer_has_the_headers_and_no_page_speaks_of_another_host(serve: Any, someone: Any) -> None:
    served = await serve()
    cookies = await cookie_of(served, someone())
    asked = ["/", "/sign-in", "/static/page.js", "/static/page.css", "/static/terminal.css", "/static/terminal.js"]
    for path in (*asked, "/nothing"):
        status, headers, body = await ask(served, path, Cookie=cookies)
        assert status == (404 if path == "/nothing" else 200), path
        assert headers["X-Content-Type-Options"] == "nosniff"
        assert headers["Referrer-Policy"] == "same-origin"
        assert "aiohttp" not in headers["Server"]
        policy = headers["Content-Security-Policy"]
        assert "frame-ancestors 'none'" in policy
        assert "default-src 'none'" in policy
        assert "script-src 'self'; " in policy or "script-src" not in policy
        assert not re.search(r"https?:", policy)
        if path != "/static/terminal.js":  # a library: what it may reach is what the policy of the page says
            assert not re.search(
                r"""(src|href|action)=["']?(https?:)?//|url\(["']?(https?:)?//|@import|fetch\(""", body
            )


async def test_the_page_takes_no_orders_from_its_address(serve: Any, someone: Any) -> None:
    served = await serve()
    cookies = await cookie_of(served, someone())
    for query in ("?ping=http://evil.example", "?fontsize=<script>", "?delay=1", "?%0d%0aX-Evil:%20yes"):
        status, headers, _ = await ask(served, f"/{query}", Cookie=cookies)
        assert (status, headers["Location"]) == (303, "/")
        assert "X-Evil" not in headers


@pytest.mark.parametrize(
    "name",
    ["../server.py", "..%2fserver.py", "%2e%2e/guard.py", "js/textual.js", "page.html", "..", "%00", "page.js%00"],
)
async def test_no_other_file_can_be_fetched(serve: Any, someone: Any, name: str) -> None:
    served = await serve()
    cookies = await cookie_of(served, someone())
    status, _, body = await ask(served, f"/static/{name}", Cookie=cookies)
    assert status in (400, 404)
    assert len(body) < 100


async def test_only_small_forms_are_read(serve: Any, someone: Any) -> None:
    served, me = await serve(), someone()
    assert (await served.sign_in(me, "x" * 100_000)).status == 413
    async with me.post(f"{served.url}/sign-in", json={"passphrase": WORDS}, headers={"Origin": served.url}) as answer:
        assert answer.status == 415
    status, *_ = await ask(served, "/", method="PUT", Cookie=await cookie_of(served, me))
    assert status == 405


async def test_a_socket_without_a_sign_in_is_refused_to_a_library_too(serve: Any, someone: Any) -> None:
    served = await serve()
    with pytest.raises(WSServerHandshakeError, match="401"):
        await served.socket(someone())
