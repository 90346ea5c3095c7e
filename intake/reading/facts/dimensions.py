"""Groups of lengths: the product's three figures, a door's two, the floor that the machine may take."""

import re
from dataclasses import dataclass, field

from intake.reading.amounts.figures import Figure, give_unit
from intake.reading.amounts.groups import Group
from intake.reading.amounts.size_labels import label_behind
from intake.reading.amounts.units import UNITS
from intake.reading.facts.group_units import guess_unit
from intake.reading.facts.other_groups import FOREIGN_GROUP, inner_size, of_another
from intake.reading.message.scene import Draft, Question, Scene
from intake.reading.message.topics import topic_behind, topic_of
from intake.reading.message.travelling import ROUND, Travelling

_BY_PLACE = {
    "product": ("product.length", "product.width", "product.height"),
    "space": ("space.length", "space.width", "space.ceiling"),
    "opening": ("space.opening_width", "space.opening_height"),
}
_BY_LETTER = {
    "product": {
        "l": "product.length",
        "w": "product.width",
        "h": "product.height",
        "t": "product.height",
        "o": "product.diameter",
        "a": "product.width",
    },
    "space": {"l": "space.length", "w": "space.width", "h": "space.ceiling", "d": "space.length", "a": "space.width"},
    "opening": {"w": "space.opening_width", "a": "space.opening_width", "h": "space.opening_height"},
}


_NO_PRODUCT = 1.0
"""Metres from which the first of three figures in answer to a question about room is no product's."""


@dataclass(slots=True)
class Dimensions:
    """Facts and doubts of the groups; `anchors`: the first token of each product group, for further sizes."""

    drafts: list[Draft] = field(default_factory=list)
    questions: list[Question] = field(default_factory=list)
    anchors: list[int] = field(default_factory=list)


def dimension_drafts(scene: Scene, who: Travelling) -> Dimensions:
    """Facts of all groups that speak of the need."""
    found = Dimensions()
    _cubes(scene, found)
    n = 0
    explicit = _explicit(scene)
    while n < len(scene.groups):
        group = scene.groups[n]
        n += 1
        if explicit and group.first < explicit <= scene.groups[-1].first:
            scene.use(*group.figures)
            continue
        if not scene.live(group.first) or any(id(figure) in scene.used for figure in group.figures):
            continue
        topic = _topic(scene, group)
        if topic is None:
            continue
        if topic == "product" and (inner_size(scene, group) or of_another(scene, group, who)):
            scene.use(*group.figures)
            continue
        if not group.has_unit and not guess_unit(scene, group, topic):
            _ask(scene, group, topic, found, who)
            continue
        _bound_all(group)
        pair = _spread_pair(scene, group, n)
        names = _names(group, topic, who)
        if names is None:
            continue
        drafts = [
            Draft(
                name, scene.tokens[figure.begin].start, scene.tokens[figure.end - 1].end, figure.low, figure.high,
                approx=figure.approx, at=figure.first, rank=7,
            )
            for name, figure in zip(names, group.figures, strict=True)
            if name and _fits(name, figure)
        ]  # fmt: skip
        scene.use(*group.figures)
        if pair is not None and topic == "product":
            _widen(scene, drafts, pair)
            scene.use(*pair.figures)
            n += 1
        if topic == "product" and drafts:
            found.anchors.append(group.first)
        found.drafts += drafts
    return found


def _cubes(scene: Scene, found: Dimensions) -> None:
    """ "18 in cube": three sides of one length."""
    for figure in scene.open_figures("length"):
        if scene.group_of(figure) is not None or figure.value >= _LONGEST:
            continue
        cube = _CUBE.match(scene.after(figure)) or (
            _CUBIC.search(scene.before(figure)) and not label_behind(scene.tokens, figure.after)[0]
        )
        square = _SQUARE.match(scene.after(figure)) and topic_of(scene.sentence_before(figure.first)) in ("product", "")
        if cube or square:
            names = _BY_PLACE["product"][: 3 if cube else 2]
            found.drafts += [scene.draft(name, figure, rank=6) for name in names]
            found.anchors.append(figure.first)
            scene.use(figure)


