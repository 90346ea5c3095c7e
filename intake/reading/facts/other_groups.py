"""Groups of lengths that are no size of what travels: inside dimensions, labels, pallets that come later."""

import re

from intake.reading.amounts.groups import Group
from intake.reading.message.scene import Scene
from intake.reading.message.travelling import Travelling


def of_another(scene: Scene, group: Group, who: Travelling) -> bool:
    """ "48 x 40 in pallets, but that's after you": the noun right behind names something that does not travel."""
    if who.kind is None or len(scene.groups) < 2:
        return False
    near = [hit for hit in who.mentions if group.after <= hit.first <= group.after + 1]
    return bool(near) and near[0].value != who.kind and scene.tokens[group.after].text not in (",", ".", ";")


_INSIDE = re.compile(
    r"\b(?:inside|internal|inner|usable inside|interior|i ?\.? ?d)\b(?:(?! outside| external| outer).){0,40}$"
)
_OUTSIDE = re.compile(r"\b(?:outside|external|outer|exterior|overall|over the|o ?\.? ?d|outside size)\b")


def inner_size(scene: Scene, group: Group) -> bool:
    """Inside dimensions, where outside ones are told as well."""
    before = scene.words(scene.windows[id(group.figures[0])][0], group.first)
    if len(scene.groups) < 2 or _INSIDE.search(before) is None:
        return False
    return _OUTSIDE.search(scene.words(0, min(len(scene.norms), 400))) is not None


FOREIGN_GROUP = re.compile(
    r"\b(?:platform|printed label|label (?:is|size|measure)|sticker|blank|layer|sheet|poster|screen|cabinet"
    r"|cage|lift car|trailer|truck|shelf|drawing"
    r"|graphics?|nameplate|window cutout)\b(?: \w+){0,5}\W*$"
)
