"""Who has signed in: tokens in memory only, gone when the server stops or after half a day without use."""

import hashlib
import secrets
import time
from collections.abc import Callable
from dataclasses import dataclass

IDLE_HOURS = 12
_MOST = 200
"""More sign-ins than that push out the one that was idle longest."""


@dataclass(slots=True, eq=False)
class SignIn:
    """One sign-in: `key` finds it (the digest of its token), `sitting` names what its desk remembers."""

    key: bytes
    sitting: str
    used: float


class SignIns:
    """The sign-ins that hold. Times are seconds of `clock`."""

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        self._by_key: dict[bytes, SignIn] = {}

    def begin(self, sitting: str) -> str:
        """A new sign-in. Returns its token of 256 bits, which is not kept here."""
        self._drop_expired()
        while len(self._by_key) >= _MOST:
            self.end(min(self._by_key.values(), key=lambda one: one.used))
        token = secrets.token_hex(32)
        key = _key(token)
        self._by_key[key] = SignIn(key, sitting, self._clock())
        return token

    def find(self, token: str) -> SignIn | None:
        """The sign-in of that token, None where there is none or it has expired. Counts as use."""
        self._drop_expired()
        found = self._by_key.get(_key(token))
        if found is not None:
            self.use(found)
        return found

    def use(self, sign_in: SignIn) -> None:
        """It was used just now."""
        sign_in.used = self._clock()

    def holds(self, sign_in: SignIn) -> bool:
        """True until it is ended or expires."""
        self._drop_expired()
        return sign_in.key in self._by_key

    def end(self, sign_in: SignIn) -> None:
        """Sign out."""
        self._by_key.pop(sign_in.key, None)

    def _drop_expired(self) -> None:
        oldest = self._clock() - IDLE_HOURS * 3600
        for one in [one for one in self._by_key.values() if one.used < oldest]:
            self.end(one)


def _key(token: str) -> bytes:
    """Looked up by digest: how long that takes tells nothing of the token."""
    return hashlib.sha256(token.encode("utf-8", "surrogatepass")).digest()
