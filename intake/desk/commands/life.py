"""Commands of a case's life: promises, questions asked back, samples, tests, closing."""

import re
from datetime import date

from intake.desk.commands.command import Command, Run, needs, number_in, under
from intake.desk.effect import Effect, Slip
from intake.desk.tests_on_samples import EXAMPLE, keep_report, report_in
from intake.desk.waiting import NAMES, waiting_lines
from intake.desk.work import Work
from intake.interview.life import Move
from intake.spec.clean import clean, one_line
from intake.spec.days import day_of
from intake.spec.matters import Party
from intake.spec.standing import standing_of

_GROUP = "THE CASE"
_BY = re.compile(r"(?:^|\s)by\s+((?:next\s+)?[^\s.,;!]+)[\s.,;!]*$", re.IGNORECASE)
_WHO: tuple[tuple[str, Party], ...] = (("visitor:", "visitor"), ("works:", "works"), ("us:", "us"))


def _promise(work: Work, rest: str) -> Effect:
    """ "visitor: send the drawing by friday": what, who, by when."""
    words = clean(needs(rest, "what, and by when: /promise send the layout by friday; theirs: /promise visitor: ..."))
    who: Party = "us"
    for lead, party in _WHO:
        if words.casefold().startswith(lead):
            who, words = party, words[len(lead) :].strip()
    day, ending = "", _BY.search(words)
    if ending is not None:
        try:
            day = day_of(ending[1]).isoformat()
            words = words[: ending.start()].strip()
        except ValueError:
            day = ""  # "by hand": words of the promise itself
    if not words:
        raise Slip("Write what is promised: /promise send the layout by friday")
    work.talk.life.promise(words, who, day or None)
    return Effect(lines=(f"Promised: {NAMES[who]}: {one_line(words)}{f', by {day}' if day else ', no day named'}",))


def _done(work: Work, rest: str) -> Effect:
    waiting = work.talk.case.waiting
    if not waiting:
        raise Slip("Nothing waits.")
    first, *words = rest.split(maxsplit=1) or ["1" if len(waiting) == 1 else ""]
    number = number_in(first)
    if number is None or not 1 <= number <= len(waiting):
        raise Slip(f"Write its number, 1 to {len(waiting)}: /done 1. /waiting lists them.")
    matter = work.talk.life.done(waiting[number - 1].seq, " ".join(words))
    return Effect(lines=(f"Done: {one_line(matter.what)}",))


def _asked_back(work: Work, rest: str) -> Effect:
    words = clean(needs(rest, "what engineering wants to know: /asked-back which pallet?"))
    work.talk.life.ask_back(words)
    return Effect(lines=(f"Engineering asks: {one_line(words)} (/done closes it once it is answered)",))


def _waiting(work: Work, rest: str) -> Effect:
    standing = standing_of(work.talk.case, decided=work.talk.decided)
    return Effect(lines=(f"The case: {standing}.", *waiting_lines(work.talk.case.waiting, date.today().isoformat())))


def _test(work: Work, rest: str) -> Effect:
    report = report_in(work.talk, clean(needs(rest, f"the whole of the test: {EXAMPLE}")))
    keep_report(work.talk, report)
    return Effect(lines=(f"Tested: {one_line(report.words)}",))


def _moving(to: Move, told: str) -> Run:
    def move(work: Work, rest: str) -> Effect:
        work.talk.life.move(to)
        return Effect(lines=(told,))

    return move


def _title(work: Work, rest: str) -> Effect:
    work.talk.rename(needs(rest, "the title behind it: /title jars to the gallery"))
    return Effect(lines=(f"Called: {work.talk.title}",))


COMMANDS: tuple[Command, ...] = under(
    _GROUP,
    Command("promise", "[visitor:|works:] WHAT [by DAY]", "what somebody will do, and by when", _promise),
    Command("waiting", "", "where the case is, what waits for whom", _waiting, looks=True),
    Command("done", "N [WORDS]", "a promise was kept, or a question asked back answered", _done),
    Command("asked-back", "TEXT", "what engineering wants to know", _asked_back),
    Command("samples", "", "samples were asked for", _moving("samples_asked", "Samples asked for.")),
    Command("in-test", "", "the samples are there and in test", _moving("in_test", "In test.")),
    Command("test", "WHAT VALUE by WHO on DAY with SAMPLES", "what a test on samples showed", _test),
    Command("close", "", "nothing more is to be done", _moving("closed", "Closed. /reopen opens it again.")),
    Command("reopen", "", "go on with a closed case", _moving("open", "Open again.")),
    Command("title", "TEXT", "what the case is called in the lists", _title),
    beside=True,
)
