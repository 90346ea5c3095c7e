"""Which field a length belongs to: by its label, by what it speaks of, by the question asked; else by none."""

import re
from dataclasses import replace

from intake.reading.amounts.figures import Figure
from intake.reading.facts.floor import COMPARED, along_or_across, no_wider
from intake.reading.facts.heights import comes_from, goes_to, is_outright_rise, is_rise, joins_two_heights
from intake.reading.facts.length_labels import LONGEST_PRODUCT, label_of, labelled_field
from intake.reading.facts.two_heights import ABOVE_DECK, two_ends, two_heights
from intake.reading.message.scene import Draft, Scene
from intake.reading.message.topics import topic_behind, topic_of
from intake.reading.message.travelling import Travelling
from intake.spec.vocabulary import vocabulary

_HEIGHTS = ("rise.infeed_height", "rise.discharge_height", "rise.height", "space.ceiling")
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
        ends = (
            [] if _one_length_asked(scene) and not scene.asked[0].startswith("rise.") else two_ends(scene, figure, down)
        )
        if ends:
            found += ends
            scene.use(figure)
            continue
        if _above_the_deck(scene, figure, found):
            scene.use(figure)
            continue
        name = field_of(scene, figure, who, down, {draft.field for draft in found}, previous)
        if _asked_instead(scene, figure, name):
            continue  # a base or a centre of gravity has no words of its own: it is what was asked
        if name is None:
            name = _of_the_neighbour(scene, figure)
        if name is None:
            continue
        if not _plausible(name, figure):
            continue
        previous = name
        scene.use(figure)
        rank = 6 if name in _ENDS and _EXPLICIT.search(f"{scene.before(figure)} {scene.after(figure)[:20]}") else 5
        found.append(_bounded(scene, scene.draft(name, figure, rank=rank), figure))
    if not any(draft.field == "rise.height" for draft in found):
        found += two_heights(scene, found, down)
    _in_the_order_asked(scene, found, down)
    return found


def _in_the_order_asked(scene: Scene, found: list[Draft], down: bool) -> None:
    """Asked for both ends, "31 inches off the floor, 4.2 m" is in and out, in that order."""
    ends = {draft.field: draft for draft in found if draft.field in _ENDS}
    if len(ends) < 2 or not set(scene.asked) >= _ENDS or down or any(draft.rank > 5 for draft in ends.values()):
        return
    first, second = ends["rise.infeed_height"], ends["rise.discharge_height"]
    if second.at < first.at and not _TOLD_ENDS.search(scene.words(0, min(len(scene.norms), 40))):
        first.field, second.field = second.field, first.field


_ENDS = frozenset({"rise.infeed_height", "rise.discharge_height"})
_EXPLICIT = re.compile(r"\b(?:in ?feed|out ?feed|discharge)\b")
"""Words that name the end itself: they outrank a mezzanine or a top."""


def _above_the_deck(scene: Scene, figure: Figure, found: list[Draft]) -> bool:
    """ "Deck at 3.4 m, conveyor 0.8 m above deck": the discharge is the sum; True where it was taken so."""
    if not ABOVE_DECK.match(scene.after(figure)) or figure.is_range or figure.value > 2.5:
        return False
    deck = next((draft for draft in found if draft.field == "rise.discharge_height" and draft.low == draft.high), None)
    if deck is None or deck.low is None or abs(scene.sentence_at[deck.at] - scene.sentence_at[figure.first]) > 1:
        return False
    deck.low = deck.high = deck.low + figure.value
    deck.end = scene.tokens[figure.end - 1].end
    return True


def _one_length_asked(scene: Scene) -> bool:
    return len(scene.asked) == 1 and scene.asked[0] in vocabulary() and vocabulary()[scene.asked[0]].unit == "m"


def _asked_instead(scene: Scene, figure: Figure, name: str | None) -> bool:
    """True where a lone length answers the one field asked, though its words would make it another one."""
    if not _one_length_asked(scene) or name == scene.asked[0]:
        return False
    asked = scene.asked[0]
    lone = sum(f.kind == "length" and scene.live(f.first) for f in scene.figures) == 1
    text = scene.sentence_text(figure.first)
    if asked in _OWN_WORDS:
        return (lone and (name is None or not name.startswith("space."))) or (
            not label_of(scene, figure) and (name is None or not name.startswith("space."))
        )
    if not lone or name is None:
        return False
    if asked == "product.diameter":
        return name == "product.width" or name.startswith("rise.")
    if asked.startswith("product."):
        return name.startswith("rise.") and _HEIGHT_WORDS.search(text) is None
    if asked.startswith("rise.") and name.startswith("rise."):
        return _OTHER_END[asked].search(text) is None
    return asked.startswith("space.") and name.startswith(("product.", "rise.")) and not _names_an_end(text)


