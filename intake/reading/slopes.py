"""Angles of a slope: where the product slid or tipped in a test, and how far it may be tilted."""

import re

from intake.reading.scene import Draft, Scene

_SLIP = re.compile(r"\b(?:slid|slide|slides|sliding|slip|slips|slipped|slipping|slipper\w*)\b")
_TIP = re.compile(r"\b(?:tip|tips|tipped|tipping|topple\w*|fell over|fall over|falls over|keel\w*|tumbl\w*)\b")
_TILT = re.compile(r"\b(?:tilt\w*|lean\w*|off level|from level|out of level|incline[ds]?|steeper than|slope)\b")
_MOST, _LEAST = 75.0, 0.0


def slope_drafts(scene: Scene) -> list[Draft]:
    """Facts of all angles whose words speak of sliding, tipping or tilting."""
    found: list[Draft] = []
    for figure in [*scene.open_figures("degrees"), *scene.open_figures("angle")]:
        text = scene.sentence_text(figure.first)
        name = _name(text)
        if name is None or not _LEAST <= figure.value <= _MOST or name in {draft.field for draft in found}:
            continue
        scene.use(figure)
        found.append(scene.draft(name, figure))
    return found


def _name(text: str) -> str | None:
    if re.search(r"\b(?:temperature|temp|room|turn|corner|clockwise|left|right)\b", text):
        return None
    if _SLIP.search(text):
        return None if _TIP.search(text) else "test.slip_angle"
    if _TIP.search(text):
        return "test.tip_angle"
    return "handling.tilt" if _TILT.search(text) else None
