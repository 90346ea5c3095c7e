"""A lone "up" or "down": the way of the product, or a part of another verb (set up, wash down, the label side up)."""

import re

from intake.reading.message.lexicon import Hit
from intake.reading.message.scene import Scene

_BEHIND_PLAIN = re.compile(
    r"^(?:$|[,.;:)(!&+-]|\d|(?:to|from|out|of|into|onto|on|and|a|one|two|three|by|over|about|around|roughly"
    r"|some|please|only|then|the|in|at|through"
    r"|between|again|or|for|with|as|approx|approximately|nearly|almost|another|obviously|naturally|here|there"
    r"|via|half|am|pm|all|when|where|so|because|not|past|after|before|every|each|until|once|twice|tomorrow"
    r"|today|full|empty|loaded|per|back|without|inside|that|they|we|it)\b)"
)


ALONG = re.compile(
    r"(?:the|our|a|this) (?:belt|line|road|aisle|middle|hall|corridor|street|track|conveyor)\b"
    r"|to the (?:underside|beam|ceiling|roof|truss|steel|pipe|sprinkler)"
)
_STATES = frozenset({"is", "are", "was", "were", "be", "been"})


_AHEAD_OF_A_FIGURE = frozenset(
    {
        ",", ";", ":", "(", "=", ">", "→", "|", ".", "!", "/", "+", "&",
    }
)  # fmt: skip


def bare_is_none(scene: Scene, hit: Hit) -> bool:
    """A lone "up" or "down" tells the way where a verb of moving, a product or a figure stands before it."""
    before, behind = around(scene, hit)
    if "rise.direction" in scene.asked:
        return bool(before) and before[-1] in ("-", "%") and hit.first > 1
    if not before:
        return _BEHIND_PLAIN.match(behind) is None
    last = before[-1]
    if (
        ALONG.match(behind)
        or (last in _STATES and not scene.lexicon.words["way"] & set(before))
        or scene.lexicon.words["growing"] & set(before[-4:])
    ):
        return True
    figure = next((f for f in scene.figures if f.after == hit.first), None)
    if last in ("-", "%", "'") and figure is None:
        gap = scene.tokens[hit.first].start > scene.tokens[hit.first - 1].end
        return last != "-" or not gap
    if last in scene.lexicon.words["phrasal"]:
        return True
    if any(word in scene.lexicon.words["phrasal"] for word in before[-4:]) and not any(
        word in scene.lexicon.words["travelling"] for word in before[-2:]
    ):
        return True
    if figure is not None and figure.per is not None:
        return re.match(r"^(?:\d|by \d|one |two |a |to (?!\d)|from|onto|and|,|$)", behind) is None
    if figure is not None and re.match(r"^to (?:\d|the )", behind):
        sentence = scene.sentence_of(hit.first)
        words = {scene.tokens[n].text for n in range(max(sentence.first, hit.first - 12), hit.first)}
        return not words & scene.lexicon.words["travelling"]
    if figure is not None:
        other = scene.asked and not any(name.startswith(("rise.", "space.")) for name in scene.asked)
        return figure.kind != "length" or bool(other)
    moved = [
        word
        for word in before[-6:]
        if word in scene.lexicon.words["moving"] or word in ("▲", "▼", "=", ":", ",", ";", "(", "→", ">", ".", "|")
    ]
    if last in scene.lexicon.words["moving"] or last in _AHEAD_OF_A_FIGURE:
        return _BEHIND_PLAIN.match(behind) is None
    product = any(m.field == "product.type" and m.after == hit.first for m in scene.hits)
    if product or (moved and moved[-1].isalpha()):
        bound = re.match(r"^to \d", behind) is not None and not any(
            word in scene.lexicon.words["moving"] for word in before[-4:]
        )
        return bound or _BEHIND_PLAIN.match(behind) is None
    return (
        re.match(
            r"^(?:to (?:the|our|a|level|floor|second|third|upper|lower|ground|mezz)|from|out of|onto"
            r"|into)\b",
            behind,
        )
        is None
    )


def around(scene: Scene, hit: Hit) -> tuple[list[str], str]:
    sentence = scene.sentence_of(hit.first)
    before = [scene.tokens[n].text for n in range(max(sentence.first, hit.first - 7), hit.first)]
    return before, " ".join(scene.tokens[n].text for n in range(hit.after, min(sentence.after, hit.after + 3)))
