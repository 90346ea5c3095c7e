"""From a talk to the package: facts with their origin, assumptions, open points, the result in short."""

from typing import Literal

from intake.advice import caution_lines
from intake.handoff.package import OpenPoint, Package, Said, Summary
from intake.handoff.private import Withholder
from intake.handoff.revision import changes, revision_of
from intake.sizing.result import Result
from intake.spec import Fact, Spec, vocabulary
from intake.spec.display import label, show_value
from intake.spec.events import now
from intake.talk import Interview

_STATES: dict[str, Literal["follow_up", "not_known", "visitor_checks", "visitor_asks"]] = {
    "open": "follow_up",
    "unknown": "not_known",
    "later": "visitor_checks",
    "asked": "visitor_asks",
}


def gather(talk: Interview, result: Result, *, case: str, with_contact: bool) -> Package:
    """The package for what stands now. `result` is `talk.result()`, worked out once by the caller."""
    spec = Spec.from_flat(talk.spec())
    private = Withholder(talk.facts, allowed=with_contact)
    return Package(
        case=case,
        title=private.prose(talk.title),
        revision=revision_of(talk.events, spec, result.data),
        written=now(),
        units=talk.system,
        spec={key: private.prose(value) if isinstance(value, str) else value for key, value in spec.to_flat().items()},
        facts=[_said(fact, private) for fact in talk.facts if private.shows(fact)],
        assumptions=[assumption.to_json() for assumption in result.assumptions],
        derived=[derived.to_json() for derived in result.derived],
        open_points=_open_points(talk, result, private),
        notes=[private.prose(note) for note in talk.case.notes],
        changes=changes(talk.events, spec, result.data, talk.system),
        result=_summary(result),
        cautions=caution_lines(result),
        data=dict(result.data),
        contact_included=with_contact,
    )


def _said(fact: Fact, private: Withholder) -> Said:
    free_text = vocabulary()[fact.field].kind == "text"
    hide = private.prose if free_text else private.words
    value = fact.as_value().to_json()
    return Said(
        field=fact.field,
        size=fact.size,
        value=hide(value) if isinstance(value, str) else value,
        unit=fact.unit,
        shown_us=hide(show_value(fact.field, fact, "us")),
        shown_si=hide(show_value(fact.field, fact, "si")),
        who=fact.who,
        at=fact.at,
        said=hide(fact.said),
        sure="hedged" if fact.hedged else "about" if fact.approx else "exact",
        spread=fact.spread,
    )


def _open_points(talk: Interview, result: Result, private: Withholder) -> list[OpenPoint]:
    """Words in doubt, things said twice and differently, facts that cannot all hold, and what is to find out."""
    case = talk.case
    points = [OpenPoint(kind="doubt", field=d.field, why=private.words(f'"{d.said}": {d.why}')) for d in case.doubts]
    for (name, size), (before, after) in case.quarrels.items():
        why = f'{label(name, size)}: said as "{before.said}" and as "{after.said}"; sized on the later one'
        points.append(OpenPoint(kind="conflict", field=name, why=private.words(why)))
    points += [OpenPoint(kind="conflict", field=c.fields[0] if c.fields else None, why=c.why) for c in result.conflicts]
    points += [
        OpenPoint(
            kind=_STATES[point.state],
            field=point.field,
            test=point.test,
            # A question of the visitor's own is about no field: its words are all that tells engineering of it.
            why=private.prose(f"{point.say} {point.why}") if point.state == "asked" else private.words(point.why),
            settle=private.words(point.settle),
            changes_best=point.changes_best,
        )
        for point in talk.follow_ups()
    ]
    return points


def _summary(result: Result) -> Summary:
    return Summary(
        best=result.best,
        second=result.second,
        refer_out=result.refer_out,
        direction=result.direction,
        decided=result.decided,
        share=result.share,
        verdicts={name: found.verdict for name, found in result.families.items()},
        flags=list(result.flags),
    )
