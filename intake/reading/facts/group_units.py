"""The unit of a group that states none: from a word beside it, or from its figures where they leave no other."""

import re

from intake.reading.amounts.figures import give_unit
from intake.reading.amounts.groups import Group
from intake.reading.amounts.units import UNITS, Unit
from intake.reading.message.scene import Scene
from intake.reading.text.tokens import VULGAR

_METRIC_FROM = 100.0
_INCH_MOST = 100.0


def guess_unit(scene: Scene, group: Group, topic: str) -> bool:
    """600x400x240 bare is millimetres; bare figures beside pounds or feet are inches; all else is asked back."""
    if any(figure.unit is not None and figure.kind != "length" for figure in group.figures):
        return False
    if topic != "product":
        return _millimetres(scene, group)
    sizes = [max(abs(end.value) for end in figure.ends) for figure in group.figures if figure.unit is None]
    if not sizes or (len(group.figures) == 2 and not group.times):
        return False
    stated = _unit_in_words(scene, group)
    if stated is not None:
        for figure in group.figures:
            if figure.unit is None:
                give_unit(figure, stated)
        return True
    metric = sum(size >= _METRIC_FROM for size in sizes) >= 2
    if max(sizes) >= 150.0 and min(sizes) >= 15.0 and metric:
        unit = UNITS["mm"]
    elif not scene.metric and max(sizes) <= _INCH_MOST and (scene.imperial or _in_fractions(scene, group)):
        unit = UNITS["in"]
    else:
        return False
    for figure in group.figures:
        if figure.unit is None:
            give_unit(figure, unit)
    return True


_UNIT_ALONE = re.compile(
    r"\b(?:(?:all|in|both|dims?|dimension|size|unit|are|obviously|are all|every)\W{0,3}(?:in )?|[\[(] ?|^\W*|[,;-] ?)"
    r"(inches|inch|mm|millimet\w+|cm|centimet\w+)\b(?: (?:both|all|obviously|each|throughout))?[\])]?"
)


def _unit_in_words(scene: Scene, group: Group) -> Unit | None:
    """ "Dims [mm]: l=210 b=148", "12x9x6 and 18x12x10, inches both": the unit said by itself."""
    first = scene.sentence_at[group.first]
    for n in (first, first + 1, first - 1):
        if not 0 <= n < len(scene.sentences):
            continue
        sentence = scene.sentences[n]
        text = " ".join(token.text for token in scene.tokens[sentence.first : min(sentence.after, sentence.first + 80)])
        match = next((m for m in _UNIT_ALONE.finditer(text) if not re.search(r"\d ?$", text[: m.start(1)])), None)
        if match is not None:
            word = match.group(1)
            return UNITS["in" if word.startswith("in") else "mm" if word.startswith("m") else "cm"]
    return None


def _millimetres(scene: Scene, group: Group) -> bool:
    """Floor or a door in bare figures of a thousand and more can only be millimetres."""
    bare = [figure for figure in group.figures if figure.unit is None]
    if not group.times or any(figure.value < 700.0 for figure in bare) or max(figure.value for figure in bare) < 1000.0:
        return False
    for figure in bare:
        give_unit(figure, UNITS["mm"])
    return True


def _in_fractions(scene: Scene, group: Group) -> bool:
    """Halves, quarters, eighths: nobody measures millimetres so."""
    first, after = group.figures[0].first, group.figures[-1].after
    return sum(token.text == "/" or token.text in VULGAR for token in scene.tokens[first:after]) >= 2