_CUBE = re.compile(
    r"^\W*(?:cubes?\b|cubed\b|cubic\b|on (?:every|each|all|a) sides?\b|(?:each|every|any) (?:way|side)\b"
    r"|all (?:round|around|three ways|ways|sides)\b)"
)
_CUBIC = re.compile(r"\b(?:cube|cubic|cubed)\b(?: \w+){0,5}\W*$")
_SQUARE = re.compile(r"^\W*(?:square\b|sq\b)(?! (?:foot|feet|ft|m|meter|metre|inch|in|area))")
_LONGEST = 2.0
_MOVES = re.compile(
    r"\bwhat (?:goe|go|travel|ride|move|get move|actually move|actually travel)|\bwe (?:actually )?move the\b"
)


def _explicit(scene: Scene) -> int:
    """The token of "what travels is": sizes named before it are of something else. 0 where it is not said."""
    for sentence in scene.sentences:
        match = _MOVES.search(scene.words(sentence.first, sentence.after))
        if match is not None and scene.live(sentence.first):
            return sentence.first + match.string[: match.start()].count(" ")
    return 0


def _bound_all(group: Group) -> None:
    """ "Max 3 x 2.5 m", "16x12x10 in max": the bound holds for all of them."""
    first, last = group.figures[0], group.figures[-1]
    bound = first.bound or last.bound
    if any(group.labels) and (first.bound != "most" or any(figure.bound for figure in group.figures[1:])):
        return
    if not (group.times or any(group.labels)) or bound not in ("most", "least"):
        return
    for figure in group.figures:
        if figure.is_range:
            continue
        value = figure.value
        figure.bound = bound
        figure.low, figure.high = (None, value) if bound == "most" else (value, None)


def _fits(name: str, figure: Figure) -> bool:
    return not name.startswith("product.") or 0.002 <= figure.value <= 6.0


_FLOOR_NOUN = re.compile(
    r"\b(?:shaft|corner|pit|hole|spot|niche|bay|floor (?:that )?(?:i|we|you) (?:can|could"
    r"|may))\b(?: [\w']+){0,8}\W*$"
)


def _topic(scene: Scene, group: Group) -> str | None:
    """product, space or opening; None where the group is none of the need (a belt, a truck)."""
    first = group.figures[0]
    before = scene.words(scene.windows[id(first)][0], group.first)
    end = scene.windows[id(group.figures[-1])][1]
    behind = topic_behind(scene.words(group.after, end))
    if behind in ("opening", "space"):
        return behind
    if behind == "machine":
        return None
    if FOREIGN_GROUP.search(before):
        return None
    if (
        len(group.figures) == 2
        and set(group.labels) <= {"l", "w", ""}
        and _FLOOR_NOUN.search(before)
        and first.value > 0.9
    ):
        return "space"
    topic = topic_of(before) or topic_of(scene.sentence_before(group.first))
    if topic in ("opening", "machine"):
        return topic if topic == "opening" else None
    if topic == "space" and len(group.figures) == 2:
        return "space" if not re.search(r"\b(?:pallet|case|box|product)\b(?:\W+\w+){0,3}$", before) else "product"
    if topic == "space" and group.figures[0].value > 2.0:
        return "space"
    if topic == "ceiling" and len(group.figures) == 2:
        return "space"
    if "footprint" in before and len(group.figures) == 2 and first.value > 1.6 and first.unit is not None:
        return "space"
    asked = {name.split(".")[0] for name in scene.asked}
    if len(group.figures) == 2 and not topic and asked == {"space"}:
        return "opening" if all("opening" in name for name in scene.asked) else "space"
    if len(group.figures) == 3 and asked == {"space"} and {"space.length", "space.ceiling"} <= set(scene.asked):
        return "space" if topic in ("", "ceiling") and group.figures[0].value > _NO_PRODUCT else "product"
    return "product"


