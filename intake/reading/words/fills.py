"""Full, empty or both: as words of state beside the product, never as labels of two weights."""

import re

from intake.reading.message.plain import Plain, plain
from intake.reading.message.scene import Draft, Scene

_QUICK = re.compile(r"full|fill|load|empt|nothing in|contents|unfilled|bare|returns|brim")
_UNIT = r"(?:kgs?|kilos?|kilograms?|g|grams?|lbs?|pounds?|oz|ounces|#|tonnes?|tons?)"
_FULL = re.compile(
    rf"(?:\d {_UNIT} (?:when |if )?(?P<w>full|filled|loaded)\b|\b(?:brim ?-? ?full|brimful|run full|always full"
    rf"|always filled|all full|full ones|filled ones|loaded ones"
    r"|full of (?!us)\w+|filled with \w+|loaded with \w+|with (?:the )?\w+ in(?:side)?(?= ?(?:$|[,.;)]))"
    r"|with (?:the )?(?:product|contents|beer|food|parts"
    r"|goods) in(?:side)?\b)"
    r"|\b(?:full|filled|loaded) (?:only|cases?|boxes|bottles?|jars?|kegs?|totes?|crates?|drums?|bags?|trays?"
    r"|pails?|cans|tubs?|cups?|pouches|jugs?|cartons?|canisters?|sacks?|barrels?|buckets?|containers?"
    r"|bundles?)\b(?! (?:line|sealer))"
    r"|\ba (?:full|filled|loaded) (?:one|keg|drum|case|crate|tote|pail|bottle|jar|tray|pallet|box)\b"
    r"|(?:(?:^|(?<= ))(?:is|are|'m|so yes|when|to|shampoo|for|'re|they're|it's|be|come|comes|run|runs|travel"
    r"|travels|go|goes|up|arrive|arrives|ride"
    r"|rides|and|always|all|only|being|been|leave|leaves|move|,|:|=|;|\() |^)(?P<s>full|filled|loaded)(?= ?(?:$"
    r"|[,.;:)(/=\-+|]|of\b|and\b|to\b|at\b|it\b|they\b|on\b|in\b(?! (?:the form|this))|with\b|when\b|going\b|\d"
    r"|each\b|here\b|one\b|up\b|down\b|capped\b|sealed\b|taped\b|then\b|by the time\b))"
    rf"|\b(?P<k>full|filled|loaded)(?: weight)?[ :=]*(?:they |it |each )?(?:weighs? |is |are )?(?:about "
    rf"|approx |around |~ )?\d[\d.,]* ?{_UNIT}\b)"
)
_NOT_FULL = re.compile(
    r"\b(?:how|depending|who|which|that|hot|cold|half|not|never|being|been|aren't|isn't|when|if|once|until"
    r"|before|after|get|gets|fork ?lift|truck|trucks|forklifts|lifts) (?:\S+ )?$|\bin $|hot - $"
    r"|pit 's been $"
)
_EMPTY = re.compile(
    r"\b(?:empty|empties|emptied|unfilled|nothing (?:in|inside)(?: (?:them|it|yet)\b|(?= *(?:$|[,.;)])))|no (?:product"
    r"|contents) in(?:side)?|without contents?|travels? bare|runs? bare|not (?:yet )?filled|not filled yet)\b"
)
_NOT_EMPTY = re.compile(
    r"\b(?:never|not|no|when|if|while|nest|unless|isn't|aren't|before|until|weigh|tare|corner|currently"
    r"|machine) (?:\S+ ){0,2}$|\b(?:when|if|once|nest\w*) (?:\S+ ){0,4}$"
)
_AWAY = re.compile(
    r"\b(?:by (?:truck|lorry|hand|train|road|van|forklift)|(?:on|with|via|in|by|over) (?:a |an "
    r"|the )?(?:different|other|another|separate|second|own)|elsewhere|separately|isn't your|not your"
    r"|not on (?:your|this)|don't (?:use|ride|travel|go)|do not|never (?:ride|travel|go)"
    r"|kicks? it out|reject\w*|the checkweigher|not with|another way|somewhere else|don't concern|outside"
    r"|aren't ours|no concern)\b"
)
_ONLY = re.compile(
    r"\b(?:only (?:the )?(?P<a>full|filled|loaded|empty|empties)|(?P<b>full|filled|loaded|empty)(?: ones)? only"
    r"|always (?P<c>full|filled|loaded|empty)|never (?P<d>empty|full)|(?P<e>bare|empty) ones never"
    r"|empties never|(?P<f>loaded|full|filled) ones never)\b"
)
_BOTH = re.compile(
    r"\b(?:full and empty|empty and full|full or empty|empty or full|filled and empty|filled or empty"
    r"|loaded and empty|both (?:full|filled|travel|run|ride|go)|sometimes (?:full|empty)|empties (?:too"
    r"|as well|also)|both kinds|some (?:full|loaded|filled)\b.*\bsome (?:not|empty|aren't)|full (?:as well as|/|&"
    r"|\+) empt\w+|full one way|loaded one way)\b"
)


