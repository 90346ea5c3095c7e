"""What is still to find out: unknowns, assumptions and tests, ranked by how much they matter."""

from collections.abc import Sequence

from intake.advice.brief import Answer, Brief
from intake.interview.follow_ups import open_points
from intake.interview.question import OpenPoint
from intake.interview.reasons import percent
from intake.interview.tree import Tree, load_tree
from intake.spec.case import Case

_WEIGHTY = 0.02
_MOST = 12


def to_find_out(brief: Brief, case: Case | None = None) -> Answer:
    """What is open, worded for the visitor, with the photo, drawing or test that would settle it.

    What is asked in one breath is one line. `case`: tells apart what the visitor does not know and what is being
    checked; None: only the spec is known.
    """
    tree = load_tree(brief.folder)
    points = open_points(case or Case(), brief.spec, brief.sampled, tree, brief.sentences)
    data = {"points": [point.to_json() for point in points]}
    lines = [_line(group, tree, brief) for group in _by_question(points, tree)]
    if not lines:
        return Answer(topic="to_find_out", lines=(brief.sentences.say("still.none"),), data=data)
    shown = [brief.sentences.say("still.lead"), *lines[:_MOST]]
    if len(lines) > _MOST:
        shown.append(brief.sentences.say("still.more", count=str(len(lines) - _MOST)))
    return Answer(topic="to_find_out", lines=tuple(shown), data=data)


def _by_question(points: Sequence[OpenPoint], tree: Tree) -> list[list[OpenPoint]]:
    """The points of one question together, in the order of the weightiest of each."""
    groups: dict[str, list[OpenPoint]] = {}
    for point in points:
        name = point.field or point.test
        entry = tree.for_field(name) if name is not None else None
        groups.setdefault(entry.id if entry is not None else point.say, []).append(point)
    return list(groups.values())


def _line(group: Sequence[OpenPoint], tree: Tree, brief: Brief) -> str:
    names = tuple(name for point in group if (name := point.field or point.test) is not None)
    entry = tree.for_field(names[0]) if names else None
    say = tree.wording(entry, brief.spec, names) if entry is not None else group[0].say
    changes = max(point.changes_best or 0.0 for point in group)
    weight = f" {brief.sentences.say('still.weight', share=percent(changes))}" if changes >= _WEIGHTY else ""
    return brief.sentences.say("still.one", say=say, settle=group[0].settle.rstrip("."), weight=weight)
