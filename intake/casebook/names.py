"""Ids of cases: short, readable on the telephone, fit for a file name."""

import re
import secrets
from datetime import date

from intake.casebook.error import BookError

_NAME = re.compile(r"[^\W_][\w.-]{0,59}")
_LETTERS = "bcdfghjkmnpqrstvwxz"  # no vowels, so no words; no l, which looks like 1


def new_id(today: date | None = None) -> str:
    """The day and three letters, as "0302-bkt". The book's own `new_id` makes sure that it is free."""
    day = today or date.today()
    return f"{day:%m%d}-{''.join(secrets.choice(_LETTERS) for _ in range(3))}"


def is_fit(case_id: str) -> bool:
    """True for an id that a case may have."""
    return bool(_NAME.fullmatch(case_id)) and ".." not in case_id


def checked(case_id: str) -> str:
    """The id itself. Raises BookError for one that no case may have."""
    if not is_fit(case_id):
        raise BookError(
            "bad_name",
            f'"{case_id[:60]}" cannot name a case',
            "Use letters, digits, - and _, at most 60, beginning with a letter or digit.",
        )
    return case_id
