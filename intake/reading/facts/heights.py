"""Where product comes on and leaves, and how far it rises: which of the three a length is."""

import re

_VERB = (
    r"(?:up|upward|raise|raised|raising|lift|lifted|lifting|elevate|elevated|elevating|climb|climbing|climbed"
    r"|rise|rising|"
    r"overcome|overcoming|bridge|lower|lowered|lowering|down|downward|descend|descending|drop|dropped|dropping"
    r"|ascend|ascending|hoist|hoisted|"
    r"elevation (?:change|gain|difference|of)|height (?:change|difference|gain|to gain)|difference"
    r"|(?:level|height) difference|"
    r"vertical|vertically|vertical (?:distance|travel|lift|rise|move|height|change|drop)|net (?:rise|drop|lift|change)|"
    r"change (?:in|of) (?:height|elevation|level)|lift height|lifting height|gain|overall rise|total (?:rise"
    r"|lift|drop|height)|"
    r"travel height|lift of|rise of|drop of|gaining|losing)"
)
_FILL = (
    r"(?:it|them|these|those|this|that|em|'em|the|our|by|about|around|approx|approximately|roughly|of|is|are|be"
    r"|a|an|total|net|"
    r"maybe|another|up|down|some|over|nearly|almost|:|=|~|-|required|needed|will|would|at|least|most|maximum"
    r"|minimum|max|min|,|"
    r"whole|full|vertical|just|exactly|only|say|like|change|height|case|box|tray|bottle|carton|crate|tote|bag"
    r"|pallet|product|keg|"
    r"drum|bundle|jar|can|tub|pail|pouch|load|everything|all|between|from floor|straight|more|than|roughly"
    r"|somewhere|must|need|to be|go|goe|so|thing|stuff|every|distance|for|required|\()"
)
_RISE_BEFORE = re.compile(rf"\b{_VERB}(?: {_FILL}){{0,8}}$")
_RISE_BEHIND = re.compile(
    r"^[\s)]*(?:(?:of )?(?:vertical |net |total |elevation |height )?(?:rise|lift|drop|elevation|climb|descent"
    r"|elevation change|height change|height difference|gain|difference)\b"
    r"|of (?:vertical|height|elevation)\b|vertical(?:ly)?\b|higher\b|up\b|lower\b(?! level| floor)|down\b"
    r"|straight up|in elevation|in height difference|to up|net\b|above (?:the )?(?:in ?feed|where)|below (?:the"
    r" )?(?:in ?feed|where)|up in|upward|downward|(?:even |exactly |total )?between (?:the )?(?:level|floor|two"
    r"|belt|conveyor))"
)
_LEVEL = (
    r"(?:(?:at|about|around|roughly|approx|approximately|height|elevation|of|~|some|that|level|el|elev|\.|:"
    r"|is|=|-|exactly|just|maybe|say|,|which|it's|be|\(|\+|a|an) )"
)
_PLACE = (
    r"(?:(?:the|a|an|our|another|your|their|existing|new|floor|mezzanine|deck|platform|second|third|upper"
    r"|lower|top|bottom|conveyor|palletizer|hopper|outfeed|infeed|discharge|ground|next|2|nd|3|rd|1|st"
    r"|first|level|line|other|packing|filler|table) )"
)
_ANY = r"(?:(?!(?:to|from|and|up|down|off|into|onto)\b)[^\W\d]+ )"
_TO_END = re.compile(rf"\b(?:to|onto|into|until|toward) (?:{_PLACE}{_ANY}{{0,5}}?)?{_LEVEL}{{0,4}}$")
_INFINITIVE = (
    r"(?!(?:be|go|get|move|lift|raise|lower|take|bring|carry|convey|transport|elevate|do|have|make|run|fit|keep"
    r"|see|send|put"
    r"|handle|drop|climb|rise|come|reach|clear|feed|transfer|deliver|work|find|know|add|use|pass|leave|stay"
    r"|give|stand|hit)\b)"
)
_TO_PLACE = re.compile(
    rf"\b(?:to|onto) (?:(?:the|a|an|our|another) )?{_INFINITIVE}{_ANY}{{1,4}}?(?:at|@|height|level"
    rf"|elevation|elev) {_LEVEL}{{0,3}}$"
)
_FROM_END = re.compile(
    rf"(?:\bfrom|(?<!get )(?<!got )(?<!go )(?<!come )(?<!drop )(?<!kick )(?<!take )\boff"
    rf"|\bout of) (?:{_PLACE}{_ANY}{{0,5}}?)?{_LEVEL}{{0,4}}$"
)
_FROM_PLACE = re.compile(
    rf"\b(?:from|off) (?:(?:the|a|an|our|another) )?{_ANY}{{1,4}}?(?:at|@|height|level"
    rf"|elevation|elev) {_LEVEL}{{0,3}}$"
)
_LOOSE_VERB = re.compile(rf"\b{_VERB}\b")
_WALL = re.compile(
    r"\b(?:to|at|from|on|onto|off|ceiling|door|doorway|opening|space|footprint|floor|room|in ?feed|discharge|out"
    r" ?feed|length|wide|long|"
    r"width|area|aisle|clearance|headroom|beam|spot)\b"
)


