"""Commands of the casebook: find a case, go to it, begin one, copy, put on the shelf."""

from intake.desk.case_rows import case_rows
from intake.desk.commands.command import Command, needs, under
from intake.desk.effect import Effect, Go, Slip
from intake.desk.work import Work

_GROUP = "THE BOOK"
_MOST = 30


def _cases(work: Work, rest: str) -> Effect:
    rows = case_rows(work.book, rest, limit=_MOST)
    return Effect(lines=tuple(row.text for row in rows) or ("No case has these words.",))


def _open(work: Work, rest: str) -> Effect:
    name = needs(rest, "the case behind it: /open 0302-bkt. /cases lists them.")
    if not work.book.events(name):
        raise Slip(f"No case is kept as {name[:60]}. /cases lists them; /new begins one.")
    return Effect(go=Go(case=name))


def _new(work: Work, rest: str) -> Effect:
    return Effect(go=Go(case=rest.strip()))


def _copy(work: Work, rest: str) -> Effect:
    name = rest.strip() or work.book.new_id()
    work.book.copy(work.name, name)
    return Effect(lines=(f"{name} begins with all of {work.name}.",), go=Go(case=name))


def _archive(work: Work, rest: str) -> Effect:
    work.book.archive(work.name)
    return Effect(lines=("On the shelf: kept, not listed. /restore takes it off.",))


def _restore(work: Work, rest: str) -> Effect:
    work.book.restore(work.name)
    return Effect(lines=("Listed again.",))


COMMANDS = under(
    _GROUP,
    Command("cases", "[WORDS]", "kept cases, last changed first", _cases, looks=True),
    Command("open", "CASE", "go on with a kept case", _open, looks=True),
    Command("new", "[NAME]", "begin another case", _new, looks=True),
    Command("copy", "[NAME]", "begin a case with all of this one", _copy, looks=True),
    Command("archive", "", "put this case on the shelf", _archive),
    Command("restore", "", "take this case off the shelf", _restore),
)
