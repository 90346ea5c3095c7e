"""Weeks until the machine is needed."""

import re

from intake.reading.amounts.figures import Figure
from intake.reading.message.scene import Draft, Question, Scene

_NEEDED = re.compile(
    r"\b(?:need|needed|deliver\w*|delivery|lead ?time|install\w*|start ?up|deadline|ready|running|in place"
    r"|commission\w*|from now|out|away|until|within|in|by|before|timeline|schedule|time frame|timeframe|"
    r"want it|must have|turnaround|target|go live|order|ship\w*|shutdown|left|on site|latest|at the latest"
    r"|project|asap|opening|aro|a r o|lead|term|plenty|today|would be fine|would do|is fine|is ok|is okay|okay"
    r"|following|award|work for us|we've got|can wait|after we sign|after order|from order|timing)\b"
)
_NOT_NEEDED = re.compile(
    r"\b(?:ask me|again|call me|get back|follow up|meeting|back to you|every|each|per|a|once|last|ago|vacation"
    r"|away on|holiday|shelf life|warranty|quote valid|valid for"
    r"|back from|gone for|out of office|out for|old|trial|lasts?|been|took|payment|net|age[ds]?|days a|stored?"
    r"|storage|for the past|since|off for)\b"
)


def weeks_drafts(scene: Scene) -> list[Draft | Question]:
    """Weeks until the machine is needed; two different ones are asked back."""
    found: list[Draft] = []
    asked = "project.weeks" in scene.asked
    for figure in scene.open_figures("duration"):
        headed = _headed_by_time(scene, figure)
        if figure.unit is None or figure.unit.name not in ("week", "month", "day", "year"):
            continue
        before, behind = scene.before(figure), scene.after(figure)
        around = f"{before[-50:]} {behind[:40]}"
        if re.match(
            r"^\W*(?:ago|old|a (?:year|month|week)|per|of (?:storage|inventory|vacation|training|supply|stock)"
            r"|shelf|holiday|vacation|warranty)\b",
            behind,
        ):
            continue
        if _NOT_NEEDED.search(before[-18:]) or (figure.unit.name == "day" and not asked):
            continue
        if figure.unit.name == "year" and not asked:
            continue
        also = bool(found) and scene.sentence_at[figure.first] == scene.sentence_at[found[-1].at]
        if not asked and not also and not headed and not _NEEDED.search(around):
            continue
        scene.use(figure)
        found.append(_in_weeks(scene, figure))
    values = [draft.high or draft.low or 0.0 for draft in found]
    if len(found) < 2 or max(values) <= 1.03 * min(values):
        return list(found[-1:])
    return [Question("project.weeks", found[-1].start, found[-1].end, "two_values", {}, (found[0], found[-1]))]


def _headed_by_time(scene: Scene, figure: Figure) -> bool:
    """ "Timing? Seventeen weeks": the sentence before names what it is."""
    at = scene.sentence_at[figure.first]
    if at == 0:
        return False
    earlier = scene.sentences[at - 1]
    text = scene.words(earlier.first, earlier.after)
    short = earlier.after - earlier.first <= 4
    return (
        short and re.search(r"\b(?:timing|timeline|lead time|delivery|schedule|when|deadline|date)\b", text) is not None
    )


def _in_weeks(scene: Scene, figure: Figure) -> Draft:
    draft = scene.draft("project.weeks", figure)
    if draft.low is not None:
        draft.low /= 604800.0
    if draft.high is not None:
        draft.high /= 604800.0
    words = scene.words(figure.begin, figure.first)
    if words.strip() in ("within",) and draft.low is not None and draft.high is not None:
        draft.low = None
    return draft
