"""What touches the belt: the material of the travelling container, never of what is inside it."""

import re

from intake.reading.denial import denied, hedged
from intake.reading.lexicon import SWALLOWED, Hit
from intake.reading.scene import Draft, Scene
from intake.reading.travelling import Travelling

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


def _tie(scene: Scene, hit: Hit, who: Travelling) -> int:
    """How surely the material is that of what travels: 0 not at all."""
    noun = _noun_behind(scene, hit, who)
    asked = "product.surface" in scene.asked
    if noun is not None:
        if who.kind is None and asked:
            return 3
        if who.kind == noun:
            return 3
        return 0
    sentence = scene.sentence_of(hit.first)
    text = scene.sentence_text(hit.first)
    overlapping = any(m.first <= hit.first < m.after and m.value == who.kind for m in who.mentions)
    if overlapping:
        return 3
    touches = _TOUCH.search(text)
    before = [m for m in who.mentions if sentence.first <= m.first < hit.first]
    if before:
        near = before[-1]
        between = [scene.tokens[n].text for n in range(near.after, hit.first)]
        linked = len(between) <= _LOOK_BACK and all(
            _LINK.match(word) or (word in scene.lexicon.known and False) for word in between
        )
        if linked:
            return 2 if near.value == who.kind else 0
        if touches and (near.value == who.kind or len({m.value for m in before}) == 1):
            return 2
        opens = hit.first > sentence.first and scene.tokens[hit.first - 1].text in (",", "-", ";", "(")
        if asked or (opens and {m.value for m in before} == {who.kind}):
            return 1
        return 1 if hit.value in ("corrugated",) and who.kind == "case" else 0
    if touches or asked:
        return (
            2 if re.search(r"\b(?:belt|touch|bottom|underside|surface|made|material|outside)\b", text) or asked else 0
        )
    clause = scene.words(max(sentence.first, hit.first - 4), min(sentence.after, hit.after + 3))
    if (
        re.search(r"\b(?:they|they're|it's|these|product|all)\b", clause)
        and who.kind is not None
        and len({m.value for m in who.mentions}) == 1
    ):
        return 1
    alone = hit.after - hit.first >= sentence.after - sentence.first - 2
    if alone and hit.value in ("corrugated", "paperboard", "film"):
        return 1
    return (
        1
        if hit.value == "corrugated" and who.kind in ("case", None) and not before and not _other_noun(scene, hit)
        else 0
    )


def _other_noun(scene: Scene, hit: Hit) -> bool:
    sentence = scene.sentence_of(hit.first)
    after = scene.words(hit.after, min(hit.after + 2, sentence.after))
    return (
        re.match(r"^(?:machine|plant|divider|insert|waste|supplier|baler|recycling|sheet|box plant|pad|slip)\b", after)
        is not None
    )


def _noun_behind(scene: Scene, hit: Hit, who: Travelling) -> str | None:
    """The container that the material describes: "glass jars", "plastic milk crates"."""
    for mention in who.mentions:
        if mention.first < hit.after <= mention.after and mention.first > hit.first:
            return mention.value
        if hit.after <= mention.first <= hit.after + 2:
            between = [scene.tokens[n].text for n in range(hit.after, mention.first)]
            if all(word.isalpha() or word == "-" for word in between) and not any(
                word
                in (
                    "in",
                    "and",
                    "or",
                    "to",
                    "for",
                    "of",
                    "on",
                    "so",
                    "but",
                    "the",
                    "a",
                    "is",
                    "are",
                    "per",
                    "each",
                    "with",
                    "into",
                    "from",
                )
                for word in between
            ):
                return mention.value
        if mention.first == hit.first and mention.after > hit.after:
            return mention.value
    return None
