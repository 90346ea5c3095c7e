"""People correct themselves: "40... sorry, 45". The later figure takes the earlier one's place and meaning."""

import re

from intake.reading.amounts.figures import Figure, give_unit
from intake.reading.message.lexicon import Hit
from intake.reading.message.scene import Scene

_NO_CORRECTION_AFTER = frozenset(
    [
        "for", "to", "about", "if", "i", "we", "but", "the", "it", "that", "my", "this", "you", "your", "to", "so",
        "not", "because", "no",
    ]
)  # fmt: skip
_WEAK = frozenset(
    {
        "actually", "wait", "rather", "er", "err", "make it", "should be", "hold on", "hang on", "nope", "pardon",
        "excuse me",
    }
)  # fmt: skip
_BEFORE_NO = frozenset({",", ".", "-", "hm", "hmm", "um", "uh", "oh", "er", "erm", "ah", ";"})
_FAR = 12


def apply_corrections(scene: Scene) -> bool:
    """Let later figures replace the ones they correct; True when the message corrects itself or an earlier answer."""
    cues = _cues(scene)
    corrected = False
    for first, after, words in cues:
        if not scene.live(first):
            continue
        corrected = _figures(scene, first, after) or _hits(scene, first, after) or corrected
        opens = first <= 2 and (words not in _WEAK or words == "actually")
        strong = words not in _WEAK and _is_strong(scene, first, after)
        if (
            opens
            and (after < len(scene.tokens))
            and (strong or words == "actually")
            and scene.tokens[after].text not in ("for", "about")
        ):
            corrected = True
    _not_this(scene)
    return corrected


def _cues(scene: Scene) -> list[tuple[int, int, str]]:
    """Where a correction is announced: tokens and words, longest phrase first at each place."""
    by_first: dict[str, list[tuple[str, ...]]] = {}
    for words in scene.lexicon.lists.get("correct", ()):
        by_first.setdefault(words[0], []).append(words)
    found: list[tuple[int, int, str]] = []
    at = 0
    while at < len(scene.tokens):
        for words in by_first.get(scene.tokens[at].text, ()):
            than = at + len(words) < len(scene.tokens) and scene.tokens[at + len(words)].text == "than"
            if tuple(token.text for token in scene.tokens[at : at + len(words)]) == words and not than:
                found.append((at, at + len(words), " ".join(words)))
                at += len(words) - 1
                break
        else:
            use = _use_instead(scene, at)
            if use:
                found.append((at, at + use, "make it"))
                at += use
                continue
            plain_no = scene.tokens[at].text == "no" and at and scene.tokens[at - 1].text in _BEFORE_NO
            if (
                plain_no
                and at + 1 < len(scene.tokens)
                and (scene.tokens[at + 1].kind == "number" or scene.tokens[at + 1].text == ",")
            ):
                found.append((at, at + 1, "no"))
        at += 1
    return found


_INSTEAD = (("but", "use"), ("just", "use"), ("go", "with"), ("better", "use"), ("please", "use"), ("please", "take"))


def _use_instead(scene: Scene, at: int) -> int:
    """ "345 mm but use 350", "a bit over 7 m, say 7.2": how many tokens announce the better figure, 0 for none."""
    words = tuple(token.text for token in scene.tokens[at : at + 2])
    rough = words == (",", "say") and any(f.end == at and (f.approx or f.bound) for f in scene.figures)
    if words not in _INSTEAD and not rough:
        return 0
    follows = next((f for f in scene.figures if f.begin in (at + 1, at + 2) or f.first == at + 2), None)
    closes = follows is not None and re.match(r"^\W*(?:$|,|\.|;|and\b|that's\b)", scene.after(follows)) is not None
    return 2 if closes else 0


def _is_strong(scene: Scene, first: int, after: int) -> bool:
    following = scene.tokens[after].text if after < len(scene.tokens) else ""
    return following not in _NO_CORRECTION_AFTER or following in ("it", "that", "the", "i")


def _figures(scene: Scene, first: int, after: int) -> bool:
    earlier = [
        f
        for f in scene.figures
        if f.end <= first and first - f.end <= _FAR and scene.live(f.first) and id(f) not in scene.used
    ]
    later = [f for f in scene.figures if f.begin >= after - 1 and f.begin - after <= 6]
    if not earlier or not later:
        return False
    new = later[0]
    group = scene.group_of(new)
    if group is not None and group.figures[0] is new:
        return _group(scene, group.figures, earlier)
    same = [f for f in reversed(earlier) if f.kind == new.kind and f.kind != "number"]
    old = same[0] if same else (earlier[-1] if new.kind == "number" else None)
    if old is None and earlier[-1].kind == "number" and new.kind in ("rate", "mass", "length"):
        old = earlier[-1]
    if old is None or (old.kind == "number" and new.kind == "number" and not scene.asked):
        return False
    if new.unit is None and old.unit is not None:
        behind = scene.after(new)
        if re.match(r"^\W*(?:machine|people|line|size|shift|week|day|phase|x |percent|%)", behind):
            return False
        give_unit(new, old.unit)
        if new.per is not None:
            new.per = old.per
    _replace(scene, old, new)
    return True


def _group(scene: Scene, new: list[Figure], earlier: list[Figure]) -> bool:
    last = earlier[-1]
    old_group = scene.group_of(last)
    if old_group is None or len(old_group.figures) != len(new):
        return False
    for old, now in zip(old_group.figures, new, strict=True):
        if now.unit is None and old.unit is not None:
            give_unit(now, old.unit)
        _replace(scene, old, now)
    return True


def _replace(scene: Scene, old: Figure, new: Figure) -> None:
    """The old figure keeps its place among the words and takes the new one's value and span."""
    old.ends, old.unit, old.kind, old.low, old.high = new.ends, new.unit, new.kind, new.low, new.high
    old.begin, old.end, old.approx, old.bound = new.begin, new.end, new.approx, new.bound
    if new.per is not None and old.per is not None and not new.per.noun:
        new.per = old.per if new.unit == old.unit else new.per
    old.per = new.per
    scene.use(new)


def _hits(scene: Scene, first: int, after: int) -> bool:
    """ "Cases, sorry, trays": the choice before the cue is taken back."""
    later = {hit.field: hit for hit in scene.hits if after <= hit.first <= after + 5 and hit.value}
    gone: list[Hit] = []
    for hit in scene.hits:
        if (
            hit.field in later
            and hit.after <= first
            and first - hit.after <= _FAR
            and hit.value
            and hit.value != later[hit.field].value
        ):
            gone.append(hit)
    scene.hits = [hit for hit in scene.hits if hit not in gone]
    return bool(gone)


def _not_this(scene: Scene) -> None:
    """ "Not 40 lb": a figure that is denied is none of the need."""
    for figure in scene.figures:
        before = [scene.tokens[n].text for n in range(max(0, figure.begin - 3), figure.begin)]
        if before[-1:] in (["not"], ["isn't"], ["aren't"], ["never"]) or before[-2:] in (
            ["not", "the"],
            ["not", "at"],
            ["not", "a"],
            ["instead", "of"],
            ["rather", "than"],
            ["not", "your"],
            ["isn't", "the"],
        ):
            scene.use(figure)
