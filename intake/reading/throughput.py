"""Rates: normal or peak, of what travels or of pieces inside it, and the hours that a shift or a day has."""

import re
from dataclasses import replace

from intake.reading.figures import Figure, give_unit
from intake.reading.groups import label_behind
from intake.reading.scene import Draft, Question, Scene
from intake.reading.travelling import Travelling
from intake.reading.units import UNITS, Unit

_PEAK = re.compile(
    r"\b(?:peak|peaks|peaking|peaked|surge|surging|burst|bursting|rush|rushes|busy|busiest|season|seasonal|could"
    r" hit|can hit|hit|hitting|"
    r"spike|spiking|spikes|worst|top speed|top out|topping|top rate|up to|as high as|as many as|quarter end|month end"
    r"|next year|headroom|in future|the future|future|later on|eventually|"
    r"designing for|design to|planning (?:for|on)|plan for|want to (?:hit|reach|go)|growing to|going (?:up )?to|grow to|growth|ready for|design for|designed for|expansion|ramp up to|ramp to|ramping to|max"
    r"|maximum|at most|tops|never more than|no more than|"
    r"christmas?|xmas?|holiday|holidays|harvest|most (?:we|they|it)(?:'d| would| could| will)?(?: ever)? (?:see|do|run|make|get|hit|need)|the most|at the outside|short burst|catch up|catching up|sprint|when (?:we're|we"
    r" are) busy|limit|ceiling|flat out|full tilt|fastest|"
    r"at best|crunch|high season|goes? to|jumps? to|climbs? to|swings? to|planned|in two years|2 years|sometimes"
    r"|occasionally|at times|on a good day|on good day|black friday|summer|friday|monday|reach|reaching|someday"
    r"|expect|expected|capable of|catch-up|not exceed|exceeding)\b"
)
_NORMAL = re.compile(
    r"\b(?:normal|normally|nominal|average|avg|usual|usually|steady|typical|typically|run|running|runs|currently"
    r"|current|today|now|mostly|most of|most day|regular|regularly|everyday|standard|base|baseline|cruise"
    r"|cruising|"
    r"day to day|generally|rated|sustained|flat profile|needs?|design rate|at present|right now|usually do|make"
    r"|making|do)\b"
)
_STRONG_PEAK = re.compile(
    r"\b(?:peak|xmas?|christmas?|most (?:we|they|it)|surge|burst|max|maximum|top out|top speed|busy|season|next year|headroom|future|could hit|can hit|spike"
    r"|at most|up to"
    r"|rush|never more|no more than|quarter end|ready for|worst|top out|peaking|limit|as high as|as many as"
    r"|holiday)\b"
)
_PEAK_BEHIND = re.compile(
    r"\b(?:peaks?|surges?|bursts?|busy|busiest|season|next year|future|worst|rush|christmas?|holidays?|harvest|crunch"
    r"|xmas?|when \w+ \d* ?start|good day|at best|flat out|later on|eventually|after the expansion|full tilt|when (?:we're|it's|they're|it is) busy"
    r"|when it get|short (?:spell|time)|friday|black friday|month end|quarter end|some day)\b"
)
_NORMAL_BEHIND = re.compile(r"\b(?:normal|normally|average|avg|usual|usually|typical|typically|most)\b")
_NOT_RATES = frozenset(
    [
        "operator",
        "worker",
        "mechanic",
        "machine",
        "truck",
        "forklift",
        "people",
        "person",
        "time",
        "call",
        "visit",
        "shift",
        "changeover",
        "employee",
        "car",
        "trailer",
        "load",
        "revolution",
        "rpm",
        "cycle",
        "dollar",
        "rev",
        "breath",
        "hour",
        "meter",
        "metre",
        "turn",
        "degree",
        "day",
        "week",
        "break",
        "start",
        "stop",
        "inspection",
        "delivery",
        "order",
        "user",
        "guest",
    ]
)
_NOTHING = frozenset(
    {
        "unit",
        "piece",
        "pc",
        "product",
        "item",
        "one",
        "load",
        "part",
        "package",
        "pack",
        "ea",
        "each",
        "them",
        "count",
        "p",
        "total",
        "of",
        "or",
        "max",
        "minimum",
        ".",
    }
)


