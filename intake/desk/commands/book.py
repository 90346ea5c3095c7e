"""Commands of the casebook: find a case, go to it, begin one, copy, put on the shelf."""

from intake.casebook.names import checked
from intake.desk.case_rows import case_rows
from intake.desk.commands.command import Command, needs, under
from intake.desk.effect import Effect, Go, Slip
from intake.desk.work import Work
from intake.spec.clean import one_line

_GROUP = "THE BOOK"
_MOST = 30
_LONGEST = 200
"""Characters of the words to find cases by; more would only find nothing, slowly."""


def _cases(work: Work, rest: str) -> Effect:
    rows = case_rows(work.book, one_line(rest, _LONGEST), limit=_MOST)
    lines = [f"{row.text}{'  (open here)' if row.key in work.beside else ''}" for row in rows]
    if not lines:
        lines = ["No case has these words."] if rest.strip() else ["No case is kept yet."]
    return Effect(lines=tuple(lines))


def _open(work: Work, rest: str) -> Effect:
    name = needs(rest, "the case behind it: /open 0302-bkt. /cases lists them.")
    if name not in work.beside and not work.book.events(name):
        raise Slip(f"No case is kept as {name[:60]}. /cases lists them; /new begins one.")
    return Effect(go=Go(case=name))


def _new(work: Work, rest: str) -> Effect:
    name = rest.strip()
    if name and (checked(name) in work.beside or work.book.events(name)):
        raise Slip(f"There is a case {name} already. /open {name} goes to it; /new alone finds a free name.")
    return Effect(go=Go(case=name))


def _next(work: Work, rest: str) -> Effect:
    return Effect(go=Go(onward=True))


def _copy(work: Work, rest: str) -> Effect:
    own = work.kept_as
    name = rest.strip() or work.book.new_id()
    work.book.copy(own, name)
    return Effect(lines=(f"{name} begins with all of {own}.",), go=Go(case=name))


def _archive(work: Work, rest: str) -> Effect:
    if not work.kept_as or work.talk.case.archived:
        raise Slip("It is on the shelf already. /restore takes it off.")
    work.talk.record("archived", {})
    return Effect(lines=("On the shelf: kept, not listed. /restore takes it off.",))


def _restore(work: Work, rest: str) -> Effect:
    if not work.kept_as or not work.talk.case.archived:
        raise Slip("It is listed; /archive puts it on the shelf.")
    work.talk.record("restored", {})
    return Effect(lines=("Listed again.",))


COMMANDS: tuple[Command, ...] = under(
    _GROUP,
    Command("cases", "[WORDS]", "kept cases, last changed first", _cases, looks=True),
    Command("open", "CASE", "go on with a kept case", _open, looks=True),
    Command("next", "", "on to the next case that is open here", _next, looks=True),
    Command("new", "[NAME]", "begin another case", _new, looks=True),
    Command("copy", "[NAME]", "begin a case with all of this one", _copy, looks=True),
    Command("archive", "", "put this case on the shelf", _archive),
    Command("restore", "", "take this case off the shelf", _restore),
)
