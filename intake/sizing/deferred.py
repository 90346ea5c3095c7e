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


class DeferredTuple(Sequence[Entry], Generic[Entry]):
    """The same for a tuple."""

    __slots__ = ("_entries", "_given", "_make")

    def __init__(self, make: Callable[..., Sequence[Entry]], *given: Any) -> None:
        self._make, self._given = make, given
        self._entries: tuple[Entry, ...] | None = None

    def whole(self) -> tuple[Entry, ...]:
        """The tuple."""
        if self._entries is None:
            self._entries = tuple(self._make(*self._given))
        return self._entries

    @overload
    def __getitem__(self, at: int) -> Entry: ...

    @overload
    def __getitem__(self, at: slice) -> tuple[Entry, ...]: ...

    def __getitem__(self, at: int | slice) -> Entry | tuple[Entry, ...]:
        return self.whole()[at]

    def __iter__(self) -> Iterator[Entry]:
        return iter(self.whole())

    def __len__(self) -> int:
        return len(self.whole())

    def __eq__(self, other: object) -> bool:
        return self.whole() == (other.whole() if isinstance(other, DeferredTuple) else other)

    def __hash__(self) -> int:
        return hash(self.whole())

    def __repr__(self) -> str:
        return repr(self.whole())

    def __reduce__(self) -> tuple[Any, ...]:
        return tuple, (self.whole(),)


class DeferredRow(DeferredTuple[Entry]):
    """A tuple whose entries have names, each made by itself when it is asked for by name."""

    __slots__ = ("_names", "_one")

    def __init__(self, names: Sequence[str], one: Callable[[int], Entry]) -> None:
        """`one` makes the entry of a place."""
        super().__init__(lambda: [one(place) for place in range(len(names))])
        self._names, self._one = names, one

    def named(self, name: str) -> Entry | None:
        """The first entry of a name, None where there is none."""
        if name not in self._names:
            return None
        place = self._names.index(name)
        return self._one(place) if self._entries is None else self._entries[place]
