"""Several weights in one message: net and gross, empty and full, lightest and heaviest, one weight in two units."""

import itertools
import re

from intake.reading.amounts.figures import Figure, give_unit
from intake.reading.message.scene import Draft, Scene

Weight = tuple[Figure, Draft]

_HEAVIEST = re.compile(r"\b(?:heavi(?:est|er)|biggest|largest|max|maximum|worst case|big(?: one)?|large)\b")
_LIGHTEST = re.compile(r"\b(?:light(?:est|er)?|smallest|min|minimum|little|small)\b")
_PART = re.compile(
    r"\b(?:net|tare|empt(?:y|ie|ies)|content|product only|label say|on (?:the )?label|without|alone|unladen|unloaded"
    r"|dry weight|what's inside|goods? only|fill weight|of product|inside)\b"
)
_WHOLE = re.compile(
    r"\b(?:gross|total|totals|come to|comes to|make|all in|all up|altogether|all together|together|with (?:the "
    r"|its |a )?(?:jar|lid|pallet"
    r"|box|tray|case|crate|bottle|packaging|tote|bag|drum|keg|cap)|filled|full|loaded|laden|on the scale|brim)\b|= *$"
)
_BOTH = re.compile(
    r"\b(?:both (?:travel|run|go|ride|way|direction)|come back|coming back|go back|return\w*|back down|back up"
    r"|either way)\b"
)
_ONLY_EMPTIES = re.compile(
    r"\bonly (?:the )?(?:empt\w+)(?: one)?\b|\bempt\w+ only\b|\balways (?:run |travel |go )?empty\b"
)
_WORST = re.compile(
    r"\b(?:worst|heaviest|biggest|largest|full ones?|max|heavy|filled|full|loaded|gross|weigh|weight|laden)"
    r"(?: (?:one|ones|case|is|are|at|about|of them|maybe|around|up to|it|they|being|:)){0,3}\W*$"
)
_EMPTY_BEFORE = re.compile(
    r"\b(?:empt(?:y|ie|ies)|tare|unladen)(?: (?:one|is|are|at|about|they|it|only|maybe|weigh|:)){0,3}\W*$"
)
_NAMES_A_JAR = re.compile(
    r"^\W*(?:\w+ )?(?:jar|bottle|can|tub|bag|pouch|cup|jug|pack|packet|carton|loaf|loave"
    r"|brick|block)\b"
)
_MORE_EXACT = re.compile(r"\b(?:call it|exact(?:ly)?|precisely|to be precise|make it|make that)\W*$")
_TOP = re.compile(r"\b(?:heaviest|weightiest|worst of (?:them|the \w+))\b(?: [\w']+){0,8}\W*$")


def share_mass_units(scene: Scene) -> None:
    """ "44 lb, worst one 47", "empty 2.1 kg, filled 16.4": the bare number behind has the unit of the weight before."""
    last: Figure | None = None
    for figure in scene.figures:
        if figure.kind == "mass" and figure.unit is not None:
            last = figure
        bare = (
            last is not None and figure.kind == "number" and id(figure) not in scene.used and scene.live(figure.first)
        )
        bare = bare and figure.ends[0].typed != "words"
        if not bare or last is None or last.unit is None or scene.group_of(figure) is not None:
            continue
        near = figure.first - last.after <= 10 and scene.sentence_at[figure.first] == scene.sentence_at[last.first]
        behind = re.match(
            r"^\W*(?:$|,|\.|;|\)|/|and\b|but\b|or\b|when\b|if\b|full\b|loaded\b|empty\b|max\b)", scene.after(figure)
        )
        before = scene.before(figure)
        if near and behind and (_WORST.search(before) or _EMPTY_BEFORE.search(before)) and figure.value > 0:
            give_unit(figure, last.unit)


def settled_weights(scene: Scene, weights: list[Weight]) -> list[Draft]:
    """The weights that count, as drafts: one, or one for each product size."""
    for figure, draft in weights:
        top = _TOP.search(scene.before(figure)) or re.match(
            r"^\W*(?:heaviest|is the heaviest|for the heaviest)\b", scene.after(figure)
        )
        if not figure.bound and not figure.is_range and top:
            draft.low = None
    several = len([group for group in scene.groups if len(group.figures) == 3]) > 1
    if len(weights) > 1 and not several:
        weights = _of_the_whole(scene, weights)
    kept = _once(scene, weights)
    if (
        len(kept) == 2
        and re.search(r"\bresp\b|\brespectively\b", scene.words(kept[0][0].after, kept[1][0].after + 3))
        and not several
    ):
        first, second = kept[0][1], kept[1][1]
        ends = [end for draft in (first, second) for end in (draft.low, draft.high) if end is not None]
        first.low, first.high, first.end = min(ends), max(ends), second.end
        return [first]
    if len(kept) == 2:
        joined = _ends_joined(kept[0][1], kept[1][1]) or (None if several else _lightest_and_heaviest(scene, *kept))
        if joined is not None:
            return [joined]
    return [draft for _, draft in kept]


