"""What the screen shows of a talk at one moment: plain lines, made away from the screen."""

from dataclasses import dataclass, field
from datetime import date

from intake.advice import (
    Brief,
    assumption_line,
    family_name,
    margin_line,
    short_family_name,
    verdict_line,
)
from intake.desk.effect import Effect
from intake.desk.lights import Lit
from intake.desk.rows import Row as Row
from intake.desk.waiting import waiting_lines
from intake.desk.work import Work
from intake.interview.question import Question
from intake.sizing.result import Result
from intake.spec.clean import one_line
from intake.spec.display import System, label, show_value
from intake.talk import Interview

SIGNS = {"fits": "+", "depends": "?", "out": "-"}
WORDS = {"fits": "fits", "depends": "depends", "out": "out"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Snapshot:
    """A talk as the screen shows it."""

    title: str
    question: Question | None
    facts: tuple[Row, ...]
    assumed: tuple[Row, ...]
    machines: tuple[Row, ...]
    to_ask: tuple[Row, ...]
    standing: str
    strip: tuple[str, ...]
    result: Result
    system: System
    brief: Brief
    name: str = ""
    by_ear: bool = False
    lines: tuple[str, ...] = field(default=())
    lit: Lit | None = None
    """The message just taken in, with what of it was understood."""
    effect: Effect | None = None
    """What else a command came to."""
    turn: int = 0
    """The step that it came of, as `Verdicts` counts them."""
    anew: str = ""
    """While a fact is being changed: what is asked instead of the question."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdicts:
    """What can be shown before anything is ranked: what was understood, and where each machine stands by bounds."""

    turn: int
    lines: tuple[str, ...]
    machines: tuple[Row, ...]
    strip: tuple[str, ...]
    lit: Lit | None = None


def early_verdicts(work: Work, turn: int, lines: tuple[str, ...], lit: Lit | None) -> Verdicts:
    """The verdicts of the talk as it stands, without the samples that ranking takes."""
    result = work.talk.bounds()
    machines = tuple(_machine_rows(result, work.system, margins=False))
    return Verdicts(turn=turn, lines=lines, machines=machines, strip=strip_lines(result), lit=lit)


def snapshot(work: Work, lines: tuple[str, ...], anew: str = "", turn: int = 0, *, panels: bool = True) -> Snapshot:
    """The case as it stands. Sizes it, so it belongs off the screen's own thread. Without `panels` they stay empty."""
    talk, system = work.talk, work.system
    result = talk.result()
    return Snapshot(
        title=talk.title,
        question=work.question,
        facts=(*_fact_rows(talk, system), *_note_rows(talk)) if panels else (),
        assumed=tuple(_assumed_rows(result, system)) if panels else (),
        machines=tuple(_machine_rows(result, system)) if panels else (),
        to_ask=(*_waiting_rows(talk), *_to_ask_rows(talk)) if panels else (),
        standing=standing_line(result, needed_to_start(talk)),
        strip=strip_lines(result),
        result=result,
        system=system,
        brief=work.brief,
        name=work.name,
        by_ear=work.by_ear,
        lines=lines,
        anew=anew,
        turn=turn,
    )


MARKS = {"visitor": "v", "visitor, heard": "h", "staff": "s", "works": "w"}
"""Who said it, in one letter before a fact; an assumption has ~."""


def _fact_rows(talk: Interview, system: System) -> list[Row]:
    rows = []
    for fact in talk.facts:
        said = f'  "{one_line(fact.said, 60)}"' if fact.said else ""
        mark = MARKS.get(talk.case.origin(fact), fact.who)
        doubt = " (not sure)" if fact.hedged else ""
        text = f"{mark} {label(fact.field, fact.size)}: {show_value(fact.field, fact, system)}{doubt}{said}"
        rows.append(Row(key=f"{fact.field}@{fact.size}", text=text))
    return rows


def _note_rows(talk: Interview) -> list[Row]:
    return [Row(key="", text=f"n {one_line(note)}", tone="aside") for note in talk.case.notes]


def _waiting_rows(talk: Interview) -> list[Row]:
    today = date.today().isoformat()
    lines = waiting_lines(talk.case.waiting, today) if talk.case.waiting else ()
    return [
        Row(key=f"done:{number}", text=f"! {line.partition('. ')[2]}", tone="waiting")
        for number, line in enumerate(lines, 1)
    ]


def _assumed_rows(result: Result, system: System) -> list[Row]:
    leaned = {id for name in result.standing for check in result.families[name].checks for id in check.assumes}
    return [
        Row(key=a.about[0] if a.about else "", text=f"~ {assumption_line(a, system)}", tone="assumed")
        for a in result.assumptions
        if a.id in leaned
    ]


def _machine_rows(result: Result, system: System, *, margins: bool = True) -> list[Row]:
    """`margins`: with the tightest margin of a family that depends, which takes working out all of its checks."""
    gone = [name for name in result.families if name not in result.standing]
    rows = []
    for name in (*result.standing, *gone):
        found = result.families[name]
        reason = verdict_line(found, result, system)
        if margins and found.verdict == "depends" and (margin := margin_line(found)):
            reason = f"{reason}; {margin}"
        lead = "best: " if name == result.best else ""
        text = f"{SIGNS[found.verdict]} {lead}{family_name(name)}: {reason}"
        tone = "best" if name == result.best else found.verdict
        rows.append(Row(key=name, text=text, tone=tone))
    return rows


def _to_ask_rows(talk: Interview) -> list[Row]:
    rows = [Row(key=q.id, text=f"{q.branch}: {_purpose(q)}{q.say}") for q in talk.open_questions()]
    rows += [Row(key=s.question, text=f"aside: {s.why}", tone="aside") for s in talk.set_aside]
    rows += [Row(key=s.question, text=f"not asked: {s.why}", tone="aside") for s in talk.skipped]
    return rows


def _purpose(question: Question) -> str:
    if question.kind != "question":
        return "to clear up: "
    return "to start work: " if question.purpose == "engineering" else ""


_MOSTLY = 0.5
"""Below this share of the cases tried, another machine leads in as many."""


def needed_to_start(talk: Interview) -> int:
    """How many facts engineering still needs to start."""
    return sum(len(question.fields) for question in talk.open_questions() if question.purpose == "engineering")


def standing_line(result: Result, needed: int = 0) -> str:
    """How settled it is, in one line: who leads, how sure, what engineering still needs."""
    if needed and result.decided and result.best is not None:
        return f"{standing_line(result)}; to start work: {needed} more facts"
    if result.refer_out is not None:
        return f"Refer out: {result.refer_out}"
    if result.best is None:
        return "No leader yet: product, rate and rise come first"
    name = family_name(result.best)
    if result.share is not None and result.share < _MOSTLY:
        return f"{name} leads on what is known; what is open may well turn it".capitalize()
    share = "" if result.share is None else f", best in {result.share:.0%} of what is open"
    settled = "settled" if result.decided else "leads"
    return f"{name} {settled}{share}".capitalize()


def strip_lines(result: Result) -> tuple[str, ...]:
    """The machines by verdict in short, a line each, for screens without room for the panel."""
    lines = []
    for verdict, sign in SIGNS.items():
        names = [name for name, found in result.families.items() if found.verdict == verdict]
        ranked = sorted(names, key=lambda name: name != result.best)
        short = ", ".join(short_family_name(name) for name in ranked)
        lines += [f"{sign} {WORDS[verdict]}: {short}"] if names else []
    return tuple(lines)
