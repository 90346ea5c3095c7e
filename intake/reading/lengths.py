"""Which field a length belongs to: by its label, by what it speaks of, by the question asked; else by none."""

import re
from dataclasses import replace

from intake.reading.figures import Figure
from intake.reading.groups import label_before, label_behind
from intake.reading.heights import comes_from, goes_to, is_outright_rise, is_rise, joins_two_heights
from intake.reading.scene import Draft, Scene
from intake.reading.topics import topic_behind, topic_of
from intake.reading.travelling import ROUND, Travelling

_PRODUCT = {
    "l": "product.length",
    "w": "product.width",
    "h": "product.height",
    "t": "product.height",
    "o": "product.diameter",
    "a": "product.width",
}
_OPENING = {"a": "space.opening_width", "w": "space.opening_width", "h": "space.opening_height"}
_SPACE = {"a": "space.width", "l": "space.length", "w": "space.width", "d": "space.length", "h": "space.ceiling"}
_HEIGHTS = ("rise.infeed_height", "rise.discharge_height", "rise.height", "space.ceiling")
_LONGEST_PRODUCT = 3.5
_BOUNDS_KEPT = frozenset(
    {"space.length", "space.width", "space.ceiling", "space.opening_width", "space.opening_height"}
)
_PLACES = frozenset({"up to", "over", "above", "below", "under", "lower than", "higher than"})


def length_drafts(scene: Scene, who: Travelling, down: bool) -> list[Draft]:
    """Facts of all single lengths that speak of the need."""
    found: list[Draft] = []
    previous = ""
    for figure in scene.figures:
        if figure.kind != "length" or id(figure) in scene.used or not scene.live(figure.first):
            continue
        if scene.group_of(figure) is not None:
            continue
        ends = _two_ends(scene, figure, down)
        if ends:
            found += ends
            scene.use(figure)
            continue
        name = field_of(scene, figure, who, down, {draft.field for draft in found}, previous)
        own = _OWN_WORDS.intersection(scene.asked) and not _label(scene, figure)
        if own and (name is None or not name.startswith("space.")):
            continue  # a base or a centre of gravity has no words of its own: it is what was asked
        if name is None:
            name = _of_the_neighbour(scene, figure)
        if name is None:
            continue
        if not _plausible(name, figure):
            continue
        previous = name
        scene.use(figure)
        found.append(_bounded(scene, scene.draft(name, figure), figure))
    if not any(draft.field == "rise.height" for draft in found):
        found += _two_heights(scene, found, down)
    return found


_MOVES = re.compile(
    r"\b(?:up|down|lift\w*|rais\w+|elevat\w+|lower\w*|climb\w*|descend\w*|drop\w*|rise|mezzanine|upstairs|downstairs|floor|conveyor"
    r"|belt|table|bench|level|deck|platform|palletizer|packer|filler|dock)\b"
)


def _two_heights(scene: Scene, found: list[Draft], down: bool) -> list[Draft]:
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
        and not _label(scene, figure)
        and _MOVES.search(before) is not None
        and topic_of(before) not in ("opening", "ceiling", "space", "machine")
        and topic_behind(scene.after(figure)) not in ("opening", "ceiling", "space", "machine")
        and not _ABOVE_DECK.match(scene.after(figure))
    )


_ENDS = ("rise.infeed_height", "rise.discharge_height")
_OWN_WORDS = frozenset({"product.base", "product.base_width", "product.centre_height"})
_OFF_FLOOR = re.compile(r"^\W*(?:off|above|from|high|over|up from|aff|a f f|tob|tor|toc)\b")


def _of_the_neighbour(scene: Scene, figure: Figure) -> str | None:
    """What hands the product over, or takes it, has a height: "roller conveyor, 30 inches off the ground"."""
    if not _OFF_FLOOR.match(scene.after(figure)) and not re.search(r"\b(?:at|height\W*)$", scene.before(figure)):
        return None
    if "site.before" in scene.asked:
        return "rise.infeed_height"
    return "rise.discharge_height" if "site.after" in scene.asked else None


def _bounded(scene: Scene, draft: Draft, figure: Figure) -> Draft:
    """For heights and room, "up to" and "above" are places and directions, no bounds."""
    words = scene.words(figure.begin, figure.first)
    if re.search(r"\b(?:wider|longer|deeper|taller|higher) than$", scene.words(figure.begin, figure.first)) or (
        figure.bound == "" and _COMPARED.search(scene.before(figure))
    ):
        return replace(draft, low=None, high=figure.value)
    place = draft.field in _HEIGHTS and any(phrase in words for phrase in _PLACES)
    if place and not figure.is_range and figure.bound:
        value = figure.value
        return replace(draft, low=value, high=value, start=scene.tokens[figure.first].start)
    return draft


