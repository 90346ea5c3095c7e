"""A length with a label: "12 in wide", "height: 4 m", "tallest 14"; and which field that makes it."""

import re

from intake.reading.amounts.figures import Figure
from intake.reading.amounts.size_labels import label_before, label_behind
from intake.reading.facts.heights import comes_from, goes_to, is_rise
from intake.reading.message.scene import Scene
from intake.reading.message.topics import topic_behind, topic_of
from intake.reading.message.travelling import ROUND, Travelling

PRODUCT_BY_LETTER = {
    "l": "product.length",
    "w": "product.width",
    "h": "product.height",
    "t": "product.height",
    "o": "product.diameter",
    "a": "product.width",
}
_OPENING = {"a": "space.opening_width", "w": "space.opening_width", "h": "space.opening_height"}
SPACE_BY_LETTER = {
    "a": "space.width",
    "l": "space.length",
    "w": "space.width",
    "d": "space.length",
    "h": "space.ceiling",
}
LONGEST_PRODUCT = 3.5


def label_of(scene: Scene, figure: Figure) -> str:
    letter, _ = label_behind(scene.tokens, figure.after)
    if letter:
        return letter
    if _ALONG_TRAVEL.match(scene.after(figure)):
        return "l"
    told = _SIDE_BEHIND.match(scene.after(figure))
    if told is not None:
        return next(letter for letter, said in told.groupdict().items() if said)
    if figure.end > figure.after:
        letter, _ = label_behind(scene.tokens, figure.end)
        if letter:
            return letter
    floor = scene.windows[id(figure)][0]
    letter, _ = label_before(scene.tokens, figure.begin, floor)
    headed = _HEADED.match(scene.before(figure))
    if not letter and headed:
        return {"length": "l", "width": "w", "height": "h", "depth": "d", "diameter": "o", "thickness": "t"}[
            headed.group(1)
        ]
    if not letter:
        words = scene.before(figure)
        best = _SUPERLATIVE.search(words) or _SUPERLATIVE.match(scene.after(figure))
        if best is not None:
            return _SUPERLATIVES[best.group(1)]
        match = re.search(
            r"\b(length|width|height|depth|diameter|tall|high|wide|long|deep|thick"
            r"|narrow(?:est)?)(?: of (?:the |our |a )?[a-z]+)?(?: (?:of|is"
            r"|the|a|an|our|each|case|box|product|tray|bag|it|are|at|about|around|approx|only|just|:|=|be|door"
            r"|doorway|opening|ceiling|infeed|discharge|would|will|run|vary|varie|range|go|goe|creep|anywhere"
            r"|from|between|somewhere|crate|tote|bottle|pallet|max|maximum|and"
            r"|can)){0,5}$",
            words,
        )
        if match:
            word = match.group(1)
            return {
                "length": "l",
                "width": "w",
                "height": "h",
                "depth": "d",
                "diameter": "o",
                "tall": "h",
                "high": "h",
                "wide": "w",
                "long": "l",
                "deep": "d",
                "thick": "t",
            }.get(word, "w")
    return letter


_ALONG_TRAVEL = re.compile(
    r"^\W*(?:in|along) (?:the )?(?:direction|way) (?:of (?:travel|flow)|(?:the "
    r"|our )?[\w']+ (?:travel|move|run|flow|go|goe)s?\b)"
)
_SIDE_BEHIND = re.compile(
    r"^\W{0,3}(?:(?P<w>(?:cross(?:wise|ways)|sideways)\b)|(?P<l>(?:length(?:wise|ways)|nose to tail)\b)"
    r"|(?P<h>(?:from |off )?(?:the )?(?:belt|floor|table) to (?:the |its )?top\b))"
)
"""Which side it is, behind the figure and perhaps a comma: "12 in, crosswise to the belt"."""
_HEADED = re.compile(
    r"^\W*(?:the )?(?:\w+ ){0,2}?(length|width|height|thickness|depth|diameter)\b(?! (?:difference|change|gain"
    r"|of (?:lift|entrance|exit)))[^:]{0,40}: ?$"
)
_SUPERLATIVES = {
    "tallest": "h", "highest": "h", "shortest": "h", "widest": "w", "narrowest": "w", "longest": "l", "thickest": "t",
    "thinnest": "t", "deepest": "d", "flattest": "h",
}  # fmt: skip
_SUPERLATIVE = re.compile(
    r"\W*(?:at (?:the|its|their) )?\b(tallest|highest|shortest|widest|narrowest|longest|thickest|thinnest"
    r"|deepest|flattest)\b"
    r"(?: (?:one|ones|is|are|case|box|tray|carton|bottle|bag|tote|product|at|about|around|maybe|of them|being"
    r"|we|run|have|:)){0,4}\W*$"
)
_FOREIGN_BEHIND = re.compile(
    r"^\W*(?:operator|people|guy|worker|person|employee|man|forklift|truck|trailer|rack|belt|conveyor|aisle"
    r"|fence|stack|shelf)\b"
)
_FOREIGN_BEFORE = re.compile(
    r"\b(?:stack|rack|trailer|truck|forklift|operator|aisle|fence|wall|shelf|mast)\b(?: \w+){0,3} ?$"
)
_CONVEYOR_BEFORE = re.compile(
    r"\b(?:belt|conveyor|chain|roller(?! door| shutter)|frame|table)\b(?: (?!case|box|tray|product)\w+){0,5} ?$"
)
_CONVEYOR_SAID = re.compile(
    r"\b(?:existing|our|current|present|the|incoming|feed) (?:\w+ )?(?:belt|conveyor|chain|roller"
    r"|line)\b(?:(?! case| box| tray| product"
    r"|,|;).){0,60}$"
)


