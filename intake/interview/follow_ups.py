"""What is still to find out after the talk: unknowns, promises to check, assumptions and tests, ranked."""

from collections.abc import Iterator
from typing import Literal

from intake.interview.question import OpenPoint
from intake.interview.tree import Tree, is_settled
from intake.interview.wording import Sentences
from intake.sizing.result import Result
from intake.spec.case import Case
from intake.spec.clean import one_line
from intake.spec.flat import Spec
from intake.spec.vocabulary import vocabulary

_STATES = ("later", "unknown", "open", "asked")


def open_points(case: Case, spec: Spec, result: Result, tree: Tree, sentences: Sentences) -> list[OpenPoint]:
    """Each open point once; what may change the best family most stands first, then what the visitor checks.

    Questions of the visitor's own that nothing here answers stand last: they go to engineering.
    """
    points = [*_answered_without(case, spec, result, tree), *_from_sizing(case, result, tree, spec)]
    points += _asked_of_us(case, sentences)
    return sorted(points, key=lambda point: (-(point.changes_best or 0.0), _STATES.index(point.state)))


def _asked_of_us(case: Case, sentences: Sentences) -> Iterator[OpenPoint]:
    texts = dict.fromkeys(inquiry.text for inquiry in case.inquiries if inquiry.card is None and inquiry.text)
    for text in texts:
        yield OpenPoint(
            field=None,
            test=None,
            say=sentences.say("open_point.question", said=one_line(text, 300)),
            why=sentences.say("open_point.question_why"),
            settle=sentences.say("open_point.question_settle"),
            state="asked",
        )


def _answered_without(case: Case, spec: Spec, result: Result, tree: Tree) -> Iterator[OpenPoint]:
    worth = {follow.field: follow.changes_best for follow in result.follow_ups}
    reasons = {follow.field: follow.why for follow in result.follow_ups}
    states: tuple[tuple[Literal["later", "unknown"], set[str]], ...] = (
        ("later", case.later),
        ("unknown", case.unknown),
    )
    for entry in tree.questions:
        for state, answered in states:
            # Known and yet to be checked: a conflict that the visitor promised to clear up.
            names = [n for n in entry.fields if n in answered and (spec.knows(n) or not is_settled(n, spec))]
            for name in names:
                yield OpenPoint(
                    field=name,
                    test=None,
                    say=tree.wording(entry, spec, names),
                    why=reasons.get(name) or entry.why,
                    settle=entry.settle,
                    state=state,
                    changes_best=worth.get(name),
                )


def _from_sizing(case: Case, result: Result, tree: Tree, spec: Spec) -> Iterator[OpenPoint]:
    seen: set[str] = set()
    for follow in result.follow_ups:
        name = follow.field or follow.test
        # What only warns has its sentence among the cautions: there is nothing to find out.
        if (
            name is None
            or name not in vocabulary()
            or name in seen
            or name in case.unknown | case.later
            or is_settled(name, spec)
        ):
            continue
        seen.add(name)
        entry = tree.for_field(name)
        yield OpenPoint(
            field=follow.field,
            test=follow.test,
            say=tree.wording(entry, spec, (name,)) if entry is not None else follow.why,
            why=follow.why,
            settle=entry.settle if entry is not None else "",
            state="open",
            changes_best=follow.changes_best,
        )
