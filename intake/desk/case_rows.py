"""Kept cases as rows of a list: name, last change, standing, who waits, what is due, best family, title."""

from dataclasses import replace
from datetime import date, datetime

from intake.advice import short_family_name
from intake.casebook import Entry
from intake.casebook.seam import CaseBook, Find
from intake.desk.snapshot import Row
from intake.sizing.result import FAMILIES
from intake.spec.clean import one_line
from intake.spec.days import day_of
from intake.spec.matters import PARTIES
from intake.spec.standing import STANDINGS

HOW_TO_FIND = "type words; also: due, open, shelf, since:monday, family:spiral, waiting:works, in test"


def case_rows(book: CaseBook, words: str = "", *, limit: int = 200) -> list[Row]:
    """The cases wanted, last changed first, at most so many. Raises BookError."""
    today = date.today().isoformat()
    return [
        Row(key=entry.id, text=case_text(entry, today)) for entry in book.cases(find=find_of(words, today), limit=limit)
    ]


def half_typed_rows(book: CaseBook, words: str = "") -> list[Row]:
    """What was typed into cases that were never begun: it is not lost, and can be gone on with. Raises BookError."""
    wanted = words.casefold().split()
    rows = [
        Row(key=case, text=f"{case}  half typed, not sent: {one_line(text, 60)}") for case, text in book.begun_only()
    ]
    return [row for row in rows if all(word in row.text.casefold() for word in wanted)]


def find_of(words: str, today: str) -> Find:
    """What typed words ask for, as HOW_TO_FIND has it, and a whole standing; the rest are words."""
    find, rest = Find(), words
    for standing in STANDINGS:
        if standing in rest.casefold() and " " in standing:
            place = rest.casefold().index(standing)
            find, rest = replace(find, standing=standing), rest[:place] + rest[place + len(standing) :]
    kept = []
    for word in rest.split():
        said = word.casefold()
        if said == "due":
            find = replace(find, due_by=today)
        elif said == "open":
            find = replace(find, open_only=True)
        elif said == "shelf":
            find = replace(find, archived=True)
        elif said.startswith("family:") and (family := said.removeprefix("family:")) in FAMILIES:
            find = replace(find, family=family)
        elif said.startswith("waiting:") and said.removeprefix("waiting:") in PARTIES:
            find = replace(find, waiting_for=said.removeprefix("waiting:"))
        elif said.startswith(("since:", "until:")) and (day := _day(said[6:])):
            find = replace(find, since=day) if said.startswith("since:") else replace(find, until=day)
        elif said in STANDINGS and said != "talking":
            find = replace(find, standing=said)
        else:
            kept.append(word)
    return replace(find, words=" ".join(kept))


def _day(words: str) -> str:
    try:
        return day_of(words).isoformat()
    except ValueError:
        return ""  # words like any others


def case_text(entry: Entry, today: str) -> str:
    """One case in a line."""
    index = entry.index
    parts = [entry.id, _when(entry.updated), "on the shelf" if entry.archived else index.standing or "talking"]
    if index.waiting_for and index.waiting_for not in index.standing:
        parts.append(f"waits for {index.waiting_for}")
    if index.due:
        parts.append(f"due {index.due}{' OVERDUE' if index.due < today else ''}")
    parts += [short_family_name(index.best)] if index.best else []
    parts += [one_line(index.title, 70)] if index.title else []
    return "  ".join(parts)


def _when(at: str) -> str:
    try:
        return f"{datetime.fromisoformat(at).astimezone():%m-%d %H:%M}"
    except (ValueError, OverflowError):
        return one_line(at, 16)
