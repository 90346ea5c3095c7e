"""Fixtures for the reader's tests."""

from collections.abc import Callable
from typing import Any

import pytest

from intake.reading import read


@pytest.fixture
def facts() -> Callable[..., dict[str, Any]]:
    """Reads a message to {field: number, (low, high), word or truth}; further sizes as "field@2"."""

    def of(text: str, asked: str | list[str] | None = None) -> dict[str, Any]:
        found: dict[str, Any] = {}
        for fact in read(text, asked).facts:
            key = fact.field if fact.size == 1 else f"{fact.field}@{fact.size}"
            one = fact.low if fact.low == fact.high else (fact.low, fact.high)
            found[key] = one if fact.is_number else fact.value
        return found

    return of
