"""What touches the belt: the material of the travelling container, never of what is inside it."""

import re

from intake.reading.message.denial import denied, hedged
from intake.reading.message.lexicon import SWALLOWED, Hit
from intake.reading.message.scene import Draft, Scene
from intake.reading.message.travelling import Travelling

_TOUCH = re.compile(
    r"\b(?:touch\w*|belt (?:see|sees|contact)|see|bottom|underside|outside|surface|material|contact|made (?:of"
    r"|from|out of)|base|wall|sides?)\b"
)
_LINK = re.compile(
    r"^(?:is|are|of|from|made|made of|made from|made out of|in|all|only|,|:|-|be|just|mostly|they're|it's|they"
    r" are|it is|and|those|the|with|a|clear|rigid|hard|thin|heavy|out|walled|body|bodies|round|square|plain"
    r"|standard|brown|white|reusable|returnable|stackable|nestable|\(|blue|black|empty|full|open|injection"
    r"|molded)$"
)
_LOOK_BACK = 6


def surface_drafts(scene: Scene, who: Travelling) -> list[Draft]:
    """The material as a fact, where the words tie it to what travels."""
    best: tuple[int, Hit] | None = None
    for hit in scene.hits:
        if hit.field != "product.surface" or hit.value == SWALLOWED or not scene.live(hit.first):
            continue
        if denied(scene, hit.first, hit.after) and not _only(scene, hit):
            continue
        strength = _tie(scene, hit, who)
        if strength and (best is None or strength > best[0]):
            best = strength, hit
    if best is None:
        return []
    hit = best[1]
    start, end = scene.tokens[hit.first].start, scene.tokens[hit.after - 1].end
    return [
        Draft(
            "product.surface",
            start,
            end,
            value=hit.value,
            at=hit.first,
            hedged="product.surface" in scene.asked and hedged(scene, hit.first),
        )
    ]


def _only(scene: Scene, hit: Hit) -> bool:
    return scene.tokens[hit.after].text == "only" if hit.after < len(scene.tokens) else False


_NOT_THE_OUTSIDE = re.compile(
    r"^(?:lid|cap|frame|belt|door|floor|wall(?!ed)|beam|handle|bail|label|liner|insert|strap|band|wheel"
    r"|conveyor|curtain|detector|mesh"
    r"|deck|platform|structure|roof|machine|part|chip|scrap|plate|pipe|work|plant|fibre|crown|cork|stopper|ring"
    r"|rim|foot|feet|closure"
    r"|seal|sleeve|tape|wire|grating|stair|mezzanine|column|building|guard|rail|roller|chain|sheet|line|wall of"
    r"|truck|milk stone"
    r"|card|corner|pad|divider|tray under|tie|hoop|bottom|top|base|neck|pallet|slip|waste|supplier|baler|recycling)s?\b"
)
_OF_THE_HOUSE = re.compile(
    r"\b(?:frame|roof|wall|floor|beam|column|structure|mezzanine|platform|door|ceiling|building|conveyor|finish"
    r"|construction|chassis|belt"
    r"|deck|lid|cap|handle|bail|strap|label|stair|hoist|looked at|version|painted|magnet|detector|scrap"
    r"|cleaned|washdown|guard"
    r"|liner|inside|contents?)(?:s|es)?\b"
)
_OPEN_BEHIND = re.compile(
    r"^(?:$|[^\w\s]|ø|dia\b|kind\b|sort\b|things?\b|and\b|with\b|but\b|\d|body\b|bodies\b|one\b|ones\b|so\b"
    r"|which\b|or\b|all (?:a)?round\b"
    r"|only\b|on\b|to\b|in\b|for\b"
    r"|that\b|type\b|construction\b|walled\b|material\b|side\b|outside\b|of course\b|w\b|full\b|empty\b"
    r"|capped\b|closed\b|sealed\b|wrap\b"
    r"|wrapped\b|stuff\b|thing\b|doesn't\b|slat|round\b|btw\b|obviously\b|here\b|runs?\b|they\b|we\b|about\b"
    r"|is\b|are\b|at\b|per\b|from\b|molded\b)"
)


