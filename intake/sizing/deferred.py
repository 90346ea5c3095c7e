"""Mappings that are worked out when somebody reads them: most of a result is never looked at."""

from collections.abc import Callable, ItemsView, Iterator, Mapping
from functools import cached_property
from typing import Any, Generic, TypeVar

Entry = TypeVar("Entry")


class Deferred(Mapping[str, Entry], Generic[Entry]):
    """What `make` gives, asked for when the first entry is read, once. Equal to, shown and pickled as, that dict."""

    def __init__(self, make: Callable[[], dict[str, Entry]]) -> None:
        self._make = make

    @cached_property
    def _entries(self) -> dict[str, Entry]:
        return self._make()

    def __getitem__(self, name: str) -> Entry:
        return self._entries[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._entries)

    def __len__(self) -> int:
        return len(self._entries)

    def items(self) -> ItemsView[str, Entry]:
        """The entries with their names."""
        return self._entries.items()

    def __repr__(self) -> str:
        return repr(self._entries)

    def __reduce__(self) -> tuple[Any, ...]:
        return dict, (dict(self._entries),)