_EMPTY_WEIGHT = re.compile(rf"\bempt\w+(?: weight| tare)?[ :=]*(?:about |~ ?)?\d[\d.,]* ?{_UNIT}\b")


def fill_drafts(scene: Scene) -> list[Draft]:
    """The state in which the product travels, where the words tell it."""
    if _QUICK.search(scene.shadow) is None:
        return []
    full: list[tuple[int, int, bool]] = []
    empty: list[tuple[int, int, bool]] = []
    for sentence in scene.sentences:
        if not 0 < sentence.after - sentence.first <= 150:
            continue
        words = plain(scene, sentence.first, sentence.after)
        settled = _settled(scene, words)
        if settled is not None:
            return [settled]
        full += _places(scene, words, _FULL, _NOT_FULL)
        empty += _places(scene, words, _EMPTY, _NOT_EMPTY)
    if _EMPTY_WEIGHT.search(scene.shadow) and full and all(weighed for _, _, weighed in full) and not empty:
        return []
    if full and empty:
        return [_draft(scene, empty[0][:2], "both")]
    if full or empty:
        return [_draft(scene, (full or empty)[0][:2], "full" if full else "empty")]
    return []


def _settled(scene: Scene, words: Plain) -> Draft | None:
    """ "Only filled ones ride", "full and empty"."""
    only, both = _ONLY.search(words.text), _BOTH.search(words.text)
    found = both or only
    if found is None or not scene.live(words.token_at(found.start())):
        return None
    place = words.token_at(found.start()), words.token_at(found.end() - 1) + 1
    if both is not None:
        return _draft(scene, place, "both") if not _AWAY.search(words.text) else None
    assert only is not None
    said = next(group for group in only.groups() or ("e",) if group) if any(only.groups()) else "empty"
    value = "empty" if said.startswith("empt") or said == "bare" else "full"
    if only["d"] or only["e"] or only["f"] or only.group() == "empties never":
        value = "full" if value == "empty" else "empty"
    return _draft(scene, place, value)


def _places(
    scene: Scene, words: Plain, pattern: re.Pattern[str], denied: re.Pattern[str]
) -> list[tuple[int, int, bool]]:
    found: list[tuple[int, int, bool]] = []
    for match in pattern.finditer(words.text):
        start = next((match.start(name) for name, said in match.groupdict().items() if said), match.start())
        first = words.token_at(start)
        live = scene.live(first) or ("product.fill" in scene.asked and scene.status[first] == "other")
        if not live or denied.search(words.text[max(0, start - 50) : start]):
            continue
        if pattern is _EMPTY and (_AWAY.search(words.text[match.end() :]) or _of_else(words.text, match)):
            continue
        if any(
            hit.value == "" and hit.field == "product.fill" and hit.first <= first < hit.after for hit in scene.hits
        ):
            continue
        weighed = pattern is _FULL and bool(match["w"] or match["k"])
        found.append((first, words.token_at(match.end() - 1) + 1, weighed))
    return found


def _of_else(text: str, match: re.Match[str]) -> bool:
    """A weight's label ("empty 2.1 kg"), an empty corner."""
    behind = text[match.end() : match.end() + 30]
    return (
        re.match(
            rf"(?: \w+)?[ :=]*(?:it |they |weigh\w* |is |about )*\d[\d.,]* ?{_UNIT}\b"
            rf"|(?: \w+)? (?:space|spot|corner|room|floor|pallet|area|bay|lot|handed|wall)",
            behind,
        )
        is not None
    )


def _draft(scene: Scene, place: tuple[int, int], value: str) -> Draft:
    return Draft(
        "product.fill", scene.tokens[place[0]].start, scene.tokens[place[1] - 1].end, value=value, at=place[0], rank=1
    )
