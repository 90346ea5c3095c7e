"""The words that say which side a length is: L, wide, tall, along travel, the other way."""

from intake.reading.text.tokens import Token

LABELS = {
    "oal": "l", "loa": "l", "l": "l", "length": "l", "long": "l", "lg": "l", "lengthwise": "l", "len": "l",
    "longs": "l",
    "w": "w", "wide": "w", "width": "w", "wd": "w", "across": "a", "breadth": "w", "broad": "w",
    "h": "h", "high": "h", "height": "h", "tall": "h", "ht": "h", "hgt": "h",
    "d": "d", "deep": "d", "depth": "d", "thick": "t", "thickness": "t",
    "länge": "l", "laenge": "l", "breite": "w", "höhe": "h", "hoehe": "h", "longueur": "l", "largeur": "w",
    "hauteur": "h",
    "largo": "l", "ancho": "w", "alto": "h", "lengte": "l", "breedte": "w", "hoogte": "h", "lunghezza": "l",
    "larghezza": "w", "altezza": "h", "durchmesser": "o", "diamètre": "o", "diametro": "o", "comprimento": "l",
    "largura": "w", "altura": "h", "längd": "l", "bredd": "w", "höjd": "h",
    "b": "w", "t": "t", "stands": "h", "thk": "t",
    "dia": "o", "diam": "o", "diameter": "o", "ø": "o", "round": "o", "od": "o", "diametre": "o",
}  # fmt: skip
"""Label word -> l, w, h, d (depth), t (thickness), o (diameter)."""
_LONG_WAY = (
    ("l", ("long", "way")), ("l", ("long", "side")), ("l", ("end", "to", "end")), ("l", ("front", "to", "back")),
    ("w", ("short", "way")), ("w", ("short", "side")),  ("w", ("other", "side")), ("h", ("off", "belt")),
    ("l", ("de", "long")), ("w", ("de", "large")), ("h", ("de", "haut")), ("h", ("in", "height")), ("w", ("in",
    "width")),
    ("l", ("in", "length")), ("o", ("in", "diameter")), ("o", ("across", "top")), ("h", ("top", "to", "bottom")),
)  # fmt: skip
_ALONG = (
    ("in", "direction", "of", "travel"), ("in", "travel", "direction"), ("flow", "dir", "."), ("flow", "dir"),
    ("flow", "direction"), ("along", "travel"), ("along", "conveyor"), ("along", "direction", "of", "travel"),
    ("way", "it", "travels"), ("way", "they", "travel"), ("with", "flow"), ("in", "line"), ("in", "flow",
    "direction"),
    ("along", "line"), ("along", "belt"), ("travel",), ("along", "wall"), ("in", "conveyor", "direction"),
    ("lengthwise",), ("in", "running", "direction"),
)  # fmt: skip
_ACROSS = (
    ("sideways",), ("crosswise",), ("cross",), ("across", "travel"), ("across", "it"), ("other", "way"), ("across",
    "line"), ("across", "belt"), ("side", "to", "side"),
    ("across", "flow"), ("across", "direction", "of", "travel"),
)  # fmt: skip
_CLEAR = frozenset(
    {"clear", "free", "net", "usable", "overall", "total", "max", "maximum", "outside", "finished", "loaded"}
)


def _travel_at(tokens: list[Token], at: int) -> tuple[str, int]:
    """ "In the direction of travel", "(travel)", "sideways": along or across, and the token behind."""
    bracket = at < len(tokens) and tokens[at].text == "("
    here = at + 1 if bracket else at
    for letter, phrases in (("l", _ALONG), ("w", _ACROSS), ("", tuple(phrase for _, phrase in _LONG_WAY))):
        for phrase in phrases:
            place = here
            for word in phrase:
                while place < len(tokens) and tokens[place].text in ("the", "its", "their", "our"):
                    place += 1
                if place >= len(tokens) or tokens[place].text != word:
                    break
                place += 1
            else:
                if phrase[0] in ("travel", "cross", "flow") and not bracket:
                    continue
                closed = bracket and place < len(tokens) and tokens[place].text == ")"
                letter = letter or next(one for one, other in _LONG_WAY if other == phrase)
                return letter, place + 1 if closed else place
    return "", at


def label_behind(tokens: list[Token], at: int) -> tuple[str, int]:
    """The label letter at token `at` and the token behind it; "" where none stands. Brackets and "in" are skipped."""
    here = at
    travel = _travel_at(tokens, at)
    if travel[0]:
        return travel
    if here + 1 < len(tokens) and tokens[here].text in _CLEAR and tokens[here + 1].text in LABELS:
        here += 1
    if (
        here < len(tokens)
        and tokens[here].text in ("in", "-", "of")
        and here + 1 < len(tokens)
        and tokens[here + 1].text in LABELS
    ):
        here += 1
    if here < len(tokens) and tokens[here].text == "(" and here + 2 < len(tokens):
        if tokens[here + 1].text in LABELS and tokens[here + 2].text == ")":
            return LABELS[tokens[here + 1].text], here + 3
        return "", at
    if here < len(tokens) and tokens[here].text in LABELS:
        after = here + 1
        if after < len(tokens) and tokens[after].text == "." and len(tokens[here].text) > 1:
            following = tokens[after + 1].text if after + 1 < len(tokens) else ""
            after += following in (",", "x", "by", "and")
        return LABELS[tokens[here].text], after
    return "", at


_BEFORE_LABELLED = frozenset(
    {
        ":", "=", "is", "of", ".", "about", "approx", "max", "~", "(", "around", "-", "loaded", "total", "overall",
        "up", "to",
        "only", "just", "approximately", "+",
    }
)  # fmt: skip


def label_before(tokens: list[Token], at: int, floor: int) -> tuple[str, int]:
    """The label letter before token `at`, over ": = is of ." and bound words; and where it begins."""
    here = at - 1
    steps = 0
    while here >= floor and tokens[here].text in _BEFORE_LABELLED and steps < 3:
        here -= 1
        steps += 1
    if (
        here >= floor
        and tokens[here].text in LABELS
        and tokens[here].text not in ("long", "wide", "tall", "deep", "high", "round", "across", "thick")
    ):
        return LABELS[tokens[here].text], here
    return "", at
