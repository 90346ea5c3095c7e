"""Angles of a slope: where the product slid or tipped in a test, and how far it may be tilted."""

import re

from intake.reading.message.scene import Draft, Scene

_SLIP = re.compile(r"\b(?:slid|slide|slides|sliding|slip|slips|slipped|slipping|slipper\w*)\b")
_TIP = re.compile(r"\b(?:tip|tips|tipped|tipping|topple\w*|fell over|fall over|falls over|keel\w*|tumbl\w*)\b")
_TILT = re.compile(r"\b(?:tilt\w*|lean\w*|off level|from level|out of level|incline[ds]?|steeper than|slope)\b")
_MOST, _LEAST = 75.0, 0.0


def slope_drafts(scene: Scene) -> list[Draft]:
    """Facts of all angles whose words speak of sliding, tipping or tilting."""
    found: list[Draft] = []
    for figure in [*scene.open_figures("degrees"), *scene.open_figures("angle")]:
        text = scene.sentence_text(figure.first)
        name = next((name for name in scene.asked if name in _ASKED), None) or _name(text)
        if name is None or not _LEAST <= figure.value <= _MOST or name in {draft.field for draft in found}:
            continue
        scene.use(figure)
        found.append(scene.draft(name, figure))
    return found


_ASKED = frozenset({"test.slip_angle", "test.tip_angle", "handling.tilt"})
_LEVEL = re.compile(
    r"\b(?:no (?:tilt\w*|leaning|angle)|not at all|none|zero|dead level|level|flat|upright|can't tilt"
    r"|must not tilt|never tilt\w*)\b"
)
_ANY_WAY = re.compile(
    r"\b(?:on (?:its|their|the) side|any (?:angle|way)|upside down|lay (?:it|them) down|as you like)\b"
)


def tilt_in_words(scene: Scene) -> list[Draft]:
    """To the question how far it may be tilted: "must stay level" is nothing, "on its side" a quarter turn."""
    if "handling.tilt" not in scene.asked or any(figure.kind in ("degrees", "angle") for figure in scene.figures):
        return []
    text = scene.words(0, min(len(scene.norms), 40))
    for pattern, value in ((_ANY_WAY, 90.0), (_LEVEL, 0.0)):
        match = pattern.search(text)
        if match is not None and scene.tokens:
            first = text[: match.start()].count(" ")
            last = min(len(scene.tokens) - 1, first + match.group().count(" "))
            scene.use(*[f for f in scene.figures if f.kind == "number"])
            return [Draft("handling.tilt", scene.tokens[first].start, scene.tokens[last].end, value, value, at=first)]
    return []


def _name(text: str) -> str | None:
    if re.search(r"\b(?:temperature|temp|room|turn|corner|clockwise|left|right)\b", text):
        return None
    if _SLIP.search(text):
        return None if _TIP.search(text) else "test.slip_angle"
    if _TIP.search(text):
        return "test.tip_angle"
    return "handling.tilt" if _TILT.search(text) else None
