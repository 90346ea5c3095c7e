"""Days as people type them: a date, today, tomorrow, a weekday, +3d."""

import re
from datetime import date, timedelta

_WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_AHEAD = re.compile(r"\+?(\d{1,3})\s*(d|days?|w|weeks?)")
DAYS = "a date such as 2026-03-02, today, tomorrow, a weekday, or +3d"


def day_of(words: str, today: date | None = None) -> date:
    """The day that words name; a weekday is the next one after today. Raises ValueError, saying what is taken.

    >>> day_of("fri", date(2026, 3, 2)).isoformat(), day_of("+2w", date(2026, 3, 2)).isoformat()
    ('2026-03-06', '2026-03-16')
    """
    now, said = today or date.today(), " ".join(words.casefold().split())
    if said in ("today", "tomorrow", "yesterday"):
        return now + timedelta(days={"today": 0, "tomorrow": 1, "yesterday": -1}[said])
    ahead = _AHEAD.fullmatch(said)
    if ahead is not None:
        return now + timedelta(days=int(ahead[1]) * (7 if ahead[2].startswith("w") else 1))
    if len(said) >= 2:
        for place, name in enumerate(_WEEKDAYS):
            if name.startswith(said.removeprefix("next ").removeprefix("on ")):
                return now + timedelta(days=(place - now.weekday() - 1) % 7 + 1)
    try:
        return date.fromisoformat(said)
    except ValueError:
        raise ValueError(f'"{words[:30]}" is no day. Give {DAYS}.') from None
