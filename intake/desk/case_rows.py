"""Kept cases as rows of a list: name, standing, who waits, what is due, best family, title."""

from datetime import date, datetime

from intake.advice import short_family_name
from intake.casebook import Entry
from intake.casebook.seam import CaseBook
from intake.desk.snapshot import Row
from intake.spec.clean import one_line


def case_rows(book: CaseBook, words: str = "", *, limit: int = 200) -> list[Row]:
    """The cases that have all these words, last changed first. Raises BookError."""
    return [Row(key=entry.id, text=case_text(entry, date.today().isoformat())) for entry in book.cases(words)[:limit]]


def case_text(entry: Entry, today: str) -> str:
    """One case in a line."""
    index = entry.index
    parts = [entry.id, _when(entry.updated), "on the shelf" if entry.archived else index.standing or "talking"]
    if index.waiting_for and index.waiting_for not in index.standing:
        parts.append(f"waits for {index.waiting_for}")
    parts += [short_family_name(index.best)] if index.best else []
    parts += [one_line(index.title, 70)] if index.title else []
    return "  ".join(parts)


def _when(at: str) -> str:
    try:
        return f"{datetime.fromisoformat(at).astimezone():%m-%d %H:%M}"
    except (ValueError, OverflowError):
        return one_line(at, 16)