def rate_drafts(scene: Scene, who: Travelling, hours_a_day: float | None = None) -> list[Draft | Question]:
    """Facts and doubts of all rates that speak of the need. `hours_a_day`: what the message says of them."""
    found: list[Draft | Question] = []
    last: Figure | None = None
    _share_before(scene)
    for figure in scene.figures:
        if id(figure) in scene.used or not scene.live(figure.first):
            continue
        if figure.kind == "number":
            _headed(scene, figure)
        if figure.kind == "number" and last is not None:
            _bare_rate(scene, figure, last)
        if figure.kind != "rate":
            continue
        piece = _of_pieces(scene, figure, who)
        if piece == "nothing":
            scene.use(figure)
            continue
        last = figure
        counted = "rate.pieces" in scene.asked and not {"rate.normal", "rate.peak"} & set(scene.asked)
        name = "rate.pieces" if piece == "pieces" or (counted and not _of_outer(scene, figure, who)) else _normal_or_peak(scene, figure)
        if name == "rate.normal" and _asked_for_peak(scene, figure, found):
            name = "rate.peak"
        drafted = _drafted(scene, figure, name, hours_a_day)
        scene.use(figure)
        if drafted is not None:
            found.append(drafted)
    kept = _once(found)
    if not _TWO_LINES.search(scene.shadow):
        _low_and_high(kept)
    return kept


def _share_before(scene: Scene) -> None:
    """ "Normal 32, peak 40 cpm": the bare number before takes the unit of the rate behind."""
    for figure, following in zip(scene.figures, scene.figures[1:], strict=False):
        if (
            figure.kind == "number"
            and following.kind == "rate"
            and following.per is not None
            and scene.live(figure.first)
        ):
            between = scene.words(figure.end, following.begin)
            before = scene.before(figure)[-40:]
            joined = re.fullmatch(
                r"(?:,|;|and|/|or|with|but|\.|normal|average|peak|max|at peak|,? ?(?:and )?(?:with )?(?:a"
                r" )?peak(?:s|ing)?(?: of| at| to|:)?|\s)*(?:\w+ ){0,5}(?:\w+)?",
                between,
            )
            cue = re.search(
                r"(?:normal|nominal|average|avg|typical|usual|usually|steady|rate|speed|peak|max|run|running|at"
                r"|about|throughput|typically|normally|do|make)(?: (?:is|are|of|at|about|around|maybe|we|do|run"
                r"|speed|rate|:))*\W*$",
                before,
            )
            if joined and cue and len(between) < 40 and (_PEAK.search(between) or _STRONG_PEAK.search(before)):
                give_unit(figure, following.per.unit)


_HEADED_BY_MIN = re.compile(r"(?:/|per|an?) ?$")
_HEADED = re.compile(
    r"(?:^|[,;(.] ?|\b)(?:\w+ )?(\w+) ?(?:/|per|an?) ?(minute|min|hour|hr|h|sec|second)\b(?: \(?(?:normal"
    r"|average|nominal|peak|max)\)?)? ?(?:[:=]|is|are|-|=|\|)* ?(?:about |approx |around |~ |peak |max |normal"
    r" )*$"
)
_TIME = {"minute": "1/min", "min": "1/min", "hour": "1/h", "hr": "1/h", "h": "1/h", "sec": "1/s", "second": "1/s"}


def _headed(scene: Scene, figure: Figure) -> None:
    """ "Crates/hour: 720": the unit stands in the heading of the line."""
    match = _HEADED.search(scene.before(figure)[-60:])
    if match is not None and figure.value > 0 and scene.group_of(figure) is None:
        if figure.bound == "least" and match.group(2) == "min":
            figure.bound, figure.begin = "", figure.first  # the minute of the heading, no minimum
        give_unit(figure, UNITS[_TIME[match.group(2)]])
        if figure.per is not None:
            figure.per = replace(figure.per, noun=match.group(1))


