"""What travels: the container that goes on the machine, among those that a message names."""

import itertools
import re
from dataclasses import dataclass, replace

from intake.reading.message.lexicon import SWALLOWED, Hit
from intake.reading.message.scene import Draft, Question, Scene

ROUND = frozenset({"bottle", "jar", "can", "canister", "drum", "keg", "pail", "tub", "jug"})
_INTO = frozenset({"in", "into", "per", "inside", "on"})
_EXPLICIT = re.compile(
    r"\b(?:what (?:goe|go|travel|ride|run|get|we (?:move|lift|convey|handle|send))|"
    r"(?:goe|go|travel|ride|run|put|sit|stand) on (?:the |your |this )?(?:machine|lift|conveyor|belt|elevator"
    r"|unit|line)|"
    r"(?:product|unit|item|load|thing) (?:to (?:be )?(?:move|moved|lift|lifted|convey|conveyed|raise|raised"
    r"|lower|lowered) )?(?:is|are|:)|"
    r"(?:we|to) (?:move|lift|convey|raise|handle|transport|elevate|lower|bring|take|get|send))\b"
)
_APART = 0.25


@dataclass(slots=True)
class Travelling:
    """`kind`: the container that travels. `mentions`: every live one. `inner`: kinds that stand inside another."""

    kind: str | None
    mention: Hit | None
    mentions: list[Hit]
    inner: frozenset[str]


def travelling(scene: Scene) -> tuple[Travelling, list[Draft | Question]]:
    """Who travels, and the fact or the doubt that comes of it."""
    named = [
        hit
        for hit in scene.hits
        if hit.field == "product.type"
        and hit.value != SWALLOWED
        and not _said_not(scene, hit)
        and not _of_else(scene, hit)
    ]
    mentions = [hit for hit in named if scene.live(hit.first)] or [
        hit for hit in named if _ours_all_the_same(scene, hit)
    ]
    if not mentions:
        return Travelling(None, None, [], frozenset()), []
    scores: dict[str, float] = {}
    inner: set[str] = set()
    for n, hit in enumerate(mentions):
        scores[hit.value] = scores.get(hit.value, 0.0) + _score(scene, hit) + (0.5 if n == 0 else 0.0)
        scores[hit.value] += 0.3
    _containment(scene, mentions, scores, inner)
    order = sorted(scores, key=lambda kind: (-scores[kind], kind))
    best = order[0]
    mention = next(hit for hit in mentions if hit.value == best)
    if (len(order) > 1 and scores[best] - scores[order[1]] < _APART) or _side_by_side(scene, mentions, best):
        other = order[1] if len(order) > 1 else best
        second = next(hit for hit in mentions if hit.value == other)
        question = Question(
            "product.type", *_place(scene, mention), "which_travels", {"first": best, "second": other},
            tuple(_draft(scene, hit) for hit in (mention, second)),
        )  # fmt: skip
        return Travelling(None, None, mentions, frozenset(inner)), [question]
    draft = _draft(scene, mention)
    if best == "carton" and any(
        hit.field == "product.surface" and hit.value == "corrugated" and scene.live(hit.first) for hit in scene.hits
    ):
        draft.value = best = "case"  # a carton of corrugated board is a shipping case
        mentions = [replace(hit, value="case") if hit.value == "carton" else hit for hit in mentions]
    return Travelling(best, mention, mentions, frozenset(inner)), [draft]


def _ours_all_the_same(scene: Scene, hit: Hit) -> bool:
    """ "The old boxes were ..., new ones ..." and "could you let the trays exit ..." name the product all the same."""
    if scene.status[hit.first] not in ("asked", "past", "other"):
        return False
    before = {scene.tokens[n].text for n in range(max(scene.sentence_of(hit.first).first, hit.first - 3), hit.first)}
    if scene.status[hit.first] == "other" or hit.value == "pallet_load":
        return "demo" in before and "ours" in scene.norms
    return bool(before & (scene.lexicon.words["determiners"] - {"your"})) or (
        hit.first > 0 and scene.tokens[hit.first - 1].kind == "number"
    )


def _of_else(scene: Scene, hit: Hit) -> bool:
    """A bucket beside a rag, buns called rolls, "tire-accessory", the "six-bottle" of a six-bottle carton."""
    text = scene.tokens[hit.first].text
    behind = scene.tokens[hit.after].text if hit.after < len(scene.tokens) else ""
    before = scene.tokens[hit.first - 1].text if hit.first else ""
    if hit.value == "pail" and any(name.startswith("cleaning.") for name in scene.asked):
        return True
    if text.startswith("roll") and hit.value == "other":
        return (
            before in scene.lexicon.words["buns"]
            or behind in ("in", "out", "over", "on", "the", "it", "them", "onto", "-")
            or (text == "roll" and before in ("we", "they", "to", "and", "can"))
        )
    if hit.value == "other" and (behind == "-" or (scene.asked and not scene.asked[0].startswith("product."))):
        return True
    if before == "-" and hit.first >= 2:
        counted = scene.tokens[hit.first - 2]
        following = any(
            other.field == "product.type" and hit.after <= other.first <= hit.after + 3 for other in scene.hits
        )
        return following and (counted.kind == "number" or counted.text in scene.lexicon.words["numbers"])
    return False


