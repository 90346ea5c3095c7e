"""A book in a folder of its own, and events to put in it."""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from intake.casebook import Book
from intake.spec import Event, Fact
from intake.spec.bodies import fact_to_body

AT = "2026-03-02T09:00:0{}+00:00"


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """Where the book lies: a folder that is not there yet."""
    return tmp_path / "kept" / "cases.sqlite3"


@pytest.fixture
def book(place: Path) -> Iterator[Book]:
    with Book(place) as opened:
        yield opened


Story = Callable[..., list[Event]]


@pytest.fixture
def story() -> Story:
    """Four events: opened, a message, what was heard in it (weight and a name), a question."""

    def told(text: str = "12 kg, says Ann Example", title: str = "tea cartons", second: int = 0) -> list[Event]:
        at = AT.format(second)
        weight = Fact(field="product.weight", low=12.0, high=12.0, said="12 kg", span=(0, 5), message=2, at=at)
        facts = [fact_to_body(weight)]
        if "Ann Example" in text:
            start = text.index("Ann Example")
            name = Fact(field="contact.name", value="Ann Example", said="Ann Example", span=(start, start + 11))
            facts.append(fact_to_body(name) | {"message": 2})
        return [
            Event(seq=1, at=at, kind="opened", body={"title": title}),
            Event(seq=2, at=at, kind="message", body={"text": text, "who": "visitor"}),
            Event(seq=3, at=at, kind="heard", body={"message": 2, "asked": [], "to": None, "facts": facts}),
            Event(seq=4, at=at, kind="asked", body={"question": "size", "fields": ["product.length"]}),
        ]

    return told
