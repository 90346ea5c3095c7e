"""Counts: product sizes, pieces in a unit, levels, machines."""

import re

from intake.reading.amounts.figures import Figure
from intake.reading.message.scene import Draft, Scene
from intake.reading.message.travelling import Travelling

_SIZES = re.compile(
    r"^\W*(?:different |distinct |various |product |case |box |carton |tray |bottle |bag |main |basic |separate "
    r"|tote |crate |jar |pallet |pack |package |standard |other |single |cup |tub |can |drum |pail |outer "
    r"|carton )*(?:size|format)\b"
    r"(?! \d)"
)
_DIFFERENT = re.compile(
    r"^\W*different (?:product|case|box|boxe|carton|tray|bottle|bag|tote|jar|pouch|crate|format|dimension|kind"
    r" of case|case type|box type)s?\b"
)
_PIECES_BEHIND = re.compile(
    r"^\W*(?:\w+ ){0,2}?(?:to (?:a|the|each)|per|in (?:a|each|every)|/|a) (?:\w+ )?$|^\W*(?:\w+ ){0,3}?(?:to"
    r" (?:a|the|each)|per|in (?:a|each|every)|/) (?:\w+ )?\b"
)
_PACK_BEHIND = re.compile(r"^\W*-? ?(?:pack|count|ct|pk|up)\b")
_LEVELS = re.compile(
    r"^\W*(?:different |separate |discharge |outfeed |floor )*(?:level|floor|storey|story|stop|discharge point|exit)\b"
)
_MACHINES = re.compile(
    r"^\W*(?:of (?:them|these|those)|identical |such |new |more |vertical |spiral )*(?:machine|unit|lift"
    r"|conveyor|system|line|set|elevator|spiral)\b(?! (?:can|could|height))"
)
_WANTED = re.compile(
    r"\b(?:need|want|quote|looking for|after|buy|order|require|price for|require|send price|fob|budget for|we'd take)\b"
)


def count_drafts(scene: Scene, who: Travelling) -> list[Draft]:
    """Facts of bare counts whose noun says what is counted."""
    found: list[Draft] = []
    done: set[str] = set()
    for figure in scene.open_figures("number"):
        if figure.value == 1 and len([group for group in scene.groups if len(group.figures) == 3]) > 1:
            continue  # "one size, then change over" where several are listed
        if "list" in figure.tags or scene.group_of(figure) is not None:
            continue
        value = figure.value
        if not 1 <= value <= 500 or value != int(value) or figure.is_range:
            continue
        name = _field(scene, figure, who)
        if name is None or name in done:
            continue
        done.add(name)
        found.append(scene.draft(name, figure))
        scene.use(figure)
    return found


def _field(scene: Scene, figure: Figure, who: Travelling) -> str | None:
    behind = scene.after(figure)
    before = scene.before(figure)
    if (_SIZES.match(behind) or _DIFFERENT.match(behind)) and figure.value <= 60:
        if re.match(r"^\W*size \d", behind) or re.search(r"\bone of $", before):
            return None
        return "product.sizes"
    if (
        re.search(
            r"\b(?:size|format)s?(?: \w+){0,1} ?:(?: (?:just|only|about|there are|we have|we run))? $", before + " "
        )
        and figure.value <= 60
        and re.match(r"^\W*$", behind)
    ):
        return "product.sizes"
    if who.kind is not None and _PACK_BEHIND.match(behind) and figure.value >= 2:
        return "product.pieces"
    if who.kind is not None and figure.value >= 2 and _holds(scene, figure, who):
        return "product.pieces"
    if _LEVELS.match(behind) and re.search(r"\b(?:to|discharge|deliver|at|serve|on)\W*(?:\w+ )?$", before):
        return "rise.levels"
    if _MACHINES.match(behind) and _WANTED.search(before[-50:]) and figure.value <= 20:
        return "project.machines"
    return None


def _holds(scene: Scene, figure: Figure, who: Travelling) -> bool:
    """ "24 to a tray", "6 jars per case", "cases of 12"."""
    text = scene.words(figure.after, min(figure.after + 6, scene.sentence_of(figure.first).after))
    kinds = "|".join(sorted({scene.norms[hit.first] for hit in who.mentions if hit.value == who.kind}))
    if not kinds:
        return False
    if re.match(
        rf"^\W*(?:x )?(?:\w+ ){{0,3}}?(?:to (?:a|the|each)|per|in (?:a|each|every)|/) (?:\w+ )?(?:{kinds})\b", text
    ):
        return not re.match(r"^\W*\w+ (?:minute|hour)", text)
    before = scene.sentence_before(figure.first)
    return re.search(rf"\b(?:{kinds}) of $", before + " ") is not None
