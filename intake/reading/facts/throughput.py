"""Rates: of what travels or of pieces inside it, and the hours that a shift or a day has."""

import re

from intake.reading.amounts.figures import Figure
from intake.reading.facts.bare_rates import bare_rate, headed, share_before
from intake.reading.facts.peaks import asked_for_peak, normal_or_peak
from intake.reading.message.scene import Draft, Question, Scene
from intake.reading.message.travelling import Travelling

_NOT_RATES = frozenset(
    [
        "operator", "worker", "mechanic", "machine", "truck", "forklift", "people", "person", "time", "call", "visit",
        "shift", "changeover", "employee", "car", "trailer", "load", "revolution", "rpm", "cycle", "dollar", "rev",
        "breath", "hour", "meter", "metre", "turn", "degree", "day", "week", "break", "start", "stop", "inspection",
        "delivery", "order", "user", "guest",
    ]
)  # fmt: skip
_NOTHING = frozenset(
    {
        "unit", "piece", "pc", "product", "item", "one", "load", "part", "package", "pack", "ea", "each", "them",
        "count", "p", "total", "of", "or", "max", "minimum", ".",
    }
)  # fmt: skip


def rate_drafts(scene: Scene, who: Travelling, hours_a_day: float | None = None) -> list[Draft | Question]:
    """Facts and doubts of all rates that speak of the need. `hours_a_day`: what the message says of them."""
    found: list[Draft | Question] = []
    last: Figure | None = None
    share_before(scene)
    for figure in scene.figures:
        if figure.kind == "rate" and scene.status[figure.first] in ("past", "other"):
            last = figure  # its unit holds for "the new one has to take 20"
        if id(figure) in scene.used or not scene.live(figure.first):
            continue
        if figure.kind == "number":
            headed(scene, figure)
        if figure.kind == "number" and last is not None:
            bare_rate(scene, figure, last)
        if figure.kind != "rate":
            continue
        piece = _of_pieces(scene, figure, who)
        if piece == "nothing" or _BILLED.search(scene.before(figure)):
            scene.use(figure)
            continue
        last = figure
        counted = "rate.pieces" in scene.asked and not {"rate.normal", "rate.peak"} & set(scene.asked)
        name = (
            "rate.pieces"
            if piece == "pieces" or (counted and not _of_outer(scene, figure, who))
            else normal_or_peak(scene, figure)
        )
        if name == "rate.normal" and asked_for_peak(scene, figure, found):
            name = "rate.peak"
        drafted = _drafted(scene, figure, name, hours_a_day)
        scene.use(figure)
        if drafted is not None:
            found.append(drafted)
    kept = _once(found)
    if not _TWO_LINES.search(scene.shadow):
        _low_and_high(kept)
    return kept


_TWO_LINES = re.compile(r"\b(?:line|lane|machine|plant|cell) ?(?:#|no\.? ?)?[a-d1-9]\b|\b(?:the )?other line\b")


def _low_and_high(found: list[Draft | Question]) -> None:
    """Two different rates of one thing without other words: people tell the everyday one and the busiest one."""
    normal = [item for item in found if isinstance(item, Draft) and item.field == "rate.normal"]
    others = [item for item in found if isinstance(item, Draft) and item.field == "rate.peak"]
    if len(normal) != 2 or others:
        return
    low, high = sorted(normal, key=lambda draft: draft.high or draft.low or 0.0)
    least, most = low.high or low.low or 0.0, high.low or high.high or 0.0
    if 1.02 * least < most <= 5.0 * least:
        high.field = "rate.peak"


_BILLED = re.compile(r"\b(?:bill|charge|cost|pay|paid|invoice|earn)\w*\b(?: [\w']+){0,3}\W*$")


