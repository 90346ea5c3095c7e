"""The server: its routes, and its life from start to the last desk."""

import asyncio
import contextlib
import logging
import signal
from collections.abc import AsyncIterator, Callable, Sequence
from dataclasses import dataclass, field
from time import monotonic

from aiohttp import web

from intake.desk.sitting import is_sitting_id, new_sitting_id
from intake.desk.web import pages
from intake.desk.web.attempts import Attempts
from intake.desk.web.desks import SIGNED_OUT, Desks, Words
from intake.desk.web.guard import OPEN, WHO, Guard, add_headers
from intake.desk.web.origin import Names, Public, split_host
from intake.desk.web.passphrase import Passphrase
from intake.desk.web.sign_ins import SignIn, SignIns

_SITTING_COOKIE, _SITTING_DAYS = "intake_sitting", 30
_FORM = "application/x-www-form-urlencoded"
_LONGEST_POST, _LONGEST_MESSAGE = 8_000, 1_000_000
_LOOK_FOR_EXPIRED = 30.0
_FAREWELL = 2.0
"""Seconds that a browser has to answer when its socket is closed."""

_FILES = {
    "page.js": (pages.own_file, "page.js", "text/javascript"),
    "page.css": (pages.own_file, "page.css", "text/css"),
    "terminal.js": (pages.library_file, "js/textual.js", "text/javascript"),
    "terminal.css": (pages.library_file, "css/xterm.css", "text/css"),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """How to serve. `words` makes the command of a desk from the id of its sitting."""

    passphrase: Passphrase
    words: Words
    host: str = "127.0.0.1"
    port: int = 8017
    public: Public | None = None
    most: int = 8
    clock: Callable[[], float] = field(default=monotonic)


class Server:
    """Answers requests. `desks` are those that run now."""

    def __init__(self, settings: Settings) -> None:
        self._settings = settings
        self._attempts, self._sign_ins = Attempts(settings.clock), SignIns(settings.clock)
        self._guard = Guard(Names(settings.host, settings.public), self._sign_ins)
        self.desks = Desks(settings.most, settings.words)
        self._watched: dict[str, SignIn] = {}

    def app(self) -> web.Application:
        """The application, guarded."""
        app = web.Application(middlewares=self._guard.middlewares, client_max_size=_LONGEST_POST)
        app.add_routes(
            [
                web.get("/sign-in", self._show_sign_in, name=OPEN),
                web.post("/sign-in", self._sign_in, name=OPEN),
                web.post("/sign-out", self._sign_out),
                web.get("/", self._page),
                web.get("/ws", self._socket),
                web.get("/static/{name}", self._file),
            ]
        )
        app.on_response_prepare.append(add_headers)
        app.on_shutdown.append(self._stop)
        app.cleanup_ctx.append(self._watch)
        return app

    async def _show_sign_in(self, request: web.Request) -> web.StreamResponse:
        return pages.sign_in()

    async def _sign_in(self, request: web.Request) -> web.StreamResponse:
        if request.content_type != _FORM:
            return pages.refused(415, "Use the form of the sign-in page.")
        words = str((await request.post()).get("passphrase", ""))
        # From here on nothing waits, so that many tries at once are tries one after another.
        address = request.remote or ""
        wait = self._attempts.wait(address)
        if wait:
            return pages.sign_in(f"Too many tries. Wait {int(wait) + 1} s, then try again.", 429, wait)
        if not self._settings.passphrase.matches(words):
            self._attempts.missed(address)
            return pages.sign_in("That is not the passphrase.", 403)
        self._attempts.passed(address)
        return self._let_in(request)

    def _let_in(self, request: web.Request) -> web.StreamResponse:
        """Start a sign-in; whoever sat here before finds the cases that were open."""
        earlier = self._guard.who(request)
        if earlier is not None:
            self._sign_ins.end(earlier)
        before = request.cookies.get(_SITTING_COOKIE, "")
        sitting = before if is_sitting_id(before) else new_sitting_id()
        answer = web.Response(status=303, headers={"Location": "/"})
        self._set_cookie(answer, self._guard.cookie, self._sign_ins.begin(sitting), None)
        self._set_cookie(answer, _SITTING_COOKIE, sitting, _SITTING_DAYS * 86_400)
        return answer

    async def _sign_out(self, request: web.Request) -> web.StreamResponse:
        who = request[WHO]
        self._sign_ins.end(who)
        await self.desks.end(who.sitting, SIGNED_OUT)
        answer = web.Response(status=303, headers={"Location": "/sign-in"})
        for name in (self._guard.cookie, _SITTING_COOKIE):
            self._set_cookie(answer, name, "", 0)
        return answer

    def _set_cookie(self, answer: web.Response, name: str, value: str, age: int | None) -> None:
        answer.set_cookie(
            name, value, max_age=age, path="/", httponly=True, samesite="Strict", secure=self._guard.secure
        )

    async def _page(self, request: web.Request) -> web.StreamResponse:
        if request.query_string:
            raise web.HTTPSeeOther("/")  # the terminal would take orders from there: addresses to call, sizes
        if self.desks.is_full_for(request[WHO].sitting):
            return pages.full(self.desks.most)
        return pages.desk(self._socket_origin(request))

    def _socket_origin(self, request: web.Request) -> str:
        public = self._settings.public
        found = split_host(request.headers["Host"])
        if public is not None and found is not None and (found[0] == public.name or self._guard.secure):
            return public.origin.replace("http", "ws", 1)
        return f"ws://{request.headers['Host'].lower()}"

    async def _file(self, request: web.Request) -> web.StreamResponse:
        known = _FILES.get(request.match_info["name"])
        if known is None:
            return pages.refused(404, "There is no such file.")
        read, name, kind = known
        return web.Response(body=read(name), content_type=kind, charset="utf-8")

    async def _socket(self, request: web.Request) -> web.StreamResponse:
        who = request[WHO]
        if self.desks.is_full_for(who.sitting):
            return pages.full(self.desks.most)
        socket = web.WebSocketResponse(timeout=_FAREWELL, heartbeat=15, max_msg_size=_LONGEST_MESSAGE)
        await socket.prepare(request)
        self._watched[who.sitting] = who
        size = _whole(request.query.get("width"), 80), _whole(request.query.get("height"), 24)
        try:
            await self.desks.hold(who.sitting, socket, size, lambda: self._sign_ins.use(who))
        finally:
            if self._watched.get(who.sitting) is who and not self.desks.runs(who.sitting):
                del self._watched[who.sitting]
        return socket

    async def _watch(self, app: web.Application) -> AsyncIterator[None]:
        """End the desks of those whose sign-in has expired, as long as the server runs."""

        async def look() -> None:
            while True:
                await asyncio.sleep(_LOOK_FOR_EXPIRED)
                await self.end_expired()

        looking = asyncio.ensure_future(look())
        yield
        looking.cancel()

    async def end_expired(self) -> None:
        """Close what nobody has used for half a day."""
        for sitting, who in list(self._watched.items()):
            if not self._sign_ins.holds(who):
                del self._watched[sitting]
                await self.desks.end(sitting, SIGNED_OUT)

    async def _stop(self, app: web.Application) -> None:
        await self.desks.end_all()


def _whole(text: str | None, otherwise: int) -> int:
    """A whole number out of an address."""
    return int(text) if text is not None and text.isascii() and text.isdigit() and len(text) < 5 else otherwise


async def serve(settings: Settings, tell: Callable[[Sequence[str]], None], lines: Sequence[str]) -> None:
    """Serve until a signal comes. `tell` is called with `lines` once the port is open. Raises OSError for a port
    that cannot be had."""
    for name in ("aiohttp.server", "aiohttp.web", "aiohttp.access", "asyncio"):
        logging.getLogger(name).setLevel(logging.CRITICAL)  # traces may hold what people typed
    stop, loop = asyncio.Event(), asyncio.get_running_loop()
    for number in (signal.SIGINT, signal.SIGTERM, getattr(signal, "SIGHUP", signal.SIGTERM)):
        with contextlib.suppress(NotImplementedError):
            loop.add_signal_handler(number, stop.set)
    runner = web.AppRunner(Server(settings).app(), access_log=None, handle_signals=False, shutdown_timeout=5)
    await runner.setup()
    try:
        await web.TCPSite(runner, settings.host, settings.port).start()
        tell(lines)
        await stop.wait()
    finally:
        await runner.cleanup()
