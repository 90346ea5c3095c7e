"""Bare figures with a label: "18 inches long, 12 wide": the unit was stated once, at another length."""

import re

from intake.reading.amounts.figures import Figure, give_unit
from intake.reading.amounts.units import UNITS
from intake.reading.facts.heights import comes_from, goes_to
from intake.reading.facts.length_labels import LONGEST_PRODUCT, label_of
from intake.reading.message.scene import Scene
from intake.reading.message.topics import topic_of

_SMALL = frozenset({"in", "mm", "cm"})


def share_length_units(scene: Scene) -> None:
    """Give bare labelled figures the unit of the nearest length of a product's size."""
    measured = [figure for figure in scene.figures if figure.kind == "length" and figure.unit is not None]
    for figure in scene.figures:
        if figure.kind == "length" and figure.unit is not None and figure.unit.name == "mil" and figure.value > 5e-4:
            _as_millimetres(figure)
    if not measured:
        _told_at_the_end(scene)
        return
    _heights(scene, measured)
    for figure in scene.open_figures("number"):
        if (
            scene.group_of(figure) is not None
            or "list" in figure.tags
            or figure.value <= 0
            or not label_of(scene, figure)
        ):
            continue
        near = sorted(measured, key=lambda one: abs(one.first - figure.first))
        for one in near:
            close = abs(scene.sentence_at[one.first] - scene.sentence_at[figure.first]) <= 1
            if close and one.unit is not None and _plausible(one, figure):
                give_unit(figure, one.unit)
                break


_HEIGHTS = frozenset({"infeed", "discharge", "ceiling", "high", "inlow"})


def _heights(scene: Scene, measured: list[Figure]) -> None:
    """ "Infeed 750, discharge 6200 (mm)", "leave at 5.2 m and land at 0.8": the unit was told at the other height."""
    for figure in scene.open_figures("number"):
        if scene.group_of(figure) is not None or figure.value <= 0 or "list" in figure.tags:
            continue
        near = [one for one in measured if scene.sentence_at[one.first] == scene.sentence_at[figure.first]]
        if not near or not _BEHIND_HEIGHT.match(scene.after(figure)):
            continue
        near.sort(key=lambda one: abs(one.first - figure.first))
        unit = near[0].unit
        before = scene.before(figure)
        last = re.split(r"[,;]", before)[-1]
        told = topic_of(last) in _HEIGHTS or goes_to(before) or comes_from(before) or _LANDS.search(before)
        if unit is not None and told and 0.05 <= unit.worth(figure.value) <= 40.0:
            give_unit(figure, unit)


_BEHIND_HEIGHT = re.compile(
    r"^\W*(?:$|[,.;:)]|affl?\b|tob\b|and\b|off\b|above\b|up\b|at\b|so\b|high\b|\( ?(?:mm|m)\b|in all\b|to\b)"
)
_LANDS = re.compile(
    r"\b(?:land|arrive|end up|finish|drop|come off|leave|hand over|sit|set down|reach|stop)(?: \w+){0,3} at\W*$"
)


_ALONE = re.compile(r"(?:[,(;] ?|\ball (?:in )?|\bin )(metres|meters|mm|millimet\w+|m|feet|inches)\b ?\)?\W*$")


def _told_at_the_end(scene: Scene) -> None:
    """ "EL +1.050 to EL +4.600, metres": the unit stands by itself behind the heights."""
    for sentence in scene.sentences:
        match = _ALONE.search(scene.words(sentence.first, sentence.after))
        if match is None:
            continue
        word = match.group(1)
        unit = UNITS[
            "mm" if word.startswith(("mm", "milli")) else "ft" if word == "feet" else "in" if word == "inches" else "m"
        ]
        for figure in scene.open_figures("number"):
            inside = sentence.first <= figure.first < sentence.after and scene.group_of(figure) is None
            if inside and 0.1 <= unit.worth(abs(figure.value)) <= 60.0 and _AT_A_HEIGHT.search(scene.before(figure)):
                give_unit(figure, unit)


_AT_A_HEIGHT = re.compile(
    r"\b(?:el|elev|elevation|level|height|infeed|discharge|outfeed|at|ceiling|from|to|rise|lift)\W*(?:\+ ?)?$"
)


def _plausible(one: Figure, figure: Figure) -> bool:
    unit = one.unit
    if unit is None:
        return False
    worth = unit.worth(figure.value)
    return 0.004 <= worth <= LONGEST_PRODUCT and (unit.name in _SMALL or worth <= 3.0)


def _as_millimetres(figure: Figure) -> None:
    """In a plant "510 mil" are millimetres; thousandths of an inch are for films."""
    for end in figure.ends:
        if end.unit is None:
            return
    figure.low = None if figure.low is None else figure.low / 0.0254
    figure.high = None if figure.high is None else figure.high / 0.0254
