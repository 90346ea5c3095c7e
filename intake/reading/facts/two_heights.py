"""Where a text gives two heights: "from 30 inches to 14 feet", or one beside the other."""

import re

from intake.reading.amounts.figures import Figure
from intake.reading.facts.length_labels import label_of
from intake.reading.message.scene import Draft, Scene
from intake.reading.message.topics import topic_behind, topic_of

_MOVES = re.compile(
    r"\b(?:up|down|lift\w*|rais\w+|elevat\w+|lower\w*|climb\w*|descend\w*|drop\w*|rise|mezzanine|upstairs"
    r"|downstairs|floor|conveyor"
    r"|belt|table|bench|level|deck|platform|palletizer|packer|filler|dock)\b"
)
_ENDS = ("rise.infeed_height", "rise.discharge_height")
ABOVE_DECK = re.compile(
    r"^\W*(?:above|over|off|higher than|up from) (?:the |that |this |our )?(?:deck|mezzanine|platform|upper|balcony"
    r"|second|2 nd|first floor|1 st)\b"
)
"""A conveyor on a mezzanine stands above the mezzanine: its height is no rise and no height above the floor."""


def two_heights(scene: Scene, found: list[Draft], down: bool) -> list[Draft]:
    """ "Packing bench 36 in, conveyor upstairs 13 ft 4": two heights, one of them or both without other words."""
    said = {draft.field: draft for draft in found if draft.field in _ENDS}
    left = [f for f in scene.open_figures("length") if _may_be_an_end(scene, f)]
    if len(said) + len(left) != 2 or not left:
        return []
    places = sorted([*(draft.at for draft in said.values()), *(figure.first for figure in left)])
    if scene.sentence_at[places[1]] - scene.sentence_at[places[0]] > 1:
        return []
    lows = [draft.high or draft.low or 0.0 for draft in said.values()] + [figure.value for figure in left]
    if not (0.2 <= min(lows) <= 2.0 and 1.5 <= max(lows) <= 15.0 and max(lows) - min(lows) >= 0.5):
        return []
    drafts = []
    for figure in left:
        is_low = figure.value == min(lows)
        name = "rise.infeed_height" if is_low != down else "rise.discharge_height"
        if name in said:
            return []
        drafts.append(scene.draft(name, figure, rank=4))
    scene.use(*left)
    return drafts


def _may_be_an_end(scene: Scene, figure: Figure) -> bool:
    before = scene.before(figure)
    return (
        scene.group_of(figure) is None
        and not figure.is_range
        and not figure.bound
        and not label_of(scene, figure)
        and _MOVES.search(before) is not None
        and topic_of(before) not in ("opening", "ceiling", "space", "machine")
        and topic_behind(scene.after(figure)) not in ("opening", "ceiling", "space", "machine")
        and not ABOVE_DECK.match(scene.after(figure))
    )


def two_ends(scene: Scene, figure: Figure, down: bool) -> list[Draft]:
    """ "from 30 inches to 14 feet" is one range of lengths and two heights."""
    if not figure.is_range or label_of(scene, figure):
        return []
    joined = scene.words(figure.ends[0].after, figure.ends[1].first)
    if "to" not in joined.split() and joined != "-":
        return []
    first, second = (
        end.unit.worth(end.value) if end.unit else (figure.unit.worth(end.value) if figure.unit else end.value)
        for end in figure.ends
    )
    before = scene.before(figure)
    lead = scene.words(figure.begin, figure.first) + " " + scene.words(figure.first, figure.ends[0].first)
    heights = "from" in lead.split() or before.split()[-1:] == ["from"]
    text = scene.sentence_text(figure.first)
    moves = re.search(
        r"\b(?:up|down|lift|raise|elevate|lower|climb|descend|drop|rise|go|goe|going|move|take|bring|come"
        r"|mezzanine|transfer|carry|convey)\b",
        text,
    )
    if topic_of(before) in ("space", "opening", "ceiling") or (joined == "-" and not (moves and heights)):
        return []
    if not ((heights or moves) and abs(first - second) >= 0.3 and max(first, second) >= 0.6):
        return []
    if (
        max(first, second) < 2.0 * min(first, second)
        and re.search(r"\b(?:product|case|box|size|vary|range)\b", before)
        and not moves
    ):
        return []
    drafts = []
    for name, end, value in zip(
        ("rise.infeed_height", "rise.discharge_height"), figure.ends, (first, second), strict=True
    ):
        start, stop = scene.tokens[end.first].start, scene.tokens[end.after - 1].end
        drafts.append(Draft(name, start, stop, value, value, approx=figure.approx, at=end.first, rank=6))
    return drafts
