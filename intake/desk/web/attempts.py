"""Slows down those who guess: per address and over all addresses, in bounded memory."""

import ipaddress
import time
from collections import OrderedDict, deque
from collections.abc import Callable
from dataclasses import dataclass

_FREE = 3
"""Wrong tries of one address without a wait: people mistype."""
_LONGEST_WAIT = 60.0
_FORGOTTEN_AFTER = 15 * 60.0
_MOST_ADDRESSES = 1000
_FREE_OVERALL, _WINDOW, _OVERALL_WAIT = 10, 300.0, 2.0
"""After so many wrong tries in so many seconds, from wherever, the next one waits so long."""


@dataclass(slots=True)
class _Misses:
    count: int
    last: float


class Attempts:
    """Wrong tries of late. `wait` says how many seconds an address has to wait before it may try again."""

    def __init__(self, clock: Callable[[], float] = time.monotonic) -> None:
        self._clock = clock
        self._by_place: OrderedDict[str, _Misses] = OrderedDict()
        self._lately: deque[float] = deque(maxlen=_FREE_OVERALL)

    def wait(self, address: str) -> float:
        """Seconds to wait; 0 for none."""
        now = self._clock()
        misses = self._by_place.get(_place(address))
        own = 0.0
        if misses is not None and misses.count >= _FREE and now - misses.last < _FORGOTTEN_AFTER:
            own = misses.last + min(_LONGEST_WAIT, 2.0 ** (misses.count - _FREE)) - now
        busy = len(self._lately) == _FREE_OVERALL and now - self._lately[0] < _WINDOW
        overall = self._lately[-1] + _OVERALL_WAIT - now if busy else 0.0
        return max(0.0, own, overall)

    def missed(self, address: str) -> None:
        """A wrong try."""
        now, place = self._clock(), _place(address)
        before = self._by_place.pop(place, None)
        lately = before is not None and now - before.last < _FORGOTTEN_AFTER
        self._by_place[place] = _Misses(before.count + 1 if before is not None and lately else 1, now)
        while len(self._by_place) > _MOST_ADDRESSES:
            self._by_place.popitem(last=False)
        self._lately.append(now)

    def passed(self, address: str) -> None:
        """A right one: the address starts anew."""
        self._by_place.pop(_place(address), None)

    def __len__(self) -> int:
        """How many addresses are remembered."""
        return len(self._by_place)


def _place(address: str) -> str:
    """The address; of IPv6 the network of 64 bits, because one customer has all of it."""
    try:
        number = ipaddress.ip_address(address.partition("%")[0])
    except ValueError:
        return "unknown"
    if isinstance(number, ipaddress.IPv6Address):
        mapped = number.ipv4_mapped
        return str(mapped) if mapped else str(ipaddress.ip_network((number, 64), strict=False))
    return str(number)
