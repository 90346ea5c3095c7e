"""What every request passes before anything is done for it: name, origin, sign-in. Nothing starts before that."""

from collections.abc import Awaitable, Callable

from aiohttp import web
from aiohttp.typedefs import Middleware

from intake.desk.web import pages
from intake.desk.web.origin import Door, Names
from intake.desk.web.sign_ins import SignIn, SignIns

Handler = Callable[[web.Request], Awaitable[web.StreamResponse]]
WHO = web.RequestKey("who", SignIn)
OPEN = "entry"
"""The name of the one route that needs no sign-in."""


class Guard:
    """Checks in this order: our name, our page, signed in."""

    def __init__(self, names: Names, sign_ins: SignIns) -> None:
        self._names, self._sign_ins = names, sign_ins
        secure = names.public is not None and names.public.scheme == "https"
        self.secure = secure
        self.cookie = "__Host-intake" if secure else "intake"

    async def plain_faults(self, request: web.Request, handler: Handler) -> web.StreamResponse:
        """One line instead of a trace, whatever goes wrong."""
        try:
            return await handler(request)
        except web.HTTPException as answer:
            if answer.status < 400:
                raise
            return pages.refused(answer.status, answer.reason)
        except (ConnectionError, TimeoutError):
            raise
        except Exception as fault:
            return pages.refused(500, f"Something went wrong that should not have ({type(fault).__name__}).")

    async def known_name(self, request: web.Request, handler: Handler) -> web.StreamResponse:
        """Only under our own names."""
        if not self._names.takes_host(request.headers.get("Host", ""), door(request)):
            return pages.refused(421, "This server does not go by that name. Start it with --public-url for another.")
        return await handler(request)

    async def own_page(self, request: web.Request, handler: Handler) -> web.StreamResponse:
        """Only for our own page: a foreign origin is refused always, none at all where something would be done."""
        if request.method not in ("GET", "HEAD", "POST"):
            return pages.refused(405, "Only GET and POST.")
        origin = request.headers.get("Origin")
        needed = request.method == "POST" or "upgrade" in request.headers.get("Connection", "").lower()
        host = request.headers.get("Host", "")
        if (origin is None and needed) or (
            origin is not None and not self._names.takes_origin(origin, host, door(request))
        ):
            return pages.refused(403, "Only for the pages of this server.")
        return await handler(request)

    async def signed_in(self, request: web.Request, handler: Handler) -> web.StreamResponse:
        """Only for those who have signed in, but for the sign-in itself."""
        if request.match_info.route.name == OPEN:
            return await handler(request)
        who = self.who(request)
        if who is None:
            if request.path == "/" and request.method == "GET":
                raise web.HTTPSeeOther("/sign-in")
            return pages.refused(401, "Sign in first.")
        request[WHO] = who
        return await handler(request)

    def who(self, request: web.Request) -> SignIn | None:
        """Who sent it, None for nobody we know."""
        token = request.cookies.get(self.cookie, "")
        return self._sign_ins.find(token) if len(token) == 64 else None

    @property
    def middlewares(self) -> list[Middleware]:
        """In the order in which a request meets them."""
        checks = (self.plain_faults, self.known_name, self.own_page, self.signed_in)
        return [web.middleware(_plain(check)) for check in checks]


def _plain(check: Callable[[web.Request, Handler], Awaitable[web.StreamResponse]]) -> Middleware:
    """A function of its own: the library marks middlewares, and methods take no marks."""

    async def middleware(request: web.Request, handler: Handler) -> web.StreamResponse:
        return await check(request, handler)

    return middleware


def door(request: web.Request) -> Door:
    """Where the request came in."""
    place = request.transport.get_extra_info("sockname") if request.transport is not None else None
    return Door(str(place[0]), int(place[1])) if place else Door("", 0)


async def add_headers(request: web.Request, answer: web.StreamResponse) -> None:
    """On every answer, refusals and files too."""
    for name, value in pages.HEADERS.items():
        answer.headers[name] = value
    answer.headers.setdefault("Content-Security-Policy", pages.PLAIN_POLICY)