def _tie(scene: Scene, hit: Hit, who: Travelling) -> int:
    """How surely the material is that of what travels: 0 not at all."""
    asked = "product.surface" in scene.asked
    noun = _noun_behind(scene, hit, who)
    if noun is not None and hit.value == "film" and noun in ("tray", "pallet_load", "case", "crate"):
        return 0  # what is wrapped round it is not what it stands on
    if noun is not None:
        return 3 if noun == who.kind or (who.kind is None and asked) else 0
    if any(m.first <= hit.first < m.after and m.value == who.kind for m in who.mentions):
        return 3
    sentence = scene.sentence_of(hit.first)
    behind = scene.words(hit.after, min(sentence.after, hit.after + 3))
    before = scene.words(max(sentence.first, hit.first - 5), hit.first)
    if _NOT_THE_OUTSIDE.match(behind) and not (asked and re.match(r"^(?:bottom|base|pallet|foot|feet)", behind)):
        return 0
    touches = re.search(r"\btouch|belt see|on (?:the |your )?belt|sees?\b", scene.sentence_text(hit.first)) is not None
    if not asked and (
        (_OF_THE_HOUSE.search(before) and not touches)
        or not (_OPEN_BEHIND.match(behind) or _OPEN_BEFORE.search(before))
    ):
        return 0
    if asked:
        return 2 if _TOUCH.search(scene.sentence_text(hit.first)) else 1
    return _of_the_nearest(scene, hit, who, before)


_OPEN_BEFORE = re.compile(r"(?:\b(?:is|are|from|of|they're|it's|be|made|out of|material|:|=)|[(,:=])(?: \w+)?$")


def _of_the_nearest(scene: Scene, hit: Hit, who: Travelling, before: str) -> int:
    """A material that stands alone goes with the container named last; with what travels where none is named."""
    earlier = [
        m
        for m in who.mentions
        if m.first < hit.first and 0 <= scene.sentence_at[hit.first] - scene.sentence_at[m.first] <= 2
    ]
    if earlier:
        here = [m for m in earlier if scene.sentence_at[m.first] == scene.sentence_at[hit.first]]
        near = (here or earlier)[-1]
        if near.value != who.kind:
            touches = _TOUCH.search(scene.sentence_text(hit.first)) is not None
            return 1 if touches and who.kind is not None and "belt" in scene.sentence_text(hit.first) else 0
        return 2 if here else 1
    if who.kind is not None:
        first = (
            scene.sentence_at[hit.first] == 0 or re.search(r"\b(?:they|it's|they're|material|is)\b", before) is not None
        )
        clause = hit.first == scene.sentence_of(hit.first).first
        return 1 if first or clause or before.endswith((",", ":", "=", "(")) else 0
    if who.mentions or before.endswith("+") or (scene.asked and not scene.asked[0].startswith("product.")):
        return 0
    sure = hit.value not in ("metal", "wood", "glass", "other") or hit.weight > 1 or "touch" in scene.norms
    return 1 if sure and not _other_noun(scene, hit) else (1 if hit.value == "glass" else 0)


def _other_noun(scene: Scene, hit: Hit) -> bool:
    sentence = scene.sentence_of(hit.first)
    after = scene.words(hit.after, min(hit.after + 2, sentence.after))
    return (
        re.match(r"^(?:machine|plant|divider|insert|waste|supplier|baler|recycling|sheet|box plant|pad|slip)\b", after)
        is not None
    )


_NOT_IN_ONE_NAME = frozenset(
    {
        "in", "and", "or", "to", "for", "of", "on", "so", "but", "the", "a", "is", "are", "per", "each", "with",
        "into", "from",
    }
)  # fmt: skip


def _noun_behind(scene: Scene, hit: Hit, who: Travelling) -> str | None:
    """The container that the material describes: "glass jars", "plastic milk crates"."""
    for mention in who.mentions:
        if mention.first < hit.after <= mention.after and mention.first > hit.first:
            return mention.value
        if hit.after <= mention.first <= hit.after + 2:
            between = [scene.tokens[n].text for n in range(hit.after, mention.first)]
            if all(word.isalpha() or word == "-" for word in between) and not any(
                word in _NOT_IN_ONE_NAME for word in between
            ):
                return mention.value
        if mention.first == hit.first and mention.after > hit.after:
            return mention.value
    return None