def field_of(scene: Scene, figure: Figure, who: Travelling, down: bool, said: set[str], previous: str) -> str | None:
    """The field of one length, None where the words do not tell."""
    before, behind = scene.before(figure), scene.after(figure)
    sentence = scene.sentence_before(figure.first)
    if _THROWN.search(f"{sentence} {behind}"):
        return None
    letter = _label(scene, figure)
    if letter:
        name = _labelled(scene, figure, letter, before, behind, sentence, who, down)
        if name is not None or letter in ("w", "l", "t", "o"):
            return name
    if is_outright_rise(before, behind):
        return "rise.height"
    wider = _no_wider(before, scene.words(figure.begin, figure.first), sentence)
    if wider is not None:
        return wider
    before = _nearest(before)
    near = topic_behind(behind)
    if near == "ceiling" or (near == "" and topic_of(before) == "ceiling"):
        return "space.ceiling"
    if _ABOVE_DECK.match(behind):
        return None
    if near == "machine" and _ON_CONVEYOR.match(behind) and (comes_from(before) or goes_to(before)):
        return "rise.infeed_height" if comes_from(before) else "rise.discharge_height"
    if near == "space":
        return _along_or_across(behind)
    if near in ("opening", "machine"):
        narrow = near == "opening" and ("narrow" in sentence or _THROUGH.search(before))
        return "space.opening_width" if narrow and figure.value < _WIDE_DOOR else None
    if near in ("infeed", "discharge"):
        leaves = near == "discharge" and re.search(r"\b(?:from|off)(?: (?:a|an|the|our))?$", before)
        return "rise.infeed_height" if leaves else f"rise.{near}_height"
    if near == "high" and not re.search(r"\b(?:from|off)(?: the| a| our)?$", before):
        return "rise.infeed_height" if down and "from" in before else "rise.discharge_height"
    if joins_two_heights(behind) and _next_is_length(scene, figure):
        return "rise.infeed_height"
    if comes_from(before):
        return "rise.infeed_height"
    if goes_to(before):
        return "rise.discharge_height"
    topic = topic_of(before)
    if topic == "infeed" and "arriv" in before and "rise.infeed_height" in said:
        return "rise.discharge_height"
    if topic in ("infeed", "discharge"):
        return f"rise.{topic}_height"
    if topic in ("high", "inlow"):
        high = topic == "high"
        if is_rise(before, behind, "") and not re.search(r"\b(?:is|at|:)(?: \w+)?$", before):
            return "rise.height"
        return "rise.infeed_height" if high == down else "rise.discharge_height"
    if topic == "opening":
        return "space.opening_width" if "narrow" in before else None
    if topic in ("space", "machine"):
        return "space.width" if re.match(r"^\W*(?:apart|between)\b", behind) else None
    if is_rise(before, behind, sentence) and figure.value > 0.15:
        return "rise.height"
    if topic in ("product", ""):
        return _pair_of(scene, figure, before, sentence, previous, down, said)
    return None


_ABOVE_DECK = re.compile(
    r"^\W*(?:above|over|off|higher than|up from) (?:the |that |this |our )?(?:deck|mezzanine|platform|upper|balcony"
    r"|second|2 nd|first floor|1 st)\b"
)
"""A conveyor on a mezzanine stands above the mezzanine: its height is no rise and no height above the floor."""
_ON_CONVEYOR = re.compile(
    r"^\W*(?:high |tall )?(?:conveyor|belt|table|roller|line|bench)\b(?! (?:wide|long|width|length))"
)
_THROUGH = re.compile(r"\b(?:through|thru|via|have|got|only|just|is|a|past|into|fit|door)(?: a| an| the| our| one| only)*$")
_WIDE_DOOR = 3.7
"""A door named by one figure is named by its width: "a 36 inch door"."""
_FLOOR_ALONG = re.compile(
    r"\b(?:in|along|with) (?:the )?(?:direction of travel|travel direction|conveyor direction|flow direction|flow|line|travel"
    r"|running direction|length)\b|\blengthwise\b|\blong\b|\bin length\b"
)
_FLOOR_ACROSS = re.compile(
    r"\b(?:across|sideways|crosswise|side to side|wide|in width)\b|\bin (?:the )?(?:other|cross) direction\b"
)


def _along_or_across(behind: str) -> str | None:
    """ "9 ft of floor in the conveyor direction"; None where the words do not say which way."""
    clause = re.split(r"[,;.]", behind)[0]
    if _FLOOR_ALONG.search(clause):
        return "space.length"
    return "space.width" if _FLOOR_ACROSS.search(clause) else None


