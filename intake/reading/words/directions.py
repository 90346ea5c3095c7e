"""Up, down or both: said in words, never taken from two heights."""

import itertools
import re

from intake.reading.message.denial import denied, hedged
from intake.reading.message.lexicon import SWALLOWED, Hit
from intake.reading.message.plain import plain
from intake.reading.message.scene import Draft, Question, Scene
from intake.reading.words.levels import journey
from intake.reading.words.moving import ALONG, around, bare_is_none

_LIFT_VERB = re.compile(
    r"\b(?:to|must|need|we|they|it|can|should|will|would|and|please|be|being|get|got|has to|have to|you) (?:be"
    r" )?(?:lift|lifted)\b|\blift(?:ing)? (?:it|them|these|those|our|the (?:case|box|boxe|tray|product|carton"
    r"|bottle|bag|tote|pallet)|\d|case|box|tray|product|carton|bottle|tote|bag|pallet|crate|keg|drum|full|up)\b"
)
_GAIN_VERB = re.compile(r"\b(?:to|must|they|it|and|also) gain(?:s|ing)? (?:about |some |around |another )*\d")
_DROP_VERB = re.compile(
    r"\b(?:to|must|need|we|they|it|will|would|and) (?:be )?drop(?:ped)? (?:\d|it|them|down|from|to|by|about)"
    r"|\b(?:net )?drop (?:is|of|:|=) (?:about |some |only |roughly |just |~ )?\d|\d (?:'|ft|foot|feet|m|meter"
    r"|metre|in|\"|inch) drop\b|\bto (?:be"
    r" )?drop(?:ped)?\b|\bnet drop\b|\bdrop (?:about |by "
    r"|of |a |some |another )*\d"
)
_LOWER_VERB = re.compile(
    r"\b(?:to|must|need|we|be|being|and|then|have|please) lower(?:ed)?\b(?! level| floor| deck| conveyor| end|"
    r" one| line)"
)
_UP_TO_FIGURE = re.compile(r"\bup to (?:about |around |maybe |~ |like )?$")
_PLACE_BEFORE = frozenset({"from", "off", "the", "an", "a", "our"})
_BOTH = re.compile(r"\bup\b.{1,60}\b(?:down|back)\b|\bdown\b.{1,60}\bup\b")


def direction_drafts(scene: Scene) -> list[Draft | Question]:
    """The direction as a fact, or the doubt between two."""
    asked = "rise.direction" in scene.asked
    hits = [
        hit for hit in scene.hits if hit.field == "rise.direction" and hit.value != SWALLOWED and scene.live(hit.first)
    ]
    hits = [hit for hit in hits if not _no_direction(scene, hit) and not _is_denied(scene, hit)]
    found: list[tuple[str, int, int, int]] = [
        (hit.value, hit.first, scene.tokens[hit.first].start, scene.tokens[hit.after - 1].end) for hit in hits
    ]
    found += _verbs(scene) + _journeys(scene)
    if not found:
        return []
    found.sort(key=lambda item: item[2])
    values = {value for value, *_ in found}
    if "both" in values:
        chosen = next(item for item in found if item[0] == "both")
    elif values == {"up", "down"}:
        opening = {item[0] for item in found if scene.sentence_at[item[1]] == scene.sentence_at[found[0][1]]}
        aside = re.search(r"\b(?:another|second|later|other|some day|next year)\b", scene.sentence_text(found[-1][1]))
        if asked and len(opening) == 1 and aside is not None:
            item = found[0]
            return [Draft("rise.direction", item[2], item[3], value=item[0], at=item[1])]
        if asked or _returns(scene, found):
            first, last = found[0], found[-1]
            return [Draft("rise.direction", first[2], last[3], value="both", at=first[1])]
        strong = _strongest(scene, found)
        if strong is None:
            first = found[0]
            other = next(item for item in found if item[0] != first[0])
            options = tuple(Draft("rise.direction", i[2], i[3], value=i[0], at=i[1]) for i in (first, other))
            return [Question("rise.direction", first[2], first[3], "up_or_down", {}, options)]
        chosen = strong
    else:
        chosen = found[0]
    value, at, start, end = chosen
    return [Draft("rise.direction", start, end, value=value, at=at, hedged=asked and hedged(scene, at))]


def _is_denied(scene: Scene, hit: Hit) -> bool:
    """ "Down, not up" denies what stands behind the "not", never what stands before it."""
    behind = [token.text for token in scene.tokens[hit.after : hit.after + 2]]
    if behind[:1] == ["not"] and behind[-1] in ("up", "down", "upward", "downward", "upwards", "downwards"):
        return False
    return denied(scene, hit.first, hit.after)


_QUICK = re.compile(r"stairs|\bfrom\b|\boff\b|out of|leave|between|->|→|higher|lower|above|below|further|\bto\b")


def _journeys(scene: Scene) -> list[tuple[str, int, int, int]]:
    """Places named in order, and ends of which one lies above the other."""
    if _QUICK.search(scene.shadow) is None:
        return []
    found: list[tuple[str, int, int, int]] = []
    for sentence in scene.sentences:
        if not 1 < sentence.after - sentence.first <= 150:
            continue
        for value, first, after in journey(plain(scene, sentence.first, sentence.after)):
            if scene.live(first) and scene.live(after - 1) and not denied(scene, first, first + 1):
                found.append((value, first, scene.tokens[first].start, scene.tokens[after - 1].end))
    return found