def _bare_rate(scene: Scene, figure: Figure, last: Figure) -> None:
    """ "18 per min, peak 26": the bare number takes the unit of the rate before."""
    near = scene.sentence_at[figure.first] - scene.sentence_at[last.first]
    if near > 1 or figure.first - last.after > 14 or last.per is None or figure.value <= 0 or "list" in figure.tags:
        return
    if scene.group_of(figure) is not None or label_behind(scene.tokens, figure.after)[0]:
        return
    before, behind = scene.before(figure)[-50:], scene.after(figure)[:30]
    cue = re.search(
        r"(?:peak(?:s|ing)?|surge|burst|max(?:imum)?|top|up to|could hit|can hit|hit|hitting|spike|as high as"
        r"|busy|season|next year|ready for|headroom to|headroom for|future|growing to|going to|going up to|go to|goe to|jump to|climb"
        r" to|normal|normally"
        r"|average|usually|run|running|tops out|top out|reach|worst|limit|expect|expecting|at peak|at best|day"
        r"|quarter end|christmas?|design for|planned)\W*(?:(?:more|like|closer|nearer|at|of|to|is|about|around|be|for|it|maybe|say|hour"
        r"|time|:|\(|we|at about|period|do|see|rate|the|a|can|are|go|goe|with|than|,|-) ?){0,4}$",
        before,
    )
    after_cue = re.match(
        r"^\W*(?:is |at |on |in |as |the |a |for |when |during |durring |over |around )*(?:xmas?|christmas?|peak|max|tops?|surge|burst|busy|next year|season|in"
        r" season|at peak|future|worst|normal|average|usually)\b",
        behind,
    )
    ratio = figure.value / last.value if last.value else 0.0
    told = 0.2 <= ratio <= 5.0 and _WHEN_BEHIND.match(behind) and _LEADS_ON.search(before)
    if not (cue or after_cue or told):
        return
    noun = re.match(r"^\W*(?:line|machine|shift|week|month|day|people|hour|year|size|sku|percent|%|x )", behind)
    if noun:
        return
    give_unit(figure, last.per.unit)
    if figure.per is not None and last.per is not None:
        figure.per = replace(figure.per, noun=last.per.noun, hours=last.per.hours, each=last.per.each)


_WHEN_BEHIND = re.compile(
    r"^\W*(?:when|whenever|while|if|once|after|during|otherwise|before|on (?:a |the )?(?:good|bad|busy|slow|quiet|heavy|big|peak"
    r"|mon|tues|wednes|thurs|fri|satur|sun|week|some|most)\w*|in (?:the )?(?:season|summer|winter|fall|autumn|spring|future|worst|rush"
    r"|run up|high|busy|low|quiet|january|february|march|april|may|june|july|august|september|october|november|december|week|harvest)"
    r"|with (?:the |both|two|all|a second)|at (?:night|times|xmas?|christmas?|the (?:end|weekend|most))|for (?:xmas?|christmas?|easter)"
    r"|(?:every )?now and then|some (?:days?|times?|weeks?)|most (?:days?|times?|weeks?)|other days?|the rest|flat out|is the most|by (?:next|20)"
    r"|later|eventually|tomorrow|going forward|long term|down to|from (?:next|january)|per the plan)\b"
)
_TWO_LINES = re.compile(r"\b(?:line|lane|machine|plant|cell) ?(?:#|no\.? ?)?[a-d1-9]\b|\b(?:the )?other line\b")
_LEADS_ON = re.compile(
    r"(?:^|[,;:(/-]|\b(?:and|but|or|to|maybe|then|about|sometimes|like|it's|is|at|do|does|be|run|runs|hit|hits|see|say|even|only|just"
    r"|need|make|around|roughly|perhaps|probably|nearly|almost|over|reach))\W*$"
)


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


