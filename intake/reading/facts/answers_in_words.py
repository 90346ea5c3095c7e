"""Figures told without a figure: just the one size, single phase, at floor level."""

import re

from intake.reading.message.scene import Draft, Question, Scene

_ONE_SIZE = re.compile(
    r"\b(?:just|only) (?:the )?one\b|\bthe one\b|\b(?:a )?single (?:size|format|one|product|sku)\b"
    r"|\bone (?:size|format|only)\b"
    r"|\ball (?:the )?same(?: size)?\b|\bnever change|\bsame size\b|^\W*(?:one|1|single)\W*$"
)
_TWO_SIZES = re.compile(r"\b(?:a pair|both|a couple)(?: of)?(?: different)? size|\ba pair\b|^\W*a couple\W*$")


def counted_in_words(scene: Scene, fields: list[str]) -> list[Draft | Question]:
    """ "Just the one, never changes", "a pair of sizes", "just the one level"."""
    name = next((name for name in ("product.sizes", "rise.levels", "project.machines") if name in fields), None)
    if name is None or any(figure.kind == "number" and figure.value > 1 for figure in scene.figures):
        return []
    text = scene.words(0, min(len(scene.norms), 40))
    one, two = _ONE_SIZE.search(text), _TWO_SIZES.search(text)
    found = two if two and name == "product.sizes" else one
    if found is None or not scene.tokens:
        return []
    first = text[: found.start()].count(" ")
    last = min(len(scene.tokens) - 1, first + found.group().strip().count(" "))
    value = 2.0 if found is two else 1.0
    scene.use(*[f for f in scene.figures if f.kind == "number"])
    return [Draft(name, scene.tokens[first].start, scene.tokens[last].end, value, value, at=first)]


_PHASES = re.compile(r"^\W*(?:just |only |it's |we have |all |a )*(single|one|1|three|3|tri)\b(?! ?\d)")


def phases_in_words(scene: Scene, fields: list[str]) -> list[Draft | Question]:
    """ "Single", "just the three"."""
    match = _PHASES.match(scene.words(0, min(len(scene.norms), 8))) if "site.phases" in fields else None
    if match is None:
        return []
    at = match.string[: match.start(1)].count(" ")
    value = 3.0 if match.group(1) in ("three", "3", "tri") else 1.0
    scene.use(*[figure for figure in scene.figures if figure.first == at])
    return [Draft("site.phases", scene.tokens[at].start, scene.tokens[at].end, value, value, at=at)]


_FLOOR_LEVEL = re.compile(
    r"\b(?:at |on |flush with )?(?:the )?(?:floor|ground|grade) ?level\b|\bflush with floor\b"
    r"|\bright on floor\b|\bat grade\b"
)
_END_AT_FLOOR = re.compile(
    r"\b(?:(?P<i>in ?feed|inlet|comes? (?:in|on)|start\w*)|(?P<d>out ?feed|discharge|outlet|leaves?"
    r"|exits?))\b[^.,;\n\d]{0,25}?"
    r"\b(?:floor|ground|grade) level\b"
)


def floor_level_drafts(scene: Scene, said: set[str]) -> list[Draft]:
    """ "Infeed at floor level" is a height of nothing."""
    for match in _END_AT_FLOOR.finditer(scene.shadow[:20_000]):
        name = "rise.infeed_height" if match.group("i") else "rise.discharge_height"
        at = scene.token_at(match.start())
        if name not in said and at is not None and scene.live(at):
            return [Draft(name, match.start(), match.end(), 0.0, 0.0, at=at)]
    return []


def at_the_floor(scene: Scene, fields: list[str]) -> list[Draft | Question]:
    """ "Right at floor level" is a height of nothing."""
    names = [name for name in fields if name in ("rise.infeed_height", "rise.discharge_height")]
    text = scene.words(0, min(len(scene.norms), 40))
    found = _FLOOR_LEVEL.search(text)
    if len(names) != 1 or found is None or any(figure.kind == "length" for figure in scene.figures):
        return []
    first = text[: found.start()].count(" ")
    last = min(len(scene.tokens) - 1, first + found.group().strip().count(" "))
    return [Draft(names[0], scene.tokens[first].start, scene.tokens[last].end, 0.0, 0.0, at=first)]
