"""A time for each product is a rate: "a case every 4 seconds", "6 s per tray", "cycle time 8 sec"."""

import re

from intake.reading.amounts.figures import Figure
from intake.reading.message.scene import Draft, Scene

_ONE = (
    r"(?:one|1|a|an|each|the next|another)(?: \w+){0,2}|piece|product|unit|item|box|case|carton|tray|tote|bag|bottle"
    r"|crate|pallet|load|keg|drum|pail|jar|can|bundle|cup|tub"
)
_EVERY_BEFORE = re.compile(rf"\b(?:{_ONE})(?: [\w']+){{0,5}}? (?:every|each)$")
_OPENS_EVERY = re.compile(r"\b(?:every|each)$")
_ONE_BEHIND = re.compile(
    r"^\W*(?:or so \W*|,? ?(?:we (?:get|see|have|make)|there(?:'s| is)|comes?|i have) )?(?:a|an|one|1|another)"
    r" (?!day|week|break|shift|min|sec|hour|time|while|people|minute|half)\w+"
)
_PER_ONE = re.compile(
    r"^\W*(?:per|a|each|for each|for every|between|for one|/) ?(?:one|piece|pc|product|unit|item|box|case"
    r"|carton|tray|tote|bag"
    r"|bottle|crate|pallet|load|keg|drum|pail|jar|can|bundle|cup|part|cycle)\b|^\W*(?:apart|each$|each[ ,.]"
    r"|between (?:them|each|one))"
)
_CYCLE = re.compile(
    r"\b(?:cycle|takt|tact|beat|cadence|interval|spacing in time|pitch time)(?: time)?(?: \w+){0,2}\W*$"
)
_STOPS = re.compile(
    r"\b(?:stop|break|clean|wash|check|jam|changeover|inspect|rotat|refill|shift|pause|call|meeting)\w*"
)
_NAMES = frozenset({"s", "min"})


def pace_drafts(scene: Scene) -> list[Draft]:
    """Rates told as the time for one, normal unless the words say peak."""
    found: list[Draft] = _every_second(scene)
    for figure in scene.open_figures("duration"):
        if figure.unit is None or figure.unit.name not in _NAMES or figure.value <= 0 or not _paces(scene, figure):
            continue
        scene.use(figure)
        peak = re.search(r"\b(?:peak|fastest|busiest|best|quickest|max)\b", scene.sentence_text(figure.first))
        asked_peak = scene.asked == ("rate.peak",)
        pieces = scene.asked and scene.asked[0] == "rate.pieces" and "rate.normal" not in scene.asked
        draft = scene.draft("rate.pieces" if pieces else "rate.peak" if peak or asked_peak else "rate.normal", figure)
        draft.low, draft.high = (None if end is None else 60.0 / end for end in (figure.high, figure.low))
        found.append(draft)
    return found


_EVERY_UNIT = re.compile(
    r"\b(?:one|1|a|an)(?: (?!day|week|break|time|call|stop|couple|few|dozen|lot|bit)\w+)? (?:every|each|per"
    r"|a) (other )?(second|sec|minute"
    r"|min)\b( and a half)?"
)


def _every_second(scene: Scene) -> list[Draft]:
    """ "A piece every second": no figure at all."""
    for match in _EVERY_UNIT.finditer(scene.shadow[:20_000]):
        at = scene.token_at(match.start())
        inside = [f for f in scene.figures if match.start() <= scene.tokens[f.first].start < match.end()]
        if at is None or not scene.live(at) or any(f.kind != "number" or f.value not in (1.0, 0.5) for f in inside):
            continue
        for figure in inside:
            scene.use(figure)
        value = 60.0 if match.group(2).startswith("s") else 1.0
        value /= 2.0 if match.group(1) else 1.5 if match.group(3) else 1.0
        asked = next(
            (name for name in scene.asked if name.startswith("rate.") and name != "rate.normal"), "rate.normal"
        )
        name = asked if asked in ("rate.peak", "rate.pieces") else "rate.normal"
        return [Draft(name, match.start(), match.end(), value, value, at=at)]
    return []


def _paces(scene: Scene, figure: Figure) -> bool:
    before = scene.words(scene.windows[id(figure)][0], figure.begin)[-60:]
    behind = scene.words(figure.after, min(figure.after + 6, scene.sentence_of(figure.first).after))[:40]
    if _CYCLE.search(before) or _PER_ONE.match(behind):
        return True
    if _STOPS.search(f"{before} {behind}"):
        return False
    if _EVERY_BEFORE.search(before):
        return True
    asked = any(name in ("rate.normal", "rate.peak") for name in scene.asked)
    return _OPENS_EVERY.search(before) is not None and (_ONE_BEHIND.match(behind) is not None or asked)