def _ask(scene: Scene, group: Group, topic: str, found: Dimensions, who: Travelling) -> None:
    """A bare group becomes one doubt on its first field, with the readings to choose from."""
    if not group.times or any(figure.tags for figure in group.figures):
        return
    if (
        len(group.figures) == 2
        and topic == "product"
        and not (who.kind or any(n.startswith("product.") for n in scene.asked))
    ):
        return
    names = _names(group, topic, who)
    if names is None:
        return
    start, end = scene.tokens[group.figures[0].first].start, scene.tokens[group.figures[-1].after - 1].end
    options = []
    for unit in ("in", "cm", "mm") if topic == "product" else ("ft", "m", "in"):
        worth = [UNITS[unit].worth(figure.value) for figure in group.figures]
        if all(0.01 <= value <= (3.0 if topic == "product" else 40.0) for value in worth):
            options.append(Draft(names[0] or "product.length", start, end, worth[0], worth[0], at=group.first))
    found.questions.append(Question(names[0] or "product.length", start, end, "unit_of_group", {}, tuple(options)))
    scene.use(*group.figures)


def _names(group: Group, topic: str, who: Travelling) -> list[str | None] | None:
    """A field for each figure; None where the words do not tell."""
    letters = _BY_LETTER[topic]
    if topic == "product" and who.kind in ROUND:
        if "l" not in group.labels:
            letters = letters | {"a": "product.diameter"}
        if "d" in group.labels and not {"w", "l", "o"} & set(group.labels):
            group.labels = ["o" if label == "d" else label for label in group.labels]
    places = _BY_PLACE[topic]
    if any(group.labels):
        names = [letters.get(label) if label else None for label in group.labels]
        if group.labels == ["", "", "d"] and topic == "product":
            names = ["product.length", "product.width", "product.height"]
        elif "d" in group.labels and topic == "product":
            names = _depth(group.labels)
        free = [
            name
            for name in places
            if name not in names and not (name != "product.height" and "product.diameter" in names)
        ]
        for n, label in enumerate(group.labels):
            if not label and free:
                names[n] = free.pop(0)
        known = [name for name in names if name]
        return names if len(set(known)) == len(known) else None
    if topic == "product" and len(group.figures) == 2:
        if not group.times:
            return None
        if who.kind in ROUND:
            return ["product.diameter", "product.height"] if group.figures[0].value <= group.figures[1].value else None
        return ["product.length", "product.width"]
    if len(group.figures) > len(places):
        return None
    return list(places[: len(group.figures)])


def _depth(labels: list[str]) -> list[str | None]:
    """W x D x H: the depth lies along travel where no length is named, else it is the height."""
    has_length = "l" in labels
    table = {
        "l": "product.length",
        "w": "product.width",
        "h": "product.height",
        "t": "product.height",
        "o": "product.diameter",
    }
    if has_length and "h" not in labels:
        table["d"] = "product.height"
    elif has_length and "w" not in labels:
        table["d"] = "product.width"
    else:
        table["d"] = "product.length"
    return [table.get(label) for label in labels]


def _spread_pair(scene: Scene, group: Group, following: int) -> Group | None:
    """The group behind "to" or "up to": smallest to largest."""
    if following >= len(scene.groups):
        return None
    other = scene.groups[following]
    if len(other.figures) != len(group.figures) or scene.sentence_at[other.first] != scene.sentence_at[group.first]:
        return None
    between = scene.words(group.after, other.first)
    if _superlatives(scene, group, other):
        return other if other.has_unit and group.has_unit else None
    if not re.fullmatch(
        r"(?:all the way )?(?:up )?(?:to|through|thru)(?: about| around)?(?: the biggest| the largest)?(?: at)?",
        between.strip(),
    ):
        return None
    if not other.has_unit:
        unit = group.figures[-1].unit
        if unit is None:
            return None
        for figure in other.figures:
            if figure.unit is None:
                give_unit(figure, unit)
    return other


def _superlatives(scene: Scene, group: Group, other: Group) -> bool:
    """ "Biggest 20x16x14, smallest 8x6x4": the two ends of a spread."""
    words = [scene.before(one.figures[0]) for one in (group, other)]
    big = [re.search(r"\b(?:biggest|largest|max|maximum)\b", text) is not None for text in words]
    small = [re.search(r"\b(?:smallest|littlest|min|minimum)\b", text) is not None for text in words]
    return (big[0] and small[1]) or (small[0] and big[1])


def _widen(scene: Scene, drafts: list[Draft], pair: Group) -> None:
    for draft, figure in zip(drafts, pair.figures, strict=False):
        ends = [end for end in (draft.low, draft.high, figure.low, figure.high) if end is not None]
        draft.low, draft.high = min(ends), max(ends)
        draft.end = scene.tokens[figure.end - 1].end