def _no_direction(scene: Scene, hit: Hit) -> bool:
    """ "Up to 40 a minute" and "down to 34 F" are bounds; "the upper level" is a place."""
    words = [scene.tokens[n].text for n in range(hit.first, min(hit.first + 3, len(scene.tokens)))]
    if words[0] in ("up", "down", "dn", "dwn") and hit.after == hit.first + 1 and bare_is_none(scene, hit):
        return True
    if scene.tokens[hit.after - 1].text in ("up", "down") and hit.after - hit.first > 1:
        before_it, behind_it = around(scene, hit)
        if ALONG.match(behind_it) or scene.lexicon.words["growing"] & set(before_it[-3:]):
            return True
    before = scene.tokens[hit.first - 1].text if hit.first else ""
    if before == "-" and hit.first >= 2 and scene.tokens[hit.first - 2].kind == "number":
        return True  # a 4-up case
    if words[:2] in (["up", "to"], ["down", "to"]) or (words[0] in ("up", "down") and hit.weight == 1):
        following = next((f for f in scene.figures if f.first >= hit.first and f.first <= hit.first + 8), None)
        inside = next((f for f in scene.figures if f.begin <= hit.first < f.end), None)
        figure = inside or following
        if (
            words[1:2] == ["to"]
            and figure is not None
            and (figure.kind != "length" or (scene.group_of(figure) is not None))
        ):
            near = figure.first - hit.first <= 4
            if near and not (figure.kind == "number" and "rise" in " ".join(scene.asked)):
                return True
        if words[1:2] == ["to"] and figure is not None and figure.kind == "length" and figure.first - hit.first <= 3:
            behind = scene.after(figure)
            if re.match(r"^\W*(?:long|wide|tall|deep|thick|in diameter|l\b|w\b|h\b)", behind):
                return True
    if words[0].startswith("drop") and "rise.direction" not in scene.asked:
        near = any(f.kind == "length" and hit.first <= f.first <= hit.after + 4 for f in scene.figures)
        if not near and "down" not in words:
            return True
    if words[0] == "upstairs" or words[0] == "downstairs":
        if "rise.direction" not in scene.asked and not any(
            word in scene.lexicon.words["moving"] and word not in ("is", "are", "one", "the", "be")
            for word in around(scene, hit)[0][-4:]
        ):
            return True
        return before in ("the", "from", "one", "an") or (
            hit.first >= 2 and scene.tokens[hit.first - 2].text in ("from", "off")
        )
    if hit.value == "up" and before == "from":
        return True
    return hit.weight == 1 and words[0] in ("up", "down") and before in ("what's", "whats", "an", "the")


def _verbs(scene: Scene) -> list[tuple[str, int, int, int]]:
    """Lift, drop and lower where they are verbs."""
    found: list[tuple[str, int, int, int]] = []
    for n, sentence in enumerate(scene.sentences):
        text = scene.words(sentence.first, sentence.after)
        if not ("lift" in text or "gain" in text or "drop" in text or "lower" in text):
            continue
        for pattern, stem, value in (
            (_LIFT_VERB, "lift", "up"),
            (_GAIN_VERB, "gain", "up"),
            (_DROP_VERB, "drop", "down"),
            (_LOWER_VERB, "lower", "down"),
        ):
            match = pattern.search(text)
            if match is None:
                continue
            at = next((k for k in range(sentence.first, sentence.after) if scene.norms[k].startswith(stem)), None)
            count = text[: match.start()].count(" ")
            at = next((k for k in range(sentence.first + count, sentence.after) if scene.norms[k].startswith(stem)), at)
            cold = any(f.kind == "temperature" and 0 <= f.first - (at or 0) <= 4 for f in scene.figures)
            if at is not None and scene.live(at) and not cold and not denied(scene, at, at + 1):
                found.append((value, at, scene.tokens[at].start, scene.tokens[at].end))
        del n
    return found


def _returns(scene: Scene, found: list[tuple[str, int, int, int]]) -> bool:
    """Both in one sentence with "and", "back", "then" between: it must go both ways."""
    for first, second in itertools.pairwise(found):
        if first[0] != second[0] and scene.sentence_at[first[1]] == scene.sentence_at[second[1]]:
            between = scene.words(first[1] + 1, second[1])
            if re.search(
                r"\b(?:back|then|other times|return|sometimes|or|morning|afternoon|evening|night|am|pm|empty"
                r"|empties|day)\b",
                f"{between} {scene.words(second[1], second[1] + 4)}",
            ) or between.strip() in (
                "and",
                "or",
                "/",
            ):
                return True
    return False


_MOVES = re.compile(
    r"\b(?:need|must|have to|has to|go|goe|going|come|coming|take|bring|move|get|send|want|needs|convey|transfer"
    r"|carry)(?: \w+){0,4} $"
)


def _strongest(scene: Scene, found: list[tuple[str, int, int, int]]) -> tuple[str, int, int, int] | None:
    """The one that a verb of need carries, where only one is."""
    strong = [item for item in found if _MOVES.search(scene.sentence_before(item[1]) + " ")]
    values = {item[0] for item in strong}
    return strong[0] if len(values) == 1 else None
