"""Days as people type them."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from intake.spec.days import day_of

MONDAY = date(2026, 3, 2)  # a Monday by the Gregorian calendar


@pytest.mark.parametrize(
    ("words", "day"),
    [
        ("today", MONDAY),
        ("Tomorrow", date(2026, 3, 3)),
        ("yesterday", date(2026, 3, 1)),
        ("friday", date(2026, 3, 6)),
        ("Fri", date(2026, 3, 6)),
        ("next friday", date(2026, 3, 6)),
        ("on friday", date(2026, 3, 6)),
        ("monday", date(2026, 3, 9)),
        ("+3d", date(2026, 3, 5)),
        ("3 days", date(2026, 3, 5)),
        ("2w", date(2026, 3, 16)),
        ("1 week", date(2026, 3, 9)),
        (" 2026-03-31 ", date(2026, 3, 31)),
    ],
)
def test_a_day_is_counted_from_today(words: str, day: date) -> None:
    assert day_of(words, MONDAY) == day


@given(today=st.dates(date(2020, 1, 1), date(2040, 1, 1)), name=st.sampled_from(["mon", "tue", "wed", "thu", "fri"]))
def test_a_weekday_is_the_next_one_and_never_today(today: date, name: str) -> None:
    found = day_of(name, today)
    assert today < found <= today + timedelta(days=7)
    assert f"{found:%a}".casefold() == name


@pytest.mark.parametrize(
    "words", ["", "hand", "noon", "f", "the end", "2026-02-30", "31/12", "+9999d", "\x1b[31m", "next"]
)
def test_what_is_no_day_says_what_is_taken(words: str) -> None:
    with pytest.raises(ValueError, match="Give a date such as 2026-03-02, today, tomorrow, a weekday"):
        day_of(words, MONDAY)