_THROWN = re.compile(r"\b(?:throw|throws|thrown|toss\w*|drop tests?|drop tested|fell off|fall off|falls off|survive\w*|dropped (?:it|them) from)\b")
_COMPARED = re.compile(r"\b(wider|longer|deeper|taller|higher) than(?: about| around| roughly)?$")
_REFUSED = re.compile(r"\b(?:no|not|can't|cannot|nothing|never|don't|shouldn't|mustn't|cant)\b")


def _no_wider(before: str, lead: str, sentence: str) -> str | None:
    """ "Can't go wider than 9 ft": the floor that the machine may take; of a product its own size."""
    text = f"{before} {lead}".strip()
    match = _COMPARED.search(text)
    if match is None or not _REFUSED.search(f"{sentence} {lead}"[-80:]):
        return None
    letter = {"wider": "w", "longer": "l", "deeper": "l", "taller": "h", "higher": "h"}[match.group(1)]
    return _PRODUCT[letter] if topic_of(sentence) == "product" else _SPACE[letter]


_LINK = re.compile(r"and|or|so|about|approx|which|is|at|of|the|a|then|but|it's|max|minimum|maximum|min|just|only|-|:")


def _nearest(before: str) -> str:
    """The words behind the last comma, where they say anything."""
    last = re.split(r"[,;(]", before)[-1]
    return last if any(word.isalpha() and not _LINK.fullmatch(word) for word in last.split()) else before


def _pair_of(
    scene: Scene, figure: Figure, before: str, sentence: str, previous: str, down: bool, said: set[str]
) -> str | None:
    """ "30 in infeed, 12 ft out": nothing here but the end of the same sentence."""
    behind = scene.after(figure)
    if (
        re.match(r"^\s*\(?(?:in|on)\b(?: |$|\)|,)", behind)
        and "rise.infeed_height" not in said
        and "out" in sentence + behind + scene.sentence_text(figure.first)
    ):
        return "rise.infeed_height"
    if re.search(r"(?:^|[,;>|] ?)in ?: ?$", before) and "out" in scene.shadow:
        return "rise.infeed_height"
    if re.search(r"(?:^|[,;>|] ?)out ?: ?$", before) and re.search(r"\bin ?:", scene.shadow):
        return "rise.discharge_height"
    if re.search(r"(?:^|[,;] ?)from ?: ?$", before) and re.search(r"(?:^|\n|[,;] ?)to ?:", scene.shadow):
        return "rise.infeed_height"
    if re.search(r"(?:^|[,;] ?)to ?: ?$", before) and re.search(r"(?:^|\n|[,;] ?)from ?:", scene.shadow):
        return "rise.discharge_height"
    if re.search(r"(?:^|[,;] ?|\bto[brc] )in(?: at)?$", before.strip()) and re.search(r"\bout\b", behind):
        return "rise.infeed_height"
    if re.search(r"(?:^|[,;] ?|\bto[brc] )out(?: at)?$", before.strip()):
        return "rise.discharge_height"
    if (
        re.match(r"^\s*\(?(?:out|off)\b(?: |$|\)|,)", behind)
        and "floor" not in behind[:12]
        and "ground" not in behind[:14]
    ):
        return "rise.discharge_height"
    return None


def _next_is_length(scene: Scene, figure: Figure) -> bool:
    at = scene.windows[id(figure)][1]
    return any(
        other.first == at or other.begin == at
        for other in scene.figures
        if other.kind == "length" and other.first >= at and other.first < at + 3
    )


