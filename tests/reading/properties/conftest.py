"""What the laws of the reader share: how often a law is tried, how a quantity is held against what was meant.

The default run is small and the same each time. `pytest --hypothesis-profile=deep tests/reading/properties` goes
through a thousand new figures for each law. A law draws figures and writes them in every accepted style, so that no
style is left to chance.
"""

from collections.abc import Callable, Iterable
from math import isclose
from typing import Any, NamedTuple

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st

from intake.reading import quantities, read

settings.register_profile("deep", max_examples=1000)
_PHASES = [Phase.explicit, Phase.reuse, Phase.generate, Phase.shrink]
_UNCHECKED = [HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much]

_SMALL = (
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
    "thirteen",
    "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
)  # fmt: skip
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")


class Meant(NamedTuple):
    """A text, and the one quantity that its writer means; None for an open end."""

    text: str
    kind: str
    low: float | None
    high: float | None


def _agrees(got: float | None, want: float | None) -> bool:
    if got is None or want is None:
        return got is want
    return isclose(got, want, rel_tol=1e-9, abs_tol=1e-9)


@pytest.fixture(scope="session")
def for_all() -> Callable[..., None]:
    """Holds a law against what strategies draw: `tries` draws, always the same; a thousand new ones when deep."""
    is_deep = settings.get_current_profile_name() == "deep"

    def hold(law: Callable[..., None], *drawn: st.SearchStrategy[Any], tries: int) -> None:
        count = settings.get_profile("deep").max_examples if is_deep else tries
        rules = settings(
            max_examples=count,
            derandomize=not is_deep,
            deadline=None,
            phases=_PHASES,
            suppress_health_check=_UNCHECKED,
        )
        rules(given(*drawn)(law))()

    return hold


@pytest.fixture(scope="session")
def misread() -> Callable[[Iterable[Any]], list[str]]:
    """The texts of which anything else is read than the one quantity meant, and what is read instead.

    A text with its kind, value, or low and high end.
    """

    def of(cases: Iterable[Any]) -> list[str]:
        wrong = []
        for case in cases:
            meant = Meant(*case) if len(case) == 4 else Meant(case[0], case[1], case[2], case[2])
            found = quantities(meant.text)
            is_right = len(found) == 1 and found[0].kind == meant.kind
            if is_right and _agrees(found[0].low, meant.low) and _agrees(found[0].high, meant.high):
                continue
            read_as = [(q.kind, q.low, q.high) for q in found]
            wrong.append(f"{meant.text!r}: {read_as}, meant {meant[1:]}")
        return wrong

    return of


@pytest.fixture(scope="session")
def in_words() -> Callable[[int], str]:
    """A whole number below a million as it is spoken: 345 -> "three hundred and forty-five"."""

    def say(number: int) -> str:
        if number < 20:
            return _SMALL[number]
        if number < 100:
            return _TENS[number // 10 - 2] + (f"-{_SMALL[number % 10]}" if number % 10 else "")
        if number < 1000:
            rest = number % 100
            return f"{_SMALL[number // 100]} hundred" + (f" and {say(rest)}" if rest else "")
        rest = number % 1000
        joined = "" if not rest else f" and {say(rest)}" if rest < 100 else f" {say(rest)}"
        return f"{say(number // 1000)} thousand{joined}"

    return say


@pytest.fixture(scope="session")
def figures_read() -> Callable[..., dict[str, tuple[float | None, float | None]]]:
    """The facts with a figure that a message gives: field -> its two ends."""

    def of(text: str, asked: str | None = None) -> dict[str, tuple[float | None, float | None]]:
        return {
            f"{fact.field}@{fact.size}" if fact.size > 1 else fact.field: (fact.low, fact.high)
            for fact in read(text, asked).facts
            if fact.is_number
        }

    return of
