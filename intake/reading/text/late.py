"""Patterns that are made when they are first used: large ones cost more than all else when the program starts."""

import re
from functools import cached_property


class Late:
    """A pattern as `re.compile` makes it, made at its first use."""

    def __init__(self, pattern: str, flags: int = 0) -> None:
        self._pattern, self._flags = pattern, flags

    @cached_property
    def made(self) -> re.Pattern[str]:
        """The pattern itself."""
        return re.compile(self._pattern, self._flags)

    def match(self, text: str, start: int = 0) -> re.Match[str] | None:
        """As of a pattern."""
        return self.made.match(text, start)

    def fullmatch(self, text: str) -> re.Match[str] | None:
        """As of a pattern."""
        return self.made.fullmatch(text)

    def search(self, text: str, start: int = 0) -> re.Match[str] | None:
        """As of a pattern."""
        return self.made.search(text, start)