def _label(scene: Scene, figure: Figure) -> str:
    letter, _ = label_behind(scene.tokens, figure.after)
    if letter:
        return letter
    if figure.end > figure.after:
        letter, _ = label_behind(scene.tokens, figure.end)
        if letter:
            return letter
    floor = scene.windows[id(figure)][0]
    letter, _ = label_before(scene.tokens, figure.begin, floor)
    if not letter:
        words = scene.before(figure)
        best = _SUPERLATIVE.search(words) or _SUPERLATIVE.match(scene.after(figure))
        if best is not None:
            return _SUPERLATIVES[best.group(1)]
        match = re.search(
            r"\b(length|width|height|depth|diameter|tall|high|wide|long|deep|thick|narrow(?:est)?)(?: (?:of|is"
            r"|the|a|an|our|each|case|box|product|tray|bag|it|are|at|about|around|approx|only|just|:|=|be|door"
            r"|doorway|opening|ceiling|infeed|discharge|would|will|crate|tote|bottle|pallet|max|maximum|and"
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


_SUPERLATIVES = {
    "tallest": "h", "highest": "h", "shortest": "h", "widest": "w", "narrowest": "w", "longest": "l", "thickest": "t",
    "thinnest": "t", "deepest": "d", "flattest": "h",
}  # fmt: skip
_SUPERLATIVE = re.compile(
    r"\W*\b(tallest|highest|shortest|widest|narrowest|longest|thickest|thinnest|deepest|flattest)\b"
    r"(?: (?:one|ones|is|are|case|box|tray|carton|bottle|bag|tote|product|at|about|around|maybe|of them|being|we|run|have|:)){0,4}\W*$"
)
_FOREIGN_BEHIND = re.compile(
    r"^\W*(?:operator|people|guy|worker|person|employee|man|forklift|truck|trailer|rack|belt|conveyor|aisle"
    r"|fence|stack|shelf)\b"
)
_FOREIGN_BEFORE = re.compile(
    r"\b(?:stack|rack|trailer|truck|forklift|operator|aisle|fence|wall|shelf|mast)\b(?: \w+){0,3} ?$"
)
_CONVEYOR_BEFORE = re.compile(
    r"\b(?:belt|conveyor|chain|roller|frame|table)\b(?: (?!case|box|tray|product)\w+){0,5} ?$"
)


def _names_a_container(scene: Scene) -> bool:
    return any(hit.field == "product.type" and hit.value for hit in scene.hits)


def _asked_room(scene: Scene, letter: str) -> str:
    """To a question about a door or the floor "11 ft high" speaks of that, where nothing else is named."""
    asked = {"opening" if "opening" in name else name.partition(".")[0] for name in scene.asked}
    if asked == {"opening"} and letter in ("w", "h", "a") and not _names_a_container(scene):
        return "opening"
    return "space" if asked == {"space"} and letter in ("w", "l", "d", "a") else ""


_CONVEYOR_SAID = re.compile(
    r"\b(?:existing|our|current|present|the|incoming|feed) (?:\w+ )?(?:belt|conveyor|chain|roller|line)\b(?:(?! case| box| tray| product"
    r"|,|;).){0,60}$"
)


def _labelled(
    scene: Scene, figure: Figure, letter: str, before: str, behind: str, sentence: str, who: Travelling, down: bool
) -> str | None:
    _, after = label_behind(scene.tokens, figure.after)
    if _FOREIGN_BEHIND.match(scene.words(after, min(after + 3, len(scene.norms)))) or _FOREIGN_BEFORE.search(before):
        return None
    if letter in ("w", "l") and (_CONVEYOR_BEFORE.search(before) or _CONVEYOR_SAID.search(sentence)):
        return None
    topic = _asked_room(scene, letter) or topic_behind(scene.words(after, min(after + 6, scene.windows[id(figure)][1]))) or topic_behind(behind)
    if not topic:
        topic = topic_of(re.split(r"[,;]", before)[-1]) or _wider_topic(before) or _wider_topic(sentence)
        topic = topic or _topic_before(scene, figure)
    if topic == "opening":
        return _OPENING.get(letter)
    if topic == "ceiling":
        return "space.ceiling" if letter == "h" else None
    if topic == "space":
        return _SPACE.get(letter)
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
    if figure.value > _LONGEST_PRODUCT:
        return None
    if letter == "a" and (who.kind in ROUND or "round" in scene.sentence_text(figure.first)):
        return "product.diameter"
    if letter == "d":
        return "product.length" if "wid" in scene.sentence_text(figure.first) else None
    return _PRODUCT.get(letter)


def _wider_topic(words: str) -> str:
    """A topic beyond the nearest comma holds for doors, rooms and ceilings only."""
    topic = topic_of(words)
    return topic if topic in ("opening", "ceiling", "space") else ""


def _topic_before(scene: Scene, figure: Figure) -> str:
    """The topic of the sentence before, where this one has none of its own."""
    at = scene.sentence_of(figure.first).first
    if at == 0:
        return ""
    earlier = scene.sentences[max(0, scene.sentence_at[figure.first] - 1)]
    topic = topic_of(scene.words(max(earlier.first, earlier.after - 25), earlier.after))
    return topic if topic == "opening" else ""


def _two_ends(scene: Scene, figure: Figure, down: bool) -> list[Draft]:
    """ "from 30 inches to 14 feet" is one range of lengths and two heights."""
    if not figure.is_range or _label(scene, figure):
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


def _plausible(name: str, figure: Figure) -> bool:
    value = abs(figure.value)
    if name.startswith("product."):
        return 0.002 <= value <= _LONGEST_PRODUCT
    if name.startswith("space.opening"):
        return 0.3 <= value <= 15
    if name == "space.ceiling":
        return 1.5 <= value <= 60
    return value <= (25 if name == "rise.infeed_height" else 60)