_OUTRIGHT = re.compile(
    r"\b(?:(?:change|difference|gain|increase|rise|drop) (?:in|of) (?:the )?(?:elevation|height|level)"
    r"|(?:elevation|height|level) (?:change|diff(?:erence)?|gain)|vertical (?:distance|travel|lift|rise|drop)"
    r"|height gained|gained|net|difference of|difference is|difference :|(?:ascent|descent|climb|raise) of"
    r"|floor to floor|level to level|floor - to - floor|(?:lift|lifting|rise) height|(?:net|total"
    r"|overall) (?:rise|lift|drop))(?: (?:of|is|will|would|be|:|="
    r"|about|around"
    r"|approx|approximately|roughly|only|just|total|the|some|\.|~|,|-|needed|required|at))*$"
)


_OUTRIGHT_BEHIND = re.compile(
    r"^\s*-? ?(?:of )?(?:vertical |net |total |straight )?(?:rise|drop(?! ceiling)|lift(?! truck| gate)"
    r"|descent|climb|elevation"
    r" change|height difference|difference in height|change in)\b(?! to\b)"
    r"|^\s*(?:(?:below|above|higher than|lower than) (?:that|it|(?:the |our )?(?:in ?feed|where))\b|raise\b"
    r"|higher|lower(?! level| floor| deck| conveyor| end| one)|further up|farther up)\b(?! than (?:the"
    r"|a) (?:door|ceil))"
)


def is_outright_rise(before: str, behind: str) -> bool:
    """True where the words name the change of height itself right before or behind the figure."""
    return _OUTRIGHT.search(before) is not None or _OUTRIGHT_BEHIND.match(behind) is not None


def is_rise(before: str, behind: str, sentence_before: str) -> bool:
    """True where the words say that the figure is the change of height itself."""
    if _RISE_BEFORE.search(before) and not re.search(r"\b(?:high|at)\W*$", before):
        return True
    if _RISE_BEHIND.match(behind) and not re.match(r"^\s*(?:up|down) to$", behind):
        return True
    if before and _WALL.search(before):
        return False
    last = next(reversed([*_LOOSE_VERB.finditer(sentence_before)]), None)
    return (
        last is not None and not _WALL.search(sentence_before[last.end() :]) and len(sentence_before) - last.end() < 80
    )


def goes_to(before: str) -> bool:
    """True where the words end with "to" or "up to" and nothing but names of places behind it."""
    measured_from_floor = re.search(r"\bfloor to (?:the )?(?:in ?feed|out ?feed|discharge|in ?let|outlet)\b", before)
    words = before.replace(" - ", " ").rstrip() + " "
    return measured_from_floor is None and (_TO_END.search(words) or _TO_PLACE.search(words)) is not None


def comes_from(before: str) -> bool:
    """True where the words end with "from" and nothing but names of places behind it."""
    words = before.replace(" - ", " ").rstrip() + " "
    return (_FROM_END.search(words) or _FROM_PLACE.search(words)) is not None


def joins_two_heights(behind: str) -> bool:
    """True where "up to", "and up to" and the like lead from this figure to the next."""
    return (
        re.fullmatch(
            r"\s*(?:aff|tob|tor|toc|high|level|(?:off|above) (?:the )?(?:floor|ground)|from (?:the )?floor)?"
            r"\s*,? ?(?:and )?(?:then )?(?:(?:go|goe|going|come|raise|lift|climb|drop|lower)(?:ed|ing)? )?(?:up "
            r"|down )?to(?: the| a| about| around)?(?: top of (?:belt|roller|conveyor|steel))?(?: mezzanine"
            r"| deck| platform|(?: [\w']+){0,3} (?:floor|level|story|storey|conveyor|belt|line|dock))?(?: at)?\s*",
            behind,
        )
        is not None
    )
