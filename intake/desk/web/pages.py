"""The pages, and the headers that keep them apart from everything else on the web."""

import base64
import hashlib
from html import escape
from importlib.resources import files

from aiohttp import web

_STYLE = (
    "body{margin:0;min-height:100vh;display:flex;align-items:center;justify-content:center;background:#12232d;"
    "color:#f2f5f7;font:16px/1.5 system-ui,sans-serif}main{width:22rem;padding:1.5rem}h1{font-size:1.3rem}"
    "label,input,button{display:block;width:100%;box-sizing:border-box;font:inherit}"
    "input,button{margin:.4rem 0 1rem;padding:.6rem;border-radius:4px;border:1px solid #8fa3ad}"
    "button{background:#f2f5f7;color:#12232d;cursor:pointer}a{color:#9fd3ff}.trouble{color:#ffc9a8}"
)
_STYLE_HASH = base64.b64encode(hashlib.sha256(_STYLE.encode()).digest()).decode()
_CLOSED = "base-uri 'none'; frame-ancestors 'none'; object-src 'none'; form-action 'self'"

HEADERS = {
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    # Not no-referrer: with that, browsers send "Origin: null" with a form, and the sign-in could not be checked.
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "clipboard-read=(), camera=(), microphone=(), geolocation=(), display-capture=()",
    "Cache-Control": "no-store",
    "Server": "intake",
}
"""On every answer."""

PLAIN_POLICY = f"default-src 'none'; style-src 'sha256-{_STYLE_HASH}'; {_CLOSED}"
"""For pages without scripts, and for all that is no page."""


def desk_policy(socket_origin: str) -> str:
    """For the page with the terminal, which makes style sheets as it draws; `socket_origin` as wss://desk.example."""
    return (
        "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; "
        f"font-src 'self'; connect-src 'self' {socket_origin}; {_CLOSED}"
    )


def sign_in(trouble: str = "", status: int = 200, wait: float = 0) -> web.Response:
    """The one page that anybody may see."""
    told = f'<p class="trouble" role="alert">{escape(trouble)}</p>' if trouble else ""
    form = (
        '<form method="post" action="/sign-in"><label for="p">Passphrase</label>'
        '<input id="p" name="passphrase" type="password" autocomplete="current-password" required autofocus>'
        "<button>Sign in</button></form>"
    )
    answer = _page("Intake desk", told + form, status)
    if wait:
        answer.headers["Retry-After"] = str(int(wait) + 1)
    return answer


def full(most: int) -> web.Response:
    """As many desks are open as may be."""
    words = f"All {most} desks are in use. Try again when somebody has left, or ask whoever runs the server for more."
    return _page("No desk is free", f'<p role="alert">{words}</p><p><a href="/">Try again</a></p>', 503)


def refused(status: int, words: str) -> web.Response:
    """One line for what cannot be had."""
    return web.Response(status=status, text=f"{words}\n", content_type="text/plain", charset="utf-8")


def desk(socket_origin: str) -> web.Response:
    """The page with the terminal."""
    answer = web.Response(text=own_file("page.html").decode(), content_type="text/html", charset="utf-8")
    answer.headers["Content-Security-Policy"] = desk_policy(socket_origin)
    return answer


def own_file(name: str) -> bytes:
    """A file of ours."""
    return (files("intake.desk.web") / "static" / name).read_bytes()


def library_file(name: str) -> bytes:
    """A file of the terminal in the browser."""
    return (files("textual_serve") / "static" / name).read_bytes()


def _page(title: str, body: str, status: int) -> web.Response:
    text = (
        f'<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>{title}</title>'
        f'<meta name="viewport" content="width=device-width"><style>{_STYLE}</style></head>'
        f"<body><main><h1>{title}</h1>{body}</main></body></html>"
    )
    return web.Response(status=status, text=text, content_type="text/html", charset="utf-8")
