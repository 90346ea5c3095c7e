"""Commands that show what stands: facts, machines, one machine in full, what is left, advice, drafts."""

from intake.advice import SUBJECTS, AdviceError, advise, family_name, recommendation
from intake.advice.by_name import family_of
from intake.desk.commands.command import Command, Run, needs, under
from intake.desk.drafts import KEYS, drafts
from intake.desk.effect import Effect, Page, Slip
from intake.desk.machine_page import check_lines, machine_page
from intake.desk.sketch import sketch_lines
from intake.desk.talk_text import fact_lines, family_lines
from intake.desk.work import Work
from intake.spec import SpecError
from intake.spec.clean import clean

_GROUP = "WHAT STANDS"
SKETCH = (78, 24)
"""Columns and rows of a sketch among lines of text."""


def _facts(work: Work, rest: str) -> Effect:
    lines = tuple(fact_lines(work.talk.case, work.talk.facts, work.system))
    return Effect(lines=lines or ("Nothing is known yet.",))


def _families(work: Work, rest: str) -> Effect:
    return Effect(lines=tuple(family_lines(work.talk.bounds(), work.system)))


def _check(work: Work, rest: str) -> Effect:
    """Every check of a machine with formula, figures and source; with a word, those of that name."""
    brief = work.brief
    name, word = _machine(work, rest)
    if not word:
        return Effect(page=Page(title=f"Machine in full: {family_name(name)}", text=machine_page(name, brief)))
    lines = check_lines(brief.result.families[name].checks, work.system, word)
    if not lines:
        ids = ", ".join(dict.fromkeys(check.id for check in brief.result.families[name].checks))
        raise Slip(f'{family_name(name)} has no check "{clean(word)[:30]}". It has: {ids}')
    return Effect(page=Page(title=f"{family_name(name)}: {word}", text="\n".join(lines)))


def _machine(work: Work, rest: str) -> tuple[str, str]:
    """The machine named and the word behind it; the leading one where none is."""
    words, brief = rest.split(), work.brief
    for count in range(len(words), 0, -1):
        try:
            return family_of(" ".join(words[:count]), brief.sentences), " ".join(words[count:])
        except AdviceError as wrong:
            told = str(wrong)
    if words and brief.result.best is None:
        raise Slip(told)
    if brief.result.best is None:
        raise Slip("No machine leads yet. Name one: /check side grip, /check incline slip")
    return brief.result.best, " ".join(words)


def _left(work: Work, rest: str) -> Effect:
    talk = work.talk
    lines = [f"{'To start work' if q.purpose == 'engineering' else 'To ask'}: {q.say}" for q in talk.open_questions()]
    lines += [f"Not asked: {left.why}" for left in talk.skipped]
    lines += [f"Set aside: {left.why}" for left in talk.set_aside]
    return Effect(lines=tuple(lines) or ("Nothing is left to ask.",))


def _result(work: Work, rest: str) -> Effect:
    brief = work.brief
    return Effect(lines=tuple(recommendation(brief.result, brief.spec, work.system, brief.sentences)))


def _sketch(work: Work, rest: str) -> Effect:
    """The machine named, else the leading one, drawn to scale with text."""
    family = _machine(work, rest)[0] if rest.strip() else None
    return Effect(lines=tuple(sketch_lines(work.brief, *SKETCH, family=family)))


def _draft(work: Work, rest: str) -> Effect:
    """All that could be sent, or one of it, ready to copy."""
    found = drafts(work)
    said = rest.strip().casefold()
    if not said:
        lines = [f"{one.key}: {one.title}" for one in found]
        return Effect(lines=(*lines, "One of them in full: /draft summary") if lines else ("Nothing to send yet.",))
    one = next((draft for draft in found if draft.key == said), None)
    if one is None:
        there = ", ".join(draft.key for draft in found) or "none yet"
        kinds = ", ".join(KEYS)
        raise Slip(f'There is no draft "{clean(said)[:30]}" now. There are: {there} (of {kinds}).')
    return Effect(page=Page(title=one.title, text=one.text), copy=one.text)


def _units(work: Work, rest: str) -> Effect:
    said = needs(rest, "us or si behind it: /units si").casefold()
    if said not in ("us", "si"):
        raise Slip("Units are us (feet, pounds) or si (metres, kilograms).")
    work.units = "us" if said == "us" else "si"
    return Effect(lines=(f"Shown in {'feet and pounds' if said == 'us' else 'metres and kilograms'} from here.",))


def _subject(word: str) -> Run:
    def tell(work: Work, rest: str) -> Effect:
        try:
            return Effect(lines=tuple(advise(work.brief, word, clean(rest)).lines))
        except (AdviceError, SpecError) as fault:
            raise Slip(str(fault)) from None

    return tell


COMMANDS = (
    *under(
        _GROUP,
        Command("facts", "", "what stands now, with who said it", _facts, looks=True),
        Command("families", "", "every machine family with its verdict", _families, looks=True),
        Command("check", "[MACHINE] [CHECK]", "checks with formula, figures and source", _check, looks=True),
        Command("left", "", "what is still to ask, and what is not asked and why", _left, looks=True),
        Command("result", "", "the recommendation as it stands", _result, looks=True),
        Command("sketch", "[MACHINE]", "elevation and plan to scale, drawn with text", _sketch, looks=True),
        Command("draft", "[WHICH]", "messages ready to be sent; one of them to copy", _draft, looks=True),
        Command("units", "us|si", "show feet and pounds, or metres and kilograms", _units, looks=True),
    ),
    *under("ADVICE", *(Command(one.word, one.takes, one.does, _subject(one.word), looks=True) for one in SUBJECTS)),
)
