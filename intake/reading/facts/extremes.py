""" "The narrowest is 8 in, the widest 12": two figures that are the ends of one spread."""

import itertools
import re

from intake.reading.amounts.figures import Figure, give_unit
from intake.reading.message.scene import Scene
from intake.spec.flat import SPREAD_FIELDS

_LOW = re.compile(
    r"\b(?:smallest|littlest|lightest|narrowest|shortest|thinnest|flattest|slimmest|lowest|coldest|coolest|least"
    r"|min|minimum|skinniest|low|light ones?|small ones?|little ones?|winter|night|january|jan|february|feb"
    r"|december|dec)\b"
)
_HIGH = re.compile(
    r"\b(?:biggest|largest|heaviest|widest|longest|tallest|thickest|fattest|highest|hottest|warmest|most|max|maximum"
    r"|high|heavy ones?|big ones?|large ones?|summer|day|july|jul|august|aug|june)\b"
)
_KINDS = frozenset({"length", "mass", "temperature"})
_PLACES = re.compile(
    r"\b(?:ceiling|beam|door|doorway|opening|infeed|discharge|level|floor|end|conveyor|mezzanine|platform|rise|lift)\b"
)
_UP_TO = re.compile(r"^(?:\W*[\w']+){0,4}? ?(?:up to|all the way to|through to|thru)(?: about| around)?\W*$")
_CUT = re.compile(r"[,;]|\b(?:and|but|while|to)\b")
_FAR = 12


def join_extremes(scene: Scene) -> None:
    """Make one range of two figures where one is said to be the least and the other the most."""
    for first, second in itertools.pairwise(scene.figures):
        if second.first - first.after > _FAR or id(first) in scene.used or id(second) in scene.used:
            continue
        if first.is_range or second.is_range or scene.group_of(first) or scene.group_of(second):
            continue
        kinds = {first.kind, second.kind}
        if not (kinds <= _KINDS | {"number"} and len(kinds - {"number"}) == 1) or not scene.live(first.first):
            continue
        if scene.sentence_at[second.first] - scene.sentence_at[first.first] > 1 or not _opposed(scene, first, second):
            continue
        _join(scene, first, second)


def _opposed(scene: Scene, first: Figure, second: Figure) -> bool:
    """True where the words around the one say least and those around the other say most."""
    lead = scene.words(scene.windows[id(first)][0], first.first)[-50:]
    if (
        len(scene.asked) == 1
        and scene.asked[0] in SPREAD_FIELDS
        and _UP_TO.search(scene.words(first.after, second.first))
    ):
        return True
    between = scene.words(first.after, second.first)
    behind = re.split(r"[,;.]", scene.words(second.after, scene.windows[id(second)][1]), maxsplit=1)[0][:30]
    if _PLACES.search(f"{lead} {between}"):
        return False
    cut = next(reversed([*_CUT.finditer(between)]), None)
    near, far = (between[: cut.start()], between[cut.end() :]) if cut else ("", between)
    around = [f"{lead} | {near}", f"{far} | {behind}"]
    low, high = [_LOW.search(text) for text in around], [_HIGH.search(text) for text in around]
    return bool((low[0] and high[1] and not low[1]) or (high[0] and low[1] and not high[1]))


def _join(scene: Scene, first: Figure, second: Figure) -> None:
    """The first figure takes both ends and the words up to the second one's end."""
    if first.unit is None and second.unit is not None:
        give_unit(first, second.unit)
    elif second.unit is None and first.unit is not None:
        give_unit(second, first.unit)
    values = [value for one in (first, second) for value in (one.low, one.high) if value is not None]
    first.ends = (first.ends[0], second.ends[0])
    first.low, first.high = min(values), max(values)
    first.bound, first.approx = "", first.approx or second.approx
    first.end = second.end
    scene.use(second)
