"""Under which names the server answers, and which pages may talk to it.

A name that is not ours in `Host` means that somebody else's name was pointed at this machine (DNS rebinding). A foreign
`Origin` means that a page from elsewhere is using the browser of someone who has signed in here.
"""

import ipaddress
import re
import socket
from dataclasses import dataclass
from urllib.parse import urlsplit

_HOST = re.compile(r"(\[[0-9a-f:.]{2,45}\]|[a-z0-9](?:[a-z0-9.-]{0,252}))(?::([0-9]{1,5}))?")
_USUAL_PORT = {"http": 80, "https": 443}
_ANYWHERE = {"0.0.0.0", "[::]"}


class AddressError(Exception):
    """A public address or host that cannot be used; the message says why."""


@dataclass(frozen=True, slots=True)
class Public:
    """The address under which people reach the server: scheme, name in small letters, port."""

    scheme: str
    name: str
    port: int

    @property
    def origin(self) -> str:
        """As a browser writes it: no port where it is the usual one."""
        port = "" if self.port == _USUAL_PORT[self.scheme] else f":{self.port}"
        return f"{self.scheme}://{self.name}{port}"


def public(url: str) -> Public:
    """Read a public address. Raises AddressError unless it is http or https, a name, at most a port, and no path.

    >>> public("https://desk.example").origin
    'https://desk.example'
    """
    wrong = AddressError(f'"{url[:80]}" is no public address; write it like https://desk.example or http://name:8017')
    try:
        parts = urlsplit(url.strip().lower())
        found = split_host(parts.netloc)
    except ValueError:
        raise wrong from None
    if parts.scheme not in _USUAL_PORT or found is None or parts.path not in ("", "/") or parts.query or parts.fragment:
        raise wrong
    return Public(parts.scheme, found[0], found[1] or _USUAL_PORT[parts.scheme])


def split_host(host: str) -> tuple[str, int | None] | None:
    """Name and port of a `Host` header, None for one that is not well formed.

    >>> split_host("[::1]:8017"), split_host("a b")
    (('[::1]', 8017), None)
    """
    found = _HOST.fullmatch(host.lower())
    if found is None:
        return None
    return found[1], int(found[2]) if found[2] else None


def is_loopback(host: str) -> bool:
    """True where only this machine can reach what is bound to `host`."""
    if host.lower() == "localhost":
        return True
    try:
        return ipaddress.ip_address(host.strip("[]")).is_loopback
    except ValueError:
        return False


@dataclass(frozen=True, slots=True)
class Door:
    """Where one connection came in: the local address and port of its socket."""

    address: str
    port: int


@dataclass(frozen=True, slots=True)
class Names:
    """The names of the server: what it was bound to, and the public address if it has one."""

    bound: str
    public: Public | None = None

    def takes_host(self, host: str, door: Door) -> bool:
        """True for a `Host` header that names this server."""
        found = split_host(host)
        if found is None:
            return False
        name, port = found
        if self.public is not None and name == self.public.name:
            return (port or _USUAL_PORT[self.public.scheme]) == self.public.port
        return (port or _USUAL_PORT["http"]) == door.port and name in self._own(door)

    def takes_origin(self, origin: str, host: str, door: Door) -> bool:
        """True for an `Origin` header of our own page: that of the public address, or of the very host asked for."""
        if self.public is not None and origin == self.public.origin:
            return True
        asked = split_host(host)
        if asked is None or not self.takes_host(host, door):
            return False
        if self.public is not None and asked[0] == self.public.name:
            return False  # the public name is reached by its own scheme only
        return origin == Public("http", asked[0], asked[1] or _USUAL_PORT["http"]).origin

    def _own(self, door: Door) -> set[str]:
        """Names that nobody else can point here: addresses, and what this machine calls itself."""
        names = {_bracketed(door.address), socket.gethostname().lower()}
        if is_loopback(door.address):
            names |= {"localhost", "127.0.0.1", "[::1]"}
        return names | ({_bracketed(self.bound.lower())} - _ANYWHERE)


def _bracketed(address: str) -> str:
    plain = address.partition("%")[0].strip("[]")
    return f"[{plain}]" if ":" in plain else plain
