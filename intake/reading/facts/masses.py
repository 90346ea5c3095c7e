"""Weights of what travels, and squeeze limits, which people also give in pounds."""

import re

from intake.reading.amounts.figures import Figure
from intake.reading.amounts.units import UNITS
from intake.reading.facts.weights import settled_weights, share_mass_units
from intake.reading.message.scene import Draft, Question, Scene
from intake.reading.message.travelling import ROUND, Travelling

_SQUEEZE = re.compile(
    r"\b(?:squeez\w*|grip\w*|clamp\w*|pinch\w*|side pressure|side force|(?:a|per|each|either|on each|on the|one"
    r"|both|its|their|by the|from the|the) sides?|press|push|lateral\w*|crush\w*|force|dent\w*|mark\w*|pressing)\b"
)
_SIDE_BEHIND = re.compile(
    r"^\W*(?:of )?(?:\w+ )?(?:a|per|each|either|on each|on a|on one|on either|/) ?side\b|^\W*(?:of )?(?:squeeze"
    r"|side (?:pressure|force)|grip|clamp)"
)
_BEFORE_DAMAGE = re.compile(
    r"^\W*(?:of \w+ )?(?:before|until|till) (?:it|they|the \w+|we see|you see|anything|they're) ?(?:\w+ )?"
    r"(?:dent|crush|mark|burst|leak|pop|break|collapse|deform|buckle|crack|give|cave)"
)
_OTHER_MASS = re.compile(
    r"\b(?:floor load|floor loading|floor rating|slab|capacity|payload|rated|truck|trailer|machine weigh|machine"
    r" weight|crane|hoist|forklift|beam|operators?|courier|carrier charge|postal|by law|legal\w*|regulation"
    r"|osha|per its plate|name ?plate|mezzanine (?:hold|load|rating)|rack|"
    r"(?:per|a|an|each|every) (?:day|week|shift|year|hour|month|season)|tonnage|postage|freight|shipping weight"
    r" of the machine|steel plate|roll of film|net content|net weight of|fill weight|recipe|batch|silo|tank)\b"
)
_FLOW_BEHIND = re.compile(
    r"^\W*(?:of \w+ )?(?:\w+ )?(?:per|a|an|each|every|/) ?(?:day|week|shift|year|hour|hr|h|month|season|minute"
    r"|min|annum|square|sq|foot|ft|m|meter)\b"
)
_TESTED = frozenset({"test.squeeze_mark", "test.grip_slip"})
_ASKED_FORCES = _TESTED | {"handling.squeeze_limit"}
_MASS_MOST = 3000.0


def mass_drafts(scene: Scene, who: Travelling) -> list[Draft | Question]:
    """Facts of all masses and forces that speak of the need."""
    share_mass_units(scene)
    weights: list[tuple[Figure, Draft]] = []
    found: list[Draft | Question] = []
    for figure in [*scene.open_figures("mass"), *scene.open_figures("force")]:
        before, behind = scene.before(figure), scene.after(figure)
        if figure.kind == "force" or _is_squeeze(scene, figure, who, before, behind):
            draft = _squeeze(scene, figure, before)
            if draft is not None:
                found.append(draft)
                scene.use(figure)
            continue
        if _of_either(scene, figure, who, before, behind):
            found.append(_whose(scene, figure, who))
            scene.use(figure)
            continue
        if not _is_weight(scene, figure, who, before, behind):
            continue
        scene.use(figure)
        if figure.unit is not None and figure.unit.name == "ton":
            found.append(_which_ton(scene, figure))
            continue
        weights.append((figure, scene.draft("product.weight", figure)))
    weights.sort(key=lambda pair: pair[0].first)
    return found + settled_weights(scene, weights)


def _is_squeeze(scene: Scene, figure: Figure, who: Travelling, before: str, behind: str) -> bool:
    if _SIDE_BEHIND.match(behind) or _BEFORE_DAMAGE.match(behind):
        return True
    if _container_behind(scene, figure, who) is not None:
        return False
    if _ASKED_FORCES.intersection(scene.asked) and not re.search(r"\bweigh", before):
        return True
    return _SQUEEZE.search(before[-60:]) is not None and not re.search(r"\bweigh|\bhandle|\bcase|\bbox", before[-30:])


def _squeeze(scene: Scene, figure: Figure, before: str) -> Draft | None:
    behind = scene.after(figure)
    context = scene.sentence_text(figure.first)
    if figure.kind == "force" and not (
        _SQUEEZE.search(context) or _ASKED_FORCES.intersection(scene.asked) or _SIDE_BEHIND.match(behind)
    ):
        return None
    tested = next((name for name in scene.asked if name in _TESTED), None)
    draft = scene.draft(tested or "handling.squeeze_limit", figure)
    if figure.kind == "mass" and figure.unit is not None:
        per_kg = UNITS["kgf"].factor
        draft.low = None if draft.low is None else draft.low * per_kg
        draft.high = None if draft.high is None else draft.high * per_kg
    if tested and figure.bound:
        draft.low = draft.high = draft.high if draft.high is not None else draft.low
    if "limit" in before[-40:] or figure.bound == "most" or (figure.bound == "least" and _HARMS.search(context)):
        # the most that it bears is the limit itself
        value = draft.high if draft.high is not None else draft.low
        draft.low = draft.high = value
    return draft