def _normal_or_peak(scene: Scene, figure: Figure) -> str:
    before = scene.before(figure)
    lead = scene.words(figure.begin, figure.first)
    behind = scene.after(figure)
    own = re.split(r"[,;(.]| but | and | then ", behind, maxsplit=1)
    tail = own[0][:60]
    if figure.bound == "most":
        return "rate.peak"
    if figure.bound == "least":
        return "rate.peak" if scene.asked == ("rate.peak",) else "rate.normal"
    text = f"{before} {lead}"[-80:]
    close = re.split(r"[;.]", text)[-1]
    peaks, normals = list(_PEAK.finditer(close)), list(_NORMAL.finditer(close))
    last_peak = peaks[-1].end() if peaks else -1
    last_normal = normals[-1].end() if normals else -1
    if _belongs_to_next(scene, figure, behind):
        tail = ""
    if re.match(
        r"^\W*(?:at |is |as |the |in |on |for |during |when )*(?:our |the |a |an )?(?:\w+ )?(?:peak|max|maximum"
        r"|tops?|surge|burst|busy|busiest|season|next year|future|worst case|rush|quarter end|christmas?|holiday"
        r"|high season|harvest|crunch|peaks|absolute max|limit)",
        tail,
    ):
        return "rate.peak"
    if _PEAK_BEHIND.search(tail) and not _NORMAL_BEHIND.search(tail):
        return "rate.peak"
    if re.match(
        r"^\W*(?:at |is |as |the |a |an |in |on |most |of |for )*(?:normal|normally|average|avg|nominal|usual|usually"
        r"|typical|typically|steady|now|today|currently|sustained|most day|mostly)",
        tail,
    ):
        return "rate.normal"
    if "(" in behind[:3] and re.match(r"^\s*\( ?(?:peak|max)", behind) and not re.search(r"\d", behind):
        following = scene.windows[id(figure)][1]
        if following < len(scene.tokens) and scene.tokens[following - 1].text == ")":
            return "rate.peak"
    if last_peak > last_normal:
        return "rate.peak"
    if peaks and _STRONG_PEAK.search(close[peaks[-1].start() :]) and last_normal - last_peak <= 8 and last_peak >= 0:
        return "rate.peak"
    return "rate.normal"


def _asked_for_peak(scene: Scene, figure: Figure, found: list[Draft | Question]) -> bool:
    """An answer to the question about the peak alone, or the second figure to a question about both."""
    if "rate.peak" not in scene.asked or figure.bound == "least":
        return False
    if "rate.normal" in scene.asked:
        return any(item.field == "rate.normal" for item in found)
    return _NORMAL_SAID.search(scene.sentence_text(figure.first)) is None


_NORMAL_SAID = re.compile(
    r"\b(?:normal|normally|nominal|average|avg|usual|usually|typical|typically|steady|regular|current|currently"
    r"|today)\b"
)


def _belongs_to_next(scene: Scene, figure: Figure, behind: str) -> bool:
    """ "18 per min peak 26": the cue stands right before the next figure."""
    following = scene.windows[id(figure)][1]
    if following >= len(scene.tokens) or not any(
        f.first == following or f.begin == following for f in scene.next_figures(figure)
    ):
        return False
    return (
        re.fullmatch(
            r"\W*(?:and |but |with |or )*(?:a |the |our )?(?:\w+ )?(?:peak\w*|max|maximum|surge|burst|up|top"
            r"|normal|average)(?: rate| load| flow| demand)?(?: of| at| is| to| about| around| maybe| :|:)*\s*",
            behind,
        )
        is not None
    )


def _drafted(scene: Scene, figure: Figure, name: str, hours_a_day: float | None) -> Draft | Question | None:
    per = figure.per
    low, high = figure.low, figure.high
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


def per_minute(figure: Figure) -> Unit:
    """The unit that a bare answer to a rate question has."""
    return figure.unit or UNITS["1/min"]