def labelled_field(
    scene: Scene, figure: Figure, letter: str, before: str, behind: str, sentence: str, who: Travelling, down: bool
) -> str | None:
    _, after = label_behind(scene.tokens, figure.after)
    if _FOREIGN_BEHIND.match(scene.words(after, min(after + 3, len(scene.norms)))) or _FOREIGN_BEFORE.search(before):
        return None
    if letter in ("w", "l") and (_CONVEYOR_BEFORE.search(before) or _CONVEYOR_SAID.search(sentence)):
        return None
    topic = (
        _asked_room(scene, letter)
        or topic_behind(scene.words(after, min(after + 6, scene.windows[id(figure)][1])))
        or topic_behind(behind)
    )
    if not topic:
        topic = topic_of(re.split(r"[,;]", before)[-1]) or _wider_topic(before) or _wider_topic(sentence)
        topic = topic or _topic_before(scene, figure)
    if topic == "opening":
        return _OPENING.get(letter)
    if topic == "ceiling":
        return "space.ceiling" if letter == "h" else None
    if topic == "space" and re.search(r"\bpit\b", f"{before} {behind}") and letter in ("d", "h"):
        return None
    if topic == "space":
        return SPACE_BY_LETTER.get(letter)
    if letter == "h" and topic in ("", "product") and re.search(r"\b(?:from|to) (?:\w+ ){0,2}height\W*$", before):
        return "rise.infeed_height" if comes_from(before) else "rise.discharge_height" if goes_to(before) else None
    if letter == "h" and topic in ("infeed", "discharge"):
        return f"rise.{topic}_height"
    if letter == "h" and topic in ("high", "inlow"):
        return "rise.infeed_height" if (topic == "high") == down else "rise.discharge_height"
    if topic == "machine":
        return None
    moved = re.search(r"\b(?:overcome|raise|lift|climb|rise|go up|bring|elevate)\b(?: \w+){0,4}$", before)
    if (
        letter == "h"
        and is_rise(before, "", "")
        and (re.search(r"(?:lift|lifting|total|rise|travel) height", before) or (moved and not topic))
    ):
        return "rise.height"
    if figure.value > LONGEST_PRODUCT:
        return None
    if letter == "a" and (who.kind in ROUND or "round" in scene.sentence_text(figure.first)):
        return "product.diameter"
    if letter == "d":
        return "product.length" if "wid" in scene.sentence_text(figure.first) else None
    return PRODUCT_BY_LETTER.get(letter)


def _names_a_container(scene: Scene) -> bool:
    return any(hit.field == "product.type" and hit.value for hit in scene.hits)


def _asked_room(scene: Scene, letter: str) -> str:
    """To a question about a door or the floor "11 ft high" speaks of that, where nothing else is named."""
    asked = {"opening" if "opening" in name else name.partition(".")[0] for name in scene.asked}
    if asked == {"opening"} and letter in ("w", "h", "a") and not _names_a_container(scene):
        return "opening"
    return "space" if asked == {"space"} and letter in ("w", "l", "d", "a") else ""


def _wider_topic(words: str) -> str:
    """A topic beyond the nearest comma holds for doors, rooms and ceilings only."""
    topic = topic_of(words)
    if topic in ("infeed", "discharge") and re.match(r"^\W*\w+(?: \w+)? ?:", words):
        return topic
    return topic if topic in ("opening", "ceiling", "space") else ""


def _topic_before(scene: Scene, figure: Figure) -> str:
    """The topic of the sentence before, where this one has none of its own."""
    at = scene.sentence_of(figure.first).first
    if at == 0:
        return ""
    earlier = scene.sentences[max(0, scene.sentence_at[figure.first] - 1)]
    topic = topic_of(scene.words(max(earlier.first, earlier.after - 25), earlier.after))
    return topic if topic == "opening" else ""