def _of_pieces(scene: Scene, figure: Figure, who: Travelling) -> str:
    """ "" for what travels, "pieces" for what is inside it, "nothing" for trucks and people."""
    per = figure.per
    nouns = per.noun.split() if per is not None else []
    if any(token.text in ("rpm", "spm") for token in scene.tokens[figure.first : figure.after]):
        return "nothing"
    norms = [scene.lexicon.norm(noun) for noun in nouns]
    if not norms or all(noun in _NOTHING for noun in norms):
        bottles = any(token.text in ("bpm", "bph") for token in scene.tokens[figure.first : figure.after])
        return "pieces" if bottles and who.inner & {"bottle", "can", "jar"} else ""
    kinds = [hit.value for hit in who.mentions if figure.first <= hit.first < figure.after]
    if kinds:
        if who.kind is None or kinds[-1] == who.kind:
            return ""
        return "pieces"
    return "nothing" if any(noun in _NOT_RATES for noun in norms) else ""


def _of_outer(scene: Scene, figure: Figure, who: Travelling) -> bool:
    """True where the rate counts what travels, and something else is named as standing in it."""
    kinds = {hit.value for hit in who.mentions if figure.first <= hit.first < figure.after}
    return bool(who.inner) and who.kind in kinds


def _drafted(scene: Scene, figure: Figure, name: str, hours_a_day: float | None) -> Draft | Question | None:
    per = figure.per
    low, high = figure.low, figure.high
    if figure.is_range and _CHANGED.search(scene.before(figure)) and figure.unit is not None:
        low = high = figure.unit.worth(figure.ends[1].value)  # "slowed from 40 to 33": it is 33 now
    if per is None or figure.unit is None:
        return None
    if per.unit.name in ("1/week", "1/year", "1/month"):
        return None
    if per.each and not per.hours:
        hours = stated_hours(scene, per.each) or (hours_a_day if per.each == "day" else None)
        if hours is None:
            start, end = scene.tokens[figure.begin].start, scene.tokens[figure.end - 1].end
            return Question(name, start, end, f"hours_of_{per.each}")
        minutes = hours * 60.0
        ends = [end.value / minutes for end in figure.ends]
        low = min(ends) if low is not None else None
        high = max(ends) if high is not None else None
    draft = scene.draft(name, figure)
    draft.low, draft.high = low, high
    if name == "rate.peak" and figure.bound == "most":
        draft.low = draft.high
    return draft


def _once(found: list[Draft | Question]) -> list[Draft | Question]:
    """Two normal rates: the greater of two that differ by a cue is no news; the second of the same value is dropped."""
    kept: list[Draft | Question] = []
    for item in found:
        twin = next(
            (k for k in kept if isinstance(k, Draft) and isinstance(item, Draft) and k.field == item.field), None
        )
        if twin is not None and isinstance(item, Draft) and _same(twin, item):
            continue
        kept.append(item)
    return kept


def _same(a: Draft, b: Draft) -> bool:
    pairs = ((a.low, b.low), (a.high, b.high))
    return all((x is None) == (y is None) and (x is None or y is None or abs(x - y) <= 0.02 * abs(x)) for x, y in pairs)


_CHANGED = re.compile(
    r"\b(?:slow\w*|drop\w*|reduc\w+|rais\w+|increas\w+|went|gone|chang\w+|cut|sped up|brought)(?: (?:up|down|it"
    r"|the line|us))?(?: from)?\W*$"
)


def stated_hours(scene: Scene, each: str) -> float | None:
    """The hours of a day or shift where the same message states them."""
    text = scene.words(0, len(scene.norms))[:20_000]
    shift = re.search(
        r"\b(\d{1,2}(?:\.\d)?) ?-? ?(?:h|hr|hour)s? ?-? ?shift|shift(?: of| are| is| =|:) (\d{1,2}(?:\.\d)?) ?-?"
        r" ?(?:h|hr|hour)",
        text,
    )
    if each == "shift":
        return float(next(g for g in shift.groups() if g)) if shift else None
    day = re.search(
        r"\b(\d{1,2}(?:\.\d)?) ?-? ?(?:h|hr|hour)s? ?(?:a|per|/|each|every|working)? ?-? ?(?:d|day)\b", text
    )
    day = day or re.search(
        r"\bday,? (?:\w+ ){0,2}?(?:over|in|across|of|at|on|during) (\d{1,2}(?:\.\d)?) ?-? ?(?:h|hr|hour)", text
    )
    if day:
        return float(day.group(1))
    return 24.0 if re.search(r"\b24 / 7\b|around (?:the )?clock", text) else None