_HEIGHT_WORDS = re.compile(
    r"\b(?:in ?feed|discharge|out ?feed|mezzanine|conveyor|lift|raise|floor|platform|upstairs)\b"
)
_OUT_WORDS = (
    r"discharge|out ?feed|outlet|leave|upstairs|mezzanine|upper|exit|come off|get off|delivery"
    r"|destination|palletizer|out at|goe out"
)
_IN_WORDS = (
    r"in ?feed|inlet|enter|come in|come on|get on|start|packer|incoming|feed|downstairs|lower (?:level|floor|conveyor)"
)
_OTHER_END = {
    "rise.infeed_height": re.compile(rf"\b(?:{_OUT_WORDS}|net|difference|total rise)\b"),
    "rise.discharge_height": re.compile(rf"\b(?:{_IN_WORDS}|net|difference|total rise|above (?:the )?in ?feed)\b"),
    "rise.height": re.compile(rf"\b(?:{_OUT_WORDS}|{_IN_WORDS}|from)\b"),
}


_TOLD_ENDS = re.compile(rf"\b(?:{_OUT_WORDS}|{_IN_WORDS}|from|to|top|bottom|in|out|down|upper|lower)\b")


def _names_an_end(text: str) -> bool:
    return re.search(rf"\b(?:{_OUT_WORDS}|{_IN_WORDS}|box|case|tray|product|tote|carton|bottle)\b", text) is not None


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
    if re.search(
        r"\b(?:wider|longer|deeper|taller|higher|narrower|shorter) than$", scene.words(figure.begin, figure.first)
    ) or (figure.bound == "" and COMPARED.search(scene.before(figure))):
        if re.search(r"\b(?:narrower|shorter) than\b", f"{scene.before(figure)} {words}"):
            return replace(draft, low=figure.value, high=None)
        if draft.field == "space.ceiling":
            return replace(draft, low=figure.value, high=figure.value)
        return replace(draft, low=None, high=figure.value)
    refused = re.match(r"(?:no|not|never|nothing)\b", words) is not None
    place = draft.field in _HEIGHTS and not refused and any(phrase in words for phrase in _PLACES)
    if place and not figure.is_range and figure.bound:
        value = figure.value
        return replace(draft, low=value, high=value, start=scene.tokens[figure.first].start)
    return draft


