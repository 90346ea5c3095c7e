"""Whether a word of a choice speaks of its field at all: the room, and not the soup; the frame, and not the keg."""

import re

from intake.reading.message.lexicon import Hit
from intake.reading.message.scene import Scene
from intake.reading.message.travelling import Travelling

CLEANING = re.compile(
    r"\b(?:clean\w*|wash\w*|wip\w+|hos\w+|rins\w+|sanit\w+|hygien\w+|spray\w*|foam\w*|scrub\w*|swept|sweep"
    r"|vac|vacuum\w*|brush\w*|chem\w*|detergent|soap|regime|caustic|acid|lye|broom|hoover\w*|mop\w*|rag|damp"
    r"|cloth|towel"
    r"|dust|descaler|blow\w*|blown|jet\w*|pressure|cip|steam|cln|crew goes|flour|audit|knocks?|dry brush\w*"
    r"|water|gun|foamed)\b"
)
_ROOM = re.compile(
    r"\b(?:room|area|hall|plant|warehouse|department|building|environment|zone|space|side|storage|section|dock"
    r"|facility|ambient|temperature)\b"
)
_ELSEWHERE = re.compile(
    r"\b(?:from|out of|to|into|toward|next to|outside|after|before|leave|leaving|beside|past|feeding|onto|near"
    r"|not in|behind|adjacent to|off)(?: \w+){0,2} $"
)


def fits(scene: Scene, name: str, hit: Hit, who: Travelling) -> bool:
    """Does the sentence speak of this field at all?"""
    if name in scene.asked or (name.startswith("cleaning.") and any(a.startswith("cleaning.") for a in scene.asked)):
        return True
    if name == "temperature.zone" and "temperature.room" in scene.asked and hit.value == "hot":
        return False
    if name == "space.passage" and hit.value == "none" and _bound_to_figure(scene, hit):
        return False
    if name == "cleaning.frame" and _of_product(scene, hit, who):
        return False
    if name == "temperature.zone" and "temperature.product" in scene.asked and hit.weight < 2 and len(scene.tokens) < 5:
        return False
    text = scene.sentence_text(hit.first)
    if name in ("cleaning.frequency", "cleaning.chemicals"):
        earlier = scene.sentences[max(0, scene.sentence_at[hit.first] - 1)]
        context = (
            text
            if name == "cleaning.frequency"
            else f"{text} {scene.words(earlier.first, min(earlier.after, earlier.first + 60))}"
        )
        rest = re.sub(rf"\b{re.escape(scene.words(hit.first, hit.after))}\b", " ", context)
        strong = hit.weight >= 2 or hit.value == "caustic_or_acid"
        if name == "cleaning.chemicals" and re.search(r"foam|wash|rins|clean", scene.words(hit.first, hit.after)):
            return True
        return CLEANING.search(rest) is not None or (name == "cleaning.chemicals" and strong and "chemical" in text)
    if name == "cleaning.method":
        word = scene.words(hit.first, hit.after)
        weak = word in (
            "vacuum", "brush", "sweep", "rag", "sponge", "broom", "hose", "rinse", "air hose", "no water", "dusted",
        )  # fmt: skip
        rest = text.replace(word, " ", 1)
        return not weak or CLEANING.search(rest) is not None or "hosed" in text or "rinsed" in text
    if name == "temperature.zone":
        return _zone_here(scene, hit)
    if name in ("product.closed", "product.rigidity", "product.fill", "handling.fragile"):
        return _of_what_travels(scene, hit, who)
    if name == "rate.arrival" or name == "product.mix":
        return hit.weight >= 2
    return True


def _bound_to_figure(scene: Scene, hit: Hit) -> bool:
    """ "Nothing under 450 g", "nothing fits under the joists"."""
    behind = scene.words(hit.after, min(len(scene.norms), hit.after + 3))
    return re.match(r"^(?:\d|the (?:joist|beam|truss|ceiling|pipe|roof)|joist|beam)", behind) is not None


def _of_product(scene: Scene, hit: Hit, who: Travelling) -> bool:
    """A keg in stainless is no frame."""
    text = scene.words(hit.first, hit.after)
    if re.search(
        r"frame|machine|conveyor|construction|build|paint|coat|need|must|want|insist|please|only"
        r"|required|chassis",
        text,
    ):
        return False
    sentence = scene.sentence_of(hit.first)
    about = scene.words(max(sentence.first, hit.first - 8), min(sentence.after, hit.after + 5))
    return not re.search(r"\b(?:frame|machine|conveyor|construction|build|lift|chassis|equipment|it)\b", about) and any(
        0 <= hit.first - m.after < 8 and m.first >= sentence.first for m in who.mentions
    )


def _zone_here(scene: Scene, hit: Hit) -> bool:
    """The room that the machine stands in, not the one that product comes from, nor chilled soup."""
    sentence = scene.sentence_of(hit.first)
    before = scene.words(max(sentence.first, hit.first - 4), hit.first) + " "
    word = scene.tokens[hit.first].text
    ahead = scene.words(hit.after, min(sentence.after, hit.after + 8))
    if re.match(
        r"^(?:(?:is |are )?(?:next door|upstairs|downstairs)|where (?:these|they|it)|next door|later|downstream"
        r"|two block|on the other)",
        ahead,
    ):
        return False
    if any(f.kind == "temperature" and hit.after <= f.first <= hit.after + 4 for f in scene.figures) and word in (
        "room", "rm", "temperature",
    ):  # fmt: skip
        return False
    opens = hit.first == sentence.first and _ROOM.match(ahead) is not None
    if opens:
        return True
    if _ELSEWHERE.search(before) or (hit.weight == 1 and word == "frozen"):
        return False
    after = scene.words(hit.after, min(sentence.after, hit.after + 1))
    text = scene.sentence_text(hit.first)
    if hit.weight == 1 and word in ("chilled", "refrigerated", "ambient"):
        stands = (
            after == ""
            or not after[0].isalpha()
            or _ROOM.search(after) is not None
            or after in ("at", "and", "but", "about", "year", "around")
        )
        return stands and (
            _ROOM.search(text) is not None
            or re.search(r"\b(?:is|it's|in|stand|machine|:|environment|we're|be|all)\b|, $", before) is not None
        )
    return True


def _of_what_travels(scene: Scene, hit: Hit, who: Travelling) -> bool:
    """False where the nearest container is one that stands inside another: "capped bottles in trays"."""
    if not who.inner or not who.mentions:
        return True
    sentence = scene.sentence_of(hit.first)
    near = [m for m in who.mentions if sentence.first <= m.first < sentence.after]
    if not near:
        return True
    nearest = min(near, key=lambda m: (min(abs(m.first - hit.after), abs(hit.first - m.after)), m.first))
    return nearest.value not in who.inner
