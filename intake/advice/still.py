"""What is still to find out: unknowns, assumptions and tests, ranked by how much they matter."""

from intake.advice.brief import Answer, Brief
from intake.interview.follow_ups import open_points
from intake.interview.question import OpenPoint
from intake.interview.reasons import percent
from intake.interview.tree import load_tree
from intake.spec.case import Case

_WEIGHTY = 0.02


def to_find_out(brief: Brief, case: Case | None = None) -> Answer:
    """Each open point once, worded for the visitor, with the photo, drawing or test that would settle it.

    `case`: tells apart what the visitor does not know and what is being checked; None: only the spec is known.
    """
    points = open_points(case or Case(), brief.spec, brief.result, load_tree(brief.folder))
    data = {"points": [point.to_json() for point in points]}
    lines = tuple(dict.fromkeys(_line(point, brief) for point in points))
    if not lines:
        return Answer(topic="to_find_out", lines=(brief.sentences.say("still.none"),), data=data)
    return Answer(topic="to_find_out", lines=(brief.sentences.say("still.lead"), *lines), data=data)


def _line(point: OpenPoint, brief: Brief) -> str:
    changes = point.changes_best or 0.0
    weight = f" {brief.sentences.say('still.weight', share=percent(changes))}" if changes >= _WEIGHTY else ""
    return brief.sentences.say("still.one", say=point.say, settle=point.settle.rstrip("."), weight=weight)