def _said_not(scene: Scene, hit: Hit) -> bool:
    """ "Bundles, not trays" denies trays; "no problem with cases" denies nothing."""
    at = hit.first - 1
    while at >= scene.sentence_of(hit.first).first and hit.first - at <= 3:
        word = scene.tokens[at].text
        if word in ("not", "no", "without", "never", "aren't", "isn't", "non"):
            return True
        if word not in (
            "a", "an", "the", "in", "any", "really", "quite", "our", "lifting", "moving", "carrying", "conveying",
            "handling", "sending", "talking", "about", "doing", "whole", "full", "single",
        ):  # fmt: skip
            return False
        at -= 1
    return False


def _draft(scene: Scene, hit: Hit) -> Draft:
    start, end = _place(scene, hit)
    return Draft("product.type", start, end, value=hit.value, at=hit.first)


def _place(scene: Scene, hit: Hit) -> tuple[int, int]:
    return scene.tokens[hit.first].start, scene.tokens[hit.after - 1].end


def _score(scene: Scene, hit: Hit) -> float:
    score = 0.0
    before = scene.sentence_before(hit.first)
    last = next(reversed([*_EXPLICIT.finditer(before)]), None)
    if last is not None and len(before) - last.end() < 60:
        score += 4.0 if last.group().startswith(("what", "goe", "go ", "ride", "travel")) else 1.0
    after = scene.words(hit.after, min(hit.after + 6, scene.sentence_of(hit.first).after))
    if re.match(r"(?:is |are )?(?:what|the one) (?:goe|go|travel|ride|get)|goe on|go on|ride|travel", after):
        score += 4.0
    if re.match(r"(?:weigh|weight|size|dimension|is \d|: ?\d|are \d|of \d+ x|, \d+|\d)", after):
        score += 1.0
    word = scene.tokens[hit.first - 1].text if hit.first else ""
    if re.match(
        r"(?:on|onto) (?:the |your |this )?(?:machine|lift|conveyor|elevator)|(?:and |, )?(?:which"
        r"|that) is what|is what",
        after,
    ):
        score += 4.0
    if word in ("each", "one", "per"):
        score += 0.6
    if word in ("single", "count", "ct", "pack"):
        score += 2.0 if word == "single" else 3.0
    sentence = scene.sentence_text(hit.first)
    if hit.value == "pallet_load" and re.search(
        r"\bafter you|\bafter that|\bafterward|\blater\b|downstream|stacked \S+ to|\bwe build\b|palleti[sz]e", sentence
    ):
        score -= 3.0
    return score + (2.0 if _counted(scene, hit) else 0.0)


def _counted(scene: Scene, hit: Hit) -> bool:
    """True where a rate counts it: 60 trays a minute."""
    return any(f.per is not None and f.first <= hit.first < f.after and scene.live(f.first) for f in scene.rate_figures)


def _containment(scene: Scene, mentions: list[Hit], scores: dict[str, float], inner: set[str]) -> None:
    """Bottles in cases, 24 to a tray, cases of 12 jars: the outer one travels."""
    for hit, following in itertools.pairwise(mentions):
        if hit.value == following.value or scene.sentence_at[hit.first] != scene.sentence_at[following.first]:
            continue
        between = [scene.tokens[n].text for n in range(hit.after, following.first)]
        if len(between) > 8 or any(word in (".", ";", "not", "but") for word in between):
            continue
        if (not between and scene.tokens[hit.after - 1].text == "of") or (
            between and between[0] in ("hold", "holds", "contain", "contains", "carries", "takes", "carry")
        ):
            outer, within = hit.value, following.value
        elif between and between[0] in ("make", "makes", "fill", "go", "form"):
            outer, within = following.value, hit.value
        elif between and between[0] == "of" and "," not in between and not any(word in _INTO for word in between):
            outer, within = hit.value, following.value
        elif following.value == "pallet_load" and "per" in between:
            continue
        elif any(word in _INTO for word in between) or _to_a(between):
            outer, within = following.value, hit.value
        else:
            continue
        scores[outer] += 3.0
        scores[within] -= 3.0
        inner.add(within)
    for hit in mentions:
        before = [scene.tokens[n].text for n in range(max(0, hit.first - 4), hit.first)]
        if hit.value != "pallet_load" and _to_a(before) and len([1 for other in mentions if other.value != hit.value]):
            scores[hit.value] += 2.0


def _to_a(words: list[str]) -> bool:
    """ "24 to a tray", "six per case"."""
    return any(a == "to" and b in ("a", "the", "each") for a, b in itertools.pairwise(words)) or ("per" in words[-2:])


def _side_by_side(scene: Scene, mentions: list[Hit], best: str) -> bool:
    """ "Cases and totes": two that travel, and one fact cannot say so."""
    for hit, following in itertools.pairwise(mentions):
        if best in (hit.value, following.value) and hit.value != following.value:
            between = [scene.tokens[n].text for n in range(hit.after, following.first)]
            if between in (["and"], ["or"], ["&"], ["/"], ["and", "some"], ["or", "maybe"], ["and", "also"]):
                return not any(_counted(scene, one) for one in (hit, following))
    return False
