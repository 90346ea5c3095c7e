"""Mappings and rows that are worked out when somebody reads them: most of a result is never looked at.

Both are equal to, shown as and pickled as the dict or tuple that they stand for.
"""

from collections.abc import Callable, ItemsView, Iterator, Mapping, Sequence
from typing import Any, Generic, TypeVar, overload

Entry = TypeVar("Entry")


class Deferred(Mapping[str, Entry], Generic[Entry]):
    """What `make` gives of what is given, asked for when the first entry is read, once."""

    __slots__ = ("_entries", "_given", "_make")

    def __init__(self, make: Callable[..., dict[str, Entry]], *given: Any) -> None:
        self._make, self._given = make, given
        self._entries: dict[str, Entry] | None = None

    def _made(self) -> dict[str, Entry]:
        if self._entries is None:
            self._entries = self._make(*self._given)
        return self._entries

    def __getitem__(self, name: str) -> Entry:
        return self._made()[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._made())

    def __len__(self) -> int:
        return len(self._made())

    def items(self) -> ItemsView[str, Entry]:
        """The entries with their names."""
        return self._made().items()

    def __repr__(self) -> str:
        return repr(self._made())

    def __reduce__(self) -> tuple[Any, ...]:
        return dict, (self._made(),)


class DeferredRow(Sequence[Entry], Generic[Entry]):
    """A tuple whose entries are made when they are read, each once: the names are known, `make` takes the place."""

    __slots__ = ("_made", "_make", "_names")

    def __init__(self, names: Sequence[str], make: Callable[[int], Entry]) -> None:
        self._names, self._make = names, make
        self._made: dict[int, Entry] = {}

    def _at(self, place: int) -> Entry:
        if place not in self._made:
            self._made[place] = self._make(place)
        return self._made[place]

    def named(self, name: str) -> Entry | None:
        """The first entry of a name."""
        return self._at(self._names.index(name)) if name in self._names else None

    def whole(self) -> tuple[Entry, ...]:
        """The tuple."""
        return tuple([self._at(place) for place in range(len(self._names))])

    @overload
    def __getitem__(self, at: int) -> Entry: ...

    @overload
    def __getitem__(self, at: slice) -> tuple[Entry, ...]: ...

    def __getitem__(self, at: int | slice) -> Entry | tuple[Entry, ...]:
        return self.whole()[at]

    def __iter__(self) -> Iterator[Entry]:
        return iter(self.whole())

    def __len__(self) -> int:
        return len(self._names)

    def __eq__(self, other: object) -> bool:
        return self.whole() == (other.whole() if isinstance(other, DeferredRow) else other)

    def __hash__(self) -> int:
        return hash(self.whole())

    def __repr__(self) -> str:
        return repr(self.whole())

    def __reduce__(self) -> tuple[Any, ...]:
        return tuple, (self.whole(),)