def field_of(scene: Scene, figure: Figure, who: Travelling, down: bool, said: set[str], previous: str) -> str | None:
    """The field of one length, None where the words do not tell."""
    before = _TOP_OF_BELT.sub("", _own_words(scene, figure).replace(" - ", " "))
    behind = scene.after(figure)
    sentence = scene.sentence_before(figure.first).replace(" - ", " ")
    if _THROWN.search(f"{sentence} {behind}"):
        return None
    if re.search(r"[↑↗⬆↓↘⬇] ?$", before):
        return "rise.height"
    letter = label_of(scene, figure)
    if letter:
        name = labelled_field(scene, figure, letter, before, behind, sentence, who, down)
        if name is not None or letter in ("w", "l", "t", "o"):
            return name
    if is_outright_rise(before, behind):
        return "rise.height"
    wider = no_wider(before, scene.words(figure.begin, figure.first), sentence)
    if wider is not None and topic_of(before) not in ("infeed", "discharge"):
        return wider
    before = _nearest(before)
    near = topic_behind(behind)
    if _TO_A_LINTEL.match(behind):
        return "space.opening_height"
    if near == "ceiling" and re.match(r"^\W*clear\b", behind) and topic_of(before) == "opening":
        return "space.opening_width" if "space.opening_width" not in said else "space.opening_height"
    if near == "ceiling" or (near in ("", "machine", "space") and topic_of(before) == "ceiling"):
        return "space.ceiling"
    if ABOVE_DECK.match(behind):
        return None
    if _OPENS_INFEED.match(before):
        return "rise.infeed_height"
    if _ON_PLACE.search(before) and re.search(r"\b(?:from|off)\b", sentence):
        return "rise.discharge_height"
    if _FIRST_FLOOR.search(before) and figure.value > 1.8 and not _FROM_FLOOR.search(before):
        return "rise.discharge_height"
    if _STACKED.search(before) and figure.value <= LONGEST_PRODUCT:
        return "product.height"
    if near == "machine" and _ON_CONVEYOR.match(behind) and (comes_from(before) or goes_to(before)):
        return "rise.infeed_height" if comes_from(before) else "rise.discharge_height"
    if _ON_CONVEYOR.match(behind) and re.search(r"\b(?:on|onto|to|into) (?:a|an|the|our)\W*$", before):
        return "rise.discharge_height"
    if near == "space":
        return along_or_across(behind)
    if near in ("opening", "machine"):
        narrow = near == "opening" and ("narrow" in sentence or _THROUGH.search(before))
        return "space.opening_width" if narrow and figure.value < _WIDE_DOOR else None
    if near in ("infeed", "discharge"):
        leaves = near == "discharge" and re.search(r"\b(?:from|off)(?: (?:a|an|the|our))?$", before)
        return "rise.infeed_height" if leaves else f"rise.{near}_height"
    if near == "inlow":
        return "rise.discharge_height" if down else "rise.infeed_height"
    if near == "high" and not re.search(r"\b(?:from|off)(?: the| a| our)?$", before):
        return "rise.infeed_height" if down and "from" in before else "rise.discharge_height"
    if (
        joins_two_heights(behind)
        and _next_is_length(scene, figure)
        and not (figure.value >= _RISE_FROM and is_rise(before, "", ""))
    ):
        return "rise.infeed_height"
    if _BY.search(before) and _MOVED.search(sentence):
        return "rise.height"
    if re.search(r"(?:^|[,;:-] ?)on at$", before.strip()) and re.search(r"\boff\b", behind):
        return "rise.infeed_height"
    if re.search(r"(?:^|[,;:-] ?)off at$", before.strip()) and "rise.infeed_height" in said:
        return "rise.discharge_height"
    if comes_from(before):
        return "rise.infeed_height"
    if goes_to(before):
        return "rise.discharge_height"
    topic = topic_of(before)
    if topic in ("", "product") and _OFF_FLOOR.match(behind) and topic_of(sentence) in ("infeed", "discharge"):
        topic = topic_of(sentence)
    if _BY.search(before) and _MOVED.search(sentence):
        return "rise.height"
    if _IN_ALL.search(before) and _MOVED.search(sentence):
        return "rise.height"
    if topic == "infeed" and "arriv" in before and "rise.infeed_height" in said:
        return "rise.discharge_height"
    if topic in ("infeed", "discharge"):
        moved = is_rise(before, "", "") and not re.search(r"\b(?:is|at|:)(?: \w+)?\W*$", before)
        return "rise.height" if moved and not comes_from(before) else f"rise.{topic}_height"
    if topic in ("high", "inlow"):
        high = topic == "high"
        if is_rise(before, behind, "") and not re.search(r"\b(?:is|at|:)(?: \w+)?$", before):
            return "rise.height"
        return "rise.infeed_height" if high == down else "rise.discharge_height"
    if topic == "opening":
        return "space.opening_width" if "narrow" in before else None
    if topic in ("space", "machine"):
        if re.match(r"^\W*(?:apart|between)\b", behind):
            return "space.width"
        return along_or_across(re.split(r"[;.]", before)[-1].replace(",", " ")) if topic == "space" else None
    if is_rise(before, behind, sentence) and figure.value > 0.15:
        return "rise.height"
    if topic in ("product", ""):
        return _pair_of(scene, figure, before, sentence, previous, down, said)
    return None


