"""Bare figures with a label: "18 inches long, 12 wide": the unit was stated once, at another length."""

import re

from intake.reading.figures import Figure, give_unit
from intake.reading.length_labels import LONGEST_PRODUCT, label_of
from intake.reading.scene import Scene
from intake.reading.topics import topic_of
from intake.reading.units import UNITS

_SMALL = frozenset({"in", "mm", "cm"})


def share_length_units(scene: Scene) -> None:
    """Give bare labelled figures the unit of the nearest length of a product's size."""
    measured = [figure for figure in scene.figures if figure.kind == "length" and figure.unit is not None]
    for figure in scene.figures:
        if figure.kind == "length" and figure.unit is not None and figure.unit.name == "mil" and figure.value > 5e-4:
            _as_millimetres(figure)
    if not measured:
        return
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
    """ "Infeed 750, discharge 6200 (mm)": millimetres are told once for all heights of a list."""
    in_mm = [figure for figure in measured if figure.unit is not None and figure.unit.name == "mm"]
    for figure in scene.open_figures("number"):
        near = any(scene.sentence_at[one.first] == scene.sentence_at[figure.first] for one in in_mm)
        last = re.split(r"[,;]", scene.before(figure))[-1]
        if near and scene.group_of(figure) is None and 50 <= figure.value <= 40_000 and topic_of(last) in _HEIGHTS:
            give_unit(figure, UNITS["mm"])


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