def _is_weight(scene: Scene, figure: Figure, who: Travelling, before: str, behind: str) -> bool:
    if not 0 < figure.value <= _MASS_MOST or _FLOW_BEHIND.match(behind):
        return False
    clause = re.split(r"[,;]", before)[-1]
    if _OTHER_MASS.search(clause) or re.match(
        r"^\W*(?:floor|capacity|payload|truck|crane|rating|per (?:day|week))", behind
    ):
        return False
    if _ROLLS.match(behind) and who.kind is not None:
        return False
    if (
        re.search(r"\b(?:hold|contain|filled with|full of)(?: \w+)? $", before + " ")
        or _counted_content(scene, figure)
        or _INSIDE.match(behind)
    ):
        return False
    kind = _container_behind(scene, figure, who)
    if kind in ROUND and figure.unit is not None and figure.unit.name == "oz" and not re.search(r"\bweigh", before):
        return False  # 12 oz cans: a container's size
    if kind is not None and who.kind is not None and kind != who.kind:
        return False
    if kind is None and who.kind is not None:
        near = _container_before(scene, figure, who)
        if near is not None and near != who.kind and near in who.inner:
            return False
    return True


_EACH = re.compile(r"^\W*(?:each|apiece|a piece|per piece|ea|per unit)\b")


_ROLLS = re.compile(r"^\W*(?:roll|reel|bale|ream|batch|sheet)s?\b")
_DAMAGE = re.compile(
    r"\b(?:dent|mark|crease|crush|scuff|buckle|damage|deform|break|burst|leak|split)\w*\b[^.;]{0,40}\b(?:above"
    r"|over|beyond|past|from)\b"
)
_HARMS = re.compile(r"\b(?:dent|mark|crease|crush|scuff|buckle|damage|deform|break|burst|leak|split|crumple|cave)\w*\b")
_INSIDE = re.compile(
    r"^\W*of [\w']+(?: [\w']+)? (?:inside|in it|in them|in each|in the (?:jar|bottle|bag|tub|can|box))\b"
)


def _of_either(scene: Scene, figure: Figure, who: Travelling, before: str, behind: str) -> bool:
    """ "Trays of jars, 6 kg each": of the tray or of the jar?"""
    if who.kind is None or not 0 < figure.value <= _MASS_MOST or not _EACH.match(behind) or "weigh" in before:
        return False
    near = _container_before(scene, figure, who)
    return near is not None and near != who.kind and near in who.inner


def _whose(scene: Scene, figure: Figure, who: Travelling) -> Question:
    draft = scene.draft("product.weight", figure)
    words = {"outer": who.kind or "", "inner": _container_before(scene, figure, who) or ""}
    return Question("product.weight", draft.start, draft.end, "whose_weight", words, (draft,))


def _counted_content(scene: Scene, figure: Figure) -> bool:
    """24 x 12 oz, 12 ct 16 oz, 24/500 g: what one piece inside holds."""
    at = scene.order.get(id(figure), 0)
    if not at:
        return False
    earlier = scene.figures[at - 1]
    between = [scene.tokens[n].text for n in range(earlier.after, figure.first)]
    joined = all(word in ("x", "/", "ct", "count", "pack", "pk", "-", "*", "of") for word in between)
    return earlier.kind == "number" and earlier.value >= 2 and 0 < len(between) <= 3 and joined


def _container_behind(scene: Scene, figure: Figure, who: Travelling) -> str | None:
    """The container right behind the figure: "500 g jars", "50# bags", "40 lb each case"."""
    for hit in who.mentions:
        if figure.after <= hit.first <= figure.after + 3:
            words = [scene.tokens[n].text for n in range(figure.after, hit.first)]
            if not any(word in (",", ".", ";", "and", "(", "to", "in", "at", "from") for word in words):
                return hit.value
    return None


def _container_before(scene: Scene, figure: Figure, who: Travelling) -> str | None:
    sentence = scene.sentence_of(figure.first)
    near = [hit for hit in who.mentions if sentence.first <= hit.first < figure.first]
    return near[-1].value if near else None


def _which_ton(scene: Scene, figure: Figure) -> Question:
    """A ton is 2,000 lb in the US and 1,000 kg elsewhere."""
    start, end = scene.tokens[figure.begin].start, scene.tokens[figure.end - 1].end
    options = []
    for unit in ("short_ton", "t"):
        value = UNITS[unit].worth(figure.ends[-1].value)
        options.append(Draft("product.weight", start, end, value, value, at=figure.first))
    return Question("product.weight", start, end, "which_ton", {}, tuple(options))