_ON_CONVEYOR = re.compile(
    r"^\W*(?:high |tall )?(?:conveyor|belt|table|roller|line|bench)\b(?! (?:wide|long|width|length))"
)
_ON_PLACE = re.compile(r"\b(?:on|onto|to|into) (?:the|a|an|our) (?:[\w-]+ ){1,4}\( ?(?:at |about |approx )?$")
_BY = re.compile(r"\bby(?: about| around| some| roughly| approx| only| just| a| another)*\W*$")
_MOVED = re.compile(
    r"\b(?:up|down|upward|downward|lift\w*|raise\w*|climb\w*|lower\w*|drop\w*|descend\w*|elevate\w*|rise\w*|brought)\b"
)
_OPENS_INFEED = re.compile(r"^\W*(?:the |our )?(?:in ?feed|inlet|intake)\b(?!.*\b(?:out ?feed|discharge|from)\b)")
_TO_A_LINTEL = re.compile(r"^\W*(?:up )?to (?:the |its )?(?:lintel|door head|top of (?:the )?(?:door|frame|opening))\b")
_RISE_FROM = 2.0
""" "Up 9 ft to the deck at 12 ft" is a rise; "up 30 in to 12 ft" comes from a conveyor of that height."""
_TOP_OF_BELT = re.compile(r"\btop of (?:the )?(?:belt|roller|chain|conveyor)\b(?: (?:at|is))? ?")
_IN_ALL = re.compile(r"\b(?:total(?: of)?|in total|altogether|all told|all in all)\W*$")
_FIRST_FLOOR = re.compile(
    r"\b(?:to|in|on|onto|into) (?:the |our )?(?:first|1 st|1|second|2 nd|upper|next|top) (?:floor|level|storey"
    r"|story)\b[^,;]{0,25}$"
)
_FROM_FLOOR = re.compile(r"\b(?:from|off|difference|distance|rise)\b[^,;]{0,25}$")
_STACKED = re.compile(
    r"\b(?:stack\w*|loaded|load height|goods?|built up)\b(?: [\w']+){0,5}\W*$(?<!discharge)(?<!infeed)"
)
_THROUGH = re.compile(
    r"\b(?:through|thru|via|have|got|only|just|is|a|past|into|fit|door)(?: a| an| the| our"
    r"| one| only)*$"
)
_WIDE_DOOR = 3.7
"""A door named by one figure is named by its width: "a 36 inch door"."""


def _own_words(scene: Scene, figure: Figure) -> str:
    """The words before a figure, without those up to a comma that say what the figure before it is."""
    before = scene.before(figure)
    at = scene.order.get(id(figure), 0)
    if not at or not re.search(r", ?$", before):
        return before
    earlier = scene.figures[at - 1]
    same = scene.sentence_at[earlier.first] == scene.sentence_at[figure.first]
    return "" if same and earlier.kind == "length" and topic_behind(before.rstrip(", ")) else before


_THROWN = re.compile(
    r"\b(?:throw|throws|thrown|toss\w*|drop tests?|drop tested|fell off|fall off|falls off"
    r"|survive\w*|dropped (?:it|them) from)\b"
)
_LINK = re.compile(
    r"and|or|so|about|approx|which|is|at|of|the|a|then|but|it's|max|minimum|maximum|min|just|only|say|call"
    r"|maybe|roughly|-|:"
)


def _nearest(before: str) -> str:
    """The words behind the last comma, where they say anything."""
    if re.search(r": ?$", before):
        return before  # a heading counts whole
    last = re.split(r"[,;(]", before)[-1]
    told = any(word.isalpha() and not _LINK.fullmatch(word) for word in last.split())
    return last if told and (topic_of(last) or topic_of(before) not in ("ceiling", "opening")) else before


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
    if re.match(r"^\W*in ?:", before) and re.search(r"\bout ?:", scene.shadow):
        return "rise.infeed_height"
    if re.match(r"^\W*out ?:", before) and re.search(r"\bin ?:", scene.shadow):
        return "rise.discharge_height"
    if re.search(r"(?:^|[,;>|] ?)in ?: ?$", before) and "out" in scene.shadow:
        return "rise.infeed_height"
    if re.search(r"(?:^|[,;>|] ?)out ?: ?$", before) and re.search(r"\bin ?:", scene.shadow):
        return "rise.discharge_height"
    if re.search(r"(?:^|[,;] ?)from ?: ?$", before) and re.search(r"(?:^|\n|[,;] ?)to ?:", scene.shadow):
        return "rise.infeed_height"
    if re.search(r"(?:^|[,;] ?)to ?: ?$", before) and re.search(r"(?:^|\n|[,;] ?)from ?:", scene.shadow):
        return "rise.discharge_height"
    if re.search(r"(?:^|[,;:] ?|\bto[brc] )in(?: at| @)?$", before.strip()) and re.search(r"\bout\b", behind):
        return "rise.infeed_height"
    if re.search(r"(?:^|[,;:] ?|\bto[brc] )out(?: at| @)?$", before.strip()):
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


def _plausible(name: str, figure: Figure) -> bool:
    value = abs(figure.value)
    if name.startswith("product."):
        return 0.002 <= value <= LONGEST_PRODUCT
    if name.startswith("space.opening"):
        return 0.3 <= value <= 15
    if name == "space.ceiling":
        return 1.5 <= value <= 60
    return value <= (25 if name == "rise.infeed_height" else 60)