def _of_the_whole(scene: Scene, weights: list[Weight]) -> list[Weight]:
    """Of net and gross, of empty and full, what travels: the whole, unless both travel."""
    part = [_PART.search(_around(scene, figure)) is not None for figure, _ in weights]
    whole = [_WHOLE.search(_around(scene, figure)) is not None for figure, _ in weights]
    if not any(part) or all(part):
        return weights
    empties = any(re.search(r"\bempt|tare|unladen", _around(scene, figure)) for figure, _ in weights)
    if empties and _BOTH.search(scene.words(0, min(len(scene.norms), 400))):
        first = weights[0][1]
        ends = [end for _, draft in weights for end in (draft.low, draft.high) if end is not None]
        first.low, first.high = min(ends), max(ends)
        first.end = max(draft.end for _, draft in weights)
        return weights[:1]
    if _ONLY_EMPTIES.search(scene.words(0, min(len(scene.norms), 400))):
        return [pair for pair, p in zip(weights, part, strict=True) if p]
    if any(w and not p for w, p in zip(whole, part, strict=True)):
        return [pair for pair, w, p in zip(weights, whole, part, strict=True) if w and not p]
    return [pair for pair, p in zip(weights, part, strict=True) if not p]


def _around(scene: Scene, figure: Figure) -> str:
    """The words of the figure's own clause; "net: 11 oz" and "35 lb full" alike."""
    before = re.split(r"[,;.+/]|\band\b", scene.before(figure))[-1]
    behind = re.split(r"[,;.+/=]|\band\b|\bbut\b", scene.after(figure))[0]
    behind = "" if re.match(r"^\W*\w+ ?[:=]", behind) else behind
    return f"{before[-60:]} {behind[:25]}" if before.strip() or behind.strip() else scene.before(figure)[-30:]


def _once(scene: Scene, weights: list[Weight]) -> list[Weight]:
    """A weight with its conversion, or said again more exactly, counts once."""
    kept: list[Weight] = []
    for figure, draft in weights:
        twin = next((k for _, k in kept if _same(k, draft)), None)
        if twin is None:
            kept.append((figure, draft))
        elif _MORE_EXACT.search(scene.before(figure)) and "(" not in scene.before(figure)[-12:]:
            twin.low, twin.high, twin.approx = draft.low, draft.high, draft.approx
            twin.start, twin.end = draft.start, draft.end
        elif 0 < draft.start - twin.end <= 4:
            twin.end = draft.end
    return kept


def _ends_joined(first: Draft, second: Draft) -> Draft | None:
    """ "Nothing under 450 g, nothing over 2 kg": two open ends that close each other."""
    for one, other in itertools.permutations((first, second)):
        if (
            one.low is not None
            and one.high is None
            and other.low is None
            and other.high is not None
            and one.low < other.high
        ):
            first.low, first.high, first.end = one.low, other.high, max(first.end, second.end)
            return first
    return None


def _lightest_and_heaviest(scene: Scene, first: Weight, second: Weight) -> Draft | None:
    """ "Lightest 8, heaviest 14 kg" is one spread."""
    (a, one), (b, other) = first, second
    words = scene.before(a), scene.before(b)
    light = [n for n, text in enumerate(words) if _LIGHTEST.search(text)]
    heavy = [n for n, text in enumerate(words) if _HEAVIEST.search(text)]
    if b.first - a.after >= 12 or not light or not heavy or light[0] == heavy[-1]:
        return None
    ends = sorted((one.high or one.low or 0.0, other.high or other.low or 0.0))
    one.low, one.high, one.end = ends[0], ends[1], max(one.end, other.end)
    return one


def _same(a: Draft, b: Draft) -> bool:
    pairs = ((a.low, b.low), (a.high, b.high))
    return all((x is None) == (y is None) and (x is None or y is None or abs(x - y) <= 0.02 * abs(x)) for x, y in pairs)
